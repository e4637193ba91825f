package cutting

import (
	"cmp"
	"fmt"
	"slices"

	"firstdrop/measure"
)

// Cutting in order.
//
// Goods that shade from one end of the bale to the other are hung as they come
// off it: each roll gives consecutive pieces, in their order, and is finished
// before the next is begun.
//
//	pieces  0 1 2 3 | 4 5 6 | 7 8 9 10
//	rolls      A        B        C          never a return, never an exchange
//
// Where a roll begins and ends in this row settles everything, so a plan is a
// path from piece to piece, and a roll of kind b is a step from its first piece
// to any it reaches:
//
//	position  0   1   2   3   4   5   6   7   8
//	          o-------A------>o-----B---->o-C->o
//	                          o--D--->o
//
// With one kind of roll the step that reaches farthest is always best. Piece k
// that did not go on the roll of piece b needs another one, in every plan; so
// the first pieces of the rolls are witnesses: no roll holds the stretch from
// one to the next inclusive, each lies on a roll of its own, and as many rolls
// are needed as there are witnesses.
//
// With several kinds, what can be bought from here depends on what has been
// used: a node is a position with the rolls used of each counted kind, and
// those left in open packs. The least cost is that of a shortest path, which
// is exact, and its own proof. Further goals are compared in their order along
// the path; the roll that is to keep a left-over is one marked step.
//
// An order is not chosen when the roll is opened, so with an unknown start it
// must fit from each: the first piece's phase comes up as late as it can.
type orderly struct {
	w      *work
	rank   [3]int // place in a label's value of cost, negative left-over and rolls; see ranks
	mark   bool   // a left-over is wanted
	size   []uint64
	step   []uint64
	reach  [][]int32
	labels []label
	at     [][]int32 // labels by position
	known  map[orderKey]int32
	whole  bool // nothing was dropped
}

// label is a way to have cut the first pieces.
type label struct {
	value     [4]int64 // pieces left out, then what counts, most wanted first; less is better
	used      uint64   // rolls of each kind, as digits of different sizes
	prev      int32    // label before; -1 at the beginning
	from, end int32    // pieces of the last roll
	stock     int16    // its kind; -1 if a piece was left out
	kept      bool     // a roll has been marked to keep the left-over
}

// orderKey is a node: of two labels with the same one the better is kept.
type orderKey struct {
	used uint64
	end  int32
	kept bool
}

// maxLabels is the number of labels beyond which only the best of each
// position are kept.
const maxLabels = 20_000

// newOrderly lays out how far each kind of roll reaches from each piece, for
// goals in their order. The prices in w.mixed must be set up.
func newOrderly(w *work, goals []Goal) *orderly {
	o := &orderly{w: w, whole: true, known: map[orderKey]int32{}}
	o.rank, o.mark = ranks(goals), slices.Contains(goals, LongestLeftover)
	o.at = make([][]int32, len(w.p.kindOf)+1)
	codes := uint64(1)
	for b := range w.p.stock {
		size := o.values(b)
		if codes > 1<<62/size {
			size, o.whole = 0, false // too many to count: this kind is not used
		}
		o.size, o.step = append(o.size, size), append(o.step, codes)
		codes *= max(size, 1)
		o.reach = append(o.reach, w.p.reaches(b))
	}
	return o
}

// ranks returns for each goal its place in a label's value, from 1 on. Those
// not wanted come last and are told apart for nothing.
func ranks(goals []Goal) (place [3]int) {
	next := 1
	for _, g := range goals {
		if place[g] == 0 {
			place[g] = next
			next++
		}
	}
	for g := range place {
		if place[g] == 0 {
			place[g] = next
			next++
		}
	}
	return place
}

// values is how many numbers of rolls used of a kind have to be told apart.
func (o *orderly) values(b int) uint64 {
	x, n := &o.w.mixed, int32(len(o.w.p.kindOf))
	switch {
	case x.count[b] >= 0 && x.count[b] < n:
		return uint64(x.count[b]) + 1
	case x.pack[b] > 1:
		return uint64(min(x.pack[b], n+1))
	}
	return 1
}

