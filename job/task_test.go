package job_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// example reads one of the examples.
func example(t testing.TB, name string) *job.Job {
	t.Helper()
	data, err := os.ReadFile("../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return read(t, string(data))
}

func read(t testing.TB, document string) *job.Job {
	t.Helper()
	j, err := yaml.Read("test.yaml", []byte(document))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func task(t testing.TB, j *job.Job) *plan.Task {
	t.Helper()
	made, err := j.Task()
	if err != nil {
		t.Fatal(err)
	}
	return made
}

func ring(t testing.TB, got geom.Ring, want ...[2]int64) {
	t.Helper()
	var w geom.Ring
	for _, p := range want {
		w = append(w, geom.Point{X: measure.Length(p[0]) * mm, Y: measure.Length(p[1]) * mm})
	}
	if diff := cmp.Diff(w, got); diff != "" {
		t.Errorf("outline (-want +got):\n%s", diff)
	}
}

func TestTaskOfAPlainRoom(t *testing.T) {
	made := task(t, example(t, "plain-room.yaml"))
	if len(made.Runs) != 1 || !made.Runs[0].Run.Closed || made.Runs[0].Run.Name != "run 1" {
		t.Fatalf("runs %+v", made.Runs)
	}
	run := made.Runs[0].Run
	if len(run.Walls) != 4 || len(run.Corners) != 4 || run.Corners[3] != (room.Corner{}) {
		t.Errorf("%d walls, corners %+v", len(run.Walls), run.Corners)
	}
	ring(t, run.Walls[0].Outline, [2]int64{0, 0}, [2]int64{3200, 0}, [2]int64{3200, 2400}, [2]int64{0, 2400})
	ring(t, run.Walls[1].Openings[0].Outline, [2]int64{150, 0}, [2]int64{980, 0}, [2]int64{980, 2030}, [2]int64{150, 2030})
	want := paper.Paper{
		Name: "Oatmeal (invented)", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1,
		Tolerance: paper.Tolerance{Length: 15, Width: 15}, Price: money.Amount{Minor: 1850, Currency: "EUR"},
	}
	if diff := cmp.Diff([]paper.Paper{want}, made.Papers); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(plan.DefaultCut(), made.Cut); diff != "" {
		t.Error(diff)
	}
	if made.Rules != hanging.DefaultRules() || made.Taste != plan.DefaultTaste() || made.Step != 0 {
		t.Errorf("rules %+v, taste %+v, step %v", made.Rules, made.Taste, made.Step)
	}
}

func TestTaskFindsWhatIsFixed(t *testing.T) {
	run := task(t, example(t, "half-drop.yaml")).Runs[0]
	if want := (&plan.Kill{Kill: hanging.Kill{Kind: hanging.OnWall, Wall: 3, X: 2830 * mm}, Free: true}); *run.Fixed.Kill != *want {
		t.Errorf("kill %+v, want %+v", run.Fixed.Kill, want)
	}
	run = task(t, example(t, "chimney-breast.yaml")).Runs[0]
	if want := (plan.Centre{Wall: 2, X: 750 * mm, Of: plan.MotifAxis}); *run.Fixed.Centre != want {
		t.Errorf("centre %+v, want %+v", run.Fixed.Centre, want)
	}
	kinds := ""
	for _, c := range run.Run.Corners {
		kinds += c.Kind.String()[:1]
	}
	if kinds != "iooiiiii" {
		t.Errorf("corners %s", kinds)
	}
	run = task(t, example(t, "dado.yaml")).Runs[1]
	if want := (plan.Kill{Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: 2}, Free: true}); *run.Fixed.Kill != want {
		t.Errorf("kill %+v, want %+v", run.Fixed.Kill, want)
	}
	j := example(t, "plain-room.yaml")
	edge, design := -25*mm, 100*mm
	j.Papers[0].Repeat, j.Papers[0].Match = 640*mm, "64/32 cm"
	j.Hang = []job.Hang{{
		Paper: j.Papers[0].Name, Walls: []string{"C", "D", "A", "B"}, Design: &design,
		Start: &job.Start{Wall: "A", Edge: &edge}, Kill: &job.Kill{Corner: "D|A", Lap: "right"},
	}}
	run = task(t, j).Runs[0]
	if !run.Run.Closed || run.Run.Walls[0].Name != "C" || *run.Fixed.Start != (hanging.Start{Wall: 2, X: edge}) || *run.Fixed.Design != design {
		t.Errorf("closed %v from %s, start %+v, design %v", run.Run.Closed, run.Run.Walls[0].Name, run.Fixed.Start, run.Fixed.Design)
	}
	if want := (plan.Kill{Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: 1, Lap: hanging.Right}}); *run.Fixed.Kill != want {
		t.Errorf("kill %+v, want %+v", run.Fixed.Kill, want)
	}
}

