package sheet_test

import (
	"os"
	"strings"
	"testing"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/tell"
)

// inHand is a paper of which some rolls are there: one with a flaw, one in two
// lengths, one that nobody has opened.
func inHand(available int) paper.Paper {
	at := func(l measure.Length) *measure.Length { return &l }
	p := label("Hops", 530*mm, paper.Match{Kind: paper.Straight})
	p.Batch, p.Available = "7", &available
	p.Rolls = []paper.Roll{
		{Name: "A", Batch: "7", Length: 9900 * mm, Begins: at(100 * mm), Flaws: []paper.Flaw{{From: 3100 * mm, To: 3200 * mm}}},
		{Name: "B", Batch: "7", Parts: []paper.RollPart{{Length: 6100 * mm, Begins: at(10 * mm)}, {Length: 3900 * mm, Begins: at(500 * mm)}}},
		{Name: "C", Batch: "7", Length: 10050 * mm},
	}
	return p
}

var handSample = sample{name: "hand", run: "A 3600x2400 door(300+850 0+2050) | B 2000x2400", label: inHand(10)}

// The roll map lists flaws and parts where they lie, rolls by their names, and no
// cut touches a flaw or lies on two parts.
func TestRollMapShowsWhatIsOnTheRoll(t *testing.T) {
	p := handSample.plan(t)
	type span struct{ from, to measure.Length }
	cuts, others := map[string][]span{}, map[string][]span{}
	for _, r := range rows(t, rollMap, p, measure.Metric) {
		s := span{length(t, r, "from_mm"), length(t, r, "to_mm")}
		if (r["in_hand"] == "yes") != (r["roll_name"] != "") || r["batch"] != "7" {
			t.Errorf("roll %s is %q of batch %q, in hand: %q", r["roll"], r["roll_name"], r["batch"], r["in_hand"])
		}
		if r["cut"] == "" {
			others[r["roll_name"]+" "+r["piece"]] = append(others[r["roll_name"]+" "+r["piece"]], s)
			continue
		}
		cuts[r["roll_name"]] = append(cuts[r["roll_name"]], s)
	}
	want := map[string]span{"A flaw: do not use": {3100 * mm, 3200 * mm}, "B part 2 begins": {6100 * mm, 6100 * mm}}
	for name, s := range want {
		if got := others[name]; len(got) != 1 || got[0] != s {
			t.Errorf("%s: %v, want %v", name, got, s)
		}
		for _, c := range cuts[name[:1]] {
			if c.from < s.to && s.from < c.to || c.from < s.from && s.to < c.to {
				t.Errorf("roll %s: the cut from %v to %v does not keep clear of %v", name[:1], c.from, c.to, s)
			}
		}
	}
	if len(others) != len(want) || len(cuts["A"]) == 0 || len(cuts["B"]) == 0 {
		t.Errorf("rows that are no cuts: %v; cuts %v", others, cuts)
	}
}

// A roll's mark is where it says: on a roll whose design begins after so much,
// the place of a cut lies the phase behind that.
func TestMarksLieWhereTheDesignSays(t *testing.T) {
	p := handSample.plan(t)
	for _, r := range rows(t, cuttingList, p, measure.Metric) {
		if r["roll_name"] != "A" {
			continue
		}
		off := (length(t, r, "from_mm") - 100*mm - length(t, r, "phase_mm")).Mod(530 * mm)
		if off != 0 || r["mark"] != strings.Replace(length(t, r, "phase_mm").Format(measure.Metric), "≈ ", "", 1)+" into the repeat" {
			t.Errorf("piece %s is off its phase by %v; mark %q", r["piece"], off, r["mark"])
		}
	}
}

