package tell_test

import (
	"strings"
	"testing"

	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

func TestUntried(t *testing.T) {
	tests := []struct {
		run  plan.RunPlan
		want string
	}{
		{plan.RunPlan{}, ""},
		{
			plan.RunPlan{Untried: []plan.Untried{plan.StartsUntried}},
			"A better layout may exist: starts were tried wider apart than a millimetre, closely only round the best",
		},
		{
			plan.RunPlan{Ways: 40, Searched: 9, Gain: 120, Untried: []plan.Untried{plan.WaysUntried}},
			"A better layout may exist: of 40 ways to set the walls the 9 that promise most were searched; by another, a layout could weigh less by 120 thousandths of a roll at the most",
		},
	}
	for _, tt := range tests {
		if got := tell.Untried(words.For(""), &tt.run); got != tt.want {
			t.Errorf("%+v: %q, want %q", tt.run.Untried, got, tt.want)
		}
	}
	for _, lang := range words.Languages() {
		for _, u := range []plan.Untried{plan.StartsUntried, plan.NewDropsUntried, plan.ChoicesUntried, plan.WaysUntried, plan.TogetherUntried} {
			if got := tell.Untried(words.For(lang), &plan.RunPlan{Untried: []plan.Untried{u}}); got == "" || strings.Contains(got, "untried") {
				t.Errorf("%s, %s: %q", lang, u, got)
			}
		}
	}
}
