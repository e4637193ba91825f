package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/words"
)

// langFlag is the value of --lang: the tag of a language; "" for that of the
// environment.
type langFlag string

// catalogue returns the language that was asked for, or else that of the
// environment if there is one, or else British English.
func (f *langFlag) catalogue() *words.Catalogue {
	if *f != "" {
		return words.For(string(*f))
	}
	return words.For(environment(os.Getenv))
}

// environment returns the locale of the first of the variables of POSIX that is
// set; "" for none.
func environment(get func(string) string) string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if value := get(name); value != "" {
			return value
		}
	}
	return ""
}

// String returns the tag.
func (f *langFlag) String() string { return string(*f) }

// Set reads a tag or the name of a locale.
func (f *langFlag) Set(text string) error {
	tag, ok := words.Match(text)
	if !ok {
		return fmt.Errorf("it is one of %s", strings.Join(words.Languages(), ", "))
	}
	*f = langFlag(tag)
	return nil
}

// Type names the value in help texts.
func (f *langFlag) Type() string { return "language" }

// addTo adds the flag to a command.
func (f *langFlag) addTo(c *cobra.Command) {
	c.Flags().Var(f, "lang", "en-GB, en-US, de or fr (that of LANG, if not given)")
	_ = c.RegisterFlagCompletionFunc("lang", cobra.FixedCompletions(words.Languages(), cobra.ShellCompDirectiveNoFileComp))
}
