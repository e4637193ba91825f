package main

import (
	"fmt"
	"slices"
	"strings"

	"firstdrop/finding"
	"firstdrop/plan"
)

// The summary is a table of paragraphs, each beside its label:
//
//	Buy       5 rolls of …
//	          4 will not do …
//	Start     Plumb line on …
//
// It fits 24 lines of 80 columns for an ordinary room: findings take the lines
// that the rest leaves free, and those without a place are counted.

const (
	labelWidth    = 10
	leastFindings = 2 // shown however long the rest is
)

// document returns the plan as other programs read it.
func (pl *planned) document() *plan.Document { return pl.plan.Document(pl.title()) }

// title returns what the job is called: its name, or else that of its file.
func (pl *planned) title() string {
	if name := strings.Join(strings.Fields(pl.job.Name), " "); name != "" {
		return name
	}
	return pl.name
}

// summary returns what one wants to know first, as lines for the screen. notes
// are paragraphs to end with.
func (s *screen) summary(pl *planned, notes []string) []string {
	lines := []string{s.in(bold, pl.heading())}
	for i := range pl.plan.Papers {
		if pl.plan.Papers[i].Cutting != nil {
			lines = append(lines, s.entry("Buy", pl.buy(i)...)...)
		}
	}
	for i := range pl.plan.Runs {
		lines = append(lines, s.begin(pl, i)...)
	}
	var last []string
	for i, l := range wrap("Care: "+pl.care(), s.width) {
		if i == 0 {
			l = s.in(bold, "Care:") + l[len("Care:"):]
		}
		last = append(last, l)
	}
	for _, n := range notes {
		last = append(last, wrap(n, s.width)...)
	}
	free := s.height - 1 - len(lines) - len(last)
	return append(append(lines, s.watch(pl, free)...), last...)
}

// heading names the job and counts its drops and pieces.
func (pl *planned) heading() string {
	drops, pieces := 0, 0
	for _, p := range pl.plan.Papers {
		drops += p.Drops
		pieces += len(p.Pieces)
	}
	return fmt.Sprintf("%s: %s in %s", pl.title(), count(drops, "drop"), count(pieces, "piece"))
}

// entry sets paragraphs beside a label.
func (s *screen) entry(label string, paragraphs ...string) []string {
	var lines []string
	for _, p := range paragraphs {
		for _, l := range wrap(p, s.width-labelWidth) {
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
func (s *screen) begin(pl *planned, run int) []string {
	lines := s.entry("Start", pl.firstLine(run)...)
	if kill := pl.killSeam(run); kill != "" {
		lines = append(lines, s.entry("Kill seam", kill)...)
	}
	var cuts []string
	for _, c := range pl.firstCuts(run) {
		cuts = append(cuts, strings.Repeat(" ", labelWidth)+c)
	}
	return append(lines, s.labelled("Cut first", cuts)...)
}

// watch lists the gravest findings that free lines have room for. That the
// design misses at the kill seam stands above already.
func (s *screen) watch(pl *planned, free int) []string {
	fs := slices.DeleteFunc(slices.Clone(pl.plan.Findings), func(f finding.Finding) bool { return f.Code == plan.KillMisfit })
	var lines []string
	shown := 0
	for _, f := range grave(fs) {
		next := s.findingLines(f, pl.units, s.width-labelWidth)
		more := 1 // the line that counts the rest
		if shown+1 == len(fs) {
			more = 0
		}
		if shown >= leastFindings && len(lines)+len(next)+more > free {
			break
		}
		lines = append(lines, next...)
		shown++
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

// grave returns the findings that are more than notes; the gravest come first.
func grave(fs []finding.Finding) []finding.Finding {
	for i, f := range fs {
		if f.Severity == finding.Note {
			return fs[:i]
		}
	}
	return fs
}
