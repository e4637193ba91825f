package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
)

// twoRooms are small rooms in one paper, each a run of its own.
func twoRooms(r *rand.Rand) *Task {
	p := *pattern()
	p.Motif, p.Repeat = nil, measure.Length(200+r.IntN(500))*mm
	if r.IntN(2) == 0 {
		p.Match = paper.Match{Kind: paper.Offset, Num: 1, Den: 2}
	}
	t := &Task{Papers: []paper.Paper{p}, Rules: hanging.DefaultRules(), Cut: DefaultCut(), Taste: DefaultTaste(), Step: 5 * mm}
	for i := range 2 {
		h := 2200 + r.IntN(600)
		text := "closed:"
		for w := range 4 {
			width := 1200 + r.IntN(1800)
			text += fmt.Sprintf(" %c%d %dx%d", 'A'+w, i+1, width, h)
			switch x := 200 + r.IntN(200); w {
			case 0:
				text += fmt.Sprintf(" door(%d+750 0+2000)", x)
			case 2:
				text += fmt.Sprintf(" window(%d+700 900+1000)", x)
			}
			text += " |"
		}
		t.Runs = append(t.Runs, RunTask{Run: roomtext.Run(text)})
	}
	return t
}

// Runs that share a paper never weigh more together than chosen one after another,
// and sometimes less; and nothing of the pool weighs less than what is kept: every
// combination is cut here, without bounds.
func TestTogether(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(5, 5))
	better, cases := 0, 12
	if testing.Short() {
		cases = 4
	}
	for n := range cases {
		ta := twoRooms(r)
		runs, p := inTurn(t, ta)
		before := looksAndRolls(t, p, runs)
		pools := p.newPool(allRuns(ta), runs)
		p.together(0, runs)
		after := looksAndRolls(t, p, runs)
		if after > before {
			t.Errorf("case %d: %d together, %d one after another", n, after, before)
		}
		if after < before {
			better++
		}
		if least := pools.everyWay(); after != least && least < before {
			t.Errorf("case %d: %d is kept, %d is in the pool", n, after, least)
		}
	}
	if better == 0 {
		t.Error("in no case do the runs weigh less together than one after another")
	}
	t.Logf("better in %d of %d", better, cases)
}

func allRuns(t *Task) (of []int) {
	for i := range t.Runs {
		of = append(of, i)
	}
	return of
}

// inTurn lays the runs out one after another.
func inTurn(t *testing.T, ta *Task) ([]laid, *Plan) {
	t.Helper()
	p := &Plan{Task: ta, Runs: make([]RunPlan, len(ta.Runs)), Papers: make([]PaperPlan, len(ta.Papers))}
	runs := make([]laid, len(ta.Runs))
	for i := range runs {
		var err error
		if runs[i], err = p.layOut(i); err != nil {
			t.Fatal(err)
		}
	}
	return runs, p
}

// looksAndRolls weighs all runs with the rolls that they take together.
func looksAndRolls(t *testing.T, p *Plan, runs []laid) (total int64) {
	t.Helper()
	var pieces []cutting.Piece
	for r := range runs {
		c := candidate{choice: p.Runs[r].Layout.Choice, kill: runs[r].best.kill}
		runs[r].s.layOut(&c)
		total += c.score
		pieces = appendPieces(pieces, p.Runs[r].Layout)
	}
	n := runs[0].s.countOf(pieces, map[string]*count{})
	if n.err != nil {
		t.Fatal(n.err)
	}
	return total + int64(n.exact())*p.Task.Taste.Weights.Roll
}

// everyWay returns the least that any combination of a pool weighs.
func (b *pool) everyWay() int64 {
	least := int64(math.MaxInt64)
	var walk func(k int, looks int64, pieces []cutting.Piece)
	walk = func(k int, looks int64, pieces []cutting.Piece) {
		if k == len(b.of) {
			n := b.first.countOf(pieces, map[string]*count{})
			least = min(least, looks+int64(n.exact())*b.plan.Task.Taste.Weights.Roll)
			return
		}
		for i := range b.of[k] {
			c := &b.of[k][i]
			walk(k+1, looks+c.score, append(pieces[:len(pieces):len(pieces)], c.pieces...))
		}
	}
	walk(0, 0, nil)
	return least
}
