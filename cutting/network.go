package cutting

import (
	"math"
	"slices"
	"sort"
)

// Few positions.
//
// Write x for a position in the design: x = position on the roll + phase of
// its start. A piece of phase f may begin only where x ≡ f, so on a roll cut
// without needless waste every cut ends at some phase f + length, a whole
// number of repeats further on:
//
//	x   0        P        2P       3P       4P
//	    |--------|--------|--------|--------|----
//	    .  a   b .  a   b .  a   b .  a   b .        ends of the two kinds
//	       [== piece ==]  waits   [== piece ==]
//	                   ^ ends at b             ^ ends at b
//
// With m kinds there are at most m·⌈R/P⌉+1 such positions, however fine the
// unit of length, and moving all of them by a repeat changes nothing. They
// become the nodes 0, 1, 2 … of a network, in ascending order, and
// next[v][j] is the node where a piece of kind j ends that begins at v or as
// soon after it as its phase allows. next is non-decreasing in v: to be there
// earlier is never worse.
//
// Free match has no phases; its nodes are the sums of lengths that the pieces
// asked for can make. Where even those are too many (lengths without a common
// measure), positions are rounded to a grid: downwards in the network that
// bounds, upwards in the one that plans, so that both stay true.
type network struct {
	plan  graph // every path is a cuttable roll
	bound graph // every cuttable roll is a path; the same graph unless coarse

	// exact holds one lane for each start that must be provided for. A set of
	// pieces is good for all starts if it fits every exact lane.
	exact []lane
	// safe lanes are such that a set that fits one of them is good for all
	// starts, cut in the same order: the wait for the first piece's phase is
	// taken at its worst. With a known start they are the exact lane.
	safe []lane

	coarse bool
	known  bool            // there is a single start
	broken []stretchOfRoll // of a roll with flaws or in parts; positions are then those on the roll
	repeat int64
	roll   int64 // length, and the loss at a last cut, which need not be on the roll
	lead   int64
}

// anyOrder says that the order of the cuts makes no difference.
func (n *network) anyOrder() bool { return n.repeat == 0 && n.broken == nil }

// graph is a set of nodes with their successors.
type graph struct {
	kinds int
	at    []int64 // design position of each node, ascending; one entry more, far away, for "off the roll"
	next  []int32 // next[v*kinds+j]; nodes() when the piece would end off the roll

	// news[newsFrom[v]:newsFrom[v+1]] are the steps from node v that lead
	// elsewhere than the same kind from node v+1; see news.go. Nil if not known.
	news     []arc
	newsFrom []int32
}

func (g *graph) nodes() int { return len(g.at) - 1 }

// row returns the successors of node v, by kind.
func (g *graph) row(v int32) []int32 {
	lo := int(v) * g.kinds
	return g.next[lo : lo+g.kinds : lo+g.kinds]
}

// lane is one way of beginning a roll: cutting begins at a node, and no piece
// may end beyond another. The two numbers are given for both graphs.
type lane struct {
	from, last           int32 // in the planning graph
	boundFrom, boundLast int32 // in the bounding graph
	begin                int64 // design position of the roll's beginning
	first                int64 // design position of the first node
	limit                int64 // design position of the roll's end
}

const (
	maxNodes = 1 << 17 // beyond this, or maxCells successors, positions are rounded to a grid
	maxCells = 1 << 23
	gridded  = 1 << 13 // positions on that grid
	faraway  = math.MaxInt64 / 4
)

func newNetwork(p *Problem, stock *Stock) network {
	n := network{
		known: stock.known(p.spec.Repeat), repeat: p.repeat,
		roll: int64(stock.Total()) + p.loss, lead: int64(p.spec.Lead),
	}
	if stock.broken() {
		n.broken = stock.stretches(n.lead)
	}
	n.startLanes(p, int64(stock.Start.Phase))
	limit := int64(0)
	for _, l := range n.exact {
		limit = max(limit, l.limit, l.first)
	}
	for _, l := range n.safe {
		limit = max(limit, l.limit)
	}
	var ok bool
	switch {
	case n.broken != nil:
		n.plan, ok = n.brokenGraph(p, limit)
	case p.repeat == 0:
		n.plan, ok = sumGraph(p, n.lead, limit)
	default:
		n.plan, ok = n.phaseGraph(p, limit)
	}
	n.bound = n.plan
	if !ok {
		n.coarse = true
		n.plan, n.bound = n.gridGraph(p, limit, true), n.gridGraph(p, limit, false)
	}
	for i := range n.exact {
		n.locate(&n.exact[i])
	}
	for i := range n.safe {
		n.locate(&n.safe[i])
	}
	return n
}

