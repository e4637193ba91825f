package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// How the walls of a crooked room are set is searched where the label says which
// lines the design has; without that nobody can tell whether the ceiling or the
// plumb line matters more, and everything hangs plumb. Whatever layout is hung, the
// setting alone brings about drifts, steps and the wedges in its corners: that is a
// guess at what a way to set the walls comes to, before it is searched. Where there
// are too many ways to list, one wall after the other is set in every way there is,
// and what makes the guess less is kept:
//
//	plumb ──► A to its ceiling? B? C? … ──► again, until nothing helps ──► search
//
// That is done from plumb walls, and from all ceilings; and beside those, from what is
// best of all ways in which the design keeps to the datum.

// fixedSet returns the settings that are fixed, the other walls plumb; nil where
// none is fixed.
func (f *Fixed) fixedSet(walls int) []hanging.Setting {
	if len(f.Set) == 0 {
		return nil
	}
	set := make([]hanging.Setting, walls)
	for _, s := range f.Set {
		set[s.Wall] = s.Setting
	}
	return set
}

// isSet reports whether the setting of a wall is fixed, or the wall hangs already.
func (f *Fixed) isSet(wall int) bool {
	return slices.ContainsFunc(f.Set, func(s WallSetting) bool { return s.Wall == wall }) || slices.Contains(f.Hung, wall)
}

// settler looks for how to set the walls of run i.
type settler struct {
	plan *Plan
	run  int
	task *RunTask
	ways [][]hanging.Setting // of each wall, beside the one fixed, or plumb
}

// isAsked reports whether anything says what the design's lines are to keep to.
func (t *settler) isAsked() bool {
	lines := t.plan.Task.Papers[t.task.Paper].Lines
	return lines != paper.LinesUnstated && lines != paper.LinesIsolated // those hang plumb, each drop by the ceiling
}

// promising returns ways to set the walls to which single steps lead, and those that
// are best by guess of all that turn walls with the design on the datum's level, if that
// leaves few enough to list; each then with its heights stepped to what weighs less.
func (t *settler) promising(from []hanging.Setting) (ways []wallWay) {
	add := func(w wallWay) {
		known := func(o wallWay) bool { return slices.Equal(o.set, w.set) }
		if w.guess < never && !slices.ContainsFunc(ways, known) {
			ways = append(ways, w)
		}
	}
	for _, set := range [][]hanging.Setting{from, t.ceilings(from)} {
		set, guess := t.improve(set)
		add(wallWay{set, guess})
	}
	level := *t
	level.ways = t.atDatum()
	if !level.areMany() {
		listed := level.listed(from)
		slices.SortStableFunc(listed, compareWays)
		for _, w := range listed[:min(len(listed), mostWays)] {
			add(t.stepped(w))
		}
	}
	slices.SortStableFunc(ways, compareWays)
	return ways
}

// atDatum returns the ways of each wall with the design's height from the datum, or all
// down a corner.
func (t *settler) atDatum() [][]hanging.Setting {
	out := make([][]hanging.Setting, len(t.ways))
	for i, ways := range t.ways {
		for _, w := range ways {
			if w.Meets == hanging.AtDatum && w.To != hanging.ToPlumb {
				out[i] = append(out[i], w)
			}
		}
	}
	return out
}

// stepped takes the design of one wall after the other from where that weighs less.
func (t *settler) stepped(w wallWay) wallWay {
	for i := range w.set {
		if len(t.ways[i]) == 0 || w.set[i].To == hanging.ToLeft || w.set[i].To == hanging.ToRight {
			continue
		}
		kept := w.set[i].Meets
		for _, m := range [...]hanging.Meets{hanging.AtDatum, hanging.MeetLeft, hanging.MeetRight} {
			w.set[i].Meets = m
			if guess := t.weigh(w.set); guess < w.guess {
				w.guess, kept = guess, m
			}
		}
		w.set[i].Meets = kept
	}
	return w
}

// list lists the ways to set each wall beside the one fixed, or plumb; false where
// there are none. Where there are some, every wall has the way, too, to hang plumb
// with its design as high as it comes round either corner.
func (t *settler) list() (any bool) {
	run := t.task.Run
	t.ways = make([][]hanging.Setting, len(run.Walls))
	isOpen := func(i int) bool { return !t.task.Fixed.isSet(i) && !hasReturns(&run.Walls[i]) }
	for i := range run.Walls {
		if isOpen(i) {
			t.ways[i] = waysOf(run, i)
		}
		any = any || len(t.ways[i]) > 0
	}
	for i := range run.Walls {
		if any && isOpen(i) {
			t.ways[i] = append(t.ways[i], hanging.Setting{Meets: hanging.MeetLeft}, hanging.Setting{Meets: hanging.MeetRight})
		}
	}
	return any
}

