package cutting

import (
	"cmp"
	"slices"

	"firstdrop/measure"
)

// children lists the strips to be tried for narrow kind k, the one that saves
// most paper first: of every type, each set of pieces left that begins and
// ends with the type and leaves no room for another.
func (x *nesting) children(k int) []nestStrip {
	if x.types == nil {
		return x.oneChild(k)
	}
	var all []nestStrip
	for i := range x.types {
		t := &x.types[i]
		if !t.fits[k] {
			continue
		}
		c := chains{x: x, t: t, must: k, all: all}
		c.grow(0)
		if all = c.all; len(all) >= maxChildren {
			x.incomplete = true
			break
		}
	}
	all = x.undominated(all)
	slices.SortStableFunc(all, func(a, b nestStrip) int { return cmp.Compare(x.saving(b), x.saving(a)) })
	return all
}

// saving is the paper a strip saves against its members cut alone.
func (x *nesting) saving(c nestStrip) measure.Length {
	sum := -c.length
	for _, k := range c.members {
		sum += x.kinds[k].piece.Length
	}
	return sum
}

// chains lists the sets of stretches, from left to right, for one type.
type chains struct {
	x    *nesting
	t    *stripType
	must int // a kind it must hold
	set  []int16
	all  []nestStrip
}

// grow adds kinds from number from on.
func (c *chains) grow(from int) {
	if len(c.all) >= maxChildren {
		return
	}
	if from > c.must && !slices.Contains(c.set, int16(c.must)) {
		return
	}
	added := false
	for i := from; i < len(c.x.kinds); i++ {
		if !c.allowed(i) || len(c.set) > 0 && !beside(c.x.kinds, int(c.set[len(c.set)-1]), i) {
			continue
		}
		if i > c.must && !slices.Contains(c.set, int16(c.must)) {
			break
		}
		added = true
		c.set = append(c.set, int16(i))
		c.grow(i + 1)
		c.set = c.set[:len(c.set)-1]
	}
	if !added && slices.Contains(c.set, int16(c.must)) {
		c.record()
	}
}

func (c *chains) allowed(i int) bool { return c.t.fits[i] && c.x.fill.left[i] > 0 }

// record notes the set if it begins and ends with the type and no other piece
// left has room on it.
func (c *chains) record() {
	begins, ends := false, false
	for _, k := range c.set {
		n := &c.x.kinds[k]
		begins = begins || n.piece.Phase == c.t.phase || c.x.spec.Repeat == 0
		ends = ends || n.reach(c.t.phase, c.x.spec.Repeat) == c.t.length
	}
	if !begins || !ends {
		return
	}
	for i := range c.x.kinds {
		if c.allowed(i) && c.hasRoom(i) {
			return
		}
	}
	c.all = append(c.all, nestStrip{c.t.length, c.t.phase, c.t.kind, slices.Clone(c.set)})
}

func (c *chains) hasRoom(i int) bool {
	for _, k := range c.set {
		if int(k) == i || !beside(c.x.kinds, min(int(k), i), max(int(k), i)) {
			return false
		}
	}
	return true
}

// undominated drops the strips in whose place another one can be cut, with
// the same pieces or more, wherever they lie.
func (x *nesting) undominated(all []nestStrip) []nestStrip {
	kept := all[:0:0]
	for i := range all {
		drop := false
		for k := range all {
			if k != i && x.replaces(all[k], all[i]) && (k < i || !x.replaces(all[i], all[k])) {
				drop = true
				break
			}
		}
		if !drop {
			kept = append(kept, all[i])
		}
	}
	return kept
}

// replaces says whether strip a can be cut out of strip b and holds all it
// holds.
func (x *nesting) replaces(a, b nestStrip) bool {
	if (a.phase-b.phase).Mod(x.spec.Repeat)+a.length > b.length {
		return false
	}
	for _, k := range b.members {
		if !slices.Contains(a.members, k) {
			return false
		}
	}
	return true
}

// oneChild is for jobs with too many narrow pieces to weigh all strips: the
// strip that begins with the piece and takes, from left to right, whatever
// fits on its length for nothing.
func (x *nesting) oneChild(k int) []nestStrip {
	x.incomplete = true
	n := &x.kinds[k]
	c := nestStrip{length: n.piece.Length, phase: n.piece.Phase, members: []int16{int16(k)}}
	for i := range x.kinds {
		if x.fill.left[i] == 0 || x.kinds[i].reach(c.phase, x.spec.Repeat) > c.length {
			continue
		}
		ok := true
		for _, m := range c.members {
			ok = ok && int(m) != i && beside(x.kinds, min(int(m), i), max(int(m), i))
		}
		if ok {
			c.members = append(c.members, int16(i))
		}
	}
	slices.Sort(c.members)
	return []nestStrip{c}
}
