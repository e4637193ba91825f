package job

import (
	"bytes"
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
		problem = &Problem{file, 1, 1, "", says("no_json", "why", says("json_begins", "brace", "{"))}
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
	at := func(n *Node, code string, args ...any) *Problem {
		return &Problem{file, n.Line, n.Column, "firstdrop", says(code, args...)}
	}
	if root.Kind != Keys {
		return at(root, "no_job", "held", root.what(), "version", Version)
	}
	n := root.Member("firstdrop")
	if n == nil {
		return at(root, "version_missing", "version", Version)
	}
	if n.Kind != Scalar {
		return at(n, "version_holds", "held", n.what(), "version", Version)
	}
	v, err := parseWhole(n.Value)
	switch {
	case err != nil || v < 1:
		return at(n, "version_none", "text", quoted(n.Value), "version", Version)
	case v > Version:
		return at(n, "version_newer", "version", v, "known", Version)
	}
	return nil
}

// parse turns the bytes of a document into nodes.
func parse(file string, data []byte, notation Notation) (*Node, *Problem) {
	whole := func(code string, args ...any) *Problem {
		return &Problem{File: file, What: says(code, args...)}
	}
	if len(data) > maxSize {
		return nil, whole("document_large", "mb", len(data)>>20, "most", maxSize>>20)
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if p := checkEncoding(file, data); p != nil {
		return nil, p
	}
	if n := bytes.Count(data, []byte("\n")) + bytes.Count(data, []byte(",")) + bytes.Count(data, []byte(":")); n > maxEntries {
		return nil, whole("document_entries", "n", n, "most", maxEntries)
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, whole("document_empty", "version", Version)
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
			return &Problem{file, line, column, "", says("not_utf8")}
		}
		text = text[size:]
	}
	return nil
}
