package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf16"

	"firstdrop/draw/text"
)

// embedded is a font of the document with the glyphs that it uses.
type embedded struct {
	name  string // in pages: "T1"
	id    int
	font  *text.Font
	sfnt  *sfnt
	spell map[uint16]string // what each glyph stands for
}

// font returns the document's entry for a font.
func (wr *writer) font(f *text.Font) *embedded {
	if e := wr.fonts[f.Name]; e != nil {
		return e
	}
	s, err := parsed(f.Data())
	if err != nil { // the fonts are our own
		panic(fmt.Sprintf("font %s: %v", f.Name, err))
	}
	e := &embedded{name: fmt.Sprintf("T%d", len(wr.fonts)+1), id: wr.file.reserve(), font: f, sfnt: s, spell: map[uint16]string{}}
	wr.fonts[f.Name], wr.order = e, append(wr.order, e)
	return e
}

func (e *embedded) width(glyph uint16) int { return e.sfnt.advance(glyph) }

// spells reports whether the glyphs of a word tell its letters, one or more each, and
// notes for every glyph what it stands for if it did not stand for something yet.
func (e *embedded) spells(r *text.Run, w stretch) bool {
	all := true
	for i := w.from; i < w.to; i++ {
		g := r.Glyphs[i]
		alone := (i == 0 || r.Glyphs[i-1].From != g.From) && (i+1 == len(r.Glyphs) || r.Glyphs[i+1].From != g.From)
		said := ""
		if alone {
			said = string(r.Text[g.From:g.To])
		}
		if have, ok := e.spell[g.ID]; !ok {
			e.spell[g.ID] = said
		} else if have != said {
			all = false
		}
		all = all && alone && g.ID != 0
	}
	return all
}

// write writes the font's objects (9.7).
func (e *embedded) write(f *file) error {
	glyphs := slices.Sorted(maps.Keys(e.spell))
	data := e.sfnt.subset(glyphs)
	sum := sha256.Sum256(data)
	name := make([]byte, 6)
	for i := range name {
		name[i] = 'A' + sum[i]%26
	}
	base := string(name) + "+" + e.font.Name
	program := f.addStream(fmt.Sprintf("/Length1 %d", len(data)), data)
	box := e.sfnt.bounds()
	descriptor := f.add(fmt.Sprintf("<</Type/FontDescriptor/FontName/%s/Flags 4/FontBBox[%d %d %d %d]/ItalicAngle 0/Ascent %d/Descent %d/CapHeight 714/StemV %d/FontFile2 %d 0 R>>",
		base, box[0], box[1], box[2], box[3], text.Ascent, -text.Descent, map[bool]int{false: 80, true: 140}[strings.HasSuffix(base, "Bold")], program))
	var widths strings.Builder
	for _, g := range glyphs {
		fmt.Fprintf(&widths, "%d[%d]", g, e.width(g))
	}
	cid := f.add(fmt.Sprintf("<</Type/Font/Subtype/CIDFontType2/BaseFont/%s/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>/FontDescriptor %d 0 R/CIDToGIDMap/Identity/W[%s]>>",
		base, descriptor, widths.String()))
	letters := f.addStream("", e.letters(glyphs))
	f.set(e.id, fmt.Sprintf("<</Type/Font/Subtype/Type0/BaseFont/%s/Encoding/Identity-H/DescendantFonts[%d 0 R]/ToUnicode %d 0 R>>", base, cid, letters))
	return nil
}

// letters returns the table from glyphs to letters (9.10.3).
func (e *embedded) letters(glyphs []uint16) []byte {
	var lines []string
	for _, g := range glyphs {
		if e.spell[g] == "" {
			continue
		}
		hex := ""
		for _, u := range utf16.Encode([]rune(e.spell[g])) {
			hex += fmt.Sprintf("%04X", u)
		}
		lines = append(lines, fmt.Sprintf("<%04X><%s>\n", g, hex))
	}
	var b bytes.Buffer
	b.WriteString("/CIDInit/ProcSet findresource begin 12 dict begin begincmap\n" +
		"/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n" +
		"/CMapName/Adobe-Identity-UCS def /CMapType 2 def\n" +
		"1 begincodespacerange\n<0000><FFFF>\nendcodespacerange\n")
	for part := range slices.Chunk(lines, 100) { // no more at a time (Adobe Technical Note 5014)
		fmt.Fprintf(&b, "%d beginbfchar\n%sendbfchar\n", len(part), strings.Join(part, ""))
	}
	b.WriteString("endcmap CMapName currentdict/CMap defineresource pop end end\n")
	return b.Bytes()
}
