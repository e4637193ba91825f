package plan_test

import (
	"math/rand/v2"
	"testing"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// Crookedness, by pattern type, as practising paperhangers tell it ("WPL", a
// paperhanger's diary, wallpaperlady.wordpress.com, 2015/08/28, 2019-11-02, tags
// off-track, house, wonky): each rule on a room made for it, and the plan by the
// same source's own measure beside the plan with plumb drops.

// tilted is a room whose ceiling is one plane out of level: rising by 12 mm along
// A, falling as much along C.
func tilted() *room.Run {
	run := box(4000*mm, 3000*mm, 2400*mm)
	heights := [4]measure.Length{2400 * mm, 2412 * mm, 2412 * mm, 2400 * mm}
	for i := range run.Walls {
		w := &run.Walls[i]
		w.Outline = geom.Ring{{}, {X: w.Width}, {X: w.Width, Y: heights[(i+1)%4]}, {Y: heights[i]}}
	}
	hole(&run.Walls[2], 1800*mm, 900*mm, 0, 2030*mm)
	run.Walls[2].Openings[0].Kind = room.Door
	return run
}

// lined is the pattern with such lines.
func lined(lines paper.Lines) paper.Paper {
	p := usPattern()
	p.Lines = lines
	return p
}

// sums adds up a size of all findings of a code, without signs.
func sums(p *plan.Plan, code finding.Code, size string) (sum measure.Length) {
	for _, f := range p.Findings {
		if l, _ := f.Size(size); f.Code == code {
			sum += l.Abs()
		}
	}
	return sum
}

// sound fails unless the audit passes a plan.
func sound(t *testing.T, p *plan.Plan) {
	t.Helper()
	for _, v := range audit.Plan(p) {
		t.Errorf("audit: %v", v)
	}
}

// setTo counts the walls of a plan's first run that are set to something.
func setTo(p *plan.Plan, to hanging.SetTo) (n int) {
	for _, s := range p.Runs[0].Layout.Choice.Set {
		if s.To == to {
			n++
		}
	}
	return n
}

// Geometrics: rows parallel to the ceiling even if the drops are not plumb. In a
// tilted room no row runs off the ceiling by a nanometre, where plumb drops leave
// 12 mm on two walls, and the design meets in every corner.
func TestPracticeGeometricsKeepToTheCeiling(t *testing.T) {
	level, plain := made(t, asked(tilted(), lined(paper.LinesLevel))), made(t, asked(tilted(), usPattern()))
	sound(t, level)
	sound(t, plain)
	if d := sums(plain, plan.Drift, "drift"); d != 24*mm || setTo(plain, hanging.ToCeiling) != 0 {
		t.Errorf("plumb, rows run off the ceiling by %v in all, want 24 mm", d)
	}
	if d := sums(level, plan.Drift, "drift"); d != 0 || codes(level)[plan.CornerStep] > 0 {
		t.Errorf("rows run off the ceiling by %v, and step in %d corners", d, codes(level)[plan.CornerStep])
	}
	// A rises by 12 mm in 4 m: over its 2412 mm edges lean by 7.236 mm.
	for _, f := range level.Findings {
		off, _ := f.Size("off")
		if f.Code == plan.OffPlumb && f.Place.Wall == "A" && off != -7236*measure.Micrometre {
			t.Errorf("the drops of A lean by %v", off)
		}
	}
	if codes(level)[plan.OffPlumb] != 2 {
		t.Errorf("edges run off plumb on %d walls, want A and C", codes(level)[plan.OffPlumb])
	}
}

// Florals and loose designs: matched in the corners, ceiling and floor let drift.
// In the room of WPL 2015/08/28 (R32), up to 1.5 in out of plumb from floor to
// ceiling, plumb drops would show a wedge of that size.
func TestPracticeLooseDesignsMatchInTheCorners(t *testing.T) {
	run := roomtext.Run("A 2438x2438 |19,-19 B 1524x2438")
	loose, plain := made(t, asked(run, lined(paper.LinesLoose))), made(t, asked(run, usPattern()))
	sound(t, loose)
	wedge := func(p *plan.Plan) measure.Length { return sums(p, plan.Wedge, "most") - sums(p, plan.Wedge, "least") }
	if setTo(loose, hanging.ToLeft)+setTo(loose, hanging.ToRight) == 0 {
		t.Errorf("no wall is set to its neighbour; the design misses in the corners by %v, plumb by %v", wedge(loose), wedge(plain))
	}
	for _, s := range loose.Runs[0].Layout.Seams {
		if s.InCorner && s.Wall == 1 && s.Kind != hanging.KillSeam && s.Across.Length() > measure.Nanometre {
			t.Errorf("in the corner that leans the design misses unevenly, by %v", s.Across)
		}
	}
}

// Stripes: parallel to the nearest casing matters more than plumb.
func TestPracticeStripesKeepToTheCasing(t *testing.T) {
	run := tilted()
	door := &run.Walls[2].Openings[0]
	for i := range door.Outline { // its frame leans by 10 mm over its height
		if door.Outline[i].Y > 0 {
			door.Outline[i].X += 10 * mm
		}
	}
	stripes := paper.Paper{
		Name: "stripes", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1, Lines: paper.LinesUpright,
	}
	p := made(t, asked(run, stripes))
	sound(t, p)
	if setTo(p, hanging.ToCasing) != 1 || codes(p)[plan.OffCasing] > 0 {
		t.Errorf("set to %v, off the casing %d times", p.Runs[0].Layout.Choice.Set, codes(p)[plan.OffCasing])
	}
	plain := made(t, asked(run, usPattern()))
	_, y := run.Walls[2].Outline.Bounds()
	if off := sums(plain, plan.OffCasing, "off"); off != (10*mm).Scaled(int64(y.Length()), int64(2030*mm)) {
		t.Errorf("plumb drops run off the casing by %v", off)
	}
}

// What is fixed is kept to, and the rest searched.
func TestFixedSettings(t *testing.T) {
	ta := asked(tilted(), lined(paper.LinesLevel))
	ta.Runs[0].Fixed.Set = []plan.WallSetting{{Wall: 0}, {Wall: 2}}
	p := made(t, ta)
	sound(t, p)
	if n := setTo(p, hanging.ToCeiling); n != 0 {
		t.Errorf("%d walls are set to the ceiling, though they are to hang plumb", n)
	}
	ta = asked(tilted(), usPattern())
	ta.Runs[0].Fixed.Set = []plan.WallSetting{{Wall: 0, Setting: hanging.Setting{To: hanging.ToCeiling, Meets: hanging.MeetLeft}}}
	p = made(t, ta)
	sound(t, p)
	if codes(p)[plan.OffPlumb] != 1 || sums(p, plan.CornerStep, "along") != 12*mm {
		t.Errorf("A alone set to its ceiling: %v, steps of %v, want the 12 mm that it rises, all in one corner", codes(p), sums(p, plan.CornerStep, "along"))
	}
}

// Alternatives keep the settings that the best plan has.
func TestAlternativesAreSetAlike(t *testing.T) {
	as, err := plan.Alternatives(asked(tilted(), lined(paper.LinesLevel)), 5)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range as {
		sound(t, a.Plan)
		if setTo(a.Plan, hanging.ToCeiling) != 2 && setTo(a.Plan, hanging.ToCeiling) != 4 {
			t.Errorf("an alternative is set to %v", a.Plan.Runs[0].Layout.Choice.Set)
		}
	}
}

// 300 crooked rooms, their walls set anyhow: the audit passes, and what is told of
// drift, plumb and steps is what follows from the survey by hand:
//
//	drift off the ceiling = fall of the ceiling − rise of the rows
//	step in a corner      = height of the rows on its right − on its left
func TestCrookedRoomsSetAnyhow(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(2, 3))
	rooms := 300
	if testing.Short() {
		rooms = 40
	}
	for n := range rooms {
		run := crooked(r)
		ta := asked(run, usPattern())
		ta.Runs[0].Fixed.Start = &hanging.Start{Wall: n % 4, X: measure.Length(r.IntN(500)) * mm}
		for w := range run.Walls {
			s := plan.WallSetting{Wall: w, Setting: hanging.Setting{Meets: hanging.Meets(r.IntN(3))}}
			if r.IntN(2) == 0 {
				s.To = hanging.ToCeiling
			}
			if w == 1 && r.IntN(3) == 0 {
				s.To = hanging.ToLeft
			}
			ta.Runs[0].Fixed.Set = append(ta.Runs[0].Fixed.Set, s)
		}
		pl, err := plan.Make(ta)
		if err != nil {
			continue // walls that wait for one another
		}
		sound(t, pl)
		checkStanding(t, n, run, pl)
		if t.Failed() {
			return
		}
	}
}

