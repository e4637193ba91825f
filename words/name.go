package words

import "strings"

// Name returns a name as people read it in the language. Names that people gave
// stay as they are; what the program calls a thing without one ("window",
// "socket 2", "wall 3", "wall 1|wall 2") is translated, also in a list.
func (c *Catalogue) Name(name string) string {
	for _, between := range []string{", ", "–", "|"} {
		if parts := strings.Split(name, between); len(parts) > 1 {
			for i, p := range parts {
				parts[i] = c.Name(p)
			}
			return strings.Join(parts, between)
		}
	}
	if head, wall, ok := partOfRun(name); ok {
		return c.Name(head) + " " + c.Name(wall)
	}
	word, number, numbered := strings.Cut(name, " ")
	if strings.Trim(number, "0123456789") != "" || !c.isKind(word) {
		if c.isKind(name) {
			return c.Text("kind." + strings.ReplaceAll(name, " ", "-"))
		}
		return name
	}
	word = c.Text("kind." + word)
	if numbered {
		word += " " + number
	}
	return word
}

// partOfRun cuts the name of a run that is one of several of an entry, "run 2 north
// wall", before the wall.
func partOfRun(name string) (run, wall string, ok bool) {
	rest, ok := strings.CutPrefix(name, "run ")
	number, wall, cut := strings.Cut(rest, " ")
	return "run " + number, wall, ok && cut && number != "" && strings.Trim(number, "0123456789") == ""
}

func (c *Catalogue) isKind(name string) bool {
	return name != "" && name == strings.ToLower(name) && c.Has("kind."+strings.ReplaceAll(name, " ", "-"))
}
