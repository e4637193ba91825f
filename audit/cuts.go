package audit

import (
	"firstdrop/cutting"
)

// rolls is a cutting plan made ready for judging.
type rolls struct {
	*book
	s      *cutting.Solution
	spec   cutting.Spec
	wares  []ware
	repeat int64
	loss   int64 // at each cut, between one piece and the next
	lead   int64 // of each roll's beginning, not used
}

// mixed reports whether there is more to choose from than as many rolls as
// wanted of one kind.
func (r *rolls) mixed() bool { return len(r.wares) > 1 || r.wares[0].count > 0 }

// ware returns the kind of a roll of the plan.
func (r *rolls) ware(roll int) *ware { return &r.wares[r.s.Rolls[roll].Stock] }

func (r *rolls) phase(piece int) int64 { return mod(int64(r.spec.Pieces[piece].Phase), r.repeat) }

func (r *rolls) size(piece int) int64 { return int64(r.spec.Pieces[piece].Length) }

// Cutting judges one cutting plan by itself.
func Cutting(s *cutting.Solution) []Violation {
	b := &book{}
	judgeCutting(b, s)
	return b.found
}

func judgeCutting(b *book, s *cutting.Solution) {
	r := newRolls(b, s)
	if r == nil {
		return
	}
	r.judgePieces()
	for i := range s.Rolls {
		for o := range s.Rolls[i].Orders {
			r.judgeOrder(i, o)
		}
		r.judgeStarts(i)
	}
	if r.spec.InOrder {
		r.judgeInOrder()
	}
	r.judgeStock()
	r.judgeProof()
	r.judgeGoals()
	r.judgeChanges()
}

// newRolls returns nil, with the reason noted, when the plan cannot be judged.
func newRolls(b *book, s *cutting.Solution) *rolls {
	c := soundness{book: b}
	c.need(s != nil && s.Problem != nil, Place{}, "the cutting plan", "complete", "without solution or problem")
	if c.bad {
		return nil
	}
	spec := s.Problem.Spec()
	c.lengths(Place{}, "a length", spec.Repeat, spec.Roll.Length, spec.Roll.Start.Phase, spec.Lead, spec.Loss)
	c.need(spec.Repeat >= 0, Place{}, "repeat", "0 or more", spec.Repeat)
	all := wares(&spec)
	for i, p := range spec.Pieces {
		c.lengths(Place{Piece: i + 1}, "a length", p.Length, p.Phase)
		c.need(p.Length > 0, Place{Piece: i + 1}, "length", "more than 0", p.Length)
	}
	for _, i := range s.Missing {
		c.index(Place{}, "missing piece", i, len(spec.Pieces))
	}
	for i := range s.Rolls {
		c.index(Place{Roll: i + 1}, "kind of roll", s.Rolls[i].Stock, len(all))
		for o := range s.Rolls[i].Orders {
			order, at := &s.Rolls[i].Orders[o], Place{Roll: i + 1, Order: o + 1}
			c.lengths(at, "a phase", order.After, order.UpTo, order.At)
			for k, cut := range order.Cuts {
				at.Cut = k + 1
				c.lengths(at, "an end", cut.From, cut.To)
				c.index(at, "piece", cut.Piece, len(spec.Pieces))
			}
		}
	}
	if c.bad {
		return nil
	}
	return &rolls{b, s, spec, all, int64(spec.Repeat), int64(spec.Loss), int64(spec.Lead)}
}

// asked reads the question of a cutting plan, without a look at the answer.
func asked(s *cutting.Solution) *rolls {
	spec := s.Problem.Spec()
	return &rolls{&book{}, s, spec, wares(&spec), int64(spec.Repeat), int64(spec.Loss), int64(spec.Lead)}
}

// judgePieces: each roll cuts the same pieces in all its orders, and each
// piece is cut from one roll, once, or is missing.
func (r *rolls) judgePieces() {
	roll := make([]int, len(r.spec.Pieces))
	for i := range r.s.Rolls {
		at := Place{Roll: i + 1}
		orders := r.s.Rolls[i].Orders
		if len(orders) == 0 || len(orders[0].Cuts) == 0 {
			r.note(CutPieces, at, "roll", "cut", "without cuts")
			continue
		}
		for k, c := range orders[0].Cuts {
			at := Place{Roll: i + 1, Order: 1, Cut: k + 1}
			if roll[c.Piece] != 0 {
				r.note(CutPieces, at, "piece "+figure(c.Piece+1), "cut once", "cut again")
			}
			roll[c.Piece] = i + 1
		}
		for o := 1; o < len(orders); o++ {
			at.Order = o + 1
			if !samePieces(orders[0].Cuts, orders[o].Cuts) {
				r.note(CutPieces, at, "pieces of the order", "those of the first", "others")
			}
		}
	}
	for _, i := range r.s.Missing {
		if roll[i] != 0 {
			r.note(Missing, Place{Piece: i + 1}, "missing piece", "one that no roll gives, named once", "given or named before")
		}
		roll[i] = -1
	}
	for i, n := range roll {
		if n == 0 {
			r.note(CutPieces, Place{Piece: i + 1}, "piece", "cut", "not")
		}
	}
}

func samePieces(a, b []cutting.Cut) bool {
	count := make(map[int]int, len(a))
	for _, c := range a {
		count[c.Piece]++
	}
	for _, c := range b {
		count[c.Piece]--
		if count[c.Piece] < 0 {
			return false
		}
	}
	return len(a) == len(b)
}

// judgeOrder judges the cuts of one order as they are given.
func (r *rolls) judgeOrder(roll, order int) {
	o, w := &r.s.Rolls[roll].Orders[order], r.ware(roll)
	end := int64(0)
	for k, c := range o.Cuts {
		at := Place{Roll: roll + 1, Order: order + 1, Cut: k + 1}
		cut := span{int64(c.From), int64(c.To)}
		r.same(CutLength, at, "length", r.size(c.Piece), cut.length())
		t := w.on(int64(o.At), cut)
		switch {
		case cut.lo < r.lead || cut.hi > w.length:
			r.note(CutOnRoll, at, "cut", "within "+figure(span{r.lead, w.length}), cut)
		case t == nil:
			r.note(CutUnbroken, at, "cut", "clear of flaws and joints", cut)
		}
		if k > 0 && cut.lo < end+r.loss {
			r.note(CutApart, at, "beginning", figure(end+r.loss)+" or more", cut.lo)
		}
		end = max(end, cut.hi)
		if t != nil && r.repeat > 0 {
			r.same(CutPhase, at, "phase where it begins", r.phase(c.Piece), mod(cut.lo+t.shift, r.repeat))
		}
	}
}
