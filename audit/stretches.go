package audit

// In how few stretches can pieces be hung? Each stretch is taken from one roll
// in one go. One that reaches farther is never worse, whatever comes first and
// whichever rolls are there; so the fewest are those of which each reaches as far
// as any roll could give it, cut in any order:
//
//	pieces   0 1 2 3 | 4 5 | 6 7 8 | 9        4 stretches at least
//	fits     a long roll  any  a long one
//
// Sets too large to try all their orders are taken to fit, which makes
// stretches longer and the bound lower, never too high.

// fewestStretches is a number of stretches that no plan undercuts; of goods in
// hanging order the pieces come in that order.
func (r *rolls) fewestStretches() (n int64) {
	var shelf []*onRoll
	for k := range r.wares {
		shelf = append(shelf, &onRoll{r: r, w: &r.wares[k]})
	}
	for i := 0; i < len(r.spec.Pieces); n++ {
		far := i + 1
		for k, o := range shelf {
			if r.spec.InOrder {
				far = max(far, r.reach(&r.wares[k], i))
			} else {
				far = max(far, o.reach(i))
			}
		}
		i = far
	}
	return n
}

// onRoll holds a set of pieces against a kind of roll.
type onRoll struct {
	r     *rolls
	w     *ware
	kinds []kind
	end   []int64 // earliest end of each smaller set
}

// reach is the piece behind the last of those from one on that the roll holds,
// whatever it begins with, in some order.
func (o *onRoll) reach(piece int) int {
	o.kinds = o.kinds[:0]
	for ; piece < len(o.r.spec.Pieces); piece++ {
		o.put(kind{length: o.r.size(piece) + o.r.loss, phase: o.r.phase(piece), count: 1})
		if !o.fits() {
			break
		}
	}
	return piece
}

func (o *onRoll) put(k kind) {
	for i := range o.kinds {
		if o.kinds[i].length == k.length && o.kinds[i].phase == k.phase {
			o.kinds[i].count++
			return
		}
	}
	o.kinds = append(o.kinds, k)
}

// fits reports whether the set fits from every start: of unknown ones, those
// just past a phase of the set.
func (o *onRoll) fits() bool {
	if o.w.known {
		return o.fitsOn(o.w.from(0))
	}
	for _, k := range o.kinds {
		if !o.fitsOn(o.w.from(mod(k.phase+1-o.r.lead, o.r.repeat))) {
			return false
		}
	}
	return true
}

// fitsOn reports whether some order of the set fits the tracts.
func (o *onRoll) fitsOn(tracts []tract) bool {
	sets := 1
	for _, k := range o.kinds {
		if sets *= k.count + 1; sets > 1<<14 {
			return true // too many orders to try
		}
	}
	o.end = append(o.end[:0], 0)
	for at := 1; at < sets; at++ {
		earliest, stride := most, 1
		for i := range o.kinds {
			k := &o.kinds[i]
			if at/stride%(k.count+1) > 0 {
				if x := o.end[at-stride]; x < most {
					if end, ok := o.r.after(tracts, x, k); ok {
						earliest = min(earliest, end)
					}
				}
			}
			stride *= k.count + 1
		}
		o.end = append(o.end, earliest)
	}
	return o.end[sets-1] < most
}
