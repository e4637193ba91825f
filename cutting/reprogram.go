package cutting

import "slices"

// The linear program over listed rolls, solved again and again.
//
// Searches ask for the optimum of a program that differs from the last one
// only by what is left to be cut and by rolls struck off:
//
//	last optimum        x = (2, 0.6, 0.4)      prices y
//	one roll A taken    x = (1, 0.6, 0.4)      still the optimum
//	one roll B taken    x = (2, -0.4, 0.4)     not allowed, but y still bounds
//
// The prices stay within what every roll is worth, so the dual simplex method
// goes on from there (C. E. Lemke, Naval Research Logistics Quarterly 1, 1954):
// take a column out of the basis that is used less than not at all, or that
// has been struck off, and bring in the one whose price condition is met first.
// It begins from nothing at all, with all prices 0. Columns may be added on the
// way; where they are worth more than they cost the ordinary simplex method
// goes on from there.
type reprogram struct {
	m       int
	set     []int32 // of each column, in states; -1 if it is a roll of its own
	at      []int32 // where its kinds begin in kind and many
	kind    []int16
	many    []int16   // of each; −1 in the row that counts a kind of roll
	cost    []float64 // of each column; 1 where all rolls are alike
	live    []bool    // not struck off
	marked  []int32
	inverse []float64
	x       []float64
	price   []float64
	basis   []int32 // column, or -1-j for the surplus of kind j
	place   []int32 // row of each column in the basis, plus one; 0 if not basic
	entry   []float64
	reduced []float64
	matrix  []float64
	pivots  int
	saved   []int32  // bases saved
	kept    []keptLP // inverses of the latest
	serial  int
}

type keptLP struct {
	mark, serial int
	inverse      []float64
}

const keptInverses = 64

// begin makes a program of m kinds without columns.
func (q *reprogram) begin(m int) {
	q.m = m
	q.set, q.kind, q.many, q.cost, q.marked = q.set[:0], q.kind[:0], q.many[:0], q.cost[:0], q.marked[:0]
	q.at = append(q.at[:0], 0)
	q.live, q.place = q.live[:0], q.place[:0]
	q.inverse = grow(q.inverse, m*m)
	clear(q.inverse)
	q.x, q.price, q.entry, q.basis = grow(q.x, m), grow(q.price, m), grow(q.entry, m), grow(q.basis, m)
	clear(q.price)
	for j := range m {
		q.basis[j], q.inverse[j*m+j] = int32(-1-j), -1
	}
	q.pivots, q.saved, q.serial = 0, q.saved[:0], q.serial+1
}

// load takes the listed sets as columns and begins with an empty basis.
func (q *reprogram) load(s *states) {
	q.begin(s.m)
	for _, id := range s.list {
		for j, n := range s.counts(int(id)) {
			if n > 0 {
				q.kind, q.many = append(q.kind, int16(j)), append(q.many, int16(n))
			}
		}
		q.end(id, 1)
	}
}

// end makes a column of the kinds appended since the last one and returns its
// number.
func (q *reprogram) end(set int32, cost float64) int32 {
	q.at = append(q.at, int32(len(q.kind)))
	q.set, q.cost = append(q.set, set), append(q.cost, cost)
	q.live, q.place = append(q.live, false), append(q.place, 0)
	return int32(len(q.set) - 1)
}

// add adds a roll as a column, which is of no listed set, and returns its
// number. It uses one up of the kind of roll that the row counts, unless that
// is -1.
func (q *reprogram) add(seq []int16, cost float64, row int32) int32 {
	lo := len(q.kind)
	for _, j := range seq {
		if i := slices.Index(q.kind[lo:], j); i >= 0 {
			q.many[lo+i]++
			continue
		}
		q.kind, q.many = append(q.kind, j), append(q.many, 1)
	}
	if row >= 0 {
		q.kind, q.many = append(q.kind, int16(row)), append(q.many, -1)
	}
	return q.end(-1, cost)
}

func (q *reprogram) columns() int { return len(q.set) }

func (q *reprogram) column(col int32) ([]int16, []int16) {
	lo, hi := q.at[col], q.at[col+1]
	return q.kind[lo:hi], q.many[lo:hi]
}

// within says whether a column can be taken from what is left: pieces, and
// below zero the rolls of a counted kind.
func (q *reprogram) within(col int32, left []int32) bool {
	kinds, many := q.column(col)
	for i, j := range kinds {
		if n := int32(many[i]); n > 0 && n > left[j] || n < 0 && n < left[j] {
			return false
		}
	}
	return true
}