// reaches returns for each piece the one after the last that a roll of kind b
// holds which begins with it.
func (p *Problem) reaches(b int) []int32 {
	n := len(p.kindOf)
	reach := make([]int32, n)
	for i := range reach {
		reach[i] = int32(i)
		p.alongRoll(b, i, func(end int, _ int64) bool {
			reach[i] = int32(end)
			return true
		})
	}
	return reach
}

// alongRoll cuts the pieces from number i on in their order from a roll of
// kind b, and calls do after each with the number of the next and the length
// used so far, at the worst start, until it returns false or the roll is full.
func (p *Problem) alongRoll(b, i int, do func(end int, used int64) bool) {
	n := &p.nets[b]
	l := n.safe[0]
	if !n.known {
		l.first = p.phase[p.kindOf[i]]
		l.begin = l.first - (p.repeat - 1) - n.lead
		l.limit = l.begin + n.roll
	}
	x := l.first
	for ; i < len(p.kindOf); i++ {
		if x = n.after(p, x, int(p.kindOf[i])); x > l.limit || !do(i+1, x-l.begin-p.loss) {
			return
		}
	}
}

// leftBehind is what is left behind the last cut of a roll of kind b that ends
// at to, in one piece at the roll's very end.
func (p *Problem) leftBehind(b int, to int64) int64 {
	n := &p.nets[b]
	if n.broken != nil {
		last := n.broken[len(n.broken)-1]
		return last.to - max(to, last.from)
	}
	return n.roll - p.loss - to
}

// solve finds the best path and returns its last label.
func (o *orderly) solve() label {
	n := len(o.w.p.kindOf)
	o.push(label{prev: -1, stock: -1})
	room := max(64, maxLabels/(n+1))
	for i := range n {
		ids := o.at[i]
		if len(ids) > room {
			slices.SortFunc(ids, func(a, b int32) int {
				return cmp.Or(slices.Compare(o.labels[a].value[:], o.labels[b].value[:]), cmp.Compare(a, b))
			})
			ids, o.whole = ids[:room], false
		}
		for _, id := range ids {
			o.w.steps++
			o.extend(id, i)
		}
	}
	best := o.at[n][0]
	for _, id := range o.at[n] {
		if slices.Compare(o.labels[id].value[:], o.labels[best].value[:]) < 0 {
			best = id
		}
	}
	return o.labels[best]
}

// push keeps a label unless its node has one as good.
func (o *orderly) push(l label) {
	key := orderKey{l.used, l.end, l.kept}
	id, known := o.known[key]
	if !known {
		o.known[key] = int32(len(o.labels))
		o.at[l.end] = append(o.at[l.end], int32(len(o.labels)))
		o.labels = append(o.labels, l)
		return
	}
	if slices.Compare(l.value[:], o.labels[id].value[:]) < 0 {
		o.labels[id] = l
	}
}

// extend takes the label on by one roll, or by leaving piece i out.
func (o *orderly) extend(id int32, i int) {
	endless := false
	for b := range o.reach {
		if o.reach[b][i] == int32(i) {
			continue
		}
		endless = endless || o.w.mixed.count[b] < 0 && o.size[b] > 0
		o.extendBy(id, i, b)
	}
	if endless {
		return
	}
	l := o.labels[id]
	l.prev, l.from, l.end, l.stock = id, int32(i), int32(i)+1, -1
	l.value[0]++
	l.value[o.rank[FewestRolls]] += o.w.mixed.dear
	o.push(l)
}

// extendBy takes the label on by a roll of kind b. It reaches as far as it can,
// unless the left-over may be kept on it, or on the next one.
func (o *orderly) extendBy(id int32, i, b int) {
	l := o.labels[id]
	x, now := &o.w.mixed, uint64(0)
	if o.size[b] != 1 {
		if o.size[b] == 0 {
			return
		}
		now = l.used / o.step[b] % o.size[b]
	}
	counted := x.count[b] >= 0 && int(x.count[b]) < len(o.w.p.kindOf)
	if counted && now+1 == o.size[b] {
		return
	}
	if now%uint64(x.pack[b]) == 0 {
		l.value[o.rank[FewestRolls]] += x.paid[b]
	}
	if now+1 < o.size[b] {
		l.used += o.step[b]
	} else {
		l.used -= now * o.step[b]
	}
	l.prev, l.from, l.stock = id, int32(i), int16(b)
	l.value[o.rank[FewestChanges]]++
	o.w.steps++
	if !o.mark || l.kept {
		l.end = o.reach[b][i]
		o.push(l)
		return
	}
	o.w.p.alongRoll(b, i, func(end int, used int64) bool {
		l.end = int32(end)
		o.push(l)
		marked := l
		marked.kept = true
		marked.value[o.rank[LongestLeftover]] -= o.w.p.leftBehind(b, used)
		o.push(marked)
		return true
	})
}

