package cutting

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"firstdrop/measure"
)

// The figures of "make bench". Each benchmark does its whole work once and
// reports what it found under names that say the unit; times are medians of
// five runs in the same process unless the name says otherwise. Run them with
// -benchtime 1x.

const repetitions = 5

// clocked returns the median time of five runs.
func clocked(do func()) time.Duration {
	times := make([]time.Duration, repetitions)
	for i := range times {
		begin := time.Now()
		do()
		times[i] = time.Since(begin)
	}
	slices.Sort(times)
	return times[repetitions/2]
}

func us(d time.Duration) float64 { return float64(d.Nanoseconds()) / 1e3 }
func ms(d time.Duration) float64 { return float64(d.Nanoseconds()) / 1e6 }

// BenchmarkFigureRooms plans the 2,000 random rooms, some of them, and others of
// 41 to 60 drops, with the fewest changes of roll; the time of a room is the
// median of five.
func BenchmarkFigureRooms(b *testing.B) {
	for _, mode := range []struct {
		name  string
		any   bool
		then  []Goal
		rooms int
		large bool
	}{
		{"known", false, nil, 2000, false},
		{"any", true, nil, 2000, false},
		{"known-left-over", false, []Goal{LongestLeftover}, 2000, false},
		{"any-left-over", true, []Goal{LongestLeftover}, 2000, false},
		{"known-changes", false, []Goal{FewestChanges}, 400, false},
		{"any-changes", true, []Goal{FewestChanges}, 400, false},
		{"known-changes-41-to-60-drops", false, []Goal{FewestChanges}, 200, true},
		{"any-changes-41-to-60-drops", true, []Goal{FewestChanges}, 200, true},
	} {
		b.Run(mode.name, func(b *testing.B) {
			for b.Loop() {
				proven, rolls := 0, 0
				times := make([]time.Duration, mode.rooms)
				for seed := range times {
					spec := randomRoom(seed)
					if mode.large {
						spec, _ = roomBetween(seed, 41, 60)
					}
					if mode.any {
						spec = anyStart(spec)
					}
					var s *Solution
					times[seed] = clocked(func() { s = Solve(newProblem(b, spec), Options{Then: mode.then}) })
					rolls += len(s.Rolls)
					if s.Proven && (mode.then == nil || s.Goals[0].Proven) {
						proven++
					}
				}
				slices.Sort(times)
				b.ReportMetric(float64(mode.rooms), "rooms")
				b.ReportMetric(float64(proven), "proven")
				b.ReportMetric(float64(rolls), "rolls")
				b.ReportMetric(us(times[mode.rooms/2]), "µs-median")
				b.ReportMetric(us(times[mode.rooms*9/10]), "µs-p90")
				b.ReportMetric(us(times[mode.rooms*99/100]), "µs-p99")
				b.ReportMetric(us(times[mode.rooms-1]), "µs-most")
			}
		})
	}
}

// BenchmarkFigureSaved counts the rolls of the 2,000 rooms cut in three ways.
func BenchmarkFigureSaved(b *testing.B) {
	for b.Loop() {
		exact, hanging, full := 0, 0, 0
		for seed := range 2000 {
			spec, drops := roomWithDrops(seed)
			exact += len(Solve(newProblem(b, spec), Options{}).Rolls)
			hanging += rollsInHangingOrder(spec)
			full += rollsOfFullDrops(spec, drops)
		}
		b.ReportMetric(float64(exact), "rolls-exact")
		b.ReportMetric(float64(hanging), "rolls-in-hanging-order")
		b.ReportMetric(float64(full), "rolls-of-full-drops")
	}
}

// rollsInHangingOrder cuts piece after piece, each as early as its phase
// allows, and takes another roll when the next does not fit. To be further on
// is never better, so no other division in this order needs fewer.
func rollsInHangingOrder(s Spec) int {
	rolls, at := 0, s.Roll.Length
	for _, p := range s.Pieces {
		next := at + (p.Phase - s.Roll.Start.Phase - at).Mod(s.Repeat) + p.Length
		if next > s.Roll.Length {
			rolls++
			next = (p.Phase - s.Roll.Start.Phase).Mod(s.Repeat) + p.Length
		}
		at = next
	}
	return rolls
}

