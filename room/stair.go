package room

import "firstdrop/measure"

// leastRise is how far a floor must rise along a wall to be taken for stairs.
const leastRise = 300 * measure.Millimetre

// IsStair reports whether the foot of a wall is higher at one end than at the other, as
// on stairs.
func (w *Wall) IsStair() bool {
	_, y := w.Outline.Bounds()
	left, right := y.Hi, y.Hi
	for _, p := range w.Outline {
		switch p.X {
		case 0:
			left = min(left, p.Y)
		case w.Width:
			right = min(right, p.Y)
		}
	}
	return (left - right).Abs() >= leastRise
}
