package main

import "testing"

func TestJudged(t *testing.T) {
	tests := []struct {
		f    Figure
		want string
	}{
		{Figure{Value: 3}, "none"},
		{Figure{Value: 3, Goal: 3}, "met"},
		{Figure{Value: 3.1, Goal: 3}, "missed"},
		{Figure{Value: 3, Goal: 3, AtLeast: true}, "met"},
		{Figure{Value: 2.9, Goal: 3, AtLeast: true}, "missed"},
	}
	for _, tt := range tests {
		got := "none"
		if f := tt.f.judged(); f.Met != nil && *f.Met {
			got = "met"
		} else if f.Met != nil {
			got = "missed"
		}
		if got != tt.want {
			t.Errorf("%+v: %s, want %s", tt.f, got, tt.want)
		}
	}
}

// The room that is timed is one that can be hung, and as long as its name says.
func TestLongRoom(t *testing.T) {
	task := longRoom()
	run := task.Runs[0].Run
	if err := run.Check(); err != nil {
		t.Fatal(err)
	}
	if err := task.Papers[0].Check(); err != nil {
		t.Fatal(err)
	}
	if drops := run.Girth() / task.Papers[0].Width; drops < 195 {
		t.Errorf("the girth is %v, %d widths of the paper", run.Girth(), int64(drops))
	}
}
