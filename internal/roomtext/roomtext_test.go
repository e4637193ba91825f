package roomtext

import (
	"testing"

	"firstdrop/measure"
	"firstdrop/room"
)

func TestRun(t *testing.T) {
	const mm = measure.Millimetre
	r := Run("closed: A 4200x2400! door(300+800 0+2000) | B 3000x2400/2100 >-3,8 C 350x2400? window(50+200 900+1000 120) |")
	if !r.Closed || len(r.Walls) != 3 || len(r.Corners) != 3 {
		t.Fatalf("%+v", r)
	}
	a, b, c := r.Walls[0], r.Walls[1], r.Walls[2]
	if a.Name != "A" || a.Width != 4200*mm || a.Sight != room.Focal || c.Sight != room.Hidden {
		t.Errorf("walls %+v and %+v", a, c)
	}
	if x, y := a.Openings[0].Outline.Bounds(); a.Openings[0].Kind != room.Door || x.Lo != 300*mm || x.Hi != 1100*mm || y.Hi != 2000*mm {
		t.Errorf("door at %v, %v", x, y)
	}
	if b.Outline[2].Y != 2100*mm || b.Outline[3].Y != 2400*mm {
		t.Errorf("the ceiling of B runs %v", b.Outline)
	}
	if k := r.Corners[1]; k.Kind != room.Outside || k.LeanLeft != -3*mm || k.LeanRight != 8*mm {
		t.Errorf("corner %+v", k)
	}
	if o := c.Openings[0]; o.Depth != 120*mm || !o.Sides.Left || o.Sides.Sill {
		t.Errorf("returns %+v", o)
	}
	if err := r.Check(); err != nil {
		t.Error(err)
	}
}
