package measure

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func mustLength(t testing.TB, text string) Length {
	t.Helper()
	l, err := ParseLength(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestTimesAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := readableLength.Draw(t, "a"), readableLength.Draw(t, "b")
		want := bigDiv(new(big.Int).Mul(big.NewInt(a), big.NewInt(b)), big.NewInt(1e10)).Int64()
		if got := Length(a).Times(Length(b)); int64(got) != want {
			t.Fatalf("%d nm × %d nm = %d, want %d hundredths of mm²", a, b, got, want)
		}
	})
}

// EN 233, category 1: the area of a roll is 5.326 m². The usual 0.53 m × 10.05 m
// make 5.3265 m², of which the standard prints three decimals without rounding.
// Its tolerance of 3 % holds 5.166 to 5.486 m².
func TestEN233RollArea(t *testing.T) {
	roll := mustLength(t, "0.53 m").Times(mustLength(t, "10.05 m"))
	if roll != 53265*SquareMetre/10000 || roll/(SquareMetre/1000) != 5326 {
		t.Errorf("roll area %d", roll)
	}
	if low, high := roll*97/100/(SquareMetre/1000), roll*103/100/(SquareMetre/1000); low != 5166 || high != 5486 {
		t.Errorf("3 %% either way: %d to %d", low, high)
	}
	if roll.String() != "5.33 m²" {
		t.Error(roll)
	}
}

// Wallcoverings Association, "Commercial square foot" page on doityourself.com:
// a lineal yard of 54-in goods is 13.5 sq ft, so 1500 sq ft take 111.11, ordered
// as 112 yd. 150 yd of 54 in are 2025 sq ft; of 36-in goods at 9 sq ft to the
// yard that is 225 yd.
func TestWideGoodsByTheYard(t *testing.T) {
	wide, narrow := (54 * Inch).Times(Yard), (36 * Inch).Times(Yard)
	if wide != 135*SquareFoot/10 || narrow != 9*SquareFoot {
		t.Fatalf("a yard: %d and %d", wide, narrow)
	}
	need := 1500 * SquareFoot
	if n := need * 100 / wide; n != 11111 {
		t.Errorf("1500 sq ft / 13.5 = %d hundredths of a yard", n)
	}
	if yards := (need + wide - 1) / wide; yards != 112 {
		t.Errorf("1500 sq ft take %d yd", yards)
	}
	if total := 150 * wide; total != 2025*SquareFoot || total/narrow != 225 || total%narrow != 0 {
		t.Errorf("150 yd: %s", total.Format(Imperial))
	}
}

// CFFA-W-101, in the industry council's table on vinylindesign.com: 7, 13 and
// 22 oz per square yard are 10.5, 19.5 and 33 oz per lineal yard of 54 in.
// Household handbook (chestofbooks.com, "Wall-Papers Part 2"): a piece of
// 12 yd × 21 in is 63 sq ft.
func TestPublishedAreas(t *testing.T) {
	lineal := (54 * Inch).Times(Yard)
	for oz, want := range map[Area]Area{70: 105, 130: 195, 220: 330} { // tenths of an ounce
		if got := oz * (lineal / (SquareYard / 2)) / 2; got != want {
			t.Errorf("%d: %d, want %d", oz, got, want)
		}
	}
	if got := (12 * Yard).Times(21 * Inch); got != 63*SquareFoot {
		t.Error(got.Format(Imperial))
	}
	// Wallcoverings Association, "How to estimate": a wall of 12 × 8 ft is 96 sq ft.
	if got := (12 * Foot).Times(8 * Foot); got != 96*SquareFoot {
		t.Error(got.Format(Imperial))
	}
}

func TestAreaFormat(t *testing.T) {
	for _, c := range []struct {
		a                Area
		metric, imperial string
	}{
		{0, "0.00 m²", "0.0 sq ft"},
		{SquareMetre, "1.00 m²", "10.8 sq ft"},
		{5 * SquareMetre / 1000, "0.01 m²", "0.1 sq ft"}, // half of 0.01 goes up
		{-5 * SquareMetre / 1000, "-0.01 m²", "-0.1 sq ft"},
		{-SquareMillimetre, "0.00 m²", "0.0 sq ft"}, // no minus before nothing
		{135 * SquareFoot / 10, "1.25 m²", "13.5 sq ft"},
		{2025 * SquareFoot, "188.13 m²", "2025.0 sq ft"},
		{SquareYard, "0.84 m²", "9.0 sq ft"},
		{MaxLength.Times(MaxLength), "1000000.00 m²", "10763910.4 sq ft"},
	} {
		if got := c.a.Format(Metric); got != c.metric {
			t.Errorf("%d: %q, want %q", c.a, got, c.metric)
		}
		if got := c.a.Format(Imperial); got != c.imperial {
			t.Errorf("%d: %q, want %q", c.a, got, c.imperial)
		}
	}
}

// Halves of 0.01 mm² go away from zero: 0.1 mm × 0.05 mm.
func TestTimesHalves(t *testing.T) {
	if a := (Millimetre / 10).Times(Millimetre / 20); a != 1 {
		t.Errorf("%d", a)
	}
	if a := (-Millimetre / 10).Times(Millimetre / 20); a != -1 {
		t.Errorf("%d", a)
	}
	if a := (3 * Metre).Times(4 * Metre); a != 12*SquareMetre {
		t.Error(a)
	}
}
