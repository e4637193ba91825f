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
	entries := j.Entries(p.Task)
	if n := len(entries); n == 0 || entries[n-1] != len(hangs)-1 {
		return fmt.Errorf("the plan has %d runs, which are not those of the %d entries of the job", len(p.Runs), len(hangs))
	}
	for i, k := range entries {
		if hangs[k].Lining == "" && hangs[k].Panels == "" { // linings follow the others; panels are as they are
			hangs[k].take(p.Runs[i].Layout)
		}
	}
	j.Hang = hangs
	return nil
}

// Entries tells of each run of a task that the job has made by which entry of Hang it
// hangs. Equal panels hang in several runs, from inside corner to inside corner, and so
// does a lining across, wall by wall. Runs of another job have no entries.
func (j *Job) Entries(t *plan.Task) (entries []int) {
	hangs, walls := j.hangs(), 0
	for i, k := 0, 0; i < len(t.Runs) && k < len(hangs); i++ {
		entries = append(entries, k)
		all := len(hangs[k].Walls)
		if all == 0 {
			all = len(j.Room.Walls)
		}
		if walls += len(t.Runs[i].Run.Walls); walls >= all {
			k, walls = k+1, 0
		}
	}
	return entries
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