// startLanes lists the starts to provide for, by design position; phase is the
// known one.
//
// The end of the best plan is a step function of the start that changes only
// at the phases of the pieces, while the roll's end moves along with its
// start. So the worst start of each step lies just past a phase: in whole
// nanometres, one past. That is the exact lane of each phase; the safe lane
// waits for that phase a whole repeat less one nanometre, the longest wait
// there is.
func (n *network) startLanes(p *Problem, phase int64) {
	if n.known {
		if p.repeat == 0 || n.broken != nil {
			phase = 0
		}
		n.exact = []lane{{begin: phase, first: phase + n.lead, limit: phase + n.roll}}
		n.safe = n.exact
		return
	}
	for d, q := range p.phases {
		prev := p.phases[len(p.phases)-1] - p.repeat
		if d > 0 {
			prev = p.phases[d-1]
		}
		begin := prev + 1 - n.lead
		n.exact = append(n.exact, lane{begin: begin, first: q, limit: begin + n.roll})
		begin = q - p.repeat + 1 - n.lead
		n.safe = append(n.safe, lane{begin: begin, first: q, limit: begin + n.roll})
	}
	if len(p.phases) == 1 {
		n.safe = n.exact
	}
}

// after returns the position where a piece of kind j ends that is cut as early
// as possible at or after position x; faraway if there is no room for it.
func (n *network) after(p *Problem, x int64, j int) int64 {
	if n.broken == nil {
		return p.after(x, j)
	}
	for _, part := range n.broken {
		from := max(x, part.from)
		if n.repeat > 0 {
			from += mod(p.phase[j]-from-part.shift, n.repeat)
		}
		if end := from + p.length[j]; end-p.loss <= part.to {
			return end
		}
	}
	return faraway
}

func (n *network) locate(l *lane) {
	l.from, l.last = n.plan.atOrAfter(l.first), n.plan.atOrBefore(l.limit)
	l.boundFrom, l.boundLast = l.from, l.last
	if n.coarse {
		l.boundFrom, l.boundLast = n.bound.atOrBefore(l.first), n.bound.atOrBefore(l.limit)
	}
}

func (g *graph) atOrAfter(x int64) int32 {
	return int32(sort.Search(len(g.at), func(i int) bool { return g.at[i] >= x }))
}

func (g *graph) atOrBefore(x int64) int32 {
	return int32(sort.Search(len(g.at), func(i int) bool { return g.at[i] > x })) - 1
}

// phaseGraph builds the network of a design with a repeat: first over all
// phases at which a cut can end times all repeats, where a step to a successor
// is a fixed number of places that depends on phase and kind alone; then
// reduced to what can be reached.
func (n *network) phaseGraph(p *Problem, limit int64) (graph, bool) {
	m := len(p.kinds)
	rest := make([]int64, 0, 2*m+1) // phases of the nodes
	for j := range p.kinds {
		rest = append(rest, (p.phase[j]+p.length[j])%p.repeat)
	}
	for _, l := range n.exact {
		rest = append(rest, l.first%p.repeat)
	}
	slices.Sort(rest)
	rest = slices.Compact(rest)
	r := len(rest)
	if repeats := limit/p.repeat + 1; repeats > int64(maxNodes/r) {
		return graph{}, false
	}
	steps := phaseSteps(p, rest)
	size := int(limit/p.repeat)*r + sort.Search(r, func(i int) bool { return rest[i] > limit%p.repeat })
	name, count := n.reachable(rest, steps, size)
	if int(count)*m > maxCells {
		return graph{}, false
	}
	g := graph{kinds: m, at: make([]int64, 0, count+1), next: make([]int32, 0, int(count)*m)}
	for v, c := 0, 0; v < size; v, c = v+1, (c+1)%r {
		if name[v] == 0 {
			continue
		}
		g.at = append(g.at, int64(v/r)*p.repeat+rest[c])
		for _, step := range steps[c*m : c*m+m] {
			to := count
			if t := v + int(step); t < size {
				to = name[t] - 1
			}
			g.next = append(g.next, to)
		}
	}
	g.at = append(g.at, faraway)
	g.findNews()
	return g, true
}

