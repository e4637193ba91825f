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

// telling returns what a task tells its progress; nil where nobody wants to know.
func (p *Planner) telling() func(plan.Part, int, int) {
	if p.Progress == nil {
		return nil
	}
	return func(part plan.Part, done, of int) { p.Progress(Progress{Counted(part), done, of}) }
}
