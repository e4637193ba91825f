package cutting

import "testing"

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
