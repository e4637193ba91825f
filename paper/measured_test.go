package paper

import (
	"errors"
	"math/rand/v2"
	"testing"

	"firstdrop/measure"
)

// The first cases are those of trade diaries (wallpaperlady.wordpress.com, 2018/08/14: a
// label says drop, the truth is a cycle of four strips; tag/pattern-repeat, page 2: 25 1/4 in
// of drop are 5 in straight, and 6 3/4 in are 3/4 in); the others follow from what the words
// for matches mean (the same source, tag/multiple-drop-pattern-match).
func TestMeasuredDesign(t *testing.T) {
	const mm, in = measure.Millimetre, measure.Inch
	for name, c := range map[string]struct {
		repeat measure.Length
		lower  []measure.Length
		want   string
	}{
		"label says drop, four strips":  {25 * in, []measure.Length{25 * in / 4, 25 * in / 2, 75 * in / 4, 0}, "offset 3/4"},
		"label says 25 1/4 in drop":     {5 * in, []measure.Length{0, 0, 0, 0}, "straight"},
		"label says 6 3/4 in":           {3 * in / 4, []measure.Length{0, 0}, "straight"},
		"next strip at the same height": {640 * mm, []measure.Length{2 * mm}, "straight"},
		"second strip":                  {642 * mm, []measure.Length{320 * mm, -3 * mm, 323 * mm}, "half drop"},
		"third strip, rising":           {640 * mm, []measure.Length{-213 * mm, 214 * mm, 1 * mm}, "offset 1/3"},
		"third strip, falling":          {640 * mm, []measure.Length{213 * mm, -214 * mm, -1 * mm}, "offset 2/3"},
		"a whole repeat lower":          {640 * mm, []measure.Length{640 * mm, 1280 * mm}, "straight"},
		"a cycle of eight, 64/24":       {640 * mm, []measure.Length{400 * mm, 160 * mm, 560 * mm, 320 * mm}, "offset 3/8"},
		"no part of the repeat":         {640 * mm, []measure.Length{613 * mm, 586 * mm, 559 * mm}, "offset 27 mm"},
		"a small repeat":                {40 * mm, []measure.Length{19 * mm, 0}, "half drop"},
	} {
		m := Measured{c.repeat, c.lower}
		if d, err := m.Design(); err != nil || d.Match.String() != c.want || d.Repeat != c.repeat {
			t.Errorf("%s: %v, %v; want %s", name, d.Match, err, c.want)
		}
	}
}

func TestMeasuredRefuses(t *testing.T) {
	const mm = measure.Millimetre
	for name, c := range map[string]struct {
		m     Measured
		field string
	}{
		"no repeat":           {Measured{Lower: []measure.Length{0}}, "repeat"},
		"too large":           {Measured{Repeat: measure.MaxLength + 1, Lower: []measure.Length{0}}, "repeat"},
		"no strips":           {Measured{Repeat: 640 * mm}, "lower"},
		"a slip":              {Measured{640 * mm, []measure.Length{320 * mm, 100 * mm}}, "lower[1]"},
		"level, then not":     {Measured{640 * mm, []measure.Length{0, 6 * mm, 12 * mm}}, "lower[1]"},
		"beyond all strips":   {Measured{640 * mm, []measure.Length{-measure.MaxLength - 1}}, "lower[0]"},
		"an odd step, a slip": {Measured{640 * mm, []measure.Length{613 * mm, 586 * mm, 500 * mm}}, "lower[2]"},
	} {
		d, err := c.m.Design()
		var e *MeasuredError
		if !errors.As(err, &e) || e.Field != c.field {
			t.Errorf("%s: %v, %v; want field %s", name, d, err, c.field)
		}
	}
}

// Whatever design strips are cut from, and however a tape reads them within half of what it
// tells, the design comes back, and with it where the motif stands in every strip.
func TestMeasuredDesignComesBack(t *testing.T) {
	const mm = measure.Millimetre
	r := rand.New(rand.NewPCG(4, 235))
	for range 20_000 {
		p := Paper{Repeat: measure.Length(300+r.IntN(900)) * mm, Match: Match{Kind: Straight}}
		if den := int64(1 + r.IntN(mostStrips)); den > 1 {
			if p.Match = (Match{Kind: Offset, Num: 1 + r.Int64N(den-1), Den: den}); gcd(den, p.Match.Num) > 1 {
				continue
			}
		}
		m := Measured{Repeat: p.Repeat}
		for i := 1; i <= 1+r.IntN(5); i++ {
			m.Lower = append(m.Lower, measure.Length(r.IntN(5)-2)*mm-p.Shift(i)+p.Repeat*measure.Length(r.IntN(3)-1))
		}
		d, err := m.Design()
		if err != nil {
			t.Fatalf("%v, %v: %v", p.Match, m, err)
		}
		for k, l := range m.Lower {
			q := Paper{Repeat: d.Repeat, Match: d.Match}
			if off := (q.Shift(k+1) + l).Mod(p.Repeat); min(off, p.Repeat-off) > m.tells() {
				t.Fatalf("%v, %v: %v does not go with strip %d", p.Match, m, d.Match, k+2)
			}
		}
		if p.Repeat/(mostStrips*(mostStrips-1)) > 8*mm && d.Match != p.Match { // no two parts are as near as that
			t.Fatalf("%v, %v: %v", p.Match, m, d.Match)
		}
	}
}
