package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"time"

	"firstdrop/audit"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// searching compares the search for a layout with one that does nothing clever,
// with the audit of what it finds, and with itself in rooms of more walls.
func searching() ([]Figure, error) {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil {
		return nil, err
	}
	var all []Figure
	for _, file := range files {
		task, err := taskOf(file)
		if err != nil {
			return nil, err
		}
		fs, err := searchFigures(filepath.Base(file), task)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		all = append(all, fs...)
	}
	fs, err := usual()
	if err != nil {
		return nil, err
	}
	all = append(all, fs...)
	fs, err = growth()
	return append(all, fs...), err
}

// usualRooms is how many made-up rooms are planned that are as most rooms.
const usualRooms = 100

// usual times plans of made-up rooms as most are, and their audits.
func usual() ([]Figure, error) {
	var ratios, times []float64
	settled := 0.0
	for seed := range usualRooms {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		task := &plan.Task{
			Runs: []plan.RunTask{{Run: anyroom.UsualRoom(r)}}, Papers: []paper.Paper{anyroom.UsualPaper(r)},
			Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: measure.Millimetre,
		}
		var p *plan.Plan
		planMS, err := medianOf(3, func() (err error) { p, err = plan.Make(task); return err })
		if err != nil {
			return nil, fmt.Errorf("usual room %d: %w", seed, err)
		}
		auditMS, _ := median(func() error { audit.Plan(p); return nil })
		ratios, times = append(ratios, planMS/auditMS), append(times, planMS)
		if p.Runs[0].Settled() {
			settled++
		}
	}
	slices.Sort(ratios)
	slices.Sort(times)
	name := fmt.Sprintf("%d usual rooms", usualRooms)
	return []Figure{
		{Name: "plan ÷ audit, median of " + name, Value: ratios[usualRooms/2], Unit: "×", Goal: 100},
		{Name: "plan ÷ audit, nine in ten of " + name, Value: ratios[usualRooms*9/10], Unit: "×"},
		{Name: "plan, median of " + name, Value: times[usualRooms/2], Unit: "ms"},
		{Name: "plan, slowest of " + name, Value: times[usualRooms-1], Unit: "ms"},
		{Name: "settled of " + name, Value: settled, Goal: usualRooms, AtLeast: true},
	}, nil
}

// taskOf reads a job.
func taskOf(file string) (*plan.Task, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	j, err := yaml.Read(file, data)
	if err != nil {
		return nil, err
	}
	return j.Task()
}

// searchFigures measures one task.
func searchFigures(name string, task *plan.Task) ([]Figure, error) {
	var p *plan.Plan
	planMS, err := median(func() (err error) { p, err = plan.Make(task); return err })
	if err != nil {
		return nil, err
	}
	auditMS, _ := median(func() error { audit.Plan(p); return nil })
	dragMS, err := dragged(p)
	if err != nil {
		return nil, err
	}
	settled := 0.0
	for i := range p.Runs {
		if p.Runs[i].Settled() {
			settled++
		}
	}
	all := []Figure{
		{Name: "plan ÷ audit " + name, Value: planMS / auditMS, Unit: "×", Goal: 100},
		{Name: "moved start ÷ audit " + name, Value: dragMS / auditMS, Unit: "×", Goal: 5},
		{Name: "runs settled " + name, Value: settled, Goal: float64(len(p.Runs)), AtLeast: true},
	}
	if slow, worse, ok := reference(p); ok {
		all = append(all,
			Figure{Name: "1 mm reference ÷ plan " + name, Value: slow.all / planMS, Unit: "×", Goal: 50, AtLeast: true},
			Figure{Name: "the same, starts within a width of a corner alone, " + name, Value: slow.near / planMS, Unit: "×"},
			Figure{Name: "least weight that the reference found ÷ that of the plan " + name, Value: worse, Unit: "×", Goal: 1, AtLeast: true})
	}
	return all, nil
}

// dragged plans again, in one session, as the start of the first run is dragged
// along its wall millimetre by millimetre, and returns the median time. The plans
// must be those from scratch.
func dragged(p *plan.Plan) (float64, error) {
	s := plan.NewSession()
	start := p.Runs[0].Layout.Choice.Start
	at := func(dx int) *plan.Task {
		task := *p.Task
		task.Runs = append([]plan.RunTask(nil), task.Runs...)
		moved := hanging.Start{Wall: start.Wall, X: start.X + measure.Length(dx)*measure.Millimetre}
		task.Runs[0].Fixed.Start, task.Runs[0].Fixed.Centre = &moved, nil
		return &task
	}
	dx := 0
	if _, err := s.Plan(at(dx)); err != nil {
		return 0, err
	}
	var last *plan.Plan
	ms, err := median(func() (err error) { dx++; last, err = s.Plan(at(dx)); return err })
	if err != nil {
		return 0, err
	}
	scratch, err := plan.Make(at(dx))
	if err != nil {
		return 0, err
	}
	a, _ := json.Marshal(last.Document("job"))
	b, _ := json.Marshal(scratch.Document("job"))
	if !bytes.Equal(a, b) {
		return 0, fmt.Errorf("a plan with a moved start differs from the same from scratch")
	}
	return ms, nil
}

// Of so many starts the reference tries one, and its time is multiplied by as many; of
// fewer where each is tried with few kill places.
const (
	sampleEvery     = 101
	sampleFewEvery  = 7
	fewWithEachTime = 8
)

// referenceMS is what the reference takes, in milliseconds: for all starts, and for those
// within a width of the left end of their wall. The others are the same layouts once more,
// unless the kill seam stands on their wall too; but that is a thing to find out, and the
// reference is to know nothing.
type referenceMS struct{ all, near float64 }

