package cutting

// Search where there are many kinds of piece.
//
// With many kinds the longest piece is a poor one to begin with: it may lie on
// hundreds of rolls while another fits only two. So each branch first keeps,
// of the listed rolls, those that can still be cut and do not waste too much,
// counts for each kind how many hold it, and goes on with the scarcest:
//
//	rolls   abc  abd  acd  bce  dee          e: 2   a: 3   b: 3 …
//	                                         → try bce, then dee without bce
//
// A kind that no roll holds ends the branch. A roll that has been tried for a
// kind is struck off for the rest of that branch, since every plan that uses
// it has been seen. (The choice of the scarcest is D. E. Knuth's for exact
// cover, "Dancing links", 2000; here pieces may be wanted several times.)
type covering struct {
	live  []int32 // stack of lists of usable rolls
	count []int32 // of the rolls that hold each kind
}

// manyPieceKinds is the number of kinds from which this search is used.
const manyPieceKinds = 17

// coverFrom tries to cut what is left from the given number of rolls, wasting
// at most slack. live are the numbers of the listed rolls not struck off.
func (w *work) coverFrom(live []int32, rolls int, slack int64) verdict {
	if w.nothingLeft() {
		return possible
	}
	if rolls == 0 {
		return impossible
	}
	if w.steps++; w.spent() {
		return undecided
	}
	s, c := &w.states, &w.cover
	bottom := len(c.live)
	defer func() { c.live = c.live[:bottom] }()
	base := bottom
	for _, id := range live {
		if w.lower.capacity-s.info[id].weight <= slack && s.within(int(id), w.left) {
			c.live = append(c.live, id)
		}
	}
	w.steps += len(live) / 64
	kind := w.scarcest(c.live[base:])
	if kind < 0 {
		return impossible
	}
	for at, end := base, len(c.live); at < end; at++ {
		id := c.live[at]
		if s.count[int(id)*s.m+kind] == 0 {
			continue
		}
		w.search.chosen = append(w.search.chosen, id)
		w.change(id, -1)
		v := w.coverFrom(c.live[base:end], rolls-1, slack-(w.lower.capacity-s.info[id].weight))
		if v != impossible {
			return v
		}
		w.change(id, 1)
		w.search.chosen = w.search.chosen[:len(w.search.chosen)-1]
		copy(c.live[base+1:at+1], c.live[base:at]) // strike it off, keep the order
		base++
	}
	return impossible
}

// scarcest returns the kind left that the fewest of the rolls hold, and of
// those the longest; -1 if one is held by none.
func (w *work) scarcest(live []int32) int {
	s, c := &w.states, &w.cover
	c.count = grow(c.count, w.m)
	clear(c.count)
	for _, id := range live {
		for j, n := range s.counts(int(id)) {
			if n > 0 {
				c.count[j]++
			}
		}
	}
	pick := -1
	for j, n := range c.count {
		if w.left[j] == 0 {
			continue
		}
		if n == 0 {
			return -1
		}
		if pick < 0 || n < c.count[pick] {
			pick = j
		}
	}
	return pick
}
