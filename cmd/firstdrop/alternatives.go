package main

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
)

// mostAlternatives is how many plans are offered: more than five nobody weighs
// against each other.
const mostAlternatives = 5

func (p *program) alternativesCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	var take int
	c := p.command(cobra.Command{
		Use:   "alternatives JOB",
		Short: "Offer other good plans, with what each costs and saves",
		Long: `Alternatives offers up to five plans that differ: the kill seam is elsewhere,
or the seams have moved. None is beaten by another in rolls, in handling and in
looks alike, and each tells what it costs and saves against the first, the best
on the whole. Where one plan is best in everything, it stands alone.

With --take N the job is printed with plan N as its choice: where the first drop
stands and where the room closes. Save it as a new file to keep both.`,
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
			return written(writeJSON(p.out, alternativeDocuments(as, sys)))
		}
		_, err = fmt.Fprintln(p.out, strings.Join(p.out.alternatives(as, sys, args[0]), "\n"))
		return written(err)
	})
	c.Flags().BoolVar(&asJSON, "json", false, "print the alternatives as JSON, lengths in millimetres")
	c.Flags().IntVar(&take, "take", 0, "print the job with plan `N` as its choice")
	return units.addTo(c, "metric or imperial (the job's, if not given)")
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
		return nil, nil, unplannable(j, err, j.Units.System())
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
		return fail(exitUsage, "there is no plan %d; the alternatives are numbered 1 to %d", n, len(as))
	}
	if err := j.Take(as[n-1].Plan); err != nil {
		return jobError(err)
	}
	return written(yaml.Write(p.out, j))
}

// alternatives lists them for the screen.
func (s *screen) alternatives(as []plan.Alternative, sys measure.System, name string) []string {
	var lines []string
	for i := range as {
		lines = append(lines, s.alternative(&as[i], i, sys)...)
	}
	last := "Keep one: firstdrop alternatives " + printable(name) + " --take N"
	if len(as) == 1 {
		last = "No other plan is as good in anything: this one stands alone."
	}
	return append(lines, wrap(last, s.width)...)
}

// alternative tells one of them: what it is best in, where it begins and closes,
// and what it costs and saves.
func (s *screen) alternative(a *plan.Alternative, i int, sys measure.System) []string {
	head := fmt.Sprintf("%d  %s", i+1, rollsOf(a.Plan))
	if best := bestIn(a.Best); best != "" {
		head += "; best " + best
	}
	lines := []string{s.in(bold, head)}
	say := func(label, text string) {
		for k, l := range wrap(text, s.width-13) {
			if k > 0 {
				label = ""
			}
			lines = append(lines, "   "+pad(label, 10)+l)
		}
	}
	for r := range a.Plan.Runs {
		say("begins", beginning(a.Plan, r, sys))
		if k := closingWords(a.Plan, r, sys); k != "" {
			say("closes", k)
		}
	}
	for k, line := range tradeLines(a.Trade, sys, 2) {
		say([]string{"costs", "saves"}[k], line)
	}
	return lines
}

// bestIn writes what a plan is best in.
func bestIn(vs []plan.Virtue) string {
	var words []string
	for _, v := range vs {
		switch v {
		case plan.OnTheWhole:
			words = append(words, "on the whole")
		case plan.Looks:
			words = append(words, "in looks")
		case plan.Rolls:
			words = append(words, "in rolls")
		case plan.Handling:
			words = append(words, "to handle")
		}
	}
	return strings.Join(words, ", ")
}

// rollsOf counts what a plan takes.
func rollsOf(p *plan.Plan) string {
	buy, drops, pieces := 0, 0, 0
	for i := range p.Papers {
		buy += p.Papers[i].Buy()
		drops += p.Papers[i].Drops
		pieces += p.Papers[i].Pieces()
	}
	return count(buy, "roll") + ", " + count(drops, "drop") + " in " + count(pieces, "piece")
}

// beginning says where the first drop stands.
func beginning(p *plan.Plan, run int, sys measure.System) string {
	l := p.Runs[run].Layout
	start := l.Choice.Start
	wall := l.Run.WallName(start.Wall)
	if start.X < 0 {
		return fmt.Sprintf("wall %s, the first drop reaching %s beyond its left end", wall, start.X.Abs().Format(sys))
	}
	return fmt.Sprintf("wall %s, the first drop's left edge %s from its left end", wall, start.X.Format(sys))
}

