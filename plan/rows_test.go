package plan

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
)

// rowsHeld counts rows held against their starts.
type rowsHeld struct {
	rows, starts, bounds int
	most                 float64
}

// hold holds what is told of rows of starts against what is told of each.
func (h *rowsHeld) hold(t *testing.T, name string, s *search) {
	t.Helper()
	o := s.closeup.m.newOutlook()
	if o == nil {
		return
	}
	b := o.newBrackets()
	if b == nil {
		return
	}
	looked := lookAll(o)
	all := b.newRows()
	for _, row := range all.all {
		h.rows, h.starts = h.rows+1, h.starts+row.to-row.from
		for _, i := range all.starts[row.from:row.to] {
			for e := range o.ends {
				for k, told := range row.bounds[e] {
					exact := looked[i][e][k]
					if told > exact && exact < min(s.best.score, mostAhead/2) {
						t.Fatalf("%s: of %+v with %+v (%d) is told %d, and in a row of %d starts %d", name, s.starts[i], o.ends[e].place.kill, k, exact, row.to-row.from, told)
					}
					if exact > 0 && exact < mostAhead/2 {
						h.bounds, h.most = h.bounds+1, h.most+float64(min(told, exact))/float64(exact)
					}
				}
			}
		}
	}
}

// judge fails if little is told of rows.
func (h *rowsHeld) judge(t *testing.T) {
	t.Helper()
	t.Logf("%d starts in %d rows; what is told of rows comes to %.3f of that of starts", h.starts, h.rows, h.most/float64(h.bounds))
	if h.most < 0.8*float64(h.bounds) || h.rows > h.starts/2 {
		t.Error("little is told of rows")
	}
}

// What is told of a row of starts at once is no more than what is told of each.
func TestRowsAreBounds(t *testing.T) {
	t.Parallel()
	rooms := 1200
	if testing.Short() {
		rooms = 240
	}
	var held rowsHeld
	for seed := range rooms {
		s, choices := gathered(t, seed, measure.Length(1+seed%7)*measure.Millimetre, seed%4 > 0)
		if len(choices) == 0 {
			continue
		}
		if seed%3 == 1 {
			s.best.score = slices.MinFunc(choices, func(a, b choiceAt) int { return cmp.Compare(a.bound, b.bound) }).bound * 101 / 100
		}
		held.hold(t, fmt.Sprintf("room %d", seed), s)
	}
	held.judge(t)
}

// The same in rooms with four plumb walls, doors and windows, some of them focal, as most are.
func TestRowsAreBoundsInUsualRooms(t *testing.T) {
	t.Parallel()
	rooms := 250
	if testing.Short() {
		rooms = 50
	}
	var held rowsHeld
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		task := asking(anyroom.UsualRoom(r), anyroom.UsualPaper(r), measure.Millimetre)
		if seed%2 == 0 {
			furnish(&task.Runs[0], r, false)
		}
		s := searched(t, task)
		s.prepare()
		s.best = candidate{layout: &hanging.Layout{}, score: offWeight}
		s.gather = func(choiceAt) {}
		s.scan(max(1, len(s.starts)))
		held.hold(t, fmt.Sprintf("usual room %d", seed), s)
	}
	held.judge(t)
}
