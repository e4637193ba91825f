package main

import (
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"time"

	"firstdrop/audit"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// runs is how often each thing is timed.
const runs = 7

// planning times the plan and the audit of every example and of a room with
// 200 drops.
func planning() ([]Figure, error) {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("no examples here: run from the repository's root (%v)", err)
	}
	var all []Figure
	for _, file := range files {
		task, err := taskOf(file)
		if err != nil {
			return nil, err
		}
		fs, err := timed(filepath.Base(file), task, 250, 50_000)
		if err != nil {
			return nil, err
		}
		all = append(all, fs...)
	}
	fs, err := timed("room with 200 drops", longRoom(), 2500, 200_000)
	return append(all, fs...), err
}

// certainty times the curve of 10 000 simulated jobs, and the cliffs, against
// one plan of the sample room.
func certainty() ([]Figure, error) {
	const sample = "examples/door-and-windows.yaml"
	task, err := taskOf(sample)
	if err != nil {
		return nil, err
	}
	var p *plan.Plan
	planMS, err := median(func() (err error) { p, err = plan.Make(task); return err })
	if err != nil {
		return nil, err
	}
	curveMS, err := median(func() error { _, err := p.Certainty(0, 0, p.Chances(0), 10_000, 1); return err })
	if err != nil {
		return nil, err
	}
	cliffsMS, err := median(func() error { _, err := p.Cliffs(0, 0); return err })
	return []Figure{
		{Name: "certainty of 10 000 jobs ÷ one plan", Value: curveMS / planMS, Unit: "×", Goal: 50},
		{Name: "cliffs ÷ one plan", Value: cliffsMS / planMS, Unit: "×", Goal: 10},
	}, err
}

// timed plans and audits one task. The goals are for the plan, in milliseconds,
// and for the memory it allocates on the way, in KiB.
func timed(name string, task *plan.Task, goal, memory float64) ([]Figure, error) {
	var p *plan.Plan
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	planMS, err := median(func() (err error) { p, err = plan.Make(task); return err })
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	runtime.ReadMemStats(&after)
	auditMS, err := median(func() error {
		if vs := audit.Plan(p); len(vs) > 0 {
			return fmt.Errorf("%s does not pass audit: %v", name, vs[0])
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	drops := 0
	for i := range p.Papers {
		drops += p.Papers[i].Drops
	}
	return []Figure{
		{Name: "plan " + name, Value: planMS, Unit: "ms", Goal: goal},
		{Name: "audit " + name, Value: auditMS, Unit: "ms"},
		{Name: "drops " + name, Value: float64(drops), Unit: ""},
		{Name: "memory allocated " + name, Value: float64(after.TotalAlloc-before.TotalAlloc) / runs / 1024, Unit: "KiB", Goal: memory},
	}, nil
}

// median returns the median time of several runs in milliseconds.
func median(do func() error) (float64, error) { return medianOf(runs, do) }

// medianOf returns the median time of so many runs in milliseconds.
func medianOf(runs int, do func() error) (float64, error) {
	var ms []float64
	for range runs {
		begin := time.Now()
		if err := do(); err != nil {
			return 0, err
		}
		ms = append(ms, float64(time.Since(begin).Microseconds())/1000)
	}
	slices.Sort(ms)
	return ms[len(ms)/2], nil
}

// longRoom is a hall of 106 m girth with sixteen walls, four doors and eight
// windows, in a half drop: 200 drops and some more.
func longRoom() *plan.Task {
	const m, mm = measure.Metre, measure.Millimetre
	run := &room.Run{Name: "hall", Closed: true}
	for i := range 16 {
		width := 5*m + measure.Length(i%4)*1085*mm
		w := room.Wall{
			Name: string(rune('A' + i)), Width: width,
			Outline: geom.Ring{{}, {X: width}, {X: width, Y: 2750 * mm}, {Y: 2750 * mm}},
		}
		if i%4 == 1 {
			w.Openings = append(w.Openings, opening(room.Door, 1200*mm, 900*mm, 0, 2050*mm))
		}
		if i%2 == 0 {
			w.Openings = append(w.Openings, opening(room.Window, 2*m, 1400*mm, 900*mm, 1300*mm))
		}
		run.Walls = append(run.Walls, w)
		run.Corners = append(run.Corners, room.Corner{Angle: 90 * measure.Degree})
	}
	return &plan.Task{
		Runs: []plan.RunTask{{Run: run}},
		Papers: []paper.Paper{{
			Name: "half drop", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 640 * mm, Pack: 1,
			Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 2},
		}},
		Rules: hanging.DefaultRules(),
		Taste: plan.DefaultTaste(),
	}
}

func opening(kind room.OpeningKind, x, width, y, height measure.Length) room.Opening {
	return room.Opening{Name: "opening", Kind: kind, Outline: geom.Ring{
		{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + height}, {X: x, Y: y + height},
	}}
}
