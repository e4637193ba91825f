package tell

import (
	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
)

// Leftover is the longest length that stays free on a roll.
type Leftover struct {
	Roll   Roll
	Length measure.Length // at the worst start
	// Patches says that every piece of the job can be cut from it once more,
	// each by itself: it is long enough from where the piece's phase comes next.
	Patches bool
	// Bound is a length that no plan with as few rolls exceeds; 0 when no such
	// bound was sought.
	Bound measure.Length
}

// LongestLeftover returns the longest left-over of one paper; false when no roll
// is cut. Of several as long the first one counts that patches.
func LongestLeftover(p *plan.Plan, at int) (best Leftover, ok bool) {
	for _, r := range Rolls(p, at) {
		longer := r.Left > best.Length || !ok
		if !longer && (r.Left < best.Length || best.Patches) {
			continue
		}
		patches := r.Patches(p, at)
		if longer || patches {
			best, ok = Leftover{Roll: r, Length: r.Left, Patches: patches}, true
		}
	}
	if pp := &p.Papers[at]; len(pp.Batches) == 1 {
		for _, g := range pp.Batches[0].Cutting.Goals {
			if g.Goal == cutting.LongestLeftover {
				best.Bound = measure.Length(g.Bound)
			}
		}
	}
	return best, ok
}

// Patches reports whether what is left of the roll gives any piece of the job.
func (r *Roll) Patches(p *plan.Plan, at int) bool {
	for i := range p.Runs {
		if p.Task.Runs[i].Paper != at {
			continue
		}
		for k := range p.Runs[i].Layout.Pieces {
			if !r.PatchesOne(&p.Runs[i].Layout.Pieces[k]) {
				return false
			}
		}
	}
	return true
}

// PatchesOne reports whether what is left of the roll gives one piece once more.
func (r *Roll) PatchesOne(q *hanging.Piece) bool {
	for _, o := range r.Orders {
		if r.wait(o, q.Phase)+q.Length > r.Left {
			return false
		}
	}
	return true
}

// wait is how much of the left-over runs by until a phase comes: the last cut
// ended at a known place in the design, wherever the roll began.
func (r *Roll) wait(o cutting.Order, phase measure.Length) measure.Length {
	spec := r.batch.Cutting.Problem.Spec()
	from, start := o.Cuts[len(o.Cuts)-1].To, o.At
	if len(r.Flaws)+len(r.Parts) > 0 {
		from = max(from, r.end()-r.Left)
	}
	if len(r.Parts) > 0 {
		start = r.partStart(spec, from)
	}
	return (phase - start - from - spec.Loss).Mod(spec.Repeat) + spec.Loss
}

// end is where the last stretch of the roll that can be used ends.
func (r *Roll) end() measure.Length {
	end := r.Length
	for moved := true; moved; {
		moved = false
		for _, f := range r.Flaws {
			if f.From < end && end <= f.To {
				end, moved = f.From, true
			}
		}
	}
	return end
}

// partStart is the design phase with which the part begins that a place lies in,
// less the place where it begins.
func (r *Roll) partStart(spec cutting.Spec, at measure.Length) measure.Length {
	base := measure.Length(0)
	for _, part := range spec.Stock[r.stock].Parts {
		if at < base+part.Length {
			return part.Start.Phase - base
		}
		base += part.Length
	}
	return 0
}
