package job

import (
	"fmt"
	"slices"

	"firstdrop/geom"
	"firstdrop/plan"
	"firstdrop/room"
)

// fix adds what is decided about corners, seams and walls that hang.
func (b *builder) fix(k int, h *Hang, run *room.Run, f *plan.Fixed) {
	path := hangPath(k)
	f.NewDrop = b.cornersOf(run, path+".new_drop", h.NewDrop)
	f.Carry = b.cornersOf(run, path+".carry", h.Carry)
	if len(f.NewDrop) > plan.MostNewDrops {
		b.refuse(path+".new_drop", "new_drops_most", "most", plan.MostNewDrops)
	}
	for i, c := range f.NewDrop {
		if slices.Contains(f.Carry, c) {
			b.refuse(fmt.Sprintf("%s.new_drop[%d]", path, i), "corner_carried", "corner", h.NewDrop[i])
		}
	}
	for i := range h.KeepOff {
		if b.isOfAnotherRow(h, run, h.KeepOff[i].Wall) {
			continue
		}
		b.keepOff(run, fmt.Sprintf("%s.keep_off[%d]", path, i), &h.KeepOff[i], f)
	}
	for i, name := range h.Hung {
		if wall, ok := b.wallOf(run, fmt.Sprintf("%s.hung[%d]", path, i), name); ok {
			f.Hung = append(f.Hung, wall)
		}
	}
	b.setTo(path, h, run, f)
	if len(h.Hung) > 0 && f.Start == nil {
		b.refuse(path+".hung", "hung_nowhere")
	}
}

// cornersOf returns inside corners of a run.
func (b *builder) cornersOf(run *room.Run, path string, names []string) (corners []int) {
	for i, name := range names {
		path := fmt.Sprintf("%s[%d]", path, i)
		switch c := b.cornerOf(run, path, name); {
		case c < 0:
		case run.Corners[c].Kind != room.Inside:
			b.refuse(path, "corner_is_outside", "corner", name)
		case slices.Contains(corners, c):
			b.refuse(path, "corner_twice", "corner", name)
		default:
			corners = append(corners, c)
		}
	}
	return corners
}

// keepOff adds a stretch without seams.
func (b *builder) keepOff(run *room.Run, path string, k *KeepOff, f *plan.Fixed) {
	wall, ok := b.wallOf(run, path+".wall", k.Wall)
	switch {
	case !ok:
	case k.From >= k.To:
		b.refuse(path+".from", "from_not_left", "from", k.From, "to", k.To)
	case k.From < 0 || k.To > run.Walls[wall].Width:
		b.refuse(path, "stretch_off", "from", k.From, "to", k.To, "wall", k.Wall, "width", run.Walls[wall].Width)
	default:
		f.KeepOff = append(f.KeepOff, plan.WallStretch{Wall: wall, X: geom.Interval{Lo: k.From, Hi: k.To}})
	}
}
