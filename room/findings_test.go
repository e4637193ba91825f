package room

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/measure"
)

// line writes a finding on one line: code, severity, places, word, sizes.
func line(f finding.Finding) string {
	s := fmt.Sprintf("%s %v at", f.Code, f.Severity)
	for _, place := range []string{f.Place.Wall, f.Place.Opening, f.Place.Corner} {
		if place != "" {
			s += " " + place
		}
	}
	if f.Word != "" {
		s += " (" + f.Word + ")"
	}
	for _, size := range f.Sizes {
		s += fmt.Sprintf(", %s %v", size.Name, size.Value)
	}
	return s
}

// Each case changes one thing in a sound room of 4 by 3 m, 2.4 m high.
func TestFindings(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Run)
		want   []string
	}{
		{"nothing to say", func(*Run) {}, nil},
		{
			"24 m typed for 2.4 m",
			func(r *Run) { r.Walls[1].Outline = Rectangle(3000*mm, 24000*mm) },
			[]string{
				"height_jump note at North|East (head), jump 21600 mm",
				"height_unlikely serious at East, height 24000 mm, limit 6000 mm",
				"height_jump note at East|South (head), jump -21600 mm",
			},
		},
		{
			"240 mm typed for 2400 mm",
			func(r *Run) { r.Walls[3].Outline = Rectangle(3000*mm, 240*mm) },
			[]string{
				"height_jump note at South|West (head), jump -2160 mm",
				"height_unlikely caution at West, height 240 mm, limit 1000 mm",
				"height_jump note at West|North (head), jump 2160 mm",
			},
		},
		{
			"a ceiling out of level by 20 mm is common",
			func(r *Run) { r.Walls[0].Outline[2].Y += 20 * mm },
			nil,
		},
		{
			"by 21 mm at one corner it is asked about",
			func(r *Run) { r.Walls[0].Outline[2].Y += 21 * mm },
			[]string{"height_jump caution at North|East (head), jump -21 mm"},
		},
		{
			"a foot that jumps",
			func(r *Run) { r.Walls[0].Outline[0].Y -= 50 * mm },
			[]string{"height_jump caution at West|North (foot), jump -50 mm"},
		},
		{
			"a lean that good workmanship leaves (8 mm in a storey: NHBC 2020, 9.1.3)",
			func(r *Run) { r.Corners[0].LeanLeft, r.Corners[1].LeanRight = 8*mm, -8*mm },
			nil,
		},
		{
			"and one beyond it, on either side of the corner",
			func(r *Run) { r.Corners[0].LeanLeft, r.Corners[1].LeanRight = 9*mm, -10*mm },
			[]string{
				"lean_large caution at North|East, lean 9 mm, limit 8 mm",
				"lean_large caution at East|South, lean -10 mm, limit 8 mm",
			},
		},
		{
			"a lean that is no lean",
			func(r *Run) { r.Corners[3].LeanRight = 240 * mm },
			[]string{"lean_unlikely serious at West|North, lean 240 mm, limit 240 mm"},
		},
		{
			"a narrow wall and a wide one, in an open run",
			func(r *Run) {
				r.Closed, r.Corners = false, r.Corners[:3]
				r.Walls[1] = Wall{Name: "East", Width: 99 * mm, Outline: Rectangle(99*mm, 2400*mm)}
				r.Walls[2] = Wall{Name: "South", Width: 40 * measure.Metre, Outline: Rectangle(40*measure.Metre, 2400*mm)}
				r.Ends.Left.LeanRight = 20 * mm
				r.Ends.Right.LeanLeft = 20 * mm
			},
			[]string{
				"lean_large caution at |North, lean 20 mm, limit 8 mm",
				"narrow_wall note at East, width 99 mm, limit 100 mm",
				"width_unlikely caution at South, width 40000 mm, limit 30000 mm",
				"lean_large caution at West|, lean 20 mm, limit 8 mm",
			},
		},
		{
			"the ends' far sides do not count",
			func(r *Run) {
				r.Closed, r.Corners = false, r.Corners[:3]
				r.Ends.Left.LeanLeft, r.Ends.Right.LeanRight = 20*mm, 20*mm
			},
			nil,
		},
		{
			"an outline that ends before the corner",
			func(r *Run) { r.Walls[0].Outline = Rectangle(3900*mm, 2400*mm) },
			[]string{"outline_short caution at North, gap 100 mm"},
		},
		{"a door below the paper", open(Rect(500*mm, -100*mm, 800*mm, 2000*mm)), nil},
		{
			"a window below the paper",
			func(r *Run) {
				open(Rect(500*mm, -100*mm, 800*mm, 2000*mm))(r)
				r.Walls[0].Openings[0].Kind = Window
			},
			[]string{"opening_beyond caution at North window 1 (foot), beyond 100 mm"},
		},
		{
			"a door head of 21000 mm",
			open(Rect(500*mm, 0, 800*mm, 21000*mm)),
			[]string{"opening_beyond caution at North door 1 (head), beyond 18600 mm"},
		},
		{
			"a window through the slope",
			func(r *Run) {
				r.Walls[0].Outline[3].Y = 1400 * mm // rises by 1 m in 4 m
				r.Walls[3].Outline[2].Y = 1400 * mm
				open(Rect(800*mm, 1000*mm, 400*mm, 1000*mm))(r)
			},
			[]string{"opening_beyond caution at North door 1 (slope), beyond 400 mm"},
		},
		{
			"a cupboard in a corner that leans away from it",
			func(r *Run) {
				open(Rect(0, 0, 800*mm, 1200*mm))(r)
				r.Corners[3].LeanRight = -8 * mm
			},
			[]string{"corner_wedge note at North door 1, width 4 mm"},
		},
		{
			"one in a corner that leans towards it, one as high as the wall on the other side",
			func(r *Run) {
				open(Rect(0, 0, 800*mm, 1200*mm), Rect(3200*mm, 0, 800*mm, 2500*mm))(r)
				r.Corners[3].LeanRight, r.Corners[0].LeanLeft = 8*mm, 8*mm
			},
			[]string{
				"opening_beyond caution at North door 2 (head), beyond 100 mm",
				"corner_wedge note at North door 2, width 8 mm",
			},
		},
		{
			"a socket beside the wall, one in the door, one on the wall",
			func(r *Run) {
				open(Rect(500*mm, 0, 800*mm, 2000*mm))(r)
				r.Walls[0].Fittings = []Fitting{
					{Name: "Old socket", At: geom.Point{X: 4100 * mm, Y: 300 * mm}},
					{Kind: Switch, At: geom.Point{X: 600 * mm, Y: 1200 * mm}},
					{At: geom.Point{X: 1600 * mm, Y: 300 * mm}},
				}
			},
			[]string{"fitting_outside caution at North (Old socket)", "fitting_outside caution at North (switch 2)"},
		},
		{
			"two opposite walls that differ by 5 mm, which chance may do",
			func(r *Run) { r.Walls[2].Width += 5 * mm; r.Walls[2].Outline = Rectangle(4005*mm, 2400*mm) },
			[]string{"misclosure note at North (North, South), misclosure 5 mm, along -5 mm, across 0 mm, likely 4005 mm"},
		},
		{
			"opposite walls that differ by 200 mm, which chance does not do",
			func(r *Run) { r.Walls[2].Width += 200 * mm; r.Walls[2].Outline = Rectangle(4200*mm, 2400*mm) },
			[]string{"misclosure serious at North (North, South), misclosure 200 mm, along -200 mm, across 0 mm, likely 4200 mm"},
		},
		{
			"an angle that does not fit the others",
			func(r *Run) { r.Corners[1].Angle = 91 * deg },
			[]string{
				"angle_misclosure note at (1°)",
				"misclosure note at East|South (East|South), misclosure 43.541612 mm, along -26.027548 mm, across -34.906142 mm",
			},
		},
		{
			"a corner too many",
			func(r *Run) {
				r.Walls = append(r.Walls, Wall{Name: "Niche", Width: measure.Metre, Outline: Rectangle(measure.Metre, 2400*mm)})
				r.Corners = append(r.Corners, Corner{})
			},
			[]string{"angle_misclosure serious at (-90°)", "plan_unadjustable serious at (corner), misclosure 2526.255334 mm"},
		},
		{
			"a wall too short by metres",
			func(r *Run) { r.Walls[2] = Wall{Name: "South", Width: 400 * mm, Outline: Rectangle(400*mm, 2400*mm)} },
			[]string{"misclosure serious at North (North, South), misclosure 3600 mm, along 3600 mm, across 0 mm, likely 400 mm"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := box(4000*mm, 3000*mm, 2400*mm)
			c.change(r)
			if err := r.Check(); err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, f := range r.Findings() {
				if f.Place.Run != "Study" {
					t.Errorf("place %+v", f.Place)
				}
				got = append(got, line(f))
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}
