package order

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
)

func find(cliffs []Cliff, q Quantity, up bool) (Cliff, bool) {
	for _, c := range cliffs {
		if c.Quantity == q && (c.Change > 0) == up {
			return c, true
		}
	}
	return Cliff{}, false
}

// cuttingOf asks for pieces that all reach the ceiling, with 50 mm at each end.
func cuttingOf(repeat, roll measure.Length, pieces ...cutting.Piece) *Cutting {
	c := &Cutting{
		Spec: cutting.Spec{Repeat: repeat, Roll: cutting.Roll{Length: roll}, Pieces: pieces},
		Head: 50 * mm, Foot: 50 * mm, Step: mm,
	}
	for _, p := range pieces {
		c.Pieces = append(c.Pieces, Piece{Piece: p, Need: p.Length - 100*mm, Ceiling: true})
	}
	return c
}

// EN 233 allows a roll of 10.05 m to be 9.90 m: four drops of 2.50 m come out of
// 10.00 m and not out of less; four of 2.47 m out of 9.88 m (trade facts 1.1).
func TestRollLengthCliff(t *testing.T) {
	for _, tt := range []struct {
		drop, holds measure.Length
	}{{2500 * mm, 10000 * mm}, {2470 * mm, 9880 * mm}} {
		c := cuttingOf(0, 10050*mm, times(4, cutting.Piece{Length: tt.drop})...)
		cliffs, err := Cliffs(c.Spec, c.Changes())
		if err != nil {
			t.Fatal(err)
		}
		got, ok := find(cliffs, RollLength, false)
		if !ok || c.Spec.Roll.Length+got.Holds() != tt.holds || got.Rolls != 2 || got.Planned != 1 || !got.Proven {
			t.Errorf("drops of %v: %+v, want one roll down to %v", tt.drop, got, tt.holds)
		}
	}
	// Four drops of 2.50 m leave 50 mm: 12.5 mm each.
	c := cuttingOf(0, 10050*mm, times(4, cutting.Piece{Length: 2500 * mm})...)
	cliffs, _ := Cliffs(c.Spec, c.Changes())
	for _, q := range []Quantity{WallHeight, HeadAllowance, FootAllowance} {
		if got, ok := find(cliffs, q, true); !ok || got.Change != 13*mm || got.Rolls != 2 {
			t.Errorf("%v: %+v, want 2 rolls from 13 mm more", q, got)
		}
		if got, ok := find(cliffs, q, false); ok {
			t.Errorf("%v: %+v, but fewer than one roll there are not", q, got)
		}
	}
}

// A paperhanger's case (practice 2, pain 9): an 11 ft wall and a long repeat
// leave 8 ft tails. With a repeat of 25 in and a double roll of 33 ft, a drop of
// 11 ft and 4 in to trim takes six repeats, two drops 25 ft, and 8 ft are left.
// Worked by hand: a third drop ends at the latest 25 in (the wait for the first
// phase) and ten repeats on, so it may be 396 − 25 − 250 = 121 in long, 15 in
// less than it is: 381 mm. Twelve drops then take 4 rolls instead of 6.
func TestLongTails(t *testing.T) {
	const inch = measure.Inch
	c := cuttingOf(25*inch, 396*inch, times(12, cutting.Piece{Length: 136 * inch, Phase: 3 * inch})...)
	c.Step = 0
	cliffs, err := Cliffs(c.Spec, []Change{{Quantity: WallHeight, Down: 400 * mm, Up: 100 * mm, Spec: c.Higher}})
	if err != nil {
		t.Fatal(err)
	}
	got, ok := find(cliffs, WallHeight, false)
	if !ok || got.Change != -381*mm || got.Planned != 6 || got.Rolls != 4 || !got.Proven {
		t.Errorf("%+v, want 4 rolls from 381 mm lower", got)
	}
	// As high as it is, a third drop ends at the latest 25 + 2·150 + 136 = 461 in
	// on: 65 in more than the roll has.
	cliffs, _ = Cliffs(c.Spec, []Change{{Quantity: RollLength, Up: 70 * inch, Step: inch, Spec: c.LongerRoll, Monotone: true}})
	if got, ok = find(cliffs, RollLength, true); !ok || got.Change != 65*inch || got.Rolls != 4 {
		t.Errorf("%+v, want 4 rolls from 65 in more", got)
	}
}

func TestPieceOutgrowsRoll(t *testing.T) {
	c := cuttingOf(0, 2600*mm, cutting.Piece{Length: 2580 * mm})
	cliffs, err := Cliffs(c.Spec, c.Changes())
	if err != nil {
		t.Fatal(err)
	}
	if got, ok := find(cliffs, WallHeight, true); !ok || got.Change != 21*mm || got.Rolls != 0 || got.Planned != 1 {
		t.Errorf("%+v, want no roll for the piece from 21 mm more", got)
	}
	if _, err := Cliffs(cuttingOf(0, 2600*mm, cutting.Piece{Length: 2700 * mm}).Spec, nil); err == nil {
		t.Error("a plan that cannot be cut has cliffs")
	}
}

