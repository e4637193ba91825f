package job_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstdrop/geom"
	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/plan"
)

// fixing is the plain room with a start on wall B and more that is decided.
func fixing(t *testing.T, change func(*job.Hang)) *job.Job {
	j := example(t, "plain-room.yaml")
	edge := 300 * mm
	h := job.Hang{Paper: j.Papers[0].Name, Start: &job.Start{Wall: "B", Edge: &edge}}
	change(&h)
	j.Hang = []job.Hang{h}
	return j
}

func TestCornersSeamsAndHungWallsAreFixed(t *testing.T) {
	got := task(t, fixing(t, func(h *job.Hang) {
		h.NewDrop, h.Carry, h.Hung = []string{"A|B", "D|A"}, []string{"B|C"}, []string{"B"}
		h.KeepOff = []job.KeepOff{{Wall: "C", From: 100 * mm, To: 200 * mm}}
	})).Runs[0].Fixed
	want := plan.Fixed{
		Start: got.Start, NewDrop: []int{0, 3}, Carry: []int{1}, Hung: []int{1},
		KeepOff: []plan.WallStretch{{Wall: 2, X: geom.Interval{Lo: 100 * mm, Hi: 200 * mm}}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestWhatCannotBeFixedIsRefused(t *testing.T) {
	for name, change := range map[string]func(*job.Hang){
		"no such corner":         func(h *job.Hang) { h.NewDrop = []string{"A|C"} },
		"a corner twice":         func(h *job.Hang) { h.Carry = []string{"A|B", "A|B"} },
		"both new and carried":   func(h *job.Hang) { h.NewDrop, h.Carry = []string{"A|B"}, []string{"A|B"} },
		"no such wall":           func(h *job.Hang) { h.KeepOff = []job.KeepOff{{Wall: "X", To: mm}} },
		"back to front":          func(h *job.Hang) { h.KeepOff = []job.KeepOff{{Wall: "A", From: 2 * mm, To: mm}} },
		"off the wall":           func(h *job.Hang) { h.KeepOff = []job.KeepOff{{Wall: "A", To: 9 * measure.Metre}} },
		"hung without a start":   func(h *job.Hang) { h.Start, h.Hung = nil, []string{"B"} },
		"a wall that is nowhere": func(h *job.Hang) { h.Hung = []string{"X"} },
	} {
		if _, err := fixing(t, change).Task(); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}
