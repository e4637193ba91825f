package plan

import (
	"math"
	"slices"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/room"
)

// Which walls are hung from which batch.
//
// Rolls of two printings never differ so little that it does not show where
// they meet. Where light changes it shows least: so a batch may change only in
// an inside corner, and only where no drop goes on round it:
//
//	 A │ B   C │ D         walls that a drop or an outside corner ties together
//	   │     │ │           make a zone; each zone is hung from one batch
//	 ──┴─────┼─┴──         here A, B with C, and D are three zones
//	         └ outside corner
//
// If the rolls of one batch are enough, they are used alone. Else new drops are
// tried in every few corners, and every way to give the zones to batches: the
// least to buy wins, a change of batch weighing as the taste says, less in a hidden
// corner and more beside a focal wall. Of ways as good the one wins in which the batch
// that hangs least is seen least.

// allotment is what is cut from one lot.
type allotment struct {
	lot  *lot
	refs []PieceRef // in the order of the runs and of hanging
}

// laid is a run's search and the layout it has chosen.
type laid struct {
	s    *search
	best candidate
}

// How many ways to give zones to batches are tried for each layout, and how
// many corners may get a new drop.
const (
	mostAllotments = 1024
	mostCorners    = 12
)

// allot gives the pieces of paper i to the lots of its rolls. It may begin new
// drops at corners where batches change.
func (p *Plan) allot(i int, runs []laid) []allotment {
	all := lots(&p.Task.Papers[i])
	if len(all) < 2 || len(p.refs(i)) == 0 {
		return []allotment{{&all[0], p.refs(i)}}
	}
	a := &allotter{plan: p, paper: i, lots: all, costs: map[string]batchCost{}, least: math.MaxInt64}
	a.runs = p.Task.runsIn(i)
	for _, r := range a.runs {
		c := runs[r].best
		runs[r].s.layOut(&c)
		a.layouts = append(a.layouts, c)
	}
	a.try()
	a.renew(runs, 0, len(all))
	if a.best == nil {
		return []allotment{{&all[0], p.refs(i)}}
	}
	for k, r := range a.runs {
		runs[r].best = a.kept[k]
		p.Runs[r].Layout = a.kept[k].layout
	}
	return a.allotments()
}

// allotter looks for the best way to hang one paper from several batches.
type allotter struct {
	plan    *Plan
	paper   int
	lots    []lot
	runs    []int       // that hang the paper
	layouts []candidate // of these runs, as tried
	costs   map[string]batchCost

	least int64
	odd   int         // how much the batch that hangs least is seen, in the best
	best  []int       // lot of each zone
	zones [][]int     // zone of each wall, by run, of the best
	kept  []candidate // layouts of the best
}

// batchCost is what cutting a set of pieces from a lot comes to.
type batchCost struct {
	cost int64
	ok   bool
}

// renew tries new drops in up to so many inside corners, from a corner on.
func (a *allotter) renew(runs []laid, from, corners int) {
	if corners == 0 {
		return
	}
	at := 0
	for k, r := range a.runs {
		run := a.plan.Task.Runs[r].Run
		for c := range run.Corners {
			before := a.layouts[k]
			if at++; at <= from || at > mostCorners || !mayRenew(run, &before.choice, c) || slices.Contains(a.plan.Task.Runs[r].Fixed.Carry, c) {
				continue
			}
			next := before
			next.choice.NewDrop = append(slices.Clone(before.choice.NewDrop), c)
			runs[r].s.layOut(&next)
			if next.layout == nil {
				continue
			}
			a.layouts[k] = next
			a.try()
			a.renew(runs, at, corners-1)
			a.layouts[k] = before
		}
	}
}

// mayRenew reports whether a new drop may begin at a corner where none does yet.
func mayRenew(run *room.Run, c *hanging.Choice, corner int) bool {
	return run.Corners[corner].Kind == room.Inside && !slices.Contains(c.NewDrop, corner) &&
		(c.Kill.Kind != hanging.AtCorner || c.Kill.Wall != corner)
}

