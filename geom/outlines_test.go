package geom

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstdrop/measure"
)

func TestOutlines(t *testing.T) {
	for _, c := range []struct {
		name, polygon string
		x             Interval
		want          []string
	}{
		{"a plain wall", "0,0..8,3", Interval{0, 8}, []string{"0,0 8,0 8,3 0,3"}},
		{"beside a door", "0,0..8,5 - 2,0..4,3", Interval{0, 8}, []string{"0,0 2,0 2,3 4,3 4,0 8,0 8,5 0,5"}},
		{"round a window", "0,0..8,5 - 2,1..4,3", Interval{0, 8}, []string{"0,0 8,0 8,5 0,5", "4,1 2,1 2,3 4,3"}},
		{"over and under it", "0,0..8,5 - 2,1..4,3", Interval{2, 4}, []string{"2,0 4,0 4,1 2,1", "2,3 4,3 4,5 2,5"}},
		{"a door that pokes out of the wall", "0,0..8,5 - 2,-1..4,3", Interval{0, 8}, []string{"0,0 2,0 2,3 4,3 4,0 8,0 8,5 0,5"}},
		{"two windows that touch in a corner", "0,0..8,8 - 1,1..3,3 - 3,3..5,5", Interval{0, 8}, []string{"0,0 8,0 8,8 0,8", "3,1 1,1 1,3 3,3", "5,3 3,3 3,5 5,5"}},
		{"a gable", "0,0 8,0 8,2 4,6 0,2", Interval{0, 8}, []string{"0,0 8,0 8,2 4,6 0,2"}},
		{"nothing", "0,0..8,5", Interval{9, 12}, nil},
	} {
		var want []Ring
		for _, r := range c.want {
			want = append(want, parseRing(t, r))
		}
		got := Outlines(parsePolygon(t, c.polygon).Cells(c.x))
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", c.name, diff)
		}
	}
}

// By the even-odd rule the rings hold what the polygon holds, and their areas,
// those of holes taken off, are the area of the cells.
func TestOutlinesBoundTheCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		corner := rapid.Custom(func(t *rapid.T) Point {
			return Point{measure.Length(rapid.IntRange(0, 12).Draw(t, "x")), measure.Length(rapid.IntRange(0, 12).Draw(t, "y"))}
		})
		box := rapid.Custom(func(t *rapid.T) Ring {
			a, b := corner.Draw(t, "a"), corner.Draw(t, "b")
			return Ring{a, {b.X, a.Y}, b, {a.X, b.Y}}
		})
		p := Polygon{Outline: Ring{{0, 0}, {12, 0}, {12, 12}, {6, measure.Length(rapid.IntRange(1, 20).Draw(t, "ridge"))}, {0, 12}}, Holes: rapid.SliceOfN(box, 0, 4).Draw(t, "holes")}
		cells := p.Cells(Interval{-1, 13})
		rings := Outlines(cells)
		var inside, sum wide
		for _, c := range cells {
			inside = inside.plus(c.doubleArea())
		}
		for _, r := range rings {
			for i := range r {
				sum = sum.plus(cross(Point{}, r[i], r.after(i)))
			}
		}
		if inside != sum {
			t.Fatalf("cells have %v, rings %v: %v", inside, sum, rings)
		}
		for range 20 {
			at := corner.Draw(t, "at")
			covered, on := false, false
			for _, c := range cells {
				covered = covered || c.Contains(at)
			}
			for _, r := range rings {
				on = on || r.side(at) == 0
			}
			if n := windings(rings, at); !on && covered != (n%2 == 1) {
				t.Fatalf("%v: covered %v, inside of %d rings: %v", at, covered, n, rings)
			}
		}
	})
}

// windings counts the rings that hold a point.
func windings(rings []Ring, at Point) (n int) {
	for _, r := range rings {
		if r.side(at) > 0 {
			n++
		}
	}
	return n
}
