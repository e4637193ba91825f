package tell_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/tell"
	"firstdrop/words"
)

const mm = measure.Millimetre

// codes reads every constant of type finding.Code from the source of the
// packages that raise findings.
func codes(t *testing.T) map[finding.Code]string {
	t.Helper()
	found := map[finding.Code]string{}
	for _, dir := range []string{"plan", "room", "paper", "hanging", "cutting"} {
		files, err := filepath.Glob(filepath.Join("..", dir, "*.go"))
		if err != nil || len(files) == 0 {
			t.Fatalf("no source of %s: %v", dir, err)
		}
		for _, name := range files {
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range f.Decls {
				g, ok := d.(*ast.GenDecl)
				if !ok || g.Tok != token.CONST {
					continue
				}
				for _, s := range g.Specs {
					v := s.(*ast.ValueSpec)
					if sel, ok := v.Type.(*ast.SelectorExpr); !ok || sel.Sel.Name != "Code" {
						continue
					}
					for i, value := range v.Values {
						lit, ok := value.(*ast.BasicLit)
						if !ok {
							t.Fatalf("%s: the value of %s is not plain", name, v.Names[i])
						}
						code, err := strconv.Unquote(lit.Value)
						if err != nil {
							t.Fatal(err)
						}
						found[finding.Code(code)] = dir + "." + v.Names[i].Name
					}
				}
			}
		}
	}
	return found
}

func TestEveryCodeHasWords(t *testing.T) {
	all := codes(t)
	if len(all) < 22 {
		t.Errorf("only %d codes found", len(all))
	}
	for code, name := range all {
		if !tell.Knows(code) {
			t.Errorf("%s (%q) has no words", name, code)
		}
	}
}

// Whatever a finding holds or lacks, its sentence begins with a capital, ends
// with one full stop, and holds no code and no gap.
func TestFindingsAreSentences(t *testing.T) {
	x := 1237 * mm
	place := finding.Place{Run: "Garden room", Wall: "A", Corner: "A|B", Opening: "door", Paper: "Quince", Drop: 7, X: &x, Y: &x}
	for code := range codes(t) {
		for _, f := range []finding.Finding{
			{Code: code},
			{Code: code, Place: place, Count: 1},
			{Code: code, Place: place, Count: 3, Sizes: []finding.Size{
				{Name: "width", Value: mm},
				{Name: "distance", Value: mm},
				{Name: "across", Value: -mm},
				{Name: "along", Value: mm},
				{Name: "height", Value: mm},
				{Name: "least", Value: mm},
				{Name: "most", Value: mm},
				{Name: "depth", Value: mm},
				{Name: "label", Value: mm},
				{Name: "shortest", Value: mm},
			}},
		} {
			text := tell.Finding(words.For(""), f)
			if text == "" || text[0] < 'A' || text[0] > 'Z' || !strings.HasSuffix(text, ".") || strings.HasSuffix(text, "..") {
				t.Errorf("%s: %q is no sentence", code, text)
			}
			if strings.Contains(text, "%!") || strings.Contains(text, "_") {
				t.Errorf("%s: %q", code, text)
			}
		}
	}
}

