package main

import (
	"github.com/spf13/cobra"

	"firstdrop/measure"
)

// unitsFlag is the value of --units: a system of units, or nothing, which means
// that of the job.
type unitsFlag struct {
	system measure.System
	given  bool
}

// or returns the system that was asked for, or else the given one.
func (u unitsFlag) or(system measure.System) measure.System {
	if u.given {
		return u.system
	}
	return system
}

// String returns the system's name; "" for none.
func (u *unitsFlag) String() string {
	if !u.given {
		return ""
	}
	return u.system.String()
}

// Set reads a system's name.
func (u *unitsFlag) Set(text string) error {
	for _, s := range []measure.System{measure.Metric, measure.Imperial} {
		if s.String() == text {
			*u = unitsFlag{s, true}
			return nil
		}
	}
	return fail(exitUsage, "units.one-of")
}

// Type names the value in help texts.
func (u *unitsFlag) Type() string { return "system" }

// addTo adds the flag to a command.
func (u *unitsFlag) addTo(c *cobra.Command) *cobra.Command {
	c.Flags().Var(u, "units", "")
	_ = c.RegisterFlagCompletionFunc("units", cobra.FixedCompletions(
		[]string{"metric", "imperial"}, cobra.ShellCompDirectiveNoFileComp))
	return c
}
