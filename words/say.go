package words

import (
	"slices"

	"firstdrop/measure"
	"firstdrop/message"
)

// Say says a message that came up where no language is known: problem. and its code
// in the catalogue, or its own English where the catalogue has no such sentence.
// Lengths are exact; messages among the arguments are said too.
func (c *Catalogue) Say(m message.Message) string {
	c = c.orDefault()
	id := "problem." + m.Code
	if !c.Has(id) {
		return m.Error()
	}
	return c.Fill(id, func(name string) (any, bool) {
		v, ok := m.Arg(name)
		switch v := v.(type) {
		case message.Message:
			return c.Say(v), ok
		case measure.Length:
			return c.Exact(v), ok
		case string:
			if slices.Contains(named, name) {
				return c.Name(v), ok
			}
		}
		return v, ok
	})
}

// named lists the arguments that are names, which the program may have given.
var named = []string{"run", "wall", "before", "corner", "opening", "fitting", "kind"}
