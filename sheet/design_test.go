package sheet_test

import (
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/sheet"
)

// The marks stand where the paper's own rule says that the design has the
// phase of the mark: nothing of the drawing's own arithmetic is used.
func TestDesignMarksStandAtThePhase(t *testing.T) {
	marks := 0
	eachWall(t, func(t *testing.T, s sample, p *plan.Plan, wall int, scene *draw.Scene) {
		l := p.Runs[0].Layout
		want := measure.Length(0)
		if s.label.Motif != nil {
			want = s.label.Motif.Head
		}
		scene.Walk(func(layer string, it draw.Item) {
			line, ok := it.(draw.Line)
			if !ok || layer != "design" || len(line.Pen.Dash) > 0 || line.Points[0].Y != line.Points[1].Y {
				return
			}
			marks++
			at := geom.Point{X: line.Box().Middle().X * measure.Length(scene.Scale), Y: line.Points[0].Y * measure.Length(scene.Scale)}
			right := false // on a drop that lies there: two may, where one laps over the other
			for _, d := range l.Drops {
				for _, q := range d.Parts {
					if q.Wall == wall && q.X.Contains(at.X) {
						off := (s.label.Phase(d.Index, l.Choice.Design, at.Y) - want).Mod(s.label.Repeat)
						slack := measure.Length(scene.Scale)
						right = right || off <= slack || off >= s.label.Repeat-slack
					}
				}
			}
			if !right {
				t.Errorf("a mark at %v, %v where no drop has it", at.X, at.Y)
			}
		})
	})
	if marks < 100 {
		t.Errorf("only %d marks in all", marks)
	}
}

// Every motif head that falls on its axis, on paper and clear of edges, is
// drawn: words keep off it.
func TestEveryMotifHeadIsDrawn(t *testing.T) {
	eachWall(t, func(t *testing.T, s sample, p *plan.Plan, wall int, scene *draw.Scene) {
		l, m := p.Runs[0].Layout, s.label.Motif
		if m == nil {
			return
		}
		face := l.Run.Face(wall)
		drawn := map[geom.Point]bool{}
		scene.Walk(func(layer string, it draw.Item) {
			if line, ok := it.(draw.Line); ok && layer == "design" && line.Points[0].Y == line.Points[1].Y {
				drawn[line.Box().Middle()] = true
			}
		})
		clear := 80 * mm // around the place, all on this wall
		for _, d := range l.Drops {
			axis := m.Axis
			if d.Reversed {
				axis = s.label.Width - axis
			}
			for _, q := range d.Parts {
				x := q.X.Lo + axis - q.Across.Lo
				if q.Wall != wall || !q.X.Contains(x-clear) || !q.X.Contains(x+clear) {
					continue
				}
				for y := measure.Length(0); y < 2600*mm; y += mm {
					if s.label.Phase(d.Index, l.Choice.Design, y) != m.Head {
						continue
					}
					on := true
					for _, c := range []geom.Point{{X: x - clear, Y: y - clear}, {X: x + clear, Y: y - clear}, {X: x - clear, Y: y + 5*mm}, {X: x + clear, Y: y + 5*mm}} {
						on = on && face.Contains(c)
					}
					if at := (geom.Point{X: x.Scaled(1, scene.Scale), Y: y.Scaled(1, scene.Scale)}); on && !drawn[at] {
						t.Errorf("drop %d: no mark at %v, %v", d.Number, x, y)
					}
				}
			}
		}
	})
}

func TestHalfDropMarksAlternate(t *testing.T) {
	p := samples[2].kept(t)
	scene := sheet.Wall(p, 0, 0, sheet.Options{Scale: 20})
	heights := map[measure.Length]map[measure.Length]bool{} // height modulo repeat → parity of drops
	l := p.Runs[0].Layout
	scene.Walk(func(layer string, it draw.Item) {
		line, ok := it.(draw.Line)
		if !ok || layer != "design" || len(line.Pen.Dash) > 0 {
			return
		}
		x, y := line.Box().Middle().X*20, (line.Points[0].Y * 20).Mod(640*mm)
		for _, d := range l.Drops {
			if d.Parts[0].Wall == 0 && d.Parts[0].X.Contains(x) {
				if heights[y] == nil {
					heights[y] = map[measure.Length]bool{}
				}
				heights[y][measure.Length(d.Index).Mod(2)] = true
			}
		}
	})
	if len(heights) != 2 {
		t.Fatalf("marks at %d heights in the repeat, want 2: %v", len(heights), heights)
	}
	for y, parity := range heights {
		if len(parity) != 1 || !heights[(y + 320*mm).Mod(640*mm)][0] && !heights[(y + 320*mm).Mod(640*mm)][1] {
			t.Errorf("at %v: drops %v", y, parity)
		}
	}
}
