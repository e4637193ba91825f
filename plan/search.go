package plan

import (
	"math"
	"slices"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/room"
)

// The search looks at every choice there is: the start on every wall, to the
// step of the grid; the kill seam at every place; new drops in inside corners.
// It never looks at most of them closely:
//
//	rows of starts × kill places             from what lies ahead: a bound    thousands
//	  │  the one with the least bound next
//	  ▼
//	start × kill place                       the same, of this start: a bound hundreds
//	  ▼
//	with new drops, the most promising first from sums of halves: a bound     hundreds
//	  │  the one with the least bound next
//	  ▼
//	halves up to the last drops, or a sketch the bound now holds all but      hundreds
//	  │                                      pieces, motifs and rolls
//	  ▼
//	layout in full, cut from rolls           what it weighs                   few
//
// No bound is more than what the choice weighs in the end. So when the least
// bound of those left is no better than the best found, no choice is: the result
// is proven, on the grid. Where as much has been looked at as may be, and it is not,
// a walk at random goes on for a while (walk.go). Choices have an order, and of
// equals the first that is found is kept, so that the same task gives the same plan.
//
// A start is a place of a seam within one width of the left end of a wall: all
// other starts on that wall give the same seams, unless the kill seam stands on
// the same wall. Many starts on other walls give the same seams too (twins.go).

// search looks for the best layout of one run.
type search struct {
	task     *Task
	run      *RunTask
	h        *hanging.Hanger
	lot      *lot // what rolls are counted of
	judge    *judge
	standing int64           // what the way in which the walls are set weighs, whatever the layout
	base     []cutting.Piece // pieces of other runs that share the rolls
	step     measure.Length
	coarse   measure.Length    // the step of starts in a long run
	counts   map[string]*count // by pieces

	kills       []killPlace
	starts      []hanging.Start
	own         int // from which on starts are for kill places on their own wall alone
	halves      *halves
	signer      *signer        // nil where more than the signature counts
	known       map[sign]known // what pieces, motifs and rolls weigh
	rounds      bool           // offsets of drops are no whole numbers of nanometres
	sketch      hanging.Layout
	closeup     closeup
	edges       [2]measure.Length // of the last drops before a kill seam that was tried, as edgesOf
	open        choices
	gather      func(choiceAt)  // if not nil, gets what is offered
	each        func(candidate) // if not nil, gets what is better than the best, which stays
	best        candidate
	found       bool  // best is the best, of an earlier plan
	rival       bool  // best is, to begin with, that of another search, to be beaten
	refusal     error // why the first that could not be cut could not
	places      []measure.Length
	tried, full int
	patience    int  // how many steps layouts have taken that were cut again
	proven      bool // no choice on the grid is better
	order       int32
}

// candidate is a choice on its way.
type candidate struct {
	choice hanging.Choice
	kill   killPlace
	score  int64
	layout *hanging.Layout
}

// find returns the best layout that can be cut from the paper's rolls.
func (s *search) find() (candidate, error) {
	if s.found {
		return s.best, nil
	}
	if err := s.checkFixed(); err != nil {
		return candidate{}, err
	}
	s.prepare()
	s.proven = true
	if s.best.layout == nil {
		s.scan(s.sampled())
		s.settle(1, never)
	}
	if s.isLeast() {
		return s.anchored(s.best), nil
	}
	s.open, s.tried, s.full = s.open[:0], 0, 0
	s.scan(1)
	s.settle(untilSettled, never)
	if s.coarse > s.step && s.best.layout != nil {
		s.starts, s.open = s.startsNear(s.best.choice.Start), s.open[:0]
		s.own = len(s.starts)
		s.scan(1)
		s.settle(untilSettled, never)
	}
	if s.best.layout == nil || s.best.score >= offWeight {
		if s.refusal != nil {
			return s.best, s.refusal
		}
		return s.best, message.New("no_layout", "no layout of walls {walls} keeps to what is fixed: free the start, the kill seam, a corner or a stretch without seams", "walls", wallsOf(s.run.Run))
	}
	if len(s.run.Run.Walls) > renewWalls {
		s.renew()
	}
	s.ramble()
	s.best = s.anchored(s.best)
	return s.best, nil
}

// prepare lists what there is to choose from.
func (s *search) prepare() {
	s.kills = slices.DeleteFunc(killPlaces(s.run.Run, s.run.Fixed.Kill), func(k killPlace) bool {
		return s.run.Fixed.isHung(&k.kill, len(s.run.Run.Walls))
	})
	s.starts = s.allStarts()
	s.known = map[sign]known{}
	s.rounds = roundsOffsets(s.judge.paper)
	if s.halves != nil { // of the session
		s.halves.s = s
		return
	}
	s.halves = newHalves(s)
	s.bounds()
	if p := &s.task.Papers[s.run.Paper]; !p.InOrder && (s.turn() > 0 || p.Repeat == 0) {
		s.signer = newSigner(s.halves)
	}
}