// solveInOrder fills in the answer for pieces that must be cut in order.
func (w *work) solveInOrder(s *Solution, options *Options) {
	p, x := w.p, &w.mixed
	mixed, goals := p.isMixed(), options.goals()
	x.price(p)
	if !mixed {
		x.pack[0] = 1 // fewest rolls are fewest packs
	}
	o := newOrderly(w, goals)
	last := o.solve()
	o.write(s, last)
	s.Cost = last.value[o.rank[FewestRolls]]
	s.CostBound = s.Cost
	switch {
	case !mixed:
		s.Certificate.Breaks = p.breaks()
		s.LowerBound = len(s.Certificate.Breaks)
		s.Cost, s.CostBound = p.costOfRolls(len(s.Rolls)), p.costOfRolls(s.LowerBound)
		s.Proven = len(s.Rolls) == s.LowerBound
	case o.whole && goals[0] == FewestRolls:
		s.Certificate.ByOrder = s.Cost
	default:
		w.boundInOrder(s)
	}
	if mixed {
		s.Proven = s.Cost == s.CostBound
		s.LowerBound = x.leastRolls(s.CostBound)
	}
	var results []Result
	for _, g := range goals {
		results = append(results, o.result(s, g))
	}
	s.Goals = options.report(results)
	s.Steps = w.steps
}

// boundInOrder bounds the cost where the best path was not sought by cost, or
// not to the end.
func (w *work) boundInOrder(s *Solution) {
	x := &w.mixed
	x.price(w.p)
	if o := newOrderly(w, []Goal{FewestRolls}); o.whole {
		if last := o.solve(); o.whole {
			s.CostBound = last.value[o.rank[FewestRolls]]
			s.Certificate.ByOrder = s.CostBound
			return
		}
	}
	x.price(w.p)
	w.improveMixed()
	s.Certificate = w.certificateMixed()
	s.CostBound = s.Certificate.ByCost
}

// rollsInOrder is QuickRolls for pieces in order.
func (w *work) rollsInOrder() int {
	if !w.p.isMixed() {
		return len(w.p.breaks())
	}
	w.mixed.price(w.p)
	o, n := newOrderly(w, []Goal{FewestRolls}), 0
	for l := o.solve(); l.prev >= 0; l = o.labels[l.prev] {
		if l.stock >= 0 && w.mixed.paid[l.stock] > 0 {
			n++
		}
	}
	return n
}

// leastRolls is the number of rolls that such a cost buys at least; 0 if it
// is that of pieces left out.
func (x *mixed) leastRolls(cost int64) int {
	if cost >= x.dear {
		return 0
	}
	return int((cost + x.top - 1) / x.top)
}

// breaks lists the first pieces of the rolls when each is filled as far as it
// reaches: as many rolls are needed.
func (p *Problem) breaks() []int {
	var all []int
	reach := p.reaches(0)
	for i := 0; i < len(reach); i = int(reach[i]) {
		all = append(all, i)
	}
	return all
}

// result is how far a goal was reached: as far as can be, if no label was
// dropped.
func (o *orderly) result(s *Solution, g Goal) Result {
	value := s.measure(g)
	if o.whole {
		return Result{g, value, value, true}
	}
	r := Result{Goal: g, Value: value} // the widest there is
	switch g {
	case FewestRolls:
		r.Bound = s.CostBound
	case FewestChanges:
		r.Bound = max(o.w.fewestStretches()-1, 0)
	case LongestLeftover:
		for b := range s.Problem.stock {
			r.Bound = max(r.Bound, int64(s.Problem.stock[b].Total()))
		}
	}
	r.Proven = r.Value == r.Bound
	return r
}

