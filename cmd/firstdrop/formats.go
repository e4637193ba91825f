package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// formatsFlag is the value of --formats: the kinds of files that go into a
// folder.
type formatsFlag []string

// formats lists what there is.
var formats = []string{"csv", "xlsx", "svg", "dxf"}

// usualFormats are those that nobody has asked for.
var usualFormats = formatsFlag{"csv", "svg"}

// String returns them with commas between.
func (f *formatsFlag) String() string { return strings.Join(*f, ",") }

// Set reads formats with commas between.
func (f *formatsFlag) Set(text string) error {
	var asked formatsFlag
	for name := range strings.SplitSeq(text, ",") {
		name = strings.ToLower(strings.TrimSpace(name))
		if !slices.Contains(formats, name) {
			return fail(exitUsage, "formats.none-of", "name", name, "formats", strings.Join(formats, ", "))
		}
		asked = append(asked, name)
	}
	*f = asked
	return nil
}

// Type names the value in help texts.
func (f *formatsFlag) Type() string { return "list" }

// addTo adds the flag to a command.
func (f *formatsFlag) addTo(c *cobra.Command) {
	*f = slices.Clone(usualFormats)
	c.Flags().Var(f, "formats", "")
	_ = c.RegisterFlagCompletionFunc("formats", cobra.FixedCompletions(formats, cobra.ShellCompDirectiveNoFileComp))
}
