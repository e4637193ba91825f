package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/plan"
	"firstdrop/words"
)

// program is one call of firstdrop: where it reads and writes, and how a plan
// is made.
type program struct {
	in       io.Reader
	out, err *screen
	make     func(*plan.Task) (*plan.Plan, error)
	lang     *words.Catalogue    // of all that is said
	helps    map[string]helpText // in that language
	begun    bool                // a command has begun: errors are no longer about how it was called
	asked    *cobra.Command      // the command that was called, as far as it was understood
}

// run carries out one call and returns its exit code. It returns soon after ctx
// is cancelled, with no file half written.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	p := &program{in: stdin, out: newScreen(stdout), err: newScreen(stderr), make: plan.Make}
	return p.run(ctx, args)
}

func (p *program) run(ctx context.Context, args []string) int {
	p.speak(asked(args, os.Getenv))
	root := p.root()
	root.SetArgs(args)
	asked, err := root.ExecuteContextC(ctx)
	p.asked = asked
	code := exitCode(err, p.begun)
	if err != nil {
		p.report(err, code)
	}
	return code
}

// speak chooses the language.
func (p *program) speak(tag string) {
	p.lang = speaking(tag)
	p.helps = helps(p.lang.Tag())
}

// root returns the command with all others below it.
func (p *program) root() *cobra.Command {
	root := &cobra.Command{
		Use:           "firstdrop",
		Example:       p.helps["firstdrop examples"].long,
		SilenceErrors: true,
		SilenceUsage:  true,
		// How many letters may be wrong in a command that is recognised all the same.
		SuggestionsMinimumDistance: 2,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(c, args[0])
			}
			return nil
		},
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetIn(p.in)
	root.SetOut(p.out)
	root.SetErr(p.err)
	root.AddCommand(
		p.beginCommand(), p.checkCommand(), p.planCommand(), p.printCommand(), p.findingsCommand(), p.whyCommand(), p.alternativesCommand(), p.certaintyCommand(), p.cliffsCommand(),
		p.rollsCommand(), p.openCommand(),
		p.convertCommand(), p.schemaCommand(),
		p.serveCommand(), p.backupCommand(), p.restoreCommand(), p.versionCommand(),
	)
	for _, t := range topics {
		root.AddCommand(&cobra.Command{Use: t})
	}
	new(langFlag).addTo(root)
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	p.explain(root)
	root.SetHelpFunc(func(c *cobra.Command, _ []string) { p.helpOn(c.OutOrStdout(), c) })
	root.SetUsageFunc(func(c *cobra.Command) error { p.usageOf(c.OutOrStderr(), c); return nil })
	return root
}

// unknownCommand says what was meant when a job stands where a command should.
func unknownCommand(root *cobra.Command, word string) error {
	for _, end := range jobEndings {
		if strings.HasSuffix(word, "."+end) {
			return fail(exitUsage, "command.is-file", "word", word, "command", "firstdrop plan "+word)
		}
	}
	if near := root.SuggestionsFor(word); len(near) > 0 {
		return fail(exitUsage, "command.near", "word", word, "near", strings.Join(near, ", "))
	}
	return fail(exitUsage, "command.unknown", "word", word)
}

// command makes a command whose body returns an error. All of them begin here.
func (p *program) command(c cobra.Command, body func(c *cobra.Command, args []string) error) *cobra.Command {
	c.RunE = func(c *cobra.Command, args []string) (err error) {
		p.begun = true
		defer caught(&err)
		return body(c, args)
	}
	return &c
}

// caught turns a panic, which is a fault of the program, into an error without
// a stack.
func caught(err *error) {
	if r := recover(); r != nil {
		*err = fail(exitInternal, "error.internal", "why", fmt.Sprint(r))
	}
}

// soon carries out what cannot be interrupted by itself, and gives up waiting
// for it when ctx is cancelled.
func soon[T any](ctx context.Context, do func() (T, error)) (T, error) {
	type result struct {
		value T
		err   error
	}
	done := make(chan result, 1)
	go func() {
		var r result
		defer func() { done <- r }()
		defer caught(&r.err)
		r.value, r.err = do()
	}()
	select {
	case <-ctx.Done():
		var none T
		return none, context.Canceled
	case r := <-done:
		return r.value, r.err
	}
}

// jobEndings are the endings of job files, for shell completion.
var jobEndings = []string{"yaml", "yml", "json"}

// completeJobs offers the job files of a folder to the shell.
func completeJobs(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return jobEndings, cobra.ShellCompDirectiveFilterFileExt
}

// completeJob offers them for the first argument only.
func completeJob(c *cobra.Command, args []string, word string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return completeJobs(c, args, word)
}

// oneJob asks for exactly one job.
func oneJob(c *cobra.Command, args []string) error {
	switch len(args) {
	case 0:
		return fail(exitUsage, "job.needed", "command", c.CommandPath())
	case 1:
		return nil
	}
	return fail(exitUsage, "job.one", "command", c.CommandPath(), "n", len(args))
}
