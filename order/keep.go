package order

import (
	"cmp"
	"slices"

	"firstdrop/cutting"
)

// Keeping to the plan.
//
// A hotel has too many kinds of pieces for planning anew at every turn. There
// the hanger keeps to the plan's rolls: the set that fills its roll most goes
// to the longest roll that takes it, and so on; what then has no roll, and
// whatever is spoiled, goes piece by piece to the rest it fills best, or to a new
// roll.
type keptRoll struct {
	orders [][]int32 // pieces in cutting order, one for each class of starts
	total  int64     // their length
}

// keptRolls returns the plan's rolls, those with most on them first.
func keptRolls(plan *cutting.Solution) []keptRoll {
	pieces := plan.Problem.Spec().Pieces
	kept := make([]keptRoll, 0, len(plan.Rolls))
	for _, r := range plan.Rolls {
		var k keptRoll
		if isBroken(plan, r) {
			kept = append(kept, keptStretches(plan, r)...)
			continue
		}
		for n, o := range r.Orders {
			var seq []int32
			for _, cut := range o.Cuts {
				seq = append(seq, int32(cut.Piece))
				if n == 0 {
					k.total += int64(pieces[cut.Piece].Length)
				}
			}
			k.orders = append(k.orders, seq)
		}
		kept = append(kept, k)
	}
	slices.SortStableFunc(kept, func(a, b keptRoll) int { return cmp.Compare(b.total, a.total) })
	return kept
}

// isBroken reports whether a roll of the plan has flaws or comes in parts.
func isBroken(plan *cutting.Solution, r cutting.RollPlan) bool {
	stock := plan.Problem.Spec().Stock
	return len(stock) > 0 && len(stock[r.Stock].Flaws)+len(stock[r.Stock].Parts) > 0
}

// keptStretches returns each cut of a broken roll by itself, since the plan does
// not say in which stretches they lie.
func keptStretches(plan *cutting.Solution, r cutting.RollPlan) (kept []keptRoll) {
	for _, cut := range r.Orders[0].Cuts {
		kept = append(kept, keptRoll{[][]int32{{int32(cut.Piece)}}, int64(cut.To - cut.From)})
	}
	return kept
}

// settle assigns each of the plan's rolls to an open roll that takes it, longest
// first, and returns those that none takes. Every open roll must be fresh.
func (t *trial) settle() (homeless []int32) {
	byLength := make([]int, len(t.rolls))
	for r := range t.rolls {
		byLength[r] = r
		t.rolls[r].seq = t.rolls[r].seq[:0]
		t.rolls[r].upTo = t.rolls[r].x
	}
	slices.SortStableFunc(byLength, func(a, b int) int {
		return cmp.Compare(t.rolls[b].end-t.rolls[b].x, t.rolls[a].end-t.rolls[a].x)
	})
	for k := range t.kept {
		placed := false
		for n := 0; n < len(byLength) && !placed; n++ {
			if placed = t.lay(&t.rolls[byLength[n]], &t.kept[k]); placed {
				byLength = slices.Delete(byLength, n, n+1)
			}
		}
		if !placed {
			homeless = append(homeless, t.kept[k].orders[0]...)
		}
	}
	return homeless
}

// lay plans a roll as the plan had it, if it fits in one of the plan's orders.
func (t *trial) lay(s *stretch, k *keptRoll) bool {
	for _, seq := range k.orders {
		x := s.x
		for _, piece := range seq {
			x = t.set.after(x, t.kindOf[piece])
		}
		if x > s.end {
			continue
		}
		for _, piece := range seq {
			s.seq = append(s.seq, int16(t.kindOf[piece]))
		}
		s.upTo = x
		return true
	}
	return false
}

// keepAll reports whether the open rolls take all of the plan's.
func (t *trial) keepAll() bool {
	return len(t.rolls) >= len(t.kept) && len(t.settle()) == 0
}

// keep plans the rolls as the plan had them, and the rest piece by piece, or by
// filling roll after roll if that takes no more. One roll in forty above the
// plan's is tried without adding any on the way; beyond, rolls are added as
// pieces ask for them. It is proven when fewer rolls would be too short
// altogether.
func (t *trial) keep() bool {
	for !t.longEnough() {
		if !t.open() {
			return false
		}
	}
	for least := len(t.rolls); ; {
		if len(t.kept) <= fewRolls && (t.fill(0) || t.fill(1) || t.fill(3)) || t.keepRoughly(false) {
			t.proven = len(t.rolls) == least
			return true
		}
		if len(t.rolls) >= len(t.kept)+len(t.kept)/fewRolls {
			t.proven = false
			return t.keepRoughly(true)
		}
		if !t.open() {
			t.proven = false
			return t.keepRoughly(true)
		}
	}
}

// fewRolls is up to how many of a plan's rolls are filled anew in several ways.
const fewRolls = 40

// longEnough reports whether the rolls have room for the length of all pieces.
func (t *trial) longEnough() bool {
	length := int64(0)
	for j, n := range t.left {
		length += int64(n) * t.set.length[j]
	}
	for r := range t.rolls {
		length -= max(t.rolls[r].room, 0)
	}
	return length <= 0
}

// keepRoughly plans the open rolls as the plan had them and the rest piece by
// piece, on further rolls only if it may.
func (t *trial) keepRoughly(further bool) bool {
	if !further && len(t.rolls) < len(t.kept) {
		return false
	}
	homeless := t.settle()
	slices.SortStableFunc(homeless, func(a, b int32) int {
		return cmp.Compare(t.set.length[t.kindOf[b]], t.set.length[t.kindOf[a]])
	})
	for _, piece := range homeless {
		if !t.place(t.kindOf[piece], further) {
			return false
		}
	}
	return true
}

// mend plans the piece that was spoiled last once more.
func (t *trial) mend() bool { return t.place(t.again, true) }

// place plans one more piece on the rest it fills best, or on a further roll if
// it may.
func (t *trial) place(j int, further bool) bool {
	for first := 0; ; first = len(t.rolls) - 1 {
		best, least := -1, faraway
		for r := first; r < len(t.rolls); r++ {
			s := &t.rolls[r]
			if rest := s.end - t.set.after(s.upTo, j); rest >= 0 && rest < least {
				best, least = r, rest
			}
		}
		if best >= 0 {
			s := &t.rolls[best]
			s.seq, s.upTo = append(s.seq, int16(j)), t.set.after(s.upTo, j)
			return true
		}
		if !further || !t.open() {
			return false
		}
	}
}
