package hanging_test

import (
	"fmt"
	"strings"
	"testing"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// written writes the pieces in hanging order: "2a 2000..2400 cut 500 at 380".
func written(l *hanging.Layout) string {
	var all []string
	for _, p := range l.Pieces {
		text := fmt.Sprintf("%s %s..%s cut %s", p.Name, num(p.Y.Lo), num(p.Y.Hi), num(p.Length))
		if l.Paper.Repeat > 0 {
			text += " at " + num(p.Phase)
		}
		if p.Return != nil {
			text += fmt.Sprintf(" %v", p.Return.Side)
		}
		all = append(all, text)
	}
	return strings.Join(all, ", ")
}

func reversing() *paper.Paper {
	p := plain()
	p.Repeat = 500 * mm
	p.Match = paper.Match{Kind: paper.Straight, Reversing: true}
	return p
}

func TestPieces(t *testing.T) {
	tests := []struct {
		name   string
		run    string
		paper  *paper.Paper
		choice hanging.Choice
		want   string
	}{
		{
			name: "plain wall", run: "A 1060x2400", paper: plain(), choice: hanging.Choice{},
			want: "1 0..2400 cut 2500, 2 0..2400 cut 2500",
		},
		{
			// The door bites into drops 1 and 3 and takes all but the head of drop 2.
			name: "round a door", run: "A 1590x2400 door(400+700 0+2000)", paper: plain(), choice: hanging.Choice{},
			want: "1 0..2400 cut 2500, 2 2000..2400 cut 500, 3 0..2400 cut 2500",
		},
		{
			name: "over and under a window", run: "A 1590x2400 window(400+700 900+1200)", paper: plain(), choice: hanging.Choice{},
			want: "1 0..2400 cut 2500, 2a 2100..2400 cut 400, 2b 0..900 cut 1000, 3 0..2400 cut 2500",
		},
		{
			name: "no paper where furniture stands", run: "A 1590x2400 furniture(530+530 0+2400)", paper: plain(), choice: hanging.Choice{},
			want: "1 0..2400 cut 2500, 2 0..2400 cut 2500",
		},
		{
			// Half drop of 640: at a design height of 100 the ceiling shows 100 − 2400 on
			// drop 0, with the allowance 100 − 2450 = 210 mod 640; the next stands 320 on.
			name: "phases of a half drop", run: "A 1590x2400", paper: halfDrop(), choice: hanging.Choice{Design: 100 * mm},
			want: "1 0..2400 cut 2500 at 210, 2 0..2400 cut 2500 at 530, 3 0..2400 cut 2500 at 210",
		},
		{
			// A reversed drop leads with its foot, 50 mm under the floor: −50 − 100 = 350 mod 500.
			name: "alternate drops reversed", run: "A 1060x2400", paper: reversing(), choice: hanging.Choice{Design: 100 * mm},
			want: "1 0..2400 cut 2500 at 150, 2 0..2400 cut 2500 at 350",
		},
		{
			// The ceiling falls from 2400 to 1600 over four widths: each drop to its highest point.
			name: "sloping ceiling", run: "A 2120x2400/1600", paper: plain(), choice: hanging.Choice{},
			want: "1 0..2400 cut 2500, 2 0..2200 cut 2300, 3 0..2000 cut 2100, 4 0..1800 cut 1900",
		},
		{
			// Low beyond the corner: the drop is cut for the higher wall, once.
			name: "one length round a corner", run: "A 400x2400 | B 930x2000", paper: plain(), choice: hanging.Choice{},
			want: "1 0..2400 cut 2500, 2 0..2000 cut 2100, 3 0..2000 cut 2100",
		},
		{
			// Reveals 120 deep left and right from the drops that stand beside them, and the
			// soffit from the three drops over the window.
			name: "returns", run: "A 1590x2400 window(400+700 900+1200 120)", paper: plain(), choice: hanging.Choice{},
			want: "1a 0..2400 cut 2500, 1b 900..2100 cut 1300 left reveal, 1c 1980..2100 cut 220 soffit," +
				" 2a 2100..2400 cut 400, 2b 0..900 cut 1000, 2c 900..2100 cut 1300 right reveal, 2d 1980..2100 cut 220 soffit," +
				" 3a 0..2400 cut 2500, 3b 900..2100 cut 1300 right reveal, 3c 1980..2100 cut 220 soffit",
		},
		{
			// Numbers follow the hanging: drop 0, then to the right, then to the left.
			name: "numbers", run: "A 1590x2400/1600", paper: plain(), choice: hanging.Choice{Start: start(0, 530)},
			want: "1 0..2133.333333 cut 2234, 2 0..1866.666667 cut 1967, 3 0..2400 cut 2500",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := written(layout(t, tt.run, tt.paper, tt.choice, nil)); got != tt.want {
				t.Errorf("run %s\n got %s\nwant %s", tt.run, got, tt.want)
			}
		})
	}
}

