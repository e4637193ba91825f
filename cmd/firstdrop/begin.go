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
		Use: "begin [FILE]",
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
	c.Flags().BoolVar(&replace, "replace", false, "")
	return units.addTo(c)
}

// writeStarter writes the starter to a file that is not there yet.
func writeStarter(ctx context.Context, name string, starter []byte, replace bool) error {
	if strings.EqualFold(filepath.Ext(name), ".json") {
		return fail(exitUsage, "begin.json")
	}
	if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) && !replace {
		return fail(exitFile, "file.there", "file", name)
	}
	return saveAlone(ctx, name, name, starter, 0)
}

// next says what to do with a new job.
func (p *program) next(name string) error {
	name = printable(name)
	_, err := fmt.Fprint(p.out, strings.ReplaceAll(p.helps["begin next"].long, "FILE", name)+"\n")
	return written(err)
}
