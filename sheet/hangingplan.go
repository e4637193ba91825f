package sheet

import (
	"fmt"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/draw/pdf"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/tell"
	"firstdrop/words"
)

// hanging sets the hanging plan: for every run its floor key and the unrolled room,
// then an elevation of every wall.
func (s *Set) hanging() error {
	for r := range s.Plan.Runs {
		s.overview(r)
		for w := range s.Plan.Runs[r].Layout.Run.Walls {
			if err := s.elevation(r, w); err != nil {
				return err
			}
			s.tick()
		}
	}
	s.tick()
	return nil
}

// overview sets the page that shows the whole run.
func (s *Set) overview(r int) {
	l := s.Plan.Runs[r].Layout
	title := s.ofRun(s.text("page.hanging"), l.Run.Name)
	p := s.book.Add(title, true)
	p.Marks = append(p.Marks, pdf.Bookmark{Title: title})
	f := p.Frame
	band := s.band(r, f.X.Length(), f.Y.Length()*52/100)
	low := draw.Box{X: f.X, Y: across(f.Y.Lo, f.Y.Lo+band.Window.Y.Length()+page.Sub.Line())}
	s.captioned(p, low, s.text("page.band"), band)
	high := draw.Box{X: f.X, Y: across(low.Y.Hi+5*mm, f.Y.Hi)}
	key := high
	key.X.Hi = key.X.Lo + f.X.Length()*47/100
	floor := s.floorKey(r, key.X.Length(), key.Y.Length()-page.Sub.Line())
	s.captioned(p, key, s.text("page.floor-key"), floor)
	facts := high
	facts.X.Lo = key.X.Hi + 10*mm
	s.facts(p, facts, r)
	p.Scale = scaleOf(band.Scale)
}

// captioned places a drawing under its name, in the middle of a box.
func (s *Set) captioned(p *page.Page, b draw.Box, name string, d *draw.Scene) {
	head := b
	head.Y.Lo = head.Y.Hi - page.Sub.Line()
	caption := name + "  "
	p.In(draw.Group{Role: draw.Subheading}, func() { p.Set(head, page.Sub, caption) })
	p.Set(head, page.Small.At(draw.End), scaleOf(d.Scale))
	room := draw.Box{X: b.X, Y: across(b.Y.Lo, head.Y.Lo)}
	w, h := d.Window.X.Length(), d.Window.Y.Length()
	p.Place(d, pt(room.X.Lo+(room.X.Length()-w)/2, room.Y.Lo+(room.Y.Length()-h)/2))
}

// facts writes what one must know before the first drop.
func (s *Set) facts(p *page.Page, b draw.Box, r int) {
	for _, f := range s.factsOf(r) {
		name := b
		name.X.Hi = name.X.Lo + 24*mm
		words := b
		words.X.Lo = name.X.Hi
		if b.Y.Length() < page.Body.Line() {
			return
		}
		p.Set(name, page.Body.Inked(page.Quiet), f[0])
		b.Y.Hi = p.Paragraph(words, page.Body, f[1]) - mm
		p.Level(b.X, b.Y.Hi+mm/3, page.Thin)
	}
}

func (s *Set) factsOf(r int) (facts [][2]string) {
	l := s.Plan.Runs[r].Layout
	add := func(name, words string) { facts = append(facts, [2]string{name, words}) }
	size := s.size(l.Paper.Width) + " × " + s.size(l.Paper.RollLength)
	add(s.text("page.fact-paper"), l.Paper.Name+", "+size+", "+s.matchWords(l.Paper.Match))
	if len(l.Plumbs) == 0 || len(l.Pieces) == 0 {
		add(s.text("page.fact-start"), s.text("page.nothing"))
		return facts
	}
	add(s.text("page.fact-start"), tell.FirstLine(s.words(), l))
	add(s.text("page.fact-order"), tell.Directions(s.words(), l))
	add(s.text("page.fact-kill"), tell.Kill(s.words(), l))
	add(s.text("page.fact-design"), s.designWords(l))
	add(s.text("page.fact-plumbs"), s.text("page.plumbs", "n", len(l.Plumbs)))
	if letters := []rune(s.Lacking()); len(letters) > 0 {
		add(s.text("page.fact-letters"), s.text("page.lacking", "n", len(letters), "letters", codePoints(letters)))
	}
	add(s.text("page.fact-care"), s.text("page.plan-care"))
	return facts
}

