package main

import (
	"github.com/spf13/cobra"

	"firstdrop/job/yaml"
)

func (p *program) convertCommand() *cobra.Command {
	var toJSON, toYAML bool
	c := p.command(cobra.Command{
		Use:   "convert JOB (--json | --yaml)",
		Short: "Print a job in the other notation",
		Long: `Convert prints a job as JSON, for programs, or as YAML, for people. Every length
stays exact and gets its unit. Comments are not carried over, and neither is the
way a length was written: 250.2 cm becomes 2502 mm.`,
		Example: `  firstdrop convert room.yaml --json > room.json
  firstdrop convert room.json --yaml`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		if toJSON == toYAML {
			return fail(exitUsage, "convert needs one of --json and --yaml: the notation to print")
		}
		j, err := p.read(c.Context(), args[0])
		if err != nil {
			return err
		}
		if toJSON {
			return written(j.WriteJSON(p.out))
		}
		return written(yaml.Write(p.out, j))
	})
	c.Flags().BoolVar(&toJSON, "json", false, "print JSON")
	c.Flags().BoolVar(&toYAML, "yaml", false, "print YAML")
	return c
}