// closingWords says where a run closes and by how much the design misses there.
func closingWords(p *plan.Plan, run int, sys measure.System) string {
	c, ok := p.Closing(run)
	if !ok {
		return ""
	}
	if c.Weight == 0 {
		return placeWords(c.Place, sys) + ", where the design meets"
	}
	return fmt.Sprintf("%s, %s high; the design misses by %s across and %s along", placeWords(c.Place, sys),
		c.Height.Format(sys), max(c.Across.Lo.Abs(), c.Across.Hi.Abs()).Format(sys), c.Along.Abs().Format(sys))
}

// placeWords names a place.
func placeWords(p finding.Place, sys measure.System) string {
	switch {
	case p.Corner != "":
		return "corner " + p.Corner
	case p.Opening != "":
		return "over " + p.Opening + " on wall " + p.Wall
	case p.X != nil:
		return "wall " + p.Wall + ", " + p.X.Format(sys) + " from its left end"
	}
	return "wall " + p.Wall
}

// tradeLines says what a plan costs and what it saves, each on a line: rolls and
// pieces, and the dearest findings, at most so many. An empty line says nothing.
func tradeLines(t plan.Trade, sys measure.System, most int) []string {
	var costs, saves []string
	amount := func(n int, what string) {
		switch {
		case n > 0:
			costs = append(costs, count(n, what)+" more")
		case n < 0:
			saves = append(saves, count(-n, what))
		}
	}
	amount(t.Rolls, "roll")
	amount(t.Drops, "drop")
	amount(t.Pieces, "piece")
	costs = append(costs, dearest(t.Worse, sys, most)...)
	saves = append(saves, dearest(t.Better, sys, most)...)
	var lines []string
	for _, l := range [][]string{costs, saves} {
		text := strings.Join(l, "; ")
		if text == "" {
			text = "nothing"
		}
		lines = append(lines, text)
	}
	if len(costs)+len(saves) == 0 {
		return nil
	}
	return lines
}

// dearest says the dearest kinds of findings, and how many more there are.
func dearest(fs []finding.Finding, sys measure.System, most int) (said []string) {
	for i, k := range alike(fs) {
		if i == most {
			return append(said, "and lesser things")
		}
		f := k.first
		f.Place.Run = ""
		text := strings.TrimSuffix(tell.Finding(english(sys), f), ".")
		if !opensWithPlace[f.Code] {
			text, _, _ = strings.Cut(text, ":")
		}
		if k.count > 1 {
			text += fmt.Sprintf(" (and %d more like it)", k.count-1)
		}
		said = append(said, strings.ToLower(text[:1])+text[1:])
	}
	return said
}

// opensWithPlace lists the findings whose sentences say what matters after their
// colon.
var opensWithPlace = map[finding.Code]bool{
	plan.KillMisfit: true, plan.Awkward: true, plan.MotifCut: true, plan.MotifCutLow: true, plan.WetGrowth: true,
}

// alike groups findings of a code, with the weight of all, dearest first.
func alike(fs []finding.Finding) []kind {
	var ks []kind
	for _, f := range fs {
		i := slices.IndexFunc(ks, func(k kind) bool { return k.first.Code == f.Code })
		if i < 0 {
			ks = append(ks, kind{f, 1})
			continue
		}
		ks[i].count++
		ks[i].first.Weight += f.Weight
	}
	slices.SortStableFunc(ks, func(a, b kind) int { return cmp.Compare(b.first.Weight, a.first.Weight) })
	return ks
}

// alternativeDocument is an alternative for other programs.
type alternativeDocument struct {
	Number int           `json:"number"`
	Best   []plan.Virtue `json:"best_in"`
	Rolls  int           `json:"rolls_more"`
	Drops  int           `json:"drops_more"`
	Pieces int           `json:"pieces_more"`
	Looks  int64         `json:"findings_weigh_more"`
	Worse  []spoken      `json:"costs"`
	Better []spoken      `json:"saves"`
	Plan   *plan.Summary `json:"plan"`
}

func alternativeDocuments(as []plan.Alternative, sys measure.System) []alternativeDocument {
	out := make([]alternativeDocument, len(as))
	for i, a := range as {
		t := a.Trade
		best := a.Best
		if best == nil {
			best = []plan.Virtue{}
		}
		out[i] = alternativeDocument{
			i + 1, best, t.Rolls, t.Drops, t.Pieces, t.Looks, spokenOf(t.Worse, sys), spokenOf(t.Better, sys), &a.Plan.Document("").Summary,
		}
	}
	return out
}

// spokenOf returns findings with the sentences that say them.
func spokenOf(fs []finding.Finding, sys measure.System) []spoken {
	list := make([]spoken, len(fs))
	for i, f := range fs {
		list[i] = spoken{f, tell.Finding(english(sys), f)}
	}
	return list
}
