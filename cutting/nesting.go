package cutting

import (
	"cmp"
	"encoding/binary"
	"slices"
	"strings"

	"firstdrop/measure"
)

// Which narrow pieces share a strip.
//
// Take the longest narrow piece left, try every strip that holds it, and go on
// with what is left:
//
//	left ── strip a|c|f ── left' ── strip b|d ── … ── none left: cut the rolls
//	     \─ strip a|d ── …
//
// A strip is tried only if no other piece left could lie on it for nothing:
// taking that piece off its own strip never makes matters worse. A branch ends
// when its bound (nestbound.go) says that it cannot be better than the best
// plan, and does not begin where the same pieces are left beside strips of the
// same lengths and phases as once before. If all branches have ended the best
// plan is optimal.
type nesting struct {
	spec  NarrowSpec
	opts  Options
	kinds []narrowKind
	types []stripType
	q     *Problem // all types; nil if there are too many or several kinds of roll
	w     *work    // of q
	full  []int32  // full widths, by kind in q

	fill   filling
	rows   nestRows
	chosen []nestStrip
	demand []int32 // full widths and chosen strips, by kind in q
	lanes  []int   // by which the bound is sought in the search
	seen   map[string]struct{}
	cert   nestCertificate

	best       *Strips
	lower      int64          // cost that no plan undercuts
	undecided  int64          // least cost that a grouping not solved to the end may have
	incomplete bool           // something was left out
	leaves     int            // groupings cut
	least      measure.Length // paper that no grouping undercuts; 0 if not known
	steps      int
	limit      int
	report     int
	stopped    bool
}

type nestStrip struct {
	length, phase measure.Length
	kind          int     // in q
	members       []int16 // narrow kinds, ascending
}

const (
	leafSteps   = 50_000  // for the cutting of one grouping
	nestSteps   = 150_000 // for the search among groupings
	maxChildren = 300     // strips tried for one piece
	undecidable = int64(1) << 62
)

func newNesting(spec NarrowSpec, o Options) *nesting {
	x := &nesting{spec: spec, opts: o, kinds: groupNarrow(spec), report: ReportSteps, undecided: undecidable}
	stock, err := checkSpec(spec.Spec)
	if err != nil {
		return x
	}
	x.fill = filling{kinds: x.kinds, weight: make([]int64, len(x.kinds)), left: make([]int32, len(x.kinds))}
	for i := range x.kinds {
		x.fill.left[i] = int32(len(x.kinds[i].pieces))
	}
	x.types = stripTypes(spec, stock, x.kinds)
	if len(stock) > 1 || stock[0].Count > 0 || x.types == nil {
		return x
	}
	if q, err := typeProblem(spec, x.kinds, x.types); err == nil && len(q.kinds) > 0 {
		x.q, x.w = q, newWork(q, int(^uint(0)>>1))
		x.full, x.demand = make([]int32, len(q.kinds)), make([]int32, len(q.kinds))
		for _, j := range q.kindOf[:len(spec.Pieces)] {
			x.full[j]++
		}
		copy(x.demand, x.full)
	}
	return x
}

func (x *nesting) free() {
	if x.w != nil {
		x.w.free()
	}
}

// watch passes the progress of a part on as that of the whole.
func (x *nesting) watch() func(Progress) bool {
	if x.opts.Progress == nil {
		return nil
	}
	before := x.steps
	return func(pr Progress) bool {
		x.stopped = x.stopped || !x.opts.Progress(Progress{before + pr.Steps, x.cost(pr.Rolls), x.lower})
		return !x.stopped
	}
}

// cost is that of the best plan, or of what a part has so far.
func (x *nesting) cost(part int64) int64 {
	if x.best == nil {
		return part
	}
	return x.best.Solution.Cost
}

func (x *nesting) spent() bool {
	steps := x.taken()
	if x.opts.Progress != nil && steps >= x.report && !x.stopped {
		x.report = steps + ReportSteps
		x.stopped = !x.opts.Progress(Progress{steps, x.cost(0), x.lower})
	}
	return x.stopped || steps >= x.limit
}

func (x *nesting) taken() int {
	if x.w == nil {
		return x.steps
	}
	return x.steps + x.w.steps
}

// run finds the best grouping, and the bound for all of them.
func (x *nesting) run() {
	x.limit = min(x.opts.Steps, x.steps+nestSteps)
	if x.q != nil {
		x.rootBound()
	} else {
		x.fullBound()
	}
	x.seen = make(map[string]struct{})
	x.firstLeaf()
	x.incomplete = false
	if !x.done() {
		x.branch()
	}
	if !x.incomplete && !x.spent() {
		x.lower = max(x.lower, min(x.best.Solution.Cost, x.undecided))
	}
}

// fullBound is the bound that the full widths give by themselves: leaving
// pieces out never makes a plan dearer.
func (x *nesting) fullBound() {
	if len(x.spec.Pieces) == 0 {
		return
	}
	if p, err := NewProblem(x.spec.cut(nil)); err == nil {
		s := Solve(p, Options{Steps: leafSteps})
		x.steps += s.Steps
		if len(s.Missing) == 0 {
			x.lower = s.CostBound
		}
	}
}

