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
	var lang langFlag
	var asJSON bool
	c := p.command(cobra.Command{
		Use:   "findings JOB",
		Short: "List everything to know about a job's plan",
		Long: `Findings plans a job and lists what people must know of it, gravest first: what
looks wrong on the wall or costs paper (serious), what to look at before cutting
(caution), and what is good to know (note), each with its place and its size.`,
		Example: `  firstdrop findings room.yaml
  firstdrop findings room.yaml --json`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		p.lang = lang.catalogue()
		pl, err := p.plan(c.Context(), args[0], units)
		if err != nil {
			return err
		}
		if asJSON {
			return written(writeFindings(p.out, pl.plan.Findings, pl.said(), pl.lang))
		}
		if len(pl.plan.Findings) == 0 {
			_, err := fmt.Fprintln(p.out, "Nothing to watch for.")
			return written(err)
		}
		if err := p.printFindings(pl.said(), pl.lang); err != nil {
			return err
		}
		return p.printCare(pl)
	})
	lang.addTo(c)
	c.Flags().BoolVar(&asJSON, "json", false, "print the findings as JSON, lengths in millimetres")
	return units.addTo(c, "metric or imperial (the job's, if not given)")
}

// findingLines returns a finding as lines: its severity, then its words.
func (s *screen) findingLines(severity finding.Severity, text string, width int) []string {
	word := severity.String() + ":"
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
func (p *program) printFindings(fs []finding.Finding, lang *words.Catalogue) error {
	for _, f := range fs {
		for i, l := range p.out.findingLines(f.Severity, tell.Finding(lang, f), p.out.width-5) {
			indent := "     "
			if i == 0 && f.Number > 0 {
				indent = fmt.Sprintf("%3d  ", f.Number)
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
