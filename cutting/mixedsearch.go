package cutting

// Search to exhaustion over several kinds of roll.
//
// As in search.go, but with money instead of a number of rolls: is there a
// plan that costs less than the best? The longest piece left lies on a roll of
// some kind, or is left out. A branch ends when what is left weighs more than
// the rolls that the money buys, and those in open packs, can carry.

// exhaustMixed lowers the cost of the plan until nothing cheaper exists, as
// far as the steps allow.
func (w *work) exhaustMixed() {
	x := &w.mixed
	x.rank(x.capacity)
	for x.open() && !w.spent() {
		money := x.bestCost - x.unit
		w.steps++
		if nodes := 0; !x.carriesWhole(0, dot(w.p.demand, x.weight), money, &nodes) {
			x.bound = x.bestCost
			return
		}
		if !w.listMixed(money) {
			return
		}
		switch w.branchMixed(money, dot(w.p.demand, x.weight), -1, 0) {
		case possible:
			w.adoptMixed()
		case impossible:
			x.bound = x.bestCost
		case undecided:
			return
		}
	}
}

// wholeNodes is what looking for whole packs may take.
const wholeNodes = 20_000

// carriesWhole says whether whole packs for the money, of the kinds from
// number k on in the order of rank, can carry the weight. It says yes where
// looking would take too long.
func (x *mixed) carriesWhole(k int, weight, money int64, nodes *int) bool {
	if *nodes++; weight <= 0 || *nodes > wholeNodes {
		return true
	}
	if k == len(x.order) {
		return false
	}
	b := x.order[k]
	if b == len(x.cost) {
		return x.dear <= money || x.carriesWhole(k+1, weight, money, nodes)
	}
	perPack := x.capacity[b] * int64(x.pack[b])
	most := (weight + perPack - 1) / perPack
	if x.count[b] >= 0 {
		most = min(most, int64((x.count[b]+x.pack[b]-1)/x.pack[b]))
	}
	if x.paid[b] > 0 {
		most = min(most, money/x.paid[b])
	}
	for n := most; n >= 0; n-- {
		rolls := n * int64(x.pack[b])
		if x.count[b] >= 0 {
			rolls = min(rolls, int64(x.count[b]))
		}
		if x.carriesWhole(k+1, weight-rolls*x.capacity[b], money-n*x.paid[b], nodes) {
			return true
		}
	}
	return false
}

// listMixed lists the rolls of each kind that a plan for the money can hold.
func (w *work) listMixed(money int64) bool {
	x := &w.mixed
	x.chosen = x.chosen[:0]
	x.leaveAll()
	return w.listSlack(x.carried(money, x.left) - dot(w.p.demand, x.weight))
}

// listSlack lists the rolls of each kind that are lighter than their capacity
// by no more than slack, and forgets what has failed before.
func (w *work) listSlack(slack int64) bool {
	x := &w.mixed
	w.search.reset()
	for len(x.lists) < len(x.cost) {
		x.lists = append(x.lists, states{})
	}
	copy(w.weight, x.weight)
	complete := true
	for b := range x.cost {
		w.choose(b)
		if w.n.coarse {
			complete = false
			break
		}
		lane := x.lane[b]
		complete = complete && w.listRolls(&x.lists[b], lane, w.n.exact[lane].last, x.capacity[b]-slack)
	}
	w.choose(0)
	return complete
}

// leaveAll notes in left all pieces and rolls, and no open pack.
func (x *mixed) leaveAll() {
	x.left = append(x.left[:0], x.rhs...)
	for i, n := range x.left {
		x.left[i] = max(n, -n)
	}
	for _, at := range x.spare {
		if at >= 0 {
			x.left = append(x.left, 0)
		}
	}
}

// branchMixed tries to cut what is left, which has the given weight, for the
// money. If the longest piece left is of the kind before, only choices from
// number from on are tried, counted over all kinds of roll.
func (w *work) branchMixed(money, weight int64, before, from int) verdict {
	x := &w.mixed
	kind := 0
	for kind < w.m && x.left[kind] == 0 {
		kind++
	}
	if kind == w.m {
		return possible
	}
	if weight > x.carried(money, x.left) {
		return impossible
	}
	if w.steps++; w.spent() {
		return undecided
	}
	if kind != before {
		from = 0
	}
	hash := uint64(0)
	for j, n := range x.left {
		hash += uint64(n) * keyOf(j)
	}
	hash = mix(hash)
	if w.search.hasFailed(x.left, hash, money, from) {
		return impossible
	}
	number := 0
	for b := range x.cost {
		v := w.branchStock(b, money, weight, kind, from, &number)
		if v != impossible {
			return v
		}
	}
	if x.dear <= money {
		x.left[kind]--
		x.chosen = append(x.chosen, pick{-1, int32(kind)})
		v := w.branchMixed(money-x.dear, weight-x.weight[kind], -1, 0)
		if v != impossible {
			return v
		}
		x.chosen = x.chosen[:len(x.chosen)-1]
		x.left[kind]++
	}
	w.search.remember(x.left, hash, money, from)
	return impossible
}

// branchStock tries the rolls of one kind for the longest piece.
func (w *work) branchStock(b int, money, weight int64, kind, from int, number *int) verdict {
	x := &w.mixed
	s := &x.lists[b]
	lo, hi := int(s.start[kind]), int(s.start[kind+1])
	first := *number
	*number += hi - lo
	price := x.priceNow(b)
	if price > money || x.row[b] >= 0 && x.left[x.row[b]] == 0 {
		return impossible
	}
	for at := max(lo, lo+from-first); at < hi; at++ {
		id := s.list[at]
		if !s.usable(id, x.left) {
			continue
		}
		x.take(b, id, 1)
		v := w.branchMixed(money-price, weight-s.info[id].weight, kind, first+at-lo)
		if v != impossible {
			return v
		}
		x.take(b, id, -1)
	}
	return impossible
}

// take chooses a roll, or with by = -1 gives it back.
func (x *mixed) take(b int, id, by int32) {
	for j, n := range x.lists[b].counts(int(id)) {
		x.left[j] -= by * int32(n)
	}
	x.spend(b, by)
	if by > 0 {
		x.chosen = append(x.chosen, pick{int32(b), id})
	} else {
		x.chosen = x.chosen[:len(x.chosen)-1]
	}
}

// priceNow is what has to be paid for another roll of a kind.
func (x *mixed) priceNow(b int) int64 {
	if at := x.spare[b]; at >= 0 && x.left[at] > 0 {
		return 0
	}
	return x.paid[b]
}

// spend takes a roll of a kind, or with by = -1 puts it back.
func (x *mixed) spend(b int, by int32) {
	if x.row[b] >= 0 {
		x.left[x.row[b]] -= by
	}
	if at := x.spare[b]; at >= 0 {
		x.left[at] = (x.left[at] - by + x.pack[b]) % x.pack[b]
	}
}

// adoptMixed makes the plan found by the search the best.
func (w *work) adoptMixed() {
	w.trial.reset()
	w.addPicked()
	w.keepMixed()
}

// addPicked adds the rolls found by the search to the trial plan.
func (w *work) addPicked() {
	x := &w.mixed
	for _, c := range x.chosen {
		if c.stock < 0 {
			w.trial.addFrom(-1, []int16{int16(c.set)})
			continue
		}
		w.seq = x.lists[c.stock].sequence(w.seq[:0], c.set)
		w.trial.addFrom(int(c.stock), w.seq)
	}
}
