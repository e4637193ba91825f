package audit

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/internal/anyroom"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/room"
)

const mm = int64(measure.Millimetre)

// The area found column by column is that of the room's own faces, which are
// cut and added up another way.
func TestAreaAgreesWithFaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := anyroom.Run(t)
		g := newGround(run)
		for i := range g.walls {
			slack := 2 + 2*g.walls[i].width/int64(10*measure.Metre)
			if off := g.walls[i].area() - int64(run.Face(i).Area()); off > slack || off < -slack {
				t.Errorf("wall %d: area %d, face %d", i+1, g.walls[i].area(), run.Face(i).Area())
			}
		}
	})
}

// A wall of 4 × 2.4 m has 9.6 m²; a door of 0.8 × 2 m and a window that pokes
// 0.2 m into the door take 1.6 and 1 × 1 − 0.2 × 1.
func TestAreaWithOpeningsThatOverlap(t *testing.T) {
	run := roomtext.Run("A 4000x2400 door(300+800 0+2000) window(900+1000 900+1000)")
	want := int64(9_600_000-1_600_000-800_000) * int64(measure.SquareMillimetre)
	if got := newGround(run).walls[0].area(); got != want {
		t.Errorf("area %d, want %d", got, want)
	}
}

// A window that pokes out of a sloping ceiling takes what lies below it: the
// ceiling falls from 2 m to 0 over 2 m, the window stands from 0.5 to 1.5 both
// ways, its corner above the slope; below it remain 1 × 1 / 2.
func TestAreaWithOpeningThroughSlope(t *testing.T) {
	run := roomtext.Run("A 2000x2000 window(500+1000 500+1000)")
	run.Walls[0].Outline = geom.Ring{{}, {X: 2 * measure.Metre}, {Y: 2 * measure.Metre}}
	want := int64(2_000_000-500_000) * int64(measure.SquareMillimetre)
	if got := newGround(run).walls[0].area(); got != want {
		t.Errorf("area %d, want %d", got, want)
	}
}

// A corner leans between the lowest and highest point that either wall has
// there, so a dado 1.2 m high beside a wall of 2.4 m leans half as far.
func TestFoldsLeanOverTheCornersHeight(t *testing.T) {
	run := roomtext.Run("A 1000x2400 |-3,8 B 1000x1200")
	g := newGround(run)
	f := g.walls[1].left
	if f.foot != 0 || f.head != 2400*mm || f.off(f.leanRight, 1200*mm) != 4*mm || f.off(f.leanLeft, 2400*mm) != -3*mm {
		t.Errorf("fold %+v", f)
	}
	var head *slope
	for i := range g.walls[1].slopes {
		if s := &g.walls[1].slopes[i]; s.y1 == 1200*mm {
			head = s
		}
	}
	if head == nil || head.x1 != 4*mm || head.x2 != 1000*mm {
		t.Errorf("head of the dado %+v, want from 4 to 1000", head)
	}
}

// Ends of an open run lean too; a corner where a wall comes to a point does not.
func TestEndsAndPoints(t *testing.T) {
	run := roomtext.Run("A 1000x2000")
	run.Ends.Left = room.Corner{LeanLeft: 5, LeanRight: 7}
	run.Ends.Right = room.Corner{LeanLeft: 11, LeanRight: 13}
	run.Walls[0].Outline = geom.Ring{{}, {X: 1000 * measure.Millimetre, Y: 500}, {Y: 2000}}
	w := newGround(run).walls[0]
	if w.left.leanRight != 7 || w.right.leanLeft != 11 || w.right.foot != w.right.head {
		t.Errorf("left %+v, right %+v", w.left, w.right)
	}
	if last := w.breaks[len(w.breaks)-1]; last != 1000*mm {
		t.Errorf("right end at %d", last)
	}
}