// IsCrooked reports whether there is more than one way to set the walls of a run: a
// ceiling out of level, a casing or an inside corner that leans.
func IsCrooked(run *room.Run) bool {
	for i := range run.Walls {
		if len(waysOf(run, i)) > 0 {
			return true
		}
	}
	return false
}

// hasReturns reports whether returns of a wall's openings are papered: they would
// have to be planned by hand on a wall out of plumb.
func hasReturns(w *room.Wall) bool {
	return slices.ContainsFunc(w.Openings, func(o room.Opening) bool { return len(hanging.Returns(&o)) > 0 })
}

// waysOf lists how wall i may be set, plumb aside: to a ceiling that falls, to
// casings that lean, to neighbours in a corner that leans, each with the design's
// height from the datum or round either corner.
func waysOf(run *room.Run, i int) (ways []hanging.Setting) {
	w := &run.Walls[i]
	add := func(s hanging.Setting) {
		for _, m := range [...]hanging.Meets{hanging.AtDatum, hanging.MeetLeft, hanging.MeetRight} {
			s.Meets = m
			ways = append(ways, s)
		}
	}
	switch left, right, ok := w.Ceiling(); {
	case !ok || !w.IsLevelCeiling(left, right):
	case left != right:
		add(hanging.Setting{To: hanging.ToCeiling})
	case slices.ContainsFunc(run.Walls, isUnlevel): // its heights follow the ceiling's
		ways = append(ways, hanging.Setting{To: hanging.ToCeiling})
	}
	for o := range w.Openings {
		for _, side := range [2]hanging.Side{hanging.Left, hanging.Right} {
			lean, _, ok := w.Openings[o].Casing(side == hanging.Right)
			if k := w.Openings[o].Kind; ok && lean.Abs() >= measure.Millimetre && (k == room.Door || k == room.Window) {
				add(hanging.Setting{To: hanging.ToCasing, Opening: o, Side: side})
			}
		}
	}
	leans := func(c *room.Corner) bool { return c.LeanLeft != c.LeanRight && c.Kind == room.Inside }
	n := len(run.Walls)
	if i > 0 || run.Closed {
		if leans(&run.Corners[(i-1+n)%n]) {
			ways = append(ways, hanging.Setting{To: hanging.ToLeft})
		}
	}
	if i < len(run.Corners) && leans(&run.Corners[i]) {
		ways = append(ways, hanging.Setting{To: hanging.ToRight})
	}
	return ways
}

// isUnlevel reports whether a wall's ceiling is meant to be level and is not.
func isUnlevel(w room.Wall) bool {
	left, right, ok := w.Ceiling()
	return ok && left != right && w.IsLevelCeiling(left, right)
}

// ceilings returns the settings with every wall that can be set to its ceiling set so.
func (t *settler) ceilings(from []hanging.Setting) []hanging.Setting {
	set := slices.Clone(from)
	for i, ways := range t.ways {
		if len(ways) > 0 && ways[0].To == hanging.ToCeiling {
			set[i] = ways[0]
		}
	}
	return set
}

// mostRounds is how often the walls are gone through.
const mostRounds = 4

// improve sets one wall after the other in the way that helps most, until nothing
// does.
func (t *settler) improve(set []hanging.Setting) ([]hanging.Setting, int64) {
	set = slices.Clone(set)
	least := t.weigh(set)
	for range mostRounds {
		before := least
		for i, ways := range t.ways {
			kept := set[i]
			for _, way := range append(ways[:len(ways):len(ways)], hanging.Setting{}) {
				if len(ways) == 0 {
					break
				}
				set[i] = way
				if total := t.weigh(set); total < least {
					least, kept = total, way
				}
			}
			set[i] = kept
		}
		if least == before {
			break
		}
	}
	return set, least
}

// weigh returns what walls set so bring about in any layout: what is said of how
// they are set, and a wedge in every inside corner that leans against its sheets.
func (t *settler) weigh(set []hanging.Setting) int64 {
	label := &t.plan.Task.Papers[t.task.Paper]
	h, err := hanging.NewSet(t.task.Run, set, label, t.plan.Task.Rules)
	if err != nil {
		return never
	}
	j := newJudge(t.task, label, t.plan.Task.Taste, h)
	total := j.standing()
	if !j.isDesigned() {
		return total
	}
	for i := range j.run.Corners {
		if c := &j.run.Corners[i]; c.Kind == room.Inside {
			total += int64((c.LeanRight-c.LeanLeft).Abs()/measure.Millimetre) * j.taste.Weights.Wedge
		}
	}
	return total
}
