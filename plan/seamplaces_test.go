package plan

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/room"
)

// Over an opening no place for the kill seam is better than those that are tried: none on a
// grid of a few millimetres, nor beside the edges of drops.
func TestNoPlaceOverAnOpeningIsBetter(t *testing.T) {
	t.Parallel()
	rooms := 400
	if testing.Short() {
		rooms = 80
	}
	var usual, odd placesHeld
	eachRoom(rooms, func(seed int, task, other *Task, r *rand.Rand) {
		usual.hold(t, fmt.Sprint("usual room ", seed), task, r, 0)
		odd.hold(t, fmt.Sprint("room ", seed), other, r, 2) // end strips of leaning walls are alike some millimetres farther
	})
	t.Logf("held %d choices in usual rooms at %d places, and %d in others at %d", usual.choices, usual.places, odd.choices, odd.places)
	if usual.choices < 5*rooms || odd.choices < rooms {
		t.Error("too few choices over openings")
	}
}

// eachRoom makes up usual rooms, half of them furnished, and small odd ones beside them.
func eachRoom(rooms int, do func(seed int, usual, odd *Task, r *rand.Rand)) {
	drawn := rapid.Custom(func(t *rapid.T) *Task { return asking(anyroom.SmallRun(t), *anyroom.Paper(t), measure.Millimetre) })
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		task := asking(anyroom.UsualRoom(r), anyroom.UsualPaper(r), measure.Millimetre)
		if seed%2 == 0 {
			furnish(&task.Runs[0], r, false)
		}
		do(seed, task, drawn.Example(seed), r)
	}
}

// placesHeld counts the choices held, and the places that they were tried at.
type placesHeld struct{ choices, places int }

// hold holds some choices of a room with the kill seam over an opening: by more than a few
// thousandths of a roll no other place is better.
func (h *placesHeld) hold(t *testing.T, name string, task *Task, r *rand.Rand, few int64) {
	t.Helper()
	s := searched(t, task)
	s.prepare()
	s.closeup.m = newCombiner(s)
	for range 40 {
		if len(s.starts) == 0 || len(s.kills) == 0 {
			return
		}
		c := choiceAt{start: int32(r.IntN(len(s.starts))), kill: int16(r.IntN(len(s.kills)))}
		if k := s.kills[c.kill]; k.span.Length() == 0 {
			continue
		}
		c.x = s.kills[c.kill].kill.X
		if corner := r.IntN(len(s.run.Run.Corners) + 1); corner > 0 && s.run.Run.Corners[corner-1].Kind == room.Inside {
			c.new[0] = int16(corner)
		}
		choice := s.choice(&c)
		least, ok := s.leastOver(&c, &choice, s.seamPlaces)
		if !ok {
			continue
		}
		h.choices, h.places = h.choices+1, h.places+len(s.seamPlaces(&choice, &s.kills[c.kill]))+1
		step := measure.Length(2+r.IntN(5)) * measure.Millimetre
		fine, _ := s.leastOver(&c, &choice, func(choice *hanging.Choice, k *killPlace) []measure.Length { return s.everyFew(choice, k, step, 1) })
		if fine+few < least {
			t.Fatalf("%s: %+v weighs %d at the best place tried, and %d at another", name, choice, least, fine)
		}
	}
}

// everyFew lists places over an opening so far apart, and all edges of drops with places so
// far beside them.
func (s *search) everyFew(c *hanging.Choice, k *killPlace, step, beside measure.Length) (xs []measure.Length) {
	all := make([]measure.Length, 0, 1000)
	for x := k.span.Lo + step; x <= k.span.Hi-measure.Millimetre; x += step {
		all = append(all, x)
	}
	for _, edge := range s.edges {
		g := grid{edge, s.halves.width}
		for x := g.after(k.span.Lo); x < k.span.Hi; x += g.width {
			all = append(all, x-beside, x, x+beside)
		}
	}
	for _, x := range all {
		if x > k.span.Lo && x < k.span.Hi && !s.isAcross(c, x) {
			xs = append(xs, x)
		}
	}
	return xs
}

