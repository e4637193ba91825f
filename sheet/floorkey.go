package sheet

import (
	"math"
	"strconv"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
	"firstdrop/tell"
)

// floor is the run seen from above: wall 0 runs to the right along the top, and the
// room lies below it. Walls as they were measured; a gap where they do not close
// stays a gap.
type floor struct {
	run   *room.Run
	feet  []geom.Point // of the walls' left ends, and the last one's right end
	turns []float64    // heading of every wall, clockwise from the x axis
}

func newFloor(run *room.Run) *floor {
	f := &floor{run: run, feet: []geom.Point{{}}}
	heading, at := 0.0, [2]float64{}
	for i := range run.Walls {
		f.turns = append(f.turns, heading)
		w := float64(run.Walls[i].Width)
		at[0] += w * math.Cos(heading)
		at[1] -= w * math.Sin(heading)
		f.feet = append(f.feet, pt(measure.Length(math.Round(at[0])), measure.Length(math.Round(at[1]))))
		angle := 90 * measure.Degree
		if i < len(run.Corners) {
			angle = run.Corners[i].InteriorAngle()
		}
		heading += math.Pi * (1 - float64(angle)/float64(180*measure.Degree))
	}
	return f
}

// at returns a place on a wall, so far into the room (negative: outside).
func (f *floor) at(wall int, x, into measure.Length) geom.Point {
	sin, cos := math.Sincos(f.turns[wall])
	p := f.feet[wall]
	dx := float64(x)*cos - float64(into)*sin
	dy := -float64(x)*sin - float64(into)*cos
	return pt(p.X+measure.Length(math.Round(dx)), p.Y+measure.Length(math.Round(dy)))
}

// floorAround is what stands round the room on its key.
const floorAround = 15 * mm

// floorKey draws the floor of a run within a width and height.
func (s *Set) floorKey(r int, width, height measure.Length) *draw.Scene {
	l := s.Plan.Runs[r].Layout
	f := newFloor(l.Run)
	box := draw.BoxOf(f.feet)
	k := &key{floor: f, layout: l, s: s}
	beside := min(max(floorAround, k.widestBeside()+7*mm), width/3)
	k.n = fitting(box.X.Length(), box.Y.Length(), width-2*beside, height-2*floorAround, s.System)
	k.walls()
	k.start()
	reach := draw.BoxOf(k.feetOnPage()).Grown(floorAround)
	if spare := (width - reach.X.Length()) / 2; spare > 0 {
		reach.X = across(reach.X.Lo-spare, reach.X.Hi+spare)
	}
	k.names(reach)
	k.numbers()
	return &draw.Scene{
		ID: "floor" + strconv.Itoa(r+1), Title: s.text("page.floor-key"), Desc: s.text("page.floor-desc"), Scale: k.n, Window: reach,
		Layers: []draw.Layer{{Name: "floor", Title: s.text("page.floor-key"), Items: k.items}},
	}
}

// fitting returns the largest scale people draw to at which something fits.
func fitting(w, h, width, height measure.Length, sys measure.System) int64 {
	all := scales[sys]
	for _, n := range all {
		if w.Scaled(1, n) <= width && h.Scaled(1, n) <= height {
			return n
		}
	}
	return all[len(all)-1]
}

// key is a floor key in the making.
type key struct {
	*floor
	layout *hanging.Layout
	s      *Set
	n      int64
	items  []draw.Item
	board  board
}

func (k *key) on(p geom.Point) geom.Point { return pt(p.X.Scaled(1, k.n), p.Y.Scaled(1, k.n)) }

func (k *key) feetOnPage() (ps []geom.Point) {
	for _, p := range k.feet {
		ps = append(ps, k.on(p))
	}
	return ps
}

// place returns a place on a wall on the page; into is in lengths of the page.
func (k *key) place(wall int, x, into measure.Length) geom.Point {
	return k.on(k.at(wall, x, into*measure.Length(k.n)))
}

func (k *key) add(items ...draw.Item) { k.items = append(k.items, items...) }

// walls draws the walls as thick lines, thin where an opening reaches the floor or
// lets in light.
func (k *key) walls() {
	for i := range k.run.Walls {
		w := &k.run.Walls[i]
		k.add(draw.Segment(k.place(i, 0, 0), k.place(i, w.Width, 0), draw.Pen{Ink: graphite, Width: 12 * mm / 10}))
		k.occupy(i)
		for o := range w.Openings {
			x, _ := w.Openings[o].Outline.Bounds()
			k.add(
				draw.Segment(k.place(i, x.Lo, 0), k.place(i, x.Hi, 0), draw.Pen{Ink: white, Width: 13 * mm / 10}),
				draw.Segment(k.place(i, x.Lo, -mm/2), k.place(i, x.Hi, -mm/2), finePen),
				draw.Segment(k.place(i, x.Lo, mm/2), k.place(i, x.Hi, mm/2), finePen))
		}
	}
	for _, q := range k.layout.Seams {
		pen := seamPen
		if q.Kind == hanging.KillSeam {
			pen = killPen
		}
		k.add(draw.Segment(k.place(q.Wall, q.X, 0), k.place(q.Wall, q.X, 3*mm/2), pen))
	}
}

