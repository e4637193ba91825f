package order

import (
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// A simulated job.
//
// All rolls at hand are opened and measured before anything is cut, and a roll
// is added only when what is left to cut cannot be had from them. Then pieces
// are cut roll after roll. A spoiled piece shows when it has been cut; what is
// still to cut, this piece again included, is then planned anew on what is left
// of every roll:
//
//	roll 1  |=== ok ===|=== ok ===|~ rest ~|
//	roll 2  |=== ok ===|XX spoiled XX|~~~ to be planned again ~~~|
//	roll 3  |~~~~~~~~~~~~~~~ to be planned again ~~~~~~~~~~~~~~~~|
//
// Each planning is exact unless a search is given up (see [Curve].Proven).
// Nothing is known beforehand of what will be spoiled, and a spoiled piece is
// thrown away whole.
type trial struct {
	source  source
	pieces  []Piece
	spec    cutting.Spec
	weights []int64 // of the plan's certificate, by piece
	kept    []keptRoll

	base    sets // pieces as planned
	own     sets // pieces of a job whose heights came out otherwise
	set     *sets
	known   []int     // kind by piece, in base
	planned [][]int32 // pieces by kind, in base

	kindOf  []int
	members [][]int32 // pieces by kind
	left    []int32   // still to cut, by kind
	ready   []int32   // cut and sound, by kind
	times   []int32   // how often each piece has been cut
	rolls   []stretch
	supply  *supply
	bought  int // rolls that had to be bought
	begun   bool
	proven  bool
	again   int // kind spoiled last

	nodes  int
	tight  int                // scale with least to spare
	weight [maxScales]int64   // of what is left, by scale
	carry  [][maxScales]int64 // most that the rolls from r on can carry, by scale
	counts []int32            // scratch
}

// stretch is what is left of a roll.
type stretch struct {
	x, end int64            // design positions: where the knife stands, where the roll ends
	class  int              // of x, and the room from there on; see sets
	room   int64            // below zero if not even the wait fits
	most   [maxScales]int64 // that it can carry, by scale
	seq    []int16          // kinds to be cut from it
	set    int32
	upTo   int64 // where they end
}

const searchNodes = 400

// run plays one job and returns how many rolls had to be bought; false if it cannot be
// done, or takes more rolls than are worth counting.
func (t *trial) run(seed uint64, job int) (int, bool) {
	t.source.begin(seed, job)
	t.rolls, t.bought = t.rolls[:0], 0
	t.begun, t.proven = false, true
	t.measure()
	if t.spec.InOrder {
		ok := t.cutInOrder()
		return t.bought, ok
	}
	for h := range t.supply.held {
		t.takeHeld(h)
	}
	plan, replan := t.plan, t.plan
	if !t.set.full {
		plan, replan = t.keep, t.mend
	}
	for ok := plan(); ; ok = replan() {
		if !ok {
			return 0, false
		}
		if t.cut() {
			return t.bought, true
		}
	}
}

// measure finds out how long the pieces must be cut in this job.
func (t *trial) measure() {
	t.set, t.kindOf, t.members = &t.base, t.known, t.planned
	c := t.source.chances
	for i := range t.pieces {
		if c.Measuring > 0 && t.length(&t.pieces[i]) > t.pieces[i].Length {
			t.measureAgain()
			break
		}
	}
	m := t.set.kinds()
	t.left = append(t.left[:0], t.set.demand...)
	t.ready = resize(t.ready, m)
	clear(t.ready)
	t.times = resize(t.times, len(t.pieces))
	clear(t.times)
}

// measureAgain lists the sets for pieces that must be longer than planned.
func (t *trial) measureAgain() {
	t.own.reset()
	t.own.limit = maxOwnSets
	t.own.repeat, t.own.most = t.base.repeat, t.base.most
	kindOf := make([]int, len(t.pieces))
	for i := range t.pieces {
		p := &t.pieces[i]
		length := t.length(p)
		kindOf[i] = t.own.add(int64(length+t.spec.Loss), int64(p.Phase.Mod(t.spec.Repeat)), t.weights[i])
	}
	t.own.list()
	t.set, t.kindOf, t.members = &t.own, kindOf, membersOf(kindOf, t.own.kinds())
}

// length is how long a piece must be cut in this job: as planned, or longer. A
// strip grows where one of the narrow pieces on it does.
func (t *trial) length(p *Piece) measure.Length {
	c := t.source.chances
	if len(p.Lies) == 0 {
		need := p.Need + t.source.height(p.Wall) + c.Trim
		if need <= p.Length {
			return p.Length
		}
		return need.CeilTo(c.Step)
	}
	length := p.Length
	for i := range p.Lies {
		length = max(length, p.Lies[i].Offset+t.length(&p.Lies[i].Piece))
	}
	return length
}

// membersOf returns the pieces of each kind, ascending.
func membersOf(kindOf []int, kinds int) [][]int32 {
	members := make([][]int32, kinds)
	for i, j := range kindOf {
		members[j] = append(members[j], int32(i))
	}
	return members
}

// open adds the next roll that is bought; false if there are no more, or more
// than are worth counting.
func (t *trial) open() bool {
	r := t.bought
	if r == t.supply.most {
		return false
	}
	t.bought++
	x, size := int64(0), t.supply.sizeOf(r)
	switch {
	case t.spec.Repeat == 0:
	case size.start.Known:
		x = int64(size.start.Phase)
	default:
		x = int64(t.source.start(r))
	}
	t.addStretch(x+int64(t.spec.Lead), x+int64(t.source.length(r, size.Length)+t.spec.Loss))
	return true
}

// addStretch adds what can be used of a roll, from one design position to
// another.
func (t *trial) addStretch(x, end int64) {
	r := len(t.rolls)
	t.rolls = slices.Grow(t.rolls, 1)[:r+1]
	s := &t.rolls[r]
	s.x, s.end = x, end
	s.seq, s.upTo = s.seq[:0], s.x
	t.stand(s)
	switch {
	case !t.set.full:
	case t.set == &t.base:
		s.most = t.base.carries(s.class, s.room)
	default:
		t.weighAll(s)
	}
}

// stand works out the class and room of a stretch.
func (t *trial) stand(s *stretch) {
	var from int64
	s.class, from = t.set.classOf(s.x)
	s.room = s.end - from
}

// weighAll works out the most a stretch can carry of what is left. That holds on,
// since what is left never becomes more.
func (t *trial) weighAll(s *stretch) {
	clear(s.most[:])
	n := t.set.scale
	for _, i := range t.set.order {
		if !t.fits(s, i) {
			continue
		}
		for v, w := range t.set.value[int(i)*n : int(i+1)*n] {
			s.most[v] = max(s.most[v], w)
		}
	}
}

// cut cuts what is planned, roll after roll. It stops at a spoiled piece and
// returns false.
func (t *trial) cut() bool {
	t.begun = true
	for r := range t.rolls {
		s := &t.rolls[r]
		for n, k := range s.seq {
			j := int(k)
			s.x = t.set.after(s.x, j)
			piece := t.members[j][t.ready[j]]
			t.times[piece]++
			if t.source.spoiled(int(piece), int(t.times[piece])) {
				s.seq = append(s.seq[:0], s.seq[n+1:]...)
				t.setDown(r)
				t.again = j
				return false
			}
			t.left[j]--
			t.ready[j]++
		}
		s.seq = s.seq[:0]
	}
	return true
}

// setDown works out what is left of the rolls up to r, which have been cut from.
func (t *trial) setDown(r int) {
	for i := range t.rolls[:r+1] {
		t.stand(&t.rolls[i])
		if t.set.full {
			t.weighAll(&t.rolls[i])
		}
	}
}

// plan assigns what is left to cut to the rolls, adding rolls only when there is
// no other way, or none was found in time.
func (t *trial) plan() bool {
	for !t.mayDo() {
		if !t.open() {
			return false
		}
	}
	for {
		if t.fill(0) || t.fill(1) || t.fill(3) || t.search() {
			return true
		}
		if !t.begun && t.keepAll() {
			return true
		}
		if t.nodes > searchNodes {
			t.proven = false
		}
		if !t.open() {
			return false
		}
	}
}

// mayDo reports whether the rolls can carry what is left, on every scale and by
// length.
func (t *trial) mayDo() bool {
	t.weight = [maxScales]int64{}
	length, n := int64(0), t.set.scale
	for j, open := range t.left {
		length += int64(open) * t.set.length[j]
		for v, w := range t.set.worth[j*n : (j+1)*n] {
			t.weight[v] += int64(open) * w
		}
	}
	t.carry = resize(t.carry, len(t.rolls)+1)
	t.carry[len(t.rolls)] = [maxScales]int64{}
	for r := len(t.rolls) - 1; r >= 0; r-- {
		length -= max(t.rolls[r].room, 0)
		for v := range n {
			t.carry[r][v] = t.carry[r+1][v] + t.rolls[r].most[v]
		}
	}
	t.tight = 0
	for v := range n {
		if t.carry[0][v] < t.weight[v] {
			return false
		}
		if v > 1 && t.spare(v) < t.spare(t.tight) || v == 1 {
			t.tight = v
		}
	}
	return length <= 0
}

// spare tells how much more than needed the rolls carry on a scale: in pieces,
// but on the first.
func (t *trial) spare(v int) int64 { return t.carry[0][v] - t.weight[v] }

// fits reports whether a set fits the roll and is still to be cut.
func (t *trial) fits(s *stretch, i int32) bool {
	if t.set.need[int(i)*t.set.classes()+s.class] > s.room {
		return i == 0
	}
	m := t.set.kinds()
	for j, n := range t.set.count[int(i)*m : int(i+1)*m] {
		if n > t.left[j] {
			return false
		}
	}
	return true
}

// fill goes from roll to roll and cuts, of the pieces that still fit, the one
// with the least factor·wait − length. It reports whether that serves all.
func (t *trial) fill(factor int64) bool {
	t.counts = append(t.counts[:0], t.left...)
	open := int32(0)
	for _, n := range t.left {
		open += n
	}
	for r := range t.rolls {
		s := &t.rolls[r]
		s.seq = s.seq[:0]
		s.upTo = s.x
		for x := s.x; open > 0; open-- {
			pick, least, end := -1, faraway, int64(0)
			for j, n := range t.counts {
				if n == 0 {
					continue
				}
				to, length := t.set.after(x, j), t.set.length[j]
				if cost := factor*(to-x-length) - length; to <= s.end && cost < least {
					pick, least, end = j, cost, to
				}
			}
			if pick < 0 {
				break
			}
			s.seq = append(s.seq, int16(pick))
			t.counts[pick]--
			x, s.upTo = end, end
		}
	}
	return open == 0
}

// search looks for a way to cut all that is left from the rolls, to exhaustion
// or until it has taken too many steps.
func (t *trial) search() bool {
	t.nodes = 0
	if !t.mayDo() {
		return false
	}
	open := int32(0)
	for _, n := range t.left {
		open += n
	}
	if !t.descend(0, t.weight[0], t.weight[t.tight], open) {
		return false
	}
	for r := range t.rolls {
		s := &t.rolls[r]
		s.seq = t.set.sequence(s.seq[:0], s.set, s.class)
	}
	return true
}

// descend chooses a set for roll r and those after it. t.left is what is left
// for them, and is as before when it returns; weight and tight are what it weighs
// on the first and on the tightest scale, open is how many pieces it is.
func (t *trial) descend(r int, weight, tight int64, open int32) bool {
	if r == len(t.rolls) {
		return open == 0
	}
	s := &t.rolls[r]
	leastWeight, leastTight := weight-t.carry[r+1][0], tight-t.carry[r+1][t.tight]
	for _, i := range t.set.order {
		value := t.set.value[int(i)*t.set.scale : int(i+1)*t.set.scale]
		if value[0] < leastWeight {
			return false
		}
		if value[t.tight] < leastTight || !t.fits(s, i) || t.canMore(s, i) {
			continue
		}
		if t.nodes++; t.nodes > searchNodes {
			return false
		}
		size := t.take(i, -1)
		s.set = i
		ok := t.descend(r+1, weight-value[0], tight-value[t.tight], open-size)
		t.take(i, 1)
		if ok {
			return true
		}
	}
	return false
}

// canMore reports whether one more piece that is left fits besides set i.
func (t *trial) canMore(s *stretch, i int32) bool {
	m, classes := t.set.kinds(), t.set.classes()
	for j, more := range t.set.more[int(i)*m : int(i+1)*m] {
		if more >= 0 && t.left[j] > t.set.count[int(i)*m+j] && t.set.need[int(more)*classes+s.class] <= s.room {
			return true
		}
	}
	return false
}

// take adds sign times the set to what is left, and returns its size.
func (t *trial) take(i int32, sign int32) (size int32) {
	m := t.set.kinds()
	for j, n := range t.set.count[int(i)*m : int(i+1)*m] {
		t.left[j] += sign * n
		size += n
	}
	return size
}

func resize[T any](s []T, n int) []T {
	return slices.Grow(s[:0], n)[:n]
}
