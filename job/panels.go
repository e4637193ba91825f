package job

import (
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

// panels returns what an entry asks of panels, once its walls are known: they must be
// joined by outside corners that are plumb.
func (b *builder) panels(k int, h *Hang, run *room.Run) *plan.Panels {
	if h.Panels == "" {
		return nil
	}
	path := hangPath(k) + ".panels"
	for i := range run.Corners {
		switch c := &run.Corners[i]; {
		case c.Kind == room.Inside || run.Closed:
			b.refuse(path, "panels_inside", "corner", run.CornerName(i))
			return nil
		case c.LeanLeft != 0 || c.LeanRight != 0:
			b.refuse(path, "panels_leaning", "corner", run.CornerName(i))
			return nil
		}
	}
	return &plan.Panels{Trim: h.Trim}
}
