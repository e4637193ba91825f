package screen

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/words"
)

// area returns what rings enclose by the even-odd rule, in square millimetres:
// rings that do not cross, outer ones one way round and holes the other.
func area(rings [][]Point) (sum float64) {
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			sum += (p[0]*q[1] - p[1]*q[0]) / 2
		}
	}
	return sum
}

// faceArea returns what is to be papered of a wall, less what drops without paper
// would cover: nothing, since they fall wholly into openings.
func faceArea(f geom.Polygon) float64 {
	x, _ := f.Bounds()
	return float64(geom.AreaOf(f.Cells(x))) / float64(measure.SquareMillimetre)
}

// The sheets tile the walls: what they cover adds up to what is papered, and no
// point lies under two of them.
func TestSheetsTileTheWalls(t *testing.T) {
	for name, document := range examples(t) {
		p := New()
		a := p.answer(Request{Kind: AskPlan, Job: document})
		for r := range a.Plan.Runs {
			checkTiling(t, name, p.made.plan.Runs[r].Layout, a.Plan.Runs[r].Drops)
		}
	}
}

func TestAnySheetsTileTheWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, label := anyroom.Run(t), anyroom.Paper(t)
		h, err := hanging.New(run, label, hanging.DefaultRules())
		if err != nil {
			t.Fatal(err)
		}
		l, err := h.Layout(anyroom.Choice(t, run, label))
		if err != nil {
			t.Skip(err)
		}
		d := newDrawing(words.For(""), l)
		d.drops()
		checkTiling(t, "any room", l, d.out.Drops)
	})
}

// Walls set to their ceilings, casings and neighbours, on which all sheets lean.
func TestSheetsTileTurnedWalls(t *testing.T) {
	turned := 0
	rapid.Check(t, func(t *rapid.T) {
		l := turnedLayout(t)
		turned++
		d := newDrawing(words.For(""), l)
		d.drops()
		checkTiling(t, "any crooked room", l, d.out.Drops)
	})
	if turned < 20 {
		t.Errorf("only %d layouts on turned walls", turned)
	}
}

// turnedLayout draws a layout with walls that are turned; others are skipped.
func turnedLayout(t *rapid.T) *hanging.Layout {
	run, set := anyroom.Crooked(t)
	label := anyroom.Paper(t)
	if set == nil {
		t.Skip("hangs plumb")
	}
	h, err := hanging.NewSet(run, set, label, hanging.DefaultRules())
	if err != nil {
		t.Skip(err)
	}
	l, err := h.Layout(anyroom.Choice(t, h.Run(), label))
	if err != nil {
		t.Skip(err)
	}
	return l
}

// On a turned wall a point of a sheet stands where the layout, turned back, has it:
// the map of its design takes it there.
func TestTilesLeanWithTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := turnedLayout(t)
		d := newDrawing(words.For(""), l)
		d.drops()
		y := measure.Length(rapid.Int64Range(0, 3e9).Draw(t, "y"))
		for i := range l.Drops {
			for k, p := range l.Drops[i].Parts {
				if p.Skew != 0 {
					continue // that is checked upright
				}
				m, across := d.out.Drops[i].Parts[k].Tile, float64(p.Across.Lo+p.Across.Length()/2)/perMM
				down := float64(l.Choice.Design+label(l).Shift(l.Drops[i].Index)-y) / perMM
				if l.Drops[i].Reversed {
					across, down = float64(label(l).Width)/perMM-across, -down
				}
				x, up := m[0]*across+m[2]*down+m[4], m[1]*across+m[3]*down+m[5]
				want := l.OnWall(p.Wall, geom.Point{X: p.X.Lo + p.X.Length()/2, Y: y})
				wx, wy := d.x[p.Wall]+mm(want.X), mm(want.Y)
				// To the first order: a lean of 1 in 50 twice is 0.4 mm in a metre.
				if off := math.Hypot(x-wx, up-wy); off > 2.5 {
					t.Fatalf("drop %d, part %d: stands at %.3f, %.3f, want %.3f, %.3f", i, k, x, up, wx, wy)
				}
			}
		}
	})
}

func label(l *hanging.Layout) *paper.Paper { return l.Paper }

