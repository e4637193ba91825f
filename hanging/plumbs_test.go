package hanging_test

import (
	"fmt"
	"testing"

	"firstdrop/hanging"
)

// Where a seam would stand in an opening from the foot of the wall to its head nothing is
// there to butt the next drop to: it gets a line of its own, as the first one on a wall does
// (common practice: a plumb line wherever hanging begins anew).
func TestPlumbLinePastACupboard(t *testing.T) {
	for _, tt := range []struct {
		run   string
		start hanging.Start
		want  string
	}{
		{"A 2120x2400", hanging.Start{}, "530"},
		{"A 2120x2400 furniture(900+400 0+2400)", hanging.Start{}, "530 1590"},
		{"A 2120x2400 furniture(900+400 0+2400)", hanging.Start{X: 1590 * mm}, "1590 530"},
		{"A 2120x2400 furniture(900+160 0+2400)", hanging.Start{}, "530"}, // the next begins just beside it
		{"A 2120x2400 furniture(900+400 0+2300)", hanging.Start{}, "530"}, // they meet above
		{"A 2120x2400 window(900+400 900+1200)", hanging.Start{}, "530"},
	} {
		l := layout(t, tt.run, plain(), hanging.Choice{Start: tt.start}, nil)
		got := ""
		for i, b := range l.Plumbs {
			if i > 0 {
				got += " "
			}
			got += fmt.Sprint(int64(b.EdgeX() / mm))
		}
		if got != tt.want {
			t.Errorf("%s from %v: lines at %s, want %s", tt.run, tt.start.X, got, tt.want)
		}
	}
}
