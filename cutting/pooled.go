package cutting

import "slices"

// Whole rolls out of the columns there are.
//
// The linear program leaves a pool of columns and an optimum in which few of
// them are used, most of them many times over. The whole parts are taken at
// once; what is left is about a roll for each kind of piece, however many rooms
// there are:
//
//	demand ── LP: 212.4 A + 97.8 B …   take 212 A and 97 B
//	  └ left ── LP: 0.4 A + 0.8 B …    take the most used one, here B
//	      ├ left ── LP …               columns added where prices ask for some
//	      └ never B ── LP …            if that needed too many rolls
//
// Every program goes on from the one before, over the columns that can still be
// cut from what is left, and asks for further ones at its prices as long as it
// needs more rolls than allowed. Where that does not help the last choices are
// changed, a few times. That finds plans; it proves nothing.
//
// With several kinds of roll "more rolls" reads "more money"; the cost of the
// dearest is then 1, and further rows count the rolls of kinds there are few of.
type pooled struct {
	prog   reprogram
	cols   plan    // the columns as sequences
	live   []int32 // stack of lists of columns not struck off
	chosen []int32 // columns taken
	hidden []hiddenKind
	spare  int // of the whole part of each column: rolls not taken at once

	kinds []pooledKind // of roll
	cheap float64      // cost of the cheapest
	scale int64        // weight of cost 1 in whole numbers
	turn  int          // kind of roll looked at first
	worth int64        // weight from which on a roll of the kind looked at is worth more than it costs
}

// pooledKind is what the program knows of a kind of roll.
type pooledKind struct {
	cost float64
	row  int32 // that counts it; -1 if there is any number
}

// hiddenKind is a kind of piece passed over for a while, and how many are left.
type hiddenKind struct {
	kind int16
	left int32
}

// worthIt is the weight from which on a roll is worth more than it costs.
const worthIt = one + one>>20

const (
	pooledKinds   = 17 // of pieces, from which on the pool comes first
	pooledRolls   = 60 // from which on it does with fewer kinds too
	pooledTries   = 3
	pooledSteps   = 40_000 // for each
	pooledRounds  = 40     // of pricing for one program
	pooledChoices = 3      // of what to take next
	pooledFound   = 4      // columns of one round
	pooledBudget  = 300    // sets looked at on each lane for one
	pooledStep    = 512    // columns that cost another step each time the program goes on
)

// isLarge says whether the pool comes first.
func (w *work) isLarge() bool { return w.m >= pooledKinds || w.best.rolls() >= pooledRolls }

// proveFirst looks for plan and bound where there are many kinds: the bound of
// the start that carries least, and a plan from the columns good for all
// starts. It leaves it to others to close what gap remains.
func (w *work) proveFirst() {
	if !w.isLarge() || w.n.coarse {
		return
	}
	copy(w.weight, w.p.length)
	lane, _ := w.lightest()
	w.begin(w.lower.demand, lane)
	w.improve(w.lower.demand, lane, w.best.rolls(), false)
	if !w.open() {
		return
	}
	if len(w.n.safe) > 1 {
		lane = everyStart
		w.demandLeft()
		w.begin(w.lower.demand, lane)
	}
	w.improve(w.lower.demand, lane, w.best.rolls(), true)
	if k := w.master.rolls(w.lower.demand); k < w.best.rolls() {
		w.cutPool(k)
	}
}

// cutPool looks for a plan of k rolls by means of the columns of the linear
// program, which must be at its optimum.
func (w *work) cutPool(k int) {
	limit := w.limit
	defer func() { w.limit = limit }()
	for spare := 0; spare < pooledTries && w.best.rolls() > k; spare++ {
		w.limit = min(limit, w.steps+pooledSteps)
		w.loadPool()
		w.pooled.spare = spare
		if w.sink(0, float64(k)) == possible {
			w.addPicks()
			w.keep()
		}
	}
}

// loadPool begins with the program's columns, its basis, and all to be cut from
// a single kind of roll.
func (w *work) loadPool() {
	c := &w.pooled
	c.kinds, c.cheap, c.scale = append(c.kinds[:0], pooledKind{1, -1}), 1, one
	w.demandLeft()
	w.fillPool()
}

// fillPool begins with the program's columns and its basis.
func (w *work) fillPool() {
	c, s := &w.pooled, &w.master
	c.cols.reset()
	c.live, c.chosen = c.live[:0], c.chosen[:0]
	c.prog.begin(s.m)
	for id := range s.col.rolls() {
		w.addPooled(int(s.col.stock[id]), s.col.roll(id))
	}
	c.prog.adopt(s)
}

