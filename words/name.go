package words

import "strings"

// Name returns a name as people read it in the language. Names that people gave
// stay as they are; what the program calls a thing without one ("window",
// "socket 2", "wall 3", "wall 1|wall 2") is translated, also in a list. A run that is one of
// several of a room's only entry, "run 1 north" or "run 1 A–C", is called after its walls.
func (c *Catalogue) Name(name string) string {
	if said, ok := c.names(name, ", "); ok {
		return said
	}
	if walls, ok := partOfRun(name); ok {
		return c.Walls(walls)
	}
	for _, between := range []string{"–", "|"} {
		if said, ok := c.names(name, between); ok {
			return said
		}
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

// names translates a list of names; ok is false where it is none.
func (c *Catalogue) names(list, between string) (said string, ok bool) {
	parts := strings.Split(list, between)
	if len(parts) == 1 {
		return "", false
	}
	for i, p := range parts {
		parts[i] = c.Name(p)
	}
	return strings.Join(parts, between), true
}

// partOfRun returns the walls of a run that is one of several of an entry: "A–C" of
// "run 1 A–C".
func partOfRun(name string) (walls string, ok bool) {
	rest, ok := strings.CutPrefix(name, "run ")
	number, walls, cut := strings.Cut(rest, " ")
	return walls, ok && cut && number != "" && strings.Trim(number, "0123456789") == ""
}

// Walls says that a name is that of a wall, or of several: "wall A", "walls A–C". One that
// the program gave, "wall 3", says so already.
func (c *Catalogue) Walls(name string) string {
	switch said := c.Name(name); {
	case strings.HasPrefix(name, "wall "):
		return said
	case strings.Contains(name, "–"):
		return c.Text("name.walls", "walls", said)
	default:
		return c.Text("name.wall", "wall", said)
	}
}

func (c *Catalogue) isKind(name string) bool {
	return name != "" && name == strings.ToLower(name) && c.Has("kind."+strings.ReplaceAll(name, " ", "-"))
}
