package message

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"strings"
)

// Message is one thing to be said. The zero value says nothing.
type Message struct {
	// Code names the sentence: "wall_twice" is problem.wall_twice in the catalogues.
	Code string `json:"code"`
	Args Args   `json:"args,omitempty"`
	// english is the sentence with its placeholders in braces, as a catalogue writes
	// it; "" where only the catalogues have it.
	english string
	cause   error
}

// Args are names and values in turn: texts, whole numbers, lengths and whatever else
// prints itself, and Messages. In JSON they are an object.
type Args []any

// New returns a message with its English sentence, for packages that must speak
// without a catalogue. In it {name} stands for the argument of that name.
func New(code, english string, args ...any) Message {
	return Message{Code: code, Args: args, english: english}
}

// Of returns what an error says: the message that it is, or that its method Said
// returns; the text of any other error as it is, under the code "other".
func Of(err error) Message {
	for e := err; e != nil; e = errors.Unwrap(e) {
		switch e := e.(type) {
		case Message:
			return e
		case interface{ Said() Message }:
			return e.Said()
		}
	}
	return New("other", "{text}", "text", err.Error())
}

// Because returns the message with the error that it tells of, for errors.Is.
func (m Message) Because(cause error) Message {
	m.cause = cause
	return m
}

// Unwrap returns the error that the message tells of; nil without one.
func (m Message) Unwrap() error { return m.cause }

// Error returns the English sentence; the code where there is none.
func (m Message) Error() string {
	if m.english == "" {
		return m.Code
	}
	var b strings.Builder
	for rest := m.english; rest != ""; {
		plain, after, _ := strings.Cut(rest, "{")
		name, behind, _ := strings.Cut(after, "}")
		b.WriteString(plain)
		if value, ok := m.Arg(name); ok {
			fmt.Fprint(&b, value)
		}
		rest = behind
	}
	return b.String()
}

// Arg returns the argument of a name, and whether there is one.
func (m Message) Arg(name string) (any, bool) {
	for n, value := range m.Args.All() {
		if n == name {
			return value, true
		}
	}
	return nil, false
}

// All runs through names and values.
func (a Args) All() iter.Seq2[string, any] {
	return func(yield func(string, any) bool) {
		for i := 0; i+1 < len(a); i += 2 {
			if !yield(a[i].(string), a[i+1]) {
				return
			}
		}
	}
}

// MarshalJSON writes the arguments as an object, in their order.
func (a Args) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for name, v := range a.All() {
		key, err := json.Marshal(name)
		value, wrong := json.Marshal(v)
		if err := errors.Join(err, wrong); err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, ",%s:%s", key, value)
	}
	return append(append([]byte("{"), bytes.TrimPrefix(b.Bytes(), []byte(","))...), '}'), nil
}
