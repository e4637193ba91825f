package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// The help texts stand in help/LANGUAGE.txt as they are printed. Each command and
// each topic has a section:
//
//	[plan]
//	Plan a job: what to buy, where to begin, what to watch for
//
//	Plan finds where …
//
//	--folder = also write the plan's files into this `folder`
//
// The first line is its title; what its flags do stands at its end. Lines that
// begin with # are remarks.

// helpText is a section: what is said of a command or a topic.
type helpText struct {
	short, long string
	flags       map[string]string
}

// helps returns the sections of a language by their names; a language that is
// written as differences has those of the other besides.
func helps(tag string) map[string]helpText {
	all := map[string]helpText{}
	for _, part := range filesOf(tag) {
		for name, h := range sections(textOf("help/" + part + ".txt")) {
			all[name] = h
		}
	}
	return all
}

// sections cuts a file of help texts up.
func sections(file string) map[string]helpText {
	all := map[string]helpText{}
	name, h := "", helpText{}
	keep := func() {
		if name != "" {
			h.long = strings.Trim(h.long, "\n")
			all[name] = h
		}
	}
	for l := range strings.Lines(file) {
		l = strings.TrimRight(l, "\r\n")
		flag, usage, isFlag := strings.Cut(l, " = ")
		switch {
		case strings.HasPrefix(l, "#"):
		case strings.HasPrefix(l, "[") && strings.HasSuffix(l, "]"):
			keep()
			name, h = l[1:len(l)-1], helpText{flags: map[string]string{}}
		case isFlag && strings.HasPrefix(flag, "--"):
			h.flags[flag[2:]] = usage
		case h.short == "":
			h.short = l
		default:
			h.long += l + "\n"
		}
	}
	keep()
	return all
}

// usage returns what a flag of a command does: as its own section says, or that of
// flags that several have.
func (p *program) usage(command, flag string) string {
	if text := p.helps[command].flags[flag]; text != "" {
		return text
	}
	return p.helps["flags"].flags[flag]
}

// explain gives a command and all below it their help texts.
func (p *program) explain(c *cobra.Command) {
	name := c.Name()
	if h, ok := p.helps[name]; ok {
		c.Short, c.Long = h.short, h.long
		if name == "rules" {
			c.Long = p.rulesTopic()
		}
	}
	for _, fs := range []*pflag.FlagSet{c.Flags(), c.PersistentFlags()} {
		fs.VisitAll(func(f *pflag.Flag) {
			if text := p.usage(name, f.Name); text != "" {
				f.Usage = text
			}
		})
	}
	for _, below := range c.Commands() {
		p.explain(below)
	}
}

// helpOn prints the help on a command.
func (p *program) helpOn(w io.Writer, c *cobra.Command) {
	fmt.Fprintf(w, "%s\n\n", c.Long)
	if c.Runnable() || c.HasSubCommands() {
		p.usageOf(w, c)
	}
}

// usageOf prints how a command is called.
func (p *program) usageOf(w io.Writer, c *cobra.Command) {
	say := func(id string) { fmt.Fprintf(w, "\n%s\n", p.lang.Text("help."+id)) }
	fmt.Fprintln(w, p.lang.Text("help.usage"))
	if c.HasAvailableSubCommands() {
		fmt.Fprintf(w, "  %s %s\n", c.CommandPath(), p.lang.Text("help.command"))
	} else {
		fmt.Fprintf(w, "  %s\n", strings.Replace(c.UseLine(), "[flags]", p.lang.Text("help.flags-mark"), 1))
	}
	if c.HasExample() {
		say("examples")
		fmt.Fprintln(w, c.Example)
	}
	p.list(w, c, "commands", (*cobra.Command).IsAvailableCommand)
	if f := c.Flags().Lookup("help"); f != nil {
		f.Usage = p.usage(c.Name(), "help")
	}
	if c.HasAvailableLocalFlags() {
		say("flags")
		fmt.Fprint(w, p.flagLines(c.LocalFlags()))
	}
	if c.HasAvailableInheritedFlags() {
		say("global-flags")
		fmt.Fprint(w, p.flagLines(c.InheritedFlags()))
	}
	p.list(w, c, "topics", (*cobra.Command).IsAdditionalHelpTopicCommand)
	if c.HasAvailableSubCommands() {
		fmt.Fprintf(w, "\n%s\n", p.lang.Text("help.more", "command", c.CommandPath()))
	}
}

// list prints the commands below one that are of a kind.
func (p *program) list(w io.Writer, c *cobra.Command, title string, is func(*cobra.Command) bool) {
	begun := false
	for _, below := range c.Commands() {
		if !is(below) {
			continue
		}
		if !begun {
			fmt.Fprintf(w, "\n%s\n", p.lang.Text("help."+title))
			begun = true
		}
		fmt.Fprintf(w, "  %s %s\n", pad(below.Name(), 12), below.Short)
	}
}

// flagLines lists flags, with what holds without them in the language.
func (p *program) flagLines(fs *pflag.FlagSet) string {
	text := strings.TrimRight(fs.FlagUsages(), " \n") + "\n"
	return strings.ReplaceAll(text, "(default ", "("+p.lang.Text("help.default")+" ")
}
