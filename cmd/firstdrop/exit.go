package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"unicode"

	"firstdrop/job"
	"firstdrop/words"
)

// The exit codes. `firstdrop help exit-codes` tells them to people.
const (
	exitDone        = 0
	exitJob         = 1   // the job has errors, or asks for what cannot be hung
	exitUsage       = 2   // wrong command, flag or argument
	exitFile        = 3   // a file could not be read, or must not be written
	exitInternal    = 70  // a fault of the program, such as a plan that fails its audit
	exitInterrupted = 130 // interrupted, with everything as it was
)

// failure is an error with the exit code it leads to: a message of the program's
// catalogue with what it has filled in, or else another error as it is.
type failure struct {
	code int
	id   string // "" where the cause says it all
	args []any
	err  error // the cause; nil when there is none
}

// fail returns a failure that says a message. An error among the arguments is its
// cause.
func fail(code int, id string, args ...any) error {
	f := &failure{code: code, id: id, args: args}
	for _, a := range args {
		if err, ok := a.(error); ok {
			f.err = err
		}
	}
	return f
}

func (f *failure) Error() string { return f.told(speaking("")) }

// Unwrap returns the cause.
func (f *failure) Unwrap() error { return f.err }

// told says it in a language.
func (f *failure) told(c *words.Catalogue) string {
	if f.id == "" {
		return told(c, f.err)
	}
	args := make([]any, len(f.args))
	for i, a := range f.args {
		args[i] = a
		if err, ok := a.(error); ok {
			args[i] = told(c, err)
		}
	}
	return c.Text(f.id, args...)
}

// exitCode returns the code of an error that a command returned. begun says
// that the command had begun, so that the error is not about how it was called.
func exitCode(err error, begun bool) int {
	var f *failure
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &f):
		return f.code
	case errors.Is(err, context.Canceled):
		return exitInterrupted
	case !begun:
		return exitUsage
	}
	return exitInternal
}

// report prints an error for people. The problems of a job stand one a line as
// file:line:column, which editors follow; everything else says who speaks.
func (p *program) report(err error, code int) {
	var problems job.Problems
	text := "firstdrop: " + told(p.lang, err)
	switch {
	case code == exitInterrupted:
		text = "firstdrop: " + p.lang.Text("error.interrupted")
	case errors.As(err, &problems):
		text = told(p.lang, err)
	case code == exitUsage && p.asked != nil:
		text += "\n" + p.lang.Text("error.try", "command", p.asked.CommandPath()+" --help")
	}
	fmt.Fprintln(p.err, printable(text))
}

// printable replaces whatever would steer a terminal, such as an escape in a
// file's name.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\u00a0' || unicode.IsPrint(r) {
			return r
		}
		return unicode.ReplacementChar
	}, text)
}
