package order

import (
	"cmp"
	"slices"
)

// What one roll can give.
//
// Whatever the phase x that a free stretch of roll begins with, a piece waits
// for its own phase to come. As long as x lies between two neighbouring phases
// of the pieces, nothing changes but the wait for the first of them:
//
//	phases  q0        q1    q2        q0 + repeat
//	        |---------|-----|---------|
//	            x ....|               the stretch is one that begins at q1
//
// So a stretch is told by the phase it waits for (its class) and its room from
// there on, and for every set of pieces and every class there is one number,
// the room it needs, cut in its best order:
//
//	need(M) = min over j in M of end of j after need(M less j)
//
// The sets that fit the longest roll are listed with these numbers, once for all
// simulated jobs whose pieces are as planned.
//
// Rolls that are too few are told by scales: weights of the pieces, such that
// what is left to cut weighs more than all rolls can carry. One scale is that of
// the plan's certificate; on the others a piece weighs one if it is at least as
// long as a certain kind, else nothing: how many drops come out of a roll.
type sets struct {
	repeat int64
	most   int64 // room of the longest roll

	length, phase, weight []int64 // by kind; weight is that of the certificate
	demand                []int32
	phases                []int64 // distinct, ascending: the classes

	count []int32 // [set·kinds + j]
	need  []int64 // [set·classes + c]; faraway if it does not fit the longest roll
	less  []int32 // [set·kinds + j]: the set less one of kind j; -1 if it has none
	more  []int32 // [set·kinds + j]: the set and one of kind j; -1 if not listed
	worth []int64 // [kind·scales + v]
	value []int64 // [set·scales + v]: weight of the set
	total []int64 // length by set
	order []int32 // sets by weight on the first scale, then length, descending
	scale int     // number of scales
	limit int     // most sets to be listed
	full  bool    // all sets are listed; otherwise there are too many

	ladders [][]rung // by class
}

// rung says what a whole roll with at least that much room can carry, by scale.
type rung struct {
	need int64
	most [maxScales]int64
}

const (
	faraway = int64(1) << 60
	// The sets listed once for all jobs, and those listed for one job.
	maxSets, maxOwnSets = 8192, 2048

	maxScales = 8
)

func (s *sets) kinds() int   { return len(s.length) }
func (s *sets) classes() int { return len(s.phases) }

// reset empties the list of kinds.
func (s *sets) reset() {
	s.length, s.phase, s.weight, s.demand = s.length[:0], s.phase[:0], s.weight[:0], s.demand[:0]
}

// add adds a piece and returns its kind. The first piece of a kind gives it its
// weight.
func (s *sets) add(length, phase, weight int64) int {
	for j := range s.length {
		if s.length[j] == length && s.phase[j] == phase {
			s.demand[j]++
			return j
		}
	}
	s.length, s.phase = append(s.length, length), append(s.phase, phase)
	s.weight, s.demand = append(s.weight, weight), append(s.demand, 1)
	return len(s.length) - 1
}

// after returns where a piece of kind j ends that is cut as early as possible
// at or after x.
func (s *sets) after(x int64, j int) int64 {
	if s.repeat == 0 {
		return x + s.length[j]
	}
	wait := (s.phase[j] - x) % s.repeat
	if wait < 0 {
		wait += s.repeat
	}
	return x + wait + s.length[j]
}

// classOf returns the class of a stretch that begins at x, and where the wait
// for it ends.
func (s *sets) classOf(x int64) (class int, from int64) {
	if s.repeat == 0 {
		return 0, x
	}
	at := x % s.repeat
	c, _ := slices.BinarySearch(s.phases, at)
	if c == len(s.phases) {
		return 0, x - at + s.repeat + s.phases[0]
	}
	return c, x - at + s.phases[c]
}

// list lists all sets of the pieces added that fit the longest roll.
func (s *sets) list() {
	s.phases = s.phases[:0]
	if s.repeat == 0 {
		s.phases = append(s.phases, 0)
	} else {
		s.phases = append(s.phases, s.phase...)
		slices.Sort(s.phases)
		s.phases = slices.Compact(s.phases)
	}
	s.count, s.need, s.less, s.more = s.count[:0], s.need[:0], s.less[:0], s.more[:0]
	s.value, s.total, s.order = s.value[:0], s.total[:0], s.order[:0]

	s.full = true
	s.weigh()
	s.grow()
	clear(s.need)
	for i := int32(0); int(i) < len(s.total); i++ {
		for j := s.lastKind(i); j < s.kinds(); j++ {
			if s.count[int(i)*s.kinds()+j] == s.demand[j] {
				continue
			}
			if len(s.total) == s.limit {
				s.full = false
				return
			}
			s.extend(i, j)
		}
	}
	for i := range s.total {
		s.order = append(s.order, int32(i))
	}
	slices.SortFunc(s.order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.value[int(b)*s.scale], s.value[int(a)*s.scale]), cmp.Compare(s.total[b], s.total[a]), cmp.Compare(a, b))
	})
}

