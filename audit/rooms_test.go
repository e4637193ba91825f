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

// Walls set to ceilings, casings and neighbours keep all promises: the turned run
// and every layout on it are worked out twice.
func TestLayoutsOfCrookedRooms(t *testing.T) {
	rooms := rapid.Custom(func(t *rapid.T) *hanging.Layout {
		run, set := anyroom.Crooked(t)
		p := anyroom.Paper(t)
		c := anyroom.Choice(t, run, p)
		h, err := hanging.NewSet(run, set, p, hanging.DefaultRules())
		if set == nil || err != nil {
			return nil
		}
		l, err := h.Layout(c)
		if err != nil {
			return nil
		}
		return l
	})
	all, stepped := 0, 0
	for seed := range 3000 {
		l := rooms.Example(seed)
		if l == nil {
			continue
		}
		all++
		for _, s := range l.Seams {
			if s.Kind == hanging.Carried && s.Along != 0 {
				stepped++
			}
		}
		for _, v := range audit.Layout(l) {
			t.Errorf("room %d: %v", seed, v)
		}
		if t.Failed() {
			return
		}
	}
	if all < 200 || stepped < 50 {
		t.Errorf("only %d layouts were judged, %d seams where the design steps", all, stepped)
	}
}
