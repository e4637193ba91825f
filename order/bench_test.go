package order

import (
	"testing"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// bedroomJob is an invented room: 30 drops in half drop, with short pieces over
// a door and round a window.
func bedroomJob(t testing.TB) Job {
	var pieces []cutting.Piece
	for i := range 24 {
		pieces = append(pieces, cutting.Piece{Length: 2500 * mm, Phase: measure.Length(i%2) * 320 * mm})
	}
	for i := range 2 {
		pieces = append(pieces,
			cutting.Piece{Length: 500 * mm, Phase: measure.Length(i%2) * 320 * mm},
			cutting.Piece{Length: 700 * mm, Phase: measure.Length(i%2) * 320 * mm},
			cutting.Piece{Length: 1000 * mm, Phase: measure.Length((480+320*i)%640) * mm})
	}
	job := jobOf(t, 640*mm, 10050*mm, pieces...)
	for i := range job.Pieces {
		job.Pieces[i].Need -= 100 * mm
	}
	return job
}

func BenchmarkCertainty(b *testing.B) {
	tight := Chances{Length: 15, Measuring: 5 * mm, Trim: 95 * mm, Step: mm, Spoiled: 10}
	for _, bb := range []struct {
		name    string
		chances Chances
	}{
		{"30 drops", Chances{Length: 15, Measuring: 3 * mm, Trim: 40 * mm, Step: mm, Spoiled: 10}},
		{"30 drops, heights matter", tight},
	} {
		b.Run(bb.name, func(b *testing.B) {
			job := bedroomJob(b)
			const jobs = 1000
			var c *Curve
			b.ReportAllocs()
			for b.Loop() {
				c, _ = Certainty(job, bb.chances, jobs, 1)
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/jobs, "µs/job")
			b.ReportMetric(float64(c.Proven)/jobs, "proven")
			b.Logf("%+v", c)
		})
	}
}
