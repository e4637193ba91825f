// Package page answers the question: how is a page set?
//
// A [Book] is pages of one format with the same furniture: a title above, the page's
// number, its scale and a check ruler below. A [Page] is one [draw.Scene] in page
// coordinates: its origin is the page's lower left corner, a millimetre is a
// millimetre of paper. Words never leave the room they are given: they are broken
// into lines, and cut off with an ellipsis where even lines have no room. A [Flow]
// goes from column to column and opens pages as it needs them; a [Table] in it
// repeats its head.
//
// The package knows no words of its own and nothing of wallpaper.
package page
