package cutting

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// sideBySide solves and checks.
func sideBySide(t testing.TB, spec NarrowSpec) *Strips {
	t.Helper()
	s, err := SideBySide(spec, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, err := range s.Check() {
		t.Errorf("%v\n%+v", err, spec)
	}
	return s
}

// bruteStrips is the least, by definition, over every way to part the narrow
// pieces into groups whose stretches do not overlap; -1 if there is none.
func bruteStrips(spec NarrowSpec, next int, groups [][]int, value func([][]int) int) int {
	if next == len(spec.Narrow) {
		return value(groups)
	}
	best := -1
	for g := range groups {
		if apart(spec, groups[g], next) {
			groups[g] = append(groups[g], next)
			best = less(best, bruteStrips(spec, next+1, groups, value))
			groups[g] = groups[g][:len(groups[g])-1]
		}
	}
	return less(best, bruteStrips(spec, next+1, append(groups, []int{next}), value))
}

// less is the lesser of two numbers of which -1 is none.
func less(a, b int) int {
	if a < 0 || b >= 0 && b < a {
		return b
	}
	return a
}

func apart(spec NarrowSpec, group []int, next int) bool {
	b := spec.Narrow[next].Across
	for _, i := range group {
		if a := spec.Narrow[i].Across; a[1]+spec.Gap > b[0] && b[1]+spec.Gap > a[0] {
			return false
		}
	}
	return true
}

// bruteBegin is the fewest rolls for these groups: for every group every phase
// at which a strip can begin, and every way to cut these from rolls.
func bruteBegin(spec NarrowSpec, groups [][]int, strips []Piece) int {
	if len(strips) == len(groups) {
		q := spec.Spec
		q.Pieces = append(append([]Piece(nil), spec.Pieces...), strips...)
		return newBrute(q).rolls()
	}
	best := -1
	for phase := range max(spec.Repeat, 1) {
		strip := Piece{bruteLength(spec, groups[len(strips)], phase), phase}
		best = less(best, bruteBegin(spec, groups, append(strips, strip)))
	}
	return best
}

// bruteLength is that of a strip for the group that begins at a phase.
func bruteLength(spec NarrowSpec, group []int, phase measure.Length) measure.Length {
	length := measure.Length(0)
	for _, i := range group {
		at := measure.Length(0)
		for spec.Repeat > 0 && (phase+at)%spec.Repeat != spec.Narrow[i].Phase {
			at++
		}
		length = max(length, at+spec.Narrow[i].Length)
	}
	return length
}

// brutePaper is the least paper cut into strips that fit a roll.
func brutePaper(spec NarrowSpec) int {
	return bruteStrips(spec, 0, nil, func(groups [][]int) int {
		sum := 0
		for _, g := range groups {
			best := -1
			for phase := range max(spec.Repeat, 1) {
				one := spec.Spec
				one.Pieces = []Piece{{bruteLength(spec, g, phase), phase}}
				if newBrute(one).rolls() == 1 {
					best = less(best, int(one.Pieces[0].Length))
				}
			}
			if best < 0 {
				return -1
			}
			sum += best
		}
		return sum
	})
}

// tinyNarrow draws a question with up to four narrow pieces and three wide.
func tinyNarrow() *rapid.Generator[NarrowSpec] {
	return rapid.Custom(func(t *rapid.T) NarrowSpec {
		num := func(lo, hi int, name string) measure.Length {
			return measure.Length(rapid.IntRange(lo, hi).Draw(t, name))
		}
		s := NarrowSpec{Width: 10, Gap: num(0, 1, "gap")}
		s.Repeat = num(0, 4, "repeat")
		s.Roll.Length = num(10, 22, "roll")
		phase := func() measure.Length { return num(0, max(0, int(s.Repeat)-1), "phase") }
		if rapid.Bool().Draw(t, "known") {
			s.Roll.Start = StartAt(phase())
		}
		longest := int(s.Roll.Length - max(0, s.Repeat-1))
		for range rapid.IntRange(0, 3).Draw(t, "wide") {
			s.Pieces = append(s.Pieces, Piece{num(1, longest, "length"), phase()})
		}
		for range rapid.IntRange(1, 4).Draw(t, "narrow") {
			low := num(0, 9, "low")
			s.Narrow = append(s.Narrow, NarrowPiece{
				Piece{num(1, longest, "length"), phase()}, [2]measure.Length{low, num(int(low)+1, 10, "high")},
			})
		}
		return s
	})
}

func TestBruteForceNarrow(t *testing.T) {
	checked, proven, saved := 0, 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		spec := tinyNarrow().Draw(rt, "spec")
		s, err := SideBySide(spec, Options{})
		if err != nil {
			rt.Fatal(err)
		}
		for _, err := range s.Check() {
			rt.Error(err)
		}
		want := bruteStrips(spec, 0, nil, func(g [][]int) int { return bruteBegin(spec, g, nil) })
		if len(s.Solution.Rolls) < want || s.LowerBound > want || s.Proven && len(s.Solution.Rolls) != want {
			rt.Errorf("%d rolls, bound %d, proven %v; brute force says %d", len(s.Solution.Rolls), s.LowerBound, s.Proven, want)
		}
		if paper := brutePaper(spec); int(s.paper()) < paper || s.LeastPaper && int(s.paper()) != paper {
			rt.Errorf("strips of %d, least %v; brute force says %d", s.paper(), s.LeastPaper, paper)
		}
		checked++
		if s.Proven {
			proven++
		}
		if cost, _ := s.Saved(); cost > 0 {
			saved++
		}
	})
	t.Logf("%d of %d proven, %d save rolls", proven, checked, saved)
	if proven < checked || saved*20 < checked {
		t.Errorf("%d of %d proven, %d save rolls", proven, checked, saved)
	}
}

