package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/order"
)

// mostJobs bounds what one call may simulate: some minutes.
const mostJobs = 1_000_000

func (p *program) certaintyCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	jobs, seed := 10_000, uint64(1)
	c := p.command(cobra.Command{
		Use:   "certainty JOB",
		Short: "Tell how sure the number of rolls is",
		Long: `Certainty simulates the job many times as it may turn out: rolls longer or
shorter within what the label allows, begun at any point of the design, heights
measured a little wrong, a piece spoiled now and then. It tells in how many of
those jobs the planned number of rolls is enough, and one less, and one more.
The same job, number and seed give the same answer on every machine.`,
		Example: `  firstdrop certainty room.yaml
  firstdrop certainty room.yaml --jobs 100000 --seed 7`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		if jobs < 1 || jobs > mostJobs {
			return fail(exitUsage, "--jobs takes a whole number from 1 to %d", mostJobs)
		}
		pl, err := p.plan(c.Context(), args[0], units)
		if err != nil {
			return err
		}
		told, err := eachBatch(c.Context(), pl, func(i, batch int) (batchCertainty, error) {
			chances := pl.plan.Chances(i)
			curve, err := pl.plan.Certainty(i, batch, chances, jobs, seed)
			t := batchCertainty{batchName: pl.batchName(i, batch), Assumed: chances, Curve: curve}
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
	c.Flags().BoolVar(&asJSON, "json", false, "print the curves as JSON")
	c.Flags().IntVar(&jobs, "jobs", jobs, "how many jobs to simulate")
	c.Flags().Uint64Var(&seed, "seed", seed, "another seed, other jobs")
	return units.addTo(c, "metric or imperial (the job's, if not given)")
}

// batchCertainty is the curve of one batch of a paper and what was assumed.
type batchCertainty struct {
	batchName
	Assumed order.Chances `json:"assumed"`
	Curve   *order.Curve  `json:"curve"` // null when it cannot be told
	Refused string        `json:"refused,omitempty"`
}

// unless keeps the reason why there is no curve; any other error is returned.
func (t *batchCertainty) unless(err error) error {
	var refusal *order.ChanceError
	if errors.As(err, &refusal) {
		t.Refused = refusal.Field + " " + refusal.Message
		return nil
	}
	return err
}

// lines tells one curve.
func (t *batchCertainty) lines(p *program, pl *planned) []string {
	if t.Curve == nil {
		return wrap(fmt.Sprintf("%s: how sure the count is cannot be told; the %s", printable(t.title()), t.Refused), p.out.width)
	}
	lines := wrap(fmt.Sprintf("%s: %s; %s simulated", printable(t.title()), t.planned(t.Curve.Rolls), count(t.Curve.Jobs, "job")), p.out.width)
	for _, point := range t.Curve.Enough {
		lines = append(lines, p.certaintyLine(t.Curve, point))
	}
	lines = append(lines, t.advice()...)
	return append(lines, wrap(pl.assumed(t.Assumed), p.out.width)...)
}

func (p *program) printCertainty(pl *planned, told []batchCertainty) error {
	if len(told) == 0 {
		_, err := fmt.Fprintln(p.out, "Nothing to hang, so no rolls to be sure of.")
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
func (p *program) certaintyLine(c *order.Curve, point order.Point) string {
	const widest = 30
	text := fmt.Sprintf("  %4d  %s  enough in %s", point.Rolls,
		pad(strings.Repeat("▇", point.Jobs*widest/c.Jobs), widest), percent(point.Jobs, c.Jobs))
	if point.Rolls == c.Rolls {
		return p.out.in(bold, text+"  planned")
	}
	return text
}

// percent writes a share, cut off after a tenth of a per cent: never 100 % for
// less than all.
func percent(of, all int) string {
	tenths := of * 1000 / all
	return fmt.Sprintf("%d.%d %%", tenths/10, tenths%10)
}

// advice names the count for those who want to be surer.
func (t *batchCertainty) advice() (lines []string) {
	c, buy := t.Curve, ""
	if t.InHand > 0 {
		buy = " to buy"
	}
	for _, perMille := range []int{950, 990} {
		if rolls, ok := c.Fewest(perMille); ok {
			lines = append(lines, fmt.Sprintf("  For %d jobs in 100: %s.", perMille/10, count(rolls, "roll")+buy))
		}
	}
	switch {
	case c.Never > 0 && t.InHand > 0:
		lines = append(lines, fmt.Sprintf("  In %s the rolls that are to be had were not enough.", count(c.Never, "job")))
	case c.Never > 0:
		lines = append(lines, fmt.Sprintf("  In %s a piece fitted no roll, or too few were to be had.", count(c.Never, "job")))
	}
	return lines
}

// assumed says in a sentence what may turn out otherwise.
func (pl *planned) assumed(c order.Chances) string {
	return fmt.Sprintf("Assumed: rolls begin anywhere in the design and are up to %d.%d %% longer or shorter than the label says; "+
		"heights are measured to %s; %d in 1000 pieces are spoiled.",
		c.Length/10, c.Length%10, c.Measuring.Format(pl.units), c.Spoiled)
}
