package job

import (
	"fmt"

	"firstdrop/hanging"
	"firstdrop/plan"
)

// Take writes a plan's choices into the job: for each entry of Hang where its
// first drop stands, where the run closes, where new drops begin, the height of the
// design, and in a crooked room what walls are set to. All else stays as it is. The plan must be one of this job.
func (j *Job) Take(p *plan.Plan) error {
	hangs := append([]Hang(nil), j.hangs()...)
	if len(hangs) > len(p.Runs) {
		return fmt.Errorf("the plan has %d runs, the job hangs %d", len(p.Runs), len(hangs))
	}
	for k := range hangs {
		if hangs[k].Lining == "" && hangs[k].Panels == "" { // linings come last, and follow the others; panels are as they are
			hangs[k].take(p.Runs[k].Layout)
		}
	}
	j.Hang = hangs
	return nil
}

// take fixes a layout's choices.
func (h *Hang) take(l *hanging.Layout) {
	edge := l.Choice.Start.X
	h.Start = &Start{Wall: l.Run.Walls[l.Choice.Start.Wall].Name, Edge: &edge}
	if h.Design = nil; l.Paper.Repeat > 0 {
		design := l.Choice.Design
		h.Design = &design
	}
	h.NewDrop = nil
	for _, c := range l.Choice.NewDrop {
		h.NewDrop = append(h.NewDrop, l.Run.CornerName(c))
	}
	h.SetTo = setTaken(l)
	if h.Kill = nil; l.Run.Closed {
		h.Kill = killTaken(l)
	}
}

// killTaken names the kill seam of a layout.
func killTaken(l *hanging.Layout) *Kill {
	k := l.Choice.Kill
	if k.Kind == hanging.AtCorner {
		return &Kill{Corner: l.Run.CornerName(k.Wall), Lap: k.Lap.String()}
	}
	x := k.X
	return &Kill{Wall: l.Run.Walls[k.Wall].Name, At: &x}
}
