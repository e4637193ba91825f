package tell

import (
	"strings"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/words"
)

// Finding says a finding in one plain sentence that a client understands, with
// its place and its sizes. A code that the catalogue does not know is named
// together with everything that the finding holds.
func Finding(c *words.Catalogue, f finding.Finding) string {
	s := speaker{f, c}
	if !Knows(f.Code) {
		return s.bare()
	}
	text := c.Fill(s.message(), s.value)
	if run := c.Name(f.Place.Run); run != "" && run != c.Walls(f.Place.Wall) { // the wall is named already
		return c.Text("sentence.run", "text", text, "run", run)
	}
	return c.Text("sentence", "text", text)
}

// Knows reports whether there is a sentence for a code.
func Knows(code finding.Code) bool { return words.For("").Has("finding." + string(code)) }

// speaker says a finding in a language.
type speaker struct {
	f finding.Finding
	c *words.Catalogue
}

// message returns the name of the sentence: that of the code, or a variant for
// what the finding holds.
func (s speaker) message() string {
	id := "finding." + string(s.f.Code)
	if v, ok := variants[s.f.Code]; ok {
		if variant := v(s); variant != "" {
			return id + "." + variant
		}
	}
	return id
}

// value returns what a placeholder of a sentence stands for. What is no part of
// every finding is the size of that name.
func (s speaker) value(name string) (any, bool) {
	if v, ok := s.place(name); ok {
		return v, true
	}
	switch name {
	case "n":
		return s.f.Count, true
	case "word":
		return s.word(), true
	case "end":
		return s.end(), true
	case "subject":
		return s.subject(), true
	case "where":
		return s.where(), true
	case "spot":
		return s.spot(), true
	case "missed":
		return s.missed(), true
	case "misses":
		return s.misses(), true
	case "next":
		return s.next("lower"), true
	case "label_next":
		return s.next("label_lower"), true
	}
	return s.size(name), true
}

// place returns a part of the finding's place.
func (s speaker) place(name string) (any, bool) {
	p := s.f.Place
	switch name {
	case "wall":
		return s.c.Name(p.Wall), true
	case "corner":
		return s.c.Name(p.Corner), true
	case "opening":
		return s.opening(), true
	case "paper":
		return p.Paper, true
	case "drop":
		return p.Drop, true
	case "x":
		return s.at(p.X), true
	case "y":
		return s.at(p.Y), true
	}
	return nil, false
}

// size returns a size of that name without its sign; "an unknown length" when
// the finding has none.
func (s speaker) size(name string) string {
	if _, ok := s.f.Size(name); !ok {
		return s.c.Text("size.unknown")
	}
	return s.c.Length(s.signed(name).Abs())
}

// missed says how far the design misses; "an unknown length" when the finding does
// not say both parts.
func (s speaker) missed() string {
	if !s.has("across") || !s.has("along") {
		return s.c.Text("size.unknown")
	}
	return missed(s.c, s.signed("across"), s.signed("along"))
}

// misses says by how much of its width the design misses along a seam, at the least and at
// the most; "an unknown length" when the finding does not say both.
func (s speaker) misses() string {
	if !s.has("least") || !s.has("most") {
		return s.c.Text("size.unknown")
	}
	return Misses(s.c, geom.Interval{Lo: s.signed("least"), Hi: s.signed("most")}, 0)
}

// next says how the design stands in the next drop, by a size.
func (s speaker) next(lower string) string {
	if s.has(lower) && s.signed(lower) == 0 {
		return s.c.Text("next.level")
	}
	return s.c.Text("next.lower", "size", s.size(lower))
}

func (s speaker) signed(name string) measure.Length {
	l, _ := s.f.Size(name)
	return l
}

func (s speaker) at(l *measure.Length) string {
	if l == nil {
		return s.c.Text("size.unknown")
	}
	return s.c.Length(*l)
}

