package main

import (
	"context"
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/measure"
)

//go:embed starter/metric.yaml
var metricStarter []byte

//go:embed starter/imperial.yaml
var imperialStarter []byte

// starterName is the file that begin writes when it is given none.
const starterName = "room.yaml"

func (p *program) beginCommand() *cobra.Command {
	var units unitsFlag
	var replace bool
	c := p.command(cobra.Command{
		Use:   "begin [FILE]",
		Short: "Write a job to start from, with every line explained",
		Long: `Begin writes a small job, invented but complete, with comments on what has to be
changed, and says what to measure next. Without FILE it writes ` + starterName + `;
- prints the job instead.`,
		Example: `  firstdrop begin
  firstdrop begin bedroom.yaml --units imperial`,
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return jobEndings[:2], cobra.ShellCompDirectiveFilterFileExt
		},
	}, func(c *cobra.Command, args []string) error {
		name := starterName
		if len(args) > 0 {
			name = args[0]
		}
		starter := metricStarter
		if units.or(measure.Metric) == measure.Imperial {
			starter = imperialStarter
		}
		if name == "-" {
			_, err := p.out.Write(starter)
			return written(err)
		}
		if err := writeStarter(c.Context(), name, starter, replace); err != nil {
			return err
		}
		return p.next(name)
	})
	c.Flags().BoolVar(&replace, "replace", false, "replace the file if there is one")
	return units.addTo(c, "metric or imperial (metric, if not given)")
}

// writeStarter writes the starter to a file that is not there yet.
func writeStarter(ctx context.Context, name string, starter []byte, replace bool) error {
	if strings.EqualFold(filepath.Ext(name), ".json") {
		return fail(exitUsage, "a job to start from has comments, which JSON has not; give it a name that ends in .yaml")
	}
	if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) && !replace {
		return fail(exitFile, "%s is there already and stays as it is; choose another name, or add --replace", name)
	}
	return saveAlone(ctx, name, name, starter, 0)
}

// next says what to do with a new job.
func (p *program) next(name string) error {
	_, err := fmt.Fprintf(p.out, `Wrote %[1]s: an invented room, to be replaced by yours.

Measure next, with a steel tape, and write it into the file:
  1. A level line round the room. From it: ceiling and floor at every corner.
  2. The width of every wall, at the skirting and at the ceiling.
  3. Doors, windows and fitted furniture: distance from the wall's left end,
     width, height over the level line. The middle of sockets and switches.
  4. How far every corner leans: hold a plumb line into it.
  5. The paper's label: width, length, match, batch.

Then: firstdrop check %[1]s
      firstdrop plan %[1]s
`, printable(name))
	return written(err)
}