func TestPlumbLines(t *testing.T) {
	tests := []struct {
		name   string
		run    string
		choice hanging.Choice
		want   string
	}{
		{
			// planning-model 5: first line at 505 mm; the rest of drop 3 is set with its far
			// edge to a line 108 mm from the corner.
			name: "from a corner", run: "A 1975x2400 | B 1000x2400", choice: hanging.Choice{Start: start(0, -25)},
			want: "A 505 right edge of 1, B 108 right edge of 4",
		},
		{
			name: "both ways", run: "A 1000x2400 | B 1000x2400 | C 1000x2400", choice: hanging.Choice{Start: start(1, 100)},
			want: "B 630 right edge of 1, C 148 right edge of 2, A 582 left edge of 5",
		},
		{
			name: "beside a drop that turned a corner", run: "A 2075x2400 | B 1000x2400", choice: hanging.Choice{Start: start(0, -25)},
			want: "A 505 right edge of 1, B 550 right edge of 5",
		},
		{
			// A cupboard from floor to ceiling takes the second width: the third has no
			// drop to be butted to.
			name: "after a stretch without paper", run: "A 2120x2400 furniture(530+530 0+2400)", choice: hanging.Choice{Start: start(0, 0)},
			want: "A 530 right edge of 1, A 1590 right edge of 2",
		},
		{
			name: "nothing to hang", run: "A 500x2400 furniture(0+500 0+2400)", choice: hanging.Choice{Start: start(0, 0)},
			want: "",
		},
		{
			// Cupboards from floor to ceiling leave 270 mm between them, and both edges of the
			// drop would stand in them: the line stands in the middle.
			name: "between cupboards", run: "A 2000x2400 furniture(0+600 0+2400) furniture(870+1130 0+2400)", choice: hanging.Choice{Start: start(0, 450)},
			want: "A 735 right edge 245 beyond of 1",
		},
		{
			name: "a cupboard at the far edge", run: "A 2000x2400 furniture(870+1130 0+2400)", choice: hanging.Choice{Start: start(0, 450)},
			want: "A 450 left edge of 1",
		},
		{
			name: "a cupboard that stops below the ceiling", run: "A 2000x2400 furniture(870+1130 0+2200)", choice: hanging.Choice{Start: start(0, 450)},
			want: "A 980 right edge of 1",
		},
		{
			// A wrap of 12 mm leaves 348 mm of drop 2, from the corner to within the cupboard.
			name: "between a corner and a cupboard", run: "A 700x2400 | B 1500x2400 furniture(120+1380 0+2400)", choice: hanging.Choice{Start: start(0, 0)},
			want: "A 530 right edge of 1, B 60 right edge 288 beyond of 2",
		},
		{
			// The narrower stretch is the taller.
			name: "where the wall is tallest", run: "A 2000x2400 furniture(0+500 0+2400) door(600+250 0+2000) furniture(850+1150 0+2400)", choice: hanging.Choice{Start: start(0, 450)},
			want: "A 550 right edge 430 beyond of 1",
		},
		{
			name: "a drop that reaches the end is set by its near edge", run: "A 700x2400", choice: hanging.Choice{Start: start(0, 300)},
			want: "A 300 left edge of 1",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := layout(t, tt.run, plain(), tt.choice, nil)
			var all []string
			for _, b := range l.Plumbs {
				edge := b.Edge.String() + " edge"
				if b.Beyond != 0 {
					edge += " " + num(b.Beyond) + " beyond"
				}
				all = append(all, fmt.Sprintf("%s %s %s of %d", l.Run.Walls[b.Wall].Name, num(b.X), edge, l.Drops[b.Drop].Number))
			}
			if got := strings.Join(all, ", "); got != tt.want {
				t.Errorf("run %s\n got %s\nwant %s", tt.run, got, tt.want)
			}
		})
	}
}

func TestChoicesThatAreNone(t *testing.T) {
	closed := "closed: A 2000x2400 | B 1000x2400 | C 2000x2400 | D 1000x2400 |"
	tests := []struct {
		name, run string
		choice    hanging.Choice
	}{
		{"no such wall", "A 2000x2400", hanging.Choice{Start: hanging.Start{Wall: 1}}},
		{"off the wall to the left", "A 2000x2400", hanging.Choice{Start: start(0, -530)}},
		{"off the wall to the right", "A 2000x2400", hanging.Choice{Start: start(0, 2000)}},
		{"closed without a kill seam", closed, hanging.Choice{}},
		{"open with a kill seam", "A 2000x2400", hanging.Choice{Kill: atCorner(0)}},
		{"kill seam at no wall", closed, hanging.Choice{Kill: atCorner(4)}},
		{"kill seam off the wall", closed, hanging.Choice{Kill: hanging.Kill{Kind: hanging.OnWall, Wall: 1, X: 1000 * mm}}},
		{"kill seam under drop 0", closed, hanging.Choice{Kill: hanging.Kill{Kind: hanging.OnWall, Wall: 0, X: 100 * mm}}},
	}
	for _, tt := range tests {
		h, err := hanging.New(run(tt.run), plain(), hanging.DefaultRules())
		if err != nil {
			t.Fatal(err)
		}
		if _, err := h.Layout(tt.choice); err == nil {
			t.Errorf("%s: no error", tt.name)
		}
	}
}

func TestRulesThatDoNotFit(t *testing.T) {
	narrow := plain()
	narrow.Width = 45 * mm
	if _, err := hanging.New(run("A 2000x2400"), narrow, hanging.DefaultRules()); err == nil {
		t.Error("paper of 45 mm with a wide wrap of 50 mm: no error")
	}
	if _, err := hanging.New(run("A 2000x2400 |0,300 B 1000x2400"), plain(), hanging.DefaultRules()); err == nil {
		t.Error("a corner leaning by 300 mm: no error")
	}
	var none measure.Length
	if got := layout(t, "A 1060x2400", plain(), hanging.Choice{}, func(r *hanging.Rules) { r.Head, r.Foot = none, none }); got.Pieces[0].Length != 2400*mm {
		t.Errorf("without allowance the piece is %v long", got.Pieces[0].Length)
	}
}
