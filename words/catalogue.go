package words

import (
	"embed"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"

	"firstdrop/measure"
	"firstdrop/money"
)

//go:embed catalogue/*.txt
var files embed.FS

// Catalogue is what is said in one language, with lengths in one system of
// units. It is never changed and may be used by several at once. Nil speaks as
// For("") does.
type Catalogue struct {
	locale
	units    measure.System
	messages map[string]*saying
}

// opened holds the catalogues of all languages by tag, read when first asked
// for.
var opened = sync.OnceValue(func() map[string]*Catalogue {
	all := map[string]*Catalogue{}
	for _, l := range locales {
		c, err := open(l, all[l.base])
		if err != nil {
			panic(err)
		}
		all[l.tag] = c
	}
	return all
})

// open reads the file of a language, over the messages of its base.
func open(l locale, base *Catalogue) (*Catalogue, error) {
	file, err := files.ReadFile("catalogue/" + l.tag + ".txt")
	if err != nil {
		return nil, err
	}
	messages, err := parse(l.spaced(string(file)))
	if err != nil {
		return nil, fmt.Errorf("catalogue/%s.txt, %w", l.tag, err)
	}
	if base != nil {
		all := maps.Clone(base.messages)
		maps.Copy(all, messages)
		messages = all
	}
	return &Catalogue{locale: l, messages: messages}, nil
}

// For returns the catalogue of a language ([Match]), metric; British English
// where there is none.
func For(tag string) *Catalogue {
	tag, ok := Match(tag)
	if !ok {
		tag = locales[0].tag
	}
	return opened()[tag]
}

// In returns the catalogue with lengths in a system of units.
func (c *Catalogue) In(units measure.System) *Catalogue {
	out := *c.orDefault()
	out.units = units
	return &out
}

// With returns the catalogue with the messages of a file besides its own, over
// those of the same name: those of a program that says more than this package
// knows. The error says on which line the file cannot be read.
func (c *Catalogue) With(file string) (*Catalogue, error) {
	out := *c.orDefault()
	more, err := parse(out.spaced(file))
	if err != nil {
		return nil, err
	}
	out.messages = maps.Clone(out.messages)
	maps.Copy(out.messages, more)
	return &out, nil
}

func (c *Catalogue) orDefault() *Catalogue {
	if c == nil {
		return For("")
	}
	return c
}

// Tag returns the language's tag of BCP 47.
func (c *Catalogue) Tag() string { return c.orDefault().tag }

// Language returns the name of the language in the language itself.
func (c *Catalogue) Language() string { return c.orDefault().name }

// Units returns the system of units.
func (c *Catalogue) Units() measure.System { return c.orDefault().units }

// Page returns the name of the size of paper that printers hold where the
// language is spoken: "A4" or "Letter".
func (c *Catalogue) Page() string { return c.orDefault().page }

// Has reports whether there is a message of that name.
func (c *Catalogue) Has(id string) bool { return c.orDefault().messages[id] != nil }

// IDs lists the names of all messages in alphabetical order.
func (c *Catalogue) IDs() []string { return slices.Sorted(maps.Keys(c.orDefault().messages)) }

// Needs lists what a message has filled in, each once, in alphabetical order.
func (c *Catalogue) Needs(id string) []string {
	m := c.orDefault().messages[id]
	if m == nil {
		return nil
	}
	var names []string
	for _, t := range m.forms {
		names = append(names, t.names()...)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// Text returns a message with its placeholders filled in. args are names and
// values in turn: a string, an int, a [measure.Length] as people read it, a
// [money.Amount]. The int named n also chooses the form. What is not given
// stays in its braces, and a message that is not there gives its name: both are
// mistakes of the program, which tests find.
func (c *Catalogue) Text(id string, args ...any) string {
	return c.Fill(id, func(name string) (any, bool) {
		for i := 0; i+1 < len(args); i += 2 {
			if args[i] == name {
				return args[i+1], true
			}
		}
		return nil, false
	})
}

// Fill returns a message as [Catalogue.Text] does, with each value asked for by
// name.
func (c *Catalogue) Fill(id string, value func(name string) (any, bool)) string {
	c = c.orDefault()
	m := c.messages[id]
	if m == nil {
		return "{" + id + "}"
	}
	var b strings.Builder
	for _, p := range c.form(m, value) {
		v, ok := any(nil), false
		if p.name != "" {
			v, ok = value(p.name)
		}
		switch {
		case p.name == "":
			b.WriteString(p.plain)
		case ok:
			b.WriteString(c.show(v))
		default:
			b.WriteString("{" + p.name + "}")
		}
	}
	return b.String()
}

// form chooses the form of a message by the number n.
func (c *Catalogue) form(m *saying, value func(string) (any, bool)) text {
	if len(m.forms) > 1 {
		if v, ok := value("n"); ok {
			if n, ok := v.(int); ok {
				return m.forms[c.plural(n)]
			}
		}
	}
	return m.forms["other"]
}

// show writes a value.
func (c *Catalogue) show(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case int:
		return strconv.Itoa(v)
	case measure.Length:
		return c.Length(v)
	case money.Amount:
		return c.Money(v)
	}
	return fmt.Sprint(v)
}
