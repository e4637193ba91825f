package words

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// A catalogue file is text in UTF-8, one message after the other:
//
//	# A remark.
//	layer.seams = Seams
//	finding.drift = The ceiling over wall {wall} rises by {drift}
//	    to the right
//	rolls[one] = {n} roll
//	rolls[other] = {n} rolls
//
// A line that begins with a space goes on with the message above it. What
// stands in braces is filled in. A message with forms in brackets is chosen by
// the number {n}: see form.

// saying is a text in its forms; one without forms has only other.
type saying struct {
	line  int // where it begins in its file, from 1
	forms map[string]text
}

// text is a text cut up at its placeholders.
type text []part

// part is plain text, or else the name of what is filled in.
type part struct{ plain, name string }

// names lists what a text has filled in, in the order of the text.
func (t text) names() (names []string) {
	for _, p := range t {
		if p.name != "" {
			names = append(names, p.name)
		}
	}
	return names
}

// fileError says what is wrong in a catalogue, and where.
type fileError struct {
	line int
	what string
}

func (e *fileError) Error() string { return fmt.Sprintf("line %d: %s", e.line, e.what) }

// parse reads a catalogue file.
func parse(file string) (map[string]*saying, error) {
	if !utf8.ValidString(file) {
		return nil, &fileError{1, "not UTF-8"}
	}
	p := parsing{messages: map[string]*saying{}}
	for l := range strings.Lines(file) {
		p.line++
		if err := p.read(strings.TrimRight(l, "\r\n")); err != nil {
			return nil, err
		}
	}
	if err := p.keep(); err != nil {
		return nil, err
	}
	for id, m := range p.messages {
		if m.forms["other"] == nil {
			return nil, &fileError{m.line, id + " has the form one and not other"}
		}
	}
	return p.messages, nil
}

// parsing is the reading of a file: the message begun, and those before it.
type parsing struct {
	messages map[string]*saying
	line     int
	begun    int // its line
	key      string
	text     string
}

func (p *parsing) read(l string) error {
	inner := strings.TrimSpace(l)
	switch {
	case inner == "" || strings.HasPrefix(l, "#"):
		return p.keep()
	case l[0] == ' ' || l[0] == '\t':
		if p.key == "" {
			return &fileError{p.line, "this line goes on, and there is nothing to go on with"}
		}
		p.text += " " + inner
		return nil
	}
	if err := p.keep(); err != nil {
		return err
	}
	key, value, ok := strings.Cut(l, "=")
	if !ok || strings.TrimSpace(key) == "" {
		return &fileError{p.line, "a message is written: name = text"}
	}
	p.begun, p.key, p.text = p.line, strings.TrimSpace(key), strings.TrimSpace(value)
	return nil
}

// keep ends the message begun.
func (p *parsing) keep() error {
	if p.key == "" {
		return nil
	}
	id, which, err := splitKey(p.key)
	if err != nil {
		return &fileError{p.begun, err.Error()}
	}
	t, err := cutUp(strings.TrimSpace(p.text))
	if err != nil {
		return &fileError{p.begun, fmt.Sprintf("%s: %v", id, err)}
	}
	m := p.messages[id]
	if m == nil {
		m = &saying{line: p.begun, forms: map[string]text{}}
		p.messages[id] = m
	}
	if m.forms[which] != nil {
		return &fileError{p.begun, fmt.Sprintf("%s is there twice; first on line %d", p.key, m.line)}
	}
	m.forms[which] = t
	p.key = ""
	return nil
}

// splitKey divides "rolls[one]" into name and form; without brackets the form
// is other.
func splitKey(key string) (id, which string, err error) {
	id, which, has := strings.Cut(key, "[")
	if !has {
		which = "other]"
	}
	which, closed := strings.CutSuffix(which, "]")
	if !closed || which != "one" && which != "other" {
		return "", "", fmt.Errorf("%s: a form is [one] or [other]", key)
	}
	for _, r := range id {
		if !strings.ContainsRune("abcdefghijklmnopqrstuvwxyz0123456789.-_", r) {
			return "", "", fmt.Errorf("%q: a name has small letters, digits, dots and dashes", id)
		}
	}
	if id == "" {
		return "", "", fmt.Errorf("%s: a message without a name", key)
	}
	return id, which, nil
}

// cutUp divides a text at its placeholders.
func cutUp(s string) (t text, err error) {
	for s != "" {
		plain, rest, has := strings.Cut(s, "{")
		if strings.Contains(plain, "}") {
			return nil, fmt.Errorf("a brace is closed that was not opened")
		}
		if plain != "" {
			t = append(t, part{plain: plain})
		}
		if !has {
			return t, nil
		}
		name, after, closed := strings.Cut(rest, "}")
		if !closed || name == "" || strings.ContainsAny(name, "{ ") {
			return nil, fmt.Errorf("a brace is opened and no name closed: {%s", rest)
		}
		t = append(t, part{name: name})
		s = after
	}
	if len(t) == 0 {
		return nil, fmt.Errorf("a message without a text")
	}
	return t, nil
}
