package main

import (
	"errors"
	"slices"
	"strings"
	"unicode/utf8"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/plan"
	"firstdrop/tell"
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
	parts := s.opening(pl, false, true)
	const watched, amply = 2, 7 // lines at least for what to watch for, and to tell more
	if lineCount(parts)+amply+len(last) >= s.height {
		parts = s.opening(pl, false, false)
	}
	if lineCount(parts)+watched+len(last) >= s.height {
		parts = s.opening(pl, true, false)
	}
	free := s.height - 1 - lineCount(parts) - len(last)
	return s.spaced(append(parts, s.watch(pl, free), last))
}

// opening says what to buy and where to begin; brief, only what cannot be read
// elsewhere; eased, also what corners can do at the kill seam.
func (s *screen) opening(pl *planned, brief, eased bool) [][]string {
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
		parts = append(parts, s.begin(pl, i, brief, eased))
	}
	return parts
}

// stock tells of one paper what is missing, what to buy, and what is in hand.
func (s *screen) stock(pl *planned, i int, brief bool) []string {
	var lines []string
	if missing := tell.Missing(pl.lang, pl.plan, i); missing != "" {
		for _, l := range s.entry(pl.text("label.missing"), missing) {
			lines = append(lines, s.in(red, l))
		}
	}
	lines = append(lines, s.entry(pl.text("label.buy"), slices.Concat(tell.Buy(pl.lang, pl.plan, i, brief), pl.trusted(i, brief), pl.mislabelled(i))...)...)
	if hand := tell.InHand(pl.lang, pl.plan, i); len(hand) > 0 {
		lines = append(lines, s.entry(pl.text("label.in-hand"), hand...)...)
	}
	return lines
}

// trusted tells where the proof of a paper's count rests on more than can be
// followed by hand; brief, it is left out.
func (pl *planned) trusted(i int, brief bool) []string {
	for k := range pl.plan.Papers[i].Batches {
		if s := pl.plan.Papers[i].Batches[k].Cutting; !brief && len(audit.Trusted(s)) > 0 {
			return []string{pl.text("summary.trust")}
		}
	}
	return nil
}

// rollsByLabel counts what would be bought of each paper by what its label says.
func (pl *planned) rollsByLabel() ([]int, error) {
	rolls := make([]int, len(pl.plan.Papers))
	for i := range rolls {
		p, err := pl.plan.ByLabel(i)
		if errors.Is(err, plan.ErrStopped) {
			return nil, err
		}
		if err == nil && p != nil && p.Papers[i].Missing() == 0 {
			rolls[i] = p.Papers[i].Buy()
		}
	}
	return rolls, nil
}

// mislabelled tells how many rolls more or fewer would have been bought of a paper by what
// its label says.
func (pl *planned) mislabelled(i int) []string {
	if i >= len(pl.byLabel) || pl.byLabel[i] == 0 || pl.plan.Papers[i].Missing() > 0 {
		return nil
	}
	return []string{tell.ByLabel(pl.lang, pl.byLabel[i], pl.plan.Papers[i].Buy())}
}

// close ends the summary: the cautions, and what was written or might be.
func (s *screen) close(pl *planned, notes []string) []string {
	var lines []string
	word := pl.text("label.care")
	for i, l := range wrap(word+" "+tell.Care(pl.lang, pl.plan), s.width) {
		if i == 0 {
			l = s.in(bold, word) + l[len(word):]
		}
		lines = append(lines, l)
	}
	if len(notes) == 0 {
		notes = []string{pl.text("summary.hint")}
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
	return pl.text("summary.heading", "job", pl.title(), "counted", tell.Counted(pl.lang, pl.plan))
}

// text returns a message in the reader's language.
func (pl *planned) text(id string, args ...any) string { return pl.lang.Text(id, args...) }

// entry sets paragraphs beside a label. One that fits its line keeps its columns.
func (s *screen) entry(label string, paragraphs ...string) []string {
	var lines []string
	for _, p := range paragraphs {
		set := []string{spaced(p)}
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
func (s *screen) begin(pl *planned, run int, brief, eased bool) []string {
	paragraphs := []string{pl.firstLine(run)}
	if untried := tell.Untried(pl.lang, &pl.plan.Runs[run]); untried != "" && !brief {
		paragraphs = append(paragraphs, pl.named(run, untried)+".")
	}
	lines := s.entry(pl.text("label.start"), paragraphs...)
	if l := pl.plan.Runs[run].Layout; tell.KillOf(l) != nil {
		kill := pl.named(run, tell.Kill(pl.lang, l))
		if k, ok := pl.plan.Closing(run); ok && eased {
			if text := tell.Eased(pl.lang, k); text != "" {
				kill += " " + text + "."
			}
		}
		lines = append(lines, s.entry(pl.text("label.kill"), kill)...)
	}
	return append(lines, s.entry(pl.text("label.cut"), pl.firstCuts(run, brief)...)...)
}

// watch lists the gravest findings that free lines have room for, one of each
// kind. That the design misses at the kill seam stands above already.
func (s *screen) watch(pl *planned, free int) []string {
	fs := slices.DeleteFunc(pl.said(), func(f finding.Finding) bool { return f.Code == plan.KillMisfit })
	var lines []string
	shown := 0
	for _, k := range tell.Kinds(grave(fs)) {
		next := s.findingLines(pl.lang, k.First.Severity, k.Words(pl.lang), s.width-labelWidth)
		more := 1 // the line that counts the rest
		if shown+k.Count == len(fs) {
			more = 0
		}
		if shown > 0 && len(lines)+len(next)+more > free {
			break
		}
		lines = append(lines, next...)
		shown += k.Count
	}
	rest, command := "", "firstdrop findings "+printable(pl.name)
	switch more := len(fs) - shown; {
	case more == 0 && shown == 0:
		rest = pl.text("watch.nothing")
	case more > 0 && shown == 0:
		rest = pl.text("watch.notes", "n", more, "command", command)
	case more > 0:
		rest = pl.text("watch.more", "more", more, "command", command)
	}
	lines = append(lines, wrap(rest, s.width-labelWidth)...)
	for i := range lines {
		lines[i] = strings.Repeat(" ", labelWidth) + lines[i]
	}
	return s.labelled(pl.text("label.watch"), lines)
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
