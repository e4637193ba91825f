package main

import (
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/words"
)

// langFlag is the value of --lang: the tag of a language; "" for that of the
// environment.
type langFlag string

// asked returns the language that a call asks for with --lang, or else that of the
// environment. It is known before the call is understood, since help and what is
// wrong with the call are said in it too.
func asked(args []string, env func(string) string) string {
	for i, a := range args {
		value, is := strings.CutPrefix(a, "--lang")
		switch {
		case a == "--":
			return environment(env)
		case is && strings.HasPrefix(value, "="):
			value = value[1:]
		case is && value == "" && i+1 < len(args):
			value = args[i+1]
		default:
			continue
		}
		if tag, ok := words.Match(value); ok {
			return tag
		}
	}
	return environment(env)
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
		return fail(exitUsage, "lang.one-of", "languages", strings.Join(words.Languages(), ", "))
	}
	*f = langFlag(tag)
	return nil
}

// Type names the value in help texts.
func (f *langFlag) Type() string { return "language" }

// addTo adds the flag to a command and all below it.
func (f *langFlag) addTo(c *cobra.Command) {
	c.PersistentFlags().Var(f, "lang", "")
	_ = c.RegisterFlagCompletionFunc("lang", cobra.FixedCompletions(words.Languages(), cobra.ShellCompDirectiveNoFileComp))
}
