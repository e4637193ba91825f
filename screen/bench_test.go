package screen

import (
	"maps"
	"slices"
	"testing"
)

// BenchmarkDrag answers while the start is dragged along its wall, example by
// example.
func BenchmarkDrag(b *testing.B) {
	all := examples(b)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		texts := dragged(b, all[name])[:5]
		b.Run(name, func(b *testing.B) {
			p := New()
			p.answer(Request{Kind: AskPlan, Job: all[name]})
			b.ReportAllocs()
			for n := 0; b.Loop(); n++ {
				encoded(p.answer(Request{Kind: AskPlan, Job: texts[n%len(texts)]}))
			}
		})
	}
}
