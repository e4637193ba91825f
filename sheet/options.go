package sheet

import (
	"firstdrop/draw"
	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/words"
)

// Options say how a wall is drawn. The zero value is metric, at a scale and on
// a page chosen to fit.
type Options struct {
	System measure.System
	// Lang is the language of all words; British English when nil.
	Lang *words.Catalogue
	// Width of the page: 180 mm when 0, the printable width of upright A4; a
	// wall that would come out too small gets 267 mm, that of A4 on its side,
	// and a longer one as much as it needs.
	Width measure.Length
	// Scale is n for a drawing at 1:n. 0 chooses the largest usual scale that
	// fits; a given one makes the page as wide as it must be.
	Scale int64
	// Findings are marked and told besides the plan's own: those of the survey,
	// as far as they stand on this wall.
	Findings []finding.Finding
	// Repeat is a picture of one width and one repeat of the paper, its upper edge
	// where the repeat begins; nil for none.
	Repeat *draw.Picture
}

const mm = measure.Millimetre

// Sizes on the page. Letters of 5 mm are 11 pixels high when a page of 180 mm
// fills a phone of 390, and read from two metres on paper when they are bold
// and 9 mm.
const (
	body     = 5 * mm // letters
	small    = body * 17 / 20
	large    = 9 * mm
	heading  = 10 * mm
	line     = body * 13 / 10 // from base line to base line
	margin   = 4 * mm         // round everything
	gutter   = 20 * mm        // left and right of the wall
	upright  = 180 * mm       // page widths
	sideways = 267 * mm
	tallPage = 267 * mm // beyond it notes are written small
	tallest  = 150 * mm // of the wall on the page
	thinnest = 9 * mm   // of a drop on the page
)

// Scales people draw to. Metric: those of ISO 5455 and the steps between that
// scale rulers carry; imperial: 1", 3/4", 1/2", 3/8", 1/4" … to the foot
// (common practice).
var scales = [...][]int64{
	measure.Metric:   {10, 20, 25, 30, 40, 50, 75, 100, 150, 200, 250, 300, 400, 500, 1000, 2000, 5000, 10000},
	measure.Imperial: {12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768, 1536, 3072, 6144, 12288},
}

// page chooses scale and page width for a wall of that width and height, hung
// with paper of that width.
func (o Options) page(width, height, paper measure.Length) (scale int64, page measure.Length) {
	fits := func(page measure.Length) int64 {
		for _, n := range scales[o.System] {
			if width/measure.Length(n) <= page-2*gutter && height/measure.Length(n) <= tallest {
				return n
			}
		}
		all := scales[o.System]
		return all[len(all)-1]
	}
	switch {
	case o.Scale > 0:
		scale, page = o.Scale, o.Width
		if page <= 0 {
			page = upright
		}
	case o.Width > 0:
		scale, page = fits(o.Width), o.Width
	default:
		for _, page = range []measure.Length{upright, sideways} {
			if scale = fits(page); paper/measure.Length(scale) >= thinnest || height/measure.Length(scale) > tallest/2 {
				break
			}
		}
		if paper/measure.Length(scale) < thinnest {
			scale = o.legible(scale, height, paper)
		}
	}
	return scale, max(page, upright/2, width/measure.Length(scale)+2*gutter)
}

// legible returns the smallest of the scales below n at which a drop can carry
// its number, as long as the wall stays as tall as a page allows.
func (o Options) legible(n int64, height, paper measure.Length) int64 {
	for i := len(scales[o.System]) - 1; i >= 0; i-- {
		s := scales[o.System][i]
		if s < n && height/measure.Length(s) <= tallest {
			n = s
			if paper/measure.Length(s) >= thinnest {
				break
			}
		}
	}
	return n
}

// The inks: graphite for what is built and drawn, chalk for plumb lines, oxide
// for the kill seam. Each also has a line of its own kind, since many print in
// black only.
var (
	graphite = draw.RGB(0x2f3036)
	quiet    = draw.RGB(0x5f5b54)
	faint    = draw.RGB(0xa49c8f)
	chalk    = draw.RGB(0x1f5590)
	oxide    = draw.RGB(0xa32a17)
	white    = draw.RGB(0xffffff)
	tints    = [2]draw.Ink{draw.RGB(0xfbf8f1), draw.RGB(0xf0e9db)}
	backside = draw.RGB(0xe2d8c4)
)

// The pens.
var (
	outlinePen = draw.Pen{Ink: graphite, Width: 9 * mm / 10}
	seamPen    = draw.Pen{Ink: graphite, Width: 45 * mm / 100}
	finePen    = draw.Pen{Ink: quiet, Width: 3 * mm / 10}
	hatchPen   = draw.Pen{Ink: faint, Width: 2 * mm / 10}
	tagPen     = draw.Pen{Ink: graphite, Width: 6 * mm / 10}
	designPen  = draw.Pen{Ink: quiet, Width: 4 * mm / 10}
	datumPen   = draw.Pen{Ink: quiet, Width: 3 * mm / 10, Dash: []measure.Length{5 * mm, 3 * mm / 2}}
	returnPen  = draw.Pen{Ink: quiet, Width: 3 * mm / 10, Dash: []measure.Length{mm, mm}}
	plumbPen   = draw.Pen{Ink: chalk, Width: 7 * mm / 10, Dash: []measure.Length{4 * mm, 6 * mm / 5, 6 * mm / 10, 6 * mm / 5}}
	killPen    = draw.Pen{Ink: oxide, Width: 6 * mm / 10}
)