// try gives the zones of the layouts to lots in every way.
func (a *allotter) try() {
	zones, n := a.divide()
	ways := 1
	for range n {
		ways = min(ways*len(a.lots), mostAllotments)
	}
	lot := make([]int, n)
	for range ways {
		if total, ok := a.weigh(zones, lot); ok && total <= a.least {
			if odd := a.oddSeen(zones, lot); total < a.least || odd < a.odd {
				a.least, a.odd, a.best, a.zones, a.kept = total, odd, slices.Clone(lot), zones, slices.Clone(a.layouts)
			}
		}
		for z := range lot {
			if lot[z]++; lot[z] < len(a.lots) {
				break
			}
			lot[z] = 0
		}
	}
}

// divide numbers the zones of the runs' walls.
func (a *allotter) divide() (zones [][]int, n int) {
	for k := range a.layouts {
		zone := zonesOf(a.layouts[k].layout)
		for w := range zone {
			zone[w] += n
		}
		n = slices.Max(zone) + 1
		zones = append(zones, zone)
	}
	return zones, n
}

// zonesOf numbers the zones of a layout's walls from 0, in the order of their
// first walls.
func zonesOf(l *hanging.Layout) []int {
	walls := len(l.Run.Walls)
	zone := make([]int, walls)
	for w := range zone {
		zone[w] = w
	}
	join := func(a, b int) {
		from, to := max(zone[a], zone[b]), min(zone[a], zone[b])
		for w := range zone {
			if zone[w] == from {
				zone[w] = to
			}
		}
	}
	for c := range l.Run.Corners {
		if l.Run.Corners[c].Kind == room.Outside {
			join(c, (c+1)%walls)
		}
	}
	for i := range l.Drops {
		for _, part := range l.Drops[i].Parts[1:] {
			join(l.Drops[i].Parts[0].Wall, part.Wall)
		}
	}
	number := map[int]int{}
	for w, z := range zone {
		if _, ok := number[z]; !ok {
			number[z] = len(number)
		}
		zone[w] = number[z]
	}
	return zone
}

// weigh returns what a way to give the zones to lots comes to: what is to be
// bought, how the layouts look, and the changes of batch.
func (a *allotter) weigh(zones [][]int, lot []int) (total int64, ok bool) {
	w := &a.plan.Task.Taste.Weights
	for i := range a.lots {
		c := a.cost(i, zones, lot)
		if !c.ok {
			return 0, false
		}
		total += c.cost * w.Roll
	}
	for k := range a.layouts {
		l := a.layouts[k].layout
		total += a.layouts[k].score
		for _, c := range changesOf(l, zones[k], lot) {
			total += regardOf(cornerSight(l.Run, c), false).of(w.BatchChange)
		}
	}
	return total, true
}

// oddSeen returns how much is seen of the batch that gives the fewest drops: twice
// their number, less by half of those on hidden walls, more by half of those on focal
// ones.
func (a *allotter) oddSeen(zones [][]int, lot []int) int {
	drops, seen := make([]int, len(a.lots)), make([]int64, len(a.lots))
	for k := range a.layouts {
		l := a.layouts[k].layout
		for i := range l.Drops {
			if l.Drops[i].Number == 0 {
				continue
			}
			wall := l.Drops[i].Parts[0].Wall
			of := lot[zones[k][wall]]
			drops[of]++
			seen[of] += regardOf(l.Run.Walls[wall].Sight, false).of(2)
		}
	}
	fewest := -1
	for i, n := range drops {
		if n > 0 && (fewest < 0 || n < drops[fewest]) {
			fewest = i
		}
	}
	return int(seen[fewest])
}

// missingCost is what a piece for which there is no paper weighs, in rolls.
const missingCost = 1000

// cost cuts from a lot what is given to it.
func (a *allotter) cost(lot int, zones [][]int, lotOf []int) batchCost {
	var pieces []cutting.Piece
	for k := range a.layouts {
		l := a.layouts[k].layout
		for i := range l.Pieces {
			if q := &l.Pieces[i]; lotOf[zones[k][pieceZoneWall(l, q)]] == lot {
				pieces = append(pieces, cutting.Piece{Length: q.Length, Phase: q.Phase})
			}
		}
	}
	if len(pieces) == 0 {
		return batchCost{ok: true}
	}
	key := string(append([]byte{byte(lot)}, sequenceKey(pieces)...))
	if c, known := a.costs[key]; known {
		return c
	}
	c := batchCost{}
	spec := a.lots[lot].spec(a.plan.Task, &a.plan.Task.Papers[a.paper], pieces)
	if s, err := a.plan.solve(spec, cutting.Options{Steps: countSteps}); err == nil {
		c = batchCost{int64(s.Bought() + missingCost*len(s.Missing)), true}
	}
	a.costs[key] = c
	return c
}