func (s *Set) designWords(l *hanging.Layout) string {
	if l.Paper.Repeat <= 0 {
		return s.text("page.plain-paper")
	}
	return s.text("page.design-at", "into", s.size(l.Choice.Design), "repeat", s.size(l.Paper.Repeat))
}

// lay is a way to draw a wall on a page.
type lay struct {
	lying  bool
	beside bool // the notes stand beside the drawing, not below
	scale  int64
	width  measure.Length // of the drawing
	notes  page.Type
}

// noteWide is how wide a column of notes is at least.
const noteWide = 54 * mm

// noteTypes are how the notes of an elevation are set: smaller before a page more is
// taken for them.
var noteTypes = []page.Type{page.Body.Sized(4 * mm), page.Body.Sized(35 * mm / 10), page.Body.Sized(3 * mm)}

// noteIndent leaves room for a note's mark.
const noteIndent = 13 * mm

// elevation sets the page of one wall: the largest drawing that leaves room for its
// notes on the same page.
func (s *Set) elevation(r, w int) error {
	ways := s.lays(r, w)
	if len(ways) == 0 {
		run := s.Plan.Runs[r].Layout.Run
		return &TooLargeError{Wall: run.WallName(w), Width: run.Walls[w].Width, Format: s.Format.Name, Scale: s.Scale}
	}
	e, way := s.chosen(r, w, ways)
	s.setElevation(e, way)
	return nil
}

// chosen returns the largest drawing that leaves room for its notes, unless that is
// much smaller than the largest that has room itself: rather smaller letters, and then
// a page more for notes.
func (s *Set) chosen(r, w int, ways []lay) (*elevation, lay) {
	var drawn []*elevation
	largest := -1
	for i, way := range ways {
		if largest >= 0 && 5*way.scale > 8*ways[largest].scale {
			break
		}
		drawn = append(drawn, s.drawing(r, w, way))
		if largest < 0 && drawn[i].drawnTall() <= s.roomFor(way) {
			largest = i
		}
		if s.fits(drawn[i], way) {
			return drawn[i], way
		}
	}
	for _, t := range noteTypes[1:] {
		for i, e := range drawn {
			if ways[i].notes = t; s.fits(e, ways[i]) {
				return e, ways[i]
			}
		}
	}
	if largest < 0 {
		largest = len(drawn) - 1
	}
	ways[largest].notes = noteTypes[0]
	return drawn[largest], ways[largest]
}

// roomFor is the height that a page has for a drawing.
func (s *Set) roomFor(way lay) measure.Length {
	return s.frame(way.lying).Y.Length() - page.Body.Line() - 4*mm
}

// TooLargeError says that a wall has no room on the paper.
type TooLargeError struct {
	Wall   string
	Width  measure.Length
	Format string
	Scale  int64 // that was asked for; 0: any
}

// lays lists the ways to draw a wall that have room for the drawing itself, the
// largest scale first and upright before lying.
func (s *Set) lays(r, w int) (all []lay) {
	x, y := s.Plan.Runs[r].Layout.Run.Face(w).Bounds()
	for _, n := range scales[s.System] {
		if s.Scale > 0 && n != s.Scale {
			continue
		}
		all = append(all, s.laysAt(n, x, y)...)
	}
	if len(all) == 0 && s.Scale > 0 {
		all = s.laysAt(s.Scale, x, y)
	}
	return all
}

// beside is what stands above and below a wall on its page at least: the ends'
// names, and the running dimension.
const besideWall = 36 * mm

// columnAir is what lies between a drawing and the notes beside it.
const columnAir = 8 * mm

func (s *Set) laysAt(n int64, x, y geom.Interval) (all []lay) {
	for _, lying := range []bool{false, true} {
		f := s.frame(lying)
		w, h := x.Length().Scaled(1, n), y.Length().Scaled(1, n)
		if w > f.X.Length()-2*gutter || h > f.Y.Length()-besideWall || h > tallest && s.Scale == 0 {
			continue
		}
		all = append(all, lay{lying: lying, scale: n, width: f.X.Length(), notes: noteTypes[0]})
		most := f.X.Length() - noteWide - columnAir
		for _, own := range []measure.Length{min(most, 2*upright/3), upright / 2} {
			if own = max(w+2*gutter, own); own <= most {
				all = append(all, lay{lying: lying, beside: true, scale: n, width: own, notes: noteTypes[0]})
			}
		}
	}
	return all
}

