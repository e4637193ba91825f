package hanging_test

import (
	"fmt"
	"strings"
	"testing"

	"firstdrop/hanging"
	"firstdrop/paper"
)

// seams writes the seams that are not plain butts: "carried|B 0 lost 12".
func seams(l *hanging.Layout) string {
	var all []string
	for _, s := range l.Seams {
		if s.Kind == hanging.Butt && s.Meets() && !s.InCorner {
			continue
		}
		at := num(s.X)
		if s.InCorner {
			at = "corner"
		}
		text := fmt.Sprintf("%v at %s %s", s.Kind, l.Run.Walls[s.Wall].Name, at)
		if lo, hi := s.Across.Lo, s.Across.Hi; lo == hi && lo != 0 {
			text += " lost " + num(lo)
		} else if lo != hi {
			text += " lost " + num(lo) + ".." + num(hi)
		}
		if s.Along != 0 {
			text += " along " + num(s.Along)
		}
		all = append(all, text)
	}
	return strings.Join(all, ", ")
}

func TestSeams(t *testing.T) {
	tests := []struct {
		name   string
		run    string
		paper  *paper.Paper
		choice hanging.Choice
		rules  func(*hanging.Rules)
		want   string
	}{
		{
			// planning-model 5: a wrap of 12 mm loses 12 mm.
			name: "carried with a wrap", run: "A 1975x2400 | B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			want: "carried at B corner lost 12",
		},
		{
			// planning-model 5: cut in the corner, nothing is lost.
			name: "cut in the corner", run: "A 1975x2400 | B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			rules: func(r *hanging.Rules) { r.Wrap = 0 },
			want:  "carried at B corner",
		},
		{
			// planning-model 5: cut in a corner that leans by 8 mm, the design loses 0 to 8 mm.
			name: "cut in a leaning corner", run: "A 1975x2400 |0,8 B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			rules: func(r *hanging.Rules) { r.Wrap = 0 },
			want:  "carried at B corner lost 0..8",
		},
		{
			// The same lean on the wall one leaves: the first part must reach the head.
			name: "the wall one leaves leans", run: "A 1975x2400 |8,0 B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			rules: func(r *hanging.Rules) { r.Wrap = 0 },
			want:  "carried at B corner lost 0..8",
		},
		{
			// A corner that leans towards the room, 5 mm on either wall: with a wrap of 12
			// the design loses 12 mm at the foot and 22 mm at the head.
			name: "leaning into the room", run: "A 1975x2400 |-5,5 B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			want: "carried at B corner lost 12..22",
		},
		{
			name: "turned round a leaning corner", run: "A 2075x2400 |0,-8 B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			want: "turned at B 12 lost 0..8",
		},
		{
			name: "round an outside corner out of plumb", run: "A 1975x2400 >0,8 B 1000x2400",
			paper: plain(), choice: hanging.Choice{Start: start(0, -25)},
			want: "carried at B 50 lost 0..8",
		},
		{
			// A girth of 3710 mm is seven widths, and the corners cut lose nothing: the
			// design meets all the way round. Seven is odd, so a half drop misses by half.
			name: "closing a girth of seven widths", run: "closed: A 1200x2400 | B 655x2400 | C 1200x2400 | D 655x2400 |",
			paper: halfDrop(), choice: hanging.Choice{Start: start(0, 0), Kill: atCorner(3)},
			rules: func(r *hanging.Rules) { r.Wrap = 0 },
			want:  "carried at B corner, carried at C corner, carried at D corner, kill at A corner along 320",
		},
		{
			// 3720 mm are seven widths and 10 mm: ten millimetres show twice or are lost.
			name: "closing a girth of ten millimetres more", run: "closed: A 1200x2400 | B 660x2400 | C 1200x2400 | D 660x2400 |",
			paper: plain(), choice: hanging.Choice{Start: start(0, 0), Kill: atCorner(3)},
			rules: func(r *hanging.Rules) { r.Wrap = 0 },
			want:  "carried at B corner, carried at C corner, carried at D corner, kill at A corner lost -10",
		},
		{
			// 300 mm of the drop are used on A; the new drop on B begins 230 mm further on.
			name: "a new drop in the corner", run: "A 1335x2400 | B 1000x2400",
			paper: halfDrop(), choice: hanging.Choice{Start: start(0, -25), NewDrop: []int{0}},
			want: "new drop at B corner lost 230",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := seams(layout(t, tt.run, tt.paper, tt.choice, tt.rules)); got != tt.want {
				t.Errorf("run %s\n got %s\nwant %s", tt.run, got, tt.want)
			}
		})
	}
}
