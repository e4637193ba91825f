package plan

import (
	"firstdrop/finding"
	"firstdrop/measure"
)

// Rule is what one finding asks of a layout, and what it weighs: one line of
// the table that people read with the program's help and change in a job.
type Rule struct {
	Code finding.Code
	// Asks is the rule as a demand: "no seam within 50 mm of an outside corner".
	Asks string
	// Key is the weight's name under weights in a job; "" when the finding weighs
	// nothing: no layout of the same walls could be without it, or it is good news.
	Key string
	// Of says what the weight is for: "on the edge; a third just below the limit".
	Of string
	// Source is where the rule comes from.
	Source string
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

// Where several rules come from. The trade's associations and practitioners
// publish them; where no text with a figure was found they say so.
const (
	association = "Wallcoverings Association, on engineering a room"
	hangers     = "published advice of practising paperhangers"
	common      = "common practice"
)

// Rules lists what a layout is judged by, the dearest first within each kind of
// place: strips, seams, corners, the kill seam, walls, pieces.
var Rules = []Rule{
	{
		Sliver, "no strip narrower than min_sliver at a corner or an end", "sliver", "at no width; a third at the limit", association + ": no last strip that is a sliver; the figure is " + common,
		func(w *Weights) *int64 { return &w.Sliver },
	},
	{
		SliverBeside, "no strip narrower than min_sliver between a seam and an opening", "sliver_beside", "at no width; a third at the limit", association + "; the figure is " + common,
		func(w *Weights) *int64 { return &w.SliverBeside },
	},
	{
		HeaderOverrun, "no drop over an opening that runs past its edge by less than overrun, and so is cut as a full drop", "overrun", "each", hangers + " (cases of 4 and 5 in)",
		func(w *Weights) *int64 { return &w.Overrun },
	},
	{
		SeamNearEdge, "no seam within seam_clearance of an opening's edge", "seam_near", "on the edge; a third at the limit", association + ": 2 in",
		func(w *Weights) *int64 { return &w.SeamNear },
	},
	{
		SeamNearFold, "no seam within seam_clearance of an outside corner", "seam_near", "on the edge; a third at the limit", association + ": 2 in; decorators' advice: 50 mm",
		func(w *Weights) *int64 { return &w.SeamNear },
	},
	{
		FocalSeam, "no seam down the middle of a focal wall", "focal_seam", "each", common,
		func(w *Weights) *int64 { return &w.FocalSeam },
	},
	{
		LiningSeam, "no seam over a seam of the lining paper, and none of a lining under one", "lining_seam", "on the seam; a third at 25 mm", "published advice on lining: begin with half a width where seams would coincide; the figure is " + common,
		func(w *Weights) *int64 { return &w.LiningSeam },
	},
	{
		SeamOnFitting, "no seam across a socket, switch, light, bracket or vent", "seam_fitting", "each", common,
		func(w *Weights) *int64 { return &w.SeamFitting },
	},
	{
		EndInFold, "no drop that ends exactly in an inside corner, with nothing to turn it", "end_in_fold", "each", common,
		func(w *Weights) *int64 { return &w.EndInFold },
	},
	{
		RenewedMiss, "no new drop in a corner where the design then misses", "renew_metre", "a metre in plain sight that misses by 20 mm or more", hangers + ": match in the corners",
		func(w *Weights) *int64 { return &w.RenewMetre },
	},
	{
		Wedge, "no wedge in a leaning corner", "wedge", "a millimetre between the least and the most it misses", hangers + ": hide wedges in corners",
		func(w *Weights) *int64 { return &w.Wedge },
	},
	{
		CornerLoss, "what a wrap takes of the design in a corner is said", "", "", hangers + ": a wrap of 1/16 to 1 in", nil,
	},
	{
		LapShadow, "no lap in a corner that turns its edge away from the nearest window", "lap_shadow", "each", "older handbooks: work away from the daylight",
		func(w *Weights) *int64 { return &w.LapShadow },
	},
	{
		KillMisfit, "the kill seam is short, misses little, and stands where it is seen least", "kill_metre", "a metre in plain sight, below eye level, that misses by 20 mm or more", association + ": choose the mismatch first, on a short length",
		func(w *Weights) *int64 { return &w.KillMetre },
	},
	{
		KillMeets, "a room that closes by itself is said", "", "", common, nil,
	},
	{
		OffCentre, "the leading motif, or the middle between two, stands on the centre of a focal wall or on the stated line", "off_centre", "at the most it can be off, a quarter of a width", hangers + ": centre the motif, not the sheet",
		func(w *Weights) *int64 { return &w.OffCentre },
	},
	{
		UnequalEnds, "the two end strips of a focal wall are equally wide", "unequal_ends", "for a difference of one width", hangers + ": seam or strip in the centre, whichever gives balanced, wide ends",
		func(w *Weights) *int64 { return &w.UnequalEnds },
	},
	{
		Drift, "rows of the design keep to the ceiling, where the label says level lines", "drift", "a millimetre over the wall; an eighth for other lines, nothing where none are stated", hangers + ": geometrics parallel to the ceiling, even if not plumb; NHBC Standards 2020, 9.1.3: 3 mm per metre is to be expected",
		func(w *Weights) *int64 { return &w.Drift },
	},
	{
		OffPlumb, "edges hang plumb", "off_plumb", "a millimetre over the wall's height; a quarter of it where the label says lines, an eighth for loose designs, nothing where none are stated", "Wallcoverings Association: every wall gets its own plumb line; the figure is " + common,
		func(w *Weights) *int64 { return &w.OffPlumb },
	},
	{
		OffCasing, "edges keep to the casings beside them, where the label says upright lines", "off_casing", "a millimetre over the wall's height; a quarter for level lines, an eighth for loose ones, nothing where none are stated", hangers + ": for stripes, parallel to the nearest casing matters more than plumb",
		func(w *Weights) *int64 { return &w.OffCasing },
	},
	{
		CornerStep, "the design does not step up or down in a corner", "corner_step", "a millimetre", hangers + ": match in the corners, let ceiling and floor drift",
		func(w *Weights) *int64 { return &w.CornerStep },
	},
	{
		MixedWays, "walls that are seen together are set in one way", "mixed_ways", "each inside corner", hangers + ": one way within one sight line",
		func(w *Weights) *int64 { return &w.MixedWays },
	},
	{
		MotifCut, "no leading motif cut by the ceiling", "motif_cut", "each drop", association + ": do not cut a motif in half at the ceiling line",
		func(w *Weights) *int64 { return &w.MotifCut },
	},
	{
		MotifCutLow, "no leading motif cut by a rail, a sill or an opening's head", "motif_cut_low", "each", association + ": nor at chair rail, door and window heads",
		func(w *Weights) *int64 { return &w.MotifCutLow },
	},
	{
		Awkward, "no piece longer than long_piece, none with openings cut out of both its sides", "awkward", "each", common,
		func(w *Weights) *int64 { return &w.Awkward },
	},
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
