package plan

import (
	"math/rand/v2"
	"testing"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// What is told of new drops in a long run is no more than what layouts with them weigh.
func TestRenewalIsABound(t *testing.T) {
	t.Parallel()
	held, told, weighed, many := 0, int64(0), int64(0), 0
	for seed := range 60 {
		r := rand.New(rand.NewPCG(uint64(seed), 61))
		s := searched(t, griddedTask(r, renewWalls+1+r.IntN(6), mm))
		s.prepare()
		m := newCombiner(s)
		m.most = mostNew
		s.closeup.m = m
		var offered []choiceAt
		s.gather = func(c choiceAt) { offered = append(offered, c) }
		n := &renewal{m: m, fresh: [2]map[*node]*fresh{{}, {}}}
		for range 6 {
			n.start(r.IntN(s.own))
		}
		for i := range offered {
			if i%(1+len(offered)/60) > 0 {
				continue
			}
			c := candidate{choice: s.choice(&offered[i]), kill: s.kills[offered[i].kill]}
			c.kill.kill = c.choice.Kill
			if s.layOut(&c); c.layout == nil {
				continue
			}
			total, err := s.total(&c)
			if err != nil {
				continue
			}
			held++
			if len(c.choice.NewDrop) > triedNew {
				many++
			}
			told, weighed = told+offered[i].bound, weighed+total
			if offered[i].bound > total {
				t.Errorf("room %d: %+v is told to weigh %d at the least, and weighs %d", seed, c.choice, offered[i].bound, total)
			}
		}
	}
	t.Logf("%d choices, %d of them with more than two new drops; what is told comes to %.3f of what they weigh", held, many, float64(told)/float64(weighed))
	if held < 500 || many < 100 {
		t.Error("few choices are held")
	}
}

// In long runs new drops help, and a walk that tries them at random seldom finds better, and
// mostly worse.
func TestNewDropsInLongRuns(t *testing.T) {
	t.Parallel()
	rooms := 24
	if testing.Short() {
		rooms = 6
	}
	var helped, better, worse int
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 67))
		task := griddedTask(r, renewWalls+1+r.IntN(8), mm)
		s := searched(t, task)
		got, err := s.find()
		if err != nil {
			t.Fatal(seed, err)
		}
		without := searched(t, task)
		without.run.Fixed.Carry = insideCorners(without.run)
		alone, err := without.find()
		if err != nil {
			t.Fatal(seed, err)
		}
		if alone.score < got.score {
			t.Errorf("room %d weighs %d, and %d without new drops", seed, got.score, alone.score)
		}
		if len(got.choice.NewDrop) > 0 {
			helped++
		}
		other := searched(t, task)
		other.prepare()
		w := newWalk(other, uint64(seed)+1)
		w.goOn(walked)
		switch {
		case w.best.score < got.score:
			better++
			t.Logf("room %d: %+v weighs %d; a walk found %+v, which weighs %d", seed, got.choice, got.score, w.best.choice, w.best.score)
		case w.best.score > got.score:
			worse++
		}
	}
	t.Logf("new drops help in %d of %d rooms; of walks %d found better, %d worse", helped, rooms, better, worse)
	if helped == 0 || better > rooms/8 || worse < rooms/2 {
		t.Error("new drops in long runs are not looked for well")
	}
}

// insideCorners lists the inside corners of a run.
func insideCorners(rt *RunTask) (corners []int) {
	for i := range rt.Run.Corners {
		if mayRenew(rt.Run, &hanging.Choice{}, i) {
			corners = append(corners, i)
		}
	}
	return corners
}

// The same job gives the same new drops, planned alone or in a session that has dragged its
// start before.
func TestNewDropsInASession(t *testing.T) {
	t.Parallel()
	for seed := range 3 {
		r := rand.New(rand.NewPCG(uint64(seed), 71))
		task := griddedTask(r, renewWalls+1+r.IntN(4), mm)
		session := NewSession()
		if _, err := session.Plan(task); err != nil {
			t.Fatal(err)
		}
		for _, x := range []measure.Length{170 * measure.Millimetre, 171 * measure.Millimetre} {
			moved := *task
			moved.Runs = []RunTask{task.Runs[0]}
			moved.Runs[0].Fixed.Start = &hanging.Start{Wall: 0, X: x}
			want, err := Make(&moved)
			if err != nil {
				t.Fatal(err)
			}
			got, err := session.Plan(&moved)
			if err != nil {
				t.Fatal(err)
			}
			if got.Runs[0].Score != want.Runs[0].Score {
				t.Errorf("room %d from %v weighs %d in a session, %d alone", seed, x, got.Runs[0].Score, want.Runs[0].Score)
			}
		}
	}
}