// reachable numbers, from 1 on, the places where a roll may begin and those
// that cuts can reach from there; the others keep 0. It returns how many.
func (n *network) reachable(rest []int64, steps []int32, size int) (name []int32, count int32) {
	r := len(rest)
	m := len(steps) / r
	name = make([]int32, size)
	for _, l := range n.exact {
		at, _ := slices.BinarySearch(rest, l.first%n.repeat)
		name[int(l.first/n.repeat)*r+at] = 1
	}
	for v, c := 0, 0; v < size; v, c = v+1, (c+1)%r {
		if name[v] == 0 {
			continue
		}
		count++
		name[v] = count
		for _, step := range steps[c*m : c*m+m] {
			if t := v + int(step); t < size && name[t] == 0 {
				name[t] = 1
			}
		}
	}
	return name, count
}

// phaseSteps returns how many places forward a piece of each kind leads from
// each phase. A step beyond any roll of allowed length is cut off.
func phaseSteps(p *Problem, rest []int64) []int32 {
	m, r := len(p.kinds), len(rest)
	steps := make([]int32, r*m)
	for c, q := range rest {
		for j := range p.kinds {
			end := p.after(q, j)
			at, _ := slices.BinarySearch(rest, end%p.repeat)
			step := end/p.repeat*int64(r) + int64(at-c)
			steps[c*m+j] = int32(min(step, 1<<30))
		}
	}
	return steps
}

// sumGraph builds the network of free match: the sums of pieces asked for.
func sumGraph(p *Problem, from, limit int64) (graph, bool) {
	m := len(p.kinds)
	sums := []int64{from}
	var shifted, merged []int64
	for j, l := range p.length {
		shifted = append(shifted[:0], sums...)
		for range p.demand[j] {
			n := 0
			for _, x := range shifted {
				if x+l <= limit {
					shifted[n] = x + l
					n++
				}
			}
			shifted = shifted[:n]
			merged = mergeInto(merged[:0], sums, shifted)
			if n == 0 {
				break
			}
			sums, merged = merged, sums
			if len(sums) > maxNodes || len(sums)*m > maxCells {
				return graph{}, false
			}
		}
	}
	v := len(sums)
	g := graph{kinds: m, at: append(slices.Clone(sums), faraway), next: make([]int32, v*m)}
	for j, l := range p.length {
		t := 0
		for i, x := range sums {
			for t < v && g.at[t] < x+l {
				t++
			}
			to := int32(v)
			if t < v && g.at[t] == x+l {
				to = int32(t)
			}
			g.next[i*m+j] = to
		}
	}
	return g, true
}

// mergeInto appends the union of two ascending lists to dst.
func mergeInto(dst, a, b []int64) []int64 {
	for len(a) > 0 && len(b) > 0 {
		x := min(a[0], b[0])
		if a[0] == x {
			a = a[1:]
		}
		if len(b) > 0 && b[0] == x {
			b = b[1:]
		}
		dst = append(dst, x)
	}
	return append(append(dst, a...), b...)
}

// brokenGraph builds the network of a roll with flaws or in parts: whatever
// can be reached from its beginning.
func (n *network) brokenGraph(p *Problem, limit int64) (graph, bool) {
	m := len(p.kinds)
	seen := map[int64]bool{n.lead: true}
	reached := []int64{n.lead}
	for i := 0; i < len(reached); i++ {
		if len(reached) > maxNodes || len(reached)*m > maxCells {
			return graph{}, false
		}
		for j := range m {
			if end := n.after(p, reached[i], j); end <= limit && !seen[end] {
				seen[end] = true
				reached = append(reached, end)
			}
		}
	}
	slices.Sort(reached)
	g := graph{kinds: m, at: append(reached, faraway), next: make([]int32, 0, len(reached)*m)}
	for _, x := range reached {
		for j := range m {
			to := len(reached)
			if end := n.after(p, x, j); end <= limit {
				to, _ = slices.BinarySearch(reached, end)
			}
			g.next = append(g.next, int32(to))
		}
	}
	return g, true
}

// gridGraph is the fallback: a fixed number of evenly spaced positions, ends
// rounded up (every path can be cut) or down (every roll is a path).
func (n *network) gridGraph(p *Problem, limit int64, up bool) graph {
	m := len(p.kinds)
	width := limit/gridded + 1
	v := int(limit/width) + 1
	g := graph{kinds: m, at: make([]int64, 0, v+1), next: make([]int32, 0, v*m)}
	for i := range v {
		x := int64(i) * width
		g.at = append(g.at, x)
		for j := range m {
			end := n.after(p, x, j)
			if up {
				end += width - 1
			}
			g.next = append(g.next, int32(min(end/width, int64(v))))
		}
	}
	g.at = append(g.at, faraway)
	return g
}
