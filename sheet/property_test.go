package sheet

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/words"
)

// anyRun draws a run of two walls with openings, slopes and leans.
func anyRun(t *rapid.T) *room.Run {
	n := func(name string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name) }
	var text strings.Builder
	for i, name := range []string{"A", "B"} {
		w, h := n("width", 300, 6000), n("height", 1500, 3200)
		if i > 0 {
			fmt.Fprintf(&text, " %s%d,%d ", rapid.SampledFrom([]string{"|", ">"}).Draw(t, "corner"), n("lean", -20, 20), n("lean", -20, 20))
		}
		fmt.Fprintf(&text, "%s %dx%d/%d", name, w, h, n("other height", 1500, 3200))
		if at := n("opening", 0, w-100); n("has opening", 0, 1) == 1 {
			wide := n("opening's width", 60, min(1800, w-at))
			fmt.Fprintf(&text, " window(%d+%d %d+%d)", at, wide, n("sill", 0, 800), n("opening's height", 100, 1200))
		}
	}
	run := roomtext.Run(text.String())
	for range n("fittings", 0, 4) {
		run.Walls[0].Fittings = append(run.Walls[0].Fittings, room.Fitting{
			Name: "double socket", At: geom.Point{X: measure.Length(n("x", 0, 300)) * mm, Y: measure.Length(n("y", 0, 1400)) * mm},
			Size: geom.Point{X: 140 * mm, Y: 80 * mm},
		})
	}
	return run
}

func anyPaper(t *rapid.T) *paper.Paper {
	p := &paper.Paper{Name: "Quince", Width: measure.Length(rapid.IntRange(400, 1060).Draw(t, "paper")) * mm, RollLength: 25 * measure.Metre, Pack: 1}
	if p.Repeat = measure.Length(rapid.SampledFrom([]int{0, 5, 90, 320, 640}).Draw(t, "repeat")) * mm; p.Repeat > 0 {
		p.Match = paper.Match{Kind: paper.Offset, Num: 1, Den: 2, Reversing: rapid.Bool().Draw(t, "reversing")}
		if rapid.Bool().Draw(t, "motif") {
			p.Motif = &paper.Motif{Axis: p.Width / 3, Head: p.Repeat / 4}
		}
	}
	return p
}

// Whatever the room: no word covers another and no line runs through a
// figure, all stand on the page, and every piece carries its name.
func TestAnyWallCanBeRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, label := anyRun(t), anyPaper(t)
		h, err := hanging.New(run, label, hanging.DefaultRules())
		if err != nil {
			t.Skip(err)
		}
		l, err := h.Layout(hanging.Choice{Start: hanging.Start{X: -measure.Length(rapid.IntRange(0, 200).Draw(t, "start")) * mm}})
		if err != nil {
			t.Skip(err)
		}
		p := &plan.Plan{Runs: []plan.RunPlan{{Layout: l}}}
		for range rapid.IntRange(0, 5).Draw(t, "findings") {
			x := measure.Length(rapid.IntRange(0, 900).Draw(t, "at")) * mm
			p.Findings = append(p.Findings, finding.Finding{Code: plan.FocalSeam, Place: finding.Place{Run: "run", Wall: "A", X: &x}})
		}
		o := Options{
			System: measure.System(rapid.IntRange(0, 1).Draw(t, "system")),
			Lang:   words.For(rapid.SampledFrom(words.Languages()).Draw(t, "language")),
		}
		for wall := range run.Walls {
			legible(t, Wall(p, 0, wall, o), l, wall)
		}
	})
}

func legible(t *rapid.T, s *draw.Scene, l *hanging.Layout, wall int) {
	var all, figures []draw.Text
	var strokes []draw.Line
	names := map[string]bool{}
	s.Walk(func(layer string, it draw.Item) {
		if !s.Window.Contains(it.Box()) && layer != "openings" && layer != "fittings" {
			t.Fatalf("a %T in %s leaves the page: %v, %v", it, layer, it.Box(), s.Window)
		}
		if line, ok := it.(draw.Line); ok && (layer == "seams" || layer == "plumbs" || layer == "sizes" || layer == "design") {
			strokes = append(strokes, line)
		}
		text, ok := it.(draw.Text)
		if !ok {
			return
		}
		if layer == "sizes" || layer == "numbers" || layer == "turns" || layer == "plumbs" {
			figures = append(figures, text)
		}
		if layer == "numbers" {
			names[text.Text] = true
		}
		for _, other := range all {
			if text.Box().Grown(-mm / 10).Overlaps(other.Box().Grown(-mm / 10)) {
				t.Fatalf("%q covers %q", text.Text, other.Text)
			}
		}
		all = append(all, text)
	})
	for _, text := range figures {
		for _, line := range strokes {
			if sliver(line).Overlaps(text.Box().Grown(-mm / 4)) {
				t.Fatalf("a line %v runs through %q %v", line.Points, text.Text, text.Box())
			}
		}
	}
	for i := range l.Pieces {
		if piece := &l.Pieces[i]; piece.Return == nil && l.PieceWall(piece) == wall && !names[piece.Name] {
			t.Fatalf("piece %s has no name on its wall", piece.Name)
		}
	}
}
