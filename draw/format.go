package draw

import (
	"strings"

	"firstdrop/measure"
)

// Format is a size of paper.
type Format struct {
	Name          string
	Width, Height measure.Length
}

// The formats that home and office printers hold, upright: ISO 216 for A, ANSI/ASME
// Y14.1 for Letter and Tabloid (its sizes A and B).
var (
	A4      = Format{"A4", 210 * measure.Millimetre, 297 * measure.Millimetre}
	A3      = Format{"A3", 297 * measure.Millimetre, 420 * measure.Millimetre}
	Letter  = Format{"Letter", 17 * measure.Inch / 2, 11 * measure.Inch}
	Tabloid = Format{"Tabloid", 11 * measure.Inch, 17 * measure.Inch}
)

// Formats lists all formats.
func Formats() []Format { return []Format{A4, A3, Letter, Tabloid} }

// FormatNamed returns the format of a name, written in any case; ok is false for
// an unknown one.
func FormatNamed(name string) (f Format, ok bool) {
	for _, f := range Formats() {
		if strings.EqualFold(f.Name, name) {
			return f, true
		}
	}
	return Format{}, false
}

// Landscape returns the format lying on its side.
func (f Format) Landscape() Format {
	f.Width, f.Height = max(f.Width, f.Height), min(f.Width, f.Height)
	return f
}

// Box returns the page with its lower left corner at the origin.
func (f Format) Box() Box { return BoxAt(0, 0, f.Width, f.Height) }
