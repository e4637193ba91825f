package geom

import "firstdrop/measure"

// Cycle is a closed stretch of positions modulo a repeat: an interval on a
// circle. "The design height lies between 630 and 20 mm of a 640 mm repeat" is
// a cycle of 30 mm that wraps past 0.
//
// Two cycles are special: the full one holds every position, the empty one
// none. Paper without a design has repeat 0; there all positions are alike, and
// a cycle that is not empty is full. The zero value is that full cycle, so
// free match takes the same path as any other.
//
// Constructors normalise; a Cycle is comparable, and equal cycles are ==.
type Cycle struct {
	repeat measure.Length // ≥ 0
	lo     measure.Length // in [0, repeat); 0 when full or empty
	length measure.Length // in [0, repeat]; repeat when full, −1 when empty
}

// FullCycle returns the cycle that holds every position. A repeat of 0 or less
// means that there is no design.
func FullCycle(repeat measure.Length) Cycle {
	repeat = max(repeat, 0)
	return Cycle{repeat: repeat, length: repeat}
}

// EmptyCycle returns the cycle that holds no position.
func EmptyCycle(repeat measure.Length) Cycle {
	return Cycle{repeat: max(repeat, 0), length: -1}
}

// CycleOf returns the positions that i covers when it is wound round a circle
// of the given repeat: empty for an empty interval, full for one at least as
// long as the repeat, and full for any other interval when the repeat is 0 or
// less.
func CycleOf(i Interval, repeat measure.Length) Cycle {
	switch {
	case i.IsEmpty():
		return EmptyCycle(repeat)
	case repeat <= 0 || i.Length() >= repeat:
		return FullCycle(repeat)
	}
	return Cycle{repeat: repeat, lo: i.Lo.Mod(repeat), length: i.Length()}
}

// Repeat returns the circumference: 0 when there is no design.
func (c Cycle) Repeat() measure.Length { return c.repeat }

// Lo returns where the stretch begins, in [0, repeat); 0 when full or empty.
func (c Cycle) Lo() measure.Length { return c.lo }

// Length returns how much of the circle the cycle covers: the whole repeat
// when full, 0 for a single position, negative when empty.
func (c Cycle) Length() measure.Length { return c.length }

// IsEmpty reports whether the cycle holds no position.
func (c Cycle) IsEmpty() bool { return c.length < 0 }

// IsFull reports whether the cycle holds every position.
func (c Cycle) IsFull() bool { return c.length == c.repeat }

// Contains reports whether the position x, taken modulo the repeat, lies in
// the cycle, its ends included.
func (c Cycle) Contains(x measure.Length) bool {
	return !c.IsEmpty() && (x-c.lo).Mod(c.repeat) <= c.length
}

// Intersects reports whether the two share a position, be it a single one. An
// empty cycle shares none. Both must have the same repeat; only a cycle
// without a design (repeat 0) goes with any.
func (c Cycle) Intersects(other Cycle) bool {
	if c.IsEmpty() || other.IsEmpty() {
		return false
	}
	return c.IsFull() || other.IsFull() || c.Contains(other.lo) || other.Contains(c.lo)
}

// Shifted returns the cycle turned by d; full and empty stay what they are.
func (c Cycle) Shifted(d measure.Length) Cycle {
	if c.IsEmpty() || c.IsFull() {
		return c
	}
	return CycleOf(Interval{c.lo, c.lo + c.length}.Shifted(d), c.repeat)
}

// Expanded returns the cycle grown by margin at both ends, or shrunk for a
// negative margin; what shrinks below a single position is empty. Full and
// empty stay what they are.
func (c Cycle) Expanded(margin measure.Length) Cycle {
	if c.IsEmpty() || c.IsFull() {
		return c
	}
	return CycleOf(Interval{c.lo - margin, c.lo + c.length + margin}, c.repeat)
}
