package job

import "firstdrop/message"

// NodeKind is what a node holds.
type NodeKind int

// The kinds of nodes. The zero value is none of them, and is never read.
const (
	Scalar NodeKind = iota + 1 // a single value
	List
	Keys // keys and values
)

// ScalarKind is how a notation marks a single value.
type ScalarKind int

// The kinds of single values. Numbers are read from their text, and every other
// text too.
const (
	Text ScalarKind = iota
	Number
	Truth // true or false
	Null  // nothing at all
)

// Node is a part of a document, whatever notation it is written in.
type Node struct {
	Kind   NodeKind
	Scalar ScalarKind
	Value  string  // of a single value: its text, without quotes
	Items  []*Node // of a list; of keys and values: key, value, key, value
	Line   int     // where it begins, from 1; 0 for a node that was not read
	Column int     // in characters, from 1
	// Quoted says that the value stands in quotes, or is set off in another way, so
	// that its characters need not stand where they stand in Value.
	Quoted bool
	// OneLine has the node printed on one line, with all it holds.
	OneLine bool
	// Refused says why job files do not use what stands here; nil: they do.
	Refused *message.Message
}

// Notation turns the text of a document into nodes. The text is UTF-8, not empty
// and of an acceptable size. Without a node there is a problem.
type Notation func(file string, data []byte) (*Node, *Problem)

// Member returns the value of a key; nil without one.
func (n *Node) Member(key string) *Node {
	if n.Kind != Keys {
		return nil
	}
	for i := 0; i+1 < len(n.Items); i += 2 {
		if n.Items[i].Value == key {
			return n.Items[i+1]
		}
	}
	return nil
}

func (n *Node) place() place { return place{n.Line, n.Column} }

// what names what a node holds, for a message.
func (n *Node) what() any {
	switch n.Kind {
	case Keys:
		return says("held_keys")
	case List:
		return says("held_list")
	}
	return quoted(n.Value)
}
