package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/plan"
)

// whyFlags are the flags of `firstdrop why`.
type whyFlags struct {
	units       unitsFlag
	start, kill string
	run         int
	asJSON      bool
}

func (p *program) whyCommand() *cobra.Command {
	var f whyFlags
	c := p.command(cobra.Command{
		Use:   "why JOB",
		Short: "Say why the plan is as it is, or why not another way",
		Long: `Why lists what the plan's layout was judged by: each finding with its weight in
thousandths of a roll, and how the room closes. With --start or --kill it
plans the job once more as you propose, and says what that would cost and save.

A start is a wall and where the first drop's left edge stands on it, or "beside"
an opening: its right edge. A kill seam is a corner, an opening, or a wall and
where on it. The rules and their weights: firstdrop help rules.`,
		Example: `  firstdrop why room.yaml
  firstdrop why room.yaml --start "wall D 1200 mm"
  firstdrop why room.yaml --start "beside window" --kill "corner B|C"
  firstdrop why room.yaml --kill "over door"`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		return p.why(c.Context(), args[0], &f)
	})
	c.Flags().StringVar(&f.start, "start", "", "begin `here` instead")
	c.Flags().StringVar(&f.kill, "kill", "", "close `here` instead")
	c.Flags().IntVar(&f.run, "run", 1, "of which `run` of the job, by its place in hang")
	c.Flags().BoolVar(&f.asJSON, "json", false, "print the answer as JSON, lengths in millimetres")
	return f.units.addTo(c, "metric or imperial (the job's, if not given)")
}

// why answers on the screen or as JSON.
func (p *program) why(ctx context.Context, name string, f *whyFlags) error {
	chosen, err := p.plan(ctx, name, f.units)
	if err != nil {
		return err
	}
	if f.start == "" && f.kill == "" {
		if f.asJSON {
			return written(writeFindings(p.out, chosen.plan.Findings, chosen.said(), chosen.lang))
		}
		_, err = fmt.Fprintln(p.out, strings.Join(p.out.reasons(chosen), "\n"))
		return written(err)
	}
	other, err := p.proposed(ctx, chosen, f)
	if err != nil {
		return err
	}
	t := other.plan.Against(chosen.plan)
	if f.asJSON {
		a := plan.Alternative{Plan: other.plan, Trade: t}
		return written(writeJSON(p.out, alternativeDocuments([]plan.Alternative{a}, chosen.units)[0]))
	}
	_, err = fmt.Fprintln(p.out, strings.Join(p.out.answer(other, t), "\n"))
	return written(err)
}

// proposed plans the job once more with what is proposed.
func (p *program) proposed(ctx context.Context, chosen *planned, f *whyFlags) (*planned, error) {
	j := *chosen.job
	j.Hang = slices.Clone(j.Hang)
	if len(j.Hang) == 0 {
		j.Hang = []job.Hang{{Paper: j.Papers[0].Name}}
	}
	if f.run < 1 || f.run > len(j.Hang) {
		return nil, fail(exitUsage, "there is no run %d; the job hangs %s", f.run, count(len(j.Hang), "run"))
	}
	h := &j.Hang[f.run-1]
	var err error
	if f.start != "" {
		if h.Start, err = startOf(&j, f.start); err != nil {
			return nil, fail(exitUsage, "--start %q: %w", f.start, err)
		}
	}
	if f.kill != "" {
		if h.Kill, err = killOf(&j, f.kill); err != nil {
			return nil, fail(exitUsage, "--kill %q: %w", f.kill, err)
		}
	}
	return p.planJob(ctx, chosen.name, &j, f.units)
}

// startOf reads a start: "wall D 1200 mm", or "beside window".
func startOf(j *job.Job, text string) (*job.Start, error) {
	if name, ok := strings.CutPrefix(text, "beside "); ok {
		w, o := openingOf(j, strings.TrimSpace(name))
		if o == nil || o.Left == nil || o.Width == nil {
			return nil, fmt.Errorf("no opening of that name has a left edge and a width")
		}
		edge := *o.Left + *o.Width
		return &job.Start{Wall: w.Name, Edge: &edge}, nil
	}
	wall, at, err := wallAt(j, text)
	if err != nil {
		return nil, err
	}
	return &job.Start{Wall: wall, Edge: &at}, nil
}

