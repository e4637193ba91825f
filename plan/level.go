package plan

import (
	"slices"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// Where no motif crosses a seam, nobody sees that a drop hangs a little higher than its
// neighbour. Under a ceiling out of level such drops are hung plumb, and each as much
// higher or lower as the ceiling is over its middle, so that the motifs keep their
// distance from it:
//
//	────────────────────────────────  ceiling, falling to the right
//	 ┊ ◆ ┊ ◆ ┊ ◆ ┊ ◆ ┊ ◆ ┊ ◆ ┊
//	 ┊   ┊   ┊   ┊   ┊   ┊   ┊         each drop a little lower than the last
//
// Nothing is cut otherwise for it: what a drop is moved by is less than its allowances.

// Relevel is the finding that the drops of a wall are hung by its ceiling.
const Relevel finding.Code = "relevel"

// leftToTrim is what must be left of an allowance to be trimmed on the wall (common
// practice: a finger's breadth).
const leftToTrim = 15 * measure.Millimetre

// levelling tells for every wall of a run the middle of the ceiling that it belongs to,
// over all walls that it goes on over, corner for corner.
type levelling struct {
	run    *room.Run
	middle []measure.Length
	has    []bool // whether the wall has such a ceiling
}

// levellingOf returns the levelling of a run in a design that allows it; nil for others,
// where no ceiling is out of level, and where the allowances would not do.
func levellingOf(run *room.Run, p *paper.Paper, rules hanging.Rules) *levelling {
	if p.Lines != paper.LinesIsolated || !slices.ContainsFunc(run.Walls, isUnlevel) {
		return nil
	}
	v := &levelling{run: run, middle: make([]measure.Length, len(run.Walls)), has: make([]bool, len(run.Walls))}
	for i := range run.Walls {
		low, high, ok := ceilingRange(run, i)
		if !ok {
			continue
		}
		if (high-low+1)/2+leftToTrim > min(rules.Head, rules.Foot) {
			return nil
		}
		v.middle[i], v.has[i] = low+(high-low)/2, true
	}
	return v
}

// ceilingRange returns the lowest and highest point of the ceiling of wall i and of
// those to which it goes on at the same height; false where its own is none that is
// meant level.
func ceilingRange(run *room.Run, i int) (low, high measure.Length, ok bool) {
	left, right, ok := levelCeiling(run, i)
	if !ok {
		return 0, 0, false
	}
	low, high = min(left, right), max(left, right)
	n := len(run.Walls)
	for _, way := range [2]int{-1, 1} {
		end := left
		if way > 0 {
			end = right
		}
		for k := i + way; k != i; k += way {
			if k < 0 || k >= n {
				if !run.Closed {
					break
				}
				if k = (k + n) % n; k == i {
					break
				}
			}
			a, b, ok := levelCeiling(run, k)
			if way < 0 {
				a, b = b, a
			}
			if !ok || a != end {
				break
			}
			low, high, end = min(low, b), max(high, b), b
		}
	}
	return low, high, true
}

// levelCeiling returns the heights at both ends of a ceiling that is meant level.
func levelCeiling(run *room.Run, i int) (left, right measure.Length, ok bool) {
	left, right, ok = run.Walls[i].Ceiling()
	return left, right, ok && run.Walls[i].IsLevelCeiling(left, right)
}

// lifts returns by how much each drop of a layout is hung higher.
func (v *levelling) lifts(l *hanging.Layout) []measure.Length {
	out := make([]measure.Length, len(l.Drops))
	for i := range l.Drops {
		if l.Drops[i].Number > 0 {
			out[i] = v.lift(l, i)
		}
	}
	return out
}

// lift returns by how much a drop is hung higher, in whole millimetres: as the ceiling
// stands over the middle of its widest part.
func (v *levelling) lift(l *hanging.Layout, drop int) measure.Length {
	wall, x := widestOn(l, drop)
	if !v.has[wall] {
		return 0
	}
	left, right, _ := v.run.Walls[wall].Ceiling()
	at := left + (right-left).Scaled(int64(x), int64(v.run.Walls[wall].Width))
	return (at - v.middle[wall] + measure.Millimetre/2).FloorTo(measure.Millimetre)
}

// widestOn returns the wall on which most of a drop hangs, and the middle of it there.
func widestOn(l *hanging.Layout, drop int) (wall int, x measure.Length) {
	widest := measure.Length(-1)
	for _, p := range l.Drops[drop].Parts {
		on := p.X.Intersection(geom.Interval{Lo: 0, Hi: l.Run.Walls[p.Wall].Width})
		if on.Length() > widest {
			widest, wall, x = on.Length(), p.Wall, on.Lo+on.Length()/2
		}
	}
	return wall, x
}

// relevel hangs the drops of run i by their ceilings, where they may be.
func (p *Plan) relevel(i int) {
	l := p.Runs[i].Layout
	if v := levellingOf(p.Task.Runs[i].Run, l.Paper, p.Task.Rules); v != nil && l.Turns == nil {
		l.Lifts = v.lifts(l)
	}
}

// raiseLifts tells on which walls drops are hung by the ceiling, and by how much.
func (p *Plan) raiseLifts(i int) {
	l := p.Runs[i].Layout
	if l.Lifts == nil {
		return
	}
	for w := range l.Run.Walls {
		least, most, any := measure.Length(0), measure.Length(0), false
		for d := range l.Drops {
			if wall, _ := widestOn(l, d); wall == w && l.Drops[d].Number > 0 && l.Lifts[d] != 0 {
				least, most, any = min(least, l.Lifts[d]), max(most, l.Lifts[d]), true
			}
		}
		if any {
			p.Findings = append(p.Findings, finding.Finding{
				Code: Relevel, Severity: finding.Note, Place: finding.Place{Run: l.Run.Name, Wall: l.Run.Walls[w].Name},
				Sizes: []finding.Size{size("lower", -least), size("higher", most)},
			})
		}
	}
}
