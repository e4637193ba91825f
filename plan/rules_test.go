package plan

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

const mm = measure.Millimetre

// pattern is a straight match with a motif in the middle of the paper.
func pattern() *paper.Paper {
	return &paper.Paper{
		Name: "pattern", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 640 * mm, Pack: 1,
		Match: paper.Match{Kind: paper.Straight}, Motif: &paper.Motif{Axis: 265 * mm, Head: 100 * mm, Tall: 250 * mm},
	}
}

// found lays one choice out and returns what the judge finds, by code, with the
// sum of what it weighs beside drops and pieces.
func found(t *testing.T, rt RunTask, p *paper.Paper, c hanging.Choice) ([]finding.Finding, int64) {
	t.Helper()
	h, err := hanging.New(rt.Run, p, hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(c)
	if err != nil {
		t.Fatal(err)
	}
	kill := killPlace{opening: -1}
	for _, k := range killPlaces(rt.Run, nil) {
		if k.kill.Kind == c.Kill.Kind && k.kill.Wall == c.Kill.Wall && (k.kill.Kind == hanging.OnWall || k.kill.Lap == c.Kill.Lap) {
			kill = k
		}
	}
	j := newJudge(&rt, p, DefaultTaste(), plumb(&rt, p))
	quiet := j.score(l, &kill) + j.pieces(l)
	var fs []finding.Finding
	j.out = &fs
	j.raiseLayout(l, &kill)
	w := DefaultTaste().Weights
	return fs, quiet - int64(len(l.Drops))*w.Drop - int64(len(l.Pieces))*w.Piece
}

// told writes a finding on one line: "sliver A 100 width 30".
func told(f finding.Finding) string {
	parts := []string{string(f.Code), f.Place.Wall + f.Place.Corner}
	for _, s := range f.Sizes {
		parts = append(parts, s.Name, fmt.Sprint(int64(s.Value/mm)))
	}
	return strings.Join(append(parts, f.Word), " ")
}

// Each rule on a wall made for it, and on the same wall where it is kept.
func TestRules(t *testing.T) {
	free := &paper.Paper{Name: "free", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1}
	start := func(x int) hanging.Choice { return hanging.Choice{Start: hanging.Start{X: measure.Length(x) * mm}} }
	lined := func(text string, x int) RunTask {
		return RunTask{Run: roomtext.Run(text), Lining: []Line{{Wall: 0, X: measure.Length(x) * mm}}}
	}
	socket := func() RunTask {
		r := roomtext.Run("A 3000x2400")
		r.Walls[0].Fittings = []room.Fitting{{Kind: room.Socket, At: geom.Point{X: 1060 * mm, Y: 300 * mm}, Size: geom.Point{X: 86 * mm, Y: 86 * mm}}}
		return RunTask{Run: r}
	}
	on := func(text string) RunTask { return RunTask{Run: roomtext.Run(text)} }
	tests := []struct {
		name   string
		task   RunTask
		paper  *paper.Paper
		choice hanging.Choice
		want   []string // among what is found, all of these codes and no others of their codes
	}{
		{"a sliver at the end", on("A 2150x2400"), free, start(0), []string{"sliver A width 30"}},
		{"no sliver", on("A 2300x2400"), free, start(0), []string{"!sliver"}},
		{"a seam 30 mm before a door", on("A 4000x2400 door(560+900 0+2000)"), free, start(0), []string{"seam_near_edge A distance 30", "sliver_beside A width 30"}},
		{"a drop over a door that runs past it", on("A 4000x2400 door(530+1000 0+2000)"), free, start(0), []string{"header_overrun A past 60 full 2400 header 400", "sliver_beside A width 60"}},
		{"one that ends over it", on("A 4000x2400 door(530+1100 0+2000)"), free, start(0), []string{"!header_overrun", "!sliver_beside"}},
		{"an opening from floor to ceiling has no header", on("A 4000x2400 furniture(530+1000 0+2400)"), free, start(0), []string{"!header_overrun", "sliver_beside A width 60"}},
		{"a seam near an outside corner", on("A 1100x2400 > B 3000x2400"), free, start(0), []string{"seam_near_fold A distance 40"}},
		{"a seam down the middle", on("A 2120x2400!"), free, start(0), []string{"focal_seam A", "!unequal_ends"}},
		{"ends that differ", on("A 2000x2400!"), free, start(0), []string{"unequal_ends A left 530 right 410"}},
		{"a seam on one of the lining", lined("A 3000x2400", 1065), free, start(0), []string{"lining_seam A distance 5"}},
		{"half a width off", lined("A 3000x2400", 1325), free, start(0), []string{"!lining_seam"}},
		{"a seam across a socket", socket(), free, start(0), []string{"seam_on_fitting A width 86 socket"}},
		{"beside it", socket(), free, start(100), []string{"!seam_on_fitting"}},
		{"a drop ends in the corner", on("A 1060x2400 | B 3000x2400"), free, start(0), []string{"end_in_fold A|B"}},
		{"a wedge", on("A 1200x2400 |0,8 B 3000x2400"), pattern(), start(0), []string{"wedge A|B least 12 most 20"}},
		{"the motif off the centre", on("A 4000x2400!"), pattern(), start(100), []string{"off_centre A off 45"}},
		{"the motif on it", on("A 4000x2400!"), pattern(), start(1735), []string{"!off_centre"}},
		{"a seam between two motifs on it", on("A 4000x2400!"), pattern(), start(410), []string{"!off_centre", "!unequal_ends", "focal_seam A"}},
		{"a ceiling out of level", on("A 4000x2400/2388"), pattern(), start(0), []string{"drift A drift -12 width 4000 height 2400 lean 7"}},
		{"a ceiling built sloping", on("A 4000x2400/1800"), pattern(), start(0), []string{"!drift"}},
		{"level", on("A 4000x2400"), pattern(), start(0), []string{"!drift"}},
		{"cut out on both sides", on("A 3000x2400 window(300+500 900+1000) window(1000+800 900+1000)"), free, start(120), []string{"awkward A between 200"}},
		{"a tall wall", on("A 530x3600"), free, start(0), []string{"awkward A length 3700"}},
		{"laid towards the window, the lap's edge turns away from it", on("A 1200x2400 | B 3000x2400 window(1000+900 900+1200)"), free, start(0), []string{"lap_shadow BA|B"}},
		{"laid away from it", on("A 3000x2400 window(1000+900 900+1200) | B 1200x2400"), free, start(0), []string{"!lap_shadow"}},
		{"no window, no shadow", on("A 1200x2400 | B 3000x2400"), free, start(0), []string{"!lap_shadow"}},
		{
			"a new drop that misses", on("A 1200x2400 | B 3000x2400"), pattern(),
			hanging.Choice{NewDrop: []int{0}},
			[]string{"renewed_miss A|B across -140 along 0 height 2400"},
		},
		{"a new drop of a free match", on("A 1200x2400 | B 3000x2400"), free, hanging.Choice{NewDrop: []int{0}}, []string{"!renewed_miss"}},
	}
	for _, tt := range tests {
		fs, _ := found(t, tt.task, tt.paper, tt.choice)
		var all []string
		for _, f := range fs {
			all = append(all, strings.TrimSpace(told(f)))
		}
		for _, want := range tt.want {
			code, none := strings.CutPrefix(want, "!")
			if none && slices.ContainsFunc(fs, func(f finding.Finding) bool { return string(f.Code) == code }) {
				t.Errorf("%s: %s is found: %q", tt.name, code, all)
			}
			if !none && !slices.Contains(all, want) {
				t.Errorf("%s: not found: %q, but %q", tt.name, want, all)
			}
		}
	}
}

// What a finding says it weighs is what the score holds: the sum of the findings'
// weights is the score, whatever the room.
func TestFindingsAddUpToTheScore(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		run, p := anyroom.Run(rt), anyroom.Paper(rt)
		if p.Repeat > 0 {
			p.Motif = &paper.Motif{Axis: p.Width / 3, Tall: p.Repeat / 2}
		}
		h, err := hanging.New(run, p, hanging.DefaultRules())
		if err != nil {
			rt.Skip(err)
		}
		c := anyroom.Choice(rt, run, p)
		l, err := h.Layout(c)
		if err != nil {
			rt.Skip(err)
		}
		kill := placeOf(run, c.Kill)
		j := newJudge(&RunTask{Run: run}, p, DefaultTaste(), plumb(&RunTask{Run: run}, p))
		want := j.score(l, &kill) + j.pieces(l)
		var fs []finding.Finding
		j.out = &fs
		j.raiseLayout(l, &kill)
		got := int64(len(l.Drops))*j.taste.Weights.Drop + int64(len(l.Pieces))*j.taste.Weights.Piece
		for _, f := range fs {
			if got += f.Weight; f.Weight < 0 {
				rt.Errorf("%s weighs %d", f.Code, f.Weight)
			}
		}
		if got != want {
			rt.Errorf("the findings weigh %d, the score is %d", got, want)
		}
	})
}

