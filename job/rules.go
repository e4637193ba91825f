package job

import (
	"strings"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
)

// rules sets the rules of the task: the default measures of the craft, and what
// the job says instead. Who measures in inches searches in sixteenths.
func (b *builder) rules() {
	r, t := &b.job.Rules, &b.task
	system := b.job.Units.System()
	t.Rules, t.Taste = hanging.RulesIn(system), plan.TasteIn(system)
	if system == measure.Imperial {
		t.Step = measure.Sixteenth
	}
	if a := r.Allowance; a != nil {
		b.shortLength("rules.allowance.head", &a.Head, &t.Rules.Head)
		b.shortLength("rules.allowance.foot", &a.Foot, &t.Rules.Foot)
	}
	b.shortLength("rules.wrap", r.Wrap, &t.Rules.Wrap)
	b.shortLength("rules.wrap_limit", r.WrapLimit, &t.Rules.WrapLimit)
	b.shortLength("rules.outside_wrap", r.OutsideWrap, &t.Rules.OutsideWrap)
	b.shortLength("rules.plumb_tolerance", r.PlumbTolerance, &t.Rules.PlumbTolerance)
	b.shortLength("rules.start_overlap", r.StartOverlap, &t.Rules.Overlap)
	b.shortLength("rules.cut_step", r.CutStep, &t.Rules.CutStep)
	b.shortLength("rules.min_sliver", r.MinSliver, &t.Taste.MinSliver)
	b.shortLength("rules.seam_clearance", r.SeamClearance, &t.Taste.SeamClearance)
	b.shortLength("rules.overrun", r.Overrun, &t.Taste.Overrun)
	b.lengthTo(mostHeight, "rules.long_piece", r.LongPiece, &t.Taste.LongPiece)
	b.lengthTo(mostHeight, "rules.eye_level", r.EyeLevel, &t.Taste.EyeLevel)
	if t.Rules.CutStep <= 0 {
		b.refuse("rules.cut_step", "cut_step_none")
	}
	b.weights()
}

// weights takes the weights of findings over from the document.
func (b *builder) weights() {
	w, v := &b.job.Weights, &b.task.Taste.Weights
	b.weight("roll", w.Roll, &v.Roll)
	b.weight("sliver", w.Sliver, &v.Sliver)
	b.weight("seam_near", w.SeamNear, &v.SeamNear)
	b.weight("focal_seam", w.FocalSeam, &v.FocalSeam)
	b.weight("kill_metre", w.KillMetre, &v.KillMetre)
	b.weight("motif_cut", w.MotifCut, &v.MotifCut)
	b.weight("end_in_fold", w.EndInFold, &v.EndInFold)
	b.weight("drop", w.Drop, &v.Drop)
	b.weight("piece", w.Piece, &v.Piece)
	b.weight("wedge", w.Wedge, &v.Wedge)
	b.weight("batch_change", w.BatchChange, &v.BatchChange)
	b.weight("drift", w.Drift, &v.Drift)
	b.weight("off_plumb", w.OffPlumb, &v.OffPlumb)
	b.weight("off_casing", w.OffCasing, &v.OffCasing)
	b.weight("corner_step", w.CornerStep, &v.CornerStep)
	b.weight("mixed_ways", w.MixedWays, &v.MixedWays)
	b.weight("sliver_beside", w.SliverBeside, &v.SliverBeside)
	b.weight("overrun", w.Overrun, &v.Overrun)
	b.weight("renew_metre", w.RenewMetre, &v.RenewMetre)
	b.weight("off_centre", w.OffCentre, &v.OffCentre)
	b.weight("unequal_ends", w.UnequalEnds, &v.UnequalEnds)
	b.weight("motif_cut_low", w.MotifCutLow, &v.MotifCutLow)
	b.weight("lap_shadow", w.LapShadow, &v.LapShadow)
	b.weight("lining_seam", w.LiningSeam, &v.LiningSeam)
	b.weight("seam_fitting", w.SeamFitting, &v.SeamFitting)
	b.weight("awkward", w.Awkward, &v.Awkward)
}

// mostRule is more than any measure of the craft; mostHeight more than any of
// what is set by a person's height and reach.
const (
	mostRule   = measure.Metre
	mostHeight = 20 * measure.Metre
)

// shortLength takes a measure of the craft over from the document.
func (b *builder) shortLength(path string, stated, rule *measure.Length) {
	b.lengthTo(mostRule, path, stated, rule)
}

// lengthTo takes a length from 0 to most over from the document.
func (b *builder) lengthTo(most measure.Length, path string, stated, rule *measure.Length) {
	if stated == nil {
		return
	}
	if *stated < 0 || *stated > most {
		_, name, _ := strings.Cut(path, ".")
		b.refuse(path, "length_between", "key", name, "value", *stated, "most", most)
		return
	}
	*rule = *stated
}

// mostWeight keeps sums of weights far from overflow.
const mostWeight = 1_000_000

func (b *builder) weight(key string, stated, weight *int64) {
	if stated == nil {
		return
	}
	if *stated < 0 || *stated > mostWeight {
		b.refuse("weights."+key, "number_between", "key", key, "n", *stated, "most", mostWeight)
		return
	}
	*weight = *stated
}