// rollsOfFullDrops counts every drop as a full one rounded up to whole repeats.
func rollsOfFullDrops(s Spec, drops int) int {
	full := measure.Length(0)
	for _, p := range s.Pieces {
		full = max(full, p.Length)
	}
	if s.Repeat > 0 {
		full = (full + s.Repeat - 1) / s.Repeat * s.Repeat
	}
	each := int(s.Roll.Length / full)
	return (drops + each - 1) / each
}

// BenchmarkFigureSolvers times every twentieth room with the package and with
// each general solver (whole process: reading, solving, writing), and reports
// how many times longer the solver takes. Counts must agree. Rooms that the
// solver does not finish are left out of the times.
func BenchmarkFigureSolvers(b *testing.B) {
	const rooms, seconds = 100, "2"
	dir := b.TempDir()
	for _, with := range solvers(b) {
		b.Run(with.name, func(b *testing.B) {
			for b.Loop() {
				own, other, unfinished := time.Duration(0), time.Duration(0), 0
				for seed := range rooms {
					if o, s, ok := racedOften(b, with, randomRoom(seed*20), dir, seconds); ok {
						own, other = own+o, other+s
					} else {
						unfinished++
					}
				}
				b.ReportMetric(float64(other)/float64(own), "times-longer")
				b.ReportMetric(us(own)/float64(rooms-unfinished), "own-µs/room")
				b.ReportMetric(us(other)/float64(rooms-unfinished), "solver-µs/room")
				b.ReportMetric(float64(unfinished), "not-finished")
			}
		})
	}
}

// racedOften is raced with the medians of five runs.
func racedOften(b *testing.B, with solver, spec Spec, dir, seconds string) (own, other time.Duration, ok bool) {
	owns, others := make([]time.Duration, repetitions), make([]time.Duration, repetitions)
	for i := range owns {
		if owns[i], others[i], ok = raced(b, with, spec, dir, seconds); !ok {
			return 0, 0, false
		}
	}
	slices.Sort(owns)
	slices.Sort(others)
	return owns[repetitions/2], others[repetitions/2], true
}

// raced times one question with the package and with a solver, whose count
// must be the same; ok is false if the solver did not finish.
func raced(b *testing.B, with solver, spec Spec, dir, seconds string) (own, other time.Duration, ok bool) {
	file := filepath.Join(dir, "model.lp")
	if err := arcFlow(spec).writeTo(file); err != nil {
		b.Fatal(err)
	}
	begin := time.Now()
	s := Solve(newProblem(b, spec), Options{})
	own = time.Since(begin)
	begin = time.Now()
	rolls, ok, err := with.run(file, file+".out", seconds)
	other = time.Since(begin)
	if err != nil || ok && rolls != len(s.Rolls) {
		b.Fatalf("%d rolls, %s says %d (%v)", len(s.Rolls), with.name, rolls, err)
	}
	return own, other, ok
}

// BenchmarkFigureTen solves the ten jobs.
func BenchmarkFigureTen(b *testing.B) {
	for _, j := range tenJobs(b) {
		b.Run(j.name, func(b *testing.B) {
			for b.Loop() {
				var known, any, left *Solution
				b.ReportMetric(us(clocked(func() { known = Solve(newProblem(b, j.spec), Options{}) })), "µs-known")
				b.ReportMetric(us(clocked(func() { any = Solve(newProblem(b, anyStart(j.spec)), Options{}) })), "µs-any")
				left = Solve(newProblem(b, j.spec), Options{Then: []Goal{LongestLeftover}})
				b.ReportMetric(float64(len(known.Rolls)), "rolls-known")
				b.ReportMetric(float64(len(any.Rolls)), "rolls-any")
				b.ReportMetric(float64(left.Goals[0].Value/int64(mm)), "mm-left-over")
				unproven := 0
				for _, proven := range []bool{known.Proven, any.Proven, left.Goals[0].Proven} {
					if !proven {
						unproven++
					}
				}
				b.ReportMetric(float64(unproven), "not-proven")
			}
		})
	}
}

