package cutting

import (
	"os"
	"slices"
	"testing"
	"time"

	"firstdrop/measure"
)

// source is a small seeded generator (splitmix64), so that the random rooms
// are the same for ever, whatever the library does.
type source uint64

func (s *source) next() uint64 {
	*s += 0x9e3779b97f4a7c15
	return mix(uint64(*s))
}

// in returns a number in [lo, hi].
func (s *source) in(lo, hi int) int { return lo + int(s.next()%uint64(hi-lo+1)) }

func (s *source) mm(lo, hi int) measure.Length { return measure.Length(s.in(lo, hi)) * mm }

// randomRoom is the rule for the 2,000 random rooms. All of it is invented;
// sizes are common practice.
//
//	repeat      one in six free match, else 16 to 915 mm
//	match       straight or half-drop, one to one
//	roll        10.05 m, its start phase anywhere
//	drops       10 to 40, in hanging order
//	full drop   wall 2,250 to 3,150 mm, plus 100 mm allowance
//	openings    0 to 2 doors of 2 drops, piece above 180 to 600 mm high; 0 to 3
//	            windows of 2 or 3 drops, piece above 150 to 450 mm, below 600 to
//	            1,100 mm high; plus 100 mm each
//	phase       upper end of the wall anywhere in the repeat; a piece that
//	            begins lower is that much further on in the design; every
//	            second drop half a repeat further with half-drop
func randomRoom(seed int) Spec {
	s, _ := roomWithDrops(seed)
	return s
}

// roomWithDrops is randomRoom and its number of drops, each of which may be of
// several pieces.
func roomWithDrops(seed int) (s Spec, drops int) { return roomBetween(seed, 10, 40) }

// roomBetween is roomWithDrops with at least and at most so many drops.
func roomBetween(seed, least, most int) (s Spec, drops int) {
	r := source(uint64(seed) * 0x2545f4914f6cdd1d)
	s = Spec{Roll: Roll{Length: 10_050 * mm}}
	if r.in(1, 6) > 1 {
		s.Repeat = r.mm(16, 915)
	}
	half := r.in(0, 1) == 1
	wall, top := r.mm(2250, 3150), r.mm(0, 999)
	phase := func(drop int, below measure.Length) measure.Length {
		q := top + below
		if half && drop%2 == 1 {
			q += s.Repeat / 2
		}
		return q.Mod(s.Repeat)
	}
	s.Roll.Start = StartAt(r.mm(0, 914).Mod(s.Repeat))
	n := r.in(least, most)
	opening := make([]int, n) // 1 door, 2 window
	doors, windows := r.in(0, 2), r.in(0, 3)
	for i := range doors + windows {
		kind, width := 1, 2
		if i >= doors {
			kind, width = 2, r.in(2, 3)
		}
		for at := r.in(0, n-width); width > 0; width-- {
			opening[at+width-1] = kind
		}
	}
	overDoor, overWindow, underWindow := r.mm(180, 600), r.mm(150, 450), r.mm(600, 1100)
	const allowance = 100 * mm
	for i := range n {
		switch opening[i] {
		case 0:
			s.Pieces = append(s.Pieces, Piece{wall + allowance, phase(i, 0)})
		case 1:
			s.Pieces = append(s.Pieces, Piece{overDoor + allowance, phase(i, 0)})
		case 2:
			s.Pieces = append(s.Pieces, Piece{overWindow + allowance, phase(i, 0)},
				Piece{underWindow + allowance, phase(i, wall-underWindow)})
		}
	}
	return s, n
}

// TestRandomRooms plans the 2,000 rooms with known and unknown start, half of
// them (with FIRSTDROP_ORACLE=full all) also with the best left-over, a fifth
// with the fewest changes of roll, and of those some with 41 to 60 drops; all
// must be proven.
func TestRandomRooms(t *testing.T) {
	rooms, share := 2000, 2
	switch {
	case os.Getenv("FIRSTDROP_ORACLE") == "full":
		share = 1
	case testing.Short():
		rooms, share = 300, 1
	}
	for _, mode := range []struct {
		name  string
		any   bool
		then  []Goal
		rooms int
		large bool // 41 to 60 drops instead of 10 to 40
	}{
		{"known start", false, nil, rooms, false},
		{"any start", true, nil, rooms, false},
		{"known start, best left-over", false, []Goal{LongestLeftover}, rooms / share, false},
		{"any start, best left-over", true, []Goal{LongestLeftover}, rooms / share, false},
		{"known start, fewest changes", false, []Goal{FewestChanges}, rooms / 5, false},
		{"any start, fewest changes", true, []Goal{FewestChanges}, rooms / 5, false},
		{"known start, fewest changes, large", false, []Goal{FewestChanges}, rooms / 10, true},
		{"any start, fewest changes, large", true, []Goal{FewestChanges}, rooms / 10, true},
	} {
		rooms := mode.rooms
		total, proven, steps := 0, 0, 0
		var times []time.Duration
		for seed := range rooms {
			spec := randomRoom(seed)
			if mode.large {
				spec, _ = roomBetween(seed, 41, 60)
			}
			if mode.any {
				spec = anyStart(spec)
			}
			p := newProblem(t, spec)
			begin := time.Now()
			s := Solve(p, Options{Then: mode.then})
			times = append(times, time.Since(begin))
			total += len(s.Rolls)
			steps = max(steps, s.Steps)
			if s.Proven && (mode.then == nil || s.Goals[0].Proven) {
				proven++
			} else {
				t.Errorf("room %d, %s: %d rolls, bound %d, %+v", seed, mode.name, len(s.Rolls), s.LowerBound, s.Goals)
			}
			for _, err := range s.Check() {
				t.Errorf("room %d, %s: %v", seed, mode.name, err)
			}
		}
		slices.Sort(times)
		t.Logf("%s: %d of %d proven, %d rolls, median %v, p90 %v, p99 %v, most %v; most steps %d", mode.name, proven, rooms, total,
			times[rooms/2], times[rooms*9/10], times[rooms*99/100], times[rooms-1], steps)
	}
}
