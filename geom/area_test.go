package geom

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

const (
	mm   = measure.Millimetre
	foot = measure.Foot
)

// Areas worked by hand; those in feet are the shapes of school arithmetic.
func TestArea(t *testing.T) {
	for _, c := range []struct {
		name    string
		polygon string
		unit    measure.Length
		want    measure.Area
	}{
		{"a rectangle", "0,0..4,3", mm, 12 * measure.SquareMillimetre},
		{"a room's wall", "0,0..4000,2500", mm, 10 * measure.SquareMetre},
		{"a wall of 12 by 8 feet", "0,0..12,8", foot, 96 * measure.SquareFoot},
		{"a gable, by base and height", "0,0 8,0 4,5", foot, 20 * measure.SquareFoot},
		{"an attic wall, a trapezoid", "0,0 4,0 4,3 0,1", mm, 8 * measure.SquareMillimetre},
		{"with a window", "0,0..4,3 - 1,1..3,2", mm, 10 * measure.SquareMillimetre},
		{"with a door on the floor", "0,0..4,3 - 1,0..2,2", mm, 10 * measure.SquareMillimetre},
		{"with a door that pokes out", "0,0..4,3 - 1,-9..2,2", mm, 10 * measure.SquareMillimetre},
		{"with holes that overlap", "0,0..4,3 - 0,0..2,2 - 1,1..3,3", mm, 5 * measure.SquareMillimetre},
		{"with the same hole twice", "0,0..4,3 - 1,0..2,2 - 1,0..2,2", mm, 10 * measure.SquareMillimetre},
		{"with a slanted hole", "0,0..4,4 - 2,0 4,2 2,4 0,2", mm, 8 * measure.SquareMillimetre},
		{"all gone", "0,0..4,3 - -1,-1..5,5", mm, 0},
		{"no corners", "0,0 0,0 0,0", mm, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := parsePolygon(t, c.polygon).scaled(c.unit)
			if got := p.Area(); got != c.want {
				t.Errorf("%v, want %v", int64(got), int64(c.want))
			}
			for i, r := range p.Holes {
				slices.Reverse(r)
				p.Holes[i] = r
			}
			if got := p.Mirrored(7 * c.unit).Area(); got != c.want {
				t.Errorf("mirrored, holes the other way round: %v, want %v", int64(got), int64(c.want))
			}
		})
	}
}

// Half of the unit is rounded up, and only once: a triangle of 1 mm by 0.01 mm
// has 0.005 mm².
func TestAreaRounding(t *testing.T) {
	for _, c := range []struct {
		width measure.Length
		want  measure.Area
	}{{mm / 100, 1}, {mm/100 - 1, 0}, {3 * mm / 100, 2}} {
		if got := (Ring{{0, 0}, {c.width, 0}, {0, mm}}).Area(); got != c.want {
			t.Errorf("%d nm: %d, want %d", c.width, got, c.want)
		}
	}
}

func TestAreaOfRectanglesIsWidthTimesHeight(t *testing.T) {
	side := rapid.Int64Range(1, int64(100*measure.Metre))
	rapid.Check(t, func(t *rapid.T) {
		w, h := measure.Length(side.Draw(t, "width")), measure.Length(side.Draw(t, "height"))
		r := Ring{{-w / 3, h}, {w - w/3, h}, {w - w/3, 2 * h}, {-w / 3, 2 * h}}
		if got, want := r.Area(), w.Times(h); got != want {
			t.Fatalf("ring %d, want %d", got, want)
		}
		cells := Polygon{Outline: r}.Cells(everywhere)
		if got, want := AreaOf(cells), w.Times(h); got != want {
			t.Fatalf("cells %d, want %d", got, want)
		}
	})
}
