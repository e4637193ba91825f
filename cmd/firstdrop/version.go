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
		Example: `  firstdrop version`,
		Args:    cobra.NoArgs,
	}, func(*cobra.Command, []string) error {
		_, err := fmt.Fprintln(p.out, p.lang.Text("version.program", "version", p.programVersion())+"\n"+
			p.lang.Text("version.jobs", "version", job.Version)+"\n"+
			p.lang.Text("version.plans", "version", plan.DocumentVersion))
		return written(err)
	})
}

// programVersion returns the release, or what the build knows of the source.
func (p *program) programVersion() string {
	if release != "" {
		return release
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return p.lang.Text("version.unreleased")
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return p.lang.Text("version.revision", "revision", s.Value[:12])
		}
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	return p.lang.Text("version.unreleased")
}
