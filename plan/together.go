package plan

import (
	"cmp"
	"math"
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// Runs that share a paper share its rolls: what is best for each by itself, or
// after those before it, need not be best for all. So when each has been laid out,
// the few best layouts of each are tried together, every combination of them:
//
//	dado   ① ② ③ ④ …
//	          ╲            looks of all + rolls of all
//	above  ① ② ③ ④ …
//
// Combinations are gone through in order, the best looking first, and left out
// where looks and length alone cannot beat the best found; so the best of the pool
// is found, and of equals the layouts that were chosen one after another stay.

// How many combinations are looked at, and how many layouts of a run are tried at
// the most.
const (
	mostTogether = 1024
	mostOfRun    = 12
)

// pooled is one layout of a run with what it weighs by itself, without rolls.
type pooled struct {
	candidate
	pieces []cutting.Piece
	length measure.Length
	key    string
}

// pool is a choice of layouts for each run that shares a paper.
type pool struct {
	plan  *Plan
	first *search // of the first of the runs
	roll  measure.Length
	of    [][]pooled
	looks []int64          // the least of the runs from one on
	rest  []measure.Length // the shortest of the runs from one on
	known map[string]*count
	at    []int // as tried

	least int64
	best  []int
}

// together chooses anew among the best layouts of all runs in paper i.
func (p *Plan) together(i int, runs []laid) {
	label := &p.Task.Papers[i]
	of := p.Task.runsIn(i)
	if len(of) < 2 || len(lots(label)) > 1 || label.InOrder {
		return
	}
	b := p.newPool(of, runs)
	b.try(0, 0, 0)
	if !slices.ContainsFunc(b.best, func(i int) bool { return i > 0 }) {
		return
	}
	for k, r := range of {
		if b.best[k] == 0 {
			continue
		}
		c := b.of[k][b.best[k]].candidate
		runs[r].best = runs[r].s.anchored(c)
		p.Runs[r].Untried = append(p.Runs[r].Untried, TogetherUntried)
	}
	p.weighTogether(of, runs)
}

// newPool gathers the best layouts of runs, those chosen first.
func (p *Plan) newPool(of []int, runs []laid) *pool {
	label := &p.Task.Papers[p.Task.Runs[of[0]].Paper]
	b := &pool{plan: p, first: runs[of[0]].s, known: map[string]*count{}, at: make([]int, len(of)), least: math.MaxInt64}
	if b.first.lot.stock == nil {
		b.roll = label.RollLength - p.Task.Cut.Lead + p.Task.Cut.Loss
	}
	most := mostOfRun
	for most > 1 && math.Pow(float64(most), float64(len(of))) > mostTogether {
		most--
	}
	for _, r := range of {
		b.of = append(b.of, runs[r].pooled(most))
	}
	b.looks, b.rest = make([]int64, len(of)+1), make([]measure.Length, len(of)+1)
	for k := len(of) - 1; k >= 0; k-- {
		looks, length := b.of[k][0].score, b.of[k][0].length
		for _, c := range b.of[k] {
			looks, length = min(looks, c.score), min(length, c.length)
		}
		b.looks[k], b.rest[k] = b.looks[k+1]+looks, b.rest[k+1]+length
	}
	return b
}

// pooled returns up to so many layouts of a run that differ in their pieces or in
// what they weigh: the one chosen, then the others, the least by looks and rolls of
// their own first.
func (r *laid) pooled(most int) (out []pooled) {
	add := func(c candidate) {
		s := r.s
		if s.layOut(&c); c.layout == nil {
			return
		}
		n := pooled{candidate: c, pieces: appendPieces(nil, c.layout)}
		for _, q := range n.pieces {
			n.length += q.Length
		}
		n.key = s.key(n.pieces)
		same := func(o pooled) bool { return o.key == n.key && o.score <= n.score }
		if len(out) < most && !slices.ContainsFunc(out, same) {
			out = append(out, n)
		}
	}
	add(r.best)
	if most > 1 && !r.s.isFixed() {
		s := *r.s
		s.base, s.counts, s.best = nil, map[string]*count{}, candidate{}
		for _, c := range s.traded() {
			add(c)
		}
	}
	return out
}

// How many choices of those that need alike are laid out, and how many in all.
const (
	mostAlike  = 3
	mostTraded = 60
)

// traded returns layouts that look as good as can be for the paper that they need:
// of the choices whose pieces and rolls come to the same at the least, the few that
// look best; the least of all first.
func (s *search) traded() []candidate {
	return s.leastOf(func(c *choiceAt) family { return family{rolls: c.rolls} }, mostAlike, mostTraded)
}

// isFixed reports whether the user has left nothing to choose that changes pieces.
func (s *search) isFixed() bool {
	f := &s.run.Fixed
	return f.Start != nil && (f.Kill != nil || !s.run.Run.Closed)
}

// try goes through the layouts of run k and of those after it.
func (b *pool) try(k int, looks int64, length measure.Length) {
	if k == len(b.of) {
		b.weigh(looks)
		return
	}
	order := make([]int, len(b.of[k]))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.of[k][x].score, b.of[k][y].score) })
	if k == 0 { // those chosen one after another first, so that they stay among equals
		b.weigh(b.chosen())
	}
	for _, i := range order {
		c := &b.of[k][i]
		if b.bound(looks+c.score+b.looks[k+1], length+c.length+b.rest[k+1]) >= b.least {
			continue
		}
		b.at[k] = i
		b.try(k+1, looks+c.score, length+c.length)
	}
	b.at[k] = 0
}

// chosen returns what the layouts chosen weigh without rolls.
func (b *pool) chosen() (looks int64) {
	for k := range b.of {
		looks += b.of[k][0].score
	}
	return looks
}

// bound returns what layouts of so much length weigh at the least.
func (b *pool) bound(looks int64, length measure.Length) int64 {
	if b.roll <= 0 {
		return looks
	}
	return looks + int64((length+b.roll-1)/b.roll)*b.plan.Task.Taste.Weights.Roll
}

// weigh counts the rolls of the layouts at hand and keeps them if they are the best.
func (b *pool) weigh(looks int64) {
	w := b.plan.Task.Taste.Weights.Roll
	var pieces []cutting.Piece
	for k, i := range b.at {
		pieces = append(pieces, b.of[k][i].pieces...)
	}
	n := b.first.countOf(pieces, b.known)
	if n.err != nil || looks+int64(n.least)*w >= b.least {
		return
	}
	if total := looks + int64(n.exact())*w; total < b.least {
		b.least, b.best = total, slices.Clone(b.at)
	}
}

// weighTogether notes the layouts of runs that share a paper, each with the rolls
// that it needs together with those before it.
func (p *Plan) weighTogether(of []int, runs []laid) {
	var pieces []cutting.Piece
	for _, r := range of {
		s, c := runs[r].s, runs[r].best
		s.base = pieces
		s.layOut(&c)
		pieces = appendPieces(slices.Clone(pieces), c.layout)
		if n := s.countOf(pieces, map[string]*count{}); n.err == nil {
			c.score += int64(n.exact()) * p.Task.Taste.Weights.Roll
		}
		runs[r].best = c
		p.Runs[r].Layout, p.Runs[r].Score = c.layout, runs[r].total()
	}
}
