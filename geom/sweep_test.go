package geom

import (
	"cmp"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// How often a point lies in one of the cells, their sides included.
func timesCovered(cells []Cell, p Point) (n int) {
	for _, c := range cells {
		if c.Contains(p) {
			n++
		}
	}
	return n
}

// The second opinion: every square of a grid is asked whether it is paper,
// from the rings as they were drawn. Corners stand on even places, so that the
// middles of squares lie on no edge.
func TestCellsAgreeWithAGrid(t *testing.T) {
	const field = 8
	rapid.Check(t, func(t *rapid.T) {
		drawn := Polygon{
			Outline: aSteppedWall(field).Draw(t, "outline"),
			Holes:   rapid.SliceOfN(aRectangle(field), 0, 4).Draw(t, "holes"),
		}
		p := drawn.scaled(2)
		from := measure.Length(rapid.IntRange(-1, field).Draw(t, "from"))
		to := measure.Length(rapid.IntRange(-1, field+1).Draw(t, "to"))
		x := Interval{2 * from, 2 * to}
		cells := p.Cells(x)
		squares := measure.Length(0)
		for i := range measure.Length(field + 2) {
			for j := range measure.Length(field + 2) {
				middle := Point{2*i - 1, 2*j - 1}
				want := 0
				if drawn.Outline.hasColumn(i-1, j-1) && !drawn.holeAt(i-1, j-1) && x.Contains(middle.X) {
					want = 1
					squares++
				}
				if got := timesCovered(cells, middle); got != want {
					t.Fatalf("square %d,%d is covered %d times, want %d", i-1, j-1, got, want)
				}
				if (want == 1) != (p.Contains(middle) && x.Contains(middle.X)) {
					t.Fatalf("Contains disagrees at square %d,%d", i-1, j-1)
				}
			}
		}
		if got, want := doubleArea(cells), (wide{0, uint64(8 * squares)}); got != want {
			t.Fatalf("twice the area is %v, want %v", got, want)
		}
		if !slices.IsSortedFunc(cells, inOrder) {
			t.Fatal("cells out of order")
		}
	})
}

func inOrder(a, b Cell) int {
	return cmp.Or(cmp.Compare(a.X.Lo, b.X.Lo), cmp.Compare(a.Left.Lo, b.Left.Lo), cmp.Compare(a.Right.Lo, b.Right.Lo))
}

func (p Polygon) scaled(k measure.Length) Polygon {
	return p.each(func(r Ring) Ring {
		r = slices.Clone(r)
		for i := range r {
			r[i].X *= k
			r[i].Y *= k
		}
		return r
	})
}

// hasColumn tells, for a ring that aSteppedWall made, whether it holds the unit
// square at x, y, by the two corners of that column at foot and head.
func (r Ring) hasColumn(x, y measure.Length) bool {
	foot, head := measure.Length(1<<40), measure.Length(-1)
	for i := range r {
		if e, ok := edgeBetween(r[i], r.after(i), 0); ok && e.left.X <= x && x < e.right.X {
			foot, head = min(foot, e.left.Y), max(head, e.left.Y)
		}
	}
	return foot <= y && y < head
}

// holeAt tells whether the unit square at x, y lies in a rectangular hole.
func (p Polygon) holeAt(x, y measure.Length) bool {
	return slices.ContainsFunc(p.Holes, func(r Ring) bool {
		return r[0].X <= x && x < r[2].X && r[0].Y <= y && y < r[2].Y
	})
}

// aSlantedPolygon draws walls with slopes and slanted holes that lie anyhow.
var aSlantedPolygon = rapid.Custom(func(t *rapid.T) Polygon {
	field := measure.Length(rapid.SampledFrom([]int64{12, 1000, 5e9}).Draw(t, "field"))
	return Polygon{
		Outline: aSlantedRing(field).Draw(t, "outline"),
		Holes:   rapid.SliceOfN(aSlantedRing(field), 0, 3).Draw(t, "holes"),
	}
})

var everywhere = Interval{-measure.MaxLength, measure.MaxLength}

// What a hole takes from the wall and what the wall takes from the hole differ
// by what the two areas differ by, however they lie: a check by the shoelace
// formula, which knows no cells.
func TestAreaOfCellsAgainstShoelace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		field := measure.Length(rapid.SampledFrom([]int64{12, 1000, 5e9}).Draw(t, "field"))
		wall, hole := aSlantedRing(field).Draw(t, "wall"), aSlantedRing(field).Draw(t, "hole")
		wallOnly := Polygon{wall, []Ring{hole}}.Cells(everywhere)
		holeOnly := Polygon{hole, []Ring{wall}}.Cells(everywhere)
		got := doubleArea(wallOnly).minus(doubleArea(holeOnly))
		want := wall.double().minus(hole.double())
		off, allowed := got.minus(want).abs(), 2*(slack(wallOnly)+slack(holeOnly))+4*field // and slivers thinner than a nanometre
		if off.compare(wide{0, uint64(allowed)}) > 0 {
			t.Fatalf("twice the area is off by %v, more than %d", off, allowed)
		}
	})
}