// isLeast reports whether the best found weighs no more than any layout has to.
func (s *search) isLeast() bool {
	if s.best.layout == nil {
		return false
	}
	if s.halves.floor == 0 {
		s.halves.floor = s.floor()
	}
	return s.best.score <= s.halves.floor
}

// sampled returns every how many-th start is enough for a first good plan.
func (s *search) sampled() int { return max(1, len(s.starts)/fewSampled) }

// fewSampled is how many these are.
const fewSampled = 16

// bounds prepares the bounds of rolls and motifs from the first layouts that there are,
// whatever start is fixed: so that they are the same for all of them.
func (s *search) bounds() {
	var some []*hanging.Layout
	for wall := 0; wall < len(s.run.Run.Walls) && len(some) < mostSampled; wall++ {
		some = s.appendFirst(some, hanging.Start{Wall: wall})
	}
	for i := 0; len(some) == 0 && i < len(s.starts); i++ {
		some = s.appendFirst(some, s.starts[i])
	}
	if len(some) > 0 {
		s.halves.rolls, s.halves.motifs = s.newRollBound(some[0]), s.newMotifBound(some[0])
		s.halves.rolls.prices = s.newPrices(some)
	}
}

// appendFirst appends the first layout that there is from a start.
func (s *search) appendFirst(some []*hanging.Layout, start hanging.Start) []*hanging.Layout {
	for k := range s.kills {
		if l, err := s.h.Layout(hanging.Choice{Start: start, Kill: s.kills[k].kill}); err == nil {
			return append(some, l)
		}
	}
	return some
}

// offer notes a choice unless it cannot be better than the best found.
func (s *search) offer(c choiceAt) {
	if f := &s.run.Fixed; len(f.NewDrop)+len(f.Carry) > 0 && !f.allows(&c.new, &s.kills[c.kill].kill) {
		return
	}
	s.order++
	c.order = s.order
	if s.gather != nil {
		s.gather(c)
		return
	}
	if !s.isBeaten(c.bound) {
		s.open = append(s.open, c)
	}
}

// untilSettled is more layouts than are ever laid out in full.
const untilSettled = math.MaxInt32

// settle looks at choices, the least bound first, until none can be better than
// the best found or has a bound below some weight, or until so many have been laid out
// in full and one is found.
func (s *search) settle(most int, below int64) {
	most += s.full
	s.open.arrange()
	for looked := 0; len(s.open) > 0 && s.open[0].bound < below && !s.isBeaten(s.open[0].bound); looked++ {
		s.tellChoices(looked)
		if s.task.isStopped() || s.best.layout != nil && s.isSpent() {
			s.proven = false
			return
		}
		c := s.open.pop()
		if !c.sketched {
			s.look(c)
			continue
		}
		if !s.sign(&c) {
			continue
		}
		s.finish(&c)
		if s.full >= most && s.best.layout != nil {
			return
		}
	}
}

// How much is looked at closely. Where bounds do not settle it, the search ends
// there: the best found is then not proven to be the best. Sketches cost as much
// as the run has walls.
const (
	mostSketched = 1_000_000 // times walls
	mostFinished = 2000
)

// isSpent reports whether as much has been looked at as may be: a tenth where the walls
// are set otherwise than at first.
func (s *search) isSpent() bool {
	part := 1
	if s.rival {
		part = 10
	}
	return part*s.tried*len(s.run.Run.Walls) > mostSketched || part*s.full > mostFinished
}

// choice returns the choice meant.
func (s *search) choice(c *choiceAt) hanging.Choice {
	choice := hanging.Choice{Start: s.starts[c.start], Kill: s.kills[c.kill].kill}
	if choice.Kill.Kind == hanging.OnWall {
		choice.Kill.X = c.x
	}
	if s.run.Fixed.Design != nil {
		choice.Design = *s.run.Fixed.Design
	}
	for _, corner := range c.new {
		if corner > 0 {
			choice.NewDrop = append(choice.NewDrop, int(corner)-1)
		}
	}
	slices.Sort(choice.NewDrop)
	return choice
}

// look sketches a choice and puts it back with what it then weighs at the least.
// A kill seam over an opening is tried at the opening's middle, and wherever else something
// better may come of it (seamplaces.go).
func (s *search) look(c choiceAt) {
	choice, told := s.choice(&c), c.local+c.rolls
	k := s.kills[c.kill]
	c.sketched, k.kill.X = true, c.x
	if !s.weigh(&c, choice, &k) || k.span.Length() == 0 {
		return
	}
	over, known := s.closeup.overlap(&k)
	for _, x := range s.seamPlaces(&choice, &k) {
		if known && s.isBeaten(told+s.closeup.m.moreAt(&k, &over, &s.closeup.m.over[c.kill], x)) {
			continue
		}
		n, at := c, choice
		n.order = 0
		n.x, at.Kill.X, k.kill.X = x, x, x
		s.weigh(&n, at, &k)
	}
}

