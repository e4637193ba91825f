package audit

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/room"
)

// Where does the batch change?
//
// Rolls of two batches must never meet where it shows: not on one wall, not
// where a drop goes round a corner, not round an outside corner. Walk the walls
// and write down whose paper hangs on each:
//
//	 A: 1 │ B: 1 │ C: bare │ D: 2      from B to D the batch changes, in the
//	      │      │         │           corner before C or the one behind it
//
// A wall without paper is passed over: the change may be told of in any corner
// between the two papered walls.

// judgeZones: each wall carries one batch, and batches meet in inside corners
// only; a finding tells of every change, and of no other. Batches count from 1
// here; 0 is none.
func judgeZones(b *book, p *plan.Plan, i int) {
	name, changes, tellings := p.Task.Papers[i].Name, 0, 0
	for r := range p.Runs {
		if p.Task.Runs[r].Paper == i {
			run := p.Runs[r].Layout.Run
			changes += judgeChanges(b, run, wallBatches(b, p, i, r), changesTold(b, p, i, run))
		}
	}
	for _, f := range p.Findings {
		if f.Code == plan.BatchChange && f.Place.Paper == name {
			tellings++
		}
	}
	b.same(Findings, Place{}, "changes of batch told of", changes, tellings)
}

// changesTold returns for each corner of a run the batch that findings tell of;
// nil where the run cannot be known by its name.
func changesTold(b *book, p *plan.Plan, i int, run *room.Run) []int {
	alike := 0
	for r := range p.Runs {
		if p.Runs[r].Layout.Run.Name == run.Name {
			alike++
		}
	}
	if alike > 1 {
		return nil
	}
	told := make([]int, len(run.Corners))
	for k := range p.Findings {
		f := &p.Findings[k]
		if f.Code == plan.BatchChange && f.Place.Run == run.Name && f.Place.Paper == p.Task.Papers[i].Name {
			tellChange(b, &p.Papers[i], f, run, told)
		}
	}
	return told
}

// wallBatches returns which batch hangs on each wall of run r: that of the
// drops with a part on it.
func wallBatches(b *book, p *plan.Plan, i, r int) []int {
	l := p.Runs[r].Layout
	on := make([]int, len(l.Run.Walls))
	for k := range p.Papers[i].Batches {
		for _, strip := range p.Papers[i].Batches[k].Cuts {
			for _, lie := range strip {
				if lie.Run == r {
					hangOn(b, l, &l.Pieces[lie.Piece], k+1, on)
				}
			}
		}
	}
	return on
}

// hangOn writes a batch down on the walls of a piece's drop.
func hangOn(b *book, l *hanging.Layout, q *hanging.Piece, number int, on []int) {
	if q.Drop < 0 || q.Drop >= len(l.Drops) {
		return
	}
	for _, part := range l.Drops[q.Drop].Parts {
		w := part.Wall
		if w < 0 || w >= len(on) {
			continue
		}
		if on[w] != 0 && on[w] != number {
			b.note(Batches, Place{Wall: w + 1, Drop: q.Drop + 1}, "batch of the paper", "that of the wall's other drops, number "+figure(on[w]), "number "+figure(number))
		}
		on[w] = number
	}
}

// tellChange notes which corner a finding tells of, and the batch it names.
func tellChange(b *book, pp *plan.PaperPlan, f *finding.Finding, run *room.Run, told []int) {
	number := 0
	for k := range pp.Batches {
		if pp.Batches[k].Batch == f.Word {
			number = k + 1
		}
	}
	for c := range told {
		if cornerName(run, c) == f.Place.Corner && told[c] == 0 {
			told[c] = number
			return
		}
	}
	b.note(Findings, Place{}, "change of batch in corner "+f.Place.Corner, "in a corner of the run, told once", "elsewhere or again")
}

// cornerName names a corner by the walls that meet in it.
func cornerName(run *room.Run, c int) string {
	name := func(i int) string {
		if w := run.Walls[i].Name; w != "" {
			return w
		}
		return "wall " + figure(i+1)
	}
	return name(c) + "|" + name((c+1)%len(run.Walls))
}

// judgeChanges walks from papered wall to papered wall and returns how often
// the batch changes.
func judgeChanges(b *book, run *room.Run, on, told []int) (changes int) {
	before := 0
	for before < len(on) && on[before] == 0 {
		before++
	}
	first := before
	var between []int // corners since the wall before
	for n := 0; n < len(run.Corners) && first+n < len(run.Corners)+boolean(run.Closed)*first; n++ {
		c := (first + n) % len(run.Walls)
		next := (c + 1) % len(run.Walls)
		between = append(between, c)
		if on[next] == 0 {
			continue
		}
		judgeChange(b, run, on[before], on[next], between, told)
		if on[before] != on[next] {
			changes++
		}
		before, between = next, between[:0]
	}
	return changes
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// judgeChange judges the corners between two papered walls that carry the
// batches left and right.
func judgeChange(b *book, run *room.Run, left, right int, corners, told []int) {
	inside, tellings, at := false, 0, Place{Wall: corners[0] + 1}
	for _, c := range corners {
		inside = inside || run.Corners[c].Kind == room.Inside
		if told == nil || told[c] == 0 {
			continue
		}
		tellings++
		if told[c] != right && left != right {
			b.note(Findings, Place{Wall: c + 1}, "batch that begins in the corner", "number "+figure(right), "number "+figure(told[c]))
		}
	}
	if left != right && !inside {
		b.note(Batches, at, "change of batch", "in an inside corner", "in an outside one")
	}
	if told != nil {
		b.same(Findings, at, "changes of batch told of", boolean(left != right), tellings)
	}
}
