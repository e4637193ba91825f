package cutting

import "slices"

// Which piece lies where.
//
// The count is settled; equal pieces may now change places for nothing, and
// people want neighbours from the same roll. If filling the rolls in the order
// of the pieces, each as long as the next piece still fits, needs no more
// rolls, that is the plan: no roll is opened twice while working along.
//
//	pieces  0 1 2 3 | 4 5 6 | 7 8 9 10       one roll after the other
//
// Otherwise the pieces of each kind are dealt out in order, and equal pieces
// are exchanged between rolls as long as that brings more neighbours together.
// Rolls are listed by their lowest piece.
type placing struct {
	rollOf []int32 // per piece
	pieces []int32 // by roll
	start  []int32 // where each roll's pieces begin
	stock  []int32 // kind of each roll
	queue  [][]int
}

// place assigns pieces to the rolls of the best plan, lowest piece first.
// With keep the sets on the rolls stay as they are; only equal pieces change
// places.
func (w *work) place(keep bool) *placing {
	p := &placing{rollOf: make([]int32, len(w.p.kindOf))}
	if keep || !w.inOrder(p) {
		w.deal(p)
		w.exchange(p)
	}
	p.sortRolls(w.best.stock)
	return p
}

// inOrder fills the rolls in the order of the pieces. It returns false if that
// needs more rolls than the plan has. Since a part of what fits one roll fits
// one roll, filling each as far as possible needs fewest.
func (w *work) inOrder(p *placing) bool {
	roll := int32(0)
	w.trial.reset()
	seq := w.seq[:0]
	rest := dot(w.p.demand, w.lower.weight)
	for i, j := range w.p.kindOf {
		seq = append(seq, int16(j))
		if len(seq) > 1 && !w.fits(seq) {
			if roll++; int(roll)+w.atLeast(rest) > w.best.rolls() {
				w.seq = seq
				return false
			}
			w.trial.add(seq[:len(seq)-1])
			seq = append(seq[:0], int16(j))
		}
		p.rollOf[i] = roll
		rest -= w.lower.weight[j]
	}
	w.trial.add(seq)
	w.seq = seq
	if w.trial.rolls() < w.best.rolls() {
		w.best.copyFrom(&w.trial)
	}
	return w.trial.rolls() == w.best.rolls()
}

// atLeast is the number of rolls, at least one, that pieces of the given weight
// need by the certificate, if there is one.
func (w *work) atLeast(weight int64) int {
	if w.lower.capacity <= 0 {
		return 1
	}
	return max(1, ceilDiv(weight, w.lower.capacity))
}

// deal gives the pieces of each kind to the rolls in order. Rolls with the
// kinds of the first pieces come first.
func (w *work) deal(p *placing) {
	p.queue = make([][]int, w.m)
	for j := range p.queue {
		p.queue[j] = w.p.kinds[j].Pieces
	}
	for r := range w.best.rolls() {
		for _, j := range w.best.roll(r) {
			p.rollOf[p.queue[j][0]] = int32(r)
			p.queue[j] = p.queue[j][1:]
		}
	}
}

// exchange swaps equal pieces between rolls while that brings more neighbours
// onto the same roll, for a few rounds.
func (w *work) exchange(p *placing) {
	n := len(p.rollOf)
	on := p.byRoll(w.best.rolls())
	for range 4 {
		better := false
		for i := 1; i < n; i++ {
			if p.rollOf[i] != p.rollOf[i-1] && w.exchangeFor(p, on, i) {
				better = true
			}
		}
		if !better {
			return
		}
	}
}

// exchangeFor looks on the roll of the piece before for one equal to piece i,
// lowest first, whose exchange brings more neighbours together.
func (w *work) exchangeFor(p *placing, on [][]int32, i int) bool {
	a, b := p.rollOf[i], p.rollOf[i-1]
	for _, k := range on[b] {
		if w.p.kindOf[k] != w.p.kindOf[i] {
			continue
		}
		before := p.near(i) + p.near(int(k))
		p.rollOf[i], p.rollOf[k] = b, a
		if p.near(i)+p.near(int(k)) > before {
			replace(on[a], int32(i), k)
			replace(on[b], k, int32(i))
			return true
		}
		p.rollOf[i], p.rollOf[k] = a, b
	}
	return false
}

// byRoll lists the pieces of each roll, ascending.
func (p *placing) byRoll(rolls int) [][]int32 {
	count := make([]int32, rolls)
	for _, r := range p.rollOf {
		count[r]++
	}
	slab, lo := make([]int32, len(p.rollOf)), int32(0)
	on := make([][]int32, rolls)
	for r, n := range count {
		on[r] = slab[lo : lo : lo+n]
		lo += n
	}
	for i, r := range p.rollOf {
		on[r] = append(on[r], int32(i))
	}
	return on
}

// replace puts a number in the place of another in an ascending list.
func replace(list []int32, old, with int32) {
	at := slices.Index(list, old)
	list[at] = with
	for ; at > 0 && list[at-1] > with; at-- {
		list[at], list[at-1] = list[at-1], with
	}
	for ; at+1 < len(list) && list[at+1] < with; at++ {
		list[at], list[at+1] = list[at+1], with
	}
}

// near counts the neighbours of piece i on its roll.
func (p *placing) near(i int) int {
	n := 0
	if i > 0 && p.rollOf[i-1] == p.rollOf[i] {
		n++
	}
	if i+1 < len(p.rollOf) && p.rollOf[i+1] == p.rollOf[i] {
		n++
	}
	return n
}

// sortRolls numbers the rolls by their lowest piece and collects their pieces.
func (p *placing) sortRolls(stock []int32) {
	rolls := len(stock)
	name := make([]int32, rolls)
	p.stock = make([]int32, rolls)
	p.start = make([]int32, rolls+1)
	count := int32(0)
	for i, r := range p.rollOf {
		if name[r] == 0 {
			count++
			name[r] = count
			p.stock[count-1] = stock[r]
		}
		p.rollOf[i] = name[r] - 1
		p.start[name[r]]++
	}
	for r := range rolls {
		p.start[r+1] += p.start[r]
	}
	p.pieces = make([]int32, len(p.rollOf))
	fill := slices.Clone(p.start)
	for i, r := range p.rollOf {
		p.pieces[fill[r]] = int32(i)
		fill[r]++
	}
}

// withdraw takes out the rolls that stand for pieces left out, and returns
// these.
func (p *placing) withdraw() []int {
	var missing []int
	n := 0
	starts := p.start[:1]
	var pieces []int32
	for r, b := range p.stock {
		roll := p.roll(r)
		if b < 0 {
			missing = append(missing, int(roll[0]))
			continue
		}
		if missing == nil {
			pieces = p.pieces[:p.start[r+1]]
		} else {
			pieces = append(pieces, roll...)
		}
		p.stock[n] = b
		n++
		starts = append(starts, int32(len(pieces)))
	}
	p.stock, p.start, p.pieces = p.stock[:n], starts, pieces
	slices.Sort(missing)
	return missing
}

func (p *placing) roll(r int) []int32 { return p.pieces[p.start[r]:p.start[r+1]] }
