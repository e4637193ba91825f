package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"unicode"

	"firstdrop/job"
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

// failure is an error with the exit code it leads to.
type failure struct {
	code int
	err  error
}

func (f *failure) Error() string { return f.err.Error() }

// Unwrap returns the error itself.
func (f *failure) Unwrap() error { return f.err }

func fail(code int, format string, args ...any) error {
	return &failure{code, fmt.Errorf(format, args...)}
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
	text := "firstdrop: " + err.Error()
	switch {
	case code == exitInterrupted:
		text = "firstdrop: interrupted; nothing is left half done"
	case errors.As(err, &problems):
		text = err.Error()
	case code == exitUsage && p.asked != nil:
		text += fmt.Sprintf("\nTry: %s --help", p.asked.CommandPath())
	}
	fmt.Fprintln(p.err, printable(text))
}

// printable replaces whatever would steer a terminal, such as an escape in a
// file's name.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || unicode.IsPrint(r) {
			return r
		}
		return unicode.ReplacementChar
	}, text)
}
