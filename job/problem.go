package job

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"firstdrop/message"
	"firstdrop/words"
)

// Problem is one thing that is wrong in a document, where it stands, and what
// would be right.
type Problem struct {
	File   string
	Line   int             // from 1; 0 for a job that was not read from a document
	Column int             // in characters, from 1
	Path   string          // as room.walls[2].openings[0].width, counted from 0
	What   message.Message // is wrong, for [words.Catalogue.Say]
}

// Error returns what [Problem.In] does in British English.
func (p Problem) Error() string { return p.In(nil) }

// In returns file:line:column and what is wrong, said in a language; the path
// instead of a line for a job that was not read from a document.
func (p Problem) In(c *words.Catalogue) string {
	what := c.Say(p.What)
	switch {
	case p.Line > 0:
		return fmt.Sprintf("%s:%d:%d: %s", p.File, p.Line, p.Column, what)
	case p.Path != "":
		return p.Path + ": " + what
	case p.File != "":
		return p.File + ": " + what
	}
	return what
}

// says makes a message: its code, and names and values in turn. The catalogues have
// the sentence, under "problem." and the code.
func says(code string, args ...any) message.Message {
	return message.Message{Code: code, Args: args}
}

// maxProblems is how many problems are worth listing at once.
const maxProblems = 100

// Problems is everything wrong in a document, in the order of its lines: never
// empty, at most 100 and a last one that counts the rest.
type Problems []Problem

// Error lists the problems in British English, one a line.
func (ps Problems) Error() string { return ps.In(nil) }

// In lists the problems in a language, one a line.
func (ps Problems) In(c *words.Catalogue) string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.In(c)
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the single problems.
func (ps Problems) Unwrap() []error {
	errs := make([]error, len(ps))
	for i, p := range ps {
		errs[i] = p
	}
	return errs
}

// asError sorts the problems, drops repetitions and cuts the list short; nil
// when there are none.
func (ps Problems) asError() error {
	if len(ps) == 0 {
		return nil
	}
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	ps = slices.CompactFunc(ps, func(a, b Problem) bool { return reflect.DeepEqual(a, b) })
	if more := len(ps) - maxProblems; more > 0 {
		ps = append(ps[:maxProblems:maxProblems], Problem{File: ps[0].File, What: says("more", "n", more)})
	}
	return ps
}

// place is a position in a document, from 1.
type place struct{ line, column int }

// source remembers where each part of a job stood.
type source struct {
	file   string
	places map[string]place // by path
}

// problem makes a problem of the part at that path, or of the smallest part
// around it that stands in the document.
func (s *source) problem(path string, what message.Message) Problem {
	if s == nil {
		return Problem{Path: path, What: what}
	}
	p := Problem{File: s.file, Path: path, What: what}
	for at := path; ; at = parent(at) {
		if found, ok := s.places[at]; ok {
			p.Line, p.Column = found.line, found.column
			return p
		}
		if at == "" {
			return p
		}
	}
}

// parent returns the path of what holds the part; "" for the document itself.
func parent(path string) string { return path[:max(0, strings.LastIndexAny(path, ".["))] }

// key returns the last key of a path, without an index behind it.
func key(path string) string {
	last := path[strings.LastIndexByte(path, '.')+1:]
	name, _, _ := strings.Cut(last, "[")
	return name
}