const leaning = `
firstdrop: 1
units: mm
room:
  height: 2400
  closed: %v
  corner: {kind: inside, lean: {left: 1, right: 2}}
%s  walls:
    - {name: A, width: 3200}
    - {name: B, width: 2600, corner: {kind: inside, lean: {left: 3, right: 4}}}
    - {name: C, width: 3200}
    - {name: D, width: 2600%s}
papers: [{name: P, width: 530, roll: 10 m, match: free}]
hang: [{paper: P, walls: %s}]
`

// A stretch of a room ends at the corners of the room, and leans as they do.
func TestEndsOfAStretch(t *testing.T) {
	for _, c := range []struct {
		closed      bool
		ends, last  string
		walls       string
		left, right measure.Length // lean of the first wall's left and of the last wall's right edge
	}{
		{true, "", ", corner: {kind: inside, lean: {left: 5, right: 6}}", "[A]", 6, 1},
		{true, "", "", "[C]", 4, 1},
		{true, "", "", "[D, A]", 2, 1},
		{false, "  ends: {left: 7, right: 8}\n", "", "[A, B]", 7, 3},
		{false, "  ends: {left: 7, right: 8}\n", "", "[D]", 2, 8},
		{false, "  ends: {left: 7, right: 8}\n", "", "[]", 7, 8},
	} {
		run := task(t, read(t, fmt.Sprintf(leaning, c.closed, c.ends, c.last, c.walls))).Runs[0].Run
		left, _ := run.LeanAt(0)
		_, right := run.LeanAt(len(run.Walls) - 1)
		if run.Closed || left != c.left*mm || right != c.right*mm || len(run.Corners) != len(run.Walls)-1 {
			t.Errorf("walls %s, closed room %v: closed %v, leans %v and %v, want %d and %d mm", c.walls, c.closed, run.Closed, left, right, c.left, c.right)
		}
	}
}

// Paper all round a closed room may still begin and end in a corner.
func TestAllRoundButOpen(t *testing.T) {
	j := read(t, fmt.Sprintf(leaning, true, "", "", "[B, C, D, A], closed: false"))
	run := task(t, j).Runs[0].Run
	left, _ := run.LeanAt(0)
	_, right := run.LeanAt(3)
	if run.Closed || len(run.Corners) != 3 || left != 2*mm || right != 1*mm {
		t.Errorf("closed %v, %d corners, leans %v, %v", run.Closed, len(run.Corners), left, right)
	}
}

func TestDoorStandsOnASlopingFloor(t *testing.T) {
	j := read(t, `
firstdrop: 1
units: mm
room:
  closed: false
  walls:
    - {name: A, width: 3000, height: 2400, floor: {left: 0, right: 300}, openings: [{kind: door, left: 1000, width: 500, height: 2000}]}
papers: [{name: P, width: 530, roll: 10 m, match: free}]
`)
	o := task(t, j).Runs[0].Run.Walls[0].Openings[0]
	ring(t, o.Outline, [2]int64{1000, 100}, [2]int64{1500, 100}, [2]int64{1500, 2150}, [2]int64{1000, 2150})
}

