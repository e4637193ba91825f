package cutting

import "math"

// A linear program over rolls.
//
// Let every way of cutting a roll be a column, used x times. Fewest rolls
// means least sum of x with each kind cut at least as often as asked for:
//
//	            roll A  roll B  roll C  …
//	kind 1         2       .       1          ≥ demand 1
//	kind 2         .       3       1          ≥ demand 2
//	rolls          1       1       1          → least
//
// The columns are far too many to write down. One begins with the rolls of a
// single kind, and asks for the price of each kind in the present optimum; a
// roll worth more than 1 at these prices improves it, and price.go finds the
// most valuable one. When none is left the optimum is reached. (P. C. Gilmore
// and R. E. Gomory, Operations Research 9(6), 1961.)
//
// The arithmetic is in floating point and proves nothing. Every round hands
// its prices, cut down to whole numbers, to the certificate.
type master struct {
	m       int
	inverse []float64 // of the basis, row by row
	x       []float64 // use of each basic column
	price   []float64 // per kind
	basis   []int32   // column number, or -1-j for the surplus of kind j
	entry   []float64
	pivots  int
	stale   bool      // the prices have to be computed from the basis
	col     plan      // the columns, as sequences of kinds
	cost    []float64 // of each column: 1 where all rolls are alike
	row     []int32   // of each column: the row that counts rolls of its limited kind, or -1
	matrix  []float64
}

const (
	tiny       = 1e-9
	refreshing = 100 // pivots until the inverse is computed anew, lest it drift
	// cellsInStep is the number of cells of an inverse that make another step: with
	// hundreds of kinds a pivot takes longer than a pass.
	cellsInStep = 40_000
)

// begin makes the single-kind rolls the basis for the given demand: rolls for
// the start of exact lane d alone, or with everyStart rolls good for all.
func (w *work) begin(demand []int32, d int) {
	s, m := &w.master, w.m
	s.reset(m)
	for j := range m {
		if demand[j] == 0 {
			s.startSurplus(j, 0)
			continue
		}
		n := w.copies(j, d)
		s.startColumn(j, s.add(0, w.seq, 1, -1), n, float64(demand[j]))
	}
}

// reset empties the program and gives it m rows.
func (s *master) reset(m int) {
	s.m, s.pivots, s.stale = m, 0, true
	s.inverse = grow(s.inverse, m*m)
	clear(s.inverse)
	s.x, s.price = grow(s.x, m), grow(s.price, m)
	s.entry, s.basis = grow(s.entry, m), grow(s.basis, m)
	s.col.reset()
	s.cost, s.row = s.cost[:0], s.row[:0]
}

// add adds a column and returns its number.
func (s *master) add(stock int, seq []int16, cost float64, row int32) int32 {
	s.col.addFrom(stock, seq)
	s.cost, s.row = append(s.cost, cost), append(s.row, row)
	return int32(len(s.cost) - 1)
}

// startSurplus makes the surplus of row j basic at the value x.
func (s *master) startSurplus(j int, x float64) {
	s.basis[j], s.x[j], s.inverse[j*s.m+j] = int32(-1-j), x, -1
}

// startColumn makes the column, n pieces of kind j alone, basic in row j.
func (s *master) startColumn(j int, id int32, n int, demand float64) {
	s.basis[j], s.x[j], s.inverse[j*s.m+j] = id, demand/float64(n), 1/float64(n)
}

// In place of an exact lane: rolls good for all starts, as far as passes find
// them, or all those in the catalogue.
const (
	everyStart = -1
	listed     = -2
	singly     = -3 // exactly, but one by one: see priced.go
)

// copies leaves in w.seq as many pieces of kind j as one roll gives, and
// returns their number.
func (w *work) copies(j, d int) int {
	l := &w.n.safe[0]
	switch {
	case d >= 0:
		l = &w.n.exact[d]
	case len(w.n.safe) > 1:
		l = &w.n.safe[w.p.phaseOf[j]]
	}
	g := &w.n.plan
	w.seq = w.seq[:0]
	for v := l.from; ; w.seq = append(w.seq, int16(j)) {
		v = g.next[int(v)*g.kinds+j]
		if v > l.last {
			return len(w.seq)
		}
	}
}