// narrowRoom makes up to so many pieces of a random room narrow. All invented.
func narrowRoom(seed, most int) NarrowSpec {
	s := NarrowSpec{Spec: randomRoom(seed), Width: 530 * mm}
	r := source(uint64(seed)*77 + 5)
	all := s.Pieces
	s.Pieces = nil
	for i, p := range all {
		if len(s.Narrow) < most && r.in(0, len(all)-i-1) < most-len(s.Narrow) {
			w := r.mm(30, 300)
			low := []measure.Length{0, s.Width - w, r.mm(0, int((s.Width-w)/mm))}[r.in(0, 2)]
			s.Narrow = append(s.Narrow, NarrowPiece{p, [2]measure.Length{low, low + w}})
		} else {
			s.Pieces = append(s.Pieces, p)
		}
	}
	return s
}

// TestNarrowRooms proves random rooms with narrow pieces, the most of them for
// a room of 40 pieces and more, and at the end only narrow ones.
func TestNarrowRooms(t *testing.T) {
	for _, c := range []struct {
		name   string
		any    bool
		narrow int
		rooms  int
	}{
		{"known start, 6 narrow", false, 6, 40},
		{"any start, 6 narrow", true, 6, 40},
		{"known start, 12 narrow", false, 12, 40},
		{"any start, 12 narrow", true, 12, 40},
		{"known start, 40 narrow", false, 40, 10},
	} {
		proven, least, rolls, alone, steps := 0, 0, 0, 0, 0
		for seed := range c.rooms {
			spec := narrowRoom(30_000+seed, c.narrow)
			if c.any {
				spec.Spec = anyStart(spec.Spec)
			}
			s := sideBySide(t, spec)
			rolls, alone, steps = rolls+len(s.Solution.Rolls), alone+len(s.Alone.Rolls), max(steps, s.Steps)
			if s.LeastPaper {
				least++
			}
			if s.Proven {
				proven++
			} else {
				t.Errorf("%s, room %d: %d rolls, bound %d, %d steps", c.name, seed, len(s.Solution.Rolls), s.LowerBound, s.Steps)
			}
		}
		t.Logf("%s: %d of %d proven, %d with the least paper, %d rolls instead of %d, most steps %d", c.name, proven, c.rooms, least, rolls, alone, steps)
	}
}

func TestNarrowRefusals(t *testing.T) {
	good := NarrowSpec{Spec: Spec{Roll: Roll{Length: 9 * measure.Metre}, Pieces: []Piece{{Length: mm}}}, Width: 500 * mm}
	piece := func(length, low, high measure.Length) []NarrowPiece {
		return []NarrowPiece{{Piece{Length: length}, [2]measure.Length{low * mm, high * mm}}}
	}
	for _, c := range []struct {
		field  string
		change func(*NarrowSpec)
	}{
		{"Width", func(s *NarrowSpec) { s.Width = 0 }},
		{"Gap", func(s *NarrowSpec) { s.Gap = -1 }},
		{"Narrow[0].Across", func(s *NarrowSpec) { s.Narrow = piece(mm, 10, 501) }},
		{"Narrow[0].Across", func(s *NarrowSpec) { s.Narrow = piece(mm, 10, 10) }},
		{"Narrow[0].Across", func(s *NarrowSpec) { s.Narrow = piece(mm, -1, 10) }},
		{"Repeat", func(s *NarrowSpec) { s.Repeat = -1 }},
	} {
		spec := good
		c.change(&spec)
		_, err := SideBySide(spec, Options{})
		var se *SpecError
		if !errors.As(err, &se) || se.Field != c.field {
			t.Errorf("got %v, want a complaint about %s", err, c.field)
		}
	}
	good.Narrow = piece(10*measure.Metre, 0, 5)
	_, err := SideBySide(good, Options{})
	var pe *PieceError
	if !errors.As(err, &pe) || pe.Index != 1 || pe.Why != TooLong {
		t.Errorf("got %v, want piece 1: %s", err, TooLong)
	}
	good.Narrow = nil
	if s := sideBySide(t, good); !s.Proven || len(s.Solution.Rolls) != 1 || s.LowerBound != 1 {
		t.Errorf("no narrow piece: %+v", s)
	}
}

