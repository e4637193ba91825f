package plan

// Part is a part of the work that planning, or what is asked of a plan, is made of.
type Part string

// The parts of which is told how much is done.
const (
	Starts  Part = "starts"  // of a run, each with all that follows from it
	Choices Part = "choices" // that may still beat the best, looked at more closely; at most so many
	Ways    Part = "ways"    // to set the walls of a crooked run
	Layouts Part = "layouts" // planned in full, to be offered beside the best
	Jobs    Part = "jobs"    // simulated
	Sizes   Part = "sizes"   // changed until the count of rolls is another
)

// Parts lists them.
var Parts = []Part{Starts, Choices, Ways, Layouts, Jobs, Sizes}

// tell says how much of a part is done, where somebody wants to know.
func (t *Task) tell(part Part, done, of int) {
	if t.Progress != nil && of > 0 {
		t.Progress(part, min(done, of), of)
	}
}

// telling returns a function that tells of one part; nil where nobody wants to know.
func (t *Task) telling(part Part) func(done, of int) {
	if t.Progress == nil {
		return nil
	}
	return func(done, of int) { t.tell(part, done, of) }
}

// untold returns the task without telling of its parts.
func (t *Task) untold() *Task {
	quiet := *t
	quiet.Progress = nil
	return &quiet
}

// How often a search tells: each time so many starts or choices have been looked at,
// so that telling takes no time worth measuring.
const (
	startsTold  = 16
	choicesTold = 512
)

// tellStarts tells how many starts have been tried. Of ways to set the walls only the
// ways are told.
func (s *search) tellStarts(done int) {
	if done%startsTold == 0 && !s.rival {
		s.task.tell(Starts, done, len(s.starts))
	}
}

// tellChoices tells how many choices have been looked at, and how many may have to be.
func (s *search) tellChoices(done int) {
	if done%choicesTold != 0 || s.rival || s.task.Progress == nil {
		return
	}
	left := 0
	for i := range s.open {
		if !s.isBeaten(s.open[i].bound) {
			left++
		}
	}
	s.task.tell(Choices, done, done+left)
}