func (r Ring) double() (sum wide) {
	for i := range r {
		sum = sum.plus(product(r[i].X, r.after(i).Y).minus(product(r[i].Y, r.after(i).X)))
	}
	return sum.abs()
}

// A point is in the polygon just when it is in one cell. Points within a
// nanometre of an edge are left out: there the cells round.
func TestPointsOfCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := aSlantedPolygon.Draw(t, "polygon")
		cells := p.Cells(everywhere)
		xs, ys := p.Bounds()
		for range 20 {
			at := Point{
				measure.Length(rapid.Int64Range(int64(xs.Lo-1), int64(xs.Hi+1)).Draw(t, "x")),
				measure.Length(rapid.Int64Range(int64(ys.Lo-1), int64(ys.Hi+1)).Draw(t, "y")),
			}
			if p.nearEdge(at) || p.underCorner(at) || slices.ContainsFunc(cells, func(c Cell) bool { return c.X.Lo == at.X || c.X.Hi == at.X }) {
				continue
			}
			want := 0
			if p.Contains(at) {
				want = 1
			}
			if got := timesCovered(cells, at); got != want {
				t.Fatalf("%v is covered %d times, want %d", at, got, want)
			}
		}
	})
}

// underCorner reports whether a corner of the polygon stands at the point's x:
// on an upright edge, or on the upright of cells that are not there.
func (p Polygon) underCorner(at Point) bool {
	return slices.ContainsFunc(slices.Concat(append([]Ring{p.Outline}, p.Holes...)...), func(q Point) bool { return q.X == at.X })
}

func (p Polygon) nearEdge(at Point) bool {
	return slices.ContainsFunc(p.edges(), func(e edge) bool {
		return e.left.X <= at.X && at.X <= e.right.X && (at.Y-e.height(at.X)).Abs() <= 1
	})
}

func TestMirroredPolygonHasMirroredCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := aSlantedPolygon.Draw(t, "polygon")
		width := measure.Length(rapid.Int64Range(-5e9, 5e9).Draw(t, "width"))
		want := p.Cells(everywhere)
		for i, c := range want {
			want[i] = Cell{c.X.Mirrored().Shifted(width), c.Right, c.Left}
		}
		got := p.Mirrored(width).Cells(everywhere)
		slices.SortFunc(want, inOrder)
		slices.SortFunc(got, inOrder)
		thin := func(c Cell) bool { return c.X.Length() == 1 } // there the order of edges changes
		if !slices.Equal(slices.DeleteFunc(want, thin), slices.DeleteFunc(got, thin)) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

// Cutting at any place changes nothing but the one upright: both sides see the
// same heights there, and together they are what they were.
func TestSlicesMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := aSlantedPolygon.Draw(t, "polygon")
		s := p.Sweep()
		xs := s.Bounds()
		if xs.IsEmpty() {
			return
		}
		at := measure.Length(rapid.Int64Range(int64(xs.Lo), int64(xs.Hi)).Draw(t, "at"))
		whole := s.Cells(everywhere)
		left, right := s.Cells(Interval{xs.Lo, at}), s.Cells(Interval{at, xs.Hi})
		both := slices.Concat(left, right)
		off := doubleArea(both).minus(doubleArea(whole)).abs()
		if allowed := slack(both) + slack(whole); off.compare(wide{0, uint64(allowed)}) > 0 {
			t.Fatalf("twice the area is off by %v, more than %d", off, allowed)
		}
		for _, c := range whole {
			if !c.X.Contains(at) || at == c.X.Lo || at == c.X.Hi {
				if !slices.Contains(both, c) {
					t.Fatalf("cell %v is lost", c)
				}
			}
		}
		meeting := func(cells []Cell, side func(Cell) (measure.Length, Interval)) (sides []Interval) {
			for _, c := range cells {
				if x, y := side(c); x == at && y.Length() > 0 {
					sides = append(sides, y)
				}
			}
			return sides
		}
		if !slices.ContainsFunc(whole, func(c Cell) bool { return c.X.Lo == at || c.X.Hi == at }) {
			l := meeting(left, func(c Cell) (measure.Length, Interval) { return c.X.Hi, c.Right })
			r := meeting(right, func(c Cell) (measure.Length, Interval) { return c.X.Lo, c.Left })
			if !slices.Equal(l, r) {
				t.Fatalf("left sees %v, right sees %v", l, r)
			}
		}
	})
}

