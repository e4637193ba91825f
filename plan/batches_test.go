package plan_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// begun is a paper of which so many rolls of a batch that is sold out are there,
// while another batch is on sale.
func begun(p paper.Paper, rolls int) paper.Paper {
	p.Batch = "new"
	for i := range rolls {
		p.Rolls = append(p.Rolls, paper.Roll{Name: fmt.Sprint(i + 1), Batch: "old", Length: p.RollLength})
	}
	return p
}

// hung tells for each wall of the only run which batches hang on it, from the
// pieces that each batch cuts and the parts of their drops.
func hung(p *plan.Plan) []map[string]bool {
	l := p.Runs[0].Layout
	on := make([]map[string]bool, len(l.Run.Walls))
	for w := range on {
		on[w] = map[string]bool{}
	}
	for _, b := range p.Papers[0].Batches {
		for _, strip := range b.Cuts {
			for _, lie := range strip {
				for _, part := range l.Drops[l.Pieces[lie.Piece].Drop].Parts {
					on[part.Wall][b.Batch] = true
				}
			}
		}
	}
	return on
}

// Two batches never hang on one wall, nor on both sides of an outside corner, nor
// in one drop; where they meet, in an inside corner, a new drop begins, and the
// plan says so.
func TestBatchesMeetInInsideCorners(t *testing.T) {
	t.Parallel()
	two := 0
	for _, text := range []string{
		bedroom, breast,
		"A 2200x2400 | B 1900x2400 window(400+900 900+1100) | C 2600x2400!",
		"closed: A 3200x2400 | B 2400x2400 | C 1700x2400 > D 900x2400 | E 1500x2400 door(300+800 0+2000) | F 3300x2400 |",
		"closed: A 2000x2400 furniture(0+2000 0+2400) | B 2400x2400 | C 2000x2400 | D 2400x2400 |",
	} {
		for _, label := range []paper.Paper{plain(), halfDrop()} {
			for rolls := 1; rolls <= 5; rolls += 2 {
				p := made(t, task(text, begun(label, rolls)))
				name := fmt.Sprintf("%s, %s, %d rolls", text, label.Name, rolls)
				if len(p.Papers[0].Batches) == 2 {
					two++
				}
				checkBatches(t, name, p)
			}
		}
	}
	if two < 12 {
		t.Errorf("only %d plans use two batches", two)
	}
}

func checkBatches(t *testing.T, name string, p *plan.Plan) {
	t.Helper()
	l, on := p.Runs[0].Layout, hung(p)
	told := map[string]bool{}
	for _, f := range p.Findings {
		if f.Code == plan.BatchChange {
			told[f.Place.Corner] = true
		}
	}
	changes, last := 0, ""
	for w := range on {
		if len(on[w]) > 1 {
			t.Errorf("%s: two batches hang on wall %s", name, l.Run.Walls[w].Name)
		}
	}
	for c := range l.Run.Corners {
		here, next := on[c], on[(c+1)%len(on)]
		for batch := range here {
			last = batch
		}
		for batch := range next {
			if last == "" || batch == last {
				continue
			}
			changes++
			corner := l.Run.CornerName(c)
			if l.Run.Corners[c].Kind != room.Inside {
				t.Errorf("%s: the batch changes on outside corner %s", name, corner)
			}
			if len(here) == 1 && !told[corner] {
				t.Errorf("%s: nothing is said of the change in corner %s", name, corner)
			}
			for i := range l.Drops {
				if wallsOf(&l.Drops[i])[c] && wallsOf(&l.Drops[i])[(c+1)%len(on)] {
					t.Errorf("%s: a drop goes on round corner %s, where the batch changes", name, corner)
				}
			}
		}
	}
	if changes != len(told) && on[0] != nil && len(on[0]) > 0 {
		t.Errorf("%s: %d changes, and %d told", name, changes, len(told))
	}
}

func wallsOf(d *hanging.Drop) map[int]bool {
	walls := map[int]bool{}
	for _, part := range d.Parts {
		walls[part.Wall] = true
	}
	return walls
}

// A batch that is enough is used alone, and a change is not made for nothing.
func TestOneBatchIsEnough(t *testing.T) {
	for rolls, want := range map[int]string{0: "new", 8: "old"} {
		p := made(t, task("closed: A 3000x2400 | B 2400x2400 | C 3000x2400 | D 2400x2400 |", begun(plain(), rolls)))
		b := p.Papers[0].Batches
		if len(b) != 1 || b[0].Batch != want || codes(p)[plan.BatchChange] != 0 {
			t.Errorf("%d rolls of the old batch: %d batches, the first %q", rolls, len(b), b[0].Batch)
		}
	}
}

// Where only rolls and changes of batch weigh, no way to begin new drops in
// inside corners and to give walls to batches costs less than the plan's. The
// walls have no openings and one height, so that a roll gives a number of drops
// that is a quotient; everything else is tried out here, every set of corners and
// every way to share out the walls, with nothing of the planner but layouts.
func TestNoAllotmentIsCheaper(t *testing.T) {
	t.Parallel()
	changed := 0
	for seed := range 200 {
		r := rand.New(rand.NewPCG(4, uint64(seed)))
		text, closed := anyWalls(r)
		label := begun(plain(), 1+r.IntN(4))
		ta := task(text, label)
		ta.Cut.Alone = true
		ta.Taste = plan.Taste{Weights: plan.Weights{Roll: 1000, BatchChange: int64(r.IntN(3)) * 400}}
		ta.Runs[0].Fixed.Start = &hanging.Start{X: measure.Length(r.IntN(530)) * mm}
		if closed {
			ta.Runs[0].Fixed.Kill = &plan.Kill{Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: len(ta.Runs[0].Run.Walls) - 1}, Free: true}
		}
		p := made(t, ta)
		got := int64(p.Papers[0].Buy())*1000 + int64(codes(p)[plan.BatchChange])*ta.Taste.Weights.BatchChange
		if p.Papers[0].Missing() > 0 {
			t.Fatalf("%s: paper is missing that can be bought", text)
		}
		want := leastAllotment(t, ta, p.Runs[0].Layout.Choice)
		if got != want {
			t.Errorf("seed %d, %s, %d old rolls: the plan costs %d, the least is %d", seed, text, len(label.Rolls), got, want)
		}
		if codes(p)[plan.BatchChange] > 0 {
			changed++
		}
	}
	if changed < 10 {
		t.Errorf("only %d plans change the batch", changed)
	}
}

