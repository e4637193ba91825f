package job

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Problem is one thing that is wrong in a document, where it stands, and what
// would be right.
type Problem struct {
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`   // from 1; 0 for a job that was not read from a document
	Column  int    `json:"column,omitempty"` // in characters, from 1
	Path    string `json:"path,omitempty"`   // as room.walls[2].openings[0].width, counted from 0
	Message string `json:"message"`
}

// Error returns file:line:column and the message; the path instead of a line
// for a job that was not read from a document.
func (p Problem) Error() string {
	switch {
	case p.Line > 0:
		return fmt.Sprintf("%s:%d:%d: %s", p.File, p.Line, p.Column, p.Message)
	case p.Path != "":
		return p.Path + ": " + p.Message
	case p.File != "":
		return p.File + ": " + p.Message
	}
	return p.Message
}

// maxProblems is how many problems are worth listing at once.
const maxProblems = 100

// Problems is everything wrong in a document, in the order of its lines: never
// empty, at most 100 and a last one that counts the rest.
type Problems []Problem

// Error lists the problems, one a line.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
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
	ps = slices.Compact(ps)
	if more := len(ps) - maxProblems; more > 0 {
		ps = append(ps[:maxProblems:maxProblems], Problem{File: ps[0].File, Message: fmt.Sprintf("and %d more problems", more)})
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
func (s *source) problem(path, message string) Problem {
	if s == nil {
		return Problem{Path: path, Message: message}
	}
	p := Problem{File: s.file, Path: path, Message: message}
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