// killOf reads a kill seam: "corner A|B", "over door", "wall C 300 mm".
func killOf(j *job.Job, text string) (*job.Kill, error) {
	if name, ok := strings.CutPrefix(text, "corner "); ok {
		return &job.Kill{Corner: strings.TrimSpace(name)}, nil
	}
	if name, ok := strings.CutPrefix(text, "over "); ok {
		return &job.Kill{Opening: strings.TrimSpace(name)}, nil
	}
	wall, at, err := wallAt(j, text)
	if err != nil {
		return nil, err
	}
	return &job.Kill{Wall: wall, At: &at}, nil
}

// wallAt reads a wall's name and a length: the longest name that the text begins
// with.
func wallAt(j *job.Job, text string) (string, measure.Length, error) {
	text = strings.TrimSpace(strings.TrimPrefix(text, "wall "))
	name := ""
	for i := range j.Room.Walls {
		if w := j.Room.Walls[i].Name; strings.HasPrefix(text, w+" ") && len(w) > len(name) {
			name = w
		}
	}
	if name == "" {
		return "", 0, errors.New("write a wall and a length, such as \"wall A 1200 mm\"")
	}
	at, err := measure.ParseLength(strings.TrimSpace(text[len(name):]), j.Units)
	return name, at, err
}

// openingOf finds an opening by its name.
func openingOf(j *job.Job, name string) (*job.Wall, *job.Opening) {
	for i := range j.Room.Walls {
		w := &j.Room.Walls[i]
		for k := range w.Openings {
			if w.Openings[k].Name == name {
				return w, &w.Openings[k]
			}
		}
	}
	return nil, nil
}

// answer says what a proposal would cost and save.
func (s *screen) answer(other *planned, t plan.Trade) []string {
	lines := []string{s.in(bold, "That plan: ") + rollsOf(other.plan)}
	say := func(label, text string) { lines = append(lines, s.entry(label, text)...) }
	for r := range other.plan.Runs {
		say("Begins", beginning(other.plan, r, other.units))
		if k := closingWords(other.plan, r, other.units); k != "" {
			say("Closes", k)
		}
	}
	trade := tradeLines(t, other.units, 5)
	if trade == nil {
		say("Costs", "nothing, and saves nothing: it is as good")
		return lines
	}
	say("Costs", trade[0])
	say("Saves", trade[1])
	say("In all", fmt.Sprintf("its findings weigh %+d thousandths of a roll against the plan chosen", t.Looks))
	return lines
}

// reasons lists what the chosen layout was judged by.
func (s *screen) reasons(pl *planned) []string {
	lines := []string{s.in(bold, pl.heading())}
	for r := range pl.plan.Runs {
		lines = append(lines, s.entry("Begins", beginning(pl.plan, r, pl.units))...)
		lines = append(lines, s.closing(pl, r)...)
	}
	var total int64
	for _, k := range alike(pl.said()) {
		if k.first.Weight > 0 {
			total += k.first.Weight
			lines = append(lines, s.reason(k, pl.units)...)
		}
	}
	if total == 0 {
		return append(lines, "Nothing is found fault with.")
	}
	last := fmt.Sprintf("In all %d thousandths of a roll, beside rolls, drops and pieces. Numbers are those of the drawings; weights and sources: firstdrop help rules.", total)
	return append(lines, wrap(last, s.width)...)
}

// reason sets findings of one kind beside the number of the first and the weight
// of all.
func (s *screen) reason(k kind, sys measure.System) []string {
	return s.entry(fmt.Sprintf("%3d %5d", k.first.Number, k.first.Weight), k.words(english(sys)))
}

// closing says how a run closes, and what its corners can do about it.
func (s *screen) closing(pl *planned, run int) []string {
	c, ok := pl.plan.Closing(run)
	if !ok {
		return nil
	}
	texts := []string{closingWords(pl.plan, run, pl.units)}
	if c.Weight > 0 && c.Corners > 0 {
		texts = append(texts, turnWords(c, pl.units))
	}
	if c.Weight > 0 {
		texts = append(texts, "Seen least: "+placeWords(c.Least, pl.units))
	}
	return s.entry("Closes", texts...)
}

// turnWords says how the misfit moves when corners take more or less.
func turnWords(c plan.Closing, sys measure.System) string {
	text := ""
	for _, t := range c.Turns {
		if t.More.Abs() != 2*measure.Millimetre {
			continue
		}
		way := "more"
		if t.More < 0 {
			way = "less"
		}
		if text != "" {
			text += ", "
		}
		text += fmt.Sprintf("%s %s round each: %s across", t.More.Abs().Format(sys), way, t.Across.Abs().Format(sys))
		if t.Along != c.Along {
			text += " and " + t.Along.Abs().Format(sys) + " along"
		}
	}
	return fmt.Sprintf("%s can take more or less: %s", count(c.Corners, "corner"), text)
}