func TestFinding(t *testing.T) {
	x, y := 1237*mm, 2400*mm
	tests := []struct {
		f    finding.Finding
		sys  measure.System
		want string
	}{
		{
			finding.Finding{Code: plan.Sliver, Place: finding.Place{Wall: "B", Drop: 7, X: &x}, Sizes: []finding.Size{{Name: "width", Value: 48 * mm}}},
			measure.Metric, "Drop 7 on wall B is only 48 mm wide: so narrow a strip is hard to keep straight, and shows.",
		},
		{
			finding.Finding{Code: plan.SeamNearEdge, Place: finding.Place{Wall: "B", Opening: "window", X: &x}, Sizes: []finding.Size{{Name: "distance", Value: measure.Inch / 2}}},
			measure.Imperial, `A seam on wall B, ≈ 4' 0 11/16" from its left end, stands 1/2" from the edge of window, where it catches the eye and lifts easily.`,
		},
		{
			finding.Finding{Code: plan.SeamNearEdge, Place: finding.Place{Wall: "B", Opening: "window", X: &x}, Sizes: []finding.Size{{Name: "distance", Value: 0}}},
			measure.Metric, "A seam on wall B, 1237 mm from its left end, stands just at the edge of window, where it catches the eye and lifts easily.",
		},
		{
			finding.Finding{Code: plan.UnequalEnds, Place: finding.Place{Wall: "A"}, Sizes: []finding.Size{{Name: "left", Value: 530 * mm}, {Name: "right", Value: 410 * mm}}},
			measure.Metric, "Wall A, which is looked at first, ends in strips of unequal width, 530 mm on the left and 410 mm on the right.",
		},
		{
			finding.Finding{Code: plan.KillMisfit, Place: finding.Place{Run: "Study", Wall: "C", Opening: "door", X: &x}, Sizes: []finding.Size{{Name: "across", Value: -14 * mm}, {Name: "along", Value: 120 * mm}, {Name: "height", Value: 400 * mm}}},
			measure.Metric, "The design cannot meet all the way round: at the kill seam over door on wall C, 400 mm high, it misses by 14 mm across and 120 mm along (Study).",
		},
		{
			finding.Finding{Code: plan.CornerLoss, Place: finding.Place{Corner: "A|B"}, Sizes: []finding.Size{{Name: "across", Value: 12 * mm}, {Name: "along", Value: 0}}},
			measure.Metric, "In corner A|B the design loses 12 mm of its width.",
		},
		{
			finding.Finding{Code: plan.MotifCut, Place: finding.Place{Wall: "A", Drop: 2, Y: &y}},
			measure.Metric, "Drop 2 on wall A: the ceiling line at 2400 mm above the datum cuts through the leading motif.",
		},
		{
			finding.Finding{Code: plan.FullLength, Place: finding.Place{Paper: "Quince"}, Count: 1, Sizes: []finding.Size{{Name: "label", Value: 10050 * mm}, {Name: "shortest", Value: 9899 * mm}}},
			measure.Metric, "Paper Quince: the number of rolls holds only if each is the full 10050 mm of its label; a roll may be as short as 9899 mm, and then 1 roll is needed.",
		},
		{
			finding.Finding{Code: paper.ManyAlternates, Place: finding.Place{Paper: "Quince"}, Count: 64},
			measure.Metric, "Paper Quince: with the offset stated, the first drop comes back only after 64 drops: check the label.",
		},
		{
			finding.Finding{Code: paper.LabelDiffers, Place: finding.Place{Paper: "Quince"}, Sizes: []finding.Size{
				{Name: "repeat", Value: 642 * mm}, {Name: "lower", Value: 321 * mm}, {Name: "label_repeat", Value: 640 * mm}, {Name: "label_lower", Value: 0},
			}},
			measure.Metric, "Paper Quince is not as its label says: measured, the design recurs every 642 mm and stands 321 mm lower in the next drop; by the label it is every 640 mm and level. The plan goes by what was measured.",
		},
		{
			finding.Finding{Code: paper.LabelDiffers, Place: finding.Place{Paper: "Quince"}, Sizes: []finding.Size{
				{Name: "repeat", Value: 642 * mm}, {Name: "lower", Value: 0}, {Name: "label_repeat", Value: 0}, {Name: "label_lower", Value: 0},
			}},
			measure.Metric, "Paper Quince has a design to match, which its label does not say: measured, it recurs every 642 mm and stands level in the next drop. The plan goes by what was measured.",
		},
		{
			finding.Finding{Code: room.CodeHeightUnlikely, Place: finding.Place{Wall: "A"}, Sizes: []finding.Size{{Name: "height", Value: 24000 * mm}, {Name: "limit", Value: 6000 * mm}}},
			measure.Metric, "Wall A is stated as 24000 mm high, more than the 6000 mm that rooms have as a rule: measure it again, or check the unit.",
		},
		{
			finding.Finding{Code: room.CodeHeightJump, Place: finding.Place{Corner: "A|B"}, Word: "head", Sizes: []finding.Size{{Name: "jump", Value: -40 * mm}}},
			measure.Metric, "In corner A|B the head of the wall on the left stands 40 mm higher than its neighbour's: measure both from the datum again, unless there is a step.",
		},
		{
			finding.Finding{Code: room.CodeMisclosure, Word: "C, A|B", Sizes: []finding.Size{{Name: "misclosure", Value: 31 * mm}, {Name: "likely", Value: 4170 * mm}}},
			measure.Metric, "The walls as measured do not close: a gap of 31 mm is left. Measure again first: C, A|B, which may be 4170 mm.",
		},
		{
			finding.Finding{Code: room.CodeFittingOutside, Place: finding.Place{Wall: "A", X: &x, Y: &y}, Word: "socket"},
			measure.Metric, "The fitting socket is not on the face of wall A, 1237 mm from its left end, at 2400 mm above the datum: check where it was measured from.",
		},
		{
			finding.Finding{Code: "quite-new", Place: finding.Place{Wall: "A", Drop: 3}, Sizes: []finding.Size{{Name: "gap_left", Value: 5 * mm}}, Count: 2},
			measure.Metric, "Quite new: wall A, drop 3, gap left 5 mm, 2.",
		},
	}
	for _, tt := range tests {
		if got := tell.Finding(words.For("").In(tt.sys), tt.f); got != tt.want {
			t.Errorf("Finding(%s)\n got %s\nwant %s", tt.f.Code, got, tt.want)
		}
	}
}

func TestFindingsFixSizes(t *testing.T) {
	// Both unit systems say the same length: 48 mm is 1 7/8" to the nearest sixteenth (47.6 mm).
	f := finding.Finding{Code: plan.Sliver, Sizes: []finding.Size{{Name: "width", Value: 48 * mm}}}
	for sys, want := range map[measure.System]string{measure.Metric: "48 mm", measure.Imperial: `≈ 1 7/8"`} {
		if got := tell.Finding(words.For("").In(sys), f); !strings.Contains(got, want) {
			t.Errorf("%v: %q lacks %q", sys, got, want)
		}
	}
}