// done says that the search is over.
func (x *nesting) done() bool {
	return x.leaves > 0 && x.best.Solution.Cost <= x.lower || x.spent()
}

// branch tries all strips for the longest narrow piece left.
func (x *nesting) branch() {
	k := x.longest()
	if k < 0 {
		x.leaf()
		return
	}
	key := x.key()
	if _, known := x.seen[key]; known {
		return
	}
	x.seen[key] = struct{}{}
	if x.leaves > 0 && x.q != nil && x.hopeless() {
		return
	}
	for _, c := range x.children(k) {
		x.put(c, 1)
		x.branch()
		x.put(c, -1)
		if x.done() {
			x.incomplete = x.incomplete || x.spent()
			return
		}
	}
}

func (x *nesting) longest() int {
	at := -1
	for k := range x.kinds {
		if x.fill.left[k] > 0 && (at < 0 || x.kinds[k].piece.Length > x.kinds[at].piece.Length) {
			at = k
		}
	}
	return at
}

// put takes the members of a strip from what is left, or with -1 gives them
// back.
func (x *nesting) put(c nestStrip, by int32) {
	for _, k := range c.members {
		x.fill.left[k] -= by
	}
	if x.q != nil {
		x.demand[c.kind] += by
	}
	if by > 0 {
		x.chosen = append(x.chosen, c)
	} else {
		x.chosen = x.chosen[:len(x.chosen)-1]
	}
}

// key writes down all that what lies ahead depends on.
func (x *nesting) key() string {
	var b strings.Builder
	var buf [8]byte
	for _, n := range x.fill.left {
		binary.LittleEndian.PutUint32(buf[:4], uint32(n))
		b.Write(buf[:4])
	}
	for _, p := range x.sortedStrips() {
		binary.LittleEndian.PutUint64(buf[:], uint64(p.Length))
		b.Write(buf[:])
		binary.LittleEndian.PutUint64(buf[:], uint64(p.Phase))
		b.Write(buf[:])
	}
	return b.String()
}

func (x *nesting) sortedStrips() []Piece {
	all := make([]Piece, len(x.chosen))
	for i, c := range x.chosen {
		all[i] = Piece{c.length, c.phase}
	}
	slices.SortFunc(all, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Phase, b.Phase))
	})
	return all
}

// leaf cuts the rolls for the strips chosen.
func (x *nesting) leaf() {
	key := x.key()
	if _, known := x.seen[key]; known {
		return
	}
	x.seen[key] = struct{}{}
	strips := x.written()
	p, err := NewProblem(x.spec.cut(strips))
	if err != nil {
		x.incomplete = true
		return
	}
	s := Solve(p, Options{Steps: min(leafSteps, x.opts.Steps), Progress: x.watch()})
	x.steps += s.Steps + 1
	x.leaves++
	if !s.Proven {
		x.undecided = min(x.undecided, s.CostBound)
	}
	plan := Strips{Spec: x.spec, Strips: strips, Solution: s}
	if c := cmp.Compare(s.Cost, x.best.Solution.Cost); c < 0 || c == 0 && plan.paper() < x.best.paper() {
		x.best.Strips, x.best.Solution = plan.Strips, s
	}
}

// written writes the chosen strips out, giving each kind's pieces in turn.
func (x *nesting) written() []Strip {
	next := make([]int, len(x.kinds))
	strips := make([]Strip, 0, len(x.chosen))
	for _, c := range x.chosen {
		s := Strip{Piece: Piece{c.length, c.phase}}
		for _, k := range c.members {
			n := &x.kinds[k]
			s.Lies = append(s.Lies, Lie{n.pieces[next[k]], n.reach(c.phase, x.spec.Repeat) - n.piece.Length})
			next[k]++
		}
		strips = append(strips, s)
	}
	slices.SortStableFunc(strips, func(a, b Strip) int { return cmp.Compare(a.Lies[0].Narrow, b.Lies[0].Narrow) })
	return strips
}

// finish makes the best plan's cutting for the goals and states the bound.
func (x *nesting) finish(o Options) {
	s := x.best
	o.Progress = x.watch()
	if final := Solve(s.Solution.Problem, o); final.Cost <= s.Solution.Cost {
		s.Solution = final
		x.steps += final.Steps
	}
	s.CostBound = x.lower
	s.Proven = s.Solution.Cost == s.CostBound
	s.LeastPaper = s.paper() == x.least || len(s.Spec.Narrow) <= 1
	s.Steps = x.taken()
	switch {
	case len(s.Spec.Narrow) <= 1:
		s.LowerBound, s.Certificate = s.Alone.LowerBound, s.Alone.Certificate
	case x.q != nil:
		s.LowerBound = int(s.CostBound / x.price())
		s.Certificate = x.certificate(s.LowerBound)
	case len(s.Solution.Missing) == 0:
		top := int64(1)
		for _, st := range s.Solution.Problem.stock {
			if !st.InHand {
				top = max(top, st.Price)
			}
		}
		s.LowerBound = int((s.CostBound + top - 1) / top)
	}
}
