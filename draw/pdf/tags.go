package pdf

import (
	"fmt"
	"strings"

	"firstdrop/draw"
)

// tag is an element of the document's structure (14.7.2): what a stretch of a page
// is, for those who have it read aloud.
type tag struct {
	id    int
	kind  string // as PDF names it; "" for decoration
	role  draw.Role
	alt   string
	box   string
	above *tag
	kids  []string
}

// decoration is the tag of what is not read.
var decoration = &tag{}

// tags is the structure of a document in the making.
type tags struct {
	file  *file
	root  int
	top   *tag
	all   []*tag
	open  *tag
	page  []*tag // by number of the marked content on the page
	marks []mark
	pages []string // for every page: the tags of its marked contents
}

// mark is a piece of marked content that waits for the number of its page.
type mark struct {
	tag *tag
	at  int // among the tag's kids
	n   int
}

func newTags(f *file) *tags {
	t := &tags{file: f, root: f.reserve()}
	t.top = t.add(nil, "Document", draw.Plain)
	return t
}

func (t *tags) add(above *tag, kind string, role draw.Role) *tag {
	n := &tag{id: t.file.reserve(), kind: kind, role: role, above: above}
	t.all = append(t.all, n)
	if above != nil {
		above.kids = append(above.kids, fmt.Sprintf("%d 0 R", n.id))
	}
	return n
}

// kinds are PDF's names for roles (14.8.4).
var kinds = map[draw.Role]string{
	draw.Figure: "Figure", draw.Heading: "H1", draw.Subheading: "H2", draw.Paragraph: "P",
	draw.Table: "Table", draw.Row: "TR", draw.HeaderCell: "TH", draw.Cell: "TD",
}

// figure returns a tag for a drawing, told by its title and description.
func (t *tags) figure(above *tag, title, desc string, box, page draw.Box) *tag {
	n := t.add(above, "Figure", draw.Figure)
	n.alt = draw.Clean(strings.TrimSpace(strings.TrimSuffix(title, ".") + ". " + desc))
	if !box.IsEmpty() {
		n.box = fmt.Sprintf("[%s %s %s %s]", points(box.X.Lo-page.X.Lo), points(box.Y.Lo-page.Y.Lo), points(box.X.Hi-page.X.Lo), points(box.Y.Hi-page.Y.Lo))
	}
	return n
}

// under returns the tag for what is in a group. A drawing is one whole: what is in
// it is told by its description.
func (t *tags) under(at *tag, g draw.Group, page draw.Box) *tag {
	switch {
	case at == decoration || at.role == draw.Figure || g.Role == draw.Plain:
		return at
	case g.Role == draw.Furniture:
		return decoration
	case g.Role == draw.Figure:
		return t.figure(at, g.Title, g.Desc, g.Box(), page)
	}
	return t.add(at, kinds[g.Role], g.Role)
}

// forText returns the tag for a text: its group's, or a new one where the group
// holds only other tags.
func (t *tags) forText(at *tag) *tag {
	if at == decoration {
		return at
	}
	switch at.role {
	case draw.Plain:
		return t.add(at, "P", draw.Paragraph)
	case draw.Table:
		return t.add(at, "Caption", draw.Paragraph)
	case draw.Row:
		return t.add(at, "TD", draw.Cell)
	}
	return at
}

// forShape returns the tag for a line or an area: decoration, unless in a drawing.
func (t *tags) forShape(at *tag) *tag {
	if at != decoration && at.role == draw.Figure {
		return at
	}
	return decoration
}

// mark returns the operators that end what is open and begin content of a tag; nil
// only ends.
func (t *tags) mark(n *tag) string {
	if n == t.open {
		return ""
	}
	out := ""
	if t.open != nil {
		out = "EMC\n"
	}
	t.open = n
	switch n {
	case nil:
		return out
	case decoration:
		return out + "/Artifact BMC\n"
	}
	id := len(t.page)
	t.page = append(t.page, n)
	t.marks = append(t.marks, mark{n, len(n.kids), id})
	n.kids = append(n.kids, "")
	return out + fmt.Sprintf("/%s<</MCID %d>>BDC\n", n.kind, id)
}

// endPage tells the marked contents of a page where they are.
func (t *tags) endPage(id int) {
	for _, m := range t.marks {
		m.tag.kids[m.at] = fmt.Sprintf("<</Type/MCR/Pg %d 0 R/MCID %d>>", id, m.n)
	}
	var b strings.Builder
	for _, n := range t.page {
		fmt.Fprintf(&b, "%d 0 R ", n.id)
	}
	t.pages, t.page, t.marks = append(t.pages, b.String()), nil, nil
}

// write writes the structure and returns the number of its root.
func (t *tags) write() int {
	for _, n := range t.all {
		above := t.root
		if n.above != nil {
			above = n.above.id
		}
		more := ""
		if n.alt != "" {
			more += "/Alt " + words(n.alt)
		}
		if n.box != "" {
			more += "/A<</O/Layout/BBox " + n.box + ">>"
		}
		if n.kind == "TH" {
			more += "/A<</O/Table/Scope/Column>>"
		}
		t.file.set(n.id, fmt.Sprintf("<</Type/StructElem/S/%s/P %d 0 R/K[%s]%s>>", n.kind, above, strings.Join(n.kids, " "), more))
	}
	nums := ""
	for i, p := range t.pages {
		nums += fmt.Sprintf("%d[%s]", i, p)
	}
	t.file.set(t.root, fmt.Sprintf("<</Type/StructTreeRoot/K %d 0 R/ParentTree<</Nums[%s]>>/ParentTreeNextKey %d>>", t.top.id, nums, len(t.pages)))
	return t.root
}