func TestBands(t *testing.T) {
	j := example(t, "dado.yaml")
	j.Room.Walls[1].Openings[0].Depth, j.Room.Walls[1].Openings[0].Returns = 100*mm, room.Sides{Left: true, Head: true, Sill: true}
	below := 1000 * mm
	j.Hang[0].To, j.Hang[1].From = &below, &below
	made := task(t, j)
	lower, upper := made.Runs[0].Run.Walls[1], made.Runs[1].Run.Walls[1]
	ring(t, lower.Outline, [2]int64{0, 0}, [2]int64{2750, 0}, [2]int64{2750, 1000}, [2]int64{0, 1000})
	ring(t, upper.Outline, [2]int64{0, 1000}, [2]int64{2750, 1000}, [2]int64{2750, 2480}, [2]int64{0, 2480})
	if got, want := lower.Openings[0].Sides, (room.Sides{Left: true, Sill: true}); got != want {
		t.Errorf("lower returns %+v", got)
	}
	if got, want := upper.Openings[0].Sides, (room.Sides{Left: true, Head: true}); got != want {
		t.Errorf("upper returns %+v", got)
	}
	if len(lower.Fittings) != 1 || lower.Fittings[0].Name != "low socket" || len(upper.Fittings) != 1 || upper.Fittings[0].Name != "counter socket" {
		t.Errorf("fittings %+v and %+v", lower.Fittings, upper.Fittings)
	}
	area := func(r *room.Run) (a measure.Area) {
		for i := range r.Walls {
			a += r.Face(i).Area()
		}
		return a
	}
	j.Hang = []job.Hang{{Paper: j.Papers[0].Name}}
	if both, all := area(made.Runs[0].Run)+area(made.Runs[1].Run), area(task(t, j).Runs[0].Run); both != all {
		t.Errorf("the two bands have %v, the room has %v", both, all)
	}
}

// A band across a gable keeps the slopes.
func TestBandOfAGable(t *testing.T) {
	j := example(t, "attic.yaml")
	from := 1000 * mm
	j.Hang = []job.Hang{{Paper: j.Papers[0].Name, Walls: []string{"street gable"}, From: &from}}
	w := task(t, j).Runs[0].Run.Walls[0]
	ring(t, w.Outline, [2]int64{0, 1000}, [2]int64{4000, 1000}, [2]int64{2700, 2300}, [2]int64{1300, 2300})
	ring(t, w.Openings[0].Outline, [2]int64{1500, 1000}, [2]int64{2500, 1000}, [2]int64{2500, 2000}, [2]int64{1500, 2000})
}

// measured lists the measures of rules and taste, what lengths are rounded to first.
func measured(r hanging.Rules, t plan.Taste, c plan.CutRules) []measure.Length {
	return []measure.Length{
		r.CutStep, r.Head, r.Foot, r.Wrap, r.WrapLimit, r.OutsideWrap, r.PlumbTolerance, r.Overlap,
		t.MinSliver, t.SeamClearance, t.Overrun, t.LongPiece, t.EyeLevel, c.Blade, c.SlitOver,
	}
}

