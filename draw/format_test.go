package draw_test

import (
	"testing"

	"firstdrop/draw"
	"firstdrop/measure"
)

// ISO 216:2007, table 1; ANSI/ASME Y14.1, sizes A and B (8.5 × 11 and 11 × 17 in).
func TestFormats(t *testing.T) {
	for name, want := range map[string][2]measure.Length{
		"a4": {210 * mm, 297 * mm}, "A3": {297 * mm, 420 * mm},
		"letter":  {215_900 * measure.Micrometre, 279_400 * measure.Micrometre},
		"TABLOID": {279_400 * measure.Micrometre, 431_800 * measure.Micrometre},
	} {
		f, ok := draw.FormatNamed(name)
		if !ok || f.Width != want[0] || f.Height != want[1] {
			t.Errorf("%s is %v × %v, want %v", name, f.Width, f.Height, want)
		}
		if l := f.Landscape(); l.Width != f.Height || l.Height != f.Width || l.Landscape() != l {
			t.Errorf("%s lying is %v × %v", name, l.Width, l.Height)
		}
	}
	if _, ok := draw.FormatNamed("A5"); ok {
		t.Error("A5 is no format here")
	}
}
