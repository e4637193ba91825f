package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strconv"
	"unicode/utf8"

	"firstdrop/message"
)

// JSON is the [Notation] of programs. It returns nothing at all for a document
// that does not begin as a JSON object does, so that others may have their turn.
func JSON(file string, data []byte) (*Node, *Problem) {
	rest, isObject := bytes.CutPrefix(bytes.TrimSpace(data), []byte("{"))
	if rest = bytes.TrimSpace(rest); !isObject || len(rest) == 0 || rest[0] != '"' && rest[0] != '}' {
		return nil, nil
	}
	p := &jsonParser{data: data, decoder: json.NewDecoder(bytes.NewReader(data)), line: 1}
	p.decoder.UseNumber()
	n, err := p.value(0)
	if err == nil {
		if _, err = p.decoder.Token(); errors.Is(err, io.EOF) {
			return n, nil
		}
		err = says("json_follows")
	}
	p.advance(p.decoder.InputOffset())
	return nil, &Problem{file, p.line, p.column(), "", says("no_json", "why", jsonMessage(err))}
}

func jsonMessage(err error) message.Message {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return says("json_ends")
	}
	return message.Of(err)
}

// jsonParser knows at which line and column the decoder stands.
type jsonParser struct {
	data      []byte
	decoder   *json.Decoder
	at        int64 // up to which byte lines are counted
	line      int
	lineStart int64
}

// advance counts lines up to a byte.
func (p *jsonParser) advance(to int64) {
	to = min(to, int64(len(p.data)))
	for ; p.at < to; p.at++ {
		if p.data[p.at] == '\n' {
			p.line++
			p.lineStart = p.at + 1
		}
	}
}

func (p *jsonParser) column() int {
	return 1 + utf8.RuneCount(p.data[p.lineStart:p.at])
}

// next passes over what stands between two tokens, and returns a node at the
// place of the second.
func (p *jsonParser) next() *Node {
	from := p.decoder.InputOffset()
	for int(from) < len(p.data) && bytes.IndexByte([]byte(" \t\r\n,:"), p.data[from]) >= 0 {
		from++
	}
	p.advance(from)
	return &Node{Line: p.line, Column: p.column()}
}

func (p *jsonParser) value(depth int) (*Node, error) {
	n := p.next()
	token, err := p.decoder.Token()
	switch t := token.(type) {
	case json.Delim:
		return n, p.inside(n, t, depth)
	case string:
		n.Kind, n.Value, n.Quoted = Scalar, t, true
	case json.Number:
		n.Kind, n.Scalar, n.Value = Scalar, Number, t.String()
	case bool:
		n.Kind, n.Scalar, n.Value = Scalar, Truth, strconv.FormatBool(t)
	case nil:
		n.Kind, n.Scalar, n.Value = Scalar, Null, "null"
	}
	return n, err
}

// inside reads what an object or a list holds, and its closing bracket.
func (p *jsonParser) inside(n *Node, open json.Delim, depth int) error {
	if depth > maxDepth {
		return says("too_deep")
	}
	n.Kind = Keys
	if open == '[' {
		n.Kind = List
	}
	for p.decoder.More() {
		child, err := p.value(depth + 1)
		if err != nil {
			return err
		}
		n.Items = append(n.Items, child)
	}
	_, err := p.decoder.Token()
	return err
}
