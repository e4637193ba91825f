package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/measure"
)

func (p *program) checkCommand() *cobra.Command {
	var units unitsFlag
	var quiet bool
	c := p.command(cobra.Command{
		Use:   "check JOB...",
		Short: "Read and check jobs without planning",
		Long: `Check reads jobs and says of each that it is sound, or what is wrong with it:
the line, the fault, and what would be right. It also holds the survey against
itself: whether the walls close, heights fit each other, and sizes are likely.
What is possible but odd is asked about, and does not make a job unsound.`,
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
	c.Flags().BoolVarP(&quiet, "quiet", "q", false, "print errors only")
	return units.addTo(c, "metric or imperial (the job's, if not given)")
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
		return &failure{exitCode(a, true), b}
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
	ask := closing(j, units)
	if len(fs) > 0 {
		ask += "; worth a look:"
	}
	_, err := fmt.Fprintf(p.out, "%s: %s (%s, %s, %s)%s\n", printable(name), p.out.in(bold, "sound"),
		count(len(j.Room.Walls), "wall"), count(openings, "opening"), count(len(j.Papers), "paper"), ask)
	if err != nil {
		return written(err)
	}
	for i := range fs {
		fs[i].Number = 0 // there are no drawings yet
	}
	return p.printFindings(fs, english(units.or(j.Units.System())))
}

// closing tells how well a closed room closes; nothing for an open one.
func closing(j *job.Job, units unitsFlag) string {
	s := j.Survey()
	if s == nil {
		return ""
	}
	a, _ := s.Adjust() // with its findings, if the plan is beyond adjusting
	switch {
	case a == nil:
		return ""
	case a.Misclosure < measure.Millimetre:
		return "; the walls close"
	}
	return "; the walls close to " + a.Misclosure.Format(units.or(j.Units.System()))
}

// count writes a number with its noun: "1 wall", "2 walls".
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
