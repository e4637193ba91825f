package job

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"

	"go.yaml.in/yaml/v4"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// WriteYAML prints the job for people: every length exact and with its unit, in
// feet and inches where the job's units are imperial and that is exact. Reading
// it gives the same job.
func (j *Job) WriteYAML(w io.Writer) error {
	d, err := yaml.NewDumper(w, yaml.WithIndent(2), yaml.WithCompactSeqIndent(false), yaml.WithLineWidth(-1), yaml.WithUnicode(true))
	if err != nil {
		return fmt.Errorf("job: write YAML: %w", err)
	}
	if err := d.Dump(j.node()); err != nil {
		return fmt.Errorf("job: write YAML: %w", err)
	}
	return d.Close()
}

// WriteJSON prints the job for programs, with the same keys and texts as
// [Job.WriteYAML], on several lines. Reading it gives the same job.
func (j *Job) WriteJSON(w io.Writer) error {
	var b bytes.Buffer
	writeJSON(&b, j.node(), "\n")
	b.WriteByte('\n')
	_, err := b.WriteTo(w)
	return err
}

func (j *Job) node() *yaml.Node {
	return printer{scale{j.Units}}.mapping(reflect.ValueOf(j).Elem())
}

// printer turns a job into the nodes of a document.
type printer struct{ scale }

func scalarNode(text, tag string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Tag: tag, Value: text}
	if strings.Contains(text, "\n") {
		n.Style = yaml.LiteralStyle
	}
	return n
}

func textNode(text string) *yaml.Node { return scalarNode(text, "!!str") }

// lengthNode prints a length exactly, as people with that unit read it.
func (s scale) lengthNode(l measure.Length) *yaml.Node {
	if s.unit.System() == measure.Imperial && l.Rounded(measure.Imperial) == l {
		return textNode(l.Format(measure.Imperial))
	}
	return textNode(l.String())
}

func (p printer) value(v reflect.Value) *yaml.Node {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	switch own := v.Addr().Interface().(type) {
	case shaped:
		return own.node(p.scale)
	case *geom.Point:
		return flow(&yaml.Node{Kind: yaml.SequenceNode, Content: []*yaml.Node{p.lengthNode(own.X), p.lengthNode(own.Y)}})
	case *room.Sides:
		return sidesNode(own)
	case *measure.Length:
		return p.lengthNode(*own)
	case encoding.TextMarshaler:
		text, _ := own.MarshalText() // no type of ours fails
		return textNode(string(text))
	}
	switch v.Kind() {
	case reflect.Struct:
		return p.mapping(v)
	case reflect.Slice:
		n := &yaml.Node{Kind: yaml.SequenceNode}
		for i := range v.Len() {
			n.Content = append(n.Content, p.value(v.Index(i)))
		}
		return n
	case reflect.Bool:
		return scalarNode(fmt.Sprint(v.Bool()), "!!bool")
	case reflect.String:
		return textNode(v.String())
	}
	return scalarNode(fmt.Sprint(v.Int()), "!!int")
}

// mapping prints the required keys and those that say something.
func (p printer) mapping(v reflect.Value) *yaml.Node {
	n := &yaml.Node{Kind: yaml.MappingNode}
	for _, f := range fieldsOf(v.Type()) {
		member := v.Field(f.index)
		if !f.isRequired && (member.IsZero() || member.Kind() == reflect.Slice && member.Len() == 0) {
			continue
		}
		value := p.value(member)
		switch {
		case f.isFlow:
			flow(value)
		case f.isRows:
			for _, row := range value.Content {
				flow(row)
			}
		}
		n.Content = append(n.Content, textNode(f.name), value)
	}
	return n
}

// flow has the node printed on one line, with all it holds.
func flow(n *yaml.Node) *yaml.Node {
	if n.Kind != yaml.ScalarNode {
		n.Style |= yaml.FlowStyle
	}
	for _, inner := range n.Content {
		flow(inner)
	}
	return n
}

func sidesNode(s *room.Sides) *yaml.Node {
	n := &yaml.Node{Kind: yaml.SequenceNode}
	for _, w := range sideWords {
		if *sideOf(s, w) {
			n.Content = append(n.Content, textNode(w))
		}
	}
	return flow(n)
}

func (s *Span) node(in scale) *yaml.Node {
	if s.Left == s.Right {
		return in.lengthNode(s.Left)
	}
	return flow(printer{in}.mapping(reflect.ValueOf((*spanKeys)(s)).Elem()))
}

func (a *Allowance) node(in scale) *yaml.Node {
	if a.Head == a.Foot {
		return in.lengthNode(a.Head)
	}
	return flow(printer{in}.mapping(reflect.ValueOf((*allowanceKeys)(a)).Elem()))
}

func (c *Corner) node(in scale) *yaml.Node {
	if c.Lean == (Ends{}) && c.Sight == room.Plain {
		return textNode(c.text())
	}
	keys := cornerKeys{Kind: &c.Kind, Lean: c.Lean, Sight: c.Sight}
	if c.Angle != 0 {
		keys.Angle = &c.Angle
	}
	return flow(printer{in}.mapping(reflect.ValueOf(&keys).Elem()))
}

// text is the short form of a plumb corner: "inside", "outside 270°".
func (c *Corner) text() string {
	if c.Angle == 0 {
		return c.Kind.String()
	}
	return c.Kind.String() + " " + c.Angle.String()
}

// writeJSON prints a node; newline holds the line break and the indentation.
func writeJSON(b *bytes.Buffer, n *yaml.Node, newline string) {
	open, shut, step := "{", "}", 2
	switch n.Kind {
	case yaml.ScalarNode:
		writeJSONScalar(b, n)
		return
	case yaml.SequenceNode:
		open, shut, step = "[", "]", 1
	}
	inner, separator := newline+"  ", ","
	if n.Style&yaml.FlowStyle != 0 || len(n.Content) == 0 {
		inner, newline = "", ""
		separator = ", "
	}
	b.WriteString(open)
	for i := 0; i < len(n.Content); i += step {
		if i > 0 {
			b.WriteString(separator)
		}
		b.WriteString(inner)
		writeJSON(b, n.Content[i], inner)
		if step == 2 {
			b.WriteString(": ")
			writeJSON(b, n.Content[i+1], inner)
		}
	}
	b.WriteString(newline)
	b.WriteString(shut)
}

func writeJSONScalar(b *bytes.Buffer, n *yaml.Node) {
	if n.Tag != "!!str" {
		b.WriteString(n.Value)
		return
	}
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	_ = e.Encode(n.Value)   // a text always encodes
	b.Truncate(b.Len() - 1) // the encoder ends every value with a line break
}
