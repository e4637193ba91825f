package store

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// NameOf returns the name of the job that a document holds: its member "name", as
// far as it is a text and fits on a line. "" for a document without one.
func NameOf(document []byte) string {
	from, to := nameIn(document)
	var name string
	if from == to || json.Unmarshal(document[from:to], &name) != nil {
		return ""
	}
	return clipped(name)
}

// WithName returns the document with another name, and with every other byte as
// it was. The document is a JSON object.
func WithName(document []byte, name string) []byte {
	text, _ := json.Marshal(name) // a text always encodes
	if from, to := nameIn(document); from < to {
		return bytes.Join([][]byte{document[:from], text, document[to:]}, nil)
	}
	open := bytes.IndexByte(document, '{') + 1
	member := append([]byte(`"name":`), text...)
	if rest := bytes.TrimSpace(document[open:]); len(rest) > 0 && rest[0] != '}' {
		member = append(member, ',')
	}
	return bytes.Join([][]byte{document[:open], member, document[open:]}, nil)
}

// nameIn returns where the value of the last member "name" stands; nowhere when
// there is none.
func nameIn(document []byte) (from, to int) {
	d := json.NewDecoder(bytes.NewReader(document))
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return 0, 0
	}
	for d.More() {
		key, err := d.Token()
		var value json.RawMessage
		if err != nil || d.Decode(&value) != nil {
			return 0, 0
		}
		if key == "name" {
			to = int(d.InputOffset())
			from = to - len(value)
		}
	}
	return from, to
}

// clipped makes a name one line of not too many characters.
func clipped(name string) string {
	name = strings.Join(strings.FieldsFunc(name, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) }), " ")
	if utf8.RuneCountInString(name) > MostWords {
		name = string([]rune(name)[:MostWords-1]) + "…"
	}
	return name
}

// CheckPush says what is wrong with a push before anything is looked up; nil when
// nothing is. [TooLarge], [Invalid].
func CheckPush(base int64, revisions []Revision) error {
	switch {
	case base < 0:
		return &Error{Code: Invalid, Message: fmt.Sprintf("there is no version %d", base)}
	case len(revisions) == 0:
		return &Error{Code: Invalid, Message: "there is no revision to save"}
	case len(revisions) > MostRevisions:
		return &Error{Code: TooLarge, Message: fmt.Sprintf("%d revisions at once, and at most %d are taken; send them in parts", len(revisions), MostRevisions)}
	}
	seen := map[ID]bool{}
	for i := range revisions {
		r := &revisions[i]
		if err := r.check(); err != nil {
			return err
		}
		if r.Key != "" && seen[r.Key] {
			return &Error{Code: Invalid, Message: "two revisions have the same key " + string(r.Key)}
		}
		seen[r.Key] = true
	}
	return nil
}

func (r *Revision) check() error {
	if r.Key != "" {
		if _, err := ParseID(string(r.Key)); err != nil {
			return err
		}
	}
	if len(r.Document) > MostBytes {
		return &Error{Code: TooLarge, Message: fmt.Sprintf("the document has %d bytes; at most %d are kept", len(r.Document), MostBytes)}
	}
	if text := bytes.TrimSpace(r.Document); len(text) == 0 || text[0] != '{' || !json.Valid(text) {
		return &Error{Code: Invalid, Message: "a job's document is a JSON object"}
	}
	return CheckWords("label", r.Label)
}

// CheckWords says what is wrong with a label or the name of a version; nil when
// nothing is. [Invalid].
func CheckWords(what, text string) error {
	switch {
	case !utf8.ValidString(text) || strings.ContainsFunc(text, unicode.IsControl):
		return &Error{Code: Invalid, Message: "a " + what + " is one line of text"}
	case utf8.RuneCountInString(text) > MostWords:
		return &Error{Code: Invalid, Message: fmt.Sprintf("a %s has at most %d characters", what, MostWords)}
	}
	return nil
}
