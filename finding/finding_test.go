package finding_test

import (
	"testing"

	"firstdrop/finding"
	"firstdrop/measure"
)

func TestSortIsStableAndGravestFirst(t *testing.T) {
	fs := []finding.Finding{
		{Code: "a", Severity: finding.Note},
		{Code: "b", Severity: finding.Serious},
		{Code: "c", Severity: finding.Caution},
		{Code: "d", Severity: finding.Serious},
		{Code: "e", Severity: finding.Note},
	}
	finding.Sort(fs)
	got := ""
	for _, f := range fs {
		got += string(f.Code)
	}
	if want := "bdcae"; got != want {
		t.Errorf("order %q, want %q", got, want)
	}
}

func TestSize(t *testing.T) {
	f := finding.Finding{Sizes: []finding.Size{{Name: "width", Value: 38 * measure.Millimetre}}}
	if got, ok := f.Size("width"); !ok || got != 38*measure.Millimetre {
		t.Errorf("Size(width) = %v, %v", got, ok)
	}
	if _, ok := f.Size("height"); ok {
		t.Error("Size(height) found a figure that is not there")
	}
}
