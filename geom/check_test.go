package geom

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

func TestRingCheck(t *testing.T) {
	for _, c := range []struct {
		name    string
		ring    string
		fault   Fault // "" when the ring is sound
		corners []int
		message string
	}{
		{"a rectangle", "0,0 4,0 4,3 0,3", "", nil, ""},
		{"a rectangle the other way round", "0,3 4,3 4,0 0,0", "", nil, ""},
		{"a triangle", "0,0 4,0 2,3", "", nil, ""},
		{"a corner in a straight edge", "0,0 2,0 4,0 4,3 0,3", "", nil, ""},
		{"hollow", "0,0 6,0 6,4 3,1 0,4", "", nil, ""},
		{"negative heights", "0,-3 4,-3 4,1 0,1", "", nil, ""},
		{"no corner", "", TooFewCorners, nil, "an outline needs at least three corners"},
		{"two corners", "0,0 4,0", TooFewCorners, nil, "an outline needs at least three corners"},
		{"too far to the right", "0,0 1000000000001,0 4,4", TooFarOut, []int{1}, "corner 2 is too far out"},
		{"too far down", "0,0 4,0 4,-1000000000001", TooFarOut, []int{2}, "corner 3 is too far out"},
		{"as far as one may", "0,0 1000000000000,0 4,-1000000000000", "", nil, ""},
		{"a corner twice", "0,0 4,0 4,0 4,3", SamePlace, []int{1, 2}, "corners 2 and 3 are at the same place"},
		{"the first corner again at the end", "0,0 4,0 4,3 0,0", SamePlace, []int{3, 0}, "corners 4 and 1 are at the same place"},
		{"a bow tie", "0,0 4,4 4,0 0,4", EdgesMeet, []int{0, 2}, "the edge from corner 1 meets the edge from corner 3"},
		{"a last edge that crosses", "0,0 4,0 4,4 2,-1", EdgesMeet, []int{0, 2}, "the edge from corner 1 meets the edge from corner 3"},
		{"a corner on another edge", "0,0 6,0 6,4 3,0 0,4", EdgesMeet, []int{0, 2}, "the edge from corner 1 meets the edge from corner 3"},
		{"two corners at one place", "0,0 2,2 4,0 4,4 2,2 0,4", EdgesMeet, []int{0, 3}, "the edge from corner 1 meets the edge from corner 4"},
		{"edges that overlap", "0,0 6,0 6,3 4,3 4,0 2,0 2,3 0,3", EdgesMeet, []int{0, 3}, "the edge from corner 1 meets the edge from corner 4"},
		{"a spike", "0,0 6,0 3,0 3,3", EdgeFoldsBack, []int{1}, "the outline folds back on itself at corner 2"},
		{"a spike at the first corner", "0,0 3,3 3,0 9,0", EdgeFoldsBack, []int{3}, "the outline folds back on itself at corner 4"},
		{"all in a line", "0,0 2,2 4,4", EdgeFoldsBack, []int{2}, "the outline folds back on itself at corner 3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := parseRing(t, c.ring).Check()
			if c.fault == "" {
				if err != nil {
					t.Fatal(err)
				}
				return
			}
			var fault *RingError
			if !errors.As(err, &fault) {
				t.Fatalf("error %v is no RingError", err)
			}
			if fault.Fault != c.fault || !slices.Equal(fault.Corners, c.corners) || err.Error() != c.message {
				t.Errorf("%s at %v: %q; want %s at %v: %q", fault.Fault, fault.Corners, err, c.fault, c.corners, c.message)
			}
		})
	}
}

// Whether a ring is simple depends neither on where it begins, nor which way
// round it goes, nor on a mirror.
func TestRingCheckIsFair(t *testing.T) {
	coordinate := rapid.Int64Range(0, 5)
	corner := rapid.Custom(func(t *rapid.T) Point {
		return Point{measure.Length(coordinate.Draw(t, "x")), measure.Length(coordinate.Draw(t, "y"))}
	})
	rapid.Check(t, func(t *rapid.T) {
		r := Ring(rapid.SliceOfN(corner, 0, 6).Draw(t, "ring"))
		sound := r.Check() == nil
		k := 0
		if len(r) > 0 {
			k = rapid.IntRange(0, len(r)-1).Draw(t, "first")
		}
		turned := slices.Concat(r[k:], r[:k])
		if (turned.Check() == nil) != sound {
			t.Fatal("depends on the first corner")
		}
		if (r.Mirrored(3).Check() == nil) != sound {
			t.Fatal("depends on the mirror")
		}
		back := slices.Clone(r)
		slices.Reverse(back)
		if (back.Check() == nil) != sound {
			t.Fatal("depends on the way round")
		}
		if sound != r.plainlySimple() {
			t.Fatalf("sound is %v, which a plain look does not confirm", sound)
		}
	})
}

// plainlySimple is the second opinion: no two edges cross properly, and no
// corner lies on an edge but where neighbours share it.
func (r Ring) plainlySimple() bool {
	n := len(r)
	if n < 3 {
		return false
	}
	for i := range n {
		if r[i] == r.after(i) {
			return false
		}
		for j := range n {
			if i == j {
				continue
			}
			a, b, c, d := r[i], r.after(i), r[j], r.after(j)
			if turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0 {
				return false
			}
			for _, p := range []Point{c, d} { // a corner on the edge, but for the corner they share
				shared := (j == (i+1)%n && p == c) || (i == (j+1)%n && p == d)
				if !shared && on(a, b, p) {
					return false
				}
			}
		}
	}
	return true
}

// on tells whether p lies on the edge a–b: the ways to it and from it add up.
func on(a, b, p Point) bool {
	return turn(a, b, p) == 0 &&
		(p.X-a.X).Abs()+(b.X-p.X).Abs() == (b.X-a.X).Abs() &&
		(p.Y-a.Y).Abs()+(b.Y-p.Y).Abs() == (b.Y-a.Y).Abs()
}
