package screen

import (
	"math"
	"slices"

	"firstdrop/paper"
	"firstdrop/plan"
)

// Progress says how far the work on a question is: how much of the part that is under way
// is done, and how much of the whole.
type Progress struct {
	What Counted `json:"what"`
	Done int     `json:"done"` // below Of
	Of   int     `json:"of"`
	// Whole is how much of all that a question asks for is done, from 0 to below 1. Of one
	// question it never falls. It is a guess: no part knows beforehand how long it takes.
	Whole float64 `json:"whole"`
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
		t.Progress = func(part plan.Part, done, of int) { p.progress(Counted(part), done, of) }
	}
}

// progress tells how far the work is, if anybody wants to know.
func (p *Planner) progress(what Counted, done, of int) {
	if p.Progress != nil && of > 0 {
		p.Progress(Progress{what, done, of, p.way.reached(what, done, of)})
	}
}

// way is the work on one question, in the parts that are expected to come one after the
// other, as far as it has gone.
//
//	starts  choices      starts      choices                              jobs
//	├──┤├──────────────┤├───────┤├──────────────────────────────────────┤├────┤┄┄┤
//	                        ▲ at
//
// What has not come when a later part begins is passed by. A part that nobody expected gets
// half of what is left. A little is left at the end, for what nobody tells of.
type way struct {
	coming   []stretch
	now      Counted
	done     int
	from, to float64 // of the part that is under way
	at       float64
}

// stretch is a part that is expected, and how long it takes, in parts of a whole search.
type stretch struct {
	what  Counted
	takes float64
}

// search is what looking for the plan of one run is made of: a first search with few new
// drops, and the whole one, of which the last part takes longest wherever planning takes
// over a second (measured on the examples).
var search = []stretch{{CountedStarts, 1}, {CountedChoices, 3}, {CountedStarts, 4}, {CountedChoices, 12}}

// unsaid is how long the work takes of which nobody tells, likewise.
const unsaid = 1

// wayTo returns the way to an answer about a task; nil: there is none.
func wayTo(kind Kind, t *plan.Task) way {
	w := way{}
	if kind == AskPapers {
		w.expect(stretch{CountedPapers, 20})
	}
	if t == nil || kind == AskPapers {
		return w
	}
	for i := range t.Runs {
		w.expect(search...)
		if l := t.Papers[t.Runs[i].Paper].Lines; l != paper.LinesUnstated && l != paper.LinesIsolated {
			w.expect(stretch{CountedWays, 20})
		}
	}
	switch kind {
	case AskWhy:
		w.expect(search...)
	case AskAlternatives:
		for range t.Runs {
			w.expect(stretch{CountedStarts, 2})
		}
		for range t.Runs {
			w.expect(stretch{CountedLayouts, 20})
		}
	case AskCertainty:
		w.expect(slices.Repeat([]stretch{{CountedJobs, 2}}, len(t.Papers))...)
	case AskCliffs:
		w.expect(slices.Repeat([]stretch{{CountedSizes, 6}}, len(t.Papers))...)
	}
	return w
}

func (w *way) expect(parts ...stretch) { w.coming = append(w.coming, parts...) }

// reached returns how far the whole is when so much of a part is done.
func (w *way) reached(what Counted, done, of int) float64 {
	if what != w.now || done < w.done {
		w.begin(what)
	}
	w.done = done
	part := float64(min(done, of)) / float64(of)
	if what == CountedChoices { // at most so many: where it takes long, a fifth of them on the examples
		part = 1 - math.Pow(1-part, 4)
	}
	w.at = max(w.at, w.from+(w.to-w.from)*part)
	return w.at
}

// begin goes to the next part of a kind.
func (w *way) begin(what Counted) {
	isIt := func(s stretch) bool { return s.what == what }
	w.now, w.from, w.to = what, w.at, w.at+(1-w.at)/2
	n := slices.IndexFunc(w.coming, isIt)
	if n < 0 {
		return
	}
	left := float64(unsaid)
	for _, s := range w.coming {
		left += s.takes
	}
	passed := 0.
	for _, s := range w.coming[:n] {
		passed += s.takes
	}
	w.from = w.at + (1-w.at)*passed/left
	w.to = w.from + (1-w.at)*w.coming[n].takes/left
	w.coming = w.coming[n+1:]
}
