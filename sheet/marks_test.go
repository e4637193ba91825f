package sheet

import (
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/plan"
	"firstdrop/room"
)

func TestFindingsAreMarkedAndTold(t *testing.T) {
	e := begun(t, "A 2000x2400 | B 1000x2400", 0)
	x := 530 * mm
	e.plan.Findings = []finding.Finding{
		{Code: plan.FocalSeam, Place: finding.Place{Run: "run", Wall: "A", X: &x}},
		{Code: plan.Sliver, Place: finding.Place{Run: "run", Wall: "B", Drop: 5}},   // the other wall
		{Code: plan.Sliver, Place: finding.Place{Run: "other", Wall: "A", Drop: 5}}, // another run
		{Code: plan.AreaMisleads, Place: finding.Place{Paper: "plain"}},             // no place on a wall
		{Code: plan.CornerLoss, Place: finding.Place{Run: "run", Corner: "A|B"}},
		{Code: plan.KillMisfit, Place: finding.Place{Run: "run", Corner: "A|B"}}, // has its own mark
	}
	e.more = []finding.Finding{{Code: room.CodeLeanLarge, Place: finding.Place{Run: "run", Corner: "|A"}}}
	e.findings()
	marks := e.scene.Layer("marks").Items
	if len(marks) != 3 || len(e.notes) != 3 {
		t.Fatalf("%d marks and %d notes, want 3", len(marks), len(e.notes))
	}
	for i, at := range []geom.Interval{{Lo: 0, Hi: 40 * mm}, {Lo: 80 * mm, Hi: 100 * mm}, {Lo: 0, Hi: 20 * mm}} {
		number := string(rune('1' + i))
		if g := marks[i].(draw.Group); g.Title != "Finding "+number || e.notes[i].number != number {
			t.Errorf("mark %d is %q, note %q", i, g.Title, e.notes[i].number)
		}
		if x := marks[i].Box().X; !at.Overlaps(x) {
			t.Errorf("mark %d stands at %v, want within %v", i, x, at)
		}
		if strings.Contains(e.notes[i].text, "(run)") {
			t.Errorf("the run is named again: %s", e.notes[i].text)
		}
	}
	// The stick stands on the seam.
	stick := marks[0].(draw.Group).Items[0].(draw.Line)
	if stick.Points[0].X != x/20 {
		t.Errorf("the stick of mark 1 stands at %v", stick.Points[0].X)
	}
}

func TestPennantsKeepApart(t *testing.T) {
	e := begun(t, "A 2000x2400", 0)
	x := 530 * mm
	for range 6 {
		e.plan.Findings = append(e.plan.Findings, finding.Finding{Code: plan.FocalSeam, Place: finding.Place{Run: "run", Wall: "A", X: &x}})
	}
	e.findings()
	marks := e.scene.Layer("marks").Items
	if len(marks) != 6 {
		t.Fatalf("%d marks, want 6", len(marks))
	}
	for i, a := range marks {
		if !e.reach.Grown(mm).Contains(a.Box()) {
			t.Errorf("mark %d leaves the wall", i+1)
		}
		for j, b := range marks[:i] {
			if a.Box().Overlaps(b.Box()) {
				t.Errorf("marks %d and %d overlap", i+1, j+1)
			}
		}
	}
}

func TestSpotOfAnOpening(t *testing.T) {
	e := begun(t, "A 3000x2400 window(800+1200 900+1100)", 0)
	got := e.spot(finding.Place{Wall: "A", Opening: "window"})
	if want := (geom.Point{X: 70 * mm, Y: 100 * mm}); got != want { // the middle of its head
		t.Errorf("%v, want %v", got, want)
	}
}