// anyWalls draws a run of three to five walls in the notation of roomtext.
func anyWalls(r *rand.Rand) (text string, closed bool) {
	closed = r.IntN(2) == 0
	n := 3 + r.IntN(3)
	walls := make([]string, n)
	for i := range walls {
		walls[i] = fmt.Sprintf("%c %dx2400", 'A'+i, 700+r.IntN(2600))
	}
	text = walls[0]
	for _, w := range walls[1:] {
		text += []string{" | ", " | ", " | ", " > "}[r.IntN(4)] + w
	}
	if closed {
		return "closed: " + text + " |", true
	}
	return strings.TrimSpace(text), false
}

// leastAllotment tries every set of inside corners with new drops, and every way
// to give walls to the two batches that keeps to the rule.
func leastAllotment(t *testing.T, ta *plan.Task, choice hanging.Choice) int64 {
	run, label := ta.Runs[0].Run, &ta.Papers[0]
	h, err := hanging.New(run, label, ta.Rules)
	if err != nil {
		t.Fatal(err)
	}
	least := int64(math.MaxInt64)
	for set := range 1 << len(run.Corners) {
		c := choice
		c.NewDrop = nil
		for i := range run.Corners {
			if set>>i&1 == 1 && run.Corners[i].Kind == room.Inside && (c.Kill.Kind != hanging.AtCorner || c.Kill.Wall != i) {
				c.NewDrop = append(c.NewDrop, i)
			}
		}
		l, err := h.Layout(c)
		if err != nil {
			continue
		}
		for walls := range 1 << len(run.Walls) {
			if cost, ok := shared(ta, l, walls); ok {
				least = min(least, cost)
			}
		}
	}
	return least
}

// shared returns what it costs to hang the walls whose bit is set from the old
// batch and the others from the new one; false when that breaks the rule or there
// is too little of the old one. Each piece is 2.50 m long, four to a roll.
func shared(ta *plan.Task, l *hanging.Layout, walls int) (cost int64, ok bool) {
	old := func(w int) bool { return walls>>w&1 == 1 }
	for i := range l.Drops {
		for _, part := range l.Drops[i].Parts {
			if old(part.Wall) != old(l.Drops[i].Parts[0].Wall) {
				return 0, false
			}
		}
	}
	changes := 0
	for c := range l.Run.Corners {
		if old(c) != old((c+1)%len(l.Run.Walls)) {
			if changes++; l.Run.Corners[c].Kind == room.Outside {
				return 0, false
			}
		}
	}
	fromOld, fromNew := 0, 0
	for i := range l.Pieces {
		if old(l.Drops[l.Pieces[i].Drop].Parts[0].Wall) {
			fromOld++
		} else {
			fromNew++
		}
	}
	rolls := int64(fromNew+3) / 4
	return rolls*1000 + int64(changes)*ta.Taste.Weights.BatchChange, fromOld <= 4*len(ta.Papers[0].Rolls)
}

// Two runs that share a paper in two batches are seen to together.
func TestBatchesOverTwoRuns(t *testing.T) {
	ta := task("A 2650x2400", begun(plain(), 2)) // five drops each
	ta.Runs = append(ta.Runs, plan.RunTask{Run: roomtext.Run("B 2120x2400")})
	p := made(t, ta)
	var names []string
	for _, b := range p.Papers[0].Batches {
		names = append(names, fmt.Sprintf("%s %d", b.Batch, len(b.Cuts)))
	}
	// Nine drops, eight of them from the old rolls at most: the five of A or the
	// four of B, whichever asks for fewer new rolls.
	if slices.Sort(names); !slices.Equal(names, []string{"new 4", "old 5"}) || p.Papers[0].Buy() != 1 {
		t.Errorf("batches %v, %d to buy", names, p.Papers[0].Buy())
	}
}

// Where the run number must change, the odd run hangs on the wall that is seen least, and
// never on the one that is looked at (trade practice on run numbers, as on the page about
// them of wallpaperlady.wordpress.com, tag/run-number). Of 24 drops the shop can give 20;
// the roll of the old batch has four, enough for B or for D. Either may be the hidden one.
func TestPracticeOddRunIsSeenLeast(t *testing.T) {
	for _, hidden := range []int{1, 3} {
		run := roomtext.Run("closed: A 4240x2400! | B 2120x2400 | C 4240x2400 | D 2120x2400 |")
		run.Walls[hidden].Sight = room.Hidden
		label, five := begun(plain(), 1), 5
		label.Available = &five
		p := made(t, asked(run, label))
		on := hung(p)
		if len(p.Papers[0].Batches) != 2 || !on[hidden]["old"] {
			t.Errorf("wall %d is hidden, and the old batch hangs so: %v", hidden, on)
		}
		if on[0]["old"] {
			t.Error("the odd run hangs on the focal wall")
		}
	}
}
