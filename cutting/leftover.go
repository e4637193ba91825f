package cutting

import (
	"cmp"
	"math"
	"slices"
)

// The best left-over.
//
// The number of rolls is settled; now one of them shall keep the longest free
// end, a piece that can still patch any drop. Call that roll the short one:
//
//	K-1 rolls  |=======|======|=====|~|      total weight V, each at most M
//	short roll |==|=|~~~~~~~ left over ~~~|  must carry V - (K-1)·M at least
//
// The sets that are heavy enough for the short roll are listed by the length
// they use, shortest first, and for each the search decides whether the rest
// can be cut from K-1 rolls. The first that succeeds is the best; that all
// before it failed is the proof. Shortest first also means that the rest is
// tight, so that the search fails fast.
type shortRolls struct {
	states states
	list   []shortRoll
}

type shortRoll struct {
	id     int32
	used   int64 // length from the roll's beginning, at the worst start
	weight int64
}

// What the search may spend on the rest of one short roll: at first, when
// sequential value correction has found nothing either, and when every branch
// gets weights of its own.
const (
	briefSteps = 2_000
	spareSteps = 20_000
	closeSteps = 100_000
)

// bestLeftover rearranges the best plan so that its longest free end is as
// long as possible. It returns the left-over and an upper bound for it.
func (w *work) bestLeftover() (left, bound int64) {
	used := w.shortest()
	open := used // the shortest use not excluded
	if !w.n.coarse {
		if len(w.n.safe) > 1 && !w.listed {
			w.listed = w.catalogue()
			w.lower.sharp = w.lower.sharp && !w.listed
		}
		w.sharpen()
		open = w.shorten(used)
	}
	return w.leftFor(w.shortest()), w.leftFor(open)
}

// leftFor is what a roll that uses so much leaves in one piece at its end.
func (w *work) leftFor(used int64) int64 { return max(w.p.leftBehind(0, used-w.p.loss), 0) }

// mostFor is the most a roll may use that leaves as much as one that uses so
// much: of a roll in parts all before the last part.
func (w *work) mostFor(used int64) int64 {
	if n := len(w.n.broken); n > 0 {
		used = max(used, w.n.broken[n-1].from+w.p.loss)
	}
	return used
}

// useFor is the most a roll of a single kind may use that leaves so much.
func (p *Problem) useFor(left int64) int64 {
	n := &p.nets[0]
	used := int64(p.stock[0].Total()) - left + p.loss
	if last := len(n.broken) - 1; last >= 0 {
		used = max(used, n.broken[last].from+p.loss)
	}
	return used
}

// shorten replaces the best plan if there is one with the same number of rolls
// whose shortest roll uses less than used. It returns a length such that no
// plan has a roll that uses less.
func (w *work) shorten(used int64) int64 {
	k := w.best.rolls()
	if !w.listShort(used, dot(w.p.demand, w.lower.weight)-int64(k-1)*w.lower.capacity) {
		return w.leastUse()
	}
	open, slack := int64(-1), int64(-1)
	for _, c := range w.short.list {
		v := w.tryRest(c, k-1, &slack)
		if v != impossible && open < 0 {
			open = c.used
		}
		if v == possible {
			return open
		}
	}
	if open < 0 {
		open = used
	}
	return open
}

// leastUse is a length that a roll with the lightest load uses at least.
func (w *work) leastUse() int64 {
	least := int64(math.MaxInt64)
	for _, l := range w.p.length {
		least = min(least, l)
	}
	return least
}

// listShort lists the sets with at least the given weight that use less than
// used. It returns false if there are too many.
func (w *work) listShort(used, least int64) bool {
	copy(w.weight, w.lower.weight)
	w.short.list = w.short.list[:0]
	s := &w.short.states
	if len(w.n.safe) == 1 {
		l := &w.n.exact[0]
		if !w.listRolls(s, 0, w.n.plan.atOrBefore(l.begin+used-1), max(least, 1)) {
			return false
		}
		for _, id := range s.list {
			end := w.n.plan.at[s.info[id].end]
			w.short.list = append(w.short.list, shortRoll{id, end - l.begin, s.info[id].weight})
		}
	} else {
		if !w.listed {
			return false
		}
		w.weigh()
		s = &w.states
		for id := 1; id < len(s.info); id++ {
			if u := w.useListed(id); s.info[id].weight >= least && u < used {
				w.short.list = append(w.short.list, shortRoll{int32(id), u, s.info[id].weight})
			}
		}
	}
	slices.SortFunc(w.short.list, func(a, b shortRoll) int {
		return cmp.Or(cmp.Compare(a.used, b.used), cmp.Compare(b.weight, a.weight), cmp.Compare(a.id, b.id))
	})
	return true
}

