package plan

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
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
		task := asking(usualRoom(r), usualPaper(r), measure.Millimetre)
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

// usualRoom is a room with four walls.
func usualRoom(r *rand.Rand) *room.Run {
	const mm = measure.Millimetre
	run := &room.Run{Name: "room", Closed: true}
	sides := [2]measure.Length{measure.Length(1800+r.IntN(4000)) * mm, measure.Length(1800+r.IntN(4000)) * mm}
	for i := range 4 {
		width := sides[i%2]
		w := room.Wall{
			Name: string(rune('A' + i)), Width: width,
			Outline: geom.Ring{{}, {X: width}, {X: width, Y: 2500 * mm}, {Y: 2500 * mm}},
		}
		if r.IntN(3) == 0 {
			w.Sight = room.Focal
		}
		for x := measure.Length(200+r.IntN(1500)) * mm; ; {
			wide := measure.Length(500+r.IntN(1200)) * mm
			if x+wide > width-100*mm || r.IntN(3) == 0 {
				break
			}
			foot, head := 900*mm, 2200*mm
			if r.IntN(3) == 0 {
				foot, head = 0, 2040*mm
			}
			w.Openings = append(w.Openings, room.Opening{
				Name: fmt.Sprint("o", len(w.Openings)), Kind: room.Window,
				Outline: geom.Ring{{X: x, Y: foot}, {X: x + wide, Y: foot}, {X: x + wide, Y: head}, {X: x, Y: head}},
			})
			x += wide + measure.Length(100+r.IntN(1500))*mm
		}
		run.Walls = append(run.Walls, w)
		run.Corners = append(run.Corners, room.Corner{Angle: 90 * measure.Degree})
	}
	return run
}

// usualPaper is a paper in one of the usual widths and matches.
func usualPaper(r *rand.Rand) paper.Paper {
	const mm = measure.Millimetre
	p := paper.Paper{Width: [...]measure.Length{530 * mm, 685 * mm, 1000 * mm}[r.IntN(3)], RollLength: 10050 * mm, Match: paper.Match{Kind: paper.Free}}
	switch r.IntN(5) {
	case 0:
		p.Match.Reversing = true
	case 1:
		p.Match, p.Repeat = paper.Match{Kind: paper.Straight}, 530*mm
	case 2:
		p.Match, p.Repeat = paper.Match{Kind: paper.Offset, Num: 1, Den: 2}, 640*mm
	}
	if p.Repeat > 0 && r.IntN(2) == 0 {
		p.Motif = &paper.Motif{Axis: p.Width / 3, Head: p.Repeat / 4, Tall: p.Repeat / 2}
	}
	return p
}
