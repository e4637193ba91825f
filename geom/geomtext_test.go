package geom

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// A notation for tests. A ring is its corners, "0,0 8,0 8,5 0,5"; a rectangle
// may be written by two opposite corners, "0,0..8,5". A polygon is its outline
// and its holes with " - " before each: "0,0..8,5 - 2,0..4,3".

func parseRing(t testing.TB, text string) Ring {
	t.Helper()
	if lo, hi, ok := strings.Cut(text, ".."); ok {
		a, b := parsePoint(t, lo), parsePoint(t, hi)
		return Ring{a, {b.X, a.Y}, b, {a.X, b.Y}}
	}
	var r Ring
	for _, corner := range strings.Fields(text) {
		r = append(r, parsePoint(t, corner))
	}
	return r
}

func parsePoint(t testing.TB, text string) Point {
	t.Helper()
	var p Point
	if _, err := fmt.Sscanf(strings.TrimSpace(text), "%d,%d", &p.X, &p.Y); err != nil {
		t.Fatalf("corner %q: %v", text, err)
	}
	return p
}

func parsePolygon(t testing.TB, text string) Polygon {
	t.Helper()
	rings := strings.Split(text, " - ")
	p := Polygon{Outline: parseRing(t, rings[0])}
	for _, hole := range rings[1:] {
		p.Holes = append(p.Holes, parseRing(t, hole))
	}
	return p
}

// picture draws upright cells on a grid of unit squares, the top line first: a
// letter for each cell in order, a dot where there is none. Whatever is no
// whole rectangle of the grid spoils the picture.
func picture(cells []Cell, width, height int) string {
	lines := make([][]byte, height)
	for i := range lines {
		lines[i] = []byte(strings.Repeat(".", width))
	}
	for i, c := range cells {
		if c.Left != c.Right {
			return fmt.Sprintf("cell %d is no rectangle: %v", i, c)
		}
		for x := c.X.Lo; x < c.X.Hi; x++ {
			for y := c.Left.Lo; y < c.Left.Hi; y++ {
				square := &lines[height-1-int(y)][x]
				if *square != '.' {
					return fmt.Sprintf("square %d,%d lies in two cells", x, y)
				}
				*square = 'a' + byte(i)
			}
		}
	}
	return string(slices.Concat(addNewlines(lines)...))
}

func addNewlines(lines [][]byte) [][]byte {
	for i := range lines {
		lines[i] = append(lines[i], '\n')
	}
	return lines
}

// undent takes the margin of tabs from a picture in a table.
func undent(s string) string {
	return strings.TrimLeft(strings.ReplaceAll(s, "\t", ""), "\n")
}

// doubleArea is twice the area of all cells.
func doubleArea(cells []Cell) (sum wide) {
	for _, c := range cells {
		sum = sum.plus(c.doubleArea())
	}
	return sum
}

// slack is how far doubleArea may be off: half a nanometre for each of four
// heights of a cell, and all of the cells 1 nm wide where edges cross.
func slack(cells []Cell) measure.Length {
	var sum measure.Length
	for _, c := range cells {
		sum += 2*c.X.Length() + 2
		if c.X.Length() == 1 {
			sum += 4 * c.Y().Length()
		}
	}
	return sum
}

// aRectangle draws rectangles in a field of the given size, and out of it by a
// little.
func aRectangle(field int) *rapid.Generator[Ring] {
	return rapid.Custom(func(t *rapid.T) Ring {
		x := measure.Length(rapid.IntRange(-2, field).Draw(t, "x"))
		y := measure.Length(rapid.IntRange(-2, field).Draw(t, "y"))
		w := measure.Length(rapid.IntRange(1, field/2).Draw(t, "w"))
		h := measure.Length(rapid.IntRange(1, field/2).Draw(t, "h"))
		return Ring{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
	})
}

// aSteppedWall draws walls of unit columns whose heads and feet step up and
// down.
func aSteppedWall(field int) *rapid.Generator[Ring] {
	return rapid.Custom(func(t *rapid.T) Ring {
		var feet, heads Ring
		for x := range measure.Length(rapid.IntRange(1, field).Draw(t, "columns")) {
			foot := measure.Length(rapid.IntRange(0, 2).Draw(t, "foot"))
			head := measure.Length(rapid.IntRange(3, field).Draw(t, "head"))
			feet = append(feet, Point{x, foot}, Point{x + 1, foot})
			heads = append(heads, Point{x, head}, Point{x + 1, head})
		}
		slices.Reverse(heads)
		return slices.Compact(append(feet, heads...))
	})
}

// aSlantedRing draws simple rings of three to seven corners in a field of the
// given size: random corners, taken in the order in which one sees them
// turning round the first.
func aSlantedRing(field measure.Length) *rapid.Generator[Ring] {
	coordinate := rapid.Int64Range(0, int64(field))
	corner := rapid.Custom(func(t *rapid.T) Point {
		return Point{measure.Length(coordinate.Draw(t, "x")), measure.Length(coordinate.Draw(t, "y"))}
	})
	return rapid.Custom(func(t *rapid.T) Ring {
		r := Ring(rapid.SliceOfN(corner, 3, 7).Draw(t, "corners"))
		slices.SortFunc(r, func(a, b Point) int {
			if a.Y != b.Y {
				return int(min(max(a.Y-b.Y, -1), 1))
			}
			return int(min(max(a.X-b.X, -1), 1))
		})
		slices.SortStableFunc(r[1:], func(a, b Point) int { return -turn(r[0], a, b) })
		return r
	}).Filter(func(r Ring) bool { return r.Check() == nil })
}
