package measure

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var angleCases = []struct {
	text string
	want Angle // microdegrees
}{
	{"90", 90_000_000},
	{"90°", 90_000_000},
	{"90 º", 90_000_000},
	{"90 deg", 90_000_000},
	{"90degrees", 90_000_000},
	{"1 degree", 1_000_000},
	{"89.5 deg", 89_500_000},
	{"89,5°", 89_500_000},
	{"1,234°", 1_234_000},
	{"22 1/2°", 22_500_000},
	{"22½°", 22_500_000},
	{"89°30'", 89_500_000},
	{"89° 30′", 89_500_000},
	{"89° 30.5’", 89_508_333}, // 30.5/60 = 0.508 333 3
	{"89°31'", 89_516_667},    // 31/60 = 0.516 666 7
	{"89° 31' 15\"", 89_520_833},
	{"89° 31′ 15″", 89_520_833},
	{"0°0'1\"", 278}, // 1/3600 = 277.8 millionths
	{"0°0'59.9999999\"", 16_667},
	{"-45°", -45_000_000},
	{"−0.25°", -250_000},
	{"-1°30'", -1_500_000},
	{"+180", 180_000_000},
	{"360", 360_000_000},
	{" 12.345678° ", 12_345_678},
	{"0.0000005", 1},
	{"-0.0000005", -1},
	{"0", 0},
}

var angleRefusals = []struct {
	text, message string
	offset        int
}{
	{"", "nothing is written", 0},
	{"x", "a number should stand here", 0},
	{"90 30", "no sign of an angle", 3},
	{"90 rad", "no sign of an angle", 3},
	{"30'", "degrees, minutes and seconds", 2},
	{"30\"", "degrees, minutes and seconds", 2},
	{"89°30", "degrees, minutes and seconds", 6},
	{"89°30'15", "degrees, minutes and seconds", 9},
	{"89°30'15'", "degrees, minutes and seconds", 9},
	{"89°60'", "below 60", 4},
	{"89°30'60\"", "below 60", 7},
	{"89.5°30'", "only the last part", 0},
	{"89°30.5'15\"", "only the last part", 4},
	{"89°30'15\" 2", "nothing may follow", 11},
	{"361", "full turn", 0},
	{"-400°", "full turn", 1},
	{"360°0'1\"", "full turn", 7},
	{"1.0000000001", "nine decimals", 0},
	{"99999999999999999999", "18 digits", 0},
	{"1/0°", "0 below the bar", 2},
	{"1e2", "no sign of an angle", 1},
	{"89°-30'", "a number should stand here", 4},
}

func TestParseAngle(t *testing.T) {
	for _, c := range angleCases {
		if got, err := ParseAngle(c.text); err != nil || got != c.want {
			t.Errorf("ParseAngle(%q) = %d, %v; want %d", c.text, got, err, c.want)
		}
	}
	for _, c := range angleRefusals {
		got, err := ParseAngle(c.text)
		var e *AngleError
		if !errors.As(err, &e) || !strings.Contains(e.Why.Error(), c.message) || e.Offset != c.offset || got != 0 {
			t.Errorf("ParseAngle(%q) = %d, %v; want %q at %d", c.text, got, err, c.message, c.offset)
		}
	}
}

func FuzzParseAngle(f *testing.F) {
	for _, c := range angleCases {
		f.Add(c.text)
	}
	for _, c := range angleRefusals {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := ParseAngle(text)
		var e *AngleError
		if err != nil {
			if !errors.As(err, &e) || e.Offset < 0 || e.Offset > len(text) || e.Text != text {
				t.Errorf("%q: %v", text, err)
			}
			return
		}
		if a > FullTurn || a < -FullTurn {
			t.Errorf("%q = %v", text, a)
		}
		if again, err := ParseAngle(a.String()); err != nil || again != a {
			t.Errorf("%q = %v, read again %v, %v", text, a, again, err)
		}
	})
}

// Every whole second of arc against one rounding of the exact fraction.
func TestSecondsRoundOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m, s := rapid.IntRange(0, 359).Draw(t, "d"), rapid.IntRange(0, 59).Draw(t, "m"), rapid.IntRange(0, 59).Draw(t, "s")
		text := fmt.Sprintf("%d° %d'%d\"", d, m, s)
		total := int64(d)*3600 + int64(m)*60 + int64(s)
		want := Angle((total*1_000_000*2 + 3600) / 7200)
		if got, err := ParseAngle(text); err != nil || got != want {
			t.Fatalf("%q = %d, %v; want %d", text, got, err, want)
		}
	})
}

func TestNormalized(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Angle(rapid.Int64().Draw(t, "µ°"))
		n := a.Normalized()
		if n < 0 || n >= FullTurn || (a%FullTurn-n)%FullTurn != 0 {
			t.Fatalf("%d normalised to %d", a, n)
		}
	})
}

// Table values of trigonometry: sin 30° = 1/2, cos 60° = 1/2, sin 45° = √2/2,
// sin 18° = (√5 − 1)/4. Quarter turns are exact.
func TestSinCos(t *testing.T) {
	for _, c := range []struct {
		a        Angle
		sin, cos float64
	}{
		{30 * Degree, 0.5, math.Sqrt(3) / 2},
		{-330 * Degree, 0.5, math.Sqrt(3) / 2},
		{45 * Degree, math.Sqrt2 / 2, math.Sqrt2 / 2},
		{60 * Degree, math.Sqrt(3) / 2, 0.5},
		{18 * Degree, (math.Sqrt(5) - 1) / 4, math.Sqrt(10+2*math.Sqrt(5)) / 4},
		{150 * Degree, 0.5, -math.Sqrt(3) / 2},
	} {
		if math.Abs(c.a.Sin()-c.sin) > 2e-15 || math.Abs(c.a.Cos()-c.cos) > 2e-15 {
			t.Errorf("%v: sin %v cos %v, want %v %v", c.a, c.a.Sin(), c.a.Cos(), c.sin, c.cos)
		}
	}
	for quarter, want := range [][2]float64{{0, 1}, {1, 0}, {0, -1}, {-1, 0}} {
		if a := Angle(quarter-8) * 90 * Degree; a.Sin() != want[0] || a.Cos() != want[1] {
			t.Errorf("%v: sin %v cos %v", a, a.Sin(), a.Cos())
		}
	}
}

func TestSinCosSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Angle(rapid.Int64Range(-int64(FullTurn), int64(FullTurn)).Draw(t, "µ°"))
		if s, c := a.Sin(), a.Cos(); math.Abs(s*s+c*c-1) > 4e-15 || a.Sin()*(-a).Sin() > 0 {
			t.Fatalf("%v: %v %v", a, s, c)
		}
	})
}

func TestAngleText(t *testing.T) {
	type corner struct{ Turn Angle }
	text, err := json.Marshal(corner{-89_500_001 * Microdegree})
	if err != nil || string(text) != `{"Turn":"-89.500001°"}` {
		t.Fatal(string(text), err)
	}
	var c corner
	if err := json.Unmarshal(text, &c); err != nil || c.Turn != -89_500_001 {
		t.Fatal(c, err)
	}
	if err := json.Unmarshal([]byte(`{"Turn":"square"}`), &c); err == nil || c.Turn != -89_500_001 {
		t.Error("a word was read as an angle, or it changed the old one")
	}
}
