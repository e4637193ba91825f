package paper

import (
	"firstdrop/finding"
	"firstdrop/measure"
)

// What a label may say though it is seldom meant. The limits are common
// practice: beyond them, ask.
const (
	WidthUnusual    finding.Code = "width_unusual"     // narrower than 100 mm or wider than 2 m: another unit meant? Size "width".
	RollUnusual     finding.Code = "roll_unusual"      // shorter than 1 m or longer than 150 m. Size "roll".
	RepeatUnusual   finding.Code = "repeat_unusual"    // shorter than 10 mm or longer than 3 m. Size "repeat".
	ManyAlternates  finding.Code = "many_alternates"   // the first drop comes back only after more than 8. Count.
	DryWidthUnusual finding.Code = "dry_width_unusual" // differs from the width as hung by more than a twentieth. Size "dry_width", "width".
	LabelDiffers    finding.Code = "label_differs"     // the design was measured, and is not what the label says. Size "repeat", "lower", "label_repeat", "label_lower": lower stands the motif in the next drop; 0 without a repeat.
	AcrossUneven    finding.Code = "across_uneven"     // the width is no whole number of horizontal repeats: drops differ. Size "across", "width".
	SoakUnexpected  finding.Code = "soak_unexpected"   // a soaking time, though no paste goes on the paper. Count: minutes.
	OutsideEN233    finding.Code = "outside_en233"     // a size that EN 233 has no category for. Size "width", "roll".
)

// What is worth a second look at rolls that are there. Word is the roll's name.
const (
	RollLonger    finding.Code = "roll_longer"     // longer than any size on sale may be. Size "length", "roll".
	RollShorter   finding.Code = "roll_shorter"    // shorter than any size on sale may be: a left-over, or worth a complaint. Size "length", "shortest".
	OtherBatch    finding.Code = "other_batch"     // rolls that are there are of another batch than the label's. Count of rolls; Word is their batch.
	RollNoRepeat  finding.Code = "roll_no_repeat"  // no whole repeat comes out of the roll. Size "length", "repeat".
	ManyRollParts finding.Code = "many_roll_parts" // more than the three lengths that mills put up. Count.
)

// Findings returns what is possible but worth a second look, in the order of the
// label. It expects a label that [Paper.Check] has passed.
func (p *Paper) Findings() []finding.Finding {
	var fs []finding.Finding
	ask := func(when bool, f finding.Finding) {
		if when {
			f.Place.Paper = p.Name
			fs = append(fs, f)
		}
	}
	width := finding.Size{Name: "width", Value: p.Width}
	roll := finding.Size{Name: "roll", Value: p.RollLength}
	across := finding.Size{Name: "across", Value: p.Across}
	dry := finding.Size{Name: "dry_width", Value: p.DryWidth}
	ask(outside(p.Width, 100*measure.Millimetre, 2*measure.Metre),
		finding.Finding{Code: WidthUnusual, Severity: finding.Caution, Sizes: []finding.Size{width}})
	ask(p.DryWidth > 0 && (p.Width-p.DryWidth).Abs() > p.Width/20,
		finding.Finding{Code: DryWidthUnusual, Severity: finding.Caution, Sizes: []finding.Size{dry, width}})
	ask(outside(p.RollLength, measure.Metre, 150*measure.Metre),
		finding.Finding{Code: RollUnusual, Severity: finding.Caution, Sizes: []finding.Size{roll}})
	ask(p.Repeat > 0 && outside(p.Repeat, 10*measure.Millimetre, 3*measure.Metre),
		finding.Finding{Code: RepeatUnusual, Severity: finding.Caution, Sizes: []finding.Size{{Name: "repeat", Value: p.Repeat}}})
	if d := (Design{p.Repeat, p.Match}); p.IsMislabelled() {
		ask(true, finding.Finding{Code: LabelDiffers, Severity: finding.Caution, Sizes: []finding.Size{
			{Name: "repeat", Value: d.Repeat},
			{Name: "lower", Value: d.lower()},
			{Name: "label_repeat", Value: p.Printed.Repeat},
			{Name: "label_lower", Value: p.Printed.lower()},
		}})
	}
	ask(p.Across > 0 && p.Width%p.Across != 0,
		finding.Finding{Code: AcrossUneven, Severity: finding.Caution, Sizes: []finding.Size{across, width}})
	ask(p.Alternatives() > 8,
		finding.Finding{Code: ManyAlternates, Severity: finding.Caution, Count: p.Alternatives()})
	ask(p.SoakMin > 0 && p.Paste != PasteThePaper && p.Paste != ReadyPasted,
		finding.Finding{Code: SoakUnexpected, Severity: finding.Note, Count: p.SoakMin})
	ask(Category(p.Width, p.RollLength) == 0,
		finding.Finding{Code: OutsideEN233, Severity: finding.Note, Sizes: []finding.Size{width, roll}})
	for i := range p.Rolls {
		p.askRoll(&p.Rolls[i], ask)
	}
	p.askBatches(ask)
	return fs
}

// mostPutUp is how many lengths a roll of commercial goods may come in: two
// cuts allowed (trade advice on take-offs by the lineal yard).
const mostPutUp = 3

// askRoll asks about a roll that is there.
func (p *Paper) askRoll(r *Roll, ask func(bool, finding.Finding)) {
	longest, shortest := measure.Length(0), measure.MaxLength
	for _, o := range p.Offers() {
		longest, shortest = max(longest, o.RollLength), min(shortest, p.Shortest(o.RollLength))
	}
	most := longest + (longest - p.Shortest(longest))
	length := finding.Size{Name: "length", Value: r.Total()}
	ask(r.Total() > most, finding.Finding{
		Code: RollLonger, Severity: finding.Caution, Word: r.Name,
		Sizes: []finding.Size{length, {Name: "roll", Value: longest}},
	})
	ask(r.Total() < shortest, finding.Finding{
		Code: RollShorter, Severity: finding.Note, Word: r.Name,
		Sizes: []finding.Size{length, {Name: "shortest", Value: shortest}},
	})
	ask(r.Total() < p.Repeat, finding.Finding{
		Code: RollNoRepeat, Severity: finding.Note, Word: r.Name,
		Sizes: []finding.Size{length, {Name: "repeat", Value: p.Repeat}},
	})
	ask(len(r.Parts) > mostPutUp, finding.Finding{
		Code: ManyRollParts, Severity: finding.Caution, Word: r.Name, Count: len(r.Parts),
	})
}

// askBatches asks about rolls of other batches than the label's, batch by batch
// in the order of the rolls.
func (p *Paper) askBatches(ask func(bool, finding.Finding)) {
	var batches []string
	rolls := map[string]int{}
	for i := range p.Rolls {
		b := p.Rolls[i].Batch
		if rolls[b]++; rolls[b] == 1 && b != p.Batch {
			batches = append(batches, b)
		}
	}
	for _, b := range batches {
		ask(true, finding.Finding{Code: OtherBatch, Severity: finding.Note, Word: b, Count: rolls[b]})
	}
}

func outside(l, least, most measure.Length) bool { return l < least || l > most }
