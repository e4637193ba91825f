package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/tell"
	"firstdrop/words"
)

func (p *program) checkCommand() *cobra.Command {
	var units unitsFlag
	var quiet bool
	c := p.command(cobra.Command{
		Use: "check JOB...",
		Example: `  firstdrop check room.yaml
  firstdrop check *.yaml --quiet`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return oneJob(c, args)
			}
			return nil
		},
		ValidArgsFunction: completeJobs,
	}, func(c *cobra.Command, args []string) error {
		return p.check(c.Context(), args, units, quiet)
	})
	c.Flags().BoolVarP(&quiet, "quiet", "q", false, "")
	return units.addTo(c)
}

// check checks every job, and returns the failure with the highest code.
func (p *program) check(ctx context.Context, names []string, units unitsFlag, quiet bool) error {
	var worst error
	for _, name := range names {
		j, err := p.read(ctx, name)
		switch {
		case errors.Is(err, context.Canceled):
			return err
		case err != nil:
			if worst != nil {
				p.report(worst, exitCode(worst, true))
			}
			worst = graver(worst, err)
		case !quiet:
			if err := p.printCheck(name, j, units); err != nil {
				return err
			}
		}
	}
	return worst
}

// graver returns the error with the higher exit code, the later of equals.
func graver(a, b error) error {
	if a != nil && exitCode(a, true) > exitCode(b, true) {
		return &failure{code: exitCode(a, true), err: b}
	}
	return b
}

// printCheck says that a job is sound, and what in it is worth a question.
func (p *program) printCheck(name string, j *job.Job, units unitsFlag) error {
	fs := j.Findings()
	openings := 0
	for i := range j.Room.Walls {
		openings += len(j.Room.Walls[i].Openings)
	}
	c := p.lang.In(units.or(j.Units.System()))
	text := c.Text("check.sound", "file", printable(name), "sound", p.out.in(bold, c.Text("check.word")),
		"walls", c.Text("count.wall", "n", len(j.Room.Walls)), "openings", c.Text("count.opening", "n", openings), "papers", c.Text("count.paper", "n", len(j.Papers)))
	if closes := closing(c, j); closes != "" {
		text = tell.Joined(c, []string{text, closes})
	}
	if len(fs) > 0 {
		text = tell.Joined(c, []string{text, c.Text("check.look")})
	}
	if _, err := fmt.Fprintln(p.out, text); err != nil {
		return written(err)
	}
	for i := range fs {
		fs[i].Number = 0 // there are no drawings yet
	}
	return p.printFindings(tell.Each(fs), c)
}

// closing tells how well a closed room closes; nothing for an open one.
func closing(c *words.Catalogue, j *job.Job) string {
	s := j.Survey()
	if s == nil {
		return ""
	}
	a, _ := s.Adjust() // with its findings, if the plan is beyond adjusting
	switch {
	case a == nil:
		return ""
	case a.Misclosure < measure.Millimetre:
		return c.Text("check.closes")
	}
	return c.Text("check.closes-to", "size", a.Misclosure)
}
