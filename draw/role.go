package draw

// Role says what a group is to those who have a page read to them.
type Role int

// The roles. Text outside every role is a paragraph of its own; lines and areas
// are decoration.
const (
	Plain      Role = iota
	Figure          // a drawing, told by its title and description
	Heading         // of a page
	Subheading      // of a part of a page
	Paragraph
	Table // of rows
	Row   // of cells
	HeaderCell
	Cell
	Furniture // page numbers, rulers and the like: not read
)
