package pdf

import (
	"errors"
	"fmt"
	"io"

	"firstdrop/draw"
	"firstdrop/measure"
)

// Document is a few pages with what readers show about them.
type Document struct {
	Title string
	// Lang is the language of the words, as in BCP 47: "en-GB", "de".
	Lang  string
	Pages []Page
}

// Page is one page: the window of its scene.
type Page struct {
	Scene     *draw.Scene
	Bookmarks []Bookmark
}

// Bookmark leads to a place on its page.
type Bookmark struct {
	Title string
	// Level is 0 for a chapter, 1 for what lies in the chapter before, and so on.
	// One that has no place above it counts as high as there is one.
	Level int
	Y     measure.Length // of the place, in the scene; the page's head when 0
}

// Producer is the program that files name as theirs.
const Producer = "Firstdrop"

// sharp is to how many squares to the inch of paper pictures are reduced: more
// than anyone sees.
const sharp = 300

// Write writes the document. An error names the page it is about.
func (d *Document) Write(w io.Writer) error {
	if len(d.Pages) == 0 {
		return errors.New("a document without pages cannot be written")
	}
	wr := newWriter(d)
	for i := range d.Pages {
		if err := wr.page(&d.Pages[i]); err != nil {
			return fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	if err := wr.finish(d); err != nil {
		return err
	}
	return wr.file.write(w, wr.catalog, wr.info)
}

// writer holds what the pages of one document share.
type writer struct {
	file     *file
	catalog  int
	info     int
	tree     int // of pages
	pages    []sheet
	fonts    map[string]*embedded
	order    []*embedded
	pictures map[*draw.Picture]*image
	fades    map[int]int
	tags     *tags
}

// sheet is a page that was written.
type sheet struct {
	id     int
	window draw.Box
}

func newWriter(d *Document) *writer {
	wr := &writer{file: &file{}, fonts: map[string]*embedded{}, pictures: map[*draw.Picture]*image{}, fades: map[int]int{}}
	wr.catalog, wr.info, wr.tree = wr.file.reserve(), wr.file.reserve(), wr.file.reserve()
	wr.tags = newTags(wr.file)
	wr.measurePictures(d)
	return wr
}

// page writes one page.
func (wr *writer) page(p *Page) error {
	s := p.Scene
	if s == nil || s.Window.X.Length() <= 0 || s.Window.Y.Length() <= 0 {
		return errors.New("the scene has no size")
	}
	c := newContent(wr, s)
	c.scene(s)
	if c.err != nil {
		return c.err
	}
	id := wr.file.reserve()
	wr.tags.endPage(id)
	stream := wr.file.addStream("", c.bytes())
	wr.file.set(id, fmt.Sprintf("<</Type/Page/Parent %d 0 R/MediaBox[0 0 %s %s]/Contents %d 0 R/Resources %s/StructParents %d/Tabs/S>>",
		wr.tree, points(s.Window.X.Length()), points(s.Window.Y.Length()), stream, c.resources(), len(wr.pages)))
	wr.pages = append(wr.pages, sheet{id, s.Window})
	return nil
}

// finish writes what the document has once.
func (wr *writer) finish(d *Document) error {
	for _, e := range wr.order {
		if err := e.write(wr.file); err != nil {
			return err
		}
	}
	kids := ""
	for _, p := range wr.pages {
		kids += fmt.Sprintf("%d 0 R ", p.id)
	}
	wr.file.set(wr.tree, fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", len(wr.pages), kids))
	title := draw.Clean(d.Title)
	wr.file.set(wr.info, "<</Title "+words(title)+"/Producer "+words(Producer)+">>")
	more := ""
	if lang := d.lang(); lang != "" {
		more += "/Lang(" + lang + ")"
	}
	if o := wr.bookmarks(d); o > 0 {
		more += fmt.Sprintf("/Outlines %d 0 R/PageMode/UseOutlines", o)
	}
	wr.file.set(wr.catalog, fmt.Sprintf("<</Type/Catalog/Pages %d 0 R/MarkInfo<</Marked true>>/StructTreeRoot %d 0 R/Metadata %d 0 R/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>%s>>",
		wr.tree, wr.tags.write(), wr.file.addPlain("/Type/Metadata/Subtype/XML", metadata(title, d.lang())), more))
	return nil
}

// lang returns the language if it is one that a file may name: letters, digits and
// hyphens.
func (d *Document) lang() string {
	for _, r := range d.Lang {
		if r != '-' && (r < '0' || r > '9') && (r < 'A' || r > 'Z') && (r < 'a' || r > 'z') {
			return ""
		}
	}
	return d.Lang
}
