package audit_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"firstdrop/audit"
	"firstdrop/measure"
	"firstdrop/plan"
)

// FuzzPlan falsifies sound plans anywhere in them, several times over: lengths
// moved, indexes led astray, lists cut short or doubled, pointers dropped.
// Whatever comes of it is judged without panic.
func FuzzPlan(f *testing.F) {
	for i := range uint64(300) {
		f.Add(i, uint8(i%7+1))
	}
	f.Add(uint64(46), uint8(0)) // drops beyond counting
	f.Fuzz(func(t *testing.T, seed uint64, times uint8) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := anySound(t, seed)
		for range times%16 + 1 {
			falsify(r, reflect.ValueOf(p))
		}
		for _, v := range audit.Plan(p) {
			if v.Rule == "" || v.Error() == "" {
				t.Errorf("a violation without words: %#v", v)
			}
		}
		for i := range p.Runs {
			audit.Layout(p.Runs[i].Layout)
		}
		for i := range p.Papers {
			for k := range p.Papers[i].Batches {
				audit.Cutting(p.Papers[i].Batches[k].Cutting)
				audit.Cutting(p.Papers[i].Batches[k].Apart)
			}
		}
	})
}

// anySound makes one of the sound plans: half of the time from rolls that have
// come, with batches, strips, goods that shade.
func anySound(t *testing.T, seed uint64) *plan.Plan {
	makers := plans
	if seed%2 == 0 {
		makers = openedPlans
	}
	names := slices.Sorted(maps.Keys(makers))
	return makers[names[seed/2%uint64(len(names))]](t)
}

// falsify changes one thing somewhere below v.
func falsify(r *rand.Rand, v reflect.Value) {
	for {
		switch v.Kind() {
		case reflect.Pointer:
			if v.IsNil() {
				if v.CanSet() && v.Type().Elem().Kind() != reflect.Interface {
					v.Set(reflect.New(v.Type().Elem()))
				}
				return
			}
			if v.CanSet() && r.IntN(40) == 0 {
				v.SetZero()
				return
			}
			v = v.Elem()
		case reflect.Struct:
			if v.NumField() == 0 {
				return
			}
			field := v.Field(r.IntN(v.NumField()))
			if !field.CanSet() {
				return
			}
			v = field
		case reflect.Slice:
			if v.Len() == 0 || r.IntN(8) == 0 {
				falsifyList(r, v)
				return
			}
			v = v.Index(r.IntN(v.Len()))
		default:
			falsifyValue(r, v)
			return
		}
	}
}

func falsifyList(r *rand.Rand, v reflect.Value) {
	switch n := v.Len(); {
	case n == 0:
		v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
	case r.IntN(2) == 0:
		v.Set(v.Slice(0, r.IntN(n)))
	default:
		v.Set(reflect.Append(v, v.Index(r.IntN(n))))
	}
}

func falsifyValue(r *rand.Rand, v reflect.Value) {
	switch {
	case v.CanInt():
		n := v.Int()
		some := []int64{0, 1, -1, n + 1, n - 1, -n, n + int64(measure.Millimetre), n - 70*int64(measure.Millimetre), 2 * n, math.MaxInt64, math.MinInt64, 2 * int64(measure.MaxLength)}
		v.SetInt(some[r.IntN(len(some))])
	case v.Kind() == reflect.Bool:
		v.SetBool(!v.Bool())
	case v.Kind() == reflect.String:
		v.SetString(v.String() + "?")
	}
}

// What is not there at all is judged too.
func TestNothing(t *testing.T) {
	for name, vs := range map[string][]audit.Violation{
		"no plan":       audit.Plan(nil),
		"no task":       audit.Plan(&plan.Plan{}),
		"no layout":     audit.Layout(nil),
		"no cutting":    audit.Cutting(nil),
		"a run missing": audit.Plan(&plan.Plan{Task: &plan.Task{Runs: make([]plan.RunTask, 1)}}),
	} {
		if !breaks(vs, audit.Sound) {
			t.Errorf("%s: %v", name, vs)
		}
	}
	if vs := audit.Plan(&plan.Plan{Task: &plan.Task{}}); len(vs) > 0 {
		t.Errorf("nothing asked, nothing planned: %v", vs)
	}
}
