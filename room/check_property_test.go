package room

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/measure"
)

// A fault planted into a sound run of any shape is the only one found, and
// found where it was planted.
func TestCheckFindsThePlantedFault(t *testing.T) {
	faults := []struct {
		rule  Rule
		plant func(r *Run, i int)
	}{
		{RuleWidth, func(r *Run, i int) { r.Walls[i].Width = -r.Walls[i].Width }},
		{RuleOutline, func(r *Run, i int) { r.Walls[i].Outline = r.Walls[i].Outline[:2] }},
		{RuleOutlineWidth, func(r *Run, i int) { r.Walls[i].Outline[1].X++ }},
		{RuleOpening, func(r *Run, i int) {
			r.Walls[i].Openings = []Opening{{Outline: geom.Ring{{X: 0, Y: 0}, {X: 9, Y: 9}, {X: 18, Y: 18}}}}
		}},
		{RuleOpeningWidth, func(r *Run, i int) {
			r.Walls[i].Openings = []Opening{{Outline: Rect(0, 0, r.Walls[i].Width+1, measure.Metre)}}
		}},
		{RuleOpeningPlace, func(r *Run, i int) { r.Walls[i].Openings = []Opening{{Outline: Rect(-1, 0, 100*mm, measure.Metre)}} }},
		{RuleOpeningPlace, func(r *Run, i int) {
			r.Walls[i].Openings = []Opening{{Outline: Rect(0, 4*measure.Metre, 100*mm, measure.Metre)}}
		}},
		{RuleOpeningOverlap, func(r *Run, i int) {
			r.Walls[i].Openings = []Opening{
				{Outline: Rect(0, 100*mm, 100*mm, measure.Metre)}, {Outline: Rect(100*mm-1*mm, 100*mm, 100*mm, measure.Metre)},
			}
		}},
		{RuleDepth, func(r *Run, i int) {
			r.Walls[i].Openings = []Opening{{Outline: Rect(0, 100*mm, 100*mm, measure.Metre), Depth: -1}}
		}},
		{RuleFitting, func(r *Run, i int) { r.Walls[i].Fittings = []Fitting{{Size: geom.Point{X: -1}}} }},
	}
	rapid.Check(t, func(t *rapid.T) {
		r := aRun.Draw(t, "run")
		i := rapid.IntRange(0, len(r.Walls)-1).Draw(t, "wall")
		fault := rapid.SampledFrom(faults).Draw(t, "fault")
		fault.plant(r, i)
		var es Errors
		if !errors.As(r.Check(), &es) || len(es) != 1 || es[0].Rule != fault.rule || es[0].Wall != i {
			t.Fatalf("planted %s in wall %d, found %v", fault.rule, i, es)
		}
		if !strings.Contains(es[0].Error(), r.WallName(i)) || !strings.Contains(es[0].Error(), "measure") {
			t.Fatalf("%q neither names the wall nor what to measure", es[0])
		}
	})
}

// Two upright openings overlap just when they share a square of a grid.
func TestOverlapAgainstAGrid(t *testing.T) {
	const unit = 50 * mm
	side := rapid.IntRange(1, 5)
	aBox := rapid.Custom(func(t *rapid.T) [4]int {
		return [4]int{side.Draw(t, "x"), side.Draw(t, "y"), side.Draw(t, "w"), side.Draw(t, "h")}
	})
	ring := func(b [4]int) geom.Ring {
		return Rect(measure.Length(b[0])*unit, measure.Length(b[1])*unit, measure.Length(b[2])*unit, measure.Length(b[3])*unit)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := aBox.Draw(t, "a"), aBox.Draw(t, "b")
		shared := 0
		for x := range 12 {
			for y := range 12 {
				in := func(b [4]int) bool { return b[0] <= x && x < b[0]+b[2] && b[1] <= y && y < b[1]+b[3] }
				if in(a) && in(b) {
					shared++
				}
			}
		}
		if got := overlap(ring(a), ring(b)); got != (shared > 0) {
			t.Fatalf("overlap = %v, %d squares shared", got, shared)
		}
		r := box(4*measure.Metre, 3*measure.Metre, 2*measure.Metre)
		open(ring(a), ring(b))(r)
		if err := r.Check(); (err != nil) != (shared > 0) {
			t.Fatalf("%v, %d squares shared", err, shared)
		}
	})
}