// fewestStretches is a number of stretches of consecutive pieces below which
// not all pieces can be cut, whatever rolls are used: each is taken as far as
// the kind reaches that reaches farthest.
func (w *work) fewestStretches() int64 {
	n, count := len(w.p.kindOf), int64(0)
	far := make([]int32, n)
	for b := range w.p.stock {
		for i, to := range w.p.reaches(b) {
			far[i] = max(far[i], to)
		}
	}
	for i := 0; i < n; i = int(far[i]) {
		count++
	}
	return count
}

// write follows the path back and writes its rolls.
func (o *orderly) write(s *Solution, last label) {
	for l := last; l.prev >= 0; l = o.labels[l.prev] {
		if l.stock < 0 {
			s.Missing = append(s.Missing, int(l.from))
			continue
		}
		s.Rolls = append(s.Rolls, o.w.rollInOrder(int(l.stock), int(l.from), int(l.end)))
	}
	slices.Reverse(s.Rolls)
	slices.Reverse(s.Missing)
}

// rollInOrder cuts the pieces from i up to end from a roll of kind b.
func (w *work) rollInOrder(b, i, end int) RollPlan {
	w.choose(b)
	defer w.choose(0)
	pieces := make([]int32, 0, end-i)
	for k := i; k < end; k++ {
		pieces = append(pieces, int32(k))
	}
	seq := w.kindsOf(pieces)
	if w.n.known {
		begin := w.n.safe[0].begin
		at := w.p.stock[b].startPhase(w.p.spec.Repeat)
		return RollPlan{b, []Order{{After: at, UpTo: at, At: at, Cuts: w.cutsInOrder(i, seq, begin)}}}
	}
	q := w.p.phase[seq[0]]
	same, at := mod(q-w.n.lead, w.p.repeat), mod(q+1-w.n.lead, w.p.repeat)
	return RollPlan{b, []Order{{
		After: measure.Length(same), UpTo: measure.Length(same), At: measure.Length(at),
		Cuts: w.cutsInOrder(i, seq, at),
	}}}
}

// cutsInOrder returns the cuts of consecutive pieces from number i on, of a
// roll that begins at the given phase.
func (w *work) cutsInOrder(i int, seq []int16, begin int64) []Cut {
	cuts, x := make([]Cut, 0, len(seq)), begin+w.n.lead
	for k, j := range seq {
		x = w.n.after(w.p, x, int(j))
		to := measure.Length(x - begin - w.p.loss)
		cuts = append(cuts, Cut{i + k, to - w.p.kinds[j].Length, to})
	}
	return cuts
}

// checkOrder: where pieces must be cut in order, each roll gives consecutive
// ones in theirs, and the next roll goes on behind it.
func (s *Solution) checkOrder() error {
	next := 0
	for r, plan := range s.Rolls {
		if !s.Problem.spec.InOrder {
			break
		}
		first := plan.Orders[0].Cuts[0].Piece
		if first < next {
			return fmt.Errorf("roll %d begins with piece %d after %d", r, first, next-1)
		}
		for k, o := range plan.Orders {
			for i, c := range o.Cuts {
				if c.Piece != first+i {
					return fmt.Errorf("roll %d, order %d cuts piece %d in place of %d", r, k, c.Piece, first+i)
				}
			}
		}
		next = first + len(plan.Orders[0].Cuts)
	}
	return nil
}

// checkInOrder recomputes the bound for pieces in order: no roll holds the
// stretch from one break to the next, or the least cost by a path of its own.
func (c Certificate) checkInOrder(p *Problem) error {
	if p.isMixed() {
		w := newWork(p, DefaultSteps)
		defer w.free()
		w.mixed.price(p)
		o := newOrderly(w, []Goal{FewestRolls})
		if cost := o.solve().value[o.rank[FewestRolls]]; cost != c.ByOrder || !o.whole {
			return fmt.Errorf("a shortest path costs %d, not %d", cost, c.ByOrder)
		}
		return nil
	}
	for k, b := range c.Breaks {
		if b < 0 || b >= len(p.kindOf) || k > 0 && b <= c.Breaks[k-1] {
			return fmt.Errorf("break %d at piece %d is out of place", k, b)
		}
		if k == 0 {
			continue
		}
		reached := c.Breaks[k-1]
		p.alongRoll(0, reached, func(end int, _ int64) bool { reached = end; return end <= b })
		if reached > b {
			return fmt.Errorf("a roll can hold pieces %d to %d", c.Breaks[k-1], b)
		}
	}
	return nil
}
