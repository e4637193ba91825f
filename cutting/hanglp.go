package cutting

// A linear program over rolls as they are hung.
//
// Every path of hangnet.go is a column, used x times and paid by its stretches:
//
//	             roll A  roll B  roll C  …
//	piece 0         1       .       1          ≥ 1
//	piece 1         1       1       .          ≥ 1
//	rolls           1       1       1          ≤ k
//	stretches       1       2       3          → least
//
// A piece on two rolls is no gain: stretches that overlap can be trimmed until
// they do not, and are no more then. So no price is below zero. The columns are
// made as they are needed, from the prices of the present optimum (as in
// columns.go), and the optimum is nearly always a whole number and what the
// pieces need: the path of a roll already knows what it can hold and in how
// many stretches.
//
// The arithmetic is in floating point and proves nothing; the prices, cut down
// to whole numbers, do, by one pass over the network.
type hangLP struct {
	pieces int
	rows   int
	count  [2]float64 // rolls there are: ordinary, short
	arcs   []int32    // of the columns, see hangNet.trace
	row    []int32    // the piece of each arc
	from   []int32    // where they begin in arcs, one more than columns
	sort   []int8     // of roll, of each column
	cost   []float64  // stretches
	struck []bool     // uses a forbidden arc

	inverse []float64
	x       []float64
	price   []float64
	basis   []int32 // column; -1-r for the surplus or slack of row r; below that the want of piece -1-rows-r
	entry   []float64
	matrix  []float64
	pivots  int
	dear    float64 // what a piece on no roll costs, and a struck column more
}

// dearestWant is the most that a piece on no roll costs, in stretches.
const dearestWant = 1 << 22

// load makes the program for so many pieces, with all pieces wanting.
func (q *hangLP) load(pieces int, ordinary, short int, dear float64) {
	q.pieces, q.rows, q.pivots, q.dear = pieces, pieces+2, 0, dear
	q.count = [2]float64{float64(ordinary), float64(short)}
	q.arcs, q.row, q.from = q.arcs[:0], q.row[:0], append(q.from[:0], 0)
	q.sort, q.cost, q.struck = q.sort[:0], q.cost[:0], q.struck[:0]
	m := q.rows
	q.inverse = grow(q.inverse, m*m)
	clear(q.inverse)
	q.x, q.price, q.basis, q.entry = grow(q.x, m), grow(q.price, m), grow(q.basis, m), grow(q.entry, m)
	for r := range m {
		q.inverse[r*m+r] = 1
		q.x[r], q.basis[r] = q.rhs(r), int32(-1-r)
		if r < pieces {
			q.basis[r] -= int32(m)
		}
	}
}

// rhs is the right-hand side of a row.
func (q *hangLP) rhs(r int) float64 {
	if r < q.pieces {
		return 1
	}
	return q.count[r-q.pieces]
}

// add adds the column of the arcs appended to q.arcs.
func (q *hangLP) add(g *hangNet, sort int8) int32 {
	lo, stretches := q.from[len(q.from)-1], 0.0
	for _, a := range q.arcs[lo:] {
		q.row = append(q.row, g.piece[a/2])
		stretches += float64(1 - a&1)
	}
	q.from = append(q.from, int32(len(q.arcs)))
	q.sort, q.cost, q.struck = append(q.sort, sort), append(q.cost, stretches), append(q.struck, false)
	return int32(len(q.cost) - 1)
}

// drop takes the last column back.
func (q *hangLP) drop() {
	n := len(q.cost) - 1
	q.from, q.sort, q.cost, q.struck = q.from[:n+1], q.sort[:n], q.cost[:n], q.struck[:n]
	q.arcs, q.row = q.arcs[:q.from[n]], q.row[:q.from[n]]
}

func (q *hangLP) column(id int32) []int32 { return q.arcs[q.from[id]:q.from[id+1]] }

// costOf is the cost of a column, a slack or a want.
func (q *hangLP) costOf(id int32) float64 {
	switch {
	case id >= 0 && q.struck[id]:
		return q.cost[id] + q.dear
	case id >= 0:
		return q.cost[id]
	case int(-1-id) >= q.rows:
		return q.dear
	}
	return 0
}

