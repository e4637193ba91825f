package paper_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
	"firstdrop/paper"
)

func TestParseMatch(t *testing.T) {
	part := func(num, den int64) paper.Match { return paper.Match{Kind: paper.Offset, Num: num, Den: den} }
	by := func(l measure.Length) paper.Match { return paper.Match{Kind: paper.Offset, Length: l} }
	straight := paper.Match{Kind: paper.Straight}
	for _, c := range []struct {
		text   string
		repeat measure.Length
		unit   measure.Unit
		want   paper.Match
		whole  measure.Length
	}{
		{"free", 0, measure.Millimetres, paper.Match{}, 0},
		{"0", 640 * mm, measure.Millimetres, paper.Match{}, 640 * mm},
		{" Straight ", 640 * mm, measure.Millimetres, straight, 640 * mm},
		{"half  drop", 640 * mm, measure.Millimetres, part(1, 2), 640 * mm},
		{"third drop", 640 * mm, measure.Millimetres, part(1, 3), 640 * mm},
		{"offset 1/3", 640 * mm, measure.Millimetres, part(1, 3), 640 * mm},
		{"1/4", 640 * mm, measure.Millimetres, part(1, 4), 640 * mm},
		{"offset 2 / 4", 640 * mm, measure.Millimetres, part(1, 2), 640 * mm},
		{"32/64", 640 * mm, measure.Millimetres, part(1, 2), 640 * mm},
		{"64/32 cm", 0, measure.Millimetres, by(32 * cm), 64 * cm},
		{"64/32cm", 64 * cm, measure.Inches, by(32 * cm), 64 * cm},
		{"64/32", 64 * cm, measure.Centimetres, by(32 * cm), 64 * cm},
		{"64/32", 0, measure.Centimetres, by(32 * cm), 64 * cm},
		{"640/320", 640 * mm, measure.Millimetres, by(32 * cm), 64 * cm},
		{"64/0 cm", 0, measure.Millimetres, straight, 64 * cm},
		{"53,5 / 26,75 cm", 0, measure.Millimetres, by(2675 * mm / 10), 535 * mm},
		{"21/10.5 in", 0, measure.Millimetres, by(21 * measure.Inch / 2), 21 * measure.Inch},
		{"offset 320", 640 * mm, measure.Millimetres, by(320 * mm), 640 * mm},
		{"offset 10 1/2 in", 21 * measure.Inch, measure.Millimetres, by(21 * measure.Inch / 2), 21 * measure.Inch},
	} {
		got, whole, err := paper.ParseMatch(c.text, c.repeat, c.unit)
		if err != nil || got != c.want || whole != c.whole {
			t.Errorf("ParseMatch(%q, %v, %v) = %+v, %v, %v; want %+v, %v", c.text, c.repeat, c.unit, got, whole, err, c.want, c.whole)
		}
	}
}

func TestParseMatchRefuses(t *testing.T) {
	for text, message := range map[string]string{
		"":                `"" is no match`,
		"drop":            "write free, straight, half drop",
		"halfdrop":        "is no match",
		"offset":          "is no match",
		"offset banana":   "a part of the repeat, such as 1/3",
		"offset 0/3":      "write straight",
		"offset 1/1001":   "finer than 1/1000",
		"64/64 cm":        "must be less than the repeat",
		"64/-32 cm":       "must be less than the repeat",
		"64/32":           "write 64/32 cm",
		"53/26.5 cm":      "stated as 640 mm",
		"64/32/16 cm":     "no mark of repeat and offset",
		"64/32 parsec":    "no unit of length",
		"1.5/3":           "must be less than the repeat",
		"99999999999/1 m": "no mark of repeat",
	} {
		m, _, err := paper.ParseMatch(text, 640*mm, measure.Millimetres)
		if err == nil {
			t.Errorf("ParseMatch(%q) = %v, want an error", text, m)
		} else if !strings.Contains(err.Error(), message) {
			t.Errorf("ParseMatch(%q): %v; want %q in it", text, err, message)
		}
	}
	if _, _, err := paper.ParseMatch("64/32", 0, measure.Millimetres); err == nil || !strings.Contains(err.Error(), "has no unit") {
		t.Errorf("a mark without unit and repeat: %v", err)
	}
}

func TestMatchPrintsAndReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPaper(t)
		unit := rapid.SampledFrom([]measure.Unit{measure.Millimetres, measure.Inches}).Draw(t, "unit")
		got, repeat, err := paper.ParseMatch(p.Match.String(), p.Repeat, unit)
		got.Reversing = p.Match.Reversing
		if err != nil || got != p.Match || repeat != p.Repeat {
			t.Fatalf("%q reads back as %+v, %v, %v", p.Match, got, repeat, err)
		}
	})
}

func FuzzParseMatch(f *testing.F) {
	for _, seed := range []string{"free", "half drop", "offset 1/3", "64/32 cm", "64/0", "offset 10 1/2 in", "21 1/2/10 in", "/", "0"} {
		f.Add(seed, int64(640*mm))
	}
	f.Fuzz(func(t *testing.T, text string, repeat int64) {
		m, whole, err := paper.ParseMatch(text, measure.Length(repeat), measure.Centimetres)
		if err != nil {
			return
		}
		if again, _, err := paper.ParseMatch(m.String(), whole, measure.Millimetres); err != nil || again != m {
			t.Errorf("%q: %q reads back as %+v, %v", text, m, again, err)
		}
	})
}

func ExampleParseMatch() {
	match, repeat, _ := paper.ParseMatch("64/32 cm", 0, measure.Millimetres)
	fmt.Println(match, "of", repeat)
	_, _, err := paper.ParseMatch("64/32", 640*measure.Millimetre, measure.Millimetres)
	fmt.Println(err)
	// Output:
	// offset 320 mm of 640 mm
	// "64/32" says the repeat is 64 mm, but it is stated as 640 mm; labels print centimetres: write 64/32 cm if so
}
