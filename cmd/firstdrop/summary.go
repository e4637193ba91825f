package main

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"firstdrop/finding"
	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

// The summary is a table of paragraphs, each beside its label:
//
//	Buy       5 rolls of …
//	          4 will not do …
//	Start     Plumb line on …
//
// It fits 24 lines of 80 columns for an ordinary room: findings take the lines
// that the rest leaves free, and those without a place are counted.

const labelWidth = 10

// document returns the plan as other programs read it. It names the job as the
// job does, not its file, so that a copy gives the same bytes.
func (pl *planned) document() *plan.Document { return pl.plan.Document(pl.job.Name) }

// title returns what the job is called: its name, or else that of its file.
func (pl *planned) title() string {
	if name := strings.Join(strings.Fields(pl.job.Name), " "); name != "" {
		return name
	}
	return pl.name
}

// summary returns what one wants to know first, as lines for the screen. notes
// are paragraphs to end with, on what was written; without them there is a hint.
func (s *screen) summary(pl *planned, notes []string) []string {
	last := s.close(pl, notes)
	parts := s.opening(pl, false)
	const watched = 2 // lines at least for what to watch for
	if lineCount(parts)+watched+len(last) >= s.height {
		parts = s.opening(pl, true)
	}
	free := s.height - 1 - lineCount(parts) - len(last)
	return s.spaced(append(parts, s.watch(pl, free), last))
}

// opening says what to buy and where to begin; brief, only what cannot be read
// elsewhere.
func (s *screen) opening(pl *planned, brief bool) [][]string {
	var title, stock []string
	for _, l := range wrap(pl.heading(), s.width) {
		title = append(title, s.in(bold, l))
	}
	for i := range pl.plan.Papers {
		if pl.plan.Papers[i].Batches != nil {
			stock = append(stock, s.stock(pl, i, brief)...)
		}
	}
	parts := [][]string{title, stock}
	for i := range pl.plan.Runs {
		parts = append(parts, s.begin(pl, i, brief))
	}
	return parts
}

// stock tells of one paper what is missing, what to buy, and what is in hand.
func (s *screen) stock(pl *planned, i int, brief bool) []string {
	var lines []string
	if missing := pl.missing(i); missing != "" {
		for _, l := range s.entry("MISSING", missing) {
			lines = append(lines, s.in(red, l))
		}
	}
	lines = append(lines, s.entry("Buy", pl.buy(i, brief)...)...)
	if hand := pl.inHand(i); len(hand) > 0 {
		lines = append(lines, s.entry("In hand", hand...)...)
	}
	return lines
}

// close ends the summary: the cautions, and what was written or might be.
func (s *screen) close(pl *planned, notes []string) []string {
	var lines []string
	for i, l := range wrap("Care: "+pl.care(), s.width) {
		if i == 0 {
			l = s.in(bold, "Care:") + l[len("Care:"):]
		}
		lines = append(lines, l)
	}
	if len(notes) == 0 {
		notes = []string{"Lists and drawings: --folder NAME. See also: rolls, certainty, cliffs, help"}
	}
	for _, n := range notes {
		lines = append(lines, wrap(n, s.width)...)
	}
	return lines
}

func lineCount(parts [][]string) (n int) {
	for _, p := range parts {
		n += len(p)
	}
	return n
}

// spaced joins the parts, with an empty line between them where all of that
// fits the screen.
func (s *screen) spaced(parts [][]string) []string {
	parts = slices.DeleteFunc(parts, func(p []string) bool { return len(p) == 0 })
	isRoomy := lineCount(parts)+len(parts)-1 < s.height
	var lines []string
	for i, p := range parts {
		if i > 0 && isRoomy {
			lines = append(lines, "")
		}
		lines = append(lines, p...)
	}
	return lines
}

// heading names the job and counts its drops and pieces.
func (pl *planned) heading() string {
	drops, pieces := 0, 0
	for i := range pl.plan.Papers {
		p := &pl.plan.Papers[i]
		drops += p.Drops
		pieces += p.Pieces()
	}
	return fmt.Sprintf("%s: %s in %s", pl.title(), count(drops, "drop")+" of paper", count(pieces, "piece"))
}

