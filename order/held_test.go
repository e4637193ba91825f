package order

import (
	"errors"
	"strings"
	"testing"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// stocked plans pieces from a stock.
func stocked(t testing.TB, spec cutting.Spec) Job {
	t.Helper()
	p, err := cutting.NewProblem(spec)
	if err != nil {
		t.Fatal(err)
	}
	job := Job{Plan: cutting.Solve(p, cutting.Options{})}
	for i, piece := range spec.Pieces {
		job.Pieces = append(job.Pieces, Piece{Piece: piece, Need: piece.Length, Wall: i / 4})
	}
	return job
}

func hand(length measure.Length) cutting.Stock {
	return cutting.Stock{Roll: cutting.Roll{Length: length}, Count: 1, InHand: true}
}

func onSale(length measure.Length, count int) cutting.Stock {
	return cutting.Stock{Roll: cutting.Roll{Length: length}, Count: count}
}

// A roll in hand has its true length in every job, one to be bought what the
// label allows. Eight drops of 2.50 m, four of them from the roll in hand of
// exactly 10.00 m: the bought one gives the other four with a chance of
// (10.200 75 − 10.00)/0.3015 = 66.58 % (EN 233 allows 9.899 25 to 10.200 75 m).
func TestHeldRollsAreAsLongAsTheyAre(t *testing.T) {
	job := stocked(t, cutting.Spec{
		Stock:  []cutting.Stock{hand(10000 * mm), onSale(10050*mm, 0)},
		Pieces: times(8, cutting.Piece{Length: 2500 * mm}),
	})
	c := curve(t, job, Chances{Length: 15}, 20_000, 1)
	if c.Rolls != 1 {
		t.Fatalf("%d rolls to buy, want 1", c.Rolls)
	}
	near(t, "one bought roll", c.Planned(), 0.665837)
	if c.OneLess().Of != 0 || c.OneMore().Of != c.Jobs || c.Never != 0 {
		t.Errorf("none bought: %d, two: %d, never: %d", c.OneLess().Of, c.OneMore().Of, c.Never)
	}
}

// Of a roll in hand that nobody has opened the design begins anywhere. One of
// 2.80 m gives a drop of 2.50 m out of a repeat of 0.60 m when no more than 0.30 m
// runs by: half of the beginnings, but for the end points.
func TestHeldRollNotOpened(t *testing.T) {
	spec := cutting.Spec{
		Repeat: 600 * mm,
		Stock:  []cutting.Stock{hand(2800 * mm), onSale(10050*mm, 0)},
		Pieces: []cutting.Piece{{Length: 2500 * mm, Phase: 100 * mm}},
	}
	near(t, "none bought", curve(t, stocked(t, spec), Chances{}, 20_000, 3).At(0), 0.5)
	for _, tt := range []struct {
		begins measure.Length
		enough int
	}{{0, 500}, {100 * mm, 500}, {410 * mm, 500}, {399 * mm, 0}} {
		spec.Stock[0].Start = cutting.StartAt(tt.begins)
		if c := curve(t, stocked(t, spec), Chances{}, 500, 3); c.At(0).Of != tt.enough {
			t.Errorf("known to begin at %v: none bought is enough in %d of 500 jobs, want %d", tt.begins, c.At(0).Of, tt.enough)
		}
	}
}

// A flaw divides a roll, and so does a new part: 10 m with a flaw at 4 m to 4.1 m
// gives one drop of 2.50 m before it and two behind, by hand.
func TestFlawsAndPartsAreHonoured(t *testing.T) {
	flawed := hand(10000 * mm)
	flawed.Flaws = []cutting.Flaw{{From: 4000 * mm, To: 4100 * mm}}
	parts := cutting.Stock{Count: 1, InHand: true, Parts: []cutting.Roll{{Length: 4900 * mm}, {Length: 5100 * mm}}}
	for name, s := range map[string]cutting.Stock{"flaw": flawed, "parts": parts} {
		for n, want := range map[int]int{3: 100, 4: 0} {
			job := stocked(t, cutting.Spec{Stock: []cutting.Stock{s, onSale(10050*mm, 0)}, Pieces: times(n, cutting.Piece{Length: 2500 * mm})})
			if got := curve(t, job, Chances{}, 100, 1).At(0).Of; got != want {
				t.Errorf("%s: %d drops without buying in %d of 100 jobs, want %d", name, n, got, want)
			}
		}
	}
}

// Only so many rolls are simulated as are to be had: of one spoiled drop in ten,
// two drops from one roll of 5 m come out whole with a chance of 0.9².
func TestNoMoreThanAreToBeHad(t *testing.T) {
	job := stocked(t, cutting.Spec{Stock: []cutting.Stock{onSale(5000*mm, 1)}, Pieces: times(2, cutting.Piece{Length: 2500 * mm})})
	c := curve(t, job, Chances{Spoiled: 100}, 20_000, 1)
	near(t, "one roll", c.Planned(), 0.81)
	if last := c.Enough[len(c.Enough)-1]; last.Rolls != 1 || c.Never+last.Jobs != c.Jobs {
		t.Errorf("the curve ends at %+v; %d jobs never", last, c.Never)
	}
}

// Goods that shade come off in order. Drops of 3, 1, 3, 1, 3, 1 m from rolls of
// 4 m fill three of them; in the order 3, 3, 3, 1, 1, 1 each long one takes its
// own and the short ones follow on the last: 3 + 1, then 1 + 1 on a fourth.
func TestInOrder(t *testing.T) {
	long, short := cutting.Piece{Length: 3000 * mm}, cutting.Piece{Length: 1000 * mm}
	for _, tt := range []struct {
		pieces []cutting.Piece
		rolls  int
	}{
		{[]cutting.Piece{long, short, long, short, long, short}, 3},
		{[]cutting.Piece{long, long, long, short, short, short}, 4},
	} {
		job := stocked(t, cutting.Spec{Roll: cutting.Roll{Length: 4000 * mm}, Pieces: tt.pieces, InOrder: true})
		c := curve(t, job, Chances{}, 50, 1)
		if c.Rolls != tt.rolls || c.Planned().Of != 50 || c.OneLess().Of != 0 {
			t.Errorf("%d rolls planned, want %d; enough in %d of 50 jobs, one less in %d", c.Rolls, tt.rolls, c.Planned().Of, c.OneLess().Of)
		}
	}
}

// A strip is longer where one of its narrow pieces must be: two pieces of 2.45 m
// beside each other, both measured short of 2.50 m by 50 mm of surplus.
func TestStripsGrow(t *testing.T) {
	piece := cutting.Piece{Length: 2500 * mm}
	job := stocked(t, cutting.Spec{Roll: cutting.Roll{Length: 5000 * mm}, Pieces: times(2, piece)})
	for i := range job.Pieces {
		job.Pieces[i] = Piece{Piece: piece, Lies: []Lie{
			{Piece: Piece{Piece: piece, Need: 2450 * mm, Wall: 0}},
			{Piece: Piece{Piece: cutting.Piece{Length: 2300 * mm}, Need: 2250 * mm, Wall: 1}, Offset: 200 * mm},
		}}
	}
	tr, err := newTrial(job, &Chances{Measuring: 10 * mm, Trim: 50 * mm, Step: mm})
	if err != nil {
		t.Fatal(err)
	}
	grown := 0
	for i := range 400 {
		tr.source.begin(1, i)
		most := max(tr.source.height(0), tr.source.height(1), 0).CeilTo(mm)
		if got := tr.length(&job.Pieces[0]); got != 2500*mm+most {
			t.Fatalf("job %d: the strip is cut %v long, want %v more than planned", i, got, most)
		}
		if most > 0 {
			grown++
		}
	}
	// One of two walls is higher than measured in three jobs of four.
	if grown < 270 || grown > 330 {
		t.Errorf("the strip grew in %d of 400 jobs", grown)
	}
}

// What cannot be simulated is refused in words, never simulated wrongly.
func TestRefused(t *testing.T) {
	for _, tt := range []struct {
		spec cutting.Spec
		want string
	}{
		{cutting.Spec{Stock: []cutting.Stock{onSale(5000*mm, 1)}, Pieces: times(3, cutting.Piece{Length: 2500 * mm})}, "lacks paper"},
	} {
		var bad *ChanceError
		if _, err := Certainty(stocked(t, tt.spec), Chances{}, 10, 1); !errors.As(err, &bad) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("error %v, want one that says %q", err, tt.want)
		}
	}
}

