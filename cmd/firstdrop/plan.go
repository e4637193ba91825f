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
	lang    langFlag
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
		Use:   "plan JOB",
		Short: "Plan a job: what to buy, where to begin, what to watch for",
		Long: `Plan finds where the first plumb line goes, where every drop stands, how each
piece is cut and from which roll, and the fewest rolls that do. It prints what
one wants to know first. Every plan is worked out a second time by another road
before it is shown; one that does not pass is neither shown nor saved.

With --folder it also writes plan.json, the cutting list in hanging order (or
with --as-cut roll by roll), the map of the rolls, and a drawing of every wall.
Files are replaced only if the
program wrote them and nobody has changed them since: written.sha256 in the
folder lists them, and sha256sum can check it. --formats adds the lists as a
workbook (lists.xlsx) and drawings for drafting programs (dxf).`,
		Example: `  firstdrop plan room.yaml
  firstdrop plan room.yaml --folder hanging --units imperial
  firstdrop plan room.yaml --json | jq .summary.papers
  firstdrop plan - < room.yaml`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		switch {
		case f.folder == "" && c.Flags().Changed("folder"):
			return fail(exitUsage, "--folder needs the name of a folder")
		case f.folder == "" && c.Flags().Changed("formats"):
			return fail(exitUsage, "--formats says what goes into a folder; name it with --folder")
		case f.folder == "" && f.replace:
			return fail(exitUsage, "--replace says what to do with files in a folder; name it with --folder")
		}
		p.lang = f.lang.catalogue()
		pl, err := p.plan(c.Context(), args[0], f.units)
		if err != nil {
			return err
		}
		return p.show(c.Context(), pl, f)
	})
	f.lang.addTo(c)
	f.formats.addTo(c)
	c.Flags().BoolVar(&f.asJSON, "json", false, "print the plan document as JSON and nothing else")
	c.Flags().StringVar(&f.folder, "folder", "", "also write the plan's files into this `folder`")
	c.Flags().BoolVar(&f.replace, "replace", false, "replace files that are not the program's")
	c.Flags().BoolVar(&f.asCut, "as-cut", false, "list the cuts roll by roll, not in hanging order")
	c.Flags().BoolVarP(&f.quiet, "quiet", "q", false, "print errors only")
	_ = c.MarkFlagDirname("folder")
	return f.units.addTo(c, "metric or imperial (the job's, if not given)")
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
		notes = s.notes()
		if f.asJSON || f.quiet {
			for _, w := range s.warnings() {
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
	_, err := fmt.Fprintln(p.out, strings.Join(p.out.summary(pl, notes), "\n"))
	return written(err)
}
