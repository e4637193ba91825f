package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/plan"
)

// release is set by the linker when a release is built.
var release = ""

func (p *program) versionCommand() *cobra.Command {
	return p.command(cobra.Command{
		Use:     "version",
		Short:   "Print the version of the program and of its formats",
		Long:    "Version prints the version of the program, of the job files that it reads, and\nof the plan documents that it writes.",
		Example: `  firstdrop version`,
		Args:    cobra.NoArgs,
	}, func(*cobra.Command, []string) error {
		_, err := fmt.Fprintf(p.out, "firstdrop %s\njob files: version %d\nplan documents: version %d\n",
			programVersion(), job.Version, plan.DocumentVersion)
		return written(err)
	})
}

// programVersion returns the release, or what the build knows of the source.
func programVersion() string {
	if release != "" {
		return release
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unreleased"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return "unreleased, revision " + s.Value[:12]
		}
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	return "unreleased"
}
