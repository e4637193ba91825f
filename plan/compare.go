package plan

import (
	"cmp"
	"slices"

	"firstdrop/finding"
	"firstdrop/hanging"
)

// Trade is what a plan costs and saves against another of the same task.
type Trade struct {
	Rolls  int            // rolls to buy more; negative: saved
	Drops  int            // drops more to hang
	Pieces int            // pieces more to cut
	Looks  int64          // by how much its findings weigh more, in thousandths of a roll
	By     [aspects]int64 // the same for each aspect of the looks
	// Worse lists what is found in this plan and not, or less, in the other; Better
	// the reverse, as the other plan has it. The dearest come first.
	Worse, Better []finding.Finding
}

// Against returns what plan p costs and saves against another plan of the same
// task.
func (p *Plan) Against(other *Plan) Trade {
	a, b := p.tally(), other.tally()
	t := Trade{
		Rolls: a.rolls - b.rolls, Drops: a.drops - b.drops, Pieces: a.pieces - b.pieces, Looks: a.looks - b.looks,
		Worse: beyond(p.Findings, other.Findings), Better: beyond(other.Findings, p.Findings),
	}
	for k := range t.By {
		t.By[k] = a.by[k] - b.by[k]
	}
	return t
}

// Aspect is one side of how a plan looks. People weigh one against another in
// their own ways, so a plan is beaten only by one that is as good in all of them.
type Aspect int

// The aspects.
const (
	Strips   Aspect = iota // how wide strips are and where seams stand
	Meeting                // where and by how much the design misses
	Standing               // how the design stands on walls: centred, balanced, uncut
	aspects
)

// AspectOf returns the aspect of the looks that a finding belongs to.
func AspectOf(code finding.Code) Aspect {
	switch code {
	case KillMisfit, KillMeets, RenewedMiss, Wedge, CornerLoss, CornerStep, LapShadow:
		return Meeting
	case OffCentre, UnequalEnds, FocalSeam, MotifCut, MotifCutLow, Drift, OffPlumb, OffCasing, MixedWays:
		return Standing
	}
	return Strips
}

// tally is what plans are compared by.
type tally struct {
	rolls, drops, pieces int
	looks                int64 // what its findings weigh
	by                   [aspects]int64
}

// tally adds a plan up.
func (p *Plan) tally() (t tally) {
	for i := range p.Papers {
		t.rolls += p.Papers[i].Buy() + missingCost*p.Papers[i].Missing()
		t.drops += p.Papers[i].Drops
	}
	for i := range p.Runs {
		t.pieces += len(p.Runs[i].Layout.Pieces)
	}
	for _, f := range p.Findings {
		t.looks += f.Weight
		t.by[AspectOf(f.Code)] += f.Weight
	}
	return t
}

// handling is how much there is to hang: drops and the pieces to cut for them.
func (t tally) handling() int { return t.drops + t.pieces }

// atLeastAsGood reports whether t is no worse than other in anything.
func (t tally) atLeastAsGood(other tally) bool {
	for k := range t.by {
		if t.by[k] > other.by[k] {
			return false
		}
	}
	return t.rolls <= other.rolls && t.handling() <= other.handling()
}

// beyond returns the findings with a weight that a has and b has not at the same
// place, or not as grave, dearest first.
func beyond(a, b []finding.Finding) (fs []finding.Finding) {
	used := make([]bool, len(b))
	for _, f := range a {
		if f.Weight == 0 {
			continue
		}
		match := -1
		for i, g := range b {
			if !used[i] && g.Code == f.Code && samePlace(&f.Place, &g.Place) && (match < 0 || closer(f, g, b[match])) {
				match = i
			}
		}
		if match >= 0 {
			used[match] = true
			if f.Weight <= b[match].Weight {
				continue
			}
		}
		fs = append(fs, f)
	}
	slices.SortStableFunc(fs, func(a, b finding.Finding) int { return cmp.Compare(b.Weight, a.Weight) })
	return fs
}

// closer reports whether g is nearer to f in weight than h.
func closer(f, g, h finding.Finding) bool { return between(f, g) < between(f, h) }

func between(f, g finding.Finding) int64 { return max(f.Weight-g.Weight, g.Weight-f.Weight) }

// samePlace reports whether two findings of a code are about the same wall,
// corner or opening; where along the wall does not matter.
func samePlace(a, b *finding.Place) bool {
	return a.Run == b.Run && a.Wall == b.Wall && a.Corner == b.Corner && a.Opening == b.Opening
}

// Fix returns a copy of a task in which everything about run i is decided as the
// layout has it.
func (t *Task) Fix(i int, l *hanging.Layout) *Task {
	if t.Runs[i].isPanelled() {
		return t
	}
	fixed := *t
	fixed.Runs = slices.Clone(t.Runs)
	f := &fixed.Runs[i].Fixed
	start, design := l.Choice.Start, l.Choice.Design
	f.Start, f.Centre, f.Design, f.Kill, f.Set = &start, nil, nil, nil, make([]WallSetting, len(l.Run.Walls))
	for w := range f.Set {
		f.Set[w].Wall = w
		if l.Choice.Set != nil {
			f.Set[w].Setting = l.Choice.Set[w]
		}
	}
	if l.Paper.Repeat > 0 {
		f.Design = &design
	}
	if l.Run.Closed {
		f.Kill = &Kill{Kill: l.Choice.Kill}
	}
	return &fixed
}
