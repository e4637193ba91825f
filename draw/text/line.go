package text

import (
	"slices"
	"sync"
	"unicode"

	"github.com/go-text/typesetting/di"
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/language"
	"github.com/go-text/typesetting/segmenter"
	"github.com/go-text/typesetting/shaping"
	"golang.org/x/image/math/fixed"
)

// Glyph is a shape of a font and where it stands, in thousandths of the letters'
// size, counted from the left end of the line.
type Glyph struct {
	ID      uint16
	X, Y    int // of the glyph's own origin, Y upwards
	Advance int
	// From and To are the runes of the run's text that the glyph shows, perhaps
	// together with its neighbours: a ligature has several, a stack of marks one
	// for several glyphs.
	From, To int
}

// Run is glyphs of one font in one direction, as they stand from left to right.
type Run struct {
	Font        *Font
	RightToLeft bool
	Text        []rune // in the order of reading
	X           int    // of the left end
	Width       int
	Glyphs      []Glyph
}

// Line is a shaped line, its runs as they stand from left to right.
type Line struct {
	Runs  []Run
	Width int
}

// Shape shapes a line of text. It never fails: what no font holds shows as a box.
func Shape(line string, bold bool) *Line {
	s := shapers.Get().(*shaper)
	defer shapers.Put(s)
	runes := []rune(line)
	base := 0
	if IsRightToLeft(line) {
		base = 1
	}
	l := &Line{}
	for _, sp := range spans(runes, base) {
		pieces := s.pieces(runes, sp, bold)
		for i := range pieces {
			p := &pieces[i]
			if sp.level%2 == 1 {
				p = &pieces[len(pieces)-1-i]
			}
			s.add(l, runes, *p, sp.level%2 == 1)
		}
	}
	return l
}

// Lacking returns the letters of a text that no font here holds, each once, as they
// come: they show as boxes. What only joins or alters others is no letter.
func Lacking(text string) string {
	s := shapers.Get().(*shaper)
	defer shapers.Put(s)
	var out []rune
	for _, r := range text {
		if unicode.In(r, unicode.Mn, unicode.Cf, unicode.Cc, unicode.Zs) || slices.Contains(out, r) {
			continue
		}
		if f := s.faceFor([]rune{r}, false); !f.has(r) {
			out = append(out, r)
		}
	}
	return string(out)
}

// shapers are kept for use again: a shaper remembers what it learned of a font,
// and only one line may use it at a time.
var shapers = sync.Pool{New: func() any { return &shaper{faces: map[string]face{}} }}

type shaper struct {
	harfbuzz shaping.HarfbuzzShaper
	clusters segmenter.Segmenter
	faces    map[string]face
}

type face struct {
	*Font
	face *font.Face
}

func (s *shaper) face(name string) face {
	f, ok := s.faces[name]
	if !ok {
		f.Font = named(name)
		f.face = font.NewFace(f.font)
		s.faces[name] = f
	}
	return f
}

// piece is a stretch of a line in one font and one script.
type piece struct {
	from, to int
	face     face
	script   language.Script
}

// pieces takes a span apart by font and script, in the order of reading.
func (s *shaper) pieces(line []rune, sp span, bold bool) []piece {
	var all []piece
	s.clusters.Init(line[sp.from:sp.to])
	for it := s.clusters.GraphemeIterator(); it.Next(); {
		g := it.Grapheme()
		p := piece{from: sp.from + g.Offset, to: sp.from + g.Offset + len(g.Text), script: scriptOf(g.Text)}
		n := len(all)
		if n > 0 && p.script == language.Common {
			p.script = all[n-1].script
		}
		p.face = s.faceFor(g.Text, bold)
		if n > 0 && unicode.IsSpace(g.Text[0]) && all[n-1].face.has(g.Text[0]) {
			p.face = all[n-1].face
		}
		if n > 0 && all[n-1].face == p.face && (all[n-1].script == p.script || all[n-1].script == language.Common) {
			all[n-1].to, all[n-1].script = p.to, p.script
			continue
		}
		all = append(all, p)
	}
	return all
}

// scriptOf returns the script of a letter with its marks.
func scriptOf(cluster []rune) language.Script {
	for _, r := range cluster {
		if s := language.LookupScript(r); s.Strong() {
			return s
		}
	}
	return language.Common
}

// faceFor returns the first font that has a letter with all its marks, then the
// first that has the letter; the first of all where none has.
func (s *shaper) faceFor(cluster []rune, bold bool) face {
	names := fonts(bold)
	for _, all := range []bool{true, false} {
		for _, name := range names {
			f := s.face(name)
			if !all && f.has(cluster[0]) || all && hasAll(f.Font, cluster) {
				return f
			}
		}
	}
	return s.face(names[0])
}

func hasAll(f *Font, cluster []rune) bool {
	for _, r := range cluster {
		if !f.has(r) && !isInvisible(r) {
			return false
		}
	}
	return true
}

// isInvisible reports letters that only steer how others are joined.
func isInvisible(r rune) bool {
	return r == 0x200c || r == 0x200d || r >= 0xfe00 && r <= 0xfe0f || unicode.Is(unicode.Cf, r)
}

// add shapes a piece and sets it at the right end of the line.
func (s *shaper) add(l *Line, line []rune, p piece, backwards bool) {
	in := shaping.Input{
		Text: line, RunStart: p.from, RunEnd: p.to, Face: p.face.face, Size: fixed.I(Em),
		Script: p.script, Language: "und",
	}
	if backwards {
		in.Direction = di.DirectionRTL
	}
	out := s.harfbuzz.ShapeNoExtents(in)
	run := Run{Font: p.face.Font, RightToLeft: backwards, Text: line[p.from:p.to], X: l.Width}
	for _, g := range out.Glyphs {
		at := g.TextIndex() - p.from
		run.Glyphs = append(run.Glyphs, Glyph{
			ID: uint16(g.GlyphID), X: l.Width + g.XOffset.Round(), Y: g.YOffset.Round(),
			Advance: g.Advance.Round(), From: at, To: at + g.RunesCount(),
		})
		l.Width += g.Advance.Round()
	}
	run.Width = l.Width - run.X
	l.Runs = append(l.Runs, run)
}
