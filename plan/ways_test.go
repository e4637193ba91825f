package plan

import (
	"math/rand/v2"
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// rows is a paper whose design has rows.
func rows(repeat measure.Length) paper.Paper {
	return paper.Paper{
		Name: "rows", Width: 530 * measure.Millimetre, RollLength: 10050 * measure.Millimetre, Pack: 1, Repeat: repeat,
		Match: paper.Match{Kind: paper.Straight}, Lines: paper.LinesLevel,
	}
}

// anyCrooked is an open run of two or three walls whose ceiling falls by up to 6 mm a
// metre, in whole millimetres, with corners that lean and, now and then, a door.
func anyCrooked(r *rand.Rand) *room.Run {
	const mm = measure.Millimetre
	run := &room.Run{Name: "any"}
	high := 2400 * mm
	for i := range 2 + r.IntN(2) {
		width := measure.Length(900+r.IntN(1800)) * mm
		next := high + measure.Length(r.IntN(25)-12)*mm
		if r.IntN(3) == 0 {
			next = high
		}
		w := room.Wall{Name: string(rune('A' + i)), Width: width, Outline: geom.Ring{{}, {X: width}, {X: width, Y: next}, {Y: high}}}
		if r.IntN(3) == 0 {
			at, lean := measure.Length(100+r.IntN(100))*mm, measure.Length(r.IntN(2)*8)*mm
			w.Openings = []room.Opening{{Kind: room.Door, Name: "door", Outline: geom.Ring{
				{X: at}, {X: at + 650*mm}, {X: at + 650*mm + lean, Y: 2030 * mm}, {X: at + lean, Y: 2030 * mm},
			}}}
		}
		if i > 0 {
			c := room.Corner{Angle: 90 * measure.Degree}
			if r.IntN(2) == 0 {
				c.LeanLeft = measure.Length(r.IntN(11)-5) * mm
			}
			run.Corners = append(run.Corners, c)
		}
		run.Walls = append(run.Walls, w)
		high = next
	}
	return run
}

// Every combination of settings there is, each searched by itself: where a layout is
// said to be settled, none of them weighs less.
func TestNoWayToSetTheWallsIsBetter(t *testing.T) {
	t.Parallel()
	rooms := 60
	if testing.Short() {
		rooms = 8
	}
	r := rand.New(rand.NewPCG(7, 11))
	settled, turned, searched := 0, 0, 0
	for n := range rooms {
		task := asking(anyCrooked(r), rows([]measure.Length{0, 265, 640}[r.IntN(3)]*measure.Millimetre), 45*measure.Millimetre)
		task.Papers[0].Lines = paper.Lines(1 + r.IntN(4))
		p, err := Make(task)
		if err != nil {
			t.Fatal(n, err)
		}
		run := &p.Runs[0]
		if run.Layout.Turns != nil {
			turned++
		}
		if !run.Settled() {
			continue
		}
		settled++
		s := &settler{plan: p, run: 0, task: &task.Runs[0]}
		s.list()
		s.combine(make([]hanging.Setting, len(task.Runs[0].Run.Walls)), 0, func(set []hanging.Setting) {
			fresh := &Plan{Task: task, Runs: make([]RunPlan, 1), Papers: make([]PaperPlan, 1)}
			other, err := fresh.laidAs(0, set)
			if err != nil {
				return // is none for the room
			}
			searched++
			if floor := other.s.floor(); floor+other.s.standing > other.total() {
				t.Errorf("room %d: set as %+v the walls weigh %d, less than the floor %d and %d", n, set, other.total(), floor, other.s.standing)
			}
			if floor := other.s.floorAnyhow(); floor > other.total() {
				t.Errorf("room %d: set as %+v the walls weigh %d, less than the floor of all ways, %d", n, set, other.total(), floor)
			}
			if total := other.total(); total < run.Score {
				t.Errorf("room %d: set as %+v the walls weigh %d, not %d (%+v)", n, set, total, run.Score, run.Layout.Choice.Set)
			}
		})
	}
	t.Logf("%d of %d rooms settled, %d turned, %d combinations searched", settled, rooms, turned, searched)
	if settled < rooms*8/10 || turned < rooms/4 {
		t.Errorf("only %d rooms settled, %d turned", settled, turned)
	}
}

// crookedWalls is an open run of so many walls, all with a ceiling out of level.
func crookedWalls(r *rand.Rand, walls int) *room.Run {
	const mm = measure.Millimetre
	run := &room.Run{Name: "crooked"}
	high := 2400 * mm
	for i := range walls {
		width, next := measure.Length(900+r.IntN(1800))*mm, high+measure.Length(1+r.IntN(12))*mm
		if r.IntN(2) == 0 {
			next = high - measure.Length(1+r.IntN(12))*mm
		}
		run.Walls = append(run.Walls, room.Wall{Name: string(rune('A' + i)), Width: width, Outline: geom.Ring{{}, {X: width}, {X: width, Y: next}, {Y: high}}})
		if i > 0 {
			c := room.Corner{Angle: 90 * measure.Degree}
			if r.IntN(3) == 0 {
				c.LeanRight = measure.Length(r.IntN(9)-4) * mm
			}
			run.Corners = append(run.Corners, c)
		}
		high = next
	}
	return run
}

// Rooms with more ways to set their walls than are searched, against every one of them:
// what is said to be settled is, and no way weighs less than the plan by more than it
// says.
func TestManyCrookedWalls(t *testing.T) {
	t.Parallel()
	rooms, mostListed := 24, 130
	if testing.Short() {
		rooms, mostListed = 16, 64
	}
	r := rand.New(rand.NewPCG(3, 8))
	many, settled, spared := 0, 0, 0
	for n := range rooms {
		task := asking(crookedWalls(r, 4+r.IntN(3)), rows([]measure.Length{0, 265}[r.IntN(2)]*measure.Millimetre), 53*measure.Millimetre)
		task.Papers[0].Lines = paper.Lines(2 + r.IntN(3))
		p, err := Make(task)
		if err != nil {
			t.Fatal(n, err)
		}
		run := &p.Runs[0]
		if run.Ways <= mostWays || run.Ways > mostListed {
			continue
		}
		many++
		if run.Settled() {
			settled++
			spared += run.Ways - run.Searched
		}
		least := int64(never)
		ways, _ := p.ways(0)
		for _, way := range ways {
			fresh := &Plan{Task: task, Runs: make([]RunPlan, 1), Papers: make([]PaperPlan, 1)}
			if other, err := fresh.laidAs(0, way.set); err == nil {
				least = min(least, other.total())
				if floor := other.s.floor(); floor+other.s.standing > other.total() {
					t.Errorf("room %d: the walls weigh %d, less than the floor %d and %d", n, other.total(), floor, other.s.standing)
				}
			}
		}
		if run.Settled() && run.Score > least || run.Score-run.Gain > least {
			t.Errorf("room %d, settled %v: %d, by %d less at the most, but a way weighs %d", n, run.Settled(), run.Score, run.Gain, least)
		}
		t.Logf("room %d: %d ways, %d searched, %v, %d by up to %d, of all %d", n, run.Ways, run.Searched, run.Untried, run.Score, run.Gain, least)
	}
	t.Logf("%d rooms, %d settled, %d ways spared in these", many, settled, spared)
	if 2*settled < many || spared == 0 {
		t.Errorf("of %d rooms %d are settled, %d ways spared", many, settled, spared)
	}
}

// The ways that are searched turn the walls otherwise, each in the way of all those
// alike that weighs least by itself: in a room tilted along A and C four of 576.
func TestWaysThatDiffer(t *testing.T) {
	run := roomtext.Run("closed: A 4000x2400/2412 | B 3000x2412 | C 4000x2412/2400 door(1800+900 0+2030) | D 3000x2400 |")
	task := asking(run, rows(530*measure.Millimetre), 0)
	ways, all := (&Plan{Task: task}).ways(0)
	if !all || len(ways) != 4 {
		t.Fatalf("%d ways, all: %v", len(ways), all)
	}
	if ways[0].set[0].To != hanging.ToCeiling || ways[0].set[2].To != hanging.ToCeiling {
		t.Errorf("the first is %+v, want A and C along the ceiling", ways[0])
	}
}
