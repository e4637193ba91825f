package pdf

import (
	"fmt"

	"firstdrop/draw"
	"firstdrop/measure"
)

// entry is a bookmark in its tree (12.3.3).
type entry struct {
	id, above  int // above is 0 for the root
	title      string
	page       sheet
	y          measure.Length
	kids       []int // indexes of entries
	descendant int
}

// bookmarks writes the tree and returns its number; 0 when there are none.
func (wr *writer) bookmarks(d *Document) int {
	all := []entry{{}}
	open := []int{0} // the entry at each level, from the root down
	for i := range d.Pages {
		for _, b := range d.Pages[i].Bookmarks {
			level := min(max(b.Level, 0), len(open)-1)
			above := open[level]
			open = append(open[:level+1], len(all))
			all[above].kids = append(all[above].kids, len(all))
			all = append(all, entry{above: above, title: draw.Clean(b.Title), page: wr.pages[i], y: b.Y})
		}
	}
	if len(all) == 1 {
		return 0
	}
	for i := range all {
		all[i].id = wr.file.reserve()
	}
	for i := len(all) - 1; i > 0; i-- {
		all[all[i].above].descendant += all[i].descendant + 1
	}
	for i := range all {
		wr.file.set(all[i].id, all[i].object(all, i))
	}
	return all[0].id
}

// object returns the entry as an object.
func (e *entry) object(all []entry, index int) string {
	out := "<<"
	if n := len(e.kids); n > 0 {
		out += fmt.Sprintf("/First %d 0 R/Last %d 0 R/Count %d", all[e.kids[0]].id, all[e.kids[n-1]].id, e.descendant)
	}
	if index == 0 {
		return out + "/Type/Outlines>>"
	}
	beside := all[e.above].kids
	for k, i := range beside {
		if i != index {
			continue
		}
		if k > 0 {
			out += fmt.Sprintf("/Prev %d 0 R", all[beside[k-1]].id)
		}
		if k+1 < len(beside) {
			out += fmt.Sprintf("/Next %d 0 R", all[beside[k+1]].id)
		}
	}
	y := e.y
	if y == 0 {
		y = e.page.window.Y.Hi
	}
	return out + fmt.Sprintf("/Title %s/Parent %d 0 R/Dest[%d 0 R/XYZ null %s null]>>", words(e.title), all[e.above].id, e.page.id, points(y-e.page.window.Y.Lo))
}