// Few steps give a plan and an honest bound; the same question gets the same
// answer; and the caller can end the search.
func TestNarrowSteps(t *testing.T) {
	for seed := range 20 {
		spec := narrowRoom(31_000+seed, 12)
		full := sideBySide(t, spec)
		again := sideBySide(t, spec)
		if fmt.Sprint(full.Strips, full.Steps, full.Certificate) != fmt.Sprint(again.Strips, again.Steps, again.Certificate) {
			t.Errorf("room %d: the same question, two answers", seed)
		}
		for _, o := range []Options{{Steps: 1}, {Progress: func(Progress) bool { return false }}} {
			s, err := SideBySide(spec, o)
			if err != nil {
				t.Fatal(err)
			}
			for _, err := range s.Check() {
				t.Error(err)
			}
			if len(s.Solution.Rolls) < full.LowerBound || s.LowerBound > len(full.Solution.Rolls) {
				t.Errorf("room %d: %d rolls, bound %d; the full search says %d", seed, len(s.Solution.Rolls), s.LowerBound, full.LowerBound)
			}
		}
	}
}

// With several kinds of roll there is a plan too, never dearer than cutting
// each piece alone, and the bound stays below it.
func TestNarrowMixed(t *testing.T) {
	proven := 0
	for seed := range 3 {
		spec := narrowRoom(32_000+seed, 5)
		with := mixedRoom(32_000 + seed)
		spec.Stock, spec.Lead, spec.Loss = with.Stock, with.Lead, with.Loss
		s := sideBySide(t, spec)
		if s.Proven {
			proven++
		}
	}
	t.Logf("%d of 3 proven", proven)
}

// So many different narrow pieces that strips are no longer weighed: a plan,
// and no more claimed than what holds.
func TestManyNarrow(t *testing.T) {
	r := source(3)
	spec := NarrowSpec{Spec: Spec{Repeat: 530 * mm, Roll: Roll{10_050 * mm, AnyStart}}, Width: 530 * mm}
	for range 120 {
		low := r.mm(0, 400)
		spec.Narrow = append(spec.Narrow, NarrowPiece{Piece{r.mm(300, 2500), r.mm(0, 529)}, [2]measure.Length{low, low + r.mm(20, 130)}})
	}
	s := sideBySide(t, spec)
	if len(s.Solution.Rolls) >= len(s.Alone.Rolls) || s.Proven {
		t.Errorf("%d rolls, alone %d, proven %v", len(s.Solution.Rolls), len(s.Alone.Rolls), s.Proven)
	}
}

func BenchmarkSideBySide(b *testing.B) {
	for _, any := range []bool{false, true} {
		var specs []NarrowSpec
		for seed := range 100 {
			spec := narrowRoom(33_000+seed, 12)
			if any {
				spec.Spec = anyStart(spec.Spec)
			}
			specs = append(specs, spec)
		}
		b.Run(fmt.Sprintf("anystart=%v", any), func(b *testing.B) {
			for b.Loop() {
				for _, spec := range specs {
					if _, err := SideBySide(spec, Options{}); err != nil {
						b.Fatal(err)
					}
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*len(specs)), "us/room")
		})
	}
}

// No way of putting narrow pieces together costs less than the least question,
// and none more than cutting them apart.
func TestLeastOfSideBySide(t *testing.T) {
	met := 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinyNarrow().Draw(rt, "spec")
		cost := func(s Spec) (int64, bool) {
			p, err := NewProblem(s)
			if err != nil {
				return 0, false
			}
			return Solve(p, Options{}).Cost, true
		}
		apart, ok := cost(spec.Apart())
		if !ok {
			return
		}
		least, _ := cost(spec.Least())
		s, err := SideBySide(spec, Options{})
		if err != nil {
			rt.Fatal(err)
		}
		if got := s.Solution.Cost; len(s.Solution.Missing) == 0 && (got < least || got > apart) {
			rt.Errorf("%d, not from %d to %d", got, least, apart)
		}
		if least == apart {
			met++
		}
	})
	if met == 0 {
		t.Error("too tame")
	}
}
