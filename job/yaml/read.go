package yaml

import (
	"bytes"
	"errors"
	"io"
	"strings"

	v4 "go.yaml.in/yaml/v4"

	"firstdrop/job"
	"firstdrop/message"
)

// Read reads a job document, YAML or JSON, as [job.Read] does.
func Read(file string, data []byte) (*job.Job, error) { return job.ReadIn(file, data, parse) }

// Document turns a text into JSON, in the notation that its writer chose, and tells
// what is wrong with the job that it holds. There is no document where the text
// cannot be read at all.
func Document(file string, data []byte) (document []byte, problems job.Problems) {
	var root *job.Node
	_, err := job.ReadIn(file, data, func(file string, data []byte) (*job.Node, *job.Problem) {
		n, problem := parse(file, data)
		root = n
		return n, problem
	})
	errors.As(err, &problems)
	if root == nil {
		return nil, problems
	}
	return root.JSON(), problems
}

// parse reads a document as JSON if it is that, and as YAML otherwise. JSON is
// YAML on paper, but escapes such as \ud83d\ude00 are not read by YAML parsers.
func parse(file string, data []byte) (*job.Node, *job.Problem) {
	root, jsonProblem := job.JSON(file, data)
	if root != nil {
		return root, nil
	}
	own, problem := load(file, data)
	switch {
	case problem == nil:
		return node(own), nil
	case jsonProblem != nil:
		return nil, jsonProblem
	}
	return nil, problem
}

// node turns a node of the YAML reader into one of a job document.
func node(own *v4.Node) *job.Node {
	n := &job.Node{Value: own.Value, Line: own.Line, Column: own.Column, Quoted: own.Style != 0, Refused: refused(own)}
	switch own.Kind {
	case v4.ScalarNode:
		n.Kind, n.Scalar = job.Scalar, scalarOf(own)
	case v4.SequenceNode:
		n.Kind = job.List
	case v4.MappingNode:
		n.Kind = job.Keys
	}
	for _, inner := range own.Content {
		n.Items = append(n.Items, node(inner))
	}
	return n
}

func scalarOf(own *v4.Node) job.ScalarKind {
	isQuoted := own.Style&(v4.SingleQuotedStyle|v4.DoubleQuotedStyle) != 0
	switch {
	case own.Tag == "!!null" && !isQuoted:
		return job.Null
	case own.Tag == "!!bool":
		return job.Truth
	case own.Tag == "!!int" || own.Tag == "!!float":
		return job.Number
	}
	return job.Text
}

// refused says what job files do not use: anchors and tags.
func refused(own *v4.Node) *message.Message {
	switch {
	case own.Kind == v4.AliasNode:
		return says("yaml_alias", "name", job.Clip(own.Value))
	case own.Anchor != "":
		return says("yaml_anchor", "name", job.Clip(own.Anchor))
	case own.Style&v4.TaggedStyle != 0:
		return says("yaml_tag", "tag", job.Clip(own.Tag))
	}
	return nil
}

// says makes a message, as job does.
func says(code string, args ...any) *message.Message {
	return &message.Message{Code: code, Args: args}
}

// load reads one YAML document.
func load(file string, data []byte) (*v4.Node, *job.Problem) {
	loader, err := v4.NewLoader(bytes.NewReader(data))
	var root, second v4.Node
	if err == nil {
		err = loader.Load(&root)
	}
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, yamlProblem(file, data, err)
	}
	if len(root.Content) == 0 {
		return nil, &job.Problem{File: file, What: *says("document_empty", "version", job.Version)}
	}
	if err := loader.Load(&second); !errors.Is(err, io.EOF) {
		if err != nil {
			return nil, yamlProblem(file, data, err)
		}
		return nil, &job.Problem{File: file, Line: max(1, second.Line), Column: 1, What: *says("yaml_second")}
	}
	return root.Content[0], nil
}

// yamlProblem puts the place of a syntax error where ours stand.
func yamlProblem(file string, data []byte, err error) *job.Problem {
	p, text := &job.Problem{File: file}, strings.TrimPrefix(err.Error(), "yaml: ")
	var load *v4.LoadError
	if errors.As(err, &load) {
		p.Line, p.Column, text = load.Mark.Line, load.Mark.Column, load.Message
	}
	switch line := lineOf(data, p.Line); {
	case strings.Contains(text, "max depth"):
		p.What = *says("too_deep")
	case strings.Contains(text, "unknown anchor"):
		p.What = *says("yaml_star")
	case strings.HasPrefix(strings.TrimLeft(line, " "), "\t"):
		p.What = *says("no_yaml", "why", *says("yaml_tab"))
	default:
		p.What = *says("no_yaml", "why", text)
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
