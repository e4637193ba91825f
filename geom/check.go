package geom

import (
	"firstdrop/measure"
	"firstdrop/message"
)

// Fault is what is wrong with a ring.
type Fault string

// The faults of a ring, in the order in which [Ring.Check] looks for them.
const (
	TooFewCorners Fault = "too few corners"
	TooFarOut     Fault = "too far out"     // a corner farther from the origin than measure.MaxLength
	SamePlace     Fault = "same place"      // two corners in a row at one place
	EdgesMeet     Fault = "edges meet"      // two edges cross, touch or overlap
	EdgeFoldsBack Fault = "edge folds back" // an edge runs back along the one before
)

// RingError says which corners of a ring are at fault.
type RingError struct {
	Fault Fault
	// Corners are indexes into the ring. Too few corners: none. Too far out:
	// the corner. Same place: both corners. Edges meet: the corners at which
	// the two edges begin. Edge folds back: the corner where it does.
	Corners []int
}

// Error names the corners by number, counted from 1.
func (e *RingError) Error() string { return e.Said().Error() }

// Said returns the same to be said in any language.
func (e *RingError) Said() message.Message {
	number := func(i int) int { return e.Corners[i] + 1 }
	switch e.Fault {
	case TooFarOut:
		return message.New("ring_too_far_out", "corner {corner} is too far out", "corner", number(0))
	case SamePlace:
		return message.New("ring_same_place", "corners {corner} and {next} are at the same place", "corner", number(0), "next", number(1))
	case EdgesMeet:
		return message.New("ring_edges_meet", "the edge from corner {corner} meets the edge from corner {other}", "corner", number(0), "other", number(1))
	case EdgeFoldsBack:
		return message.New("ring_edge_folds_back", "the outline folds back on itself at corner {corner}", "corner", number(0))
	}
	return message.New("ring_too_few_corners", "an outline needs at least three corners")
}

// Check reports the first thing that keeps the ring from being a simple
// polygon, as a *[RingError]; nil when it is one. Corners in the middle of a
// straight edge are allowed.
func (r Ring) Check() error {
	if len(r) < 3 {
		return &RingError{Fault: TooFewCorners}
	}
	for i, p := range r {
		if outOfReach(p.X) || outOfReach(p.Y) {
			return &RingError{TooFarOut, []int{i}}
		}
	}
	for i := range r {
		if r[i] == r.after(i) {
			return &RingError{SamePlace, []int{i, (i + 1) % len(r)}}
		}
	}
	return r.checkSimple()
}

func outOfReach(l measure.Length) bool { return l > measure.MaxLength || l < -measure.MaxLength }

// checkSimple looks at every pair of edges. Neighbours share a corner and must
// not fold back; all others must not touch.
func (r Ring) checkSimple() error {
	n := len(r)
	for i := range r {
		next := (i + 1) % n
		if foldsBack(r[i], r[next], r.after(next)) {
			return &RingError{EdgeFoldsBack, []int{next}}
		}
	}
	for i := range r {
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue
			}
			if meet(r[i], r.after(i), r[j], r.after(j)) {
				return &RingError{EdgesMeet, []int{i, j}}
			}
		}
	}
	return nil
}

// foldsBack reports whether the edge from b to c runs back along that from a
// to b.
func foldsBack(a, b, c Point) bool {
	if turn(a, b, c) != 0 {
		return false
	}
	along := product(b.X-a.X, c.X-b.X).plus(product(b.Y-a.Y, c.Y-b.Y))
	return along.hi < 0
}

// meet reports whether the edges a–b and c–d share a point.
func meet(a, b, c, d Point) bool {
	if !boxesMeet(a, b, c, d) {
		return false
	}
	return turn(a, b, c)*turn(a, b, d) <= 0 && turn(c, d, a)*turn(c, d, b) <= 0
}

// boxesMeet reports whether the smallest upright rectangles round a–b and c–d
// share a point. Edges in one line meet just when their boxes do.
func boxesMeet(a, b, c, d Point) bool {
	return max(min(a.X, b.X), min(c.X, d.X)) <= min(max(a.X, b.X), max(c.X, d.X)) &&
		max(min(a.Y, b.Y), min(c.Y, d.Y)) <= min(max(a.Y, b.Y), max(c.Y, d.Y))
}

// turn returns 1, 0 or −1 as one turns left, goes straight (on or back) or
// turns right at b on the way from a to c.
func turn(a, b, c Point) int { return cross(a, b, c).compare(wide{}) }