func TestRulesOfTheTask(t *testing.T) {
	made := task(t, example(t, "imperial.yaml"))
	if made.Step != measure.Sixteenth || made.Rules.CutStep != measure.Sixteenth || made.Rules.Head != 2*measure.Inch || made.Rules.Foot != 2*measure.Inch {
		t.Errorf("step %v, rules %+v", made.Step, made.Rules)
	}
	inches, metric := measured(hanging.RulesIn(measure.Imperial), plan.TasteIn(measure.Imperial), plan.CutIn(measure.Imperial)), measured(hanging.DefaultRules(), plan.DefaultTaste(), plan.DefaultCut())
	for i, l := range inches {
		if l%measure.Sixteenth != 0 || i > 0 && (l-metric[i]).Abs() > metric[i]/50+measure.Millimetre {
			t.Errorf("measure %d of the craft: %v in inches, %v in millimetres", i, l, metric[i])
		}
	}
	if want := 2 * measure.Inch; inches[1] != want || inches[2] != want { // facts.md, end: at least 2 in (50 mm) at head and foot
		t.Errorf("allowances %v and %v, want %v", inches[1], inches[2], want)
	}
	j := read(t, fmt.Sprintf(leaning, true, "", "", "[]")+`
rules: {allowance: {head: 40, foot: 60}, wrap: 0, wrap_limit: 30, outside_wrap: 70, plumb_tolerance: 2, start_overlap: 20, cut_step: 5, min_sliver: 80, seam_clearance: 40, overrun: 90, long_piece: 3 m, eye_level: 1500}
weights: {roll: 1, sliver: 2, seam_near: 3, focal_seam: 4, kill_metre: 5, motif_cut: 6, end_in_fold: 7, drop: 8, piece: 9, wedge: 10, batch_change: 11,
  sliver_beside: 12, overrun: 13, renew_metre: 14, off_centre: 15, unequal_ends: 16, motif_cut_low: 17, lap_shadow: 18, lining_seam: 19, seam_fitting: 20, awkward: 21,
  drift: 22, off_plumb: 23, off_casing: 24, corner_step: 25, mixed_ways: 26}
cutting: {lead: 150, loss: 1, blade: 6, slit_over: 7, alone: true, goals: [changes, rolls]}
`)
	made = task(t, j)
	rules := hanging.Rules{Head: 40 * mm, Foot: 60 * mm, WrapLimit: 30 * mm, OutsideWrap: 70 * mm, PlumbTolerance: 2 * mm, Overlap: 20 * mm, CutStep: 5 * mm}
	taste := plan.Taste{MinSliver: 80 * mm, SeamClearance: 40 * mm, Overrun: 90 * mm, LongPiece: 3000 * mm, EyeLevel: 1500 * mm, Weights: plan.Weights{
		Roll: 1, Sliver: 2, SeamNear: 3, FocalSeam: 4, KillMetre: 5, MotifCut: 6, EndInFold: 7, Drop: 8, Piece: 9, Wedge: 10, BatchChange: 11,
		SliverBeside: 12, Overrun: 13, RenewMetre: 14, OffCentre: 15, UnequalEnds: 16, MotifCutLow: 17, LapShadow: 18, LiningSeam: 19, SeamFitting: 20, Awkward: 21,
		Drift: 22, OffPlumb: 23, OffCasing: 24, CornerStep: 25, MixedWays: 26,
	}}
	cut := plan.CutRules{Lead: 150 * mm, Loss: 1 * mm, Blade: 6 * mm, SlitOver: 7 * mm, Alone: true, First: cutting.FewestChanges, Then: []cutting.Goal{cutting.FewestRolls}}
	if diff := cmp.Diff(rules, made.Rules) + cmp.Diff(taste, made.Taste) + cmp.Diff(cut, made.Cut); diff != "" {
		t.Error(diff)
	}
}

func TestTaskOfRolls(t *testing.T) {
	made := task(t, read(t, fmt.Sprintf(strings.Replace(leaning, "match: free}", `repeat: 640, match: half drop, batch: 4711, price: 30 EUR, available: 4, in_order: true,
  also: [{roll: 5 m, pack: 2, price: 31 EUR, available: 0}, {roll: 15 m, price: 40 EUR}],
  rolls: [{name: 1, length: 9985, begins: 120, flaws: [{from: 3 m, to: 3050}]}, {name: 2, batch: 4688, length: 10 m}, {name: 3, parts: [{length: 6 m, begins: 0}, {length: 4 m, begins: 639}]}]}`, 1), true, "", "", "[]")))
	n := func(i int) *int { return &i }
	l := func(l measure.Length) *measure.Length { return &l }
	euros := func(minor int64) money.Amount { return money.Amount{Minor: minor, Currency: "EUR"} }
	want := paper.Paper{
		Name: "P", Width: 530 * mm, RollLength: 10 * measure.Metre, Repeat: 640 * mm, Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 2},
		Pack: 1, Batch: "4711", Tolerance: paper.StandardTolerance(530*mm, 10*measure.Metre), Price: euros(3000), Available: n(4), InOrder: true,
		Also: []paper.Offer{
			{RollLength: 5 * measure.Metre, Pack: 2, Price: euros(3100), Available: n(0)},
			{RollLength: 15 * measure.Metre, Pack: 1, Price: euros(4000)},
		},
		Rolls: []paper.Roll{
			{Name: "1", Batch: "4711", Length: 9985 * mm, Begins: l(120 * mm), Flaws: []paper.Flaw{{From: 3 * measure.Metre, To: 3050 * mm}}},
			{Name: "2", Batch: "4688", Length: 10 * measure.Metre},
			{Name: "3", Batch: "4711", Parts: []paper.RollPart{{Length: 6 * measure.Metre, Begins: l(0)}, {Length: 4 * measure.Metre, Begins: l(639 * mm)}}},
		},
	}
	if diff := cmp.Diff([]paper.Paper{want}, made.Papers); diff != "" {
		t.Error(diff)
	}
}

