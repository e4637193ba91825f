package plan

import (
	"firstdrop/finding"
	"firstdrop/measure"
)

// Rule is what one finding weighs: one line of the table that people read with the
// program's help and change in a job. What it asks of a layout, and where that is
// from, is said by the program's catalogues, as asks. and from. with its code.
type Rule struct {
	Code finding.Code
	// Key is the weight's name under weights in a job; "" when the finding weighs
	// nothing: no layout of the same walls could be without it, or it is good news.
	Key    string
	weight func(*Weights) *int64
}

// Weight returns what the rule weighs by the given weights, in thousandths of a
// roll; 0 for a rule without a weight.
func (r *Rule) Weight(w *Weights) int64 {
	if r.weight == nil {
		return 0
	}
	return *r.weight(w)
}

// Rules lists what a layout is judged by, the dearest first within each kind of
// place: strips, seams, corners, the kill seam, walls, pieces. Their sources stand in
// cmd/firstdrop/catalogue.
var Rules = []Rule{
	{Sliver, "sliver", func(w *Weights) *int64 { return &w.Sliver }},
	{SliverBeside, "sliver_beside", func(w *Weights) *int64 { return &w.SliverBeside }},
	{HeaderOverrun, "overrun", func(w *Weights) *int64 { return &w.Overrun }},
	{SeamNearEdge, "seam_near", func(w *Weights) *int64 { return &w.SeamNear }},
	{SeamNearFold, "seam_near", func(w *Weights) *int64 { return &w.SeamNear }},
	{FocalSeam, "focal_seam", func(w *Weights) *int64 { return &w.FocalSeam }},
	{LiningSeam, "lining_seam", func(w *Weights) *int64 { return &w.LiningSeam }},
	{SeamOnFitting, "seam_fitting", func(w *Weights) *int64 { return &w.SeamFitting }},
	{EndInFold, "end_in_fold", func(w *Weights) *int64 { return &w.EndInFold }},
	{RenewedMiss, "renew_metre", func(w *Weights) *int64 { return &w.RenewMetre }},
	{Wedge, "wedge", func(w *Weights) *int64 { return &w.Wedge }},
	{CornerLoss, "", nil},
	{LapShadow, "lap_shadow", func(w *Weights) *int64 { return &w.LapShadow }},
	{KillMisfit, "kill_metre", func(w *Weights) *int64 { return &w.KillMetre }},
	{KillMeets, "", nil},
	{OffCentre, "off_centre", func(w *Weights) *int64 { return &w.OffCentre }},
	{UnequalEnds, "unequal_ends", func(w *Weights) *int64 { return &w.UnequalEnds }},
	{Drift, "drift", func(w *Weights) *int64 { return &w.Drift }},
	{OffPlumb, "off_plumb", func(w *Weights) *int64 { return &w.OffPlumb }},
	{OffCasing, "off_casing", func(w *Weights) *int64 { return &w.OffCasing }},
	{CornerStep, "corner_step", func(w *Weights) *int64 { return &w.CornerStep }},
	{MixedWays, "mixed_ways", func(w *Weights) *int64 { return &w.MixedWays }},
	{MotifCut, "motif_cut", func(w *Weights) *int64 { return &w.MotifCut }},
	{MotifCutLow, "motif_cut_low", func(w *Weights) *int64 { return &w.MotifCutLow }},
	{Awkward, "awkward", func(w *Weights) *int64 { return &w.Awkward }},
}

// The figures of rules that no job changes.
const (
	// fullMiss is the misfit that counts in full: anybody sees 20 mm (common
	// practice; repeats out by 1/4 in are where published acceptance begins).
	fullMiss = 20 * measure.Millimetre
	// liningClear is how far a seam should stand from one of the lining (common
	// practice; the published advice moves it by half a width).
	liningClear = 25 * measure.Millimetre
)
