package job

import (
	"bytes"
	"encoding"
	"encoding/json"
	"io"
	"reflect"
	"strconv"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// WriteJSON prints the job for programs, on several lines, with the keys and
// texts of [Job.Node]. Reading it gives the same job.
func (j *Job) WriteJSON(w io.Writer) error {
	var b bytes.Buffer
	writeJSON(&b, j.Node(), "\n")
	b.WriteByte('\n')
	_, err := b.WriteTo(w)
	return err
}

// Node returns the document to be written in some notation: every length exact
// and with its unit, in feet and inches where the job's units are imperial and
// that is exact.
func (j *Job) Node() *Node {
	return printer{scale{j.Units}}.mapping(reflect.ValueOf(j).Elem())
}

// printer turns a job into the nodes of a document.
type printer struct{ scale }

func textNode(text string) *Node { return &Node{Kind: Scalar, Value: text} }

// lengthNode prints a length exactly, as people with that unit read it.
func (s scale) lengthNode(l measure.Length) *Node {
	if s.unit.System() == measure.Imperial && l.Rounded(measure.Imperial) == l {
		return textNode(l.Format(measure.Imperial))
	}
	return textNode(l.String())
}

func (p printer) value(v reflect.Value) *Node {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	switch own := v.Addr().Interface().(type) {
	case shaped:
		return own.node(p.scale)
	case *geom.Point:
		return flow(&Node{Kind: List, Items: []*Node{p.lengthNode(own.X), p.lengthNode(own.Y)}})
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
		n := &Node{Kind: List}
		for i := range v.Len() {
			n.Items = append(n.Items, p.value(v.Index(i)))
		}
		return n
	case reflect.Bool:
		return &Node{Kind: Scalar, Scalar: Truth, Value: strconv.FormatBool(v.Bool())}
	case reflect.String:
		return textNode(v.String())
	}
	return &Node{Kind: Scalar, Scalar: Number, Value: strconv.FormatInt(v.Int(), 10)}
}

// mapping prints the required keys and those that say something.
func (p printer) mapping(v reflect.Value) *Node {
	n := &Node{Kind: Keys}
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
			for _, row := range value.Items {
				flow(row)
			}
		}
		n.Items = append(n.Items, textNode(f.name), value)
	}
	return n
}

// flow has the node printed on one line, with all it holds.
func flow(n *Node) *Node {
	n.OneLine = n.Kind != Scalar
	for _, inner := range n.Items {
		flow(inner)
	}
	return n
}

func sidesNode(s *room.Sides) *Node {
	n := &Node{Kind: List}
	for _, w := range sideWords {
		if *sideOf(s, w) {
			n.Items = append(n.Items, textNode(w))
		}
	}
	return flow(n)
}

func (s *Span) node(in scale) *Node {
	if s.Left == s.Right {
		return in.lengthNode(s.Left)
	}
	return flow(printer{in}.mapping(reflect.ValueOf((*spanKeys)(s)).Elem()))
}

func (a *Allowance) node(in scale) *Node {
	if a.Head == a.Foot {
		return in.lengthNode(a.Head)
	}
	return flow(printer{in}.mapping(reflect.ValueOf((*allowanceKeys)(a)).Elem()))
}

func (c *Corner) node(in scale) *Node {
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
func writeJSON(b *bytes.Buffer, n *Node, newline string) {
	open, shut, step := "{", "}", 2
	switch n.Kind {
	case Scalar:
		writeJSONScalar(b, n)
		return
	case List:
		open, shut, step = "[", "]", 1
	}
	inner, separator := newline+"  ", ","
	if n.OneLine || len(n.Items) == 0 {
		inner, newline = "", ""
		separator = ", "
	}
	b.WriteString(open)
	for i := 0; i < len(n.Items); i += step {
		if i > 0 {
			b.WriteString(separator)
		}
		b.WriteString(inner)
		writeJSON(b, n.Items[i], inner)
		if step == 2 {
			b.WriteString(": ")
			writeJSON(b, n.Items[i+1], inner)
		}
	}
	b.WriteString(newline)
	b.WriteString(shut)
}

// writeJSONScalar writes a single value. What JSON knows no other way to write, such
// as 012 or 1_000, stands in quotes: the reader takes its text all the same.
func writeJSONScalar(b *bytes.Buffer, n *Node) {
	if n.Scalar != Text && json.Valid([]byte(n.Value)) {
		b.WriteString(n.Value)
		return
	}
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	_ = e.Encode(n.Value)   // a text always encodes
	b.Truncate(b.Len() - 1) // the encoder ends every value with a line break
}

// JSON writes a node on one line.
func (n *Node) JSON() []byte {
	var b bytes.Buffer
	writeJSON(&b, flow(n), "")
	return b.Bytes()
}