// entry sets paragraphs beside a label. One that fits its line keeps its columns.
func (s *screen) entry(label string, paragraphs ...string) []string {
	var lines []string
	for _, p := range paragraphs {
		set := []string{p}
		if utf8.RuneCountInString(p) > s.width-labelWidth {
			set = wrap(p, s.width-labelWidth)
		}
		for _, l := range set {
			lines = append(lines, strings.Repeat(" ", labelWidth)+l)
		}
	}
	return s.labelled(label, lines)
}

// labelled puts a label into the margin of the first line.
func (s *screen) labelled(label string, lines []string) []string {
	if len(lines) > 0 {
		lines[0] = s.in(bold, pad(label, labelWidth)) + lines[0][labelWidth:]
	}
	return lines
}

// begin tells how a run is begun and where it ends.
func (s *screen) begin(pl *planned, run int, brief bool) []string {
	start := pl.firstLine(run)
	if brief {
		start = []string{strings.Join(start, " ")}
	}
	lines := s.entry("Start", start...)
	if kill := pl.killSeam(run); kill != "" {
		lines = append(lines, s.entry("Kill seam", kill)...)
	}
	return append(lines, s.entry("Cut first", pl.firstCuts(run, brief)...)...)
}

// watch lists the gravest findings that free lines have room for, one of each
// kind. That the design misses at the kill seam stands above already.
func (s *screen) watch(pl *planned, free int) []string {
	fs := slices.DeleteFunc(pl.said(), func(f finding.Finding) bool { return f.Code == plan.KillMisfit })
	var lines []string
	shown := 0
	for _, k := range kinds(grave(fs)) {
		next := s.findingLines(k.first.Severity, k.words(pl.lang), s.width-labelWidth)
		more := 1 // the line that counts the rest
		if shown+k.count == len(fs) {
			more = 0
		}
		if shown > 0 && len(lines)+len(next)+more > free {
			break
		}
		lines = append(lines, next...)
		shown += k.count
	}
	rest := ""
	switch more := len(fs) - shown; {
	case more == 0 && shown == 0:
		rest = "nothing"
	case more > 0 && shown == 0:
		rest = fmt.Sprintf("nothing grave; %s: firstdrop findings %s", count(more, "note"), printable(pl.name))
	case more > 0:
		rest = fmt.Sprintf("and %d more: firstdrop findings %s", more, printable(pl.name))
	}
	lines = append(lines, wrap(rest, s.width-labelWidth)...)
	for i := range lines {
		lines[i] = strings.Repeat(" ", labelWidth) + lines[i]
	}
	return s.labelled("Watch for", lines)
}

// kind is all findings of one code and severity: the first, and how many.
type kind struct {
	first finding.Finding
	count int
}

// words says the first, and how many more there are.
func (k kind) words(lang *words.Catalogue) string {
	text := tell.Finding(lang, k.first)
	if k.count > 1 {
		text += fmt.Sprintf(" And %d more like it.", k.count-1)
	}
	return text
}

// kinds groups findings, in the order of the first of each.
func kinds(fs []finding.Finding) []kind {
	var ks []kind
	for _, f := range fs {
		i := slices.IndexFunc(ks, func(k kind) bool { return k.first.Code == f.Code && k.first.Severity == f.Severity })
		if i < 0 {
			ks = append(ks, kind{f, 1})
		} else {
			ks[i].count++
		}
	}
	return ks
}

// said returns the findings as they are said to people: where there is one run
// only, its name is no news.
func (pl *planned) said() []finding.Finding {
	fs := slices.Clone(pl.plan.Findings)
	for i := range fs {
		if len(pl.plan.Runs) == 1 {
			fs[i].Place.Run = ""
		}
	}
	return fs
}

// grave returns the findings that are more than notes; the gravest come first.
func grave(fs []finding.Finding) []finding.Finding {
	for i, f := range fs {
		if f.Severity == finding.Note {
			return fs[:i]
		}
	}
	return fs
}
