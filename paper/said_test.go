package paper

import (
	"testing"

	"firstdrop/words"
)

// Every fault has its sentence in the catalogues, which is also the one without them.
func TestFaultsAreSaid(t *testing.T) {
	for fault, english := range faults {
		if got := words.For("").Text("problem.label_" + string(fault)); got != english {
			t.Errorf("%s: %q, but the catalogue says %q", fault, english, got)
		}
	}
	if len(faults) < 30 {
		t.Errorf("only %d faults", len(faults))
	}
}