// improve runs rounds of pricing until the optimum of the linear program is
// reached. For a single exact lane each round offers its prices as
// certificate, and it is over as soon as the bound is target or, unless the
// sharpest weights are wanted, cannot rise. So it is for all starts where there
// are many kinds, unless the demand is a rest, for which there is no target.
func (w *work) improve(demand []int32, d, target int, sharp bool) {
	s := &w.master
	whole := w.isLarge() && len(w.n.safe) > 1 && target < math.MaxInt32
	for range 400*s.m + 200 {
		s.reprice()
		if j := s.surplusWorthwhile(); j >= 0 {
			s.surplusColumn(j)
			if !s.pivot(int32(-1-j), demand) {
				return
			}
			continue
		}
		for j, y := range s.price {
			w.weight[j] = int64(max(y, 0) * float64(one))
		}
		switch d {
		case everyStart:
			if whole {
				w.askEveryStart()
			} else {
				w.heaviest()
			}
		case listed:
			w.offer(w.heaviestListed(), d)
		case singly:
			w.offer(w.heaviestPriced(), d)
		default:
			w.offer(w.heaviestOn(d), d)
		}
		if w.lower.rolls() >= target || (d >= 0 || whole) && !sharp && s.settled(demand, w.lower.byWeights) {
			return
		}
		if !s.worthwhile(w.seq) || w.spent() {
			return
		}
		if !s.pivot(s.enter(0, w.seq, 1, -1), demand) {
			return
		}
	}
}

// askEveryStart leaves in w.seq a roll for all starts that is worth more than
// one at the prices, if it finds one: by prices that lean on the best
// certificate, by the prices themselves, and around the widest gaps. Prices near
// the optimum are offered for the start that carries least.
func (w *work) askEveryStart() {
	w.lean(leaning)
	if w.heaviest(); w.master.worthwhile(w.seq) {
		return
	}
	w.lean(0)
	w.heaviest()
	if known := w.weightOf(w.seq); known <= one+one>>10 {
		lane, most := w.lightest()
		w.offer(most, lane)
		w.seekInGaps(max(known, worthIt))
	}
}

// leaning is a part of the way that proved good on hotels of 10 to 40 kinds.
const leaning = 0.8

// lean leaves in w.weight the prices drawn towards the weights of the best
// certificate, by the given part of the way. Prices by themselves leap from
// round to round; those near weights that are known to be good ask for columns
// that last. (P. Wentges, International Transactions in Operational Research
// 4(2), 1997, from memory.)
func (w *work) lean(part float64) {
	s, b := &w.master, &w.lower
	for j, y := range s.price {
		known := float64(b.weight[j]) / float64(max(b.capacity, 1))
		w.weight[j] = int64((part*known + (1-part)*max(y, 0)) * float64(one))
	}
}

// settled says that the optimum, which is not above the present value, cannot
// lift the bound any further.
func (s *master) settled(demand []int32, proven int) bool {
	return s.worth(demand) <= float64(proven)+1e-7
}

// worth is what the demand is worth at the prices.
func (s *master) worth(demand []int32) float64 {
	sum := 0.0
	for j, n := range demand {
		sum += s.price[j] * float64(n)
	}
	return sum
}

// rolls is the number of rolls that the program needs at its prices.
func (s *master) rolls(demand []int32) int { return int(math.Ceil(s.worth(demand) - 1e-6)) }

// reprice computes the prices of the basis where a pivot has not brought them
// up to date. Surplus costs nothing.
func (s *master) reprice() {
	if !s.stale {
		return
	}
	s.stale = false
	clear(s.price)
	for r, b := range s.basis {
		if b < 0 || s.cost[b] == 0 {
			continue
		}
		cost := s.cost[b]
		for j, a := range s.inverse[r*s.m : r*s.m+s.m] {
			s.price[j] += cost * a
		}
	}
}

func (s *master) surplusWorthwhile() int {
	worst, at := -tiny, -1
	for j, y := range s.price {
		if y < worst {
			worst, at = y, j
		}
	}
	return at
}

func (s *master) worthwhile(seq []int16) bool {
	sum := 0.0
	for _, j := range seq {
		sum += s.price[j]
	}
	return sum > 1+tiny
}

// enter adds a column, puts it in terms of the basis into s.entry and returns
// its number.
func (s *master) enter(stock int, seq []int16, cost float64, row int32) int32 {
	clear(s.entry)
	for _, j := range seq {
		for r := range s.entry {
			s.entry[r] += s.inverse[r*s.m+int(j)]
		}
	}
	if row >= 0 {
		for r := range s.entry {
			s.entry[r] -= s.inverse[r*s.m+int(row)]
		}
	}
	return s.add(stock, seq, cost, row)
}

func (s *master) surplusColumn(j int) {
	for r := range s.entry {
		s.entry[r] = -s.inverse[r*s.m+j]
	}
}

