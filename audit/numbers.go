package audit

import (
	"cmp"
	"slices"
	"strings"
)

// judgeNumbers: the drops that need paper are numbered 1 to n. The first is
// drop 0, or one from which no other drop with paper stands between it and
// drop 0; each next is the neighbour of one that hangs.
func (h *hung) judgeNumbers() {
	papered := make([]bool, len(h.l.Drops))
	for i := range h.l.Pieces {
		papered[h.l.Pieces[i].Drop] = true
	}
	var order []int // drops with paper, from the left
	zero := 0       // how many of them stand to the left of drop 0
	for i := range h.l.Drops {
		number, at := h.l.Drops[i].Number, Place{Drop: i + 1}
		if !papered[i] {
			h.same(Numbering, at, "number of a drop without paper", 0, number)
			continue
		}
		if h.l.Drops[i].Index < 0 {
			zero++
		}
		order = append(order, i)
		if number < 1 {
			h.note(Numbering, at, "number", "1 or more", number)
		}
	}
	h.judgeHangingOrder(order, zero)
	h.judgeNames()
}

func (h *hung) judgeHangingOrder(order []int, zero int) {
	hangs := make([]int, len(order)) // positions in order, by number
	for i := range hangs {
		hangs[i] = i
	}
	slices.SortStableFunc(hangs, func(a, b int) int {
		return cmp.Compare(h.l.Drops[order[a]].Number, h.l.Drops[order[b]].Number)
	})
	lo, hi := 0, 0 // the stretch that hangs
	for n, k := range hangs {
		d := &h.l.Drops[order[k]]
		at := Place{Drop: order[k] + 1}
		h.same(Numbering, at, "number", n+1, d.Number)
		if n == 0 {
			lo, hi = k, k
			near := k == zero || k == zero-1 && (zero == len(order) || h.l.Drops[order[zero]].Index != 0)
			if !near {
				h.note(Numbering, at, "first drop to hang", "drop 0 or the next with paper", "index "+figure(d.Index))
			}
			continue
		}
		if k != lo-1 && k != hi+1 {
			h.note(Numbering, at, "drop number "+figure(n+1), "beside one that hangs", "apart")
		}
		lo, hi = min(lo, k), max(hi, k)
	}
}

// judgeNames: pieces stand in hanging order, those of a drop from its head
// down and returns last, and are called by the drop's number, with letters
// from a on where it has several.
func (h *hung) judgeNames() {
	count := make([]int, len(h.l.Drops))
	for i := range h.l.Pieces {
		count[h.l.Pieces[i].Drop]++
	}
	letter := 0
	for i := range h.l.Pieces {
		p, at := &h.l.Pieces[i], Place{Piece: i + 1, Drop: h.l.Pieces[i].Drop + 1}
		letter++
		if i == 0 || h.l.Pieces[i-1].Drop != p.Drop {
			letter = 1
		}
		if i > 0 {
			q := &h.l.Pieces[i-1]
			a, b := h.l.Drops[q.Drop].Number, h.l.Drops[p.Drop].Number
			switch {
			case b < a:
				h.note(Naming, at, "place in the list", "in hanging order", "after drop number "+figure(a))
			case q.Drop == p.Drop && q.Return != nil && p.Return == nil:
				h.note(Naming, at, "place in the list", "before the returns", "after one")
			case q.Drop == p.Drop && q.Return == nil && p.Return == nil && p.Y.Hi > q.Y.Hi:
				h.note(Naming, at, "place in the list", "from the head down", "after a lower one")
			}
		}
		want := figure(h.l.Drops[p.Drop].Number)
		if count[p.Drop] > 1 {
			want += letters(letter)
		}
		h.same(Naming, at, "name", want, p.Name)
	}
}

// letters returns a … z, aa, ab …: n in the letters, from 1.
func letters(n int) string {
	var b strings.Builder
	if n > 26 {
		b.WriteString(letters((n - 1) / 26))
	}
	b.WriteByte(byte('a' + (n-1)%26))
	return b.String()
}
