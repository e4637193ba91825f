package sheet

import (
	"strings"
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
)

// begun begins the drawing of a wall of a run laid out from its left end.
func begun(t *testing.T, run string, wall int) *elevation {
	t.Helper()
	l := laid(t, run)
	return newElevation(&plan.Plan{Runs: []plan.RunPlan{{Layout: l}}}, 0, wall, Options{Scale: 20})
}

func TestNeighbour(t *testing.T) {
	const run = "A 1000x2400 |3,0 B 800x2400 >0,-8 C 1200x2400"
	tests := []struct {
		wall int
		side hanging.Side
		want string
	}{
		{0, hanging.Left, "end of the run / papering stops here"},
		{0, hanging.Right, "to wall B / inside corner A|B / head leans 3 mm right"},
		{1, hanging.Left, "to wall A / inside corner A|B"},
		{1, hanging.Right, "to wall C / outside corner B|C"},
		{2, hanging.Left, "to wall B / outside corner B|C / head leans 8 mm left"},
		{2, hanging.Right, "end of the run / papering stops here"},
	}
	for _, tt := range tests {
		if got := strings.Join(begun(t, run, tt.wall).neighbour(tt.side, measure.MaxLength), " / "); got != tt.want {
			t.Errorf("wall %d, %v: %s, want %s", tt.wall, tt.side, got, tt.want)
		}
	}
}

// Where another run goes on beyond a corner nothing stops: the corner is named, and how
// paper ends there. Beyond a wall that nobody papers it stops.
func TestNeighbourInAnotherRun(t *testing.T) {
	a, b := laid(t, "A 1000x2400"), laid(t, "B 800x2400")
	a.Run.Beyond.Right, b.Run.Beyond.Left, b.Run.Beyond.Right = "B", "A", "C"
	p := &plan.Plan{Runs: []plan.RunPlan{{Layout: a}, {Layout: b}}}
	for _, tt := range []struct {
		run  int
		side hanging.Side
		want string
	}{
		{0, hanging.Left, "end of the run / papering stops here"},
		{0, hanging.Right, "to wall B / inside corner A|B / trimmed to the corner on both walls"},
		{1, hanging.Left, "to wall A / inside corner A|B / trimmed to the corner on both walls"},
		{1, hanging.Right, "end of the run / papering stops here"},
	} {
		e := newElevation(p, tt.run, 0, Options{Scale: 20})
		if got := strings.Join(e.neighbour(tt.side, measure.MaxLength), " / "); got != tt.want {
			t.Errorf("run %d, %v: %s, want %s", tt.run, tt.side, got, tt.want)
		}
	}
}

func TestEdge(t *testing.T) {
	e := begun(t, "A 1000x2400/1800 |10,0 B 800x1800", 0)
	tests := []struct {
		side       hanging.Side
		foot, head geom.Point
		tall       measure.Length
	}{
		{hanging.Left, geom.Point{}, geom.Point{Y: 120 * mm}, 2400 * mm},
		{hanging.Right, geom.Point{X: 50 * mm}, geom.Point{X: 50*mm + mm/2, Y: 90 * mm}, 1800 * mm},
	}
	for _, tt := range tests {
		foot, head, ok := e.edge(tt.side)
		if !ok || foot != tt.foot || head != tt.head || e.tall(tt.side) != tt.tall {
			t.Errorf("%v: %v to %v, %v high; want %v to %v, %v", tt.side, foot, head, e.tall(tt.side), tt.foot, tt.head, tt.tall)
		}
	}
}

// A wall that runs out to a point has no height there, and no edge.
func TestEdgeOfAGable(t *testing.T) {
	e := begun(t, "A 1000x2400", 0)
	e.wall.Outline = geom.Ring{{}, {X: 1000 * mm}, {X: 0, Y: 2400 * mm}}
	e.face = e.run.Face(0)
	if _, _, ok := e.edge(hanging.Right); ok {
		t.Error("the point has an edge")
	}
	e.heights()
	if n := len(e.scene.Layer("sizes").Items); n != 1 {
		t.Errorf("%d heights drawn, want the one on the left", n)
	}
}
