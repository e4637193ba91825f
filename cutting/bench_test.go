package cutting

import (
	"fmt"
	"path/filepath"
	"testing"
	"time"
)

func BenchmarkTenJobs(b *testing.B) {
	for _, j := range tenJobs(b) {
		for _, mode := range []string{"known", "any"} {
			spec := j.spec
			if mode == "any" {
				spec = anyStart(spec)
			}
			b.Run(j.name+"/"+mode, func(b *testing.B) {
				b.ReportAllocs()
				var s *Solution
				for b.Loop() {
					s = Solve(newProblem(b, spec), Options{})
				}
				b.ReportMetric(float64(len(s.Rolls)), "rolls")
				b.ReportMetric(float64(len(s.Rolls)-s.LowerBound), "gap")
			})
		}
	}
}

// BenchmarkRooms plans one of the 2,000 random rooms per round.
func BenchmarkRooms(b *testing.B) {
	specs := make([]Spec, 2000)
	for seed := range specs {
		specs[seed] = randomRoom(seed)
	}
	for _, mode := range []string{"known", "any"} {
		for _, what := range []struct {
			name string
			do   func(*Problem)
		}{
			{"problem", func(*Problem) {}},
			{"quick", func(p *Problem) { QuickRolls(p) }},
			{"bound", func(p *Problem) { LowerBound(p) }},
			{"solve", func(p *Problem) { Solve(p, Options{}) }},
		} {
			b.Run(mode+"/"+what.name, func(b *testing.B) {
				b.ReportAllocs()
				seed := 0
				for b.Loop() {
					spec := specs[seed%len(specs)]
					seed++
					if mode == "any" {
						spec = anyStart(spec)
					}
					what.do(newProblem(b, spec))
				}
			})
		}
	}
}

// BenchmarkAgainstSolvers times the same rooms with the package and with each
// general solver (whole process: reading, solving, writing), and reports how
// many times longer the solver takes. Counts must agree.
func BenchmarkAgainstSolvers(b *testing.B) {
	const rooms = 100
	dir := b.TempDir()
	for _, with := range solvers(b) {
		b.Run(with.name, func(b *testing.B) {
			for b.Loop() {
				var own, other time.Duration
				for seed := range rooms {
					spec := randomRoom(seed * 20)
					file := filepath.Join(dir, fmt.Sprintf("room%d.lp", seed))
					if err := arcFlow(spec).writeTo(file); err != nil {
						b.Fatal(err)
					}
					begin := time.Now()
					s := Solve(newProblem(b, spec), Options{})
					own += time.Since(begin)
					begin = time.Now()
					rolls, ok, err := with.run(file, file+".out", oracleSeconds)
					other += time.Since(begin)
					if err != nil || ok && rolls != len(s.Rolls) {
						b.Fatalf("room %d: %d rolls, %s says %d (%v)", seed, len(s.Rolls), with.name, rolls, err)
					}
				}
				b.ReportMetric(float64(other)/float64(own), "times-longer")
				b.ReportMetric(float64(own.Microseconds())/rooms, "own-µs/room")
				b.ReportMetric(float64(other.Microseconds())/rooms, "solver-µs/room")
			}
		})
	}
}
