package measure

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestLengthString(t *testing.T) {
	for _, c := range []struct {
		l    Length
		want string
	}{
		{0, "0 mm"},
		{2502 * Millimetre, "2502 mm"},
		{-2502*Millimetre - 500*Micrometre, "-2502.5 mm"},
		{1, "0.000001 mm"},
		{-1, "-0.000001 mm"},
		{SixtyFourth, "0.396875 mm"},
		{Inch / 8, "3.175 mm"},
		{21 * Inch, "533.4 mm"},
		{MaxLength, "1000000 mm"},
		{math.MinInt64, "-9223372036854.775808 mm"},
	} {
		if got := c.l.String(); got != c.want {
			t.Errorf("%d nm: %q, want %q", c.l, got, c.want)
		}
	}
}

func TestLengthFormat(t *testing.T) {
	for _, c := range []struct {
		l                Length
		metric, imperial string
	}{
		{0, "0 mm", `0"`},
		{2502 * Millimetre, "2502 mm", `≈ 8' 2 1/2"`},
		{8*Foot + 5*Inch/2, "2501.9 mm", `8' 2 1/2"`},
		{-8*Foot - 5*Inch/2, "-2501.9 mm", `-8' 2 1/2"`},
		{8 * Foot, "2438.4 mm", `8' 0"`},
		{8*Foot + Inch/2, "2451.1 mm", `8' 0 1/2"`},
		{3 * Inch, "76.2 mm", `3"`},
		{3 * Inch / 4, "≈ 19.1 mm", `3/4"`},    // 19.05: a half goes away from zero
		{-3 * Inch / 4, "≈ -19.1 mm", `-3/4"`}, //
		{3 * SixtyFourth, "≈ 1.2 mm", `3/64"`}, // 1.190625; sixty-fourths stay
		{Sixteenth / 3, "≈ 0.5 mm", `≈ 0"`},    // 1/48 in
		{Foot - 1, "≈ 304.8 mm", `≈ 1' 0"`},    // rounding carries into feet
		{Inch/32 + 1, "≈ 0.8 mm", `≈ 1/16"`},   // just above half a sixteenth
		{-Inch/32 + 1, "≈ -0.8 mm", `≈ 0"`},    // just below it
		{50 * Micrometre, "≈ 0.1 mm", `≈ 0"`},  // half a tenth
		{49_999, "≈ 0 mm", `≈ 0"`},             // less
		{2502500 * Micrometre, "2502.5 mm", `≈ 8' 2 1/2"`},
	} {
		if got := c.l.Format(Metric); got != c.metric {
			t.Errorf("%v metric: %q, want %q", c.l, got, c.metric)
		}
		if got := c.l.Format(Imperial); got != c.imperial {
			t.Errorf("%v imperial: %q, want %q", c.l, got, c.imperial)
		}
	}
}

func TestBoth(t *testing.T) {
	for _, c := range []struct {
		l    Length
		want string
	}{
		{2502 * Millimetre, `2502 mm (8' 2 1/2")`},
		{21 * Inch, `533.4 mm (1' 9")`},
		{-25 * Millimetre, `-25 mm (-1")`},
	} {
		if got := Both(c.l); got != c.want {
			t.Errorf("Both(%v) = %q, want %q", c.l, got, c.want)
		}
	}
}

var readableLength = rapid.Int64Range(-int64(MaxLength), int64(MaxLength))

func TestStringReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(readableLength.Draw(t, "nm"))
		bare := Unit(rapid.IntRange(0, int(Yards)).Draw(t, "bare"))
		if got, err := ParseLength(l.String(), bare); err != nil || got != l {
			t.Fatalf("%q with bare %v: %v, %v; want %d nm", l.String(), bare, got, err, l)
		}
	})
}

// Whole sixty-fourths survive printing and reading in feet and inches.
func TestSixtyFourthsReadBack(t *testing.T) {
	most := int64(MaxLength / SixtyFourth)
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-most, most).Draw(t, "64ths")) * SixtyFourth
		if got, err := ParseLength(l.Format(Imperial), 0); err != nil || got != l {
			t.Fatalf("%q reads as %v, %v; want %v", l.Format(Imperial), got, err, l)
		}
	})
}

// What Format shows is never further off than half its step, says whether it
// was rounded, and reads back as the rounded value.
func TestFormatIsHonest(t *testing.T) {
	half := map[System]Length{Metric: Millimetre / 20, Imperial: Sixteenth / 2}
	rapid.Check(t, func(t *rapid.T) {
		l := Length(readableLength.Draw(t, "nm"))
		for sys, most := range half {
			text, isRounded := strings.CutPrefix(l.Format(sys), "≈ ")
			shown, err := ParseLength(text, 0)
			if err != nil && l.Abs() < MaxLength-Sixteenth {
				t.Fatal(err)
			}
			if err == nil && ((shown-l).Abs() > most || isRounded != (shown != l) || shown != l.Rounded(sys)) {
				t.Fatalf("%d nm shown as %q", l, l.Format(sys))
			}
		}
	})
}

func TestLengthJSON(t *testing.T) {
	type wall struct{ Width, Height Length }
	w := wall{2502 * Millimetre, 8*Foot + SixtyFourth}
	text, err := json.Marshal(w)
	if err != nil || string(text) != `{"Width":2502,"Height":2438.796875}` {
		t.Fatal(string(text), err)
	}
	var again wall
	if err := json.Unmarshal(text, &again); err != nil || again != w {
		t.Fatal(again, err)
	}
	for _, bad := range []string{`{"Width":"2502"}`, `{"Width":"0"}`, `{"Width":""}`, `{"Width":1e3}`} {
		if err := json.Unmarshal([]byte(bad), &again); err == nil || again != w {
			t.Errorf("%s was read, or changed the width: %v", bad, again)
		}
	}
}

func TestSystemString(t *testing.T) {
	if Metric.String() != "metric" || Imperial.String() != "imperial" {
		t.Error(Metric, Imperial)
	}
}
