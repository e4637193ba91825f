package text

import (
	"bytes"
	"embed"
	"fmt"
	"sync"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
)

// Em is the size of the letters in the unit that all glyphs are measured in.
const Em = 1000

// Reach is how far letters go above and below the base line at most, in
// thousandths of their size, in any script that the fonts hold; line spacing
// wants more. Latin letters stay within 1,069 and −293 by the font's own figures.
const (
	Ascent  = 1069
	Descent = 293
)

//go:embed fonts/*.ttf
var files embed.FS

// The fonts in the order in which letters are looked for. Signs have no bold.
var plainNames = []string{
	"NotoSans-Regular", "NotoSansArabic-Regular", "NotoSansHebrew-Regular", "NotoSansDevanagari-Regular",
	"NotoSansThai-Regular", "NotoSansGeorgian-Regular", "NotoSansArmenian-Regular",
	"NotoSansMath-Regular", "NotoSansSymbols-Regular", "NotoSansSymbols2-Regular",
}

var boldNames = append([]string{
	"NotoSans-Bold", "NotoSansArabic-Bold", "NotoSansHebrew-Bold", "NotoSansDevanagari-Bold", "NotoSansThai-Bold",
}, plainNames[5:]...)

// Font is one of the embedded fonts.
type Font struct {
	Name string // as in PostScript: "NotoSans-Bold"
	data []byte
	font *font.Font

	lock     sync.Mutex
	outlines map[uint16]Outline
}

// Data returns the font file, a TrueType font. It must not be changed.
func (f *Font) Data() []byte { return f.data }

// has reports whether the font has a glyph for a letter.
func (f *Font) has(r rune) bool {
	_, ok := f.font.NominalGlyph(r)
	return ok
}

// catalogue hands out each font, read when it is first asked for.
var catalogue struct {
	sync.Mutex
	fonts map[string]*Font
}

// named returns an embedded font. The names are those of this file, so that one
// that is missing or broken is a programmer's mistake.
func named(name string) *Font {
	catalogue.Lock()
	defer catalogue.Unlock()
	if f := catalogue.fonts[name]; f != nil {
		return f
	}
	f, err := read(name)
	if err != nil {
		panic(err)
	}
	if catalogue.fonts == nil {
		catalogue.fonts = map[string]*Font{}
	}
	catalogue.fonts[name] = f
	return f
}

func read(name string) (*Font, error) {
	data, err := files.ReadFile("fonts/" + name + ".ttf")
	if err != nil {
		return nil, err
	}
	loader, err := opentype.NewLoader(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("font %s: %w", name, err)
	}
	parsed, err := font.NewFont(loader)
	if err != nil {
		return nil, fmt.Errorf("font %s: %w", name, err)
	}
	if parsed.Upem() != Em {
		return nil, fmt.Errorf("font %s has %d units to the em, want %d", name, parsed.Upem(), Em)
	}
	return &Font{Name: name, data: data, font: parsed, outlines: map[uint16]Outline{}}, nil
}

// fonts returns the names of the fonts for a weight, the first preferred.
func fonts(bold bool) []string {
	if bold {
		return boldNames
	}
	return plainNames
}