// pieceZoneWall is the wall whose zone a piece belongs to: that of its drop.
func pieceZoneWall(l *hanging.Layout, q *hanging.Piece) int { return l.Drops[q.Drop].Parts[0].Wall }

// allotments lists the pieces of each lot that gives any.
func (a *allotter) allotments() []allotment {
	all := make([]allotment, len(a.lots))
	for k, r := range a.runs {
		l := a.kept[k].layout
		for i := range l.Pieces {
			lot := a.best[a.zones[k][pieceZoneWall(l, &l.Pieces[i])]]
			all[lot].refs = append(all[lot].refs, PieceRef{r, i})
		}
	}
	for i := range all {
		all[i].lot = &a.lots[i]
	}
	return slices.DeleteFunc(all, func(x allotment) bool { return len(x.refs) == 0 })
}

// changesOf lists the corners of a layout at which the batch changes when its zones
// are hung from lots.
func changesOf(l *hanging.Layout, zone, lot []int) (corners []int) {
	on := slices.Repeat([]int{-1}, len(zone))
	for i := range l.Pieces {
		q := &l.Pieces[i]
		hangOn(on, l, q, lot[zone[pieceZoneWall(l, q)]])
	}
	return changes(l, on)
}

// hangOn notes that the drop of a piece hangs from a batch on all its walls.
func hangOn(on []int, l *hanging.Layout, q *hanging.Piece, batch int) {
	for _, part := range l.Drops[q.Drop].Parts {
		on[part.Wall] = batch
	}
}

// changes lists the corners of a layout at which the batch changes, given what
// hangs on each wall (−1: nothing). A wall without paper counts to its neighbour on
// the left, or at the beginning of an open run to the first that has some.
func changes(l *hanging.Layout, on []int) (corners []int) {
	passOver(on, l.Run.Closed)
	for c := range l.Run.Corners {
		if on[c] != on[(c+1)%len(on)] {
			corners = append(corners, c)
		}
	}
	return corners
}

// passOver gives walls without paper the batch of the neighbour that they count to.
func passOver(on []int, closed bool) {
	known := slices.DeleteFunc(slices.Clone(on), func(b int) bool { return b < 0 })
	if len(known) == 0 {
		clear(on)
		return
	}
	left := known[0]
	if closed {
		left = known[len(known)-1]
	}
	for w := range on {
		if on[w] < 0 {
			on[w] = left
		}
		left = on[w]
	}
}

// BatchChange is a corner at which another batch begins.
const BatchChange finding.Code = "batch_change"

// raiseChanges notes the corners at which batches change.
func (p *Plan) raiseChanges(i int) {
	pp := &p.Papers[i]
	if len(pp.Batches) < 2 {
		return
	}
	for r := range p.Runs {
		if p.Task.Runs[r].Paper != i {
			continue
		}
		l := p.Runs[r].Layout
		batch := p.wallBatches(i, r)
		for _, c := range changes(l, batch) {
			next := batch[(c+1)%len(batch)]
			p.Findings = append(p.Findings, finding.Finding{
				Code: BatchChange, Severity: finding.Caution,
				Place: finding.Place{Run: l.Run.Name, Corner: l.Run.CornerName(c), Paper: l.Paper.Name},
				Word:  pp.Batches[next].Batch,
			})
		}
	}
}

// wallBatches tells for each wall of run r which batch of paper i hangs on it; −1
// where none does.
func (p *Plan) wallBatches(i, r int) []int {
	l := p.Runs[r].Layout
	on := slices.Repeat([]int{-1}, len(l.Run.Walls))
	for b := range p.Papers[i].Batches {
		for _, strip := range p.Papers[i].Batches[b].Cuts {
			for _, lie := range strip {
				if lie.Run == r {
					hangOn(on, l, &l.Pieces[lie.Piece], b)
				}
			}
		}
	}
	return on
}
