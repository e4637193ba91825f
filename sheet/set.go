package sheet

import (
	"fmt"
	"slices"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/draw/pdf"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/plan"
	"firstdrop/words"
)

// Kind is one of the printed sheets.
type Kind string

// The sheets, in the order in which one needs them.
const (
	SurveySheet  Kind = "survey"  // what to measure
	OrderSheet   Kind = "order"   // what to buy, and why so much
	HangingSheet Kind = "hanging" // where every drop stands
	CuttingSheet Kind = "cutting" // what to cut, from which roll
	RollSheet    Kind = "rolls"   // every cut to scale
	LabelSheet   Kind = "labels"  // to stick on the drops
	StepSheet    Kind = "steps"   // the work in order
	RecordSheet  Kind = "record"  // for whoever lives with the paper
)

// Kinds lists all sheets.
func Kinds() []Kind {
	return []Kind{SurveySheet, OrderSheet, HangingSheet, CuttingSheet, RollSheet, LabelSheet, StepSheet, RecordSheet}
}

// Set is what the sheets of a job are made from.
type Set struct {
	Job  string     // its name
	Plan *plan.Plan // nil before anything is known: then there is only a survey sheet
	// System of units. It says which paper is taken when Format is not given.
	System measure.System
	// Lang is the language of what the drawings say; British English when nil. The
	// sheets' own words are British English so far.
	Lang   *words.Catalogue
	Format draw.Format // that of the language when it has no size
	// Scale is n for elevations at 1:n. 0 chooses for each wall the largest that fits.
	Scale int64
	// Repeats are pictures of one repeat of each paper, as the plan's papers; nil,
	// and nil among them, where there is none.
	Repeats []*draw.Picture
	Labels  Grid // of the labels; the zero value is plain paper with cutting lines
	// Jobs is how many jobs are simulated for the certainty curve; 0 leaves it out.
	Jobs int
	// Progress, if given, is told before every part of the work how much is done.
	Progress func(done, of int)

	book  *page.Book
	done  int
	of    int
	tight bool // with less air: see snug
}

// Document sets the sheets of those kinds, in that order, each but once. An error
// says what does not fit, or is not there.
func (s Set) Document(kinds ...Kind) (*pdf.Document, error) {
	book, err := s.Book(kinds...)
	if err != nil {
		return nil, err
	}
	return book.Document(), nil
}

// Book is as Document, before the pages are bound.
func (s Set) Book(kinds ...Kind) (*page.Book, error) {
	if s.Format.Width <= 0 || s.Format.Height <= 0 {
		s.Format = s.usualFormat()
	}
	s.book = &page.Book{Format: s.Format, Job: s.title(), Words: s.pageWords()}
	s.of = s.parts(kinds)
	var seen []Kind
	for _, k := range kinds {
		if slices.Contains(seen, k) {
			continue
		}
		seen = append(seen, k)
		if err := s.sheet(k); err != nil {
			return nil, err
		}
	}
	if len(s.book.Pages) == 0 {
		return nil, fmt.Errorf("sheet: no sheets were asked for")
	}
	return s.book, nil
}

// title is what every page says of the job.
func (s *Set) title() string {
	switch {
	case s.Job != "":
		return s.Job
	case s.Plan == nil:
		return s.text("page.blank-job")
	}
	return s.text("page.no-name")
}

// sheet sets one sheet.
func (s *Set) sheet(k Kind) error {
	if s.Plan == nil && k != SurveySheet {
		return fmt.Errorf("sheet: %q needs a plan", k)
	}
	switch k {
	case SurveySheet:
		s.survey()
	case OrderSheet:
		if err := s.snug(s.orders); err != nil {
			return err
		}
	case HangingSheet:
		return s.hanging()
	case CuttingSheet:
		return s.eachPaper(s.cutting)
	case RollSheet:
		return s.eachPaper(s.rollMap)
	case LabelSheet:
		return s.labels()
	case StepSheet:
		if err := s.snug(s.steps); err != nil {
			return err
		}
	case RecordSheet:
		if err := s.snug(s.record); err != nil {
			return err
		}
	default:
		return fmt.Errorf("sheet: there is no sheet %q", k)
	}
	s.tick()
	return nil
}

