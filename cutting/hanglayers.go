package cutting

import (
	"cmp"
	"slices"
)

// Few changes, piece by piece.
//
// Where many rolls must be returned to, the order in which they were begun no
// longer matters, only what can still be added to each. So the pieces are hung
// one after the other, and of all ways to hang the first i only those are told
// apart that leave other rolls, the one at hand marked:
//
//	piece 0      piece 1          piece 2
//	[a] . .  ──  [ab] . .    ──   [abc] . .      1 stretch
//	         \                \   ab [c] .       2
//	          ─  a [b] .     ──   a [bc] .       2
//	                         \    [ac] b .       3
//
// Two sets of pieces that take the same kinds of what is to come, again and
// again, are the same roll. Each way has a number of stretches behind it and,
// by the prices of hangprices.go, a number that it needs at least; together
// they must undercut the best plan known. Only so many ways are kept of each
// layer, those that promise fewest; the least that one of the others promises
// is then the bound.
type layers struct {
	rolls  rollSets
	prices hangPrices
	state  []int32 // of every way, one set for each roll: the others sorted, then that at hand
	ways   []way
	first  []int32 // of the ways of each layer
	table  []int32 // open addressing over the ways of one layer, plus one
	sort   []int32 // scratch
	key    []int32 // scratch
}

// way is one way to hang the first pieces.
type way struct {
	hash   uint64
	parent int32
	from   int32 // set the last piece was added to; -1 if it stayed on the roll at hand
	behind int16 // stretches so far
	least  int16 // stretches of any plan that begins so
}

// layerSteps is what the search may spend on one question.
const layerSteps = 800_000

// layerWidths are the numbers of ways kept of a layer, tried one after another.
var layerWidths = [...]int{100, 2_000, 20_000}

// hangLayers looks for a plan of k rolls with fewer stretches than most, one of
// which uses no more than limit unless that is 0. It returns the stretches of
// the plan left in w.hang, most if it found none, and a number that no such
// plan undercuts.
func (w *work) hangLayers(k, most int, limit int64) (stretches, least int) {
	l := &w.hang.layers
	if !l.rolls.load(w, limit) {
		return most, 0
	}
	until := w.limit
	w.limit = min(until, w.steps+layerSteps)
	defer func() { w.limit = until }()
	stretches, least = most, min(most, w.priceHanging(k, most))
	for _, width := range layerWidths {
		if least >= stretches {
			break
		}
		open := w.growLayers(k, stretches, width)
		if open < 0 {
			break
		}
		if n := len(l.first) - 1; n == len(w.p.kindOf)+1 && l.first[n] > l.first[n-1] {
			if !w.adoptLayers(k) {
				return most, least
			}
			stretches = int(l.ways[l.first[n-1]].behind)
		}
		least = max(least, min(open, stretches))
	}
	return stretches, min(least, stretches)
}

// growLayers hangs piece after piece, keeping so many ways of each layer. It
// returns the least stretches that a way not kept may need, most if there is
// none; -1 if the steps did not suffice.
func (w *work) growLayers(k, most, width int) int {
	l := &w.hang.layers
	l.state, l.ways, l.first = l.state[:0], append(l.ways[:0], way{}), append(l.first[:0], 0, 1)
	for range k {
		l.state = append(l.state, 0)
	}
	if l.rolls.limited {
		l.state[0] = l.rolls.short
		slices.Sort(l.state)
	}
	open := most
	for i, j := range w.p.kindOf {
		base := len(l.ways)
		l.forget()
		for at := int(l.first[i]); at < base; at++ {
			if w.steps++; w.spent() {
				return -1
			}
			w.hangNext(at, i, k, j, most)
		}
		open = min(open, l.narrow(base, k, width))
		l.first = append(l.first, int32(len(l.ways)))
		if base == len(l.ways) {
			break
		}
	}
	return open
}

// hangNext adds piece i, of kind j, to the way at in every manner.
func (w *work) hangNext(at, i, k int, j int32, most int) {
	l := &w.hang.layers
	seen := int32(-1)
	for r := range k {
		from := l.state[at*k+r]
		to := l.rolls.next[int(from)*w.m+int(j)]
		if to < 0 || r < k-1 && from == seen && i > 0 {
			continue
		}
		seen = from
		l.key = append(l.key[:0], l.state[at*k:at*k+k]...)
		behind := l.ways[at].behind
		kept := int32(-1)
		if r < k-1 || i == 0 {
			behind, kept = behind+1, from
			l.key = append(slices.Delete(l.key, r, r+1), to)
		} else {
			l.key[r] = to
		}
		w.record(way{parent: int32(at), from: kept, behind: behind}, i+1, k, most)
	}
}

