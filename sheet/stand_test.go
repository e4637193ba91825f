package sheet

import (
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// A wall under a ceiling that rises by 20 mm over 4 m, its sheets along it. By hand: an
// edge that stands at 1000 mm at the foot leans to the left by 20·2420/4000 = 12.1 mm
// over the wall's 2420 mm, and ends under the ceiling, 2400 mm + 20·x/4000 high: at a
// scale of 1 to 20, 50 mm from the left end below and 49.4 mm above.
func TestEdgesLeanWithTheWall(t *testing.T) {
	label := &paper.Paper{
		Name: "rows", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 640 * mm, Pack: 1, Match: paper.Match{Kind: paper.Straight},
	}
	h, err := hanging.NewSet(roomtext.Run("A 4000x2400/2420"), []hanging.Setting{{To: hanging.ToCeiling}}, label, hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{Start: hanging.Start{X: 470 * mm}})
	if err != nil {
		t.Fatal(err)
	}
	e := newElevation(&plan.Plan{Runs: []plan.RunPlan{{Layout: l}}}, 0, 0, Options{Scale: 20})
	lines := e.stretches(1000 * mm)
	if len(lines) != 1 {
		t.Fatalf("%d stretches", len(lines))
	}
	high := 2400*mm + (20*mm).Scaled(int64(988*mm), int64(4000*mm))
	want := [2]geom.Point{{X: 50 * mm}, {X: (1000*mm - (12100*measure.Micrometre).Scaled(int64(high), int64(2420*mm))) / 20, Y: high / 20}}
	for i := range want {
		if got := lines[0][i]; (got.X-want[i].X).Abs() > 20 || (got.Y-want[i].Y).Abs() > 100 {
			t.Errorf("end %d stands at %v, want %v", i, got, want[i])
		}
	}
	strip := e.between(e.ring(e.face.Outline), geom.Interval{Lo: 470 * mm, Hi: 1000 * mm})
	x, _ := strip.Bounds()
	if (x.Hi-50*mm).Abs() > 20 || x.Lo >= 470*mm/20 {
		t.Errorf("the strip covers %v on the page", x)
	}
}
