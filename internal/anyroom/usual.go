package anyroom

import (
	"fmt"
	"math/rand/v2"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// UsualRoom makes up a room as most are: four plumb walls with doors and windows, a third of
// them focal.
func UsualRoom(r *rand.Rand) *room.Run {
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

// UsualPaper makes up a paper in one of the usual widths and matches.
func UsualPaper(r *rand.Rand) paper.Paper {
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