// record notes the way in l.key to hang the first i pieces unless it needs most
// stretches, or is known with as few.
func (w *work) record(x way, i, k, most int) {
	l := &w.hang.layers
	others := l.key[:k-1]
	for r := range l.key {
		l.key[r] = l.rolls.likeAt(i, l.key[r])
	}
	slices.Sort(others)
	need, ok := l.prices.need(i, l.key)
	if !ok || int(x.behind)+need >= most {
		return
	}
	x.least = max(x.behind+int16(need), l.ways[x.parent].least)
	for r, s := range l.key {
		x.hash = mix(x.hash + uint64(s) + uint64(r/max(k-1, 1))<<32)
	}
	mask := len(l.table) - 1
	at := int(x.hash) & mask
	for ; l.table[at] != 0; at = (at + 1) & mask {
		id := int(l.table[at]) - 1
		if y := &l.ways[id]; y.hash == x.hash && slices.Equal(l.state[id*k:id*k+k], l.key) {
			if x.behind < y.behind {
				*y = x
			}
			return
		}
	}
	l.table[at] = int32(len(l.ways)) + 1
	l.ways, l.state = append(l.ways, x), append(l.state, l.key...)
	l.enlarge()
}

// forget empties the table for the next layer.
func (l *layers) forget() {
	if len(l.table) == 0 {
		l.table = make([]int32, 1<<10)
	}
	clear(l.table)
}

// enlarge doubles the table when it is half full.
func (l *layers) enlarge() {
	base := int(l.first[len(l.first)-1])
	if 2*(len(l.ways)-base) < len(l.table) {
		return
	}
	l.table = make([]int32, 2*len(l.table))
	mask := len(l.table) - 1
	for id := base; id < len(l.ways); id++ {
		at := int(l.ways[id].hash) & mask
		for l.table[at] != 0 {
			at = (at + 1) & mask
		}
		l.table[at] = int32(id) + 1
	}
}

// narrow keeps of the ways from base on the most promising ones, in the order
// found, and returns the least stretches that one of the others may need.
func (l *layers) narrow(base, k, width int) int {
	open := 1 << 14
	if len(l.ways)-base <= width {
		return open
	}
	l.sort = l.sort[:0]
	for id := base; id < len(l.ways); id++ {
		l.sort = append(l.sort, int32(id))
	}
	slices.SortFunc(l.sort, func(a, b int32) int {
		x, y := &l.ways[a], &l.ways[b]
		return cmp.Or(cmp.Compare(x.least, y.least), cmp.Compare(x.behind, y.behind), cmp.Compare(a, b))
	})
	open = int(l.ways[l.sort[width]].least)
	slices.Sort(l.sort[:width])
	for n, id := range l.sort[:width] {
		l.ways[base+n] = l.ways[id]
		copy(l.state[(base+n)*k:(base+n)*k+k], l.state[int(id)*k:int(id)*k+k])
	}
	l.ways, l.state = l.ways[:base+width], l.state[:(base+width)*k]
	return open
}

// adoptLayers makes the best of the last layer the plan. It returns false if a
// roll of it is empty, or too manifold to be put in order.
func (w *work) adoptLayers(k int) bool {
	l, h := &w.hang.layers, &w.hang
	n := len(w.p.kindOf)
	best := l.first[n]
	for id := best; id < l.first[n+1]; id++ {
		if l.ways[id].behind < l.ways[best].behind {
			best = id
		}
	}
	l.first[n] = best // for hangLayers to read
	from := grow(l.sort, n)
	for i, id := n-1, best; i >= 0; i-- {
		from[i], id = l.ways[id].from, l.ways[id].parent
	}
	rolls := w.replay(from, k)
	if len(rolls) < k {
		return false
	}
	w.trial.reset()
	for _, set := range rolls {
		if len(set) > 1 && !w.fits(set) {
			return false
		}
		w.trial.add(set)
	}
	w.best.copyFrom(&w.trial)
	h.best = append(h.best[:0], h.rollOf...)
	return true
}

// replay hangs the pieces as told and returns what is on each roll.
func (w *work) replay(from []int32, k int) [][]int16 {
	l, h := &w.hang.layers, &w.hang
	sets, rolls, cur := make([]int32, k), make([][]int16, k), -1
	if l.rolls.limited {
		sets[k-1] = l.rolls.short
	}
	number, begun := make([]int32, k), int32(0)
	h.rollOf = grow(h.rollOf, len(from))
	for i, j := range w.p.kindOf {
		if from[i] >= 0 {
			was := cur
			for cur = 0; cur == was || sets[cur] != from[i]; {
				cur++
			}
		}
		if len(rolls[cur]) == 0 {
			number[cur], begun = begun, begun+1
		}
		sets[cur] = l.rolls.next[int(sets[cur])*w.m+int(j)]
		rolls[cur] = append(rolls[cur], int16(j))
		h.rollOf[i] = number[cur]
		for r := range sets {
			sets[r] = l.rolls.likeAt(i+1, sets[r])
		}
	}
	return inOrderOf(rolls, number)
}

// inOrderOf returns the rolls that hold anything by their numbers.
func inOrderOf(rolls [][]int16, number []int32) [][]int16 {
	sorted := make([][]int16, 0, len(rolls))
	for n := range rolls {
		for r, set := range rolls {
			if len(set) > 0 && int(number[r]) == n {
				sorted = append(sorted, set)
			}
		}
	}
	return sorted
}
