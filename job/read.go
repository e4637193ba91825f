package job

import (
	"bytes"
	"fmt"
	"reflect"
	"unicode/utf8"

	"firstdrop/measure"
)

// Read reads a job document in JSON, as programs write it, and checks it. file is
// the name that messages give it. The error is [Problems]: everything that is
// wrong, as far as it can be told at once. What is legal but worth a question is
// no error: see [Job.Findings].
func Read(file string, data []byte) (*Job, error) {
	return ReadIn(file, data, jsonOnly)
}

// jsonOnly is the notation of programs, and no other.
func jsonOnly(file string, data []byte) (*Node, *Problem) {
	root, problem := JSON(file, data)
	if root == nil && problem == nil {
		problem = &Problem{file, 1, 1, "", "this is no JSON: a job begins with {"}
	}
	return root, problem
}

// ReadIn reads a job document in a notation, as [Read] does.
func ReadIn(file string, data []byte, notation Notation) (*Job, error) {
	b, problems := read(file, data, notation)
	if err := problems.asError(); err != nil {
		return nil, err
	}
	return b.job, nil
}

// read reads a document and makes what it can of it; nil where it is no job at
// all.
func read(file string, data []byte, notation Notation) (*builder, Problems) {
	r := &reader{
		source: &source{file: file, places: map[string]place{}},
		fields: map[reflect.Type][]field{},
	}
	root, problem := parse(file, data, notation)
	if problem == nil {
		problem = checkVersion(file, root)
	}
	if problem != nil {
		return nil, Problems{*problem}
	}
	r.readUnits(root)
	j := &Job{source: r.source}
	r.read(root, reflect.ValueOf(j).Elem(), "")
	b := &builder{job: j, unread: r.faulty}
	b.build()
	return b, append(r.problems, b.problems...)
}

// readUnits looks the job's unit up first, wherever it stands, because numbers
// before it may need it. What is wrong with it is reported when it is read in
// its turn.
func (r *reader) readUnits(root *Node) {
	n := root.Member("units")
	if n == nil {
		return
	}
	r.unit, _ = measure.ParseUnit(n.Value)
	r.unitless = r.unit == 0
}

// checkVersion looks at the version before anything else: whatever else a
// document of another version says would only confuse.
func checkVersion(file string, root *Node) *Problem {
	at := func(n *Node, format string, args ...any) *Problem {
		return &Problem{file, n.Line, n.Column, "firstdrop", fmt.Sprintf(format, args...)}
	}
	if root.Kind != Keys {
		return at(root, "this is no job: it holds %s where keys and values should be; begin with firstdrop: %d", root.what(), Version)
	}
	n := root.Member("firstdrop")
	if n == nil {
		return at(root, "the version is missing; begin a job with firstdrop: %d", Version)
	}
	if n.Kind != Scalar {
		return at(n, "the version holds %s; write firstdrop: %d", n.what(), Version)
	}
	v, err := parseWhole(n.Value)
	switch {
	case err != nil || v < 1:
		return at(n, "%q is no version; write firstdrop: %d", Clip(n.Value), Version)
	case v > Version:
		return at(n, "this job is written for version %d of the format, and this program reads up to version %d; use a newer program", v, Version)
	}
	return nil
}

// parse turns the bytes of a document into nodes.
func parse(file string, data []byte, notation Notation) (*Node, *Problem) {
	whole := func(format string, args ...any) *Problem {
		return &Problem{File: file, Message: fmt.Sprintf(format, args...)}
	}
	if len(data) > maxSize {
		return nil, whole("the document has %d MB; a job has at most %d", len(data)>>20, maxSize>>20)
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if p := checkEncoding(file, data); p != nil {
		return nil, p
	}
	if n := bytes.Count(data, []byte("\n")) + bytes.Count(data, []byte(",")) + bytes.Count(data, []byte(":")); n > maxEntries {
		return nil, whole("the document has about %d entries; a job has at most %d: make several jobs", n, maxEntries)
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, whole("the document is empty; begin a job with firstdrop: %d", Version)
	}
	return notation(file, data)
}

// checkEncoding refuses a file that is not text, with the place of the first
// byte that is none.
func checkEncoding(file string, data []byte) *Problem {
	text := data
	for len(text) > 0 {
		c, size := utf8.DecodeRune(text)
		if c == utf8.RuneError && size == 1 || c == 0 {
			before := data[:len(data)-len(text)]
			line := 1 + bytes.Count(before, []byte("\n"))
			column := 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
			return &Problem{file, line, column, "", "this is not text in UTF-8; save the job as plain text in that encoding"}
		}
		text = text[size:]
	}
	return nil
}