// useListed is the length a set of the catalogue uses at its worst start.
func (w *work) useListed(id int) int64 {
	most, d := int64(0), len(w.n.exact)
	for i, end := range w.states.ends[id*d : id*d+d] {
		most = max(most, w.n.plan.at[end]-w.n.exact[i].begin)
	}
	return most
}

// tryRest decides whether what is left beside a short roll can be cut from k
// rolls, and if so makes that the best plan. slack is the waste that the heavy
// rolls listed at present allow for.
func (w *work) tryRest(c shortRoll, k int, slack *int64) verdict {
	from := &w.short.states
	if w.listed {
		from = &w.states
	}
	w.trial.reset()
	w.demandLeft()
	w.seq = from.sequence(w.seq[:0], c.id)
	w.take(w.seq)
	waste := int64(k)*w.lower.capacity - dot(w.left, w.lower.weight)
	if waste < 0 {
		return impossible
	}
	v := w.searchRest(k, waste, slack, briefSteps)
	if v == undecided && w.finish(k+1) {
		w.best.copyFrom(&w.trial)
		return possible
	}
	if v == undecided {
		v = w.searchDeep(k)
		*slack = -1
	}
	if v == possible {
		w.best.copyFrom(&w.trial)
	}
	return v
}

// searchDeep looks for k rolls for what is left with weights made for it,
// which may exclude them at once.
func (w *work) searchDeep(k int) verdict {
	w.lower, w.other = w.other, w.lower
	defer func() { w.lower, w.other = w.other, w.lower }()
	w.lower.reset(w.left)
	w.sharpen()
	if w.lower.rolls() > k {
		return impossible
	}
	waste := int64(k)*w.lower.capacity - dot(w.left, w.lower.weight)
	if !w.listHeavy(waste) {
		return undecided
	}
	v := w.searchRest(k, waste, &waste, spareSteps)
	if v == undecided {
		v = w.closeRest(k)
	}
	return v
}

// closeRest decides it by a linear program at every branch, over the rolls
// that searchDeep has listed.
func (w *work) closeRest(k int) verdict {
	limit := w.limit
	defer func() { w.limit = limit }()
	w.limit = min(limit, w.steps+closeSteps)
	v := w.closeLeft(k)
	if v == possible {
		w.addClosing()
	}
	return v
}

// searchRest looks for k rolls for what is left that waste no more than waste,
// within the given number of steps. It leaves w.left as it was unless they are
// possible.
func (w *work) searchRest(k int, waste int64, slack *int64, steps int) verdict {
	limit := w.limit
	defer func() { w.limit = limit }()
	w.limit = min(limit, w.steps+steps)
	if waste > *slack {
		*slack = max(waste, 2**slack)
		if !w.listHeavy(*slack) {
			*slack = -1
			return undecided
		}
	}
	w.deep.rest = append(w.deep.rest[:0], w.left...)
	w.search.chosen = w.search.chosen[:0]
	v := w.branch(k, waste, -1, 0)
	switch v {
	case possible:
		w.addChosen()
	case undecided:
		copy(w.left, w.deep.rest)
	}
	return v
}

// shortest is the least length a roll of the best plan uses.
func (w *work) shortest() int64 {
	least := w.n.roll
	for r := range w.best.rolls() {
		least = min(least, w.use(w.best.roll(r)))
	}
	return least
}

// use is the length a roll with the kinds in seq uses at its worst start.
func (w *work) use(seq []int16) int64 {
	g := &w.n.plan
	if w.n.anyOrder() || !w.sort.load(seq) {
		l := &w.n.safe[0]
		if len(w.n.safe) > 1 {
			l = &w.n.safe[w.p.phaseOf[seq[0]]]
		}
		return g.at[g.walk(l.from, seq)] - l.begin
	}
	most := int64(0)
	for d := range w.n.exact {
		l := &w.n.exact[d]
		most = max(most, g.at[w.sort.earliest(g, l.from)]-l.begin)
	}
	return most
}
