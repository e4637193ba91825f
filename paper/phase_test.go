package paper_test

import (
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
	"firstdrop/paper"
)

// malerblatt.de 2018-10 (trade journal): marked 64/32, drops 1, 3, 5 are alike
// and so are 2, 4, 6; the next drop already fits after 32 cm.
func TestLabel64By32(t *testing.T) {
	p := ferns()
	p.Match, p.Repeat, _ = paper.ParseMatch("64/32 cm", 0, measure.Millimetres)
	for i, want := range []measure.Length{0, 32 * cm, 0, 32 * cm, 0, 32 * cm} {
		if got := p.Shift(i); got != want {
			t.Errorf("drop %d stands at %v, want %v", i+1, got, want)
		}
	}
}

// A multiple drop returns only after four or more drops (aaltopaint.co.nz and
// an installer's four-drop sequence, wallpaperlady.wordpress.com 2018-08-14).
func TestMultipleDropReturnsAfterFour(t *testing.T) {
	p := ferns()
	p.Match = paper.Match{Kind: paper.Offset, Num: 1, Den: 4}
	seen := map[measure.Length]int{}
	for i := range 4 {
		if before, again := seen[p.Shift(i)]; again {
			t.Errorf("drops %d and %d are alike", before, i)
		}
		seen[p.Shift(i)] = i
	}
	if p.Shift(4) != p.Shift(0) || p.Alternatives() != 4 {
		t.Errorf("drop 4 at %v, Alternatives %d", p.Shift(4), p.Alternatives())
	}
}

func TestAlternatives(t *testing.T) {
	offset := func(num, den int64) paper.Match { return paper.Match{Kind: paper.Offset, Num: num, Den: den} }
	for _, c := range []struct {
		match     paper.Match
		want      int
		reversing int // the same with alternate drops reversed
	}{
		{paper.Match{}, 1, 2},
		{paper.Match{Kind: paper.Straight}, 1, 2},
		{offset(1, 2), 2, 2},
		{offset(1, 3), 3, 6},
		{offset(2, 3), 3, 6},
		{offset(3, 4), 4, 4},
		{paper.Match{Kind: paper.Offset, Length: 24 * cm}, 8, 8},
		{paper.Match{Kind: paper.Offset, Length: 32 * cm}, 2, 2},
		{paper.Match{Kind: paper.Offset, Length: 16 * cm}, 4, 4},
	} {
		p := ferns()
		p.Match = c.match
		if got := p.Alternatives(); got != c.want {
			t.Errorf("%v: %d alternatives, want %d", c.match, got, c.want)
		}
		p.Match.Reversing = true
		if got := p.Alternatives(); got != c.reversing {
			t.Errorf("%v reversing: %d alternatives, want %d", c.match, got, c.reversing)
		}
	}
}

func TestShiftReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPaper(t)
		i := rapid.IntRange(-1_000_000, 1_000_000).Draw(t, "i")
		n := p.Alternatives()
		if got, want := p.Shift(i+n), p.Shift(i); got != want {
			t.Fatalf("Shift(%d) = %v, but %v %d drops on", i, want, got, n)
		}
		if p.IsReversed(i+n) != p.IsReversed(i) {
			t.Fatalf("drop %d hangs the other way up %d drops on", i, n)
		}
		if s := p.Shift(i); s < 0 || p.Repeat > 0 && s >= p.Repeat {
			t.Fatalf("Shift(%d) = %v lies outside the repeat", i, s)
		}
	})
}