// narrow appends to the live columns those from number base on that can still be
// taken from what is left.
func (q *reprogram) narrow(live []int32, base int, left []int32) []int32 {
	for _, col := range live[base:] {
		if q.within(col, left) {
			live = append(live, col)
		}
	}
	return live
}

// take takes a column from what is left; by = -1 gives it back.
func (q *reprogram) take(col int32, left []int32, by int32) {
	kinds, many := q.column(col)
	for i, j := range kinds {
		left[j] -= by * int32(many[i])
	}
}

func (q *reprogram) weigh(col int32, weight []int64) int64 {
	kinds, many := q.column(col)
	sum := int64(0)
	for i, j := range kinds {
		sum += int64(many[i]) * weight[j]
	}
	return sum
}

// solve goes on to the optimum for what is left over the live columns, and
// returns the steps it took. It may end early; the prices are of use anyhow.
// Where no use of the columns cuts what is left the prices ask for more than
// so many rolls, or more than so much.
func (q *reprogram) solve(live, left []int32, most float64) int {
	for _, col := range q.marked {
		q.live[col] = false
	}
	q.marked = append(q.marked[:0], live...)
	for _, col := range live {
		q.live[col] = true
	}
	q.use(left)
	q.reprice(live)
	for turn := range 4*q.m + 50 {
		r, sign := q.leaving()
		if r < 0 {
			return turn
		}
		col, row := q.entering(live, r, sign)
		if !row {
			q.overprice(r, sign, left, most)
			return turn
		}
		if !q.exchange(col, r, left) {
			return turn
		}
	}
	return 4*q.m + 50
}

// adopt takes over the basis of a program with the same columns.
func (q *reprogram) adopt(s *master) {
	copy(q.inverse, s.inverse)
	copy(q.basis, s.basis)
	for r, b := range q.basis {
		if b >= 0 {
			q.place[b] = int32(r + 1)
		}
	}
}

// worth is what is left at the prices.
func (q *reprogram) worth(left []int32) float64 {
	sum := 0.0
	for j, y := range q.price {
		sum += y * float64(left[j])
	}
	return sum
}

// improve brings in live columns worth more than they cost, from a basis that
// cuts what is left, and returns the steps it took.
func (q *reprogram) improve(live, left []int32) int {
	for turn := range 4*q.m + 50 {
		pick, worst := int32(-1), -1e-9
		for i, reduced := range q.reduced {
			if reduced < worst && q.place[live[i]] == 0 {
				pick, worst = live[i], reduced
			}
		}
		for j, y := range q.price {
			if y < worst {
				pick, worst = int32(-1-j), y
			}
		}
		if worst >= -1e-9 {
			return turn
		}
		q.enter(pick)
		r, _ := ratioRow(q.x, q.entry)
		if r < 0 || !q.exchange(pick, r, left) {
			return turn
		}
	}
	return 4*q.m + 50
}

// use computes how much of each basic column is used.
func (q *reprogram) use(left []int32) {
	for r := range q.x {
		sum := 0.0
		for j, a := range q.inverse[r*q.m : r*q.m+q.m] {
			sum += a * float64(left[j])
		}
		q.x[r] = sum
	}
}

// reprice computes the prices of the basis, and by how much each live column
// stays below its cost.
func (q *reprogram) reprice(live []int32) {
	clear(q.price)
	for r, b := range q.basis {
		if b < 0 {
			continue
		}
		cost := q.cost[b]
		for j, a := range q.inverse[r*q.m : r*q.m+q.m] {
			q.price[j] += cost * a
		}
	}
	q.reduced = grow(q.reduced, len(live))
	for i, col := range live {
		kinds, many := q.column(col)
		sum := q.cost[col]
		for k, j := range kinds {
			sum -= q.price[j] * float64(many[k])
		}
		q.reduced[i] = sum
	}
}

// leaving returns the row furthest from what is allowed, and the sign of its
// use there; -1 if there is none.
func (q *reprogram) leaving() (int, float64) {
	worst, at, sign := 1e-7, -1, 0.0
	for r, x := range q.x {
		if -x > worst {
			worst, at, sign = -x, r, -1
		}
		if b := q.basis[r]; x > worst && b >= 0 && !q.live[b] {
			worst, at, sign = x, r, 1
		}
	}
	return at, sign
}