// plainScan is the definition: every change in turn, each solved by itself.
func plainScan(spec cutting.Spec, c Change, sign measure.Length) (change measure.Length, rolls int, ok bool) {
	count := func(s cutting.Spec) int {
		p, err := cutting.NewProblem(s)
		if err != nil {
			return 0
		}
		return len(cutting.Solve(p, cutting.Options{}).Rolls)
	}
	planned, most := count(spec), c.Up
	if sign < 0 {
		most = c.Down
	}
	for d := c.Step; d <= most; d += c.Step {
		s, err := c.Spec(sign * d)
		if err != nil || s.Roll.Length <= 0 {
			return 0, 0, false
		}
		if n := count(s); n != planned {
			return sign * d, n, true
		}
	}
	return 0, 0, false
}

func TestCliffsAgainstPlainScan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		repeat := measure.Length(rapid.SampledFrom([]int{0, 400, 640}).Draw(t, "repeat")) * mm
		var pieces []cutting.Piece
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			p := cutting.Piece{Length: measure.Length(rapid.IntRange(400, 3000).Draw(t, "length")) * mm}
			if repeat > 0 {
				p.Phase = measure.Length(rapid.IntRange(0, int(repeat/mm)-1).Draw(t, "phase")) * mm
			}
			pieces = append(pieces, times(rapid.IntRange(1, 4).Draw(t, "count"), p)...)
		}
		c := cuttingOf(repeat, 5000*mm, pieces...)
		for i := range c.Pieces {
			c.Pieces[i].Ceiling = rapid.Bool().Draw(t, "ceiling")
			c.Pieces[i].FootFirst = rapid.Bool().Draw(t, "foot first")
		}
		changes := c.Changes()
		for i := range changes {
			changes[i].Step = 7 * mm
			changes[i].Down, changes[i].Up = min(changes[i].Down, 42*mm), min(changes[i].Up, 42*mm)
		}
		cliffs, err := Cliffs(c.Spec, changes)
		if err != nil {
			t.Skip(err)
		}
		for i := 1; i < len(cliffs); i++ {
			if cliffs[i-1].Change.Abs() > cliffs[i].Change.Abs() {
				t.Fatalf("not nearest first: %+v", cliffs)
			}
		}
		for _, change := range changes {
			for _, up := range []bool{false, true} {
				sign := measure.Length(-1)
				if up {
					sign = 1
				}
				want, rolls, ok := plainScan(c.Spec, change, sign)
				got, found := find(cliffs, change.Quantity, up)
				if found != ok || ok && (got.Change != want || got.Rolls != rolls) {
					t.Fatalf("%v: %+v (%v), plain scan %v with %d rolls (%v)", change.Quantity, got, found, want, rolls, ok)
				}
			}
		}
	})
}

// Pieces re-derived for a changed height, allowance or repeat are those that a
// layout made with that height, allowance or repeat has.
func TestChangesAgainstLayouts(t *testing.T) {
	lay := func(height string, repeat measure.Length, head, foot measure.Length, reversing bool) *hanging.Layout {
		label := &paper.Paper{
			Width: 530 * mm, RollLength: 10050 * mm, Repeat: repeat, Pack: 1,
			Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 2, Reversing: reversing},
		}
		rules := hanging.DefaultRules()
		rules.Head, rules.Foot = head, foot
		h, err := hanging.New(roomtext.Run("A 2650x"+height+" | B 2100x"+height+" window(600+900 900+800)"), label, rules)
		if err != nil {
			t.Fatal(err)
		}
		l, err := h.Layout(hanging.Choice{Design: 100 * mm})
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for _, reversing := range []bool{false, true} {
		l := lay("2400", 640*mm, 50*mm, 50*mm, reversing)
		c := &Cutting{Pieces: PiecesOf(l), Head: 50 * mm, Foot: 50 * mm, Step: mm}
		c.Spec = cutting.Spec{Repeat: 640 * mm, Roll: cutting.Roll{Length: 10050 * mm}, Pieces: asCut(l)}
		for _, tt := range []struct {
			name string
			spec func(measure.Length) (cutting.Spec, error)
			want *hanging.Layout
		}{
			{"higher", c.Higher, lay("2437", 640*mm, 50*mm, 50*mm, reversing)},
			{"head", c.MoreHead, lay("2400", 640*mm, 87*mm, 50*mm, reversing)},
			{"foot", c.MoreFoot, lay("2400", 640*mm, 50*mm, 87*mm, reversing)},
			{"repeat", c.LongerRepeat, lay("2400", 677*mm, 50*mm, 50*mm, reversing)},
		} {
			got, err := tt.spec(37 * mm)
			if err != nil {
				t.Fatal(err)
			}
			want := asCut(tt.want)
			if len(got.Pieces) != len(want) || len(want) < 8 {
				t.Fatalf("%s: %d pieces, want %d", tt.name, len(got.Pieces), len(want))
			}
			for i := range want {
				if got.Pieces[i] != want[i] {
					t.Errorf("%s, reversing %v: piece %d is %v, want %v", tt.name, reversing, i, got.Pieces[i], want[i])
				}
			}
		}
	}
}

func asCut(l *hanging.Layout) (pieces []cutting.Piece) {
	for _, p := range l.Pieces {
		pieces = append(pieces, cutting.Piece{Length: p.Length, Phase: p.Phase})
	}
	return pieces
}

func BenchmarkCliffs(b *testing.B) {
	job := bedroomJob(b)
	c := &Cutting{Spec: job.Plan.Problem.Spec(), Pieces: job.Pieces, Head: 50 * mm, Foot: 50 * mm, Step: mm}
	for i := range c.Pieces {
		c.Pieces[i].Ceiling = true
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Cliffs(c.Spec, c.Changes()); err != nil {
			b.Fatal(err)
		}
	}
}
