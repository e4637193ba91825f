package main

import (
	"fmt"
	"strings"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// highWork is the height from which a platform is asked for (common practice).
const highWork = 3 * measure.Metre

// care returns the usual cautions as far as they apply, short enough for two
// lines of the summary. `firstdrop help safety` says more.
func (pl *planned) care() string {
	var cs []string
	if pl.hasCurrent() {
		cs = append(cs, "Power off at the board, and check it is dead.")
	}
	if pl.isHigh() {
		cs = append(cs, "Work from a safe platform.")
	}
	cs = append(cs, "Mind the blade.", "No sanding of old coats untested for lead and asbestos.",
		"Local codes and trades first.")
	return strings.Join(cs, " ")
}

// hasCurrent reports whether a papered wall carries something electrical.
func (pl *planned) hasCurrent() bool {
	for _, r := range pl.plan.Runs {
		for i := range r.Layout.Run.Walls {
			for _, f := range r.Layout.Run.Walls[i].Fittings {
				switch f.Kind {
				case room.Socket, room.Switch, room.Light:
					return true
				}
			}
		}
	}
	return false
}

// isHigh reports whether a papered wall reaches above 3 m from its own floor or
// stands on stairs: a floor that is not level.
func (pl *planned) isHigh() bool {
	for _, r := range pl.plan.Runs {
		for i := range r.Layout.Run.Walls {
			outline := r.Layout.Run.Walls[i].Outline
			if _, y := outline.Bounds(); y.Length() > highWork || isStair(outline) {
				return true
			}
		}
	}
	return false
}

// leastRise is how far a floor must rise along a wall to be taken for stairs.
const leastRise = 300 * measure.Millimetre

// isStair reports whether the foot of a wall rises from one end to the other.
func isStair(outline geom.Ring) bool {
	x, y := outline.Bounds()
	left, right := y.Hi, y.Hi
	for _, p := range outline {
		switch p.X {
		case x.Lo:
			left = min(left, p.Y)
		case x.Hi:
			right = min(right, p.Y)
		}
	}
	return (left - right).Abs() >= leastRise
}

// printCare prints the cautions below a list.
func (p *program) printCare(pl *planned) error {
	for _, l := range wrap("Care: "+pl.care()+" See firstdrop help safety.", p.out.width) {
		if _, err := fmt.Fprintln(p.out, l); err != nil {
			return written(err)
		}
	}
	return nil
}
