package screen

import "firstdrop/plan"

// Progress says how much of a part of the work on a question is done.
type Progress struct {
	What Counted `json:"what"`
	Done int     `json:"done"` // below Of
	Of   int     `json:"of"`
}

// Counted is what the parts of some work are.
type Counted string

// What is counted: the parts that planning has, and one of the screen's own.
const (
	CountedStarts  Counted = "starts"  // of a run, tried
	CountedChoices Counted = "choices" // compared; at most so many
	CountedWays    Counted = "ways"    // to set the walls, tried
	CountedLayouts Counted = "layouts" // planned in full
	CountedJobs    Counted = "jobs"    // simulated
	CountedSizes   Counted = "sizes"   // looked at; at most so many
	CountedPapers  Counted = "papers"  // planned with
)

// attend has a task tell the planner how far it is, and ask it whether to go on; nil: there
// is none.
func (p *Planner) attend(t *plan.Task) {
	if t == nil {
		return
	}
	t.Stop = p.Stop
	if p.Progress != nil {
		t.Progress = func(part plan.Part, done, of int) { p.Progress(Progress{Counted(part), done, of}) }
	}
}
