package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// planFlags are the flags of `firstdrop plan`.
type planFlags struct {
	units   unitsFlag
	asJSON  bool
	quiet   bool
	folder  string
	formats formatsFlag
	replace bool
	asCut   bool
}

func (p *program) planCommand() *cobra.Command {
	var f planFlags
	c := p.command(cobra.Command{
		Use: "plan JOB",
		Example: `  firstdrop plan room.yaml
  firstdrop plan room.yaml --folder hanging --units imperial
  firstdrop plan room.yaml --json | jq .summary.papers
  firstdrop plan - < room.yaml`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		switch {
		case f.folder == "" && c.Flags().Changed("folder"):
			return fail(exitUsage, "plan.folder")
		case f.folder == "" && c.Flags().Changed("formats"):
			return fail(exitUsage, "plan.formats")
		case f.folder == "" && f.replace:
			return fail(exitUsage, "plan.replace")
		}
		pl, err := p.plan(c.Context(), args[0], f.units)
		if err != nil {
			return err
		}
		return p.show(c.Context(), pl, f)
	})
	f.formats.addTo(c)
	c.Flags().BoolVar(&f.asJSON, "json", false, "")
	c.Flags().StringVar(&f.folder, "folder", "", "")
	c.Flags().BoolVar(&f.replace, "replace", false, "")
	c.Flags().BoolVar(&f.asCut, "as-cut", false, "")
	c.Flags().BoolVarP(&f.quiet, "quiet", "q", false, "")
	_ = c.MarkFlagDirname("folder")
	return f.units.addTo(c)
}

// show saves and prints a plan as the flags ask.
func (p *program) show(ctx context.Context, pl *planned, f planFlags) error {
	var notes []string
	if f.folder != "" {
		files, err := soon(ctx, func() ([]outFile, error) { return pl.files(f.asCut, f.formats) })
		if err != nil {
			return err
		}
		s, err := saveFolder(ctx, f.folder, files, f.replace)
		if err != nil {
			return err
		}
		notes = s.notes(pl.lang)
		if f.asJSON || f.quiet {
			for _, w := range s.warnings(pl.lang) {
				fmt.Fprintln(p.err, "firstdrop: "+w)
			}
		}
	}
	switch {
	case f.asJSON:
		return written(writeJSON(p.out, pl.document()))
	case f.quiet:
		return nil
	}
	var err error
	if pl.byLabel, err = soon(ctx, pl.rollsByLabel); err != nil {
		return err
	}
	_, err = fmt.Fprintln(p.out, strings.Join(p.out.summary(pl, notes), "\n"))
	return written(err)
}