// The list in cutting order has the same rows as that in hanging order, roll by
// roll and cut by cut; what is missing comes last.
func TestListAsCut(t *testing.T) {
	short := handSample
	short.label = inHand(0)
	short.label.Rolls = short.label.Rolls[:1]
	p := short.plan(t)
	asCut := func(list []map[string]string) (lines []string) {
		for _, r := range list {
			lines = append(lines, r["roll"]+"/"+r["cut"]+"/"+r["piece"])
		}
		return lines
	}
	hung := asCut(rows(t, cuttingList, p, measure.Metric))
	cut := asCut(rows(t, cutList, p, measure.Metric))
	if len(hung) != len(cut) || len(cut) != len(p.Runs[0].Layout.Pieces) {
		t.Fatalf("%d rows as hung, %d as cut", len(hung), len(cut))
	}
	missing := 0
	for i, line := range cut {
		if strings.HasPrefix(line, "missing/") {
			missing++
		} else if missing > 0 {
			t.Errorf("%s comes after what is missing", line)
		}
		if i > 0 && missing == 0 && !strings.HasPrefix(line, "1/") {
			t.Errorf("%s: there is one roll", line)
		}
	}
	if missing == 0 || missing != p.Papers[0].Missing() {
		t.Errorf("%d pieces are said to be missing, want %d", missing, p.Papers[0].Missing())
	}
}

// Narrow pieces in one cut: each lies within the paper and the cut, and clear of
// the others.
func TestStripsAreListedPieceByPiece(t *testing.T) {
	p := exampleNarrow(t)
	width := p.Task.Papers[0].Width
	strips, shared := map[string][]geom.Interval{}, 0
	for _, r := range rows(t, cuttingList, p, measure.Metric) {
		if r["slit_from_mm"] == "" {
			continue
		}
		shared++
		across := geom.Interval{Lo: length(t, r, "slit_from_mm"), Hi: length(t, r, "slit_to_mm")}
		if across.Lo < 0 || across.Hi > width || across.Length() <= 0 {
			t.Errorf("piece %s lies at %v of the paper", r["piece"], across)
		}
		if length(t, r, "offset_mm")+length(t, r, "length_mm") > length(t, r, "to_mm")-length(t, r, "from_mm") {
			t.Errorf("piece %s runs out of its cut", r["piece"])
		}
		key := r["roll"] + "/" + r["cut"]
		for _, other := range strips[key] {
			if other.Overlaps(across) {
				t.Errorf("cut %s: %v and %v overlap", key, other, across)
			}
		}
		strips[key] = append(strips[key], across)
		if !strings.Contains(r["note"], "slit: ") {
			t.Errorf("piece %s: the note does not tell to slit: %q", r["piece"], r["note"])
		}
	}
	if shared < 4 {
		t.Errorf("only %d pieces share a cut", shared)
	}
}

// exampleNarrow plans the example whose narrow pieces are cut side by side.
func exampleNarrow(t *testing.T) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile("../examples/narrow-strips.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, p := planned(t, "narrow-strips.yaml", data)
	return p
}

// What is said to patch any drop does, and what is said not to does not: the
// left-over is put as a roll of its own, with the phase it begins with, to the
// question whether each piece comes out of it.
func TestLeftoverPatchesIfItSaysSo(t *testing.T) {
	said := map[bool]int{}
	for _, s := range []sample{samples[0], samples[2], samples[4], samples[9], handSample} {
		for roll := measure.Length(8000); roll <= 11000; roll += 500 {
			s.label.RollLength = roll * mm
			p := s.plan(t)
			l, ok := tell.LongestLeftover(p, 0)
			if !ok || len(l.Roll.Parts)+len(l.Roll.Flaws) > 0 || l.Length == 0 {
				continue
			}
			o := l.Roll.Orders[len(l.Roll.Orders)-1]
			begins := (o.At + o.Cuts[len(o.Cuts)-1].To).Mod(s.label.Repeat)
			fits := true
			for _, piece := range p.Runs[0].Layout.Pieces {
				_, err := cutting.NewProblem(cutting.Spec{
					Repeat: s.label.Repeat, Roll: cutting.Roll{Length: l.Length, Start: cutting.StartAt(begins)},
					Pieces: []cutting.Piece{{Length: piece.Length, Phase: piece.Phase}},
				})
				fits = fits && err == nil
			}
			if len(l.Roll.Orders) == 1 && l.Patches != fits {
				t.Errorf("%s, rolls of %v: patches %v, want %v", s.name, s.label.RollLength, l.Patches, fits)
			}
			said[fits]++
		}
	}
	if said[true] == 0 || said[false] == 0 {
		t.Errorf("cases: %v", said)
	}
}