// occupy keeps names off a wall, bit by bit: it may run aslant.
func (k *key) occupy(wall int) {
	width := k.run.Walls[wall].Width
	bits := width.Scaled(1, k.n)/(2*mm) + 1
	for b := range bits {
		from, to := k.place(wall, width.Scaled(int64(b), int64(bits)), 0), k.place(wall, width.Scaled(int64(b+1), int64(bits)), 0)
		k.board.take(draw.BoxOf([]geom.Point{from, to}).Grown(mm / 4))
	}
}

// start marks the first plumb line and the kill seam, outside the room.
func (k *key) start() {
	if len(k.layout.Plumbs) > 0 {
		b := k.layout.Plumbs[0]
		k.flag(b.Wall, b.X, k.s.text("page.start-mark"), chalk)
	}
	if q := tell.KillOf(k.layout); q != nil {
		k.flag(q.Wall, q.X, k.s.text("page.kill-mark"), oxide)
	}
}

// flag writes a word outside the wall, with a pointer to a place on it.
func (k *key) flag(wall int, x measure.Length, word string, ink draw.Ink) {
	tip, tail := k.place(wall, x, -mm), k.place(wall, x, -4*mm)
	k.add(draw.Segment(tip, tail, draw.Pen{Ink: ink, Width: 8 * mm / 10}))
	t := draw.Text{Text: word, Size: 31 * mm / 10, Bold: true, Ink: ink}
	k.settle(t, func(off measure.Length) geom.Point { return k.place(wall, x, -13*mm/2-off) }, 4)
}

// settle writes a text centred as near to a place as it stands free.
func (k *key) settle(t draw.Text, at func(off measure.Length) geom.Point, tries int) bool {
	t.Anchor = draw.Middle
	for i := range measure.Length(tries) {
		t.At = at(i * mm)
		t.At.Y -= t.Size * 36 / 100
		box := t.Box()
		// Beside an upright wall a text stands clear of it by its own width.
		if b := at(i*mm + mm); b.X != t.At.X {
			half := box.X.Length() / 2
			if b.X > t.At.X {
				t.At.X += half
			} else {
				t.At.X -= half
			}
			box = t.Box()
		}
		if k.board.isFree(box) {
			k.board.take(box)
			k.add(t)
			return true
		}
	}
	return false
}

// isUpright reports whether a wall runs up or down the page rather than across it.
func (f *floor) isUpright(wall int) bool { return math.Abs(math.Sin(f.turns[wall])) > 0.7 }

// widestBeside returns how wide the longest name is that stands beside the room, set
// small.
func (k *key) widestBeside() (wide measure.Length) {
	for i := range k.run.Walls {
		if k.isUpright(i) {
			wide = max(wide, draw.TextWidth(draw.Clean(k.run.WallName(i)), 36*mm/10, true))
		}
	}
	return wide
}

// names writes the walls' names outside, within what there is room for: smaller and
// farther out before one is cut off.
func (k *key) names(reach draw.Box) {
	walls := draw.BoxOf(k.feetOnPage())
	for i := range k.run.Walls {
		room := reach.X.Length()
		if k.isUpright(i) {
			room = (reach.X.Length()-walls.X.Length())/2 - 6*mm
		}
		t := draw.Text{Text: draw.Clean(k.run.WallName(i)), Size: page.Sub.Size, Bold: true, Ink: graphite}
		for _, size := range []measure.Length{page.Sub.Size, 4 * mm, 3 * mm} {
			if t.Size = size; k.name(i, t.Within(room, 3*mm)) {
				break
			}
		}
	}
}

// name settles a wall's name beside its middle or, failing that, to one side of it.
func (k *key) name(i int, t draw.Text) bool {
	w := k.run.Walls[i].Width
	for _, tries := range []int{3, 9} {
		for _, x := range []measure.Length{w / 2, w / 3, w * 2 / 3} {
			if k.settle(t, func(off measure.Length) geom.Point { return k.place(i, x, -4*mm-off) }, tries) {
				return true
			}
		}
	}
	return false
}

// numbers writes the numbers of the drops inside, where they have room.
func (k *key) numbers() {
	for _, d := range k.layout.Drops {
		for _, p := range d.Parts {
			x := p.X.Intersection(across(0, k.run.Walls[p.Wall].Width))
			if d.Number == 0 || x.Length().Scaled(1, k.n) < 3*mm {
				continue
			}
			t := draw.Text{Text: strconv.Itoa(d.Number), Size: 3 * mm, Ink: graphite}
			if d.Number == 1 {
				t.Bold, t.Size = true, 42*mm/10
			}
			k.settle(t, func(off measure.Length) geom.Point { return k.place(p.Wall, x.Lo+x.Length()/2, 7*mm/2+off) }, 2)
		}
	}
}
