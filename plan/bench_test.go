package plan_test

import "testing"

func BenchmarkMake(b *testing.B) {
	for _, bb := range []struct {
		name, run string
	}{{"bedroom", bedroom}, {"chimney breast", breast}} {
		b.Run(bb.name, func(b *testing.B) {
			ta := task(bb.run, halfDrop())
			b.ReportAllocs()
			for b.Loop() {
				made(b, ta)
			}
		})
	}
}
