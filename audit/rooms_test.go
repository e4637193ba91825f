package audit_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/audit"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
)

// layOut lays out a made-up room; nil when the choice is none for it.
func layOut(t *rapid.T) *hanging.Layout {
	run, p := anyroom.Run(t), anyroom.Paper(t)
	c := anyroom.Choice(t, run, p)
	h, err := hanging.New(run, p, hanging.DefaultRules())
	if err != nil {
		return nil
	}
	l, err := h.Layout(c)
	if err != nil {
		return nil
	}
	return l
}

// Layouts of made-up rooms keep all promises. The rooms are crooked, so this
// sets the two roads against each other on leaning corners, openings in corners,
// and slopes.
func TestLayoutsOfAnyRoom(t *testing.T) {
	rooms := rapid.Custom(layOut)
	all := 0
	for seed := range 1500 {
		l := rooms.Example(seed)
		if l == nil {
			continue
		}
		all++
		for _, v := range audit.Layout(l) {
			t.Errorf("room %d: %v", seed, v)
		}
	}
	if all < 1000 {
		t.Errorf("only %d layouts were judged", all)
	}
}
