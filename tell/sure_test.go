package tell_test

import (
	"slices"
	"strings"
	"testing"

	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
	"firstdrop/tell"
	"firstdrop/words"
)

func TestCountOrder(t *testing.T) {
	const mm = measure.Millimetre
	label := &paper.Paper{Width: 530 * mm, RollLength: 10_050 * mm}
	long, short := order.Size{Length: 15_000 * mm, Pack: 1, Rolls: 3}, order.Size{Length: 10_050 * mm, Pack: 1, Rolls: 1}
	packs := order.Size{Length: 10_050 * mm, Pack: 3, Rolls: 6}
	for _, tt := range []struct {
		name    string
		curve   order.Curve
		inOrder bool
		want    []string
	}{
		{"one size", order.Curve{Buys: []order.Size{short}, Spare: short}, false, nil},
		{"nothing bought", order.Curve{Spare: short}, false, nil},
		{"two sizes", order.Curve{Buys: []order.Size{long, short}, Spare: short}, false, []string{
			"Counted in this order: 3 rolls of 0.53 × 15.00 m, 1 roll of 0.53 × 10.05 m; any more are of 0.53 × 10.05 m.",
		}},
		{"more of another", order.Curve{Buys: []order.Size{long}, Spare: short}, true, []string{
			"Counted as they are cut: 3 rolls of 0.53 × 15.00 m; any more are of 0.53 × 10.05 m.",
		}},
		{"no more", order.Curve{Buys: []order.Size{long, short}}, false, []string{
			"Counted in this order: 3 rolls of 0.53 × 15.00 m, 1 roll of 0.53 × 10.05 m; no more are to be had.",
		}},
		{"packs", order.Curve{Buys: []order.Size{packs}, Spare: packs}, false, []string{"Packs are counted whole."}},
	} {
		label.InOrder = tt.inOrder
		if got := tell.CountOrder(words.For("en-GB"), label, &tt.curve); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
		for _, lang := range words.Languages() {
			got := tell.CountOrder(words.For(lang), label, &tt.curve)
			if len(got) != len(tt.want) || strings.Contains(strings.Join(got, " "), "sure.") {
				t.Errorf("%s, %s: %q", tt.name, lang, got)
			}
		}
	}
}
