package main

import (
	"github.com/spf13/cobra"

	"firstdrop/job"
)

func (p *program) schemaCommand() *cobra.Command {
	return p.command(cobra.Command{
		Use:     "schema",
		Example: `  firstdrop schema > job.schema.json`,
		Args:    cobra.NoArgs,
	}, func(*cobra.Command, []string) error {
		_, err := p.out.Write(job.Schema())
		return written(err)
	})
}

// written marks an error of writing to standard output.
func written(err error) error {
	if err != nil {
		return fail(exitFile, "file.write-output", "why", err)
	}
	return nil
}
