package job

import (
	"slices"
	"strconv"

	"firstdrop/geom"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// A lining hangs under the paper: its lengths upright, their seams clear of those
// above, or across, so that no two seams run together. Across, every wall is a run of
// its own, turned by a quarter so that its floor is on the left:
//
//	┌─────────┐ ceiling        ┌──┬──┬──┐
//	├─────────┤                │  │  │  │ ceiling on the right
//	├─────────┤        ──►     │  │  │  │
//	└─────────┘ floor          └──┴──┴──┘

// quarter marks the name of a wall that is turned by a quarter.
const quarter = " 90°"

// hungOver is a run that hangs over linings, and its walls in the room.
type hungOver struct {
	run   int
	walls []int
}

// liningForm checks what an entry says of a lining.
func (b *builder) liningForm(k int, h *Hang) {
	path := hangPath(k)
	switch {
	case h.Lining == "":
		if k > 0 && b.job.Hang[k-1].Lining != "" {
			b.refuse(path, "lining_last")
		}
		return
	case h.Lining != "upright" && h.Lining != "across":
		b.refuse(path+".lining", "lining_word", "word", strconv.Quote(h.Lining))
		return
	case !slices.ContainsFunc(b.job.Hang, func(o Hang) bool { return o.Lining == "" }):
		b.refuse(path+".lining", "lining_alone")
	case h.Lining == "across" && (h.Start != nil || h.Kill != nil || h.Design != nil || len(h.NewDrop)+len(h.Carry)+len(h.KeepOff)+len(h.Hung)+len(h.SetTo) > 0):
		b.refuse(path, "lining_across")
	}
	if i := b.paperOf(h); i >= 0 && i < len(b.task.Papers) && b.task.Papers[i].Match.Kind != paper.Free {
		b.refuse(path+".paper", "lining_match", "paper", h.Paper)
	}
}

// lining adds the runs of a lining.
func (b *builder) lining(k int, h *Hang, run *room.Run, walls []int, over []hungOver) {
	if h.Lining == "upright" {
		t := plan.RunTask{Run: run, Paper: b.paperOf(h)}
		t.Fixed.Start, t.Fixed.Centre = b.start(k, h, run)
		t.Fixed.Kill = b.kill(k, h, run)
		b.fix(k, h, run, &t.Fixed)
		for _, o := range over {
			above := plan.Above{Run: o.run}
			for _, w := range walls {
				above.Walls = append(above.Walls, slices.Index(o.walls, w))
			}
			t.Over = append(t.Over, above)
		}
		b.task.Runs = append(b.task.Runs, t)
		return
	}
	for i := range run.Walls {
		lying := lyingWall(run, i)
		if err := lying.Check(); err != nil {
			b.refuse(hangPath(k)+".lining", "lining_cannot", "wall", run.Walls[i].Name, "why", messageOf(faults(err)[0]))
			return
		}
		t := plan.RunTask{Run: lying, Paper: b.paperOf(h)}
		for _, o := range over {
			if slices.Contains(o.walls, walls[i]) { // no seam of the one lies along a seam of the other
				t.Over = append(t.Over, plan.Above{Run: o.run, Walls: []int{-1}})
			}
		}
		b.task.Runs = append(b.task.Runs, t)
	}
}

// lyingWall returns wall i of a run turned by a quarter, as a run of its own.
func lyingWall(run *room.Run, i int) *room.Run {
	face := run.Face(i)
	_, y := face.Outline.Bounds()
	turn := func(ring geom.Ring) geom.Ring {
		turned := make(geom.Ring, len(ring))
		for k, p := range ring {
			turned[len(ring)-1-k] = geom.Point{X: p.Y - y.Lo, Y: p.X}
		}
		return turned
	}
	w := room.Wall{Name: run.Walls[i].Name + quarter, Width: y.Length(), Outline: turn(face.Outline), Sight: room.Hidden}
	for _, o := range run.Walls[i].Openings {
		w.Openings = append(w.Openings, room.Opening{Name: o.Name, Kind: o.Kind, Outline: turn(o.Outline)})
	}
	return &room.Run{Name: run.Name + ", " + run.Walls[i].Name, Walls: []room.Wall{w}}
}
