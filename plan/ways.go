package plan

import (
	"cmp"
	"encoding/binary"
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// How the walls of a crooked room are set is a choice for each of them, and most of
// the combinations come to the same: a wall that does not fall hangs plumb along its
// ceiling too. Others turn all walls alike and differ only in how high the design
// stands on each, and so in how far it steps in the corners: of those, the one that
// weighs least by itself stands for all.
//
//	A  plumb, ceiling …  ┐
//	B  plumb, ceiling …  ├ combinations ──► those that turn ──► searched, the least
//	C  plumb, casing  …  ┘    thousands     walls otherwise:    by guess first
//	                                        some, or tens
//
// Each is searched like any run, for what weighs less than the best so far. When all
// have been, or weigh no less than the best with the floor that no layout undercuts, no
// way to turn the walls is better. Of too many those are searched that promise most;
// where some are left, the plan says so, and by how much less they can weigh at the most.

// wallWay is one way to set the walls.
type wallWay struct {
	set   []hanging.Setting
	guess int64 // what is brought about in any layout, and what corners may add
}

// How many combinations are listed; how many ways are searched at the most, and how many
// of more before a floor sorts the rest.
const (
	mostCombined = 20_000
	mostWays     = 16
	fewWays      = 6
)

// ways lists the ways to set the walls of run i that differ in how walls are turned,
// those that promise most first; ok is false where there are too many to list and
// only some are.
func (p *Plan) ways(i int) (ways []wallWay, ok bool) {
	t := &settler{plan: p, run: i, task: &p.Task.Runs[i]}
	if !t.isAsked() || !t.list() {
		return nil, true
	}
	from := make([]hanging.Setting, len(t.ways))
	copy(from, t.task.Fixed.fixedSet(len(t.ways)))
	if t.areMany() {
		return t.promising(from), false
	}
	ways = t.listed(from)
	slices.SortStableFunc(ways, compareWays)
	return ways, true
}

// compareWays puts what promises most first.
func compareWays(a, b wallWay) int { return cmp.Compare(a.guess, b.guess) }

// areMany reports whether there are too many combinations to list.
func (t *settler) areMany() bool {
	n := 1
	for _, others := range t.ways {
		if n *= len(others) + 1; n > mostCombined {
			return true
		}
	}
	return false
}

// listed returns the combinations that turn walls otherwise, each in the way that weighs
// least by itself.
func (t *settler) listed(from []hanging.Setting) (ways []wallWay) {
	known, turned := map[string]bool{}, map[string]int{}
	t.combine(from, 0, func(set []hanging.Setting) {
		hangs, turns, ok := t.keys(set)
		if !ok || known[hangs] {
			return
		}
		known[hangs] = true
		n := wallWay{set, t.weigh(set)}
		at, seen := turned[turns]
		switch {
		case n.guess == never || seen && n.guess >= ways[at].guess:
			return
		case !seen:
			at = len(ways)
			turned[turns], ways = at, append(ways, wallWay{})
		}
		n.set = slices.Clone(set)
		ways[at] = n
	})
	return ways
}

// combine sets the walls from one on in every way there is.
func (t *settler) combine(set []hanging.Setting, wall int, each func([]hanging.Setting)) {
	if wall == len(set) {
		each(set)
		return
	}
	usual := set[wall]
	t.combine(set, wall+1, each)
	for _, way := range t.ways[wall] {
		set[wall] = way
		t.combine(set, wall+1, each)
	}
	set[wall] = usual
}

// keys returns two keys of walls set so: one that is the same where they hang and are
// told of alike, one where they are turned alike; false where they cannot be set so.
func (t *settler) keys(set []hanging.Setting) (hangs, turns string, ok bool) {
	ts, err := hanging.Turns(t.task.Run, set)
	if err != nil {
		return "", "", false
	}
	if ts == nil {
		ts = make([]room.Turn, len(set))
	}
	var turn, lift []byte
	add := func(key []byte, l measure.Length) []byte { return binary.BigEndian.AppendUint64(key, uint64(l)) }
	for i := range ts {
		turn = add(add(turn, ts[i].Lean), ts[i].Rise)
		lift = add(lift, ts[i].Lift)
		if follows(set, i, (i+1)%len(set)) {
			lift = append(lift, 1)
		}
	}
	return string(turn) + string(lift), string(turn), true
}

// choose searches the ways to set the walls beside that of the first layout, and
// returns the best of all; run notes what was tried and what was not. Of too many it
// searches the few that promise most, then those left that weigh least with their floor.
func (p *Plan) choose(i int, first laid, run *RunPlan) laid {
	ways, all := p.session.waysOf(p, i)
	run.Searched = 1
	if all {
		run.Ways = max(len(ways), 1)
	}
	ways = slices.DeleteFunc(ways, func(w wallWay) bool { return first.s.isSetAs(w.set) })
	few := len(ways)
	if few > mostWays {
		few = fewWays
	}
	best := p.tryWays(i, ways[:few], first, run)
	open := p.open(i, ways[few:], best)
	more := min(len(open), mostWays-few)
	if more > 0 {
		best = p.tryWays(i, open[:more], best, run)
	}
	open = slices.DeleteFunc(open[max(more, 0):], func(w wallWay) bool { return w.guess >= best.total() })
	switch {
	case !all:
		run.Gain = max(best.total()-first.s.floorAnyhow(), 0)
	case len(open) > 0:
		run.Gain = best.total() - open[0].guess
	default:
		return best
	}
	run.Untried = append(run.Untried, WaysUntried)
	return best
}

// open returns the ways that a floor does not rule out, the least first: their guesses
// are what they weigh at the least.
func (p *Plan) open(i int, ways []wallWay, best laid) (open []wallWay) {
	for _, way := range ways {
		s, err := p.newSearch(i, way.set)
		if err != nil { // is none for its paper
			continue
		}
		if way.guess = s.floor() + s.standing; way.guess < best.total() {
			open = append(open, way)
		}
	}
	slices.SortStableFunc(open, compareWays)
	return open
}

// tryWays searches ways to set the walls, each for what weighs less than the best, unless
// its floor rules that out.
func (p *Plan) tryWays(i int, ways []wallWay, best laid, run *RunPlan) laid {
	for k, way := range ways {
		p.Task.tell(Ways, k, len(ways))
		s, err := p.search(i, way.set, true)
		if err != nil || p.Task.isStopped() { // is none for its paper, or nobody waits
			continue
		}
		beat := best.total() - s.standing
		if s.floor() >= beat {
			continue
		}
		s.best, s.rival = best.best, true
		s.best.score = beat
		if found, err := s.find(); err == nil && found.score < beat {
			best = laid{s, found}
		}
		if s.run.Fixed.Start != nil { // it has walked little, and the start may be dragged
			p.session.keep(p, i, way.set, s, nil)
		}
		run.Searched++
		run.Untried = append(run.Untried, s.untried()...)
	}
	return best
}

// isSetAs reports whether the search hangs walls as set.
func (s *search) isSetAs(set []hanging.Setting) bool {
	turns, err := hanging.Turns(s.judge.surveyed, set)
	return err == nil && slices.Equal(turns, s.h.Turns())
}
