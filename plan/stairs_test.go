package plan_test

import (
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// Order of hanging, as the trade tells it; the sources are those of practice_test.go,
// for stairs lets-do-diy.com/projects-and-advice/wallpapering-a-stairwell and
// diydoctor.org.uk/projects/wallpapering-a-stairwell.htm.

// stairs is a wall beside stairs that rise by 1900 mm, with its ceiling rising along or
// level.
func stairs(level bool) room.Wall {
	w := room.Wall{Name: "stairs", Width: 4300 * mm, Outline: geom.Ring{
		{}, {X: 900 * mm}, {X: 3460 * mm, Y: 1900 * mm}, {X: 4300 * mm, Y: 1900 * mm}, {X: 4300 * mm, Y: 4350 * mm}, {X: 2600 * mm, Y: 4350 * mm}, {Y: 2420 * mm},
	}}
	if level {
		w.Outline[5], w.Outline[6] = geom.Point{X: 2000 * mm, Y: 4350 * mm}, geom.Point{Y: 4350 * mm}
	}
	return w
}

// longestOf returns of each drop the longest piece, and of all.
func longestOf(l *hanging.Layout) (of []measure.Length, most measure.Length) {
	of = make([]measure.Length, len(l.Drops))
	for _, p := range l.Pieces {
		of[p.Drop] = max(of[p.Drop], p.Length)
		most = max(most, p.Length)
	}
	return of, most
}

// On stairs the longest drop is hung first, and the rest to both sides of it. It is so
// whichever way the stairs rise and however the design runs; without the rule a focal
// wall would begin in its middle, others at the left.
func TestPracticeLongestDropFirstOnStairs(t *testing.T) {
	t.Parallel()
	landing := room.Wall{Name: "landing", Width: 1050 * mm, Outline: geom.Ring{{Y: 1900 * mm}, {X: 1050 * mm, Y: 1900 * mm}, {X: 1050 * mm, Y: 4350 * mm}, {Y: 4350 * mm}}}
	hall := room.Wall{Name: "hall", Width: 2100 * mm, Outline: geom.Ring{{}, {X: 2100 * mm}, {X: 2100 * mm, Y: 2420 * mm}, {Y: 2420 * mm}}}
	corner := room.Corner{Angle: 90 * measure.Degree}
	focal := stairs(false)
	focal.Sight = room.Focal
	reversing := plain()
	reversing.Match.Reversing = true
	long := usPattern()
	long.RollLength *= 2
	for name, run := range map[string]*room.Run{
		"alone":                     {Walls: []room.Wall{stairs(false)}},
		"a level ceiling":           {Walls: []room.Wall{stairs(true)}},
		"looked at":                 {Walls: []room.Wall{focal}},
		"between hall and landing":  {Walls: []room.Wall{hall, stairs(false), landing}, Corners: []room.Corner{corner, corner}},
		"the well's high end first": {Walls: []room.Wall{flat(1200*mm, 4350*mm).Walls[0], stairs(true)}, Corners: []room.Corner{corner}},
	} {
		for _, p := range []paper.Paper{plain(), halfDrop(), long, reversing} {
			for _, r := range []*room.Run{run, run.Mirrored()} {
				r.Name = "run"
				pl := made(t, asked(r, p))
				l := pl.Runs[0].Layout
				of, most := longestOf(l)
				for i := range l.Drops {
					if l.Drops[i].Number == 1 && of[i] < most {
						t.Errorf("%s, %s: the first drop is %v long, another %v", name, p.Name, of[i], most)
					}
				}
			}
		}
	}
}

// What is fixed goes before that rule.
func TestStairsBeginAsFixed(t *testing.T) {
	ta := asked(&room.Run{Name: "run", Walls: []room.Wall{stairs(false)}}, plain())
	ta.Runs[0].Fixed.Start = &hanging.Start{X: 4300*mm - 530*mm}
	if got := made(t, ta).Runs[0].Layout.Choice.Start; got != *ta.Runs[0].Fixed.Start {
		t.Errorf("begins at %+v", got)
	}
}

// Headers and sills are hung in sequence, never left till last, unless a header is the
// place where the run closes; that is hung last of all on its side.
func TestPracticeHeadersInSequence(t *testing.T) {
	for _, run := range []string{
		bedroom, breast,
		"A 4000x2440 door(900+900 0+2030) window(2300+1000 850+1200)",
		"closed: A 4000x2440! | B 3100x2440 window(900+1300 850+1250) | C 4000x2440 door(300+900 0+2059) window(2000+1400 900+1200) | D 3100x2440 |",
	} {
		l := made(t, task(run, usPattern())).Runs[0].Layout
		of, most := longestOf(l)
		short := 0
		for i := range l.Drops {
			d := &l.Drops[i]
			if d.Number == 0 || of[i] == most {
				continue
			}
			short++
			for _, q := range l.Seams { // beside it, towards drop 0, what hangs already
				if before := q.Left; d.Index > 0 && q.Right == i && before != i && q.Kind != hanging.KillSeam && l.Drops[before].Number > 0 {
					if l.Drops[before].Number != d.Number-1 {
						t.Errorf("%s: drop %d, a short one, is hung after %d", run, d.Number, l.Drops[before].Number)
					}
				}
				if before := q.Right; d.Index < -1 && q.Left == i && before != i && q.Kind != hanging.KillSeam && l.Drops[before].Number > 0 {
					if l.Drops[before].Number != d.Number-1 {
						t.Errorf("%s: drop %d, a short one, is hung after %d", run, d.Number, l.Drops[before].Number)
					}
				}
			}
		}
		if short == 0 {
			t.Errorf("%s: no header or sill is hung", run)
		}
		for _, q := range l.Seams {
			if q.Kind != hanging.KillSeam {
				continue
			}
			last := 0
			for i := range l.Drops {
				last = max(last, l.Drops[i].Number)
			}
			if n := max(l.Drops[q.Left].Number, l.Drops[q.Right].Number); n != last {
				t.Errorf("%s: the run closes with drop %d of %d", run, n, last)
			}
		}
	}
}

// WA: find the worst spot of the room, with many openings or a narrow pier, plan seams
// there first, and work outwards both ways. A hanger who does so is followed here: of all
// starts on that wall, to 5 mm, those at which the fewest of WA's rules for seams are
// broken on it; of these, what breaks the fewest in the room. The search, told nothing of
// a worst spot, breaks no more of them there, nor in the room.
func TestPracticeWorstSpotFirst(t *testing.T) {
	t.Parallel()
	broken := func(p *plan.Plan, wall string) (n int) {
		for _, f := range p.Findings {
			switch f.Code {
			case plan.Sliver, plan.SliverBeside, plan.SeamNearEdge, plan.SeamNearFold, plan.HeaderOverrun:
				if wall == "" || f.Place.Wall == wall {
					n++
				}
			}
		}
		return n
	}
	for _, tt := range []struct {
		spot, wall, run string
	}{
		{
			"three windows with about 1 ft between: WPL 2020/05/03 (R37)", "A",
			"closed: A 4200x2440 window(700+800 900+1200) window(1800+800 900+1200) window(2900+800 900+1200) | B 3100x2440 | C 4200x2440 door(300+900 0+2030) | D 3100x2440 |",
		},
		{
			"a narrow pier between a cabinet and a door", "B",
			"A 3000x2440 | B 3600x2440 furniture(600+900 0+2100) door(1750+900 0+2030) | C 3000x2440",
		},
		{
			"a door, a window and a cabinet, spaces of 4 to 11 in: WPL 2014/05/08", "B",
			"A 2500x2440 | B 3400x2440 door(280+840 0+2030) window(1320+700 900+1200) furniture(2120+1100 0+2100) | C 2500x2440",
		},
		{
			"four narrow windows, piers of 4 in", "A",
			"A 2900x2440 window(450+420 900+1200) window(970+420 900+1200) window(1490+420 900+1200) window(2010+420 900+1200) | B 3100x2440 > C 600x2440",
		},
		{
			"two doors in a narrow hall", "B",
			"closed: A 3300x2440 | B 1900x2440 door(90+762 0+2030) door(960+840 0+2030) | C 3300x2440 door(1200+840 0+2030) | D 1900x2440 window(500+900 900+1200) |",
		},
	} {
		ta := task(tt.run, usPattern())
		best := made(t, ta)
		wall := int(tt.wall[0] - 'A')
		there, all, starts, breaking := 1<<30, 1<<30, 0, 0
		for x := measure.Length(0); x < ta.Papers[0].Width; x += 5 * mm {
			hanger := task(tt.run, usPattern())
			hanger.Runs[0].Fixed.Start = &hanging.Start{Wall: wall, X: x}
			p, err := plan.Make(hanger)
			if err != nil {
				t.Fatal(err)
			}
			at, in := broken(p, tt.wall), broken(p, "")
			if starts++; at > 0 {
				breaking++
			}
			if at < there || at == there && in < all {
				there, all = at, in
			}
		}
		if 2*breaking < starts {
			t.Errorf("%s: %d of %d starts break a rule there, which is no bad spot", tt.spot, breaking, starts)
		}
		t.Logf("%s: %d of %d starts break a rule, at best %d broken there, %d in the room; the plan %d and %d", tt.spot, breaking, starts, there, all, broken(best, tt.wall), broken(best, ""))
		if broken(best, tt.wall) > there || broken(best, "") > all {
			t.Errorf("%s: the plan breaks %d rules there and %d in the room, a hanger who began there %d and %d", tt.spot, broken(best, tt.wall), broken(best, ""), there, all)
		}
	}
}
