package geom

import "firstdrop/measure"

// Interval is a closed stretch from Lo to Hi. It is empty when Hi < Lo; with
// Hi == Lo it is a single position, of length 0.
type Interval struct{ Lo, Hi measure.Length }

// Length returns Hi − Lo, negative for an empty interval.
func (i Interval) Length() measure.Length { return i.Hi - i.Lo }

// IsEmpty reports whether the interval holds no position.
func (i Interval) IsEmpty() bool { return i.Hi < i.Lo }

// Contains reports whether x lies in the interval, its ends included.
func (i Interval) Contains(x measure.Length) bool { return i.Lo <= x && x <= i.Hi }

// Intersection returns what i and other share; it is empty where they are
// apart, and a single position where they only touch.
func (i Interval) Intersection(other Interval) Interval {
	return Interval{max(i.Lo, other.Lo), min(i.Hi, other.Hi)}
}

// Union returns the smallest interval that holds both; an empty one adds nothing.
func (i Interval) Union(other Interval) Interval {
	switch {
	case i.IsEmpty():
		return other
	case other.IsEmpty():
		return i
	}
	return Interval{min(i.Lo, other.Lo), max(i.Hi, other.Hi)}
}

// Overlaps reports whether i and other share more than a single position.
func (i Interval) Overlaps(other Interval) bool { return i.Intersection(other).Length() > 0 }

// Shifted returns the interval moved by d.
func (i Interval) Shifted(d measure.Length) Interval { return Interval{i.Lo + d, i.Hi + d} }

// Mirrored returns the interval as seen in a mirror standing at 0: [−Hi, −Lo].
func (i Interval) Mirrored() Interval { return Interval{-i.Hi, -i.Lo} }
