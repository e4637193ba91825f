package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/message"
	"firstdrop/order"
	"firstdrop/paper"
	"firstdrop/tell"
)

// mostJobs bounds what one call may simulate: some minutes.
const mostJobs = 1_000_000

func (p *program) certaintyCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	jobs, seed := 10_000, uint64(1)
	c := p.command(cobra.Command{
		Use: "certainty JOB",
		Example: `  firstdrop certainty room.yaml
  firstdrop certainty room.yaml --jobs 100000 --seed 7`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		if jobs < 1 || jobs > mostJobs {
			return fail(exitUsage, "jobs.range", "most", mostJobs)
		}
		pl, err := p.plan(c.Context(), args[0], units)
		if err != nil {
			return err
		}
		told, err := eachBatch(c.Context(), pl, func(i, batch int) (batchCertainty, error) {
			chances := pl.plan.Chances(i)
			curve, err := pl.plan.Certainty(i, batch, chances, jobs, seed)
			t := batchCertainty{batchName: pl.batchName(i, batch), Assumed: chances, Curve: curve, label: &pl.plan.Task.Papers[i]}
			return t, t.unless(err)
		})
		if err != nil {
			return err
		}
		if asJSON {
			return written(writeJSON(p.out, told))
		}
		return p.printCertainty(pl, told)
	})
	c.Flags().BoolVar(&asJSON, "json", false, "")
	c.Flags().IntVar(&jobs, "jobs", jobs, "")
	c.Flags().Uint64Var(&seed, "seed", seed, "")
	return units.addTo(c)
}

// batchCertainty is the curve of one batch of a paper and what was assumed.
type batchCertainty struct {
	batchName
	Assumed order.Chances `json:"assumed"`
	Curve   *order.Curve  `json:"curve"` // null when it cannot be told
	Refused string        `json:"refused,omitempty"`

	label   *paper.Paper
	refusal message.Message
}

// unless keeps the reason why there is no curve; any other error is returned.
func (t *batchCertainty) unless(err error) error {
	var refusal *order.ChanceError
	if errors.As(err, &refusal) {
		t.refusal = message.Of(err)
		t.Refused = t.refusal.Error()
		return nil
	}
	return err
}

// lines tells one curve.
func (t *batchCertainty) lines(p *program, pl *planned) []string {
	title := printable(t.title(pl.lang))
	if t.Curve == nil {
		return wrap(pl.text("sure.refused", "paper", title, "why", pl.lang.Say(t.refusal)), p.out.width)
	}
	lines := wrap(pl.text("sure.title", "paper", title, "planned", tell.Planned(pl.lang, t.InHand, t.Curve.Rolls),
		"jobs", pl.text("count.job", "n", t.Curve.Jobs)), p.out.width)
	for _, l := range tell.CountOrder(pl.lang, t.label, t.Curve) {
		lines = append(lines, wrap(l, p.out.width)...)
	}
	for _, point := range t.Curve.Enough {
		lines = append(lines, p.certaintyLine(pl, t.Curve, point))
	}
	for _, l := range tell.Advice(pl.lang, t.Curve, t.InHand) {
		lines = append(lines, "  "+l)
	}
	return append(lines, wrap(tell.Assumed(pl.lang, t.Assumed), p.out.width)...)
}

func (p *program) printCertainty(pl *planned, told []batchCertainty) error {
	if len(told) == 0 {
		_, err := fmt.Fprintln(p.out, pl.text("sure.nothing"))
		return written(err)
	}
	for _, t := range told {
		for _, l := range t.lines(p, pl) {
			if _, err := fmt.Fprintln(p.out, l); err != nil {
				return written(err)
			}
		}
	}
	return nil
}

// certaintyLine draws one point of a curve: a bar of the share, in figures too.
func (p *program) certaintyLine(pl *planned, c *order.Curve, point order.Point) string {
	const widest = 30
	bar := pad(strings.Repeat("▇", point.Jobs*widest/c.Jobs), widest)
	text := fmt.Sprintf("  %4d  %s  %s", point.Rolls, bar, pl.text("sure.enough", "share", tell.Share(pl.lang, point.Jobs, c.Jobs)))
	if point.Rolls == c.Rolls {
		return p.out.in(bold, text+"  "+pl.text("page.planned"))
	}
	return text
}
