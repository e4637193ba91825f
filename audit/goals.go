package audit

import (
	"slices"

	"firstdrop/cutting"
)

// judgeGoals: what is said to be reached is in the plan; no bound is beyond it;
// and proven is claimed only where the two agree.
func (r *rolls) judgeGoals() {
	for i := range r.s.Goals {
		g, of := &r.s.Goals[i], "goal "+figure(i+1)
		var value int64
		switch g.Goal {
		case cutting.FewestRolls:
			value = r.s.Cost
		case cutting.LongestLeftover:
			value = r.longestLeftover()
		case cutting.FewestChanges:
			value = r.changes()
		default:
			r.note(Goals, Place{}, of, "one that there is", int(g.Goal))
			continue
		}
		r.same(Goals, Place{}, "reached of "+of, value, g.Value)
		beyond := g.Bound > g.Value
		if g.Goal == cutting.LongestLeftover {
			beyond = g.Bound < g.Value
		}
		if beyond {
			r.note(Goals, Place{}, "bound of "+of, "no worse than what is reached", g.Bound)
		}
		if g.Proven && g.Value != g.Bound {
			r.note(Goals, Place{}, of, "not proven", "proven")
		}
	}
}

// longestLeftover returns the longest stretch left in one at the end of a roll
// whatever it begins with.
func (r *rolls) longestLeftover() (longest int64) {
	for i := range r.s.Rolls {
		w := r.ware(i)
		if len(w.tracts) == 0 {
			continue
		}
		last := w.tracts[len(w.tracts)-1]
		from := int64(0)
		if w.known {
			from = last.lo
		}
		for _, o := range r.s.Rolls[i].Orders {
			for _, c := range o.Cuts {
				from = max(from, int64(c.To))
			}
		}
		longest = max(longest, last.hi-from)
	}
	return longest
}

// changes counts how often a piece that is cut lies on another roll than the
// one cut before it in the list.
func (r *rolls) changes() (n int64) {
	roll := make([]int, len(r.spec.Pieces))
	for i := range r.s.Rolls {
		for _, o := range r.s.Rolls[i].Orders {
			for _, c := range o.Cuts {
				roll[c.Piece] = i + 1
			}
		}
	}
	before := 0
	for _, at := range roll {
		if at == 0 {
			continue
		}
		if before != 0 && at != before {
			n++
		}
		before = at
	}
	return n
}

// judgePursued: the goals told of are those that the task asks for, in its
// order; where few changes are wanted most, these and the rolls come first.
func (b *batch) judgePursued() {
	rules := &b.p.Task.Cut
	var want []cutting.Goal
	if rules.First == cutting.FewestChanges {
		want = append(want, cutting.FewestChanges, cutting.FewestRolls)
	}
	want = append(want, rules.Then...)
	if len(b.Cuts) == 0 {
		want = nil
	}
	var got []cutting.Goal
	for _, g := range b.Cutting.Goals {
		got = append(got, g.Goal)
	}
	if !slices.Equal(want, got) {
		b.note(Goals, Place{}, "number and order of goals", figure(len(want))+" as the task asks", figure(len(got))+" or others")
	}
}