// reference times laying out in full, cutting from rolls and weighing every millimetre of
// start on every wall with every inside corner as kill place, lapped from either side, and
// every opening, its middle alone, without a new drop, with one, and with two in inside
// corners: one start in 101 of them, or in 7, times as many. That is what the search tries,
// but for the other places over openings and other ways to set crooked walls. It also returns
// how many times the weight of the plan's layouts the least has that it has found. It is left
// out for jobs that fix something, ask for equal panels, which are no such layouts, or have
// rolls of several kinds.
func reference(p *plan.Plan) (ms referenceMS, worse float64, ok bool) {
	task := p.Task
	found, planned := int64(0), int64(0)
	for i := range task.Runs {
		rt := &task.Runs[i]
		label := &task.Papers[rt.Paper]
		if !reflect.DeepEqual(rt.Fixed, plan.Fixed{}) || rt.Panels != nil || len(label.Rolls) > 0 || label.InOrder {
			return ms, 0, false
		}
		scale, err := p.Scale(i)
		if err != nil {
			return ms, 0, false
		}
		least, kills, every := int64(math.MaxInt64), referenceKills(rt.Run), measure.Length(sampleEvery)
		if len(kills)*len(referenceNewDrops(rt.Run, kills[0])) <= fewWithEachTime {
			every = sampleFewEvery
		}
		for wall := range rt.Run.Walls {
			for x := measure.Length(0); x < rt.Run.Walls[wall].Width; x += every * measure.Millimetre {
				begin := time.Now()
				for _, k := range kills {
					for _, renewed := range referenceNewDrops(rt.Run, k) {
						weight, err := scale.Weigh(hanging.Choice{Start: hanging.Start{Wall: wall, X: x}, Kill: k, NewDrop: renewed})
						if err == nil {
							least = min(least, weight)
						}
					}
				}
				took := float64(every) * time.Since(begin).Seconds() * 1000
				if ms.all += took; x < label.Width {
					ms.near += took
				}
			}
		}
		found, planned = found+least, planned+p.Runs[i].Score
	}
	return ms, float64(found) / float64(planned), true
}

// referenceKills lists the kill places of a run.
func referenceKills(run *room.Run) (kills []hanging.Kill) {
	if !run.Closed {
		return []hanging.Kill{{}}
	}
	for i := range run.Walls {
		if run.Corners[i].Kind == room.Inside {
			kills = append(kills,
				hanging.Kill{Kind: hanging.AtCorner, Wall: i, Lap: hanging.Left}, hanging.Kill{Kind: hanging.AtCorner, Wall: i, Lap: hanging.Right})
		}
		for o := range run.Walls[i].Openings {
			x, _ := run.Walls[i].Openings[o].Outline.Bounds()
			kills = append(kills, hanging.Kill{Kind: hanging.OnWall, Wall: i, X: (x.Lo + x.Hi) / 2})
		}
	}
	return kills
}

// referenceNewDrops lists no corner, each inside corner but that of the kill seam, and
// each two of them.
func referenceNewDrops(run *room.Run, kill hanging.Kill) (sets [][]int) {
	sets = [][]int{nil}
	for corner := range run.Corners {
		if run.Corners[corner].Kind != room.Inside || kill.Kind == hanging.AtCorner && kill.Wall == corner {
			continue
		}
		for _, set := range sets[:len(sets):len(sets)] {
			if len(set) < 2 {
				sets = append(sets, append(set[:len(set):len(set)], corner))
			}
		}
	}
	return sets
}

// growth times halls of 8, 16, 32 and 64 walls in one paper, and compares how the
// time grows from each to the next, and from the first to the last, with n log n.
func growth() (all []Figure, err error) {
	first, before := 0.0, 0.0
	halls := []int{8, 16, 32, 64}
	ratio := func(from, to int, grown float64) Figure {
		nLogN := float64(to) * math.Log(float64(to)) / (float64(from) * math.Log(float64(from)))
		return Figure{Name: fmt.Sprintf("time from %d to %d walls ÷ growth of n log n", from, to), Value: grown / nLogN, Unit: "×", Goal: 1}
	}
	for _, walls := range halls {
		task := hallOf(walls)
		ms, err := median(func() error { _, err := plan.Make(task); return err })
		if err != nil {
			return nil, err
		}
		all = append(all, Figure{Name: fmt.Sprintf("plan a hall of %d walls", walls), Value: ms, Unit: "ms"})
		if before > 0 {
			all = append(all, ratio(walls/2, walls, ms/before))
		} else {
			first = ms
		}
		before = ms
	}
	return append(all, ratio(halls[0], halls[len(halls)-1], before/first)), nil
}

// hallOf is a closed hall of so many walls in a half drop, with a window in every
// second and a door in every fourth.
func hallOf(walls int) *plan.Task {
	const mm = measure.Millimetre
	run := &room.Run{Name: "hall", Closed: true}
	for i := range walls {
		width := 2500*mm + measure.Length(i%5)*185*mm
		w := room.Wall{
			Name: fmt.Sprint("W", i), Width: width,
			Outline: geom.Ring{{}, {X: width}, {X: width, Y: 2600 * mm}, {Y: 2600 * mm}},
		}
		switch i % 4 {
		case 1:
			w.Openings = append(w.Openings, opening(room.Door, 700*mm, 900*mm, 0, 2050*mm))
		case 0, 2:
			w.Openings = append(w.Openings, opening(room.Window, 800*mm, 1000*mm, 900*mm, 1300*mm))
		}
		run.Walls = append(run.Walls, w)
		run.Corners = append(run.Corners, room.Corner{Angle: 90 * measure.Degree})
	}
	task := longRoom()
	task.Runs[0].Run = run
	return task
}