// checkStanding reckons drifts and steps from the survey and the leans told.
func checkStanding(t *testing.T, n int, run *room.Run, pl *plan.Plan) {
	t.Helper()
	lean, drift, step := map[string]measure.Length{}, map[string]measure.Length{}, map[string]measure.Length{}
	for _, f := range pl.Findings {
		switch f.Code {
		case plan.OffPlumb:
			lean[f.Place.Wall], _ = f.Size("off")
		case plan.Drift:
			drift[f.Place.Wall], _ = f.Size("drift")
		case plan.CornerStep:
			step[f.Place.Corner], _ = f.Size("along")
		}
	}
	for i := range run.Walls {
		w := &run.Walls[i]
		_, y := w.Outline.Bounds()
		fall := w.Outline[2].Y - w.Outline[3].Y
		rise := -lean[w.Name].Scaled(int64(w.Width), int64(y.Length()))
		if d := fall - rise - drift[w.Name]; d.Abs() > 2 { // the lean was rounded
			t.Errorf("room %d, wall %s: falls %v, rows rise %v, told %v", n, w.Name, fall, rise, drift[w.Name])
		}
	}
	turns := pl.Runs[0].Layout.Turns
	for i := range run.Corners {
		if turns == nil {
			continue
		}
		// A row that passes the datum's height at the left end of each wall, lifted.
		want := turns[(i+1)%4].Lift - (turns[i].Lift + turns[i].Rise)
		if got := step[run.CornerName(i)]; got != want {
			t.Errorf("room %d, corner %s: step %v, want %v", n, run.CornerName(i), got, want)
		}
	}
}

