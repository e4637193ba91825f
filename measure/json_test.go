package measure_test

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

func TestLengthAsJSON(t *testing.T) {
	tests := []struct {
		length measure.Length
		want   string
	}{
		{0, "0"},
		{2502 * measure.Millimetre, "2502"},
		{-measure.SixtyFourth, "-0.396875"},
		{1, "0.000001"},
	}
	for _, tt := range tests {
		if got, err := json.Marshal(tt.length); err != nil || string(got) != tt.want {
			t.Errorf("Marshal(%v) = %s, %v, want %s", tt.length, got, err, tt.want)
		}
	}
}

func TestLengthFromJSON(t *testing.T) {
	tests := []struct {
		text string
		want measure.Length
	}{
		{`2502.5`, 2502*measure.Millimetre + 500*measure.Micrometre},
		{`"8' 2 1/2\""`, 98*measure.Inch + measure.Inch/2},
		{`"2.502 m"`, 2502 * measure.Millimetre},
		{`null`, 7},
	}
	for _, tt := range tests {
		got := measure.Length(7)
		if err := json.Unmarshal([]byte(tt.text), &got); err != nil || got != tt.want {
			t.Errorf("Unmarshal(%s) = %v, %v, want %v", tt.text, got, err, tt.want)
		}
	}
	for _, text := range []string{`"2502"`, `true`, `{}`, `1e3`, `"8 3"`} {
		var l measure.Length
		if err := json.Unmarshal([]byte(text), &l); err == nil {
			t.Errorf("Unmarshal(%s) = %v, want an error", text, l)
		}
	}
}

// A reader that holds numbers as float64 gets every nanometre back.
func TestJSONNumbersSurviveFloat64(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(-int64(measure.MaxLength), int64(measure.MaxLength)).Draw(t, "length"))
		data, err := json.Marshal(l)
		if err != nil {
			t.Fatal(err)
		}
		var mm float64
		if err := json.Unmarshal(data, &mm); err != nil {
			t.Fatal(err)
		}
		if got := measure.Length(math.Round(mm * 1e6)); got != l {
			t.Fatalf("%s came back as %d nm, want %d", data, got, l)
		}
		var again measure.Length
		if err := json.Unmarshal(data, &again); err != nil || again != l {
			t.Fatalf("%s read back as %v, %v", data, again, err)
		}
	})
}
