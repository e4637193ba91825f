package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

// mostAlternatives is how many plans are offered: more than five nobody weighs
// against each other.
const mostAlternatives = 5

func (p *program) alternativesCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	var take int
	c := p.command(cobra.Command{
		Use: "alternatives JOB",
		Example: `  firstdrop alternatives room.yaml
  firstdrop alternatives room.yaml --take 2 > room-2.yaml`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		j, as, err := p.alternatives(c.Context(), args[0])
		if err != nil {
			return err
		}
		sys := units.or(j.Units.System())
		switch {
		case c.Flags().Changed("take"):
			return p.take(j, as, take)
		case asJSON:
			return written(writeJSON(p.out, alternativeDocuments(p.lang.In(sys), as)))
		}
		_, err = fmt.Fprintln(p.out, strings.Join(p.out.alternatives(p.lang.In(sys), as, args[0]), "\n"))
		return written(err)
	})
	c.Flags().BoolVar(&asJSON, "json", false, "")
	c.Flags().IntVar(&take, "take", 0, "")
	return units.addTo(c)
}

// alternatives reads a job and makes its alternatives, all of which have passed
// the audit.
func (p *program) alternatives(ctx context.Context, name string) (*job.Job, []plan.Alternative, error) {
	j, err := p.read(ctx, name)
	if err != nil {
		return nil, nil, err
	}
	task, err := j.Task()
	if err != nil {
		return nil, nil, jobError(err)
	}
	as, err := soon(ctx, func() ([]plan.Alternative, error) { return plan.Alternatives(task, mostAlternatives) })
	if err != nil {
		return nil, nil, p.unplannable(j, err, j.Units.System())
	}
	for i := range as {
		if wrong := audit.Plan(as[i].Plan); len(wrong) > 0 {
			return nil, nil, untrue(wrong)
		}
	}
	return j, as, nil
}

// take prints the job with one of its alternatives as its choice.
func (p *program) take(j *job.Job, as []plan.Alternative, n int) error {
	if n < 1 || n > len(as) {
		return fail(exitUsage, "take.none", "n", n, "of", len(as))
	}
	if err := j.Take(as[n-1].Plan); err != nil {
		return jobError(err)
	}
	return written(yaml.Write(p.out, j))
}

// alternatives lists them for the screen.
func (s *screen) alternatives(c *words.Catalogue, as []plan.Alternative, name string) []string {
	var lines []string
	for i := range as {
		lines = append(lines, s.alternative(c, &as[i], i)...)
	}
	last := c.Text("take.hint", "command", "firstdrop alternatives "+printable(name)+" --take N")
	switch len(as) {
	case 1:
		last = c.Text("take.alone")
	case 2:
		last = c.Text("take.two") + " " + last
	}
	return append(lines, wrap(last, s.width)...)
}

// alternative tells one of them: what it is best in, where it begins and closes,
// and what it costs and saves.
func (s *screen) alternative(c *words.Catalogue, a *plan.Alternative, i int) []string {
	head := fmt.Sprintf("%d\u00a0\u00a0%s", i+1, tell.Taken(c, a.Plan))
	if best := tell.BestIn(c, a.Best); best != "" {
		head = tell.Joined(c, []string{head, best})
	}
	if a.Beaten {
		head = tell.Joined(c, []string{head, c.Text("take.beaten")})
	}
	var lines []string
	for k, l := range wrap(head, s.width-3) {
		if k > 0 {
			l = "   " + l
		}
		lines = append(lines, s.in(bold, l))
	}
	beside := func(label, text string) {
		for k, l := range wrap(text, s.width-labelWidth-3) {
			word := ""
			if k == 0 {
				word = c.Text(label)
			}
			lines = append(lines, "   "+pad(word, labelWidth)+l)
		}
	}
	for r := range a.Plan.Runs {
		beside("label.begins", tell.Beginning(c, a.Plan, r))
		if k := tell.Closing(c, a.Plan, r); k != "" {
			beside("label.closes", k)
		}
	}
	if costs, saves, ok := tell.Trade(c, a.Trade, 2); ok {
		beside("label.costs", costs)
		beside("label.saves", saves)
	}
	return lines
}

// alternativeDocument is an alternative for other programs.
type alternativeDocument struct {
	Number int           `json:"number"`
	Best   []plan.Virtue `json:"best_in"`
	Beaten bool          `json:"beaten,omitempty"` // another is as good in everything
	Rolls  int           `json:"rolls_more"`
	Drops  int           `json:"drops_more"`
	Pieces int           `json:"pieces_more"`
	Looks  int64         `json:"findings_weigh_more"`
	Worse  []spoken      `json:"costs"`
	Better []spoken      `json:"saves"`
	Plan   *plan.Summary `json:"plan"`
}

func alternativeDocuments(c *words.Catalogue, as []plan.Alternative) []alternativeDocument {
	out := make([]alternativeDocument, len(as))
	for i, a := range as {
		t := a.Trade
		best := a.Best
		if best == nil {
			best = []plan.Virtue{}
		}
		out[i] = alternativeDocument{
			i + 1, best, a.Beaten, t.Rolls, t.Drops, t.Pieces, t.Looks, spokenOf(c, t.Worse), spokenOf(c, t.Better), &a.Plan.Document("").Summary,
		}
	}
	return out
}

// spokenOf returns findings with the sentences that say them.
func spokenOf(c *words.Catalogue, fs []finding.Finding) []spoken {
	list := make([]spoken, len(fs))
	for i, f := range fs {
		list[i] = spoken{f, tell.Finding(c, f)}
	}
	return list
}