// leastOver returns what the drops and seams of a choice weigh at the least with its kill
// seam at its own place or at one of others; false if it is none.
func (s *search) leastOver(c *choiceAt, choice *hanging.Choice, places func(*hanging.Choice, *killPlace) []measure.Length) (least int64, ok bool) {
	k := s.kills[c.kill]
	least, ok = s.localAt(c, *choice, k, c.x)
	if !ok {
		return 0, false
	}
	for _, x := range append([]measure.Length(nil), places(choice, &k)...) {
		if local, ok := s.localAt(c, *choice, k, x); ok {
			least = min(least, local)
		}
	}
	return least, true
}

// localAt weighs the drops and seams of a choice with its kill seam at a place.
func (s *search) localAt(c *choiceAt, choice hanging.Choice, k killPlace, x measure.Length) (int64, bool) {
	n := *c
	n.x, choice.Kill.X, k.kill.X = x, x, x
	if local, told := s.closeup.weigh(&n, &choice, &k); told {
		s.edges = s.closeup.edges
		return local, true
	}
	ok := s.draw(&n, choice, &k)
	return n.local, ok
}

// With its kill seam at a place over an opening a choice weighs no less than is told of it.
func TestPlacesOverAnOpeningAreBounds(t *testing.T) {
	t.Parallel()
	rooms := 200
	if testing.Short() {
		rooms = 60
	}
	var told placesHeld
	eachRoom(rooms, func(seed int, usual, odd *Task, r *rand.Rand) {
		told.bound(t, fmt.Sprint("usual room ", seed), usual, r)
		told.bound(t, fmt.Sprint("room ", seed), odd, r)
	})
	t.Logf("%d choices held at %d places", told.choices, told.places)
	if told.choices < 20*rooms || told.places < 4*told.choices {
		t.Error("too little is told")
	}
}

// bound holds what is told of some of the choices of a room against what they weigh.
func (h *placesHeld) bound(t *testing.T, name string, task *Task, r *rand.Rand) {
	t.Helper()
	s := searched(t, task)
	s.prepare()
	if s.rounds || len(s.starts) == 0 || len(s.kills) == 0 { // a little more or less is weighed for each new drop
		return
	}
	s.best = candidate{layout: &hanging.Layout{}, score: never}
	var all []choiceAt
	s.gather = func(c choiceAt) {
		if s.kills[c.kill].span.Length() > 0 {
			all = append(all, c)
		}
	}
	s.scan(1 + len(s.starts)/50)
	for range min(len(all), 60) {
		c := all[r.IntN(len(all))]
		choice, k := s.choice(&c), s.kills[c.kill]
		if _, ok := s.localAt(&c, choice, k, c.x); !ok {
			continue
		}
		over, known := s.closeup.overlap(&k)
		if !known {
			continue
		}
		h.choices++
		for _, x := range append(s.everyFew(&choice, &k, measure.Length(20+r.IntN(50))*measure.Millimetre, measure.Millimetre), c.x) {
			told := c.local + s.closeup.m.moreAt(&k, &over, &sum{}, x) // without pieces
			if local, ok := s.localAt(&c, choice, k, x); ok && told > local {
				t.Fatalf("%s: drops and seams of %+v with the kill seam at %v are told to weigh %d, and weigh %d", name, choice, x, told, local)
			}
			if h.places++; h.places%400 == 0 {
				n := candidate{choice: choice, kill: k}
				n.choice.Kill.X, n.kill.kill.X = x, x
				told = c.local + c.rolls + s.closeup.m.moreAt(&k, &over, &s.closeup.m.over[c.kill], x)
				if s.layOut(&n); n.layout != nil {
					if total, err := s.total(&n); err == nil && told > total {
						t.Fatalf("%s: %+v with the kill seam at %v is told to weigh %d, and weighs %d", name, choice, x, told, total)
					}
				}
			}
		}
	}
}

// Edges of a grid lie a width apart on either side of any place.
func TestGridEdges(t *testing.T) {
	for _, tt := range []struct{ edge, x, upTo, from, after measure.Length }{
		{30, 250, 230, 330, 330}, {30, 230, 230, 230, 330}, {-170, 29, -70, 30, 30}, {530, -1, -70, 30, 30},
	} {
		g := grid{tt.edge, 100}
		if upTo, from, after := g.upTo(tt.x), g.from(tt.x), g.after(tt.x); upTo != tt.upTo || from != tt.from || after != tt.after {
			t.Errorf("round %d: %d, %d, %d, want %d, %d, %d", tt.x, upTo, from, after, tt.upTo, tt.from, tt.after)
		}
	}
}
