package measure

import (
	"encoding/json"
	"errors"
	"math/big"
	"os"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// lengthCases is testdata/lengths.json. The front end's tests read the same file.
type lengthCases struct {
	Accepted []struct {
		Text, Unit string
		Nm         int64
	}
	Refused []struct {
		Text, Unit, Message string
		Offset              int
	}
}

func readLengthCases(t testing.TB) (c lengthCases) {
	t.Helper()
	text, err := os.ReadFile("testdata/lengths.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &c); err != nil {
		t.Fatal(err)
	}
	if len(c.Accepted) < 80 || len(c.Refused) < 50 {
		t.Fatalf("%d accepted and %d refused cases; the table has been cut short", len(c.Accepted), len(c.Refused))
	}
	return c
}

// caseUnit returns the unit of a case; "" is none.
func caseUnit(t testing.TB, name string) Unit {
	t.Helper()
	if name == "" {
		return 0
	}
	u, err := ParseUnit(name)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

func TestParseLength(t *testing.T) {
	cases := readLengthCases(t)
	for _, c := range cases.Accepted {
		got, err := ParseLength(c.Text, caseUnit(t, c.Unit))
		if err != nil || int64(got) != c.Nm {
			t.Errorf("ParseLength(%q, %s) = %d nm, %v; want %d nm", c.Text, c.Unit, got, err, c.Nm)
		}
	}
	for _, c := range cases.Refused {
		got, err := ParseLength(c.Text, caseUnit(t, c.Unit))
		var e *LengthError
		switch {
		case !errors.As(err, &e):
			t.Errorf("ParseLength(%q, %s) = %v, %v; want a LengthError with %q", c.Text, c.Unit, got, err, c.Message)
		case !strings.Contains(e.Why.Error(), c.Message) || e.Offset != c.Offset || e.Text != c.Text || got != 0:
			t.Errorf("ParseLength(%q, %s): %q at %d; want %q at %d", c.Text, c.Unit, e.Why.Error(), e.Offset, c.Message, c.Offset)
		}
	}
}

// A unit in the text wins over the bare unit, and spaces around change nothing.
func TestParseLengthIgnoresBareUnitWhenWritten(t *testing.T) {
	for _, c := range readLengthCases(t).Accepted {
		if !strings.ContainsAny(strings.ToLower(c.Text), `mfiy"'′″’”“‘`) {
			continue
		}
		for bare := Unit(0); bare <= Yards; bare++ {
			if got, err := ParseLength(" "+c.Text+"\u00a0", bare); err != nil || int64(got) != c.Nm {
				t.Errorf("ParseLength(%q, %s) = %d nm, %v; want %d nm", c.Text, bare, got, err, c.Nm)
			}
		}
	}
}

func TestLengthErrorQuotes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"8 3", `"8 3": two numbers without units; write 8' 3" or 8.3 cm`},
		{`3" 8'`, "`3\" 8'`: ft after in; write the larger unit first"},
		{"1\n x", `"1\n x": numbers are written out in full: 2500, not 2.5e3 or 0x9c4`},
	}
	for _, c := range tests {
		if _, err := ParseLength(c.text, Millimetres); err == nil || err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", err, c.want)
		}
	}
	_, err := ParseLength(strings.Repeat("ä", 5000), Millimetres)
	if err == nil || len(err.Error()) > 300 {
		t.Errorf("the message for a long text does not cut it short: %v", err)
	}
}

// International yard and pound agreement of 1959: one yard is 0.9144 metre
// exactly, hence a foot 0.3048 m and an inch 25.4 mm. The 21-inch roll width of
// the mid-century British handbook (The Handyman's Pocket Book: Paperhanging)
// is then 533.4 mm, and its 11.5 yd are 10.5156 m.
func TestInternationalYard(t *testing.T) {
	for _, c := range [][2]string{
		{"1 yd", "0.9144 m"},
		{"1 ft", "0.3048 m"},
		{"1 in", "25.4 mm"},
		{"21 in", "533.4 mm"},
		{"11 1/2 yd", "10.5156 m"},
		{"1/64 in", "0.396875 mm"},
	} {
		a, errA := ParseLength(c[0], 0)
		b, errB := ParseLength(c[1], 0)
		if errA != nil || errB != nil || a != b {
			t.Errorf("%s = %v (%v), want %s (%v)", c[0], a, errA, c[1], errB)
		}
	}
}

// plainLength is the simple grammar that the naive reader below understands:
// one number with one unit, or feet and inches.
var plainLength = regexp.MustCompile(`^(-?)(?:(\d{1,9}(?:\.\d{1,9})?) ?(mm|cm|m|in|ft|yd)|(\d{1,5})' ?(?:(\d{1,3}) )?(\d{1,3}(?:\.\d{1,4}|/\d{1,3})?)")$`)

var (
	lastFraction = regexp.MustCompile(`( )?(\d+)/(\d+)"$`)
	digitRun     = regexp.MustCompile(`\d+`)
)

