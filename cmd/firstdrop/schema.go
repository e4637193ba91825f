package main

import (
	"github.com/spf13/cobra"

	"firstdrop/job"
)

func (p *program) schemaCommand() *cobra.Command {
	return p.command(cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of job files",
		Long: `Schema prints the JSON Schema that describes job files, YAML and JSON alike.
Editors that know it complete keys and mark mistakes while one writes.`,
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
		return fileError("cannot write to", "standard output", err)
	}
	return nil
}
