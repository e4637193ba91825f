package audit_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/audit"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/room"
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

// Cabinets from the foot of a wall to its head leave plumb lines little wall to be drawn
// on: all lines stand where there is some, some of them between the edges of their drop.
func TestLinesBetweenAnyCabinets(t *testing.T) {
	rooms := rapid.Custom(func(t *rapid.T) *hanging.Layout {
		run, p := anyroom.Run(t), anyroom.Paper(t)
		for i := range run.Walls {
			w := &run.Walls[i]
			_, y := w.Outline.Bounds()
			w.Openings = nil
			for x := measure.Length(0); x < w.Width; {
				x += measure.Length(rapid.IntRange(0, 400).Draw(t, "wall")) * mm
				to := x + measure.Length(rapid.IntRange(50, 900).Draw(t, "cabinet"))*mm
				if to > w.Width {
					break
				}
				w.Openings = append(w.Openings, room.Opening{Name: "cabinet", Kind: room.Furniture, Outline: geom.Ring{
					{X: x, Y: y.Lo}, {X: to, Y: y.Lo}, {X: to, Y: y.Hi}, {X: x, Y: y.Hi},
				}})
				x = to
			}
		}
		h, err := hanging.New(run, p, hanging.DefaultRules())
		if err != nil {
			return nil
		}
		l, err := h.Layout(anyroom.Choice(t, run, p))
		if err != nil {
			return nil
		}
		return l
	})
	all, between := 0, 0
	for seed := range 1500 {
		l := rooms.Example(seed)
		if l == nil {
			continue
		}
		all++
		for _, b := range l.Plumbs {
			if b.Beyond > 0 {
				between++
			}
		}
		for _, v := range audit.Layout(l) {
			t.Errorf("room %d: %v", seed, v)
		}
	}
	if all < 1000 || between < 100 {
		t.Errorf("only %d layouts were judged, with %d lines between edges", all, between)
	}
}
