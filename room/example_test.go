package room_test

import (
	"fmt"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

const mm = measure.Millimetre

// study returns an invented room of 4 by 3 m, 2.4 m high.
func study() *room.Run {
	r := &room.Run{Name: "Study", Closed: true, Corners: make([]room.Corner, 4)}
	for i, name := range []string{"Window wall", "Bookcase wall", "Door wall", "Desk wall"} {
		width := 4000 * mm
		if i%2 == 1 {
			width = 3000 * mm
		}
		r.Walls = append(r.Walls, room.Wall{Name: name, Width: width, Outline: room.Rectangle(width, 2400*mm)})
	}
	return r
}

func ExampleRun() {
	r := study()
	fmt.Println(r.Girth(), r.CornerName(3))
	// Output: 14000 mm Desk wall|Window wall
}

// A corner that leans into the room takes paper from the wall on its right.
func ExampleRun_Face() {
	r := study()
	r.Corners[0] = room.Corner{LeanLeft: -6 * mm, LeanRight: 6 * mm}
	fmt.Println(r.Face(0).Area(), r.Face(1).Area())
	head := r.Face(1).Outline[3]
	fmt.Println("the head of the corner stands", head.X, "into the wall")
	// Output:
	// 9.59 m² 7.19 m²
	// the head of the corner stands 6 mm into the wall
}

func ExampleRun_Mirrored() {
	m := study().Mirrored()
	fmt.Println(m.Walls[0].Name, "then", m.Walls[1].Name)
	// Output: Desk wall then Door wall
}

func ExampleRun_Check() {
	r := study()
	r.Walls[2].Openings = []room.Opening{
		{Name: "Door", Outline: room.Rect(3400*mm, 0, 800*mm, 2000*mm)},
		{Kind: room.Window, Outline: room.Rect(500*mm, 900*mm, 1000*mm, 1200*mm), Depth: -120 * mm},
	}
	fmt.Println(r.Check())
	// Output:
	// Study: Door wall: Door: it ends 200 mm beyond the wall's right corner; measure its width and its distance from the left corner again
	// Study: Door wall: window 2: its depth is -120 mm; measure how far it goes back from the wall's face
}

func ExampleError() {
	r := study()
	r.Walls[1].Width = 0
	for _, e := range r.Check().(room.Errors) {
		fmt.Println(e.Rule, e.Wall, e.Place.Wall)
	}
	// Output: width 1 Bookcase wall
}

// A ceiling of 24 m is asked about, not refused.
func ExampleRun_Findings() {
	r := &room.Run{Walls: []room.Wall{{Name: "Gable", Width: 3000 * mm, Outline: room.Rectangle(3000*mm, 24000*mm)}}}
	for _, f := range r.Findings() {
		height, _ := f.Size("height")
		fmt.Println(f.Code, f.Severity, f.Place.Wall, height)
	}
	// Output: height_unlikely serious Gable 24000 mm
}

func ExampleWall() {
	attic := room.Wall{
		Name:  "Attic",
		Width: 4000 * mm,
		Outline: geom.Ring{
			{X: 0, Y: 0}, {X: 4000 * mm, Y: 0}, {X: 4000 * mm, Y: 2500 * mm}, {X: 3000 * mm, Y: 2500 * mm}, {X: 0, Y: 1000 * mm},
		},
		Fittings: []room.Fitting{{Kind: room.Socket, At: geom.Point{X: 3500 * mm, Y: 300 * mm}}},
	}
	fmt.Println(attic.Outline.Area(), attic.Fittings[0].Kind)
	// Output: 7.75 m² socket
}

// An opening's returns are papered on the sides it names, as far as it is deep.
func ExampleOpening() {
	window := room.Opening{
		Kind:    room.Window,
		Outline: room.Rect(1200*mm, 900*mm, 1500*mm, 1200*mm),
		Depth:   150 * mm,
		Sides:   room.Sides{Left: true, Right: true, Head: true},
	}
	fmt.Println(window.Kind, window.Outline.Area())
	// Output: window 1.80 m²
}

func ExampleCorner() {
	bay := room.Corner{Angle: 135 * measure.Degree}
	breast := room.Corner{Kind: room.Outside} // not measured
	fmt.Println(bay.InteriorAngle(), breast.InteriorAngle())
	// Output: 135° 270°
}

func ExampleParseOpeningKind() {
	_, err := room.ParseOpeningKind("hatch")
	fmt.Println(err)
	// Output: "hatch" is no kind of opening; it is one of door, window, arch, fireplace, furniture, panel
}

// One wall was read 300 mm too short. Two diagonals tell which.
func ExampleSurvey() {
	r := study()
	r.Walls[1].Width = 2700 * mm
	s := r.Survey()
	s.Diagonals = []room.Diagonal{
		{From: 0, To: 2, LengthReading: room.LengthReading{Length: 5001 * mm}},
		{From: 1, To: 3, LengthReading: room.LengthReading{Length: 4998 * mm}},
	}
	a, err := s.Adjust()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("does not close by", a.Misclosure)
	for _, suspect := range a.Suspects {
		fmt.Println("measure again:", suspect.Kind, "of", r.WallName(suspect.Index))
	}
	// Output:
	// does not close by 300 mm
	// measure again: width of Bookcase wall
}

func ExampleRun_LeanAt() {
	r := study()
	r.Corners[3].LeanRight = -5 * mm // seen from the window wall
	left, right := r.LeanAt(0)
	fmt.Println(left, right)
	// Output: -5 mm 0 mm
}

// A closed plan says how far it may be trusted.
func ExampleRun_SurveyFindings() {
	r := study()
	r.Walls[1].Width = 2700 * mm
	for _, f := range r.SurveyFindings(r.Survey()) {
		gap, _ := f.Size("misclosure")
		fmt.Println(f.Code, f.Severity, gap, "look at", f.Word)
	}
	// Output: misclosure serious 300 mm look at Bookcase wall, Desk wall
}

// Three sides of a triangle and its angles: a right angle between 3 and 4 m
// wants 5 m opposite, but the tape said 5.05.
func ExampleAdjustment() {
	s := &room.Survey{
		Widths: []room.LengthReading{{Length: 3000 * mm}, {Length: 4000 * mm}, {Length: 5050 * mm}},
		Angles: []room.AngleReading{
			{Angle: 90 * measure.Degree, Sigma: measure.Degree / 100},
			{Angle: 36_869_898, Sigma: measure.Degree / 100},
			{Angle: 53_130_102, Sigma: measure.Degree / 100},
		},
	}
	a, err := s.Adjust()
	if err != nil {
		fmt.Println(err)
		return
	}
	first := a.Suspects[0]
	fmt.Println(first.Kind, first.Index, "is rather", first.Likely.FloorTo(mm))
	// Output: width 2 is rather 5000 mm
}

func ExampleTapeSigma() {
	fmt.Println(room.TapeSigma(4000 * mm))
	// Output: 6 mm
}

func ExampleFitting() {
	r := study()
	r.Walls[0].Fittings = []room.Fitting{{Kind: room.Radiator, At: geom.Point{X: 4200 * mm, Y: 400 * mm}}}
	for _, f := range r.Findings() {
		fmt.Println(f.Code, f.Word, *f.Place.X)
	}
	// Output: fitting_outside radiator 1 4200 mm
}

func ExampleSight() {
	s, err := room.ParseSight("focal")
	fmt.Println(s, s == room.Focal, err)
	// Output: focal true <nil>
}