func checkTiling(t interface {
	Errorf(string, ...any)
}, name string, l *hanging.Layout, drops []Drop,
) {
	covered := make([]float64, len(l.Run.Walls))
	for _, d := range drops {
		for _, p := range d.Parts {
			covered[p.Wall] += area(p.Rings)
		}
	}
	for w := range l.Run.Walls {
		want := faceArea(l.Run.Face(w))
		// Corners are rounded to a micrometre: a metre of edge is off by a thousandth
		// of a square millimetre at most, and a wall has some hundred metres of edges.
		if math.Abs(covered[w]-want) > 1+want*1e-7 {
			t.Errorf("%s: wall %s: sheets cover %.2f mm², the wall has %.2f", name, l.Run.WallName(w), covered[w], want)
		}
	}
}

// The map of a part takes what the label says stands at a height to that height,
// and the left edge of the width to where the part's sheet has it.
func TestTilesAgreeWithPhases(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, label := anyroom.Run(t), anyroom.Paper(t)
		h, err := hanging.New(run, label, hanging.DefaultRules())
		if err != nil {
			t.Fatal(err)
		}
		l, err := h.Layout(anyroom.Choice(t, run, label))
		if err != nil {
			t.Skip(err)
		}
		d := newDrawing(words.For(""), l)
		d.drops()
		y := measure.Length(rapid.Int64Range(0, 3e9).Draw(t, "y"))
		for i := range l.Drops {
			for k, p := range l.Drops[i].Parts {
				m := d.out.Drops[i].Parts[k].Tile
				// The point of the design that stands at height y, in the middle of what the
				// part has of the width.
				down := (mm(y) - m[5]) / m[3]
				if label.Repeat > 0 {
					phase := float64(label.Phase(l.Drops[i].Index, l.Choice.Design, y)) / perMM
					off := math.Mod(down-phase, float64(label.Repeat)/perMM)
					if r := float64(label.Repeat) / perMM; min(math.Abs(off), math.Abs(math.Abs(off)-r)) > 0.01 {
						t.Fatalf("drop %d at %v: the tile shows %v, the label %v", i, y, down, phase)
					}
				}
				across := float64(p.Across.Lo+p.Across.Length()/2) / perMM
				if l.Drops[i].Reversed {
					across = float64(label.Width)/perMM - across
				}
				f := l.Fall(i, k)
				foot := (mm(f.Over.Lo) - m[5]) / m[3]
				x := m[0]*across + m[2]*foot + m[4]
				if want := d.x[p.Wall] + float64(p.X.Lo+p.X.Length()/2)/perMM; math.Abs(x-want) > 0.01 {
					t.Fatalf("drop %d: the middle of part %d stands at %v, want %v", i, k, x, want)
				}
			}
		}
	})
}

// Worked by hand: a wall of 1000 by 2400 mm with a door, and paper of 530 mm hung
// from its left end.
func TestRingsByHand(t *testing.T) {
	a := asked(t, AskPlan, json.RawMessage(`{"firstdrop": 1, "units": "mm", "room": {"closed": false, "height": 2400, "walls": [
		{"name": "A", "width": 1060, "openings": [{"kind": "door", "left": 400, "width": 260, "height": 2000}]}]},
		"papers": [{"name": "P", "width": 530, "roll": "10 m", "repeat": 600, "match": "straight"}],
		"hang": [{"paper": "P", "start": {"wall": "A", "edge": 0}, "design": 100}]}`))
	drops := a.Plan.Runs[0].Drops
	if len(drops) != 2 {
		t.Fatalf("%d drops", len(drops))
	}
	for i, want := range []string{
		`[[[0,0],[400,0],[400,2000],[530,2000],[530,2400],[0,2400]]]`,
		`[[[530,2000],[660,2000],[660,0],[1060,0],[1060,2400],[530,2400]]]`,
	} {
		got, err := json.Marshal(drops[i].Parts[0].Rings)
		if err != nil || string(got) != want {
			t.Errorf("drop %d covers %s, want %s", i+1, got, want)
		}
	}
	if want := [6]float64{1, 0, 0, -1, 530, 100}; drops[1].Parts[0].Tile != want {
		t.Errorf("tile %v, want %v", drops[1].Parts[0].Tile, want)
	}
}
