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
		job     Job
		chances Chances
	}{
		{"30 drops", bedroomJob(b), Chances{Length: 15, Measuring: 3 * mm, Trim: 40 * mm, Step: mm, Spoiled: 10}},
		{"30 drops, heights matter", bedroomJob(b), tight},
		{"30 drops of 30 lengths", gableJob(b), Chances{Length: 15, Spoiled: 10}},
	} {
		b.Run(bb.name, func(b *testing.B) {
			job := bb.job
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

// gableJob is an invented attic: 30 drops, no two of the same length.
func gableJob(t testing.TB) Job {
	var pieces []cutting.Piece
	for i := range 30 {
		pieces = append(pieces, cutting.Piece{Length: (1500 + measure.Length(i)*53) * mm, Phase: measure.Length(i%2*320+i*53) * mm % (640 * mm)})
	}
	return jobOf(t, 640*mm, 10050*mm, pieces...)
}
