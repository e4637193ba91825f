package plan

import (
	"cmp"
	"slices"
	"testing"

	"firstdrop/measure"
)

// What is told of a row of starts at once is no more than what is told of each.
func TestRowsAreBounds(t *testing.T) {
	t.Parallel()
	rooms := 1200
	if testing.Short() {
		rooms = 240
	}
	bounds, most, rows, starts := 0, 0.0, 0, 0
	for seed := range rooms {
		s, choices := gathered(t, seed, measure.Length(1+seed%7)*measure.Millimetre, seed%4 > 0)
		if len(choices) == 0 {
			continue
		}
		if seed%3 == 1 {
			s.best.score = slices.MinFunc(choices, func(a, b choiceAt) int { return cmp.Compare(a.bound, b.bound) }).bound * 101 / 100
		}
		o := s.closeup.m.newOutlook()
		if o == nil {
			continue
		}
		b := o.newBrackets()
		if b == nil {
			continue
		}
		lookAll(o)
		all := b.newRows()
		for _, row := range all.all {
			rows, starts = rows+1, starts+row.to-row.from
			for _, i := range all.starts[row.from:row.to] {
				for e := range o.ends {
					for k, told := range row.bounds[e] {
						exact := o.boundsOf(i)[e][k]
						if told > exact && exact < min(s.best.score, mostAhead/2) {
							t.Fatalf("room %d: of %+v with %+v (%d) is told %d, and in a row of %d starts %d", seed, s.starts[i], o.ends[e].place.kill, k, exact, row.to-row.from, told)
						}
						if exact > 0 && exact < mostAhead/2 {
							bounds, most = bounds+1, most+float64(min(told, exact))/float64(exact)
						}
					}
				}
			}
		}
	}
	t.Logf("%d starts in %d rows; what is told of rows comes to %.3f of that of starts", starts, rows, most/float64(bounds))
	if most < 0.8*float64(bounds) || rows > starts/2 {
		t.Error("little is told of rows")
	}
}