// weigh sets up the scales.
func (s *sets) weigh() {
	var lengths [maxScales - 1]int64 // distinct, descending: the longest ones
	s.scale = 1
	for below := faraway; s.scale < maxScales; s.scale++ {
		longest := int64(0)
		for _, l := range s.length {
			if l < below {
				longest = max(longest, l)
			}
		}
		if longest == 0 {
			break
		}
		lengths[s.scale-1], below = longest, longest
	}
	s.worth = s.worth[:0]
	for j, l := range s.length {
		s.worth = append(s.worth, s.weight[j])
		for _, least := range lengths[:s.scale-1] {
			w := int64(0)
			if l >= least {
				w = 1
			}
			s.worth = append(s.worth, w)
		}
	}
}

// grow adds a set with no pieces in it yet.
func (s *sets) grow() {
	m, n := s.kinds(), len(s.total)+1
	s.total = append(s.total, 0)
	s.value = extended(s.value, n*s.scale, 0)
	s.count = extended(s.count, n*m, 0)
	s.less, s.more = extended(s.less, n*m, -1), extended(s.more, n*m, -1)
	s.need = extended(s.need, n*s.classes(), faraway)
}

// shrink takes back the set added last.
func (s *sets) shrink() {
	m, n := s.kinds(), len(s.total)-1
	s.total, s.value = s.total[:n], s.value[:n*s.scale]
	s.count, s.less, s.more = s.count[:n*m], s.less[:n*m], s.more[:n*m]
	s.need = s.need[:n*s.classes()]
}

// extended returns s with length n, the new elements being x.
func extended[T any](s []T, n int, x T) []T {
	for len(s) < n {
		s = append(s, x)
	}
	return s
}

func (s *sets) lastKind(i int32) int {
	row := s.count[int(i)*s.kinds() : int(i+1)*s.kinds()]
	for j := len(row) - 1; j > 0; j-- {
		if row[j] > 0 {
			return j
		}
	}
	return 0
}

// extend adds set i and one of kind j, none of whose kinds is higher, if it
// fits the longest roll in some class.
func (s *sets) extend(i int32, j int) {
	m, classes := s.kinds(), s.classes()
	n := len(s.total)
	s.grow()
	s.total[n] = s.total[i] + s.length[j]
	for v := range s.scale {
		s.value[n*s.scale+v] = s.value[int(i)*s.scale+v] + s.worth[j*s.scale+v]
	}
	count, less := s.count[n*m:], s.less[n*m:]
	copy(count, s.count[int(i)*m:int(i+1)*m])
	count[j]++
	fits := false
	for k := range j + 1 {
		if count[k] == 0 {
			continue
		}
		sub := i
		if k != j {
			if sub = s.less[int(i)*m+k]; sub >= 0 {
				sub = s.more[int(sub)*m+j]
			}
		}
		if less[k] = sub; sub < 0 {
			continue
		}
		for c := range classes {
			from := s.need[int(sub)*classes+c]
			if from == faraway {
				continue
			}
			end := s.after(s.phases[c]+from, k) - s.phases[c]
			if end <= s.most && end < s.need[n*classes+c] {
				s.need[n*classes+c] = end
				fits = true
			}
		}
	}
	if !fits {
		s.shrink()
		return
	}
	for k := range j + 1 {
		if less[k] >= 0 {
			s.more[int(less[k])*m+k] = int32(n)
		}
	}
}

// sequence appends the kinds of set i, in the order in which they need least
// room on a stretch of class c, to dst.
func (s *sets) sequence(dst []int16, i int32, c int) []int16 {
	m, classes, lo := s.kinds(), s.classes(), len(dst)
	for i != 0 {
		for k := m - 1; k >= 0; k-- {
			sub := s.less[int(i)*m+k]
			if sub < 0 {
				continue
			}
			from := s.need[int(sub)*classes+c]
			if from != faraway && s.after(s.phases[c]+from, k)-s.phases[c] == s.need[int(i)*classes+c] {
				dst = append(dst, int16(k))
				i = sub
				break
			}
		}
	}
	slices.Reverse(dst[lo:])
	return dst
}

// climb works out the ladders: for each class, the rooms at which a roll can
// carry more on some scale.
func (s *sets) climb() {
	byNeed := slices.Clone(s.order)
	s.ladders = make([][]rung, s.classes())
	for c := range s.ladders {
		need := func(i int32) int64 { return s.need[int(i)*s.classes()+c] }
		slices.SortFunc(byNeed, func(a, b int32) int { return cmp.Compare(need(a), need(b)) })
		var top rung
		for _, i := range byNeed {
			if need(i) == faraway {
				break
			}
			before := top.most
			for v, w := range s.value[int(i)*s.scale : int(i+1)*s.scale] {
				top.most[v] = max(top.most[v], w)
			}
			if top.most != before {
				top.need = need(i)
				s.ladders[c] = append(s.ladders[c], top)
			}
		}
	}
}

// carries returns the most that a whole roll can carry, by scale.
func (s *sets) carries(class int, room int64) (most [maxScales]int64) {
	ladder := s.ladders[class]
	n, _ := slices.BinarySearchFunc(ladder, room, func(r rung, room int64) int { return cmp.Compare(r.need, room+1) })
	if n > 0 {
		most = ladder[n-1].most
	}
	return most
}