// A height of 24 m typed for 2.4 m is asked about, not refused.
func TestUnlikelySizesAreAskedAbout(t *testing.T) {
	j := example(t, "plain-room.yaml")
	j.Room.Height = &job.Span{Left: 24000 * mm, Right: 24000 * mm}
	j.Papers[0].Width = 53 * mm
	codes := map[finding.Code]int{}
	for _, f := range j.Findings() {
		codes[f.Code]++
	}
	if err := j.Check(); err != nil || codes[room.CodeHeightUnlikely] != 4 || codes[paper.WidthUnusual] != 1 {
		t.Errorf("%v, findings %v", err, codes)
	}
}

// A wall measured 300 mm too long shows, and a diagonal tells which of the two
// opposite walls it is. The diagonals are the Pythagorean 3-4-5 in another size.
func TestDiagonalsTellWhichWallIsWrong(t *testing.T) {
	j := read(t, `
firstdrop: 1
units: mm
room:
  height: 2400
  closed: true
  corner: inside 90
  walls: [{name: A, width: 4300}, {name: B, width: 3000}, {name: C, width: 4000}, {name: D, width: 3000}]
papers: [{name: P, width: 530, roll: 10 m, match: free}]
`)
	place := func() (code finding.Code, wall, word string) {
		for _, f := range j.Findings() {
			if f.Code == room.CodeMisclosure {
				return f.Code, f.Place.Wall, f.Word
			}
		}
		return "", "", ""
	}
	if code, _, word := place(); code == "" || word != "A, C" {
		t.Errorf("without diagonals: %q, suspects %q", code, word)
	}
	j.Room.Diagonals = []job.Diagonal{{From: "D|A", To: "B|C", Length: 5000 * mm}, {From: "A|B", To: "C|D", Length: 5000 * mm}}
	if code, wall, word := place(); code == "" || wall != "A" || word != "A" {
		t.Errorf("with diagonals: %q at %q, suspects %q", code, wall, word)
	}
}

func TestNoTaskOfAFaultyJob(t *testing.T) {
	j := example(t, "plain-room.yaml")
	j.Room.Walls[2].Width = 0
	_, err := j.Task()
	want := "test.yaml:17:14: wall C: its width is 0 mm; measure it along the level line"
	if err == nil || err.Error() != want {
		t.Errorf("Task: %v, want %s", err, want)
	}
	if j.Findings() != nil || j.Survey() != nil {
		t.Error("a faulty job has findings or a survey")
	}
	made := &job.Job{Version: 2}
	if err := made.Check(); err == nil || err.Error() != "firstdrop: the version is 2; this program knows version 1" {
		t.Errorf("a job of version 2: %v", err)
	}
}

func ExampleRead() {
	_, err := yaml.Read("spare-room.yaml", []byte(`
firstdrop: 1
units: mm
room:
  height: 2400
  closed: true
  walls:
    - {name: A, width: 4200, openings: [{kind: door, left: 3800, width: 800, height: 2000}]}
    - {name: B, widht: 3600}
    - {name: C, width: 4200}
    - {name: D, width: 3_600}
papers:
  - {name: Ferns, width: 530, roll: 10.05 m, repeat: 640, match: 64/32}
`))
	fmt.Println(err)
	// Output:
	// spare-room.yaml:9:7: wall 2 has no width; write one
	// spare-room.yaml:9:17: "widht" is no key of wall 2; did you mean width?
	// spare-room.yaml:11:25: width: "3_600": digits are written without separators: 1000, not 1_000
	// spare-room.yaml:13:66: match: "64/32" says the repeat is 64 mm, but it is stated as 640 mm; labels print centimetres: write 64/32 cm if so
}

func ExampleJob_Node() {
	j, err := yaml.Read("short.json", []byte(`{"firstdrop": 1, "units": "cm",
		"room": {"closed": false, "walls": [{"name": "A", "width": 420, "height": 240.5}]},
		"papers": [{"name": "Ferns", "width": 53, "roll": "10.05 m", "match": "64/32"}]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := yaml.Write(os.Stdout, j); err != nil {
		fmt.Println(err)
	}
	// Output:
	// firstdrop: 1
	// units: cm
	// room:
	//   closed: false
	//   walls:
	//     - name: A
	//       width: 4200 mm
	//       height: 2405 mm
	// papers:
	//   - name: Ferns
	//     width: 530 mm
	//     roll: 10050 mm
	//     match: 64/32
}
