package main

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"firstdrop/finding"
	"firstdrop/tell"
	"firstdrop/words"
)

func (p *program) findingsCommand() *cobra.Command {
	var units unitsFlag
	var asJSON, all bool
	c := p.command(cobra.Command{
		Use: "findings JOB",
		Example: `  firstdrop findings room.yaml
  firstdrop findings room.yaml --all
  firstdrop findings room.yaml --json`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		pl, err := p.plan(c.Context(), args[0], units)
		if err != nil {
			return err
		}
		if asJSON {
			return written(writeFindings(p.out, pl.plan.Findings, pl.said(), pl.lang))
		}
		if len(pl.plan.Findings) == 0 {
			_, err := fmt.Fprintln(p.out, pl.text("watch.clear"))
			return written(err)
		}
		said := tell.Each(pl.said())
		if !all {
			said = tell.Folded(pl.said())
		}
		if err := p.printFindings(said, pl.lang); err != nil {
			return err
		}
		if len(said) < len(pl.plan.Findings) {
			for _, l := range wrap(pl.text("findings.folded", "command", "firstdrop findings "+printable(pl.name)+" --all"), p.out.width) {
				if _, err := fmt.Fprintln(p.out, l); err != nil {
					return written(err)
				}
			}
		}
		return p.printCare(pl)
	})
	c.Flags().BoolVar(&all, "all", false, "")
	c.Flags().BoolVar(&asJSON, "json", false, "")
	return units.addTo(c)
}

// findingLines returns a finding as lines: its severity, then its words.
func (s *screen) findingLines(c *words.Catalogue, severity finding.Severity, text string, width int) []string {
	word := c.Text("severity." + severity.String())
	lines := wrap(word+" "+text, width)
	lines[0] = s.in(severityInk(severity), word) + lines[0][len(word):]
	return lines
}

func severityInk(s finding.Severity) ink {
	switch s {
	case finding.Serious:
		return red
	case finding.Caution:
		return yellow
	}
	return plain
}

// printFindings lists findings, each beside the number that it has in drawings, if
// it has one.
func (p *program) printFindings(likes []tell.Like, lang *words.Catalogue) error {
	for _, k := range likes {
		for i, l := range p.out.findingLines(lang, k.First.Severity, k.Words(lang), p.out.width-5) {
			indent := "     "
			if i == 0 && k.First.Number > 0 {
				indent = fmt.Sprintf("%3d  ", k.First.Number)
			}
			if _, err := fmt.Fprintln(p.out, indent+l); err != nil {
				return written(err)
			}
		}
	}
	return nil
}

// spoken is a finding with the sentence that says it.
type spoken struct {
	finding.Finding
	Words string `json:"words"`
}

// writeFindings writes findings for programs, each with the sentence that says
// it.
func writeFindings(w io.Writer, fs, said []finding.Finding, lang *words.Catalogue) error {
	list := make([]spoken, len(fs))
	for i, f := range fs {
		list[i] = spoken{f, tell.Finding(lang, said[i])}
	}
	return writeJSON(w, list)
}

// writeJSON writes a value with every item on its own line.
func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

// printCare prints the cautions below a list.
func (p *program) printCare(pl *planned) error {
	text := pl.text("label.care") + " " + tell.Care(pl.lang, pl.plan) + " " + pl.text("care.more", "command", "firstdrop help safety")
	for _, l := range wrap(text, p.out.width) {
		if _, err := fmt.Fprintln(p.out, l); err != nil {
			return written(err)
		}
	}
	return nil
}