// Parcels is checked against the plainest way there is: spreading a colour
// from square to square.
func TestParcelsAgainstFlooding(t *testing.T) {
	const field = 8
	rapid.Check(t, func(t *rapid.T) {
		p := Polygon{
			Outline: aSteppedWall(field).Draw(t, "outline"),
			Holes:   rapid.SliceOfN(aRectangle(field), 0, 5).Draw(t, "holes"),
		}
		cells := p.Cells(everywhere)
		parcel, n := Parcels(cells)
		at := map[Point]int{}
		for i, c := range cells {
			for x := c.X.Lo; x < c.X.Hi; x++ {
				for y := c.Left.Lo; y < c.Left.Hi; y++ {
					at[Point{x, y}] = i
				}
			}
		}
		colour := map[Point]int{}
		var flood func(p Point, with int)
		flood = func(p Point, with int) {
			if _, paper := at[p]; !paper || colour[p] != 0 {
				return
			}
			colour[p] = with
			for _, d := range []Point{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				flood(Point{p.X + d.X, p.Y + d.Y}, with)
			}
		}
		colours := 0
		for _, c := range cells {
			first := Point{c.X.Lo, c.Left.Lo}
			if colour[first] == 0 {
				colours++
				flood(first, colours)
			}
		}
		if n != colours {
			t.Fatalf("%d parcels, want %d", n, colours)
		}
		for square, i := range at {
			if parcel[i] != colour[square]-1 {
				t.Fatalf("cell %d is in parcel %d, want %d", i, parcel[i], colour[square]-1)
			}
		}
	})
}

func TestSweepAllocatesNothing(t *testing.T) {
	s := parsePolygon(t, "0,0..4000,2500 - 200,0..1000,2000 - 1500,900..2700,2100 - 3000,0..3600,1800").Sweep()
	cells, parcels := make([]Cell, 0, 32), make([]int, 0, 32)
	x := measure.Length(0)
	allocations := testing.AllocsPerRun(100, func() {
		cells = s.AppendCells(cells[:0], Interval{x, x + 530})
		parcels, _ = AppendParcels(parcels[:0], cells)
		x = (x + 37) % 4000
	})
	if allocations != 0 {
		t.Errorf("%v allocations for each stretch", allocations)
	}
}

// Any rings at all, crossing themselves and as large as lengths get, give
// cells that are in order and no panic.
func FuzzSweep(f *testing.F) {
	f.Add([]byte("a wall"), int64(0), int64(9))
	f.Add([]byte{0, 0, 9, 0, 9, 9, 0, 9, 1, 2, 3, 4, 5, 6, 7, 8}, int64(2), int64(7))
	f.Add([]byte{0, 0, 255, 255, 0, 255, 255, 0, 128, 127, 127, 128}, int64(-1<<63), int64(1<<63-1))
	f.Fuzz(func(t *testing.T, corners []byte, lo, hi int64) {
		var rings [3]Ring
		for i := 0; i+1 < len(corners) && i < 60; i += 2 {
			p := Point{measure.Length(int8(corners[i])), measure.Length(int8(corners[i+1]))}
			if lo < 0 {
				p.X, p.Y = p.X<<56, p.Y<<56
			}
			rings[i/2%3] = append(rings[i/2%3], p)
		}
		p := Polygon{rings[0], rings[1:]}
		cells := p.Cells(Interval{measure.Length(lo), measure.Length(hi)})
		for i, c := range cells {
			if c.X.Lo >= c.X.Hi || c.Left.Hi < c.Left.Lo || c.Right.Hi < c.Right.Lo {
				t.Fatalf("cell %v", c)
			}
			if i > 0 && c.X.Lo < cells[i-1].X.Lo {
				t.Fatal("cells out of order")
			}
		}
		parcel, n := Parcels(cells)
		if len(parcel) != len(cells) || n > len(cells) {
			t.Fatalf("%d parcels of %d cells", n, len(cells))
		}
		for _, r := range rings {
			_ = r.Check()
			_ = p.Contains(Point{measure.Length(lo), measure.Length(hi)})
		}
	})
}

func BenchmarkSweepAppendCells(b *testing.B) {
	p := parsePolygon(b, "0,0..4000,2500 - 200,0..1000,2000 - 1500,900..2700,2100 - 3000,0..3600,1800").scaled(1_000_003)
	s := p.Sweep()
	cells, parcels := make([]Cell, 0, 32), make([]int, 0, 32)
	x := measure.Length(0)
	b.ReportAllocs()
	for b.Loop() {
		cells = s.AppendCells(cells[:0], Interval{x, x + 530_000_000})
		parcels, _ = AppendParcels(parcels[:0], cells)
		if x += 37_000_000; x > 4_000_000_000 {
			x = 0
		}
	}
}

func BenchmarkSweep(b *testing.B) {
	p := parsePolygon(b, "0,0..4000,2500 - 200,0..1000,2000 - 1500,900..2700,2100 - 3000,0..3600,1800").scaled(1_000_003)
	for b.Loop() {
		_ = p.Sweep()
	}
}
