package room_test

import (
	"slices"
	"testing"

	"firstdrop/internal/roomtext"
	"firstdrop/measure"
)

func TestFirstSeen(t *testing.T) {
	list := func(walls ...int) []int { return walls }
	tests := []struct {
		name, run string
		want      []int
	}{
		{"opposite the door", "closed: A 4000x2400 door(300+800 0+2000) | B 3000x2400 | C 4000x2400 | D 3000x2400 |", list(2)},
		{"the wall with the door need not be the first", "closed: A 4000x2400 | B 3000x2400 | C 4000x2400 | D 3000x2400 door(300+800 0+2000) |", list(1)},
		{"a chimney breast straight ahead", "closed: A 1000x2400 | B 350x2400 > C 2000x2400 > D 350x2400 | E 1000x2400 | F 3000x2400 | G 4000x2400 door(1600+800 0+2000) | H 3000x2400 |", list(2)},
		{"past the breast", "closed: A 1000x2400 | B 350x2400 > C 2000x2400 > D 350x2400 | E 1000x2400 | F 3000x2400 | G 4000x2400 door(50+800 0+2000) | H 3000x2400 |", list(4)},
		{"two doors", "closed: A 4000x2400 door(300+800 0+2000) | B 3000x2400 door(300+800 0+2000) | C 4000x2400 | D 3000x2400 |", list(2, 3)},
		{"a plan that does not close", "closed: A 4000x2400 door(300+800 0+2000) | B 3000x2400 | C 2000x2400 | D 3000x2400 |", nil},
		{"no door", "closed: A 4000x2400 | B 3000x2400 | C 4000x2400 | D 3000x2400 |", nil},
		{"not all the way round", "A 4000x2400 door(300+800 0+2000) | B 3000x2400", nil},
	}
	for _, tt := range tests {
		r := roomtext.Run(tt.run)
		if got := r.FirstSeen(); !slices.Equal(got, tt.want) {
			t.Errorf("%s: walls %d, want %d", tt.name, got, tt.want)
		}
	}
	r := roomtext.Run(tests[0].run)
	r.Corners[1].Angle = 80 * measure.Degree
	if got := r.FirstSeen(); got != nil {
		t.Errorf("a corner that is not square: walls %d, want none", got)
	}
}