// Ways are not mixed within one sight line (WPL, as above). In a corner between two walls
// with doors, both ceilings falling, one wall set to its ceiling and the other plumb is
// found fault with; in a hidden corner it is not; and the search, left free, sets both
// alike.
func TestPracticeWaysAreNotMixed(t *testing.T) {
	run := roomtext.Run("A 3000x2400/2390 door(1000+800 0+2030) | B 2800x2390/2380 door(900+800 0+2030)")
	mixed := func(set []plan.WallSetting) int {
		ta := asked(run, lined(paper.LinesLevel))
		ta.Runs[0].Fixed.Set = set
		p := made(t, ta)
		sound(t, p)
		return codes(p)[plan.MixedWays]
	}
	toCeiling, byHand := hanging.Setting{To: hanging.ToCeiling}, []plan.WallSetting{{Wall: 1}}
	byHand = append(byHand, plan.WallSetting{Wall: 0, Setting: toCeiling})
	if n := mixed(byHand); n != 1 {
		t.Errorf("A along its ceiling, B plumb: found %d times, want once", n)
	}
	if n := mixed(nil); n != 0 {
		t.Errorf("the search mixes ways in %d corners", n)
	}
	run.Corners[0].Sight = room.Hidden
	if n := mixed(byHand); n != 0 {
		t.Errorf("in a hidden corner it is found %d times", n)
	}
}