// entering returns the column that may take the place of row r: a column's
// index in live, or -1-j for the surplus of kind j. ok is false if there is
// none, when no use of the live columns cuts what is left.
func (q *reprogram) entering(live []int32, r int, sign float64) (pick int32, ok bool) {
	line := q.inverse[r*q.m : r*q.m+q.m]
	least, size := 0.0, 0.0
	consider := func(id int32, alpha, reduced float64) {
		if alpha *= sign; alpha < 1e-8 {
			return
		}
		ratio := max(reduced, 0) / alpha
		if !ok || ratio < least-1e-12 || ratio <= least+1e-12 && alpha > size {
			pick, ok, least, size = id, true, ratio, alpha
		}
	}
	for i, col := range live {
		if q.place[col] != 0 {
			continue
		}
		kinds, many := q.column(col)
		alpha := 0.0
		for k, j := range kinds {
			alpha += line[j] * float64(many[k])
		}
		consider(int32(i), alpha, q.reduced[i])
	}
	for j, a := range line {
		consider(int32(-1-j), -a, q.price[j])
	}
	if ok && pick >= 0 {
		pick = live[pick]
	}
	return pick, ok
}

// overprice moves the prices along row r, which no live column can fill: they
// may rise in this proportion without end. They stop above what is allowed.
func (q *reprogram) overprice(r int, sign float64, left []int32, most float64) {
	line, sum, steepest := q.inverse[r*q.m:r*q.m+q.m], 0.0, 0.0
	for j, y := range q.price {
		sum += y * float64(left[j])
		steepest = max(steepest, line[j]*sign)
	}
	step := min((most+1-sum)/abs(q.x[r]), dearest/max(steepest, tiny))
	for j, a := range line {
		q.price[j] += step * sign * a
	}
}

// dearest is a price at which sums of weights still stay within 64 bits.
const dearest = 1 << 16

// enter puts a column, or the surplus -1-j, in terms of the basis into entry.
func (q *reprogram) enter(id int32) {
	m := q.m
	clear(q.entry)
	if id < 0 {
		for i := range q.entry {
			q.entry[i] = -q.inverse[i*m+int(-1-id)]
		}
	} else {
		kinds, many := q.column(id)
		for i := range q.entry {
			for k, j := range kinds {
				q.entry[i] += q.inverse[i*m+int(j)] * float64(many[k])
			}
		}
	}
}

// exchange brings a column, or the surplus -1-j, into the basis in row r.
func (q *reprogram) exchange(id int32, r int, left []int32) bool {
	q.enter(id)
	if b := q.basis[r]; b >= 0 {
		q.place[b] = 0
	}
	if id >= 0 {
		q.place[id] = int32(r + 1)
	}
	q.basis[r] = id
	if q.pivots++; q.pivots%refreshing == 0 {
		if !q.refactor() {
			return false
		}
		q.use(left)
	} else {
		eliminate(q.inverse, q.x, q.entry, r, q.x[r]*(1/q.entry[r]))
	}
	q.reprice(q.marked)
	return true
}

// refactor computes the inverse of the basis anew.
func (q *reprogram) refactor() bool {
	m := q.m
	q.matrix = grow(q.matrix, m*m)
	clear(q.matrix)
	for c, b := range q.basis {
		if b < 0 {
			q.matrix[int(-1-b)*m+c] = -1
			continue
		}
		kinds, many := q.column(b)
		for k, j := range kinds {
			q.matrix[int(j)*m+c] = float64(many[k])
		}
	}
	return invert(q.matrix, q.inverse, m)
}

// save notes the basis and returns a mark to come back to.
func (q *reprogram) save() int {
	mark := len(q.saved)
	q.saved = append(q.saved, q.basis...)
	for len(q.kept) < keptInverses {
		q.kept = append(q.kept, keptLP{})
	}
	k := &q.kept[mark/q.m%keptInverses]
	k.mark, k.serial = mark, q.serial
	k.inverse = append(k.inverse[:0], q.inverse...)
	return mark
}

// restore goes back to the basis saved at mark, the latest one not yet gone
// back to.
func (q *reprogram) restore(mark int) {
	for _, b := range q.basis {
		if b >= 0 {
			q.place[b] = 0
		}
	}
	copy(q.basis, q.saved[mark:])
	q.saved = q.saved[:mark]
	for r, b := range q.basis {
		if b >= 0 {
			q.place[b] = int32(r + 1)
		}
	}
	k := &q.kept[mark/q.m%keptInverses]
	if k.mark == mark && k.serial == q.serial {
		copy(q.inverse, k.inverse)
		return
	}
	q.refactor()
}