// addPooled adds a column to the pool: a roll of the given kind, or of kind -1 a
// piece left out.
func (w *work) addPooled(stock int, seq []int16) {
	c := &w.pooled
	k := pooledKind{w.mixed.charge(-1), -1}
	if stock >= 0 {
		k = c.kinds[stock]
	}
	c.live = append(c.live, c.prog.add(seq, k.cost, k.row))
	c.cols.addFrom(stock, seq)
}

// addPicks makes the rolls chosen the trial plan.
func (w *work) addPicks() {
	c := &w.pooled
	w.trial.reset()
	for _, col := range c.chosen {
		w.trial.addFrom(int(c.cols.stock[col]), c.cols.roll(int(col)))
	}
}

// sink tries to cut what is left for the given cost, by the columns in the list
// of live ones from base on and such as are worth adding.
func (w *work) sink(base int, cost float64) verdict {
	c := &w.pooled
	if w.nothingLeft() {
		return possible
	}
	if cost < c.cheap-1e-6 {
		return impossible
	}
	bottom := len(c.live)
	defer func() { c.live = c.live[:bottom] }()
	c.live = c.prog.narrow(c.live, base, w.left)
	w.trimUsed()
	for choice := range pooledChoices {
		if !w.suffices(bottom, cost) {
			return impossible
		}
		done, mark := len(c.chosen), c.prog.save()
		col := int32(-1)
		if w.takeWholes(choice) < 2 {
			w.giveBack(done)
			if col = w.mostUsed(); col < 0 {
				return impossible
			}
			w.takePooled(col)
		}
		known := c.prog.columns()
		v := w.sink(bottom, cost-c.spent(done))
		if v == possible || w.spent() {
			return v
		}
		w.giveBack(done)
		c.prog.restore(mark)
		if col >= 0 {
			at := bottom + slices.Index(c.live[bottom:], col)
			c.live = slices.Delete(c.live, at, at+1)
		}
		for ; known < c.prog.columns(); known++ {
			c.live = append(c.live, int32(known))
		}
	}
	return impossible
}

// spent is what the columns chosen from number n on cost.
func (c *pooled) spent(n int) float64 {
	sum := 0.0
	for _, col := range c.chosen[n:] {
		sum += c.prog.cost[col]
	}
	return sum
}

// trimUsed adds, for each column in use of which not enough is left, what can
// still be cut of it.
func (w *work) trimUsed() {
	c := &w.pooled
	for r, b := range c.prog.basis {
		if b < 0 || !c.prog.live[b] || c.prog.x[r] < 1e-7 || c.prog.within(b, w.left) {
			continue
		}
		stock := int(c.cols.stock[b])
		if stock < 0 || w.usedUp(stock) {
			continue
		}
		if w.trim(c.cols.roll(int(b))); len(w.seq) > 0 {
			w.addPooled(stock, w.seq)
		}
	}
}

// usedUp says whether no more rolls of a kind are left.
func (w *work) usedUp(stock int) bool {
	row := w.pooled.kinds[stock].row
	return row >= 0 && w.left[row] == 0
}

// suffices goes on to the optimum for what is left and says whether it costs no
// more than given.
func (w *work) suffices(bottom int, cost float64) bool {
	c := &w.pooled
	for range pooledRounds {
		turns := 1 + c.prog.solve(c.live[bottom:], w.left, cost)
		turns += c.prog.improve(c.live[bottom:], w.left)
		w.steps += turns * (1 + (len(c.live)-bottom)/pooledStep + c.prog.m*c.prog.m/cellsInStep)
		if c.prog.worth(w.left) <= cost+1e-6 {
			return true
		}
		if w.spent() || !w.seekPooled() {
			return false
		}
	}
	return false
}

// seekPooled adds columns worth more than they cost at the prices of the program
// that can be cut from what is left, and says whether there are any.
func (w *work) seekPooled() bool {
	c := &w.pooled
	for j, y := range c.prog.price[:w.m] {
		w.weight[j] = 0
		if w.left[j] > 0 {
			w.weight[j] = int64(max(y, 0) * float64(c.scale))
		}
	}
	defer w.choose(w.at)
	for i := range c.kinds {
		at := (c.turn + i) % len(c.kinds)
		if w.usedUp(at) {
			continue
		}
		w.choose(at)
		if w.seekOfKind() {
			c.turn = at
			return true
		}
	}
	return false
}

