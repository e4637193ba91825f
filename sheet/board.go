package sheet

import (
	"firstdrop/draw"
)

// board remembers where something has been written, so that nothing is written
// over it.
type board struct{ taken []draw.Box }

// isFree reports whether a box overlaps nothing that was taken.
func (b *board) isFree(box draw.Box) bool {
	for _, t := range b.taken {
		if t.Overlaps(box) {
			return false
		}
	}
	return true
}

// take marks a box, with a little air round it.
func (b *board) take(box draw.Box) { b.taken = append(b.taken, box.Grown(mm/2)) }
