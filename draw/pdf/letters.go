package pdf

import (
	"fmt"
	"strings"
	"unicode"

	"firstdrop/draw"
	"firstdrop/draw/text"
	"firstdrop/measure"
)

// text writes a line of letters. What a reader finds when it searches or copies is
// the text itself: either each glyph stands for a letter by its font's own table,
// or the word says what it is (14.9.4).
func (c *content) text(t draw.Text) {
	if t.Ink.IsNone() || t.Size <= 0 {
		return
	}
	l := text.Shape(draw.Clean(t.Text), t.Bold)
	if len(l.Runs) == 0 {
		return
	}
	start := measure.Length(0)
	switch t.Anchor {
	case draw.Middle:
		start = -t.Size.Scaled(int64(l.Width), 2*text.Em)
	case draw.End:
		start = -t.Size.Scaled(int64(l.Width), text.Em)
	}
	c.setFill(t.Ink)
	c.op("BT")
	for i := range l.Runs {
		c.run(t, &l.Runs[i], start)
	}
	c.op("ET")
}

// run writes glyphs of one font.
func (c *content) run(t draw.Text, r *text.Run, start measure.Length) {
	e := c.wr.font(r.Font)
	c.use("Font", e.name, e.id)
	along := start + t.Size.Scaled(int64(r.X), text.Em)
	x, y := millimetres(t.At.X+along), millimetres(t.At.Y)
	matrix := "1 0 0 1 "
	if t.Turn == draw.Upwards {
		matrix, x, y = "0 1 -1 0 ", millimetres(t.At.X), millimetres(t.At.Y+along)
	}
	c.op("/", e.name, " ", millimetres(t.Size), " Tf ", matrix, x, " ", y, " Tm")
	show := &showing{c: c, font: e, size: t.Size, pen: r.X}
	for _, w := range wordsOf(r) {
		show.word(r, w)
	}
	show.end()
}

// stretch is glyphs from index from up to but not including to.
type stretch struct{ from, to int }

// wordsOf takes a run apart into words and the blanks between them.
func wordsOf(r *text.Run) []stretch {
	var out []stretch
	blank := func(g *text.Glyph) bool { return unicode.IsSpace(r.Text[g.From]) }
	for i := range r.Glyphs {
		n := len(out)
		if n > 0 && blank(&r.Glyphs[i]) == blank(&r.Glyphs[i-1]) {
			out[n-1].to = i + 1
			continue
		}
		out = append(out, stretch{i, i + 1})
	}
	return out
}

// letters returns what a word says, in the order of reading.
func (s stretch) letters(r *text.Run) []rune {
	from, to := len(r.Text), 0
	for _, g := range r.Glyphs[s.from:s.to] {
		from, to = min(from, g.From), max(to, g.To)
	}
	return r.Text[from:to]
}

// showing writes glyphs by the operator TJ (9.4.3), which moves by a font's own
// widths and takes corrections between glyphs.
type showing struct {
	c    *content
	font *embedded
	size measure.Length
	pen  int // where the next glyph would stand, in thousandths of the size
	rise int
	b    strings.Builder
	hex  bool
}

// word writes a word, with its letters beside it where its glyphs do not tell them.
func (s *showing) word(r *text.Run, w stretch) {
	spelled := s.font.spells(r, w)
	if !spelled {
		s.flush()
		s.c.op("/Span<</ActualText ", words(string(w.letters(r))), ">>BDC")
	}
	for _, g := range r.Glyphs[w.from:w.to] {
		s.glyph(g)
	}
	if !spelled {
		s.flush()
		s.c.op("EMC")
	}
}

func (s *showing) glyph(g text.Glyph) {
	if g.Y != s.rise {
		s.flush()
		s.rise = g.Y
		s.c.op(millimetres(s.size.Scaled(int64(g.Y), text.Em)), " Ts")
	}
	if g.X != s.pen {
		s.closeHex()
		fmt.Fprintf(&s.b, "%d", s.pen-g.X)
	}
	if !s.hex {
		s.b.WriteString("<")
		s.hex = true
	}
	fmt.Fprintf(&s.b, "%04X", g.ID)
	s.pen = g.X + s.font.width(g.ID)
}

func (s *showing) closeHex() {
	if s.hex {
		s.b.WriteString(">")
		s.hex = false
	}
}

func (s *showing) flush() {
	s.closeHex()
	if s.b.Len() > 0 {
		s.c.op("[", s.b.String(), "]TJ")
		s.b.Reset()
	}
}

// end writes what is left and sets letters back on the line.
func (s *showing) end() {
	s.flush()
	if s.rise != 0 {
		s.c.op("0 Ts")
	}
}
