package room

import (
	"testing"

	"firstdrop/geom"
	"firstdrop/measure"
)

// wall returns a plain wall 2.4 m high, of a width in millimetres.
func wall(name string, width int, openings ...Opening) Wall {
	w := measure.Length(width) * mm
	return Wall{Name: name, Width: w, Outline: Rectangle(w, 2400*mm), Openings: openings}
}

// shaped returns a wall with the outline given in millimetres.
func shaped(name string, width int, corners ...[2]int) Wall {
	w := Wall{Name: name, Width: measure.Length(width) * mm}
	for _, c := range corners {
		w.Outline = append(w.Outline, geom.Point{X: measure.Length(c[0]) * mm, Y: measure.Length(c[1]) * mm})
	}
	return w
}

// corners returns corners of these angles in degrees.
func corners(angles ...int) (cs []Corner) {
	for _, a := range angles {
		c := Corner{Angle: measure.Angle(a) * deg}
		if a > 180 {
			c.Kind = Outside
		}
		cs = append(cs, c)
	}
	return cs
}

// Invented rooms of the kinds that there are: all pass, and nothing about them
// is asked.
func TestOrdinaryRoomsRaiseNothing(t *testing.T) {
	door := Opening{Kind: Door, Outline: Rect(300*mm, 0, 800*mm, 2000*mm)}
	window := Opening{Kind: Window, Outline: Rect(1000*mm, 900*mm, 1200*mm, 1200*mm), Depth: 120 * mm, Sides: Sides{Left: true, Right: true, Head: true}}
	for name, r := range map[string]*Run{
		"one wall": {Walls: []Wall{wall("Feature", 4200)}},
		"chimney breast with alcoves": {
			Closed: true,
			Walls: []Wall{
				wall("Left alcove", 1000), wall("Left cheek", 400), wall("Breast", 1500), wall("Right cheek", 400),
				wall("Right alcove", 1000), wall("Window wall", 4000, window), wall("Door wall", 3500, door), wall("Party wall", 4000),
			},
			Corners: corners(90, 270, 270, 90, 90, 90, 90, 90),
		},
		"bay": {
			Closed: true,
			Walls: []Wall{ // the slanted sides of the bay are those of a square of 1 m
				wall("Left", 3000), wall("Bay left", 1414),
				wall("Bay", 2000, Opening{Kind: Window, Outline: Rect(400*mm, 900*mm, 1200*mm, 1200*mm)}), wall("Bay right", 1414), wall("Right", 3000), wall("Back", 4000, door),
			},
			Corners: corners(135, 135, 135, 135, 90, 90),
		},
		"attic": {Walls: []Wall{
			shaped("Gable", 4000, [2]int{0, 0}, [2]int{4000, 0}, [2]int{4000, 1200}, [2]int{2000, 3200}, [2]int{0, 1200}),
			shaped("Knee wall", 5000, [2]int{0, 0}, [2]int{5000, 0}, [2]int{5000, 1200}, [2]int{0, 1200}),
		}, Corners: make([]Corner, 1)},
		"stair": {Walls: []Wall{
			shaped("Stair", 3600, [2]int{0, 0}, [2]int{900, 0}, [2]int{3600, 2700}, [2]int{3600, 5100}, [2]int{0, 5100}),
		}},
		"crooked, as good workmanship leaves it": {
			Walls:   []Wall{wall("A", 3000), wall("B", 2500)},
			Corners: []Corner{{LeanLeft: -8 * mm, LeanRight: 8 * mm}},
		},
	} {
		if err := r.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, f := range r.Findings() {
			t.Errorf("%s: %s", name, line(f))
		}
	}
}

// A thousand walls are adjusted like four: the equations are as many as the
// conditions.
func TestAdjustAThousandWalls(t *testing.T) {
	s := &Survey{}
	for range 1000 {
		s.Widths = append(s.Widths, LengthReading{Length: measure.Metre})
		s.Angles = append(s.Angles, AngleReading{Angle: 180*deg - 360*deg/1000})
	}
	s.Widths[17].Length += 300 * mm
	a, err := s.Adjust()
	if err != nil {
		t.Fatal(err)
	}
	if !near(a.Misclosure, 300*mm, measure.Micrometre) {
		t.Errorf("misses by %v", a.Misclosure)
	}
}
