package plan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// What halves tell of a choice is what its sketch weighs; with new drops, where offsets are
// rounded, to what a nanometre makes in a corner.
func TestCloseupWeighsWhatTheSketchWeighs(t *testing.T) {
	t.Parallel()
	told, signed, asked := 0, 0, 0
	for seed := range 120 {
		s, all := gathered(t, seed, 97*measure.Millimetre, true)
		for i := range all {
			c := &all[i]
			k := s.kills[c.kill]
			choice := s.choice(c)
			for _, x := range spread(k.span) {
				if choice.Kill.Kind == hanging.OnWall {
					choice.Kill.X, k.kill.X = x, x
				}
				asked++
				got, ok := s.closeup.weigh(c, &choice, &k)
				if !ok {
					continue
				}
				told++
				if err := s.h.Sketch(&s.sketch, choice); err != nil {
					t.Fatalf("room %d: halves tell of %+v, which is none: %v", seed, choice, err)
				}
				off := int64(0)
				if s.rounds { // parts of a repeat that are no whole nanometres, for every drop
					off = int64(len(choice.NewDrop)) * s.judge.newStep()
				}
				if want := s.judge.score(&s.sketch, &k); max(got-want, want-got) > off {
					t.Fatalf("room %d: halves tell that %+v weighs %d, its sketch %d", seed, choice, got, want)
				}
				if s.signer == nil {
					continue
				}
				if got, ok := s.closeup.sign(c, &choice, &k); ok {
					signed++
					if want := s.signer.layout(&s.sketch); got != want {
						t.Fatalf("room %d: halves sign %+v as %x, its sketch as %x", seed, choice, got, want)
					}
				}
			}
		}
	}
	t.Logf("told of %d choices of %d, signed %d", told, asked, signed)
	if told < asked/2 || signed < told/2 {
		t.Errorf("halves tell of %d choices of %d only, and sign %d", told, asked, signed)
	}
}

// gathered returns the search in a made-up room, and all choices that it offers.
func gathered(t *testing.T, seed int, step measure.Length, focal bool) (s *search, all []choiceAt) {
	t.Helper()
	type ask struct {
		run   *room.Run
		paper *paper.Paper
	}
	drawn := [2]*rapid.Generator[ask]{
		rapid.Custom(func(t *rapid.T) ask { return ask{anyroom.SmallRun(t), anyroom.Paper(t)} }),
		rapid.Custom(func(t *rapid.T) ask { return ask{anyroom.Run(t), anyroom.Paper(t)} }),
	}
	q := drawn[seed%2].Example(seed)
	if q.paper.Repeat > 0 && seed%3 == 0 {
		q.paper.Motif = &paper.Motif{Axis: q.paper.Width / 3, Tall: q.paper.Repeat / 2}
	}
	for i := range q.run.Walls {
		if q.run.Walls[i].Sight == room.Focal && !focal {
			q.run.Walls[i].Sight = room.Plain
		}
	}
	task := asking(q.run, *q.paper, step)
	if seed%5 > 2 {
		furnish(&task.Runs[0], rand.New(rand.NewPCG(uint64(seed), 5)), focal && seed%5 == 4)
	}
	s = searched(t, task)
	s.prepare()
	s.best, s.patience = candidate{layout: &hanging.Layout{}, score: offWeight}, morePatience // for which each would be cut again
	s.gather = func(c choiceAt) { all = append(all, c) }
	s.scan(1)
	return s, all
}

// furnish puts fittings on some walls of a run, seams of a lining under them, and stretches
// off which seams are to be kept; or it makes some walls focal, and all corners plumb.
func furnish(rt *RunTask, r *rand.Rand, focal bool) {
	run := *rt.Run
	run.Walls, run.Corners = slices.Clone(run.Walls), slices.Clone(run.Corners)
	rt.Run = &run
	for i := range run.Corners {
		if c := &run.Corners[i]; focal {
			*c = room.Corner{Kind: c.Kind, Angle: c.Angle, Sight: c.Sight}
		}
	}
	for i := range run.Walls {
		w := &run.Walls[i]
		at := func() measure.Length {
			return measure.Length(r.Int64N(int64(w.Width/measure.Millimetre))) * measure.Millimetre
		}
		if r.IntN(2) == 0 {
			w.Fittings = append(slices.Clone(w.Fittings), room.Fitting{
				Kind: room.Socket, At: geom.Point{X: at(), Y: 300 * measure.Millimetre},
				Size: geom.Point{X: 146 * measure.Millimetre, Y: 86 * measure.Millimetre},
			})
		}
		if r.IntN(2) == 0 {
			rt.Lining = append(rt.Lining, Line{i, at()})
		}
		if r.IntN(6) == 0 {
			x := at()
			rt.Fixed.KeepOff = append(rt.Fixed.KeepOff, WallStretch{Wall: i, X: geom.Interval{Lo: x, Hi: x + 90*measure.Millimetre}})
		}
	}
}

// spread lists some places within a span.
func spread(span geom.Interval) (xs []measure.Length) {
	for i := range measure.Length(7) {
		xs = append(xs, span.Lo+span.Length()*i/6)
	}
	return xs
}