// reduced is by how much a column costs more than it is worth.
func (q *hangLP) reduced(id int32) float64 {
	sum := q.costOf(id)
	if id < 0 {
		switch r := int(-1 - id); {
		case r >= q.rows:
			return sum - q.price[r-q.rows]
		case r >= q.pieces:
			return -q.price[r]
		default:
			return q.price[r]
		}
	}
	for _, i := range q.row[q.from[id]:q.from[id+1]] {
		sum -= q.price[i]
	}
	return sum - q.price[q.pieces+int(q.sort[id])]
}

// solve goes on to the optimum over the columns there are, and returns its
// value and the steps it took.
func (q *hangLP) solve() (value float64, steps int) {
	q.reprice()
	for range 30 * q.rows {
		id, worst := int32(0), -1e-7
		for c := -1 - q.rows - q.pieces; c < len(q.cost); c++ {
			if v := q.reduced(int32(c)); v < worst {
				id, worst = int32(c), v
			}
		}
		steps += 1 + (q.rows*q.rows+len(q.arcs))/512
		if worst == -1e-7 || !q.pivot(id, worst) {
			break
		}
	}
	for r, id := range q.basis {
		value += q.costOf(id) * q.x[r]
	}
	return value, steps
}

func (q *hangLP) reprice() {
	clear(q.price)
	m := q.rows
	for r, id := range q.basis {
		if cost := q.costOf(id); cost != 0 {
			for c, a := range q.inverse[r*m : r*m+m] {
				q.price[c] += cost * a
			}
		}
	}
}

// pivot brings a column into the basis. It returns false if no row can leave,
// which happens only when rounding has spoilt the inverse.
func (q *hangLP) pivot(id int32, reduced float64) bool {
	q.enter(id)
	row, least := ratioRow(q.x, q.entry)
	if row < 0 {
		return false
	}
	eliminate(q.inverse, q.x, q.entry, row, least)
	q.basis[row] = id
	if q.pivots++; q.pivots%refreshing == 0 {
		ok := q.refresh()
		q.reprice()
		return ok
	}
	for c, a := range q.inverse[row*q.rows : row*q.rows+q.rows] {
		q.price[c] += reduced * a
	}
	return true
}

// enter puts a column in terms of the basis into q.entry.
func (q *hangLP) enter(id int32) {
	clear(q.entry)
	q.eachRow(id, func(row int, by float64) {
		for r := range q.entry {
			q.entry[r] += by * q.inverse[r*q.rows+row]
		}
	})
}

// eachRow calls do for every row that a column, a slack or a want stands in.
func (q *hangLP) eachRow(id int32, do func(row int, by float64)) {
	if id < 0 {
		switch r := int(-1 - id); {
		case r >= q.rows:
			do(r-q.rows, 1)
		case r >= q.pieces:
			do(r, 1)
		default:
			do(r, -1)
		}
		return
	}
	for _, i := range q.row[q.from[id]:q.from[id+1]] {
		do(int(i), 1)
	}
	do(q.pieces+int(q.sort[id]), 1)
}

// refresh computes the inverse of the basis and its use anew.
func (q *hangLP) refresh() bool {
	m := q.rows
	q.matrix = grow(q.matrix, m*m)
	clear(q.matrix)
	for c, id := range q.basis {
		q.eachRow(id, func(row int, by float64) { q.matrix[row*m+c] = by })
	}
	if !invert(q.matrix, q.inverse, m) {
		return false
	}
	for r := range q.x {
		sum := 0.0
		for c, a := range q.inverse[r*m : r*m+m] {
			sum += a * q.rhs(c)
		}
		q.x[r] = sum
	}
	return true
}

// isWanting says whether a piece is on no roll, or only on one that is struck.
func (q *hangLP) isWanting() bool {
	for r, id := range q.basis {
		if q.x[r] > 1e-6 && q.costOf(id) >= q.dear {
			return true
		}
	}
	return false
}

// strike strikes the columns that use a forbidden arc, and no others.
func (q *hangLP) strike(g *hangNet) {
	for id := range q.struck {
		q.struck[id] = !g.allows(q.column(int32(id)))
	}
}
