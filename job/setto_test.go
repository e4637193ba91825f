package job_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstdrop/hanging"
	"firstdrop/job"
	"firstdrop/plan"
)

func TestWhatWallsAreSetTo(t *testing.T) {
	got := task(t, fixing(t, func(h *job.Hang) {
		h.SetTo = []job.SetTo{{Wall: "A", To: "ceiling", Design: "left"}, {Wall: "B", To: "left"}, {Wall: "D", To: "plumb"}}
	})).Runs[0].Fixed.Set
	want := []plan.WallSetting{
		{Wall: 0, Setting: hanging.Setting{To: hanging.ToCeiling, Meets: hanging.MeetLeft}},
		{Wall: 1, Setting: hanging.Setting{To: hanging.ToLeft}},
		{Wall: 3},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestWhatWallsCannotBeSetTo(t *testing.T) {
	for _, tt := range []struct {
		set  []job.SetTo
		says string
	}{
		{[]job.SetTo{{Wall: "X", To: "plumb"}}, `no wall of this entry is named "X"`},
		{[]job.SetTo{{Wall: "A", To: "plumb"}, {Wall: "A", To: "ceiling"}}, "stands here twice"},
		{[]job.SetTo{{Wall: "A", To: "celing"}}, `to cannot be "celing"`},
		{[]job.SetTo{{Wall: "A", To: "casing", Opening: "gate"}}, `is named "gate"`},
		{[]job.SetTo{{Wall: "A", To: "plumb", Opening: "door"}}, "leave them out"},
		{[]job.SetTo{{Wall: "A", To: "left", Design: "right"}}, "leave design out"},
		{[]job.SetTo{{Wall: "A", To: "right"}, {Wall: "B", To: "left"}}, "set to it in turn"},
	} {
		_, err := fixing(t, func(h *job.Hang) { h.SetTo = tt.set }).Task()
		if err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%+v: %v, want %q", tt.set, err, tt.says)
		}
	}
}
