package screen

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"firstdrop/plan"
)

// Comparing papers tells before each how many are done.
func TestPapersTellProgress(t *testing.T) {
	document := examples(t)["plain-room.yaml"]
	var j struct{ Papers []json.RawMessage }
	if err := json.Unmarshal(document, &j); err != nil {
		t.Fatal(err)
	}
	p, told := New(), []Progress(nil)
	p.Progress = func(far Progress) {
		if far.What == CountedPapers {
			told = append(told, far)
		}
	}
	p.Answer(Request{Kind: AskPapers, Job: document, Paper: paperName(t, "plain-room.yaml"), Papers: []json.RawMessage{j.Papers[0], j.Papers[0]}})
	parts := cmpopts.IgnoreFields(Progress{}, "Whole")
	if !cmp.Equal(told, []Progress{{What: CountedPapers, Of: 2}, {What: CountedPapers, Done: 1, Of: 2}}, parts) || told[1].Whole <= told[0].Whole {
		t.Error(told)
	}
}

// Every part that planning tells of is one that the screen knows.
func TestScreenKnowsParts(t *testing.T) {
	known := []Counted{CountedStarts, CountedChoices, CountedWays, CountedLayouts, CountedJobs, CountedSizes}
	for i, part := range plan.Parts {
		if Counted(part) != known[i] {
			t.Errorf("%q is %q on the screen", part, known[i])
		}
	}
	if len(known) != len(plan.Parts) {
		t.Errorf("%d parts, %d known", len(plan.Parts), len(known))
	}
}

// Whatever takes a while tells how far it is, never backwards within a part of one
// piece of work, never that all is done; and answers what it would answer untold.
func TestWorkTellsProgress(t *testing.T) {
	for _, q := range []struct {
		job  string
		ask  Kind
		want []Counted
	}{
		{"tall-room.yaml", AskPlan, []Counted{CountedStarts}},
		{"crooked-ceiling.yaml", AskPlan, []Counted{CountedWays}},
		{"plain-room.yaml", AskAlternatives, []Counted{CountedStarts, CountedLayouts}},
		{"plain-room.yaml", AskCertainty, []Counted{CountedJobs}},
		{"half-drop.yaml", AskCliffs, []Counted{CountedSizes}},
	} {
		r := Request{Kind: q.ask, Job: examples(t)[q.job], Jobs: 200}
		p, told := New(), []Progress(nil)
		p.Progress = func(far Progress) { told = append(told, far) }
		a := p.AnswerJSON(encodedRequest(t, r))
		for i, far := range told {
			if far.Done < 0 || far.Done > far.Of || far.Of < 1 {
				t.Fatalf("%s, %s: %+v", q.job, q.ask, far)
			}
			if i > 0 && far.What == told[i-1].What && far.Done < told[i-1].Done && far.Done > 0 {
				t.Errorf("%s, %s: from %+v to %+v", q.job, q.ask, told[i-1], far)
			}
		}
		for _, what := range q.want {
			if !slices.ContainsFunc(told, func(far Progress) bool { return far.What == what && far.Of > 1 }) {
				t.Errorf("%s, %s tells nothing of %s", q.job, q.ask, what)
			}
		}
		if untold := New().AnswerJSON(encodedRequest(t, r)); !bytes.Equal(a, untold) {
			t.Errorf("%s, %s: another answer when nobody listens", q.job, q.ask)
		}
	}
}

// The whole of a question only goes forward and is never said to be done, for every example
// and whatever is asked. In the one that takes longest it comes more than half the way.
func TestWholeGoesForward(t *testing.T) {
	for name, document := range examples(t) {
		kinds := []Kind{AskPlan}
		switch name {
		case "attic.yaml", "crooked-ceiling.yaml":
			kinds = append(kinds, AskAlternatives)
		case "dado.yaml", "lined-room.yaml":
			kinds = append(kinds, AskAlternatives, AskCertainty, AskCliffs)
		}
		for _, kind := range kinds {
			p, last := New(), -1.
			p.Progress = func(far Progress) {
				if far.Whole < last || far.Whole >= 1 {
					t.Fatalf("%s, %s: %+v after %v", name, kind, far, last)
				}
				last = far.Whole
			}
			p.Answer(Request{Kind: kind, Job: document, Most: 5, Jobs: 200})
			if name == "attic.yaml" && last < 0.5 {
				t.Errorf("%s, %s: the answer comes at %.2f of the way", name, kind, last)
			}
		}
	}
}

// A part that is passed by, one that nobody expected, and one that begins again all bring
// the whole forward.
func TestWay(t *testing.T) {
	w := way{coming: []stretch{{CountedStarts, 4}, {CountedChoices, 5}, {CountedJobs, 10}}}
	for _, step := range []struct {
		what     Counted
		done, of int
		want     float64
	}{
		{CountedStarts, 0, 2, 0},
		// Of 4 + 5 + 10, and 1 of which nobody tells.
		{CountedStarts, 1, 2, 0.1},
		// Choices did not come: of what was left, 5 + 10 + 1, they are passed by.
		{CountedJobs, 0, 10, 0.1 + 0.9*5/16},
		{CountedJobs, 5, 10, 0.1 + 0.9*10/16},
		// Nobody expected sizes: half of what is left.
		{CountedSizes, 0, 10, 0.6625},
		{CountedSizes, 5, 10, 0.6625 + 0.3375/4},
	} {
		if got := w.reached(step.what, step.done, step.of); math.Abs(got-step.want) > 1e-12 {
			t.Errorf("%+v: %v", step, got)
		}
	}
	at := w.at
	for _, far := range []struct {
		what     Counted
		done, of int
	}{{CountedJobs, 9, 10}, {CountedSizes, 0, 3}, {CountedSizes, 2, 3}, {CountedSizes, 0, 3}, {CountedSizes, 2, 3}, {CountedStarts, 3, 3}} {
		if next := w.reached(far.what, far.done, far.of); next < at || next >= 1 {
			t.Errorf("%+v: from %v to %v", far, at, next)
		} else {
			at = next
		}
	}
}