// snug sets a sheet, and once more with less air where that saves a last page with
// little on it.
func (s *Set) snug(set func() (*page.Flow, error)) error {
	before := len(s.book.Pages)
	f, err := set()
	all := s.book.Pages
	if err != nil || len(all) < before+2 || f.Frame.Y.Hi-f.Y() > f.Frame.Y.Length()/3 {
		return err
	}
	s.book.Pages, s.tight = slices.Clone(all[:before]), true
	defer func() { s.tight = false }()
	if _, err = set(); err == nil && len(s.book.Pages) >= len(all) {
		s.book.Pages = all
	}
	return err
}

// air returns a height, or with less air another.
func (s *Set) air(roomy, tight measure.Length) measure.Length {
	if s.tight {
		return tight
	}
	return roomy
}

// parts counts how often tick will be called: once for every wall, and once for
// every other sheet.
func (s *Set) parts(kinds []Kind) (n int) {
	n = len(kinds)
	if s.Plan != nil && slices.Contains(kinds, HangingSheet) {
		for _, r := range s.Plan.Runs {
			n += len(r.Layout.Run.Walls)
		}
	}
	return n
}

// tick tells that a part of the work is done.
func (s *Set) tick() {
	s.done++
	if s.Progress != nil {
		s.Progress(min(s.done, s.of), s.of)
	}
}

// eachPaper sets a sheet for every paper that is used.
func (s *Set) eachPaper(set func(paper int) (*page.Flow, error)) error {
	for i := range s.Plan.Papers {
		if len(s.Plan.Papers[i].Batches) == 0 {
			continue
		}
		if err := s.snug(func() (*page.Flow, error) { return set(i) }); err != nil {
			return err
		}
	}
	s.tick()
	return nil
}

// repeat returns the picture of a paper; nil when there is none.
func (s *Set) repeat(paper int) *draw.Picture {
	if paper < len(s.Repeats) {
		return s.Repeats[paper]
	}
	return nil
}

// size returns a length as people read it.
func (s *Set) size(l measure.Length) string { return s.words().Plain(l) }

// words returns the catalogue, with lengths in the set's units.
func (s *Set) words() *words.Catalogue { return s.Lang.In(s.System) }

// bare returns a length without its unit where the one behind it says it.
func (s *Set) bare(l measure.Length) string { return s.words().Figure(l) }

// frame returns what a page has room for.
func (s *Set) frame(lying bool) draw.Box {
	f := s.Format
	if lying {
		f = f.Landscape()
	}
	return page.FrameOf(f)
}

// curve returns how sure the count of a batch is; nil where that cannot be told.
func (s *Set) curve(paper, batch int) *order.Curve {
	if s.Jobs <= 0 {
		return nil
	}
	c, err := s.Plan.Certainty(paper, batch, s.Plan.Chances(paper), s.Jobs, 1)
	if err != nil {
		return nil
	}
	return c
}

// text returns a message of the catalogue.
func (s *Set) text(id string, args ...any) string { return s.words().Text(id, args...) }

// pageWords are what every page says.
func (s *Set) pageWords() page.Words {
	return page.Words{
		Lang:   s.words().Tag(),
		PageOf: func(n, of int) string { return fmt.Sprintf("%d / %d", n, of) },
		Ruler:  s.text("page.ruler"),
	}
}

// usualFormat returns the paper that printers hold where the language is spoken;
// in English, Letter for those who measure in inches.
func (s *Set) usualFormat() draw.Format {
	inches := s.System == measure.Imperial && strings.HasPrefix(s.words().Tag(), "en")
	if format, ok := draw.FormatNamed(s.words().Page()); ok && !inches {
		return format
	}
	return draw.Letter
}

// scaleOf writes a scale.
func scaleOf(n int64) string { return fmt.Sprintf("1:%d", n) }

// ofRun adds a run's name to a title where there are several.
func (s *Set) ofRun(title, run string) string {
	if len(s.Plan.Runs) > 1 {
		return s.text("page.of", "title", title, "name", s.words().Name(run))
	}
	return title
}

// pt returns a point.
func pt(x, y measure.Length) geom.Point { return geom.Point{X: x, Y: y} }

// across returns a stretch.
func across(lo, hi measure.Length) geom.Interval { return geom.Interval{Lo: lo, Hi: hi} }