// seekOfKind does so for the kind of roll chosen.
func (w *work) seekOfKind() bool {
	c, found := &w.pooled, 0
	c.worth = c.worthOf(w.at)
	for i := range w.n.safe {
		at := (w.turn + i) % len(w.n.safe)
		if found += w.seekAlong(&w.n.safe[at]); found >= pooledFound {
			w.turn = at + 1
			return true
		}
	}
	if found == 0 && len(w.n.safe) > 1 && w.seekInGaps(c.worth) {
		w.addPooled(w.at, w.seq)
		return true
	}
	return found > 0
}

// worthOf is the weight from which on a roll of a kind is worth more than it
// costs at the prices of the program.
func (c *pooled) worthOf(stock int) int64 {
	k := &c.kinds[stock]
	cost := k.cost
	if k.row >= 0 {
		cost += c.prog.price[k.row]
	}
	return int64(cost*float64(c.scale)) + c.scale>>20
}

// seekAlong does the same along one lane and returns how many it adds. Of
// several each leaves out the dearest piece of the one before, so that they
// differ.
func (w *work) seekAlong(l *lane) int {
	w.steps++
	if w.n.plan.pass(l.from, l.last, w.weight, w.gain) <= w.pooled.worth {
		return 0
	}
	d, found, most := &w.deep, 0, 1
	if len(w.n.safe) == 1 {
		most = pooledFound
	}
	c := &w.pooled
	c.hidden = c.hidden[:0]
	for ; found < most; found++ {
		d.bestVal, d.budget, d.path = c.worth, pooledBudget, d.path[:0]
		w.seq = w.seq[:0]
		w.plunge(l)
		w.descend(w.gain, l.from, l.last, 0)
		w.steps += (pooledBudget - max(d.budget, 0)) / 8
		if len(w.seq) == 0 {
			break
		}
		w.addPooled(w.at, w.seq)
		dear := w.seq[0]
		for _, j := range w.seq {
			if w.weight[j] > w.weight[dear] {
				dear = j
			}
		}
		c.hidden = append(c.hidden, hiddenKind{dear, w.left[dear]})
		w.left[dear] = 0
	}
	for _, h := range c.hidden {
		w.left[h.kind] = h.left
	}
	return found
}

// plunge follows, along a lane, at each place the piece left that promises
// most, and leaves the roll in w.seq if it is worth more than the best.
func (w *work) plunge(l *lane) {
	d, val := &w.deep, int64(0)
	for v := l.from; ; {
		pick, most := -1, int64(0)
		row := w.n.plan.row(v)
		for j, to := range row {
			if to <= l.last && w.left[j] > 0 && w.weight[j]+w.gain[to] > most {
				pick, most = j, w.weight[j]+w.gain[to]
			}
		}
		if pick < 0 || val+most <= d.bestVal {
			break
		}
		val += w.weight[pick]
		w.left[pick]--
		d.path = append(d.path, int16(pick))
		v = row[pick]
	}
	if val > d.bestVal {
		d.bestVal = val
		w.seq = append(w.seq[:0], d.path...)
	}
	for _, j := range d.path {
		w.left[j]++
	}
	d.path = d.path[:0]
}

// takeWholes takes the whole part of every column used but the rolls to be
// spared, and returns how many rolls that gives.
func (w *work) takeWholes(spare int) int {
	c, taken := &w.pooled, 0
	if len(c.chosen) == 0 {
		spare += c.spare
	}
	for r, b := range c.prog.basis {
		if b < 0 || !c.prog.live[b] {
			continue
		}
		for n := int(c.prog.x[r]+1e-6) - spare; n > 0 && c.prog.within(b, w.left); n-- {
			w.takePooled(b)
			taken++
		}
	}
	return taken
}

// mostUsed is the live column that the program uses most; -1 if there is none.
func (w *work) mostUsed() int32 {
	c := &w.pooled
	best, most := int32(-1), 1e-7
	for r, b := range c.prog.basis {
		if b < 0 || !c.prog.live[b] {
			continue
		}
		if x := c.prog.x[r]; x > most+1e-9 {
			best, most = b, x
		}
	}
	return best
}

func (w *work) takePooled(col int32) {
	w.pooled.prog.take(col, w.left, 1)
	w.pooled.chosen = append(w.pooled.chosen, col)
}

// giveBack puts the rolls chosen from number n on back.
func (w *work) giveBack(n int) {
	c := &w.pooled
	for _, col := range c.chosen[n:] {
		c.prog.take(col, w.left, -1)
	}
	c.chosen = c.chosen[:n]
}