// drawing draws the wall without title and notes.
func (s *Set) drawing(r, w int, way lay) *elevation {
	e := newElevation(s.Plan, r, w, Options{
		System: s.System, Lang: s.Lang, Width: way.width, Scale: way.scale, Repeat: s.repeat(s.Plan.Task.Runs[r].Paper),
	})
	e.drawn()
	e.beyond()
	e.sortNotes()
	return e
}

// tall returns the height of the drawing.
func (e *elevation) drawnTall() measure.Length { return e.crown - e.cursor + 4*mm }

// fits reports whether the notes have room under the drawing.
func (s *Set) fits(e *elevation, way lay) bool {
	f := s.frame(way.lying)
	left := s.roomFor(way)
	columns := noteColumns(way)
	width := (f.X.Length() - measure.Length(columns-1)*columnAir) / measure.Length(columns)
	switch {
	case e.drawnTall() > left:
		return false
	case way.beside:
		width = f.X.Length() - way.width - columnAir
	default:
		left -= e.drawnTall()
	}
	col, used := 1, measure.Length(0)
	for _, n := range e.notes {
		tall := n.tall(way.notes, width)
		if used += tall; used > left {
			col, used = col+1, tall
		}
		if tall > left || col > columns {
			return false
		}
	}
	return true
}

// noteColumns is in how many columns the notes stand.
func noteColumns(way lay) int {
	if way.lying && !way.beside {
		return 2
	}
	return 1
}

// tall returns the height that a note takes on a page.
func (n *note) tall(t page.Type, width measure.Length) measure.Length {
	t.Bold = n.mark == cautionMark
	lines := measure.Length(len(page.Wrap(t, words.Unbroken(n.text), width-noteIndent, 0)))
	return max(lines*t.Line()+t.Size/3, pennantHigh+3*mm/2)
}

func (s *Set) setElevation(e *elevation, way lay) {
	f := s.book.Begin(tell.WallTitle(s.words(), e.name()), way.lying)
	f.Marks[0].Level = 1
	f.Scale = scaleOf(e.scale)
	f.Take(mm)
	sub := f.Take(page.Body.Line())
	f.Set(sub, page.Body.Inked(page.Quiet), s.text("page.sub", "width", s.size(e.wall.Width), "run", s.words().Name(e.run.Name), "paper", e.label.Name))
	d := e.finish()
	tall := min(e.drawnTall(), f.Left())
	at := f.Take(tall)
	x := at.X.Lo
	if !way.beside {
		x += (at.X.Length() - d.Window.X.Length()) / 2
	}
	f.Place(d, pt(x, at.Y.Lo+2*mm-margin))
	f.Gap(2 * mm)
	if way.beside {
		f.Within(draw.Box{X: across(at.X.Hi-(at.X.Length()-way.width-columnAir), at.X.Hi), Y: across(f.Frame.Y.Lo, at.Y.Hi-4*mm)}, 1)
	} else {
		f.Columns(noteColumns(way))
	}
	for i := range e.notes {
		setNote(f, way.notes, &e.notes[i])
	}
}

// setNote writes a note with its mark beside it.
func setNote(f *page.Flow, t page.Type, n *note) {
	f.Need(n.tall(t, f.X().Length()))
	before := f.Y()
	t.Bold = n.mark == cautionMark
	f.Item(t, noteIndent, func(p *page.Page, b draw.Box) {
		p.Add(n.sample(pt(b.X.Lo, b.Y.Hi-t.Size*108/100))...)
	}, words.Unbroken(n.text))
	if tall := pennantHigh + 3*mm/2; before-f.Y() < tall && before > f.Y() {
		f.Gap(tall - (before - f.Y()))
	}
}

// matchWords says how drops stand against each other.
func (s *Set) matchWords(m paper.Match) string {
	switch {
	case m.Kind == paper.Free:
		return s.text("match.free")
	case m.Kind == paper.Straight:
		return s.text("match.straight")
	case m.Den == 0:
		return s.text("match.length", "size", s.size(m.Length))
	case m.Num == 1 && m.Den == 2:
		return s.text("match.half")
	}
	return s.text("match.part", "num", int(m.Num), "den", int(m.Den))
}

// Error says what to do about it.
func (e *TooLargeError) Error() string {
	if e.Scale > 0 {
		return fmt.Sprintf("wall %s, %v wide, has no room on %s at 1:%d: take larger paper or a smaller scale", e.Wall, e.Width, e.Format, e.Scale)
	}
	return fmt.Sprintf("wall %s, %v wide, has no room on %s: take larger paper", e.Wall, e.Width, e.Format)
}
