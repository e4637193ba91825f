package hanging_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// The design falls so that at every height a drop shows the phase that the label
// and the choice say, and its edge stands where its parts say.
func TestFallAgreesWithPhases(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p, l := drawn(t)
		y := measure.Length(rapid.Int64Range(-3e9, 3e9).Draw(t, "y"))
		for i := range l.Drops {
			for k, part := range l.Drops[i].Parts {
				f := l.Fall(i, k)
				shows := f.Begins - y
				if f.Reversed {
					shows = -shows
				}
				if got, want := shows.Mod(p.Repeat), p.Phase(l.Drops[i].Index, l.Choice.Design, y); p.Repeat > 0 && got != want {
					t.Fatalf("drop %d at %v shows %v, want %v", i, y, got, want)
				}
				if f.Edge+part.Across.Lo != part.X.Lo {
					t.Fatalf("drop %d: edge at %v, part %+v", i, f.Edge, part)
				}
				if f.EdgeAt(f.Over.Lo) != f.Edge || f.Skew != 0 && f.EdgeAt(f.Over.Hi) != f.Edge+part.Skew {
					t.Fatalf("drop %d leans %+v, part %+v", i, f, part)
				}
			}
		}
	})
}
