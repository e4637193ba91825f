package cutting

import (
	"encoding/binary"

	"firstdrop/measure"
)

// The grouping that cuts the least paper is found by itself, whatever it means
// for the rolls: for every set of pieces left that can come up, the best strip
// for the longest of them and the least paper for the others. It is the first
// that is cut from rolls, and mostly the last.
type leastPaper struct {
	x     *nesting
	known map[string]paperChoice
}

type paperChoice struct {
	paper measure.Length
	strip nestStrip
}

const (
	paperPieces = 16    // narrow pieces up to which it is sought
	paperStates = 1_500 // sets of pieces left that are looked at
)

// firstLeaf cuts the rolls for the grouping that cuts the least paper, if
// there is time to find it.
func (x *nesting) firstLeaf() {
	if len(x.spec.Narrow) > paperPieces || len(x.types) == 0 {
		return
	}
	l := leastPaper{x, make(map[string]paperChoice)}
	least, ok := l.seek()
	if !ok || x.incomplete {
		return
	}
	for k := x.longest(); k >= 0; k = x.longest() {
		x.put(l.known[l.key()].strip, 1)
	}
	x.leaf()
	for len(x.chosen) > 0 {
		x.put(x.chosen[len(x.chosen)-1], -1)
	}
	x.least = least
}

// seek returns the least paper for what is left.
func (l *leastPaper) seek() (measure.Length, bool) {
	k := l.x.longest()
	if k < 0 {
		return 0, true
	}
	key := l.key()
	if c, ok := l.known[key]; ok {
		return c.paper, true
	}
	if len(l.known) >= paperStates || l.x.spent() {
		return 0, false
	}
	best := paperChoice{paper: -1}
	all := l.x.children(k)
	l.x.steps += 1 + len(all)
	for _, c := range all {
		l.x.put(c, 1)
		rest, ok := l.seek()
		l.x.put(c, -1)
		if !ok {
			return 0, false
		}
		if p := rest + c.length; best.paper < 0 || p < best.paper {
			best = paperChoice{p, c}
		}
	}
	l.known[key] = best
	return best.paper, best.paper >= 0
}

// key writes down what is left.
func (l *leastPaper) key() string {
	var b []byte
	for _, n := range l.x.fill.left {
		b = binary.AppendUvarint(b, uint64(n))
	}
	return string(b)
}
