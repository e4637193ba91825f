package plan

import (
	"slices"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Goods whose seams show, such as grasscloth, are hung in panels of one width, so that
// the seams look meant: a wall is divided evenly, and every panel is cut to that width
// off both edges of the roll. Nothing is left over at the ends.
//
//	full width                 equal panels
//	┌────┬────┬────┬────┬─┐    ┌───┬───┬───┬───┬───┐
//	│    │    │    │    │ │    │   │   │   │   │   │
//	└────┴────┴────┴────┴─┘    └───┴───┴───┴───┴───┘
//
// That takes as many panels as full widths would, or a few more where seams then stand
// better: how many is searched, and what weighs least is taken.

// Panels asks for panels of one width over a run: an open one whose walls are joined by
// outside corners that are plumb, in a paper with a free match.
type Panels struct {
	Trim measure.Length // what is cut off either edge of the paper at the least
}

// EqualPanels is the finding that tells into how many panels of what width a run is
// divided.
const EqualPanels finding.Code = "equal_panels"

// mostPanels is how many panels more than the fewest are tried.
const mostPanels = 6

// panelled lays run i out in equal panels: in as many as weigh least.
func (p *Plan) panelled(i int) (best laid, err error) {
	if known, ok := p.session.panelled(p, i); ok {
		return known, nil
	}
	rt, label := &p.Task.Runs[i], &p.Task.Papers[p.Task.Runs[i].Paper]
	x := panelStretch(rt)
	usable := label.Width - 2*rt.Panels.Trim
	fewest := max(1, int((x.Length()+usable-1)/usable))
	var refusal error
	for n := fewest; n <= fewest+mostPanels; n++ {
		s, err := p.panelSearch(i, x, measure.Length(n))
		if err == nil {
			var found candidate
			if found, err = s.find(); err == nil {
				if next := (laid{s, found}); best.s == nil || next.total() < best.total() {
					best = next
				}
				continue
			}
		}
		if refusal == nil {
			refusal = err
		}
	}
	if best.s == nil {
		return best, refusal
	}
	p.session.keep(p, i, nil, best.s, &best.best)
	return best, nil
}

// panelSearch prepares the search of a run in n panels that together cover x: of a
// paper as wide as a panel, from the left end on.
func (p *Plan) panelSearch(i int, x geom.Interval, n measure.Length) (*search, error) {
	task := *p.Task
	task.Papers, task.Runs = slices.Clone(task.Papers), slices.Clone(task.Runs)
	rt := &task.Runs[i]
	label := &task.Papers[rt.Paper]
	width := (x.Length() + n - 1) / n
	label.DryWidth = label.DryWidth.Scaled(int64(width), int64(label.Width))
	label.Width = width
	rt.Fixed.Start = &hanging.Start{X: x.Lo}
	sub := *p
	sub.Task = &task
	return sub.newSearch(i, nil)
}

// panelStretch returns what equal panels of a run have to cover, from the left end of
// its first wall: all walls, and as far beyond them as the ends lean outwards.
func panelStretch(rt *RunTask) (x geom.Interval) {
	run := rt.Run
	for i := range run.Walls {
		x.Hi += run.Walls[i].Width
	}
	left, _ := run.LeanAt(0)
	_, right := run.LeanAt(len(run.Walls) - 1)
	return geom.Interval{Lo: min(0, left), Hi: x.Hi + max(0, right)}
}

// isPanelled reports whether a run is hung in equal panels. One whose start is fixed
// is not: it is asked what full widths from there would come to.
func (rt *RunTask) isPanelled() bool { return rt.Panels != nil && rt.Fixed.Start == nil }

// PanelTrim returns what is cut off either edge of the paper for the panels of run i; 0
// where drops are hung as wide as they come.
func (p *Plan) PanelTrim(i int) measure.Length {
	return (p.Task.Papers[p.Task.Runs[i].Paper].Width - p.Runs[i].Layout.Paper.Width) / 2
}

// raisePanels tells of the panels of run i.
func (p *Plan) raisePanels(i int) {
	rt, l := &p.Task.Runs[i], p.Runs[i].Layout
	if !rt.isPanelled() {
		return
	}
	full := p.Task.Papers[rt.Paper].Width
	for w := range rt.Run.Walls {
		p.Findings = append(p.Findings, finding.Finding{
			Code: EqualPanels, Severity: finding.Note, Count: len(l.Drops),
			Place: finding.Place{Run: rt.Run.Name, Wall: rt.Run.Walls[w].Name},
			Sizes: []finding.Size{size("width", l.Paper.Width), size("trim", p.PanelTrim(i)), size("full", full)},
		})
	}
}