// BenchmarkFigureHotels solves hotels of 500 rooms, compares the time with that
// of 50 rooms of as many kinds, and for known starts with cbc where that
// finishes within cbcSeconds. With free match all starts are alike.
func BenchmarkFigureHotels(b *testing.B) {
	all := solvers(b)
	for _, match := range []string{"plain", "straight", "half"} {
		for _, kinds := range []int{5, 10, 20, 30, 40} {
			large, small := hotel(500, kinds, match), hotel(50, kinds, match)
			b.Run(fmt.Sprintf("%s-%d-kinds/known", match, kinds), func(b *testing.B) {
				for b.Loop() {
					own := hotelFigures(b, large, small)
					if all[0].name == "cbc" {
						hotelByCBC(b, all[0], large, own)
					}
				}
			})
			if match == "plain" {
				continue
			}
			b.Run(fmt.Sprintf("%s-%d-kinds/any", match, kinds), func(b *testing.B) {
				for b.Loop() {
					hotelFigures(b, anyStart(large), anyStart(small))
				}
			})
		}
	}
}

// BenchmarkFigureInHand solves hotels of unknown start with left-overs in hand.
func BenchmarkFigureInHand(b *testing.B) {
	for _, match := range []string{"plain", "straight", "half"} {
		for _, kinds := range []int{5, 10, 20, 40} {
			b.Run(fmt.Sprintf("%s-%d-kinds", match, kinds), func(b *testing.B) {
				for b.Loop() {
					hotelFigures(b, inHand(hotel(500, kinds, match), 500, kinds), inHand(hotel(50, kinds, match), 50, kinds))
				}
			})
		}
	}
}

// hotelFigures reports on two hotels of as many kinds and returns the median
// time of the large one. They are timed in turn, so that what else the machine
// does strikes both.
func hotelFigures(b *testing.B, large, small Spec) time.Duration {
	specs := [2]Spec{large, small}
	var times [2][repetitions]time.Duration
	gap, steps := 0, 0
	for round := range repetitions {
		for i, spec := range specs {
			begin := time.Now()
			s := Solve(newProblem(b, spec), Options{})
			times[i][round] = time.Since(begin)
			if round == 0 {
				gap += s.Bought() - s.LowerBound
				steps = max(steps, s.Steps)
			}
		}
	}
	slices.Sort(times[0][:])
	slices.Sort(times[1][:])
	own, before := times[0][repetitions/2], times[1][repetitions/2]
	b.ReportMetric(ms(own), "ms")
	b.ReportMetric(float64(own)/float64(before), "times-500")
	b.ReportMetric(float64(gap), "gap")
	b.ReportMetric(float64(steps), "steps")
	return own
}

// cbcSeconds is what cbc gets for a hotel.
const cbcSeconds = "5"

// hotelByCBC reports how many times longer cbc takes, or that it does not
// finish in time.
func hotelByCBC(b *testing.B, cbc solver, spec Spec, own time.Duration) {
	if _, other, ok := raced(b, cbc, spec, b.TempDir(), cbcSeconds); ok {
		b.ReportMetric(float64(other)/float64(own), "times-longer-cbc")
		b.ReportMetric(ms(other), "cbc-ms")
		return
	}
	b.ReportMetric(1, "cbc-not-finished")
}

// BenchmarkFigureFamilies solves twenty of each size of each family.
func BenchmarkFigureFamilies(b *testing.B) {
	for b.Loop() {
		asked, proven, slowest := 0, 0, time.Duration(0)
		for _, f := range families() {
			r := f.seed()
			took := time.Duration(0)
			for range 20 {
				p := newProblem(b, f.make(&r))
				begin := time.Now()
				s := Solve(p, Options{})
				took = max(took, time.Since(begin))
				asked++
				if s.Proven {
					proven++
				}
			}
			if slowest = max(slowest, took); f.want > 0 {
				b.ReportMetric(ms(took), fmt.Sprintf("ms-slowest-triplets-%d", 3*f.want))
			}
		}
		b.ReportMetric(float64(asked), "questions")
		b.ReportMetric(float64(asked-proven), "not-proven")
		b.ReportMetric(ms(slowest), "ms-slowest")
	}
}

// BenchmarkFigurePricing counts what one pricing pass allocates.
func BenchmarkFigurePricing(b *testing.B) {
	w := newWork(newProblem(b, anyStart(hotel(50, 20, "half"))), DefaultSteps)
	defer w.free()
	copy(w.weight, w.p.length)
	w.heaviest()
	allocations := 0.0
	for b.Loop() {
		allocations = testing.AllocsPerRun(100, func() {
			w.heaviestOn(0)
			w.heaviest()
		})
	}
	b.ReportMetric(allocations, "allocations")
}
