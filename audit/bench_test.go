package audit_test

import (
	"strings"
	"testing"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
)

// Plans of an ordinary room by hand: 14 drops of one length, straight walls.
func BenchmarkPlan(b *testing.B) {
	p := plans["four walls"](b)
	for b.Loop() {
		if vs := audit.Plan(p); len(vs) > 0 {
			b.Fatal(vs[0])
		}
	}
}

// A crooked room in a half drop with door, two windows with returns, a chimney
// breast and a sloping ceiling, as hanging lays it out.
func BenchmarkLayout(b *testing.B) {
	run := roomtext.Run("closed: A 4200x2400 door(300+800 0+2000) |0,4 B 1400x2400 > C 350x2400 > D 1500x2400 > E 350x2400 |" +
		" F 900x2400 |-3,2 G 4200x2400 window(700+1100 900+1200 120) window(2500+1100 900+1200 120) | H 3000x2400/1800 |")
	h, err := hanging.New(run, &halfDrop, hanging.DefaultRules())
	if err != nil {
		b.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{
		Start: hanging.Start{Wall: 3, X: 485 * mm}, Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: 7, Lap: hanging.Right},
	})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		audit.Layout(l)
	}
	b.ReportMetric(float64(len(l.Drops)), "drops")
}

// A run of two thousand walls, some eight thousand drops.
func BenchmarkLongRun(b *testing.B) {
	const bay = "A 3000x2400 | B 900x2400 > C 1500x2400 > D 900x2400 | "
	run := roomtext.Run(strings.Repeat(bay, 500) + "E 1000x2400")
	h, err := hanging.New(run, &halfDrop, hanging.DefaultRules())
	if err != nil {
		b.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{Start: hanging.Start{X: 100 * mm}})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		audit.Layout(l)
	}
	b.ReportMetric(float64(len(l.Drops)), "drops")
}

// Pieces of thirteen lengths and phases, proven by the solver.
func BenchmarkCutting(b *testing.B) {
	spec := cutting.Spec{Repeat: 640 * mm, Roll: cutting.Roll{Length: 10050 * mm}}
	for i := range measure.Length(40) {
		spec.Pieces = append(spec.Pieces, cutting.Piece{Length: 2500*mm - i%13*150*mm, Phase: i % 4 * 160 * mm})
	}
	problem, err := cutting.NewProblem(spec)
	if err != nil {
		b.Fatal(err)
	}
	s := cutting.Solve(problem, cutting.Options{})
	for b.Loop() {
		if vs := audit.Cutting(s); len(vs) > 0 {
			b.Fatal(vs[0])
		}
	}
}
