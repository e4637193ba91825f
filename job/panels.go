package job

import (
	"slices"
	"strconv"

	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// panelForm checks what an entry says of panels, without its walls.
func (b *builder) panelForm(k int, h *Hang) {
	path := hangPath(k)
	switch {
	case h.Panels == "" && h.Trim != 0:
		b.refuse(path+".trim", "trim_without_panels")
	case h.Panels == "":
		return
	case h.Panels != "equal":
		b.refuse(path+".panels", "panels_word", "word", strconv.Quote(h.Panels))
	case h.Lining != "" || h.Start != nil || h.Kill != nil || h.Design != nil || len(h.NewDrop)+len(h.Carry)+len(h.Hung)+len(h.SetTo) > 0:
		b.refuse(path+".panels", "panels_alone")
	}
	i := b.paperOf(h)
	if i < 0 || i >= len(b.task.Papers) {
		return
	}
	label := &b.task.Papers[i]
	if label.Match.Kind != paper.Free {
		b.refuse(path+".panels", "panels_match", "paper", h.Paper)
	}
	if h.Trim < 0 || 2*h.Trim >= label.Width {
		b.refuse(path+".trim", "trim_width", "trim", h.Trim, "width", label.Width)
	}
}

// panelled returns what an entry asks of panels; nil for drops of full width.
func (h *Hang) panelled() *plan.Panels {
	if h.Panels == "" {
		return nil
	}
	return &plan.Panels{Trim: h.Trim}
}

// part is what of an entry hangs as one run.
type part struct {
	name  string
	walls []int
}

// parts returns the runs of an entry: one, or of equal panels one from each inside corner
// to the next, for panels of one width go on round outside corners only.
func (b *builder) parts(k int, h *Hang, walls []int) (parts []part) {
	rows := [][]int{walls}
	if h.Panels != "" {
		rows = b.panelRows(k, h, walls)
	}
	for _, row := range rows {
		name := hangName(k, h)
		if len(rows) > 1 {
			name = b.partName(k, h, row)
		}
		parts = append(parts, part{name, row})
	}
	return parts
}

// partName returns the name of the run on some of an entry's walls: "run 1 A–C" where the
// room has no other entry, so that people are told of walls A–C alone ([words.Catalogue.Name]),
// otherwise "dado, A–C".
func (b *builder) partName(k int, h *Hang, walls []int) string {
	row := b.whole.WallName(walls[0])
	if len(walls) > 1 {
		row += "–" + b.whole.WallName(walls[len(walls)-1])
	}
	if h.Name == "" && len(b.job.Hang) == 1 {
		return hangName(k, h) + " " + row
	}
	return hangName(k, h) + ", " + row
}

// isOfAnotherRow reports whether a wall that is none of a run's is one of the other runs
// of its entry.
func (b *builder) isOfAnotherRow(h *Hang, run *room.Run, wall string) bool {
	names := h.Walls
	if len(names) == 0 {
		names = b.job.Room.wallNames()
	}
	isOwn := slices.ContainsFunc(run.Walls, func(w room.Wall) bool { return w.Name == wall })
	return h.Panels != "" && !isOwn && slices.Contains(names, wall)
}

// panelRows cuts walls into rows at inside corners; none, with a problem, where a leaning
// outside corner lies within a row, or paper goes all round and there is no inside corner.
func (b *builder) panelRows(k int, h *Hang, walls []int) (rows [][]int) {
	path, corners := hangPath(k)+".panels", b.whole.Corners
	isInside := func(wall int) bool { return corners[wall].Kind == room.Inside }
	if b.isRound(k, h, walls) { // begin behind an inside corner, so that no row is cut in two
		n := slices.IndexFunc(walls, isInside)
		if n < 0 {
			b.refuse(path, "panels_round")
			return nil
		}
		if !isInside(walls[len(walls)-1]) {
			walls = append(slices.Clone(walls[n+1:]), walls[:n+1]...)
		}
	}
	var row []int
	for n, i := range walls {
		switch row = append(row, i); {
		case n == len(walls)-1 || isInside(i):
			rows, row = append(rows, row), nil
		case corners[i].LeanLeft != 0 || corners[i].LeanRight != 0:
			b.refuse(path, "panels_leaning", "corner", b.whole.CornerName(i))
			return nil
		}
	}
	return rows
}
