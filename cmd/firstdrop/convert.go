package main

import (
	"github.com/spf13/cobra"

	"firstdrop/job/yaml"
)

func (p *program) convertCommand() *cobra.Command {
	var toJSON, toYAML bool
	c := p.command(cobra.Command{
		Use: "convert JOB (--json | --yaml)",
		Example: `  firstdrop convert room.yaml --json > room.json
  firstdrop convert room.json --yaml`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		if toJSON == toYAML {
			return fail(exitUsage, "convert.one-of")
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
	c.Flags().BoolVar(&toJSON, "json", false, "")
	c.Flags().BoolVar(&toYAML, "yaml", false, "")
	return c
}