// naiveLength reads the simple grammar with rationals and a regexp, as a second
// opinion on the scanner. It returns nm and whether it understood the text.
func naiveLength(text string) (*big.Rat, bool) {
	m := plainLength.FindStringSubmatch(text)
	if m == nil || strings.HasSuffix(m[6], "/0") || m[5] != "" && !strings.Contains(m[6], "/") {
		return nil, false
	}
	inch := big.NewRat(25_400_000, 1)
	unit := map[string]*big.Rat{
		"mm": big.NewRat(1e6, 1), "cm": big.NewRat(1e7, 1), "m": big.NewRat(1e9, 1),
		"in": inch, "ft": big.NewRat(304_800_000, 1), "yd": big.NewRat(914_400_000, 1),
	}
	sum, term := new(big.Rat), new(big.Rat)
	for group, unit := range map[int]*big.Rat{2: unit[m[3]], 4: unit["ft"], 5: inch, 6: inch} {
		if m[group] == "" {
			continue
		}
		if _, ok := term.SetString(m[group]); !ok {
			return nil, false
		}
		sum.Add(sum, term.Mul(term, unit))
	}
	if m[1] != "" {
		sum.Neg(sum)
	}
	return sum, true
}

// isEasilyMisread reports what the simple grammar holds but the parser refuses
// on purpose: 31/2, and a fraction of one or more behind inches.
func isEasilyMisread(text string) bool {
	m := lastFraction.FindStringSubmatch(text)
	if m == nil {
		return false
	}
	value, ok := new(big.Rat).SetString(m[2] + "/" + m[3])
	if !ok || value.Cmp(big.NewRat(1, 1)) < 0 {
		return false
	}
	return len(m[2]) > 1 || m[1] != ""
}

func FuzzParseLength(f *testing.F) {
	cases := readLengthCases(f)
	for _, c := range cases.Accepted {
		f.Add(c.Text, uint8(caseUnit(f, c.Unit)))
	}
	for _, c := range cases.Refused {
		f.Add(c.Text, uint8(caseUnit(f, c.Unit)))
	}
	f.Fuzz(func(t *testing.T, text string, bare uint8) {
		l, err := ParseLength(text, Unit(bare%7))
		checkAgainstNaive(t, text, l, err)
		if err != nil {
			checkRefusal(t, text, err)
			return
		}
		checkMagnitude(t, text, l)
		for u := Unit(0); u <= Yards; u++ {
			if again, err := ParseLength(l.String(), u); err != nil || again != l {
				t.Errorf("%q = %v, read again with %s: %v, %v", text, l, u, again, err)
			}
		}
	})
}

// checkAgainstNaive asks both readers and wants one answer.
func checkAgainstNaive(t *testing.T, text string, l Length, err error) {
	want, ok := naiveLength(text)
	if !ok || isEasilyMisread(text) {
		return
	}
	bound := new(big.Rat).SetInt64(int64(MaxLength))
	switch isLength := want.IsInt() && want.Cmp(bound) <= 0 && want.Cmp(bound.Neg(bound)) >= 0; {
	case isLength != (err == nil):
		t.Errorf("%q: the naive reader gets %s nm, ParseLength says %v", text, want.RatString(), err)
	case isLength && want.Num().Int64() != int64(l):
		t.Errorf("%q: the naive reader gets %s nm, ParseLength %d", text, want.RatString(), l)
	}
}

func checkRefusal(t *testing.T, text string, err error) {
	var e *LengthError
	switch {
	case !errors.As(err, &e):
		t.Errorf("%q: %T is no LengthError", text, err)
	case e.Text != text || e.Offset < 0 || e.Offset > len(text) || e.Why.Error() == "":
		t.Errorf("%q: offset %d, message %q", text, e.Offset, e.Why.Error())
	}
}

// checkMagnitude wants no more than all the numbers in the text would give as
// metres, the longest unit, with each vulgar fraction less than one.
func checkMagnitude(t *testing.T, text string, l Length) {
	sum := big.NewInt(int64(strings.Count(text, "") + 1))
	for _, digits := range digitRun.FindAllString(text, -1) {
		n, _ := new(big.Int).SetString(digits, 10)
		sum.Add(sum, n)
	}
	sum.Mul(sum, big.NewInt(int64(Metre)))
	if l.Abs() > MaxLength || big.NewInt(int64(l.Abs())).Cmp(sum) > 0 {
		t.Errorf("%q = %v: longer than the numbers in it allow", text, l)
	}
}

// TestParseLengthAgreesWithNaive draws texts of the simple grammar, which
// mutation of the table alone would rarely hit.
func TestParseLengthAgreesWithNaive(t *testing.T) {
	drawn := 0
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringMatching(`-?([0-9]{1,5}(\.[0-9]{1,9})? ?(mm|cm|m|in|ft|yd)|[0-9]{1,3}' ?([0-9]{1,2} [1-7]/8|[0-9]{1,2}(\.[0-9]{1,4})?)")`).Draw(rt, "text")
		if _, ok := naiveLength(text); ok {
			drawn++
		}
		l, err := ParseLength(text, Millimetres)
		checkAgainstNaive(t, text, l, err)
	})
	if drawn == 0 {
		t.Error("the naive reader understood no text; the check is empty")
	}
}

func BenchmarkParseLength(b *testing.B) {
	for _, text := range []string{"2502", "2502.5 mm", `8' 2 1/2"`, "8 ft 2-1/2 in", "2 m 45 cm", "8’ 2½”"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := ParseLength(text, Millimetres); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Reading a well-formed length in small letters allocates nothing.
func TestParseLengthAllocates(t *testing.T) {
	for _, text := range []string{"2502.5 mm", `8' 2 1/2"`, "8’ 2½”", "2 m 45 cm"} {
		if n := testing.AllocsPerRun(100, func() { _, _ = ParseLength(text, Millimetres) }); n > 0 {
			t.Errorf("%q: %v allocations", text, n)
		}
	}
}