// No sentence on how far a design misses tells of a part that is nothing.
func TestFindingsSayOnlyWhatMisses(t *testing.T) {
	at := finding.Place{Wall: "C", Corner: "B|C", Opening: "hatch"}
	for _, tt := range []struct {
		code                  finding.Code
		across, along, height measure.Length
		want                  map[string]string
	}{
		{plan.KillMisfit, 48 * mm, 0, 400 * mm, map[string]string{
			"en-GB": "The design cannot meet all the way round: at the kill seam in corner B|C, 400 mm high, it misses by 48 mm across.",
			"en-US": "The design cannot meet all the way round: at the kill seam in corner B|C, 400 mm high, it misses by 48 mm across.",
			"de":    "Das Muster kann nicht rundum passen: an der Schlussnaht in Ecke B|C, 400 mm hoch, ist es um 48 mm in der Breite versetzt.",
			"fr":    "Le motif ne peut pas se raccorder tout autour\u00a0: au joint final dans l’angle B|C, sur 400 mm de haut, il est décalé de 48 mm en largeur.",
		}},
		{plan.KillMisfit, 0, 48 * mm, 0, map[string]string{
			"en-GB": "The run closes at hatch on wall C, where no paper hangs: that the design would miss there by 48 mm along is seen nowhere.",
			"de":    "Die Fläche schließt sich an der Öffnung „hatch“ an Wand C, wo keine Tapete hängt: dass das Muster dort um 48 mm in der Höhe versetzt ist, sieht man nirgends.",
			"fr":    "La surface se ferme à l’ouverture «\u00a0hatch\u00a0» sur le mur C, où il n’y a pas de papier\u00a0: que le motif y soit décalé de 48 mm en hauteur ne se voit nulle part.",
		}},
		{plan.RenewedMiss, 0, -48 * mm, 400 * mm, map[string]string{
			"en-GB": "A new drop begins in corner B|C, and the design misses there by 48 mm along, 400 mm high.",
			"en-US": "A new strip begins in corner B|C, and the design misses there by 48 mm along, 400 mm high.",
			"de":    "In Ecke B|C beginnt eine neue Bahn, und das Muster ist dort um 48 mm in der Höhe versetzt, 400 mm hoch.",
			"fr":    "Un nouveau lé commence dans l’angle B|C, et le motif y est décalé de 48 mm en hauteur, sur 400 mm de haut.",
		}},
		{plan.CornerLoss, 0, -48 * mm, 400 * mm, map[string]string{
			"en-GB": "In corner B|C the design misses by 48 mm in height.",
			"de":    "In Ecke B|C ist das Muster um 48 mm in der Höhe versetzt.",
			"fr":    "Dans l’angle B|C, le motif se décale de 48 mm en hauteur.",
		}},
	} {
		f := finding.Finding{Code: tt.code, Place: at, Sizes: []finding.Size{
			{Name: "across", Value: tt.across}, {Name: "along", Value: tt.along}, {Name: "height", Value: tt.height},
		}}
		for language, want := range tt.want {
			if got := tell.Finding(words.For(language).In(measure.Metric), f); got != want {
				t.Errorf("%s\n got %s\nwant %s", language, got, want)
			}
		}
	}
}

// A leaning corner says what becomes of the design's width, and nothing of an end of the
// corner at which the design is whole.
func TestWedge(t *testing.T) {
	for _, tt := range []struct {
		least, most measure.Length
		want        map[string]string
	}{
		{0, 8 * mm, map[string]string{
			"en-GB": "Corner A|B leans against the drops, so the design misses unevenly there: it loses up to 8 mm of its width.",
			"en-US": "Corner A|B leans against the strips, so the design misses unevenly there: it loses up to 8 mm of its width.",
			"de":    "Ecke A|B ist gegen die Bahnen geneigt, deshalb ist das Muster dort ungleich versetzt: es verliert bis zu 8 mm seiner Breite.",
			"fr":    "L’angle A|B penche par rapport aux lés, le motif y est donc décalé inégalement\u00a0: il perd jusqu’à 8 mm de sa largeur.",
		}},
		{-3 * mm, 4 * mm, map[string]string{
			"en-GB": "Corner A|B leans against the drops, so the design misses unevenly there: it shows up to 3 mm of its width twice and loses up to 4 mm.",
		}},
	} {
		f := finding.Finding{Code: plan.Wedge, Place: finding.Place{Corner: "A|B"}, Sizes: []finding.Size{{Name: "least", Value: tt.least}, {Name: "most", Value: tt.most}}}
		for language, want := range tt.want {
			if got := tell.Finding(words.For(language).In(measure.Metric), f); got != want {
				t.Errorf("%s\n got %s\nwant %s", language, got, want)
			}
		}
	}
}