// Cliffs count rolls to buy. Eight drops of 2.50 m from 10.00 m in hand and one
// bought roll of 10.05 m: 1 mm higher and the roll in hand gives three, so that
// five must come out of bought ones; the bought roll alone stands 12 mm.
func TestCliffsCountRollsToBuy(t *testing.T) {
	pieces := times(8, cutting.Piece{Length: 2500 * mm})
	c := &Cutting{Head: 50 * mm, Foot: 50 * mm, Step: mm, Spec: cutting.Spec{
		Stock: []cutting.Stock{hand(10000 * mm), onSale(10050*mm, 0)}, Pieces: pieces,
	}}
	for _, p := range pieces {
		c.Pieces = append(c.Pieces, Piece{Piece: p, Need: 2400 * mm, Ceiling: true})
	}
	cliffs, err := c.Cliffs()
	if err != nil {
		t.Fatal(err)
	}
	if len(cliffs) == 0 || cliffs[0].Quantity != WallHeight || cliffs[0].Change != mm || cliffs[0].Planned != 1 || cliffs[0].Rolls != 2 {
		t.Fatalf("cliffs %+v, want first 1 mm higher walls: 2 to buy instead of 1", cliffs)
	}
	for _, k := range cliffs {
		if k.Quantity == RollLength && k.Change != -51*mm {
			t.Errorf("bought rolls may be shorter by %v, want 50 mm: the roll in hand stays as it is", k.Holds())
		}
	}
}