// subject names the finding's drop and wall as the subject of a sentence; what
// the code is about stands in when there is no drop.
func (s speaker) subject() string {
	text := s.c.Text(subjects[s.f.Code])
	if s.f.Place.Drop > 0 {
		text = s.c.Text("subject.drop", "drop", s.f.Place.Drop)
	}
	if s.f.Place.Wall != "" {
		text = s.c.Text("subject.on-wall", "subject", text, "wall", s.c.Name(s.f.Place.Wall))
	}
	return text
}

// where names the finding's place in a sentence: "on wall A, 1237 mm from its
// left end", "in corner A|B".
func (s speaker) where() string {
	p := s.f.Place
	wall := s.c.Name(p.Wall)
	switch {
	case p.Corner != "":
		return s.c.Text("place.corner", "corner", s.c.Name(p.Corner))
	case p.Opening != "" && isKill(s.f.Code):
		return s.c.Text("place.over", "opening", s.opening(), "wall", wall)
	case p.X != nil:
		return s.c.Text("place.along", "wall", wall, "x", *p.X)
	}
	return s.c.Text("place.wall", "wall", wall)
}

// spot names the finding's wall and as much as is known of the place on it,
// with commas between.
func (s speaker) spot() string {
	p := s.f.Place
	parts := []string{s.c.Name(p.Wall)}
	if p.X != nil {
		parts = append(parts, s.c.Text("place.x", "x", *p.X))
	}
	if p.Y != nil {
		parts = append(parts, s.c.Text("place.y", "y", *p.Y))
	}
	return strings.Join(parts, ", ")
}

// opening names the finding's opening.
func (s speaker) opening() string {
	if s.f.Place.Opening == "" {
		return s.c.Text("an-opening")
	}
	return s.c.Name(s.f.Place.Opening)
}

// word is the name or kind that the finding tells.
func (s speaker) word() string {
	if s.f.Word == "" && nameless[s.f.Code] != "" {
		return s.c.Text(nameless[s.f.Code])
	}
	return s.c.Number(s.c.Name(s.f.Word))
}

// end names the head or foot that a finding speaks of.
func (s speaker) end() string {
	if id := "end." + s.f.Word; s.f.Word != "" && s.c.Has(id) {
		return s.c.Text(id)
	}
	return s.c.Text("end.end")
}

// bare names everything that a finding holds.
func (s speaker) bare() string {
	text := strings.NewReplacer("_", " ", "-", " ").Replace(string(s.f.Code))
	if text != "" {
		text = strings.ToUpper(text[:1]) + text[1:]
	}
	parts := s.holds()
	if len(parts) == 0 {
		return s.c.Text("bare", "code", text)
	}
	return s.c.Text("bare.with", "code", text, "parts", strings.Join(parts, ", "))
}

// holds lists everything that a finding holds.
func (s speaker) holds() (parts []string) {
	p := s.f.Place
	for _, part := range []struct{ name, value string }{
		{"run", p.Run}, {"wall", p.Wall}, {"corner", p.Corner}, {"opening", p.Opening}, {"paper", p.Paper}, {"word", s.f.Word},
	} {
		if part.value != "" {
			parts = append(parts, s.c.Text("bare."+part.name, part.name, part.value))
		}
	}
	if p.Drop > 0 {
		parts = append(parts, s.c.Text("bare.drop", "drop", p.Drop))
	}
	if p.X != nil {
		parts = append(parts, s.c.Text("bare.x", "x", *p.X))
	}
	if p.Y != nil {
		parts = append(parts, s.c.Text("bare.y", "y", *p.Y))
	}
	for _, z := range s.f.Sizes {
		parts = append(parts, strings.ReplaceAll(z.Name, "_", " ")+" "+s.c.Length(z.Value))
	}
	if s.f.Count != 0 {
		parts = append(parts, s.c.Text("bare.count", "n", s.f.Count))
	}
	return parts
}
