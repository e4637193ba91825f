package audit

import (
	"cmp"
	"slices"

	"firstdrop/cutting"
)

// A roll is judged by its tracts: the stretches of it on which a cut may lie.
//
//	 lead        flaw          joint, and the lead of the second part
//	|~~|---------|xx|----------|~~|------------|
//	    tract 1      tract 2       tract 3
//
// On a tract the design's phase at x is x + shift: within a part of a roll the
// design runs on, flaw or not; each part begins with a phase of its own. Where
// the start is not known the roll is one tract, and its shift is tried.

// tract is a stretch of a roll that is unbroken, and clear of what is not used
// at the beginning.
type tract struct{ lo, hi, shift int64 }

// ware is a kind of roll.
type ware struct {
	length int64 // of all of it
	known  bool  // there is one start to plan for, or none that matters
	start  int64 // phase at the beginning, if known
	tracts []tract
	count  int // how many there are; 0 for as many as wanted
	inHand bool
	price  int64 // of a pack
	pack   int   // rolls sold together, from 1
}

// wares lists the kinds of roll that a cutting problem has.
func wares(spec *cutting.Spec) []ware {
	if len(spec.Stock) == 0 {
		return []ware{newWare(spec, &cutting.Stock{Roll: spec.Roll})}
	}
	all := make([]ware, len(spec.Stock))
	for i := range all {
		all[i] = newWare(spec, &spec.Stock[i])
	}
	return all
}

func newWare(spec *cutting.Spec, s *cutting.Stock) ware {
	w := ware{count: s.Count, inHand: s.InHand, price: s.Price, pack: max(s.Pack, 1)}
	parts := s.Parts
	if len(parts) == 0 {
		parts = []cutting.Roll{s.Roll}
	}
	w.known = spec.Repeat == 0 || parts[0].Start.Known
	if w.known {
		w.start = mod(int64(parts[0].Start.Phase), int64(spec.Repeat))
	}
	for _, p := range parts {
		end := w.length + int64(p.Length)
		t := tract{w.length + int64(spec.Lead), end, 0}
		if spec.Repeat > 0 && p.Start.Known {
			t.shift = int64(p.Start.Phase) - w.length
		}
		w.tracts = append(w.tracts, t)
		w.length = end
	}
	for _, f := range s.Flaws {
		w.cutOut(int64(f.From), int64(f.To))
	}
	return w
}

// cutOut takes a flaw off all tracts.
func (w *ware) cutOut(from, to int64) {
	var left []tract
	for _, t := range w.tracts {
		if from < t.hi && to > t.lo {
			left = append(left, tract{t.lo, min(t.hi, from), t.shift}, tract{max(t.lo, to), t.hi, t.shift})
			continue
		}
		left = append(left, t)
	}
	w.tracts = slices.DeleteFunc(left, func(t tract) bool { return t.lo >= t.hi })
	slices.SortStableFunc(w.tracts, func(a, b tract) int { return cmp.Compare(a.lo, b.lo) })
}

// whole reports whether the roll is in one piece, without a flaw.
func (w *ware) whole() bool { return len(w.tracts) == 1 && w.tracts[0].hi == w.length }

// from returns the tracts of a roll that begins at a phase; the phase does not
// matter where the start is known.
func (w *ware) from(start int64) []tract {
	if w.known || len(w.tracts) == 0 {
		return w.tracts
	}
	t := w.tracts[0]
	t.shift = start
	return []tract{t}
}

// on returns the tract on which a cut lies; nil if it lies on none.
func (w *ware) on(start int64, c span) *tract {
	all := w.from(start)
	for i := range all {
		if all[i].lo <= c.lo && c.hi <= all[i].hi {
			return &all[i]
		}
	}
	return nil
}

// after returns where the cutting of a piece ends that is begun at x or as soon
// behind it as its phase comes and it fits: behind what is lost at the cut,
// which need not be on the roll. It is false when there is no room for it.
func (r *rolls) after(tracts []tract, x int64, k *kind) (end int64, ok bool) {
	for i := range tracts {
		t := &tracts[i]
		end = max(x, t.lo)
		end += mod(k.phase-end-t.shift, r.repeat) + k.length
		if end-r.loss <= t.hi {
			return end, true
		}
	}
	return 0, false
}
