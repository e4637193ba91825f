package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
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
		Use: "why JOB",
		Example: `  firstdrop why room.yaml
  firstdrop why room.yaml --start "wall D 1200 mm"
  firstdrop why room.yaml --start "beside window" --kill "corner B|C"
  firstdrop why room.yaml --kill "over door"`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		return p.why(c.Context(), args[0], &f)
	})
	c.Flags().StringVar(&f.start, "start", "", "")
	c.Flags().StringVar(&f.kill, "kill", "", "")
	c.Flags().IntVar(&f.run, "run", 1, "")
	c.Flags().BoolVar(&f.asJSON, "json", false, "")
	return f.units.addTo(c)
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
		return written(writeJSON(p.out, alternativeDocuments(chosen.lang, []plan.Alternative{a})[0]))
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
	entries := j.Entries(chosen.plan.Task)
	if f.run < 1 || f.run > len(entries) {
		return nil, fail(exitUsage, "run.none", "run", f.run, "n", len(entries))
	}
	h := &j.Hang[entries[f.run-1]]
	var err error
	if f.start != "" {
		if h.Start, err = startOf(&j, f.start); err != nil {
			return nil, fail(exitUsage, "flag.value", "flag", "--start", "value", f.start, "why", err)
		}
		h.Panels, h.Trim = "", 0 // asked is what full widths from there would come to
	}
	if f.kill != "" {
		if h.Kill, err = killOf(&j, f.kill); err != nil {
			return nil, fail(exitUsage, "flag.value", "flag", "--kill", "value", f.kill, "why", err)
		}
	}
	return p.planJob(ctx, chosen.name, &j, f.units)
}

// startOf reads a start: "wall D 1200 mm", or "beside window".
func startOf(j *job.Job, text string) (*job.Start, error) {
	if name, ok := strings.CutPrefix(text, "beside "); ok {
		w, o := openingOf(j, strings.TrimSpace(name))
		if o == nil || o.Left == nil || o.Width == nil {
			return nil, fail(exitUsage, "start.no-opening")
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
		return "", 0, fail(exitUsage, "start.wall-and-length")
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
	c := other.lang
	lines := []string{s.in(bold, c.Text("why.that-plan", "taken", tell.Taken(c, other.plan)))}
	beside := func(label, text string) { lines = append(lines, s.entry(c.Text(label), text)...) }
	for r := range other.plan.Runs {
		beside("label.begins", tell.Beginning(c, other.plan, r))
		if k := tell.Closing(c, other.plan, r); k != "" {
			beside("label.closes", k)
		}
	}
	costs, saves, ok := tell.Trade(c, t, 5)
	if !ok {
		beside("label.costs", c.Text("why.as-good"))
		return lines
	}
	beside("label.costs", costs)
	beside("label.saves", saves)
	beside("label.in-all", c.Text("why.weighs", "weight", fmt.Sprintf("%+d", t.Looks)))
	return lines
}

// reasons lists what the chosen layout was judged by.
func (s *screen) reasons(pl *planned) []string {
	lines := []string{s.in(bold, pl.heading())}
	for r := range pl.plan.Runs {
		lines = append(lines, s.entry(pl.text("label.begins"), tell.Beginning(pl.lang, pl.plan, r))...)
		lines = append(lines, s.closing(pl, r)...)
	}
	var total int64
	for _, k := range tell.Alike(pl.said()) {
		if w := k.First.Weight; w > 0 {
			total += w
			lines = append(lines, s.entry(fmt.Sprintf("%3d %5d", k.First.Number, w), k.Words(pl.lang))...)
		}
	}
	if total == 0 {
		return append(lines, pl.text("why.no-fault"))
	}
	return append(lines, wrap(pl.text("why.total", "total", int(total), "command", "firstdrop help rules"), s.width)...)
}

// closing says how a run closes, and what its corners can do about it.
func (s *screen) closing(pl *planned, run int) []string {
	k, ok := pl.plan.Closing(run)
	if !ok {
		return nil
	}
	texts := []string{tell.Closing(pl.lang, pl.plan, run)}
	if k.Weight > 0 && k.Corners > 0 {
		texts = append(texts, tell.Turned(pl.lang, k))
	}
	if k.Weight > 0 {
		texts = append(texts, pl.text("why.least", "place", tell.Place(pl.lang, k.Least)))
	}
	return s.entry(pl.text("label.closes"), texts...)
}
