package order

import (
	"cmp"
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/message"
)

// Rolls to be bought.
//
// They are counted in one order, so that a number says which rolls there are:
// those of the plan, the longest first, in whole packs, and then one pack after
// the other of the size of which more would be bought:
//
//	plan                              | spare
//	15 m  15 m  15 m  10 m  10 m      | 10 m  10 m …
//	                        ^ one less  ^ one more
//
// Spare is what costs least of that from which every piece can be cut whatever a
// roll begins with: one roll, or one pack. If none is such, the longest.
// So one less is the plan without its shortest roll: the one that would be missed
// least. Goods that must be cut in hanging order come in that order instead, and
// one less is the plan without the roll cut last.
type wares struct {
	sizes []offered // that can be bought
	order []int     // size of each roll of the plan, in whole packs
	spare int       // size of which more are bought; -1 if there are no more
	most  int       // rolls that can be bought, or are worth counting
}

// Size is a size of roll on sale.
type Size struct {
	Stock  int            // index in the stock of the plan's question; 0 if it names none
	Length measure.Length // on the label
	Pack   int            // rolls sold together
	Rolls  int            // that the plan buys, in whole packs
}

// offered is a size with what else is known of it.
type offered struct {
	Size
	start cutting.Start
	price int64 // of a pack
	count int   // there are; 0 if any number
}

// offer fills in what the plan's rolls take of the sizes on sale, and of which
// more would be bought; enough is beyond how many rolls none is worth counting.
func (w *wares) offer(spec *cutting.Spec, rolls []cutting.RollPlan, enough int) error {
	sizeOf := make([]int, len(spec.Stock))
	for k := range spec.Stock {
		s := &spec.Stock[k]
		if s.InHand {
			continue
		}
		sizeOf[k] = len(w.sizes)
		w.sizes = append(w.sizes, offered{Size{k, s.Length, max(s.Pack, 1), 0}, s.Start, s.Price, s.Count})
		if len(s.Flaws)+len(s.Parts) > 0 {
			w.sizes[sizeOf[k]].Length = 0
		}
	}
	for _, r := range rolls {
		if !spec.Stock[r.Stock].InHand {
			w.order = append(w.order, sizeOf[r.Stock])
			w.sizes[sizeOf[r.Stock]].Rolls++
		}
	}
	for _, k := range w.order {
		if w.sizes[k].Length == 0 {
			return message.New("sure_flaws", "the plan buys rolls with known flaws or parts, which cannot be simulated").
				Because(&ChanceError{"plan", "buys rolls with known flaws or parts"})
		}
	}
	w.fillPacks()
	if !spec.InOrder {
		slices.SortStableFunc(w.order, func(a, b int) int { return w.longerFirst(a, b) })
	}
	w.chooseSpare(spec, enough)
	return nil
}

// longerFirst orders sizes by length, the longest first.
func (w *wares) longerFirst(a, b int) int {
	return cmp.Or(cmp.Compare(w.sizes[b].Length, w.sizes[a].Length), cmp.Compare(a, b))
}

// fillPacks adds the rolls that come with those of the plan.
func (w *wares) fillPacks() {
	for k := range w.sizes {
		s := &w.sizes[k]
		whole := (s.Rolls + s.Pack - 1) / s.Pack * s.Pack
		if s.count > 0 {
			whole = min(whole, s.count)
		}
		for ; s.Rolls < whole; s.Rolls++ {
			w.order = append(w.order, k)
		}
	}
}

// chooseSpare chooses the size of which more would be bought.
func (w *wares) chooseSpare(spec *cutting.Spec, enough int) {
	w.spare, w.most = -1, min(enough, len(w.order))
	for k := range w.sizes {
		if s := &w.sizes[k]; s.Length > 0 && (s.count == 0 || s.count > s.Rolls) && (w.spare < 0 || w.sparer(spec, k)) {
			w.spare = k
		}
	}
	if w.spare < 0 {
		return
	}
	w.most = enough
	if s := &w.sizes[w.spare]; s.count > 0 {
		w.most = min(enough, len(w.order)+s.count-s.Rolls)
	}
}

// sparer reports whether size k is to be preferred to the one chosen so far.
func (w *wares) sparer(spec *cutting.Spec, k int) bool {
	a, b := &w.sizes[k], &w.sizes[w.spare]
	one, other := a.serves(spec), b.serves(spec)
	switch {
	case one != other:
		return one
	case !one:
		return a.Length > b.Length
	}
	return a.price < b.price
}

// serves reports whether every piece can be cut from a roll of the size whatever
// it begins with.
func (s *offered) serves(spec *cutting.Spec) bool {
	room := s.Length - spec.Lead
	if spec.Repeat > 0 {
		room -= spec.Repeat - 1
	}
	return !slices.ContainsFunc(spec.Pieces, func(p cutting.Piece) bool { return p.Length > room })
}

// sizeOf returns the size of the roll bought after so many others.
func (w *wares) sizeOf(r int) *offered {
	if r < len(w.order) {
		return &w.sizes[w.order[r]]
	}
	return &w.sizes[w.spare]
}

// longestOnSale is the length of the longest size.
func (w *wares) longestOnSale() (longest measure.Length) {
	for k := range w.sizes {
		longest = max(longest, w.sizes[k].Length)
	}
	return longest
}

// bought lists the sizes that the plan buys, the longest first.
func (w *wares) bought() (all []Size) {
	for _, s := range w.sizes {
		if s.Rolls > 0 {
			all = append(all, s.Size)
		}
	}
	slices.SortStableFunc(all, func(a, b Size) int { return cmp.Compare(b.Length, a.Length) })
	return all
}

// counts lists the numbers of rolls that can be had up to most, whole packs of
// them, from none on. Those of goods in hanging order, which come as they are cut,
// are counted one by one up to the plan's if they are of several sizes.
func (w *wares) counts(inOrder bool) []int {
	all := []int{0}
	single := inOrder && len(w.bought()) > 1
	for n := 0; n < w.most; {
		n = min(w.afterPack(n, single), w.most)
		all = append(all, n)
	}
	return all
}

// afterPack is how many rolls there are with the pack that begins with roll n, or
// with that roll of the plan alone.
func (w *wares) afterPack(n int, single bool) int {
	size, end := w.sizeOf(n), n+1
	for end < n+size.Pack && !(n < len(w.order) && (single || end == len(w.order) || w.sizeOf(end) != size)) {
		end++
	}
	return end
}