// weigh puts a choice back among those still to be looked at, with what its drops and seams
// weigh; false when it is none. Its halves tell that, else a sketch.
func (s *search) weigh(c *choiceAt, choice hanging.Choice, k *killPlace) bool {
	score, told := s.closeup.weigh(c, &choice, k)
	c.local, c.signed, c.known = score, s.signer == nil, int32(len(s.known))
	if told && (len(choice.NewDrop) == 0 || !s.rounds || s.isBeaten(c.local+c.rolls-mostNew*s.judge.newStep())) {
		s.edges = s.closeup.edges
	} else if !s.draw(c, choice, k) {
		return false
	}
	s.tried++
	if c.bound = c.local + c.rolls; c.signed && s.signer != nil {
		c.bound = max(c.bound, c.local+s.known[c.sign].least)
	}
	if s.isBeaten(c.bound) {
		return true
	}
	s.order++
	if c.order == 0 {
		c.order = s.order
	}
	s.open.push(c)
	return true
}

// draw weighs a choice by a sketch, and signs it unless it is beaten; false when it is
// none.
func (s *search) draw(c *choiceAt, choice hanging.Choice, k *killPlace) bool {
	if err := s.h.Sketch(&s.sketch, choice); err != nil {
		return false
	}
	drops := s.sketch.Drops
	s.edges = edgesOf(drops[len(drops)-1].Parts, drops[0].Parts)
	c.local = s.judge.score(&s.sketch, k)
	if s.signer != nil && !s.isBeaten(c.local+c.rolls) {
		c.sign, c.signed = s.signer.layout(&s.sketch), true
	}
	return true
}

// sign signs a choice of which its halves have told: from them, else from a sketch. It puts
// it back, and returns false, if it would have waited longer had it been signed at once.
func (s *search) sign(c *choiceAt) bool {
	if c.signed {
		return true
	}
	choice, k := s.choice(c), s.kills[c.kill]
	k.kill = choice.Kill
	if c.sign, c.signed = s.closeup.sign(c, &choice, &k); !c.signed {
		if err := s.h.Sketch(&s.sketch, choice); err != nil {
			return false
		}
		c.sign, c.signed = s.signer.layout(&s.sketch), true
	}
	known, ok := s.known[c.sign]
	if !ok || known.at >= int(c.known) || c.local+known.least <= c.bound {
		return true
	}
	if c.bound = c.local + known.least; !s.isBeaten(c.bound) {
		s.open.push(c)
	}
	return false
}

// isBeaten reports whether a choice with that bound cannot be better than the
// best found: because of that, or since no layout can. As [outlook.passed] it is not inlined.
//
//go:noinline
func (s *search) isBeaten(bound int64) bool {
	return s.best.layout != nil && max(bound, s.halves.floor) >= s.best.score
}

// finish lays a choice out in full and keeps it if it is the best.
func (s *search) finish(c *choiceAt) {
	if s.signer != nil && s.isBeaten(c.local+s.known[c.sign].least) {
		return
	}
	n := candidate{choice: s.choice(c), kill: s.kills[c.kill]}
	n.kill.kill = n.choice.Kill
	s.full++
	if s.layOut(&n); n.layout == nil {
		return
	}
	total := s.leastTotal(&n)
	if !s.isBeaten(total) {
		var err error
		if total, err = s.total(&n); err != nil {
			if s.refusal == nil {
				s.refusal = err
			}
			total = never
		} else if n.score = total; !s.isBeaten(total) {
			s.keep(n)
		}
	}
	if s.signer != nil {
		s.note(c.sign, total-c.local)
	}
}

// keep keeps what is better than the best.
func (s *search) keep(c candidate) {
	if s.each != nil {
		s.each(c)
		return
	}
	s.best = c
}

// known is what pieces, motifs and rolls weigh at the least, and how many signatures
// were known before.
type known struct {
	least int64
	at    int
}

// note notes what layouts of a signature weigh beside their drops and seams.
func (s *search) note(n sign, least int64) {
	k, ok := s.known[n]
	if !ok {
		k.at = len(s.known)
	}
	k.least = least
	s.known[n] = k
}

// never is what a layout weighs that cannot be cut.
const never = math.MaxInt64 / 2

// layOut makes the layout of a candidate and weighs all but its rolls.
func (s *search) layOut(c *candidate) {
	l, err := s.h.Layout(c.choice)
	if err != nil {
		c.layout = nil
		return
	}
	if s.run.Fixed.Design == nil {
		if d := s.design(l); d != c.choice.Design {
			c.choice.Design = d
			l.Redesign(d)
		}
	}
	c.layout = l
	c.score = s.judge.score(l, &c.kill) + s.judge.pieces(l)
}

// raiseReturns notes the returns that are left to the hanger.
func (s *search) raiseReturns() {
	for i := range s.run.Run.Walls {
		w := &s.run.Run.Walls[i]
		for o := range w.Openings {
			if op := &w.Openings[o]; op.Depth > 0 && op.Sides != (room.Sides{}) && len(hanging.Returns(op)) == 0 {
				s.judge.raise(ReturnByHand, finding.Serious, 0, finding.Place{Wall: w.Name, Opening: op.Name},
					finding.Size{Name: "depth", Value: op.Depth})
			}
		}
	}
}
