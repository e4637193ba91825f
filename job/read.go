package job

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"firstdrop/measure"
)

// Read reads a job document, YAML or JSON, and checks it. file is the name that
// messages give it. The error is [Problems]: everything that is wrong, as far as
// it can be told at once. What is legal but worth a question is no error: see
// [Job.Findings].
func Read(file string, data []byte) (*Job, error) {
	r := &reader{
		source: &source{file: file, places: map[string]place{}},
		fields: map[reflect.Type][]field{},
	}
	root, problem := parse(file, data)
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
	if err := append(r.problems, b.problems...).asError(); err != nil {
		return nil, err
	}
	return j, nil
}

// readUnits looks the job's unit up first, wherever it stands, because numbers
// before it may need it. What is wrong with it is reported when it is read in
// its turn.
func (r *reader) readUnits(root *yaml.Node) {
	n := member(root, "units")
	if n == nil {
		return
	}
	r.unit, _ = measure.ParseUnit(n.Value)
	r.unitless = r.unit == 0
}

// member returns the value of a key, nil without one.
func member(n *yaml.Node, key string) *yaml.Node {
	if n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}

// checkVersion looks at the version before anything else: whatever else a
// document of another version says would only confuse.
func checkVersion(file string, root *yaml.Node) *Problem {
	at := func(n *yaml.Node, format string, args ...any) *Problem {
		return &Problem{file, n.Line, n.Column, "firstdrop", fmt.Sprintf(format, args...)}
	}
	if root.Kind != yaml.MappingNode {
		return at(root, "this is no job: it holds %s where keys and values should be; begin with firstdrop: %d", kindOf(root), Version)
	}
	n := member(root, "firstdrop")
	if n == nil {
		return at(root, "the version is missing; begin a job with firstdrop: %d", Version)
	}
	if n.Kind != yaml.ScalarNode {
		return at(n, "the version holds %s; write firstdrop: %d", kindOf(n), Version)
	}
	v, err := parseWhole(n.Value)
	switch {
	case err != nil || v < 1:
		return at(n, "%q is no version; write firstdrop: %d", clip(n.Value), Version)
	case v > Version:
		return at(n, "this job is written for version %d of the format, and this program reads up to version %d; use a newer program", v, Version)
	}
	return nil
}

// parse turns the bytes of a document into nodes.
func parse(file string, data []byte) (*yaml.Node, *Problem) {
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
	root, jsonProblem := parseJSON(file, data)
	if root != nil {
		return root, nil
	}
	root, problem := parseYAML(file, data)
	if problem != nil && jsonProblem != nil {
		return nil, jsonProblem
	}
	return root, problem
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

// parseYAML reads one YAML document.
func parseYAML(file string, data []byte) (*yaml.Node, *Problem) {
	loader, err := yaml.NewLoader(bytes.NewReader(data))
	var root, second yaml.Node
	if err == nil {
		err = loader.Load(&root)
	}
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, yamlProblem(file, data, err)
	}
	if len(root.Content) == 0 {
		return nil, &Problem{File: file, Message: fmt.Sprintf("the document is empty; begin a job with firstdrop: %d", Version)}
	}
	if err := loader.Load(&second); !errors.Is(err, io.EOF) {
		if err != nil {
			return nil, yamlProblem(file, data, err)
		}
		return nil, &Problem{file, max(1, second.Line), 1, "", "a second document begins here; a file holds one job"}
	}
	return root.Content[0], nil
}

// yamlProblem puts the place of a syntax error where ours stand.
func yamlProblem(file string, data []byte, err error) *Problem {
	p := &Problem{File: file, Message: "this is no YAML: " + strings.TrimPrefix(err.Error(), "yaml: ")}
	var load *yaml.LoadError
	if errors.As(err, &load) {
		p.Line, p.Column = load.Mark.Line, load.Mark.Column
		p.Message = "this is no YAML: " + load.Message
	}
	switch line := lineOf(data, p.Line); {
	case strings.Contains(p.Message, "max depth"):
		p.Message = "too many lists or keys within one another; a job is shallow"
	case strings.Contains(p.Message, "unknown anchor"):
		p.Message = "* refers to another place; job files do not use & and *: write it out, or put the text in quotes"
	case strings.HasPrefix(strings.TrimLeft(line, " "), "\t"):
		p.Message = "this is no YAML: the line begins with a tab; use spaces"
	}
	return p
}

// lineOf returns line n of a text, counted from 1; "" when there is none.
func lineOf(data []byte, n int) string {
	for line := range bytes.Lines(data) {
		if n--; n == 0 {
			return string(line)
		}
	}
	return ""
}
