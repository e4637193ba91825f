package png

import (
	"cmp"
	"slices"
)

// A square is cut into rows of strips. An edge crosses the middle of a strip or
// does not; along the strip, coverage is exact to one part.
//
//	square  ┌────────┐
//	strips  ├──╲─────┤   parts of the square's width right of the edge
//	        ├───╲────┤   add up to the coverage
//	        └────────┘
const (
	parts  = 256 // of a square's width and height: the unit of all points here
	strips = 16  // in a square
	full   = strips * parts
)

// point is a place on the canvas in parts of a square, y downwards.
type point struct{ x, y int }

// rule says which points are inside of rings that cross.
type rule int

const (
	evenOdd rule = iota
	nonZero
)

// coverage finds how much of each square rings cover.
type coverage struct {
	width, height int // of the canvas in squares
	crossings     []crossing
	sorted        []crossing
	counts        []int
	row           []int32 // changes of coverage from square to square
}

// crossing is where an edge crosses a strip, and which way it runs.
type crossing struct {
	strip, x int32
	turn     int32
}

// add adds a ring; the last point is joined to the first.
func (c *coverage) add(ring []point) {
	for i, p := range ring {
		c.edge(p, ring[(i+1)%len(ring)])
	}
}

func (c *coverage) edge(a, b point) {
	turn := int32(1)
	if a.y > b.y {
		a, b, turn = b, a, -1
	}
	const tall = parts / strips
	// The strips whose middle lies from a.y up to but not including b.y.
	first := max(floor(a.y+tall/2-1, tall), 0)
	last := min(floor(b.y+tall/2-1, tall), c.height*strips)
	for s := first; s < last; s++ {
		y := s*tall + tall/2
		x := a.x + floor((b.x-a.x)*(y-a.y)*2+(b.y-a.y), 2*(b.y-a.y))
		c.crossings = append(c.crossings, crossing{int32(s), int32(min(max(x, 0), c.width*parts)), turn})
	}
}

// floor divides, rounding down; b must be positive.
func floor(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// each calls paint for every row of squares that the rings cover, with the
// coverage of its squares from the one at x on, 0 to full, and forgets the rings.
func (c *coverage) each(r rule, paint func(x, y int, cover []int32)) {
	c.sort()
	for i := 0; i < len(c.sorted); {
		y := int(c.sorted[i].strip) / strips
		from := i
		lo, hi := c.width, 0
		for i < len(c.sorted) && int(c.sorted[i].strip)/strips == y {
			lo, hi = min(lo, int(c.sorted[i].x)/parts), max(hi, int(c.sorted[i].x)/parts+1)
			i++
		}
		hi = min(hi, c.width)
		if lo >= hi {
			continue
		}
		paint(lo, y, c.squares(c.sorted[from:i], r, lo, hi))
	}
	c.crossings, c.sorted = c.crossings[:0], c.sorted[:0]
}

// sort puts crossings in order of strip, then x: by counting, since strips are
// many and crossings in each are few.
func (c *coverage) sort() {
	first, last := c.height*strips, 0
	for _, x := range c.crossings {
		first, last = min(first, int(x.strip)), max(last, int(x.strip)+1)
	}
	c.counts = append(c.counts[:0], make([]int, max(last-first, 0)+1)...)
	for _, x := range c.crossings {
		c.counts[int(x.strip)-first+1]++
	}
	for s := 1; s < len(c.counts); s++ {
		c.counts[s] += c.counts[s-1]
	}
	c.sorted = append(c.sorted[:0], make([]crossing, len(c.crossings))...)
	for _, x := range c.crossings {
		at := &c.counts[int(x.strip)-first]
		c.sorted[*at] = x
		*at++
	}
	for from := 0; from < len(c.sorted); {
		to := from + 1
		for to < len(c.sorted) && c.sorted[to].strip == c.sorted[from].strip {
			to++
		}
		slices.SortFunc(c.sorted[from:to], func(a, b crossing) int { return cmp.Compare(a.x, b.x) })
		from = to
	}
}

// squares returns the coverage of the squares from lo up to but not including hi.
func (c *coverage) squares(crossings []crossing, r rule, lo, hi int) []int32 {
	c.row = append(c.row[:0], make([]int32, hi-lo+2)...)
	winding, strip := int32(0), int32(-1)
	for _, x := range crossings {
		if x.strip != strip {
			winding, strip = 0, x.strip
		}
		was := r.inside(winding)
		winding += x.turn
		if is := r.inside(winding); is != was {
			sign := int32(1)
			if was {
				sign = -1
			}
			at, rest := int(x.x)/parts-lo, x.x%parts
			c.row[at] += sign * (parts - rest)
			c.row[at+1] += sign * rest
		}
	}
	sum := int32(0)
	for i := range c.row {
		sum += c.row[i]
		c.row[i] = sum
	}
	return c.row[:hi-lo]
}

func (r rule) inside(winding int32) bool {
	if r == evenOdd {
		return winding&1 != 0
	}
	return winding != 0
}
