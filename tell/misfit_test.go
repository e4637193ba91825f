package tell

import (
	"testing"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/words"
)

func TestMisses(t *testing.T) {
	tests := []struct {
		lo, hi, along measure.Length
		want          string
	}{
		{0, 0, 0, "meets"},
		{12, 12, 0, "loses 12 mm of its width"},
		{0, 8, 0, "loses up to 8 mm of its width"},
		{4, 12, 0, "loses 4 mm to 12 mm of its width"},
		{-20, -20, 0, "shows 20 mm of its width twice"},
		{-20, -5, 0, "shows 5 mm to 20 mm of its width twice"},
		{-8, 0, 0, "shows up to 8 mm of its width twice"},
		{-3, 4, 0, "shows up to 3 mm of its width twice and loses up to 4 mm"},
		{0, 0, 120, "stands 120 mm too high on the right"},
		{14, 14, -120, "loses 14 mm of its width and stands 120 mm too low on the right"},
	}
	for _, tt := range tests {
		got := Misses(words.For(""), geom.Interval{Lo: tt.lo * measure.Millimetre, Hi: tt.hi * measure.Millimetre}, tt.along*measure.Millimetre)
		if got != tt.want {
			t.Errorf("Misses(%d…%d, %d) = %q, want %q", tt.lo, tt.hi, tt.along, got, tt.want)
		}
	}
	if got, want := Misses(words.For(""), geom.Interval{Lo: measure.Millimetre / 50, Hi: 8 * measure.Millimetre}, 0), "loses up to 8 mm of its width"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := Misses(words.For("").In(measure.Imperial), geom.Interval{Lo: measure.Inch / 2, Hi: measure.Inch / 2}, 0), `loses 1/2" of its width`; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Where the design misses only across, or only along, nothing is said of the other.
func TestMissed(t *testing.T) {
	const mm = measure.Millimetre
	tests := []struct {
		language      string
		sys           measure.System
		across, along measure.Length
		want          string
	}{
		{"en-GB", measure.Metric, 48 * mm, 0, "48 mm across"},
		{"en-GB", measure.Metric, 0, -3 * mm, "3 mm along"},
		{"en-GB", measure.Metric, -48 * mm, 3 * mm, "48 mm across and 3 mm along"},
		{"en-GB", measure.Metric, 48 * mm, mm / 100, "48 mm across"},
		{"en-GB", measure.Metric, 48 * mm, mm / 20, "48 mm across and ≈ 0.1 mm along"},
		{"en-US", measure.Imperial, measure.Inch / 2, measure.Sixteenth / 4, `1/2" across and 1/64" along`},
		{"en-US", measure.Imperial, measure.Inch / 2, mm / 2, `1/2" across`},
		{"de", measure.Metric, 48 * mm, 0, "48 mm in der Breite"},
		{"de", measure.Metric, 0, 3 * mm, "3 mm in der Höhe"},
		{"de", measure.Metric, 48 * mm, 3 * mm, "48 mm in der Breite und um 3 mm in der Höhe"},
		{"fr", measure.Metric, 48 * mm, 0, "48 mm en largeur"},
		{"fr", measure.Metric, 0, 3 * mm, "3 mm en hauteur"},
		{"fr", measure.Metric, 48 * mm, 3 * mm, "48 mm en largeur et de 3 mm en hauteur"},
	}
	for _, tt := range tests {
		if got := missed(words.For(tt.language).In(tt.sys), tt.across, tt.along); got != tt.want {
			t.Errorf("%s: missed(%v, %v) = %q, want %q", tt.language, tt.across, tt.along, got, tt.want)
		}
	}
}
