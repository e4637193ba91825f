package cutting

import "slices"

// Sets listed before.
//
// Which sets of pieces a roll gives does not depend on how many pieces are asked
// for, as long as a roll cannot hold as many. So who cuts one layout after the
// other, all of much the same pieces, lists them once (catalogue.go), and each
// cutting takes those of its own pieces:
//
//	listed once   {a} {b} {c} {a a} {a b} {a c} {b b} {a b b}
//	no c, one b   {a} {b}     {a a} {a b}
//
// Nor does it depend on the height of the design, which moves all phases alike.

// Catalogue holds every set of pieces of some kinds that one roll gives, whatever phase it
// begins with. It does not change, and may be used by several goroutines at once.
type Catalogue struct {
	p     *Problem
	holds []int32  // of each kind, as many as a roll could hold by its length
	count []uint16 // as in states
	added []added
}

// added says how a set comes of another.
type added struct {
	parent int32
	kind   int16
}

// NewCatalogue lists the sets of the pieces of a problem; nil if they are too many, or if
// none are needed: for rolls whose phase is known or does not matter, several kinds of roll,
// and pieces cut in order.
func NewCatalogue(p *Problem) *Catalogue {
	if len(p.kinds) == 0 || p.spec.InOrder || p.isMixed() {
		return nil
	}
	w := newWork(p, DefaultSteps)
	defer w.free()
	if len(w.n.safe) == 1 || w.n.coarse || !w.catalogue() {
		return nil
	}
	c := &Catalogue{p: p, count: slices.Clone(w.states.count)}
	for _, length := range p.length {
		c.holds = append(c.holds, int32((int64(p.stock[0].Length)+p.loss)/length))
	}
	for i := range w.states.info {
		c.added = append(c.added, added{w.states.info[i].parent, w.states.info[i].kind})
	}
	return c
}

// kinds returns which of the catalogue's kinds those of a problem are, all of them perhaps
// with the design moved by as much; false if it does not have all the sets of these that are
// asked for.
func (c *Catalogue) kinds(p *Problem) (of []int16, ok bool) {
	if c == nil || !c.p.hasRollsOf(p) {
		return nil, false
	}
	for at := range c.p.kinds {
		if of, ok = c.moved(p, mod(c.p.phase[at]-p.phase[0], p.repeat)); ok {
			return of, true
		}
	}
	return nil, false
}

// moved returns the same with the design moved by so much.
func (c *Catalogue) moved(p *Problem, by int64) (of []int16, ok bool) {
	for j := range p.kinds {
		at := 0
		for at < len(c.p.kinds) && (c.p.length[at] != p.length[j] || c.p.phase[at] != mod(p.phase[j]+by, p.repeat)) {
			at++
		}
		if at == len(c.p.kinds) || p.demand[j] > c.p.demand[at] && c.holds[at] > c.p.demand[at] {
			return nil, false
		}
		of = append(of, int16(at))
	}
	return of, true
}

// hasRollsOf reports whether two problems are about the same rolls.
func (p *Problem) hasRollsOf(q *Problem) bool {
	a, b := p.spec, q.spec
	return len(a.Stock) == 0 && len(b.Stock) == 0 && a.Roll == b.Roll && a.Repeat == b.Repeat &&
		a.Lead == b.Lead && a.Loss == b.Loss && a.InOrder == b.InOrder
}

// takeListed lists in the states those sets of a catalogue, some of whose kinds are asked for, of
// which there are no more pieces. Where a set ends is not told.
func (w *work) takeListed(c *Catalogue, kinds []int16) {
	s, m := &w.states, len(c.p.kinds)
	s.reset(w.m)
	s.push(0, -1, -1, 0, 0)
	w.every = grow(w.every, m)
	for at := range w.every {
		w.every[at] = -1
	}
	for j, at := range kinds {
		w.every[at] = int16(j)
	}
	number := make([]int32, len(c.added)) // of the sets in the states, less one; 0: it is not there
	number[0] = 1
	for id := 1; id < len(c.added); id++ {
		a := c.added[id]
		j := w.every[a.kind]
		if parent := number[a.parent]; j >= 0 && parent > 0 && int32(c.count[id*m+int(a.kind)]) <= w.p.demand[j] {
			number[id] = int32(s.push(s.info[parent-1].hash+s.key[j], parent-1, j, 0, 0)) + 1
		}
	}
	w.steps += 1 + len(c.added)/64
}
