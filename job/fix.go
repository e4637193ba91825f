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
		b.refuse(path+".new_drop", "new drops can be fixed in %d corners at most; leave some to be searched", plan.MostNewDrops)
	}
	for i, c := range f.NewDrop {
		if slices.Contains(f.Carry, c) {
			b.refuse(fmt.Sprintf("%s.new_drop[%d]", path, i), "corner %s stands in carry too; write it in one of them", h.NewDrop[i])
		}
	}
	for i := range h.KeepOff {
		b.keepOff(run, fmt.Sprintf("%s.keep_off[%d]", path, i), &h.KeepOff[i], f)
	}
	for i, name := range h.Hung {
		if wall, ok := b.wallOf(run, fmt.Sprintf("%s.hung[%d]", path, i), name); ok {
			f.Hung = append(f.Hung, wall)
		}
	}
	b.setTo(path, h, run, f)
	if len(h.Hung) > 0 && f.Start == nil {
		b.refuse(path+".hung", "nothing says where the drops of these walls stand; write start with edge, where the left edge of one of them is")
	}
}

// cornersOf returns inside corners of a run.
func (b *builder) cornersOf(run *room.Run, path string, names []string) (corners []int) {
	for i, name := range names {
		path := fmt.Sprintf("%s[%d]", path, i)
		switch c := b.cornerOf(run, path, name); {
		case c < 0:
		case run.Corners[c].Kind != room.Inside:
			b.refuse(path, "corner %s is an outside corner, where no drop is given up; leave it out", name)
		case slices.Contains(corners, c):
			b.refuse(path, "corner %s stands here twice; keep one of them", name)
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
		b.refuse(path+".from", "from %v is not to the left of to %v; exchange them, or measure again", k.From, k.To)
	case k.From < 0 || k.To > run.Walls[wall].Width:
		b.refuse(path, "%v to %v is not on wall %s, which is %v wide", k.From, k.To, k.Wall, run.Walls[wall].Width)
	default:
		f.KeepOff = append(f.KeepOff, plan.WallStretch{Wall: wall, X: geom.Interval{Lo: k.From, Hi: k.To}})
	}
}