// Seen in a mirror, a layout weighs the same. The centre is left out: where two
// sheets lap by a corner's lean just on the centre line, the line lies under both.
func TestMirroredLayoutWeighsTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		run, p := anyroom.Run(rt), anyroom.Paper(rt)
		p.Width = p.Width / 4 * 4
		if p.Repeat > 0 {
			p.Motif = &paper.Motif{Axis: p.Width / 4, Tall: p.Repeat / 2}
		}
		c := anyroom.Choice(rt, run, p)
		m := anyroom.Mirrored(c, run, p)
		a, okA := weighed(run, p, c)
		b, okB := weighed(run.Mirrored(), p.Mirrored(), m)
		if okA != okB || a != b {
			rt.Errorf("%d (%v), mirrored %d (%v)", a, okA, b, okB)
		}
	})
}

func weighed(run *room.Run, p *paper.Paper, c hanging.Choice) (int64, bool) {
	h, err := hanging.New(run, p, hanging.DefaultRules())
	if err != nil {
		return 0, false
	}
	l, err := h.Layout(c)
	if err != nil {
		return 0, false
	}
	kill := placeOf(run, c.Kill)
	taste := DefaultTaste()
	taste.Weights.OffCentre = 0
	j := newJudge(&RunTask{Run: run}, p, taste, plumb(&RunTask{Run: run}, p))
	return j.score(l, &kill) + j.pieces(l), true
}