// The exact shift is a rational number; math/big is the second opinion.
func TestShiftNeverDrifts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPaper(t)
		i := rapid.IntRange(-1_000_000, 1_000_000).Draw(t, "i")
		if p.Match.Kind != paper.Offset {
			return
		}
		repeat := big.NewRat(int64(p.Repeat), 1)
		step := big.NewRat(int64(p.Match.Length), 1)
		if p.Match.Den != 0 {
			step = new(big.Rat).Mul(repeat, big.NewRat(p.Match.Num, p.Match.Den))
		}
		exact := step.Mul(step, big.NewRat(int64(i), 1))
		off := exact.Sub(exact, big.NewRat(int64(p.Shift(i)), 1))
		turns := new(big.Rat).Quo(off, repeat)
		whole := new(big.Int).Div(new(big.Int).Add(new(big.Int).Lsh(turns.Num(), 1), turns.Denom()), new(big.Int).Lsh(turns.Denom(), 1))
		off.Sub(off, repeat.Mul(repeat, new(big.Rat).SetInt(whole)))
		if off.Abs(off).Cmp(big.NewRat(1, 2)) > 0 {
			t.Fatalf("Shift(%d) is off by %v nm", i, off)
		}
	})
}

func TestShiftOfTheFarthestDrops(t *testing.T) {
	p := ferns()
	p.Match = paper.Match{Kind: paper.Offset, Length: p.Repeat - 1}
	const last = 1<<63 - 1
	if got, want := p.Shift(last), measure.Length(-last).Mod(p.Repeat); got != want {
		t.Errorf("Shift(%d) = %v, want %v", last, got, want)
	}
}

func TestPhaseOfNeighboursDiffersByTheMatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPaper(t)
		p.Match.Reversing = false
		i := rapid.IntRange(-1000, 1000).Draw(t, "i")
		design := measure.Length(rapid.Int64Range(0, max(0, int64(p.Repeat)-1)).Draw(t, "design"))
		y := measure.Length(rapid.Int64Range(-3e9, 3e9).Draw(t, "y"))
		step := p.Match.Length
		if p.Match.Den != 0 {
			step = p.Repeat.Scaled(p.Match.Num, p.Match.Den)
		}
		miss := (p.Phase(i+1, design, y) - p.Phase(i, design, y) - step).Mod(p.Repeat)
		if miss > 1 && miss < max(0, p.Repeat-1) {
			t.Fatalf("the phases of drops %d and %d differ by the match and %v", i, i+1, miss)
		}
		if down := (p.Phase(i, design, y-7) - p.Phase(i, design, y) - 7).Mod(p.Repeat); down != 0 {
			t.Fatalf("phases do not grow downwards by as much as one goes down; off by %v", down)
		}
	})
}

// Upside down, a mark that stood at phase q stands where the phase is −q, and
// phases grow upwards.
func TestPhaseOfReversedDrops(t *testing.T) {
	p := ferns()
	p.Match.Reversing = true
	for _, c := range []struct {
		drop      int
		design, y measure.Length
		want      measure.Length
	}{
		{0, 100 * mm, 0, 100 * mm},
		{0, 100 * mm, 2400 * mm, 260 * mm}, // −2300 + 4·640
		{1, 100 * mm, 0, 220 * mm},         // −(100 + 320) + 640
		{1, 100 * mm, 30 * mm, 250 * mm},
		{2, 100 * mm, 0, 100 * mm},
		{-1, 100 * mm, 0, 220 * mm},
	} {
		if got := p.Phase(c.drop, c.design, c.y); got != c.want {
			t.Errorf("Phase(%d, %v, %v) = %v, want %v", c.drop, c.design, c.y, got, c.want)
		}
	}
}

func TestPhaseWithoutRepeat(t *testing.T) {
	p := ferns()
	p.Repeat, p.Match = 0, paper.Match{}
	if got := p.Phase(3, 5, 7); got != 0 {
		t.Errorf("Phase = %v without a repeat", got)
	}
}

func ExamplePaper_Shift() {
	p := paper.Paper{Repeat: 640 * measure.Millimetre, Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 3}}
	for i := range 4 {
		fmt.Println(i, p.Shift(i))
	}
	// Output:
	// 0 0 mm
	// 1 213.333333 mm
	// 2 426.666667 mm
	// 3 0 mm
}

func ExamplePaper_Alternatives() {
	p := paper.Paper{Repeat: 640 * measure.Millimetre}
	p.Match, _, _ = paper.ParseMatch("64/24", p.Repeat, measure.Centimetres)
	fmt.Println("the first drop comes back after", p.Alternatives())
	// Output: the first drop comes back after 8
}
