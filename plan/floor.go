package plan

import (
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// What a layout of a run weighs at the least, wherever its drops stand, follows from the
// walls as its sheets see them:
//
//	drops    as many as all widths together ask for
//	pieces   as many as the widths beside openings ask for; and of every drop at least
//	         one, if paper hangs over or under each opening, of one in a window's width two
//	rolls    as many as the area asks for; or as lengths ask for that reach from foot to
//	         head, of which a roll gives so many
//	wedges   of corners that lean against their sheets; but one, where the run closes
//
// Every other rule weighs something or nothing. So a search that has found a layout that
// weighs no more is at its end; and a way to set the walls that, with this floor, weighs
// as much as the best found need not be searched.

// upright is a wall as the floor sees it.
type upright struct {
	free  measure.Length // of its width beside openings, between its leaning edges
	least measure.Length // its lowest height there
	head  measure.Length // the lowest point of its head there, over the datum
	bare  bool           // paper hangs everywhere across it, over or under openings too
	inner int64          // drops that stand within the width of a window at the least
}

// widths are what the walls ask for together.
type widths struct {
	girth  measure.Length
	beside measure.Length // of the girth beside openings
	inner  int64          // as of a wall
	bare   bool           // all walls are
}

func (t *widths) add(u *upright, width measure.Length) {
	t.girth, t.beside = t.girth+width, t.beside+u.free
	t.inner, t.bare = t.inner+u.inner, t.bare && u.bare
}

// pieces returns how many pieces widths ask for, with so many drops.
func (t *widths) pieces(drops int64, width measure.Length) int64 {
	pieces := atLeast(t.beside, width) + 2*t.inner
	if t.bare {
		pieces = max(pieces, drops+t.inner)
	}
	return pieces
}

// floor returns what any layout of the run weighs at the least.
func (s *search) floor() int64 {
	run, t := s.judge.run, widths{bare: true}
	var highest measure.Length
	var area measure.Area
	walls := make([]upright, len(run.Walls))
	for i := range run.Walls {
		face := run.Face(i)
		if _, y := face.Bounds(); i == 0 || y.Hi > highest {
			highest = y.Hi
		}
		area += face.Area()
		walls[i] = uprightOf(run, i, s.judge.paper.Width)
		t.add(&walls[i], run.Walls[i].Width)
	}
	return s.summed(&t, area, walls, highest) + s.leastWedges()
}

// floorAnyhow returns what any layout of the run weighs at the least, in whatever way its
// walls are set: edges lean by up to 1 in 50 more, and the heads of pieces may be anywhere
// in the design.
func (s *search) floorAnyhow() int64 {
	run := s.judge.surveyed
	less := func(l measure.Length) measure.Length { return l.Scaled(995, 1000) } // more than what 1 in 50 takes
	var t widths
	var area measure.Area
	walls := make([]upright, len(run.Walls))
	for i := range run.Walls {
		u := uprightOf(run, i, s.judge.paper.Width)
		_, y := run.Walls[i].Outline.Bounds()
		u.free, u.least, u.inner = max(less(u.free)-2*y.Length()/room.Steepest, 0), less(u.least), 0
		t.add(&u, less(run.Walls[i].Width))
		walls[i] = u
		area += measure.Area(less(measure.Length(run.Face(i).Area())))
	}
	return s.summed(&t, area, walls, measure.MaxLength)
}

// summed returns what the drops, pieces and rolls weigh that walls ask for.
func (s *search) summed(t *widths, area measure.Area, walls []upright, highest measure.Length) int64 {
	w, width := &s.task.Taste.Weights, s.judge.paper.Width
	drops := atLeast(t.girth, width)
	total := drops*w.Drop + t.pieces(drops, width)*w.Piece
	if s.lot.stock != nil { // rolls in hand cost nothing
		return total
	}
	return total + max(s.rollsByArea(area, t.beside), s.rollsByLengths(walls, highest))*w.Roll
}

// uprightOf returns wall i of a run as the floor sees it, in paper of some width.
func uprightOf(run *room.Run, i int, width measure.Length) (u upright) {
	wall := &run.Walls[i]
	left, right := run.LeanAt(i)
	x := geom.Interval{Lo: max(0, left), Hi: wall.Width + min(0, right)}
	if x.IsEmpty() {
		return u
	}
	u.free = x.Length()
	for o := range wall.Openings {
		across, _ := wall.Openings[o].Outline.Bounds()
		u.free -= max(across.Intersection(x).Length(), 0)
	}
	u.free = max(u.free, 0)
	u.bare = isBare(run.Face(i), wall.Width)
	for o := range wall.Openings {
		u.inner += innerDrops(wall, o, width)
	}
	for k, c := range (geom.Polygon{Outline: wall.Outline}).AppendCells(nil, x) {
		short, head := min(c.Left.Length(), c.Right.Length()), min(c.Left.Hi, c.Right.Hi)
		if k == 0 {
			u.least, u.head = short, head
		}
		u.least, u.head = min(u.least, short), min(u.head, head)
	}
	return u
}

// isBare reports whether some of a face is left to paper everywhere across its width.
func isBare(face geom.Polygon, width measure.Length) bool {
	all := geom.Interval{Hi: width}
	reach := measure.Length(0)
	for _, c := range face.AppendCells(nil, all) { // from left to right
		if c.X.Lo > reach {
			return false
		}
		reach = max(reach, c.X.Hi)
	}
	return reach >= width
}

// innerDrops returns how many drops at least stand within the width of an opening that
// leaves paper above it and below it, with none beside it there: those that begin before
// it or end after it cover two widths of it at the most.
func innerDrops(wall *room.Wall, opening int, width measure.Length) int64 {
	x, y := wall.Openings[opening].Outline.Bounds()
	for o := range wall.Openings {
		across, _ := wall.Openings[o].Outline.Bounds()
		if o != opening && across.Lo < x.Hi && across.Hi > x.Lo {
			return 0
		}
	}
	for _, c := range (geom.Polygon{Outline: wall.Outline}).AppendCells(nil, x) {
		if max(c.Left.Lo, c.Right.Lo) >= y.Lo || min(c.Left.Hi, c.Right.Hi) <= y.Hi {
			return 0
		}
	}
	return max(atLeast(x.Length(), width)-2, 0)
}

// squareNanometres is how many of them the unit of an area has.
const squareNanometres = int64(measure.Millimetre) * int64(measure.Millimetre) / int64(measure.SquareMillimetre)

// rollsByArea returns how many rolls an area asks for, with both allowances wherever
// paper hangs beside openings.
func (s *search) rollsByArea(area measure.Area, beside measure.Length) int64 {
	width := int64(s.judge.paper.Width)
	long := measure.Length(area).Scaled(squareNanometres, width)
	long += (s.task.Rules.Head+s.task.Rules.Foot).Scaled(int64(beside), width) - measure.Millimetre // what rounding may add
	return atLeast(max(long, 0), s.judge.paper.RollLength-s.task.Cut.Lead+s.task.Cut.Loss)
}

// rollsByLengths returns how many rolls the lengths ask for that hang on walls of some
// height and more: for every height of a wall, as many as the widths beside openings ask
// for, each as long as that height and both allowances. highest is the highest point of
// all walls: no head of a piece is higher.
func (s *search) rollsByLengths(walls []upright, highest measure.Length) (rolls int64) {
	p := s.judge.paper
	roll := p.RollLength - s.task.Cut.Lead
	for _, u := range walls {
		long := u.least + s.task.Rules.Head + s.task.Rules.Foot
		if u.least <= 0 || long > roll {
			continue
		}
		widths, lowest := measure.Length(0), highest
		for _, v := range walls {
			if v.least >= u.least {
				widths, lowest = widths+v.free, min(lowest, v.head)
			}
		}
		perRoll := 1 + int64((roll-long)/pitch(p, long, highest-lowest))
		rolls = max(rolls, (atLeast(widths, p.Width)+perRoll-1)/perRoll)
	}
	return rolls
}

// pitch returns how far apart, at the least, lengths begin on one roll: as they are long;
// in a straight match by whole repeats, but for spread: how far apart their heads are.
func pitch(p *paper.Paper, long, spread measure.Length) measure.Length {
	if p.Repeat == 0 || p.Match.Kind != paper.Straight || p.Match.Reversing || long.Mod(p.Repeat) <= spread {
		return long
	}
	return max(long, long.CeilTo(p.Repeat)-spread)
}

// leastWedges returns what wedges weigh at the least: those of inside corners between
// walls as wide as the paper and wider, with no outside corner beside them. There a drop
// is cut apart, or ends, or turns and has another beside it, and all of these show the
// wedge; but not at the kill seam of a closed run.
func (s *search) leastWedges() (total int64) {
	if !s.judge.isDesigned() {
		return 0
	}
	run, most := s.judge.run, int64(0)
	n := len(run.Walls)
	isPlain := func(wall int) bool {
		return run.Walls[wall].Width >= s.judge.paper.Width && !s.judge.isOutside(wall-1) && !s.judge.isOutside(wall)
	}
	for i := range run.Corners {
		c := &run.Corners[i]
		if c.Kind != room.Inside || !isPlain(i) || !isPlain((i+1)%n) {
			continue
		}
		wedge := int64((c.LeanRight-c.LeanLeft).Abs()/measure.Millimetre) * s.task.Taste.Weights.Wedge
		total, most = total+wedge, max(most, wedge)
	}
	if run.Closed {
		total -= most
	}
	return total
}

// atLeast returns how many parts a length takes at the least.
func atLeast(l, part measure.Length) int64 {
	if part <= 0 {
		return 0
	}
	return int64((l + part - 1) / part)
}
