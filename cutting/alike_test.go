package cutting

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// TestAlikeKindsStandForEachOther puts one kind in place of another that is not
// told apart from it, in every set, and asks the definition.
func TestAlikeKindsStandForEachOther(t *testing.T) {
	merged := 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(6).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		w := newWork(p, DefaultSteps)
		defer w.free()
		limit := measure.Length(rapid.IntRange(0, int(spec.Roll.Length)).Draw(rt, "limit"))
		var alike alikeKinds
		alike.load(w, int64(limit))
		merged += len(p.kinds) - len(alike.kinds)
		other := spec
		other.Pieces = nil
		for i := range spec.Pieces {
			other.Pieces = append(other.Pieces, spec.Pieces[p.kinds[alike.kinds[alike.of[p.kindOf[i]]]].Pieces[0]])
		}
		for _, roll := range []measure.Length{spec.Roll.Length, limit} {
			a, b := spec, other
			a.Roll.Length, b.Roll.Length = roll, roll
			if roll == 0 {
				continue
			}
			one, two := newBrute(a), newBrute(b)
			for set := range one.fit {
				if one.fit[set] != two.fit[set] {
					rt.Fatalf("roll %d: set %b fits is %v, with others in place %v: %v", roll, set, one.fit[set], two.fit[set], other.Pieces)
				}
			}
		}
	})
	t.Logf("%d kinds not told apart", merged)
	if merged == 0 {
		t.Error("too tame: all kinds are told apart")
	}
}