// Leaning edges of a plumb wall add and take triangles of half the lean times
// the height.
func TestFaceAreaByTriangles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, lo, hi int64) measure.Length {
			return measure.Length(rapid.Int64Range(lo, hi).Draw(t, name))
		}
		width, height := length("width", 200e6, 5e9), length("height", 1e9, 4e9)
		left, right := length("left", -50e6, 50e6), length("right", -50e6, 50e6)
		r := &Run{Walls: []Wall{{Width: width, Outline: Rectangle(width, height)}}}
		r.Ends.Left.LeanRight, r.Ends.Right.LeanLeft = left, right
		want := (2*width + right - left).Times(height) / 2
		if got := r.Face(0).Area(); got-want > 1 || want-got > 1 {
			t.Fatalf("%v, want %v", got, want)
		}
		if l, s := r.LeanAt(0); l != left || s != right {
			t.Fatalf("leans %v and %v", l, s)
		}
	})
}

// In the mirror the same things are asked about, with the places exchanged.
func TestFindingsInTheMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := aRun.Draw(t, "run")
		for i := range r.Walls {
			r.Walls[i].Name = string(rune('A' + i))
		}
		r.Closed = false // a plan is closed from its first wall on, which is another in the mirror
		r.Corners = r.Corners[:len(r.Walls)-1]
		if diff := cmp.Diff(told(r, false), told(r.Mirrored(), true)); diff != "" {
			t.Fatalf("(-run +mirror)\n%s", diff)
		}
	})
}

// told returns code, severity and place of all findings, sorted; corners the
// other way round if mirrored.
func told(r *Run, mirrored bool) (lines []string) {
	for _, f := range r.Findings() {
		if left, right, ok := strings.Cut(f.Place.Corner, "|"); ok && mirrored {
			f.Place.Corner = right + "|" + left
		}
		lines = append(lines, strings.Join([]string{string(f.Code), f.Severity.String(), f.Place.Wall, f.Place.Corner, f.Place.Opening, f.Word}, " "))
	}
	slices.Sort(lines)
	return lines
}

// NHBC Standards 2020, 9.1.3: walls are out of plumb by no more than 8 mm in a
// storey of up to 3 m, and by no more than 12 mm in total.
func TestLeanLimits(t *testing.T) {
	for _, c := range []struct {
		height, lean measure.Length
		want         finding.Code
	}{
		{2400 * mm, 8 * mm, ""},
		{2400 * mm, -8 * mm, ""},
		{2400 * mm, 8*mm + 1, CodeLeanLarge},
		{2400 * mm, -9 * mm, CodeLeanLarge},
		{3000 * mm, 8 * mm, ""},
		{3000 * mm, 9 * mm, CodeLeanLarge},
		{3001 * mm, 12 * mm, ""},
		{5000 * mm, 12 * mm, ""},
		{5000 * mm, 13 * mm, CodeLeanLarge},
		{2400 * mm, 239 * mm, CodeLeanLarge},
		{2400 * mm, 240 * mm, CodeLeanUnlikely},
	} {
		r := box(4000*mm, 3000*mm, c.height)
		r.Corners[2].LeanLeft = c.lean
		got := finding.Code("")
		for _, f := range r.Findings() {
			got = f.Code
			if at, _ := f.Size("lean"); at != c.lean || f.Place.Corner != "South|West" {
				t.Errorf("%v at %v: %+v", c.lean, c.height, f)
			}
		}
		if got != c.want {
			t.Errorf("%v over %v: %q, want %q", c.lean, c.height, got, c.want)
		}
	}
}

// A diagonal's name is that of its two corners.
func TestSurveyFindingsNameDiagonals(t *testing.T) {
	r := box(4000*mm, 3000*mm, 2400*mm)
	r.Walls[0].Width += 3 * mm
	s := r.Survey()
	s.Diagonals = []Diagonal{
		{0, 2, LengthReading{Length: 5500 * mm}},
		{1, 3, LengthReading{Length: 5000 * mm}},
		{2, 0, LengthReading{Length: 5002 * mm}},
	}
	fs := r.SurveyFindings(s)
	if len(fs) != 1 || fs[0].Word != "North|East–South|West" || fs[0].Severity != finding.Serious {
		t.Errorf("%+v", fs)
	}
	s.Diagonals[0].From = 9
	if fs := r.SurveyFindings(s); fs != nil {
		t.Errorf("a survey without sense: %+v", fs)
	}
}

func TestNamesOfPlaces(t *testing.T) {
	r := &Run{Walls: []Wall{{Name: "North", Openings: []Opening{{Kind: Arch}, {Name: "Hatch"}}}, {}}}
	for _, c := range []struct{ got, want string }{
		{r.WallName(0), "North"},
		{r.WallName(1), "wall 2"},
		{r.CornerName(0), "North|wall 2"},
		{r.CornerName(1), "wall 2|"},
		{r.openingName(0, 0), "arch 1"},
		{r.openingName(0, 1), "Hatch"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	r.Closed = true
	if got := r.CornerName(1); got != "wall 2|North" {
		t.Errorf("%q", got)
	}
}
