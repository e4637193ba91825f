package yaml

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	v4 "go.yaml.in/yaml/v4"

	"firstdrop/job"
)

// WithRoll returns a document with one more roll of a paper, or with replace, in
// place of the one of that name. paper may be "" where there is only one. Of
// YAML every other line stays as it is, comments included; JSON is printed anew.
// Nothing is changed besides: the result is read again and held against the job
// that it should be, and where the text cannot be changed so the error shows
// what to write by hand. The error wraps [job.ErrRollThere] if only replace is
// lacking, and is [job.Problems] if the document or the roll is not sound.
func WithRoll(file string, data []byte, paper string, roll job.Roll, replace bool) ([]byte, error) {
	was, err := Read(file, data)
	if err != nil {
		return nil, err
	}
	want, at, old, err := was.WithRoll(paper, roll, replace)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if root, _ := job.JSON(file, data); root != nil {
		err := want.WriteJSON(&out)
		return out.Bytes(), err
	}
	text, err := newPatch(file, data).roll(at, old, rollText(was, roll))
	if err != nil {
		return nil, err
	}
	if now, err := Read(file, text); err != nil || !isSame(now, want) {
		return nil, byHand(rollText(was, roll))
	}
	return text, nil
}

func byHand(item string) error {
	return fmt.Errorf("the roll cannot be put between these lines without changing others; write it by hand, as an item of the paper's rolls: - %s", item)
}

// isSame reports whether two jobs are printed alike.
func isSame(j, other *job.Job) bool {
	var a, b bytes.Buffer
	return j.WriteJSON(&a) == nil && other.WriteJSON(&b) == nil && bytes.Equal(a.Bytes(), b.Bytes())
}

// rollText prints a roll on one line.
func rollText(j *job.Job, roll job.Roll) string {
	own := job.Job{Units: j.Units, Papers: []job.Paper{{Rolls: []job.Roll{roll}}}}
	n := own.Node().Member("papers").Items[0].Member("rolls").Items[0]
	var b strings.Builder
	if err := dump(&b, flow(written(n))); err != nil {
		return ""
	}
	return strings.TrimSpace(b.String())
}

// flow has a node written on one line, with all it holds.
func flow(own *v4.Node) *v4.Node {
	if own.Kind != v4.ScalarNode {
		own.Style |= v4.FlowStyle
	}
	for _, inner := range own.Content {
		flow(inner)
	}
	return own
}

// member returns the value of a key; nil without one.
func member(own *v4.Node, key string) *v4.Node {
	for i := 0; own.Kind == v4.MappingNode && i+1 < len(own.Content); i += 2 {
		if own.Content[i].Value == key {
			return own.Content[i+1]
		}
	}
	return nil
}

// patch is the text of a YAML document to which lines are added.
type patch struct {
	root    *v4.Node
	text    string
	lines   []int // where each line begins
	newline string
}

func newPatch(file string, data []byte) *patch {
	p := &patch{text: string(data), lines: []int{0}, newline: "\n"}
	p.root, _ = load(file, bytes.TrimPrefix(data, []byte("\ufeff")))
	if strings.Contains(p.text, "\r\n") {
		p.newline = "\r\n"
	}
	for i, c := range p.text {
		if c == '\n' {
			p.lines = append(p.lines, i+1)
		}
	}
	return p
}

// roll puts the text of a roll among those of a paper, or in place of roll old.
func (p *patch) roll(paper, old int, item string) ([]byte, error) {
	list := member(p.root, "papers")
	if list == nil || len(list.Content) <= paper {
		return nil, byHand(item)
	}
	label := list.Content[paper]
	switch rolls := member(label, "rolls"); {
	case rolls == nil && isFlow(label):
		return p.before(label, ", rolls: ["+item+"]")
	case rolls == nil:
		indent := strings.Repeat(" ", label.Column-1)
		return p.after(label, label.Column-1, false, indent+"rolls:"+p.newline+indent+"  - "+item)
	case old >= 0:
		return p.instead(rolls.Content[old], item)
	case isFlow(rolls) && len(rolls.Content) > 0:
		return p.before(rolls, ", "+item)
	case isFlow(rolls):
		return p.before(rolls, item)
	default:
		return p.after(rolls, rolls.Column-1, true, strings.Repeat(" ", rolls.Column-1)+"- "+item)
	}
}

func isFlow(n *v4.Node) bool { return n.Style&v4.FlowStyle != 0 }

// offset returns where a node begins in the text.
func (p *patch) offset(n *v4.Node) int {
	at := p.lines[n.Line-1]
	for range n.Column - 1 {
		_, size := utf8.DecodeRuneInString(p.text[at:])
		at += size
	}
	return at
}

// before puts a text before the closing bracket of a node.
func (p *patch) before(n *v4.Node, text string) ([]byte, error) {
	at := p.closing(p.offset(n))
	// A comment, or a line break, before the bracket would swallow what follows.
	for at > 0 && (p.text[at-1] == ' ' || p.text[at-1] == '\n' || p.text[at-1] == '\r') {
		at--
	}
	return []byte(p.text[:at] + text + p.text[at:]), nil
}

// closing returns where the bracket opened at an offset is closed.
func (p *patch) closing(at int) int {
	depth, quote := 0, byte(0)
	for i := at; i < len(p.text); i++ {
		c := p.text[i]
		switch {
		case quote == '"' && c == '\\':
			i++
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '#' && strings.ContainsRune(" \t\n", rune(p.text[i-1])):
			for i+1 < len(p.text) && p.text[i+1] != '\n' {
				i++
			}
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return len(p.text)
}

// after puts lines behind the last line of a block that is indented so far.
func (p *patch) after(n *v4.Node, indent int, isList bool, text string) ([]byte, error) {
	at := p.blockEnd(n, indent, isList)
	if at > 0 && p.text[at-1] != '\n' {
		text = p.newline + text
	} else {
		text += p.newline
	}
	return []byte(p.text[:at] + text + p.text[at:]), nil
}

// blockEnd returns where the last line of a block ends that says something.
func (p *patch) blockEnd(n *v4.Node, indent int, isList bool) int {
	end := len(p.text)
	for k := n.Line - 1; k < len(p.lines); k++ {
		from, to := p.lines[k], len(p.text)
		if k+1 < len(p.lines) {
			to = p.lines[k+1]
		}
		line := p.text[from:to]
		body := strings.TrimLeft(line, " ")
		depth := len(line) - len(body)
		isDash := strings.HasPrefix(body, "-")
		switch {
		case k == n.Line-1:
		case strings.TrimSpace(body) == "" || body[0] == '#':
			continue
		case depth < indent || isList && depth == indent && !isDash:
			return end
		}
		end = to
	}
	return end
}

// instead puts a text in place of a roll. One that holds comments of its own is
// left to people.
func (p *patch) instead(n *v4.Node, text string) ([]byte, error) {
	from := p.offset(n)
	to := p.closing(from) + 1
	if !isFlow(n) {
		to = p.blockEnd(n, n.Column-1, false)
		for to > from && (p.text[to-1] == '\n' || p.text[to-1] == '\r') {
			to--
		}
	}
	if to > len(p.text) || strings.Contains(p.text[from:to], "#") {
		return nil, byHand(text)
	}
	return []byte(p.text[:from] + text + p.text[to:]), nil
}