// pivot brings the column in s.entry into the basis. It returns false if no
// row can leave, which happens only when rounding has spoilt the inverse.
func (s *master) pivot(id int32, demand []int32) bool {
	row, least := -1, 0.0
	for r, a := range s.entry {
		if a < 1e-8 {
			continue
		}
		ratio := max(s.x[r], 0) / a
		if row < 0 || ratio < least-1e-12 || (ratio <= least+1e-12 && a > s.entry[row]) {
			row, least = r, ratio
		}
	}
	if row < 0 {
		return false
	}
	gain := s.reduced(id)
	eliminate(s.inverse, s.x, s.entry, row, least)
	for j, a := range s.inverse[row*s.m : row*s.m+s.m] {
		s.price[j] += gain * a
	}
	s.basis[row] = id
	if s.pivots++; s.pivots%refreshing == 0 {
		s.stale = true
		return s.refresh(demand)
	}
	return true
}

// reduced is what a column, or the surplus -1-j, costs beyond what its pieces
// are worth.
func (s *master) reduced(id int32) float64 {
	if id < 0 {
		return s.price[-1-id]
	}
	sum := s.cost[id]
	for _, j := range s.col.roll(int(id)) {
		sum -= s.price[j]
	}
	if row := s.row[id]; row >= 0 {
		sum += s.price[row]
	}
	return sum
}

// ratioRow returns the row that limits the use of a column with the given entries
// in the basis, and how much of it may be used; −1 if none does.
func ratioRow(x, entry []float64) (row int, least float64) {
	row = -1
	for r, a := range entry {
		if a < 1e-8 {
			continue
		}
		ratio := max(x[r], 0) / a
		if row < 0 || ratio < least-1e-12 || ratio <= least+1e-12 && a > entry[row] {
			row, least = r, ratio
		}
	}
	return row, least
}

// eliminate updates the inverse of a basis, and the use x of its columns, for a
// column that comes in at a row and is used step times: entry is that column by
// the inverse so far.
func eliminate(inverse, x, entry []float64, row int, step float64) {
	m := len(entry)
	lead := inverse[row*m : row*m+m]
	factor := 1 / entry[row]
	for c := range lead {
		lead[c] *= factor
	}
	for r, a := range entry {
		if r == row || a == 0 {
			continue
		}
		x[r] -= a * step
		line := inverse[r*m : r*m+m]
		for c, l := range lead {
			line[c] -= a * l
		}
	}
	x[row] = step
}

// refresh computes the inverse of the basis and its use anew.
func (s *master) refresh(demand []int32) bool {
	m := s.m
	s.matrix = grow(s.matrix, m*m)
	clear(s.matrix)
	for c, b := range s.basis {
		if b < 0 {
			s.matrix[int(-1-b)*m+c] = -1
			continue
		}
		for _, j := range s.col.roll(int(b)) {
			s.matrix[int(j)*m+c]++
		}
		if row := s.row[b]; row >= 0 {
			s.matrix[int(row)*m+c]--
		}
	}
	if !invert(s.matrix, s.inverse, m) {
		return false
	}
	for r := range s.x {
		sum := 0.0
		for j, a := range s.inverse[r*m : r*m+m] {
			sum += a * float64(demand[j])
		}
		s.x[r] = sum
	}
	return true
}

// invert writes the inverse of the m×m matrix a to inv, destroying a. It
// returns false if a is singular as far as floats can tell.
func invert(a, inv []float64, m int) bool {
	clear(inv)
	for i := range m {
		inv[i*m+i] = 1
	}
	for c := range m {
		p := c
		for r := c + 1; r < m; r++ {
			if abs(a[r*m+c]) > abs(a[p*m+c]) {
				p = r
			}
		}
		if abs(a[p*m+c]) < 1e-11 {
			return false
		}
		swapRows(a, p, c, m)
		swapRows(inv, p, c, m)
		scale := 1 / a[c*m+c]
		for k := range m {
			a[c*m+k] *= scale
			inv[c*m+k] *= scale
		}
		for r := range m {
			f := a[r*m+c]
			if r == c || f == 0 {
				continue
			}
			for k := range m {
				a[r*m+k] -= f * a[c*m+k]
				inv[r*m+k] -= f * inv[c*m+k]
			}
		}
	}
	return true
}

func swapRows(a []float64, p, q, m int) {
	if p == q {
		return
	}
	for k := range m {
		a[p*m+k], a[q*m+k] = a[q*m+k], a[p*m+k]
	}
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
