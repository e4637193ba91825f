package cutting

// Whole rolls of several kinds out of the columns there are.
//
// The dive of pooled.go, for money: first for what the bound says, then for what
// lies halfway between that and the best plan, as long as they are apart:
//
//	bound |--------------------|--------------------| best plan
//	      1st                  2nd        3rd …
//
// A dive that fails proves nothing; it only says where the next one is worth
// while.

// mixedDives is the number of dives for one question.
const mixedDives = 6

// poolMixed looks for cheaper plans by means of the columns of the linear
// program, which must be at its optimum.
func (w *work) poolMixed() {
	x := &w.mixed
	limit := w.limit
	defer func() { w.limit = limit; w.left = w.left[:w.m]; w.choose(0) }()
	least := x.bound
	for dive := 0; dive < mixedDives && least < x.bestCost; dive++ {
		money := least
		if dive > 0 {
			money += (x.bestCost - least) / x.unit / 2 * x.unit
		}
		w.limit = min(limit, w.steps+pooledSteps)
		w.loadMixedPool()
		w.pooled.spare = dive % pooledTries
		if w.sink(0, float64(money)/float64(x.top)) == possible {
			w.addPicks()
			w.keepMixed()
		}
		if x.bestCost > money {
			least = money + x.unit
		}
	}
}

// loadMixedPool begins with the program's columns, its basis, and all to be cut.
func (w *work) loadMixedPool() {
	c, x := &w.pooled, &w.mixed
	c.kinds, c.cheap, c.scale = c.kinds[:0], 1, x.scale
	for b, row := range x.row {
		c.kinds = append(c.kinds, pooledKind{x.charge(b), row})
		c.cheap = min(c.cheap, x.charge(b))
	}
	w.left = append(w.left[:0], x.rhs...)
	w.fillPool()
}