// The table is whole: every weight of a finding stands in it under its own key,
// and the two go together. What rules ask is held by the program's catalogues.
func TestTableOfRules(t *testing.T) {
	seen := map[finding.Code]bool{}
	weights := map[*int64]string{}
	var w Weights
	for _, r := range Rules {
		if seen[r.Code] {
			t.Errorf("%s stands in the table twice", r.Code)
		}
		seen[r.Code] = true
		if (r.Key == "") != (r.weight == nil) {
			t.Errorf("%s has a weight or a key for one, and not both", r.Code)
		}
		if r.weight != nil {
			p := r.weight(&w)
			if name, ok := weights[p]; ok && name != r.Key {
				t.Errorf("%s and %s are the same weight", name, r.Key)
			}
			weights[p] = r.Key
		}
	}
	// Beside those of findings: a roll, a drop, a piece, a change of batch.
	if got, want := len(weights)+4, reflect.TypeFor[Weights]().NumField(); got != want {
		t.Errorf("%d weights of %d stand in the table", got, want)
	}
}

// The eye: what is over a door counts half, what hangs below it in full.
func TestSeenHeight(t *testing.T) {
	run := roomtext.Run("closed: A 3000x2400 door(500+900 0+2000) window(1800+900 900+1000) | B 3000x2400 | C 3000x2400 | D 3000x2400 |")
	j := newJudge(&RunTask{Run: run}, pattern(), DefaultTaste(), plumb(&RunTask{Run: run}, pattern()))
	for i, want := range []measure.Length{200 * mm, 900*mm + 250*mm} {
		if got := j.walls[0].holes[i].seen; got != want {
			t.Errorf("opening %d: %v counts, want %v", i, got, want)
		}
	}
	if got := j.corners[0].seen; got != 2000*mm { // 1600 below the eye, 800 above it
		t.Errorf("a corner: %v counts, want 2000 mm", got)
	}
	if j.walls[2].regard != firstSeen || j.walls[1].regard != ordinary {
		t.Errorf("wall C is seen first, not %v %v", j.walls[2].regard, j.walls[1].regard)
	}
}

// plumb returns the hanger of a run that hangs plumb.
func plumb(rt *RunTask, p *paper.Paper) *hanging.Hanger {
	h, err := hanging.New(rt.Run, p, hanging.DefaultRules())
	if err != nil {
		panic(err)
	}
	return h
}
