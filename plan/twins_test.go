package plan

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// A choice that is spared weighs just so much more than that of its twin as is said: laid out
// in full, and cut from rolls. Over an opening on its own wall the twin may find a better
// place for the kill seam.
func TestSparedChoicesAreNoBetter(t *testing.T) {
	t.Parallel()
	rooms := 60
	if testing.Short() {
		rooms = 12
	}
	spared, tried, better := 0, 0, 0
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 29))
		task := griddedTask(r, 3+r.IntN(4), 10*measure.Millimetre)
		s := searched(t, task)
		s.prepare()
		s.best = candidate{layout: &hanging.Layout{}, score: never}
		m := newCombiner(s)
		s.closeup.m = m
		twins := m.newTwins()
		if twins == nil {
			t.Fatalf("room %d: no twins", seed)
		}
		var others []sparedChoice
		for i := range s.starts {
			for k := range s.kills {
				if !m.isOffered(i, k) {
					continue
				}
				gaps, n := m.gaps(i, k)
				for g := range gaps[:n] {
					c := choiceAt{start: int32(i), kill: int16(k), x: gaps[g].x}
					if twins.spares(&c, &gaps[g], m.walls, m.walls) {
						others = append(others, sparedChoice{c, gaps[g]})
					} else {
						tried++
					}
				}
			}
		}
		spared += len(others)
		for range min(len(others), 400) {
			c := &others[r.IntN(len(others))]
			twin, more := c.twin(twins)
			own := s.kills[c.kill].kill.Kind == hanging.OnWall && s.kills[c.kill].kill.Wall == s.starts[c.start].Wall
			switch got, want := s.weighInFull(twin), s.weighInFull(&c.choiceAt)+more; {
			case got > want, !own && got < want:
				t.Fatalf("room %d: %+v with %+v is spared and is to weigh %d with its twin %+v, which weighs %d",
					seed, s.starts[c.start], s.kills[c.kill].kill, want, s.starts[twin.start], got)
			case more < 0:
				better++
			}
		}
	}
	t.Logf("%d choices spared, %d tried; of those held %d are worse than their twins", spared, tried, better)
	if 2*spared < tried || better == 0 {
		t.Error("few choices are spared")
	}
}

// The nearest twin that spares a start is found as it is going from one to the next, also in a
// long run, and where nobody has asked for the others.
func TestTwinsAskEachOther(t *testing.T) {
	t.Parallel()
	found, none := 0, 0
	for seed := range 6 {
		r := rand.New(rand.NewPCG(uint64(seed), 61))
		s := searched(t, griddedTask(r, []int{4, 9, 100}[seed%3], 10*mm))
		s.prepare()
		m := newCombiner(s)
		twins := m.newTwins()
		if twins == nil {
			t.Fatal(seed, "no twins")
		}
		for _, i := range r.Perm(len(s.starts)) {
			for side := range hanging.Side(2) {
				want := sparing{int8(m.walls + 1), -1, 0}
				at, drops := twins.from(i, side)
				corners, more := 0, int64(0)
				for {
					by := twins.step(&at, side, drops%2 != 0)
					if by == nil || at < 0 {
						break
					}
					if corners, drops = corners+int(by.corners), drops+int(by.drops); corners >= m.walls {
						break
					}
					if more += by.more; side == hanging.Left {
						more -= 2 * by.more
					}
					if drops%twins.turn == 0 && (more < 0 || more == 0 && at < i) {
						want = sparing{int8(corners), int32(at), more}
						break
					}
				}
				if got := twins.find(i, side); *got != want {
					t.Fatalf("run %d: of start %d to the %v: %+v, want %+v", seed, i, side, *got, want)
				}
				if want.start < 0 {
					none++
				} else {
					found++
				}
			}
		}
	}
	t.Logf("%d twins, %d times none", found, none)
	if found < 1000 || none < 100 {
		t.Error("few are found, or few are not")
	}
}

// sparedChoice is a choice that is spared, and where its halves end.
type sparedChoice struct {
	choiceAt
	gap killGap
}

// twin returns the same with the twin for which it is spared, and what that weighs more.
func (c *sparedChoice) twin(t *twins) (*choiceAt, int64) {
	i := int(c.start)
	by := t.find(i, hanging.Right)
	if on := t.m.s.kills[c.kill].kill.Kind == hanging.OnWall; int(by.corners) > c.gap.right || on && int(by.corners) == c.gap.right {
		by = t.find(i, hanging.Left)
	}
	other := c.choiceAt
	other.start, other.x = by.start, t.m.s.kills[c.kill].kill.X
	return &other, by.more
}

// weighInFull returns what a choice weighs with its rolls, its kill seam where it is best.
func (s *search) weighInFull(c *choiceAt) int64 {
	s.open = s.open[:0]
	s.look(*c)
	least := int64(never)
	for i := range s.open {
		n := candidate{choice: s.choice(&s.open[i]), kill: s.kills[c.kill]}
		n.kill.kill = n.choice.Kill
		if s.layOut(&n); n.layout == nil {
			continue
		}
		if total, err := s.total(&n); err == nil {
			least = min(least, total)
		}
	}
	return least
}

// What is told wall by wall of the ends with which a start need be tried is what is told of each
// of its choices.
func TestTwinsSpareWallByWall(t *testing.T) {
	t.Parallel()
	left, asked := 0, 0
	for seed := range 24 {
		r := rand.New(rand.NewPCG(uint64(seed), 73))
		s := searched(t, griddedTask(r, 4+r.IntN(20), 10*mm))
		s.prepare()
		s.best = candidate{layout: &hanging.Layout{}, score: never}
		m := newCombiner(s)
		s.closeup.m = m
		twins := m.newTwins()
		if m.out = m.newOutlook(); twins == nil || m.out == nil {
			t.Fatal(seed, "no twins, or no outlook")
		}
		for i, start := range s.starts {
			var want ends
			for e := range m.out.ends {
				c := choiceAt{start: int32(i), kill: int16(m.out.ends[e].kills[0])}
				gaps, n := m.gaps(i, int(c.kill))
				for g := range gaps[:n] {
					if m.isOffered(i, int(c.kill)) && !twins.spares(&c, &gaps[g], m.walls, m.walls) {
						want = want.or(oneEnd(e))
					}
				}
			}
			around := m.out.around(start.Wall, start.X, start.X)
			if got := twins.without(i, m.out.offered(i), &around); got != want {
				t.Fatalf("run %d: start %d of %d: with %v, want %v", seed, i, s.own, got, want)
			}
			left, asked = left+want.count(), asked+m.out.offered(i).count()
		}
	}
	t.Logf("of %d ends %d need be tried", asked, left)
	if left == 0 || left == asked {
		t.Error("twins spare nothing, or all")
	}
}

// griddedTask is a closed run of so many walls, all measures of which are multiples of a
// step, as those of the paper and of the wraps: so that starts have many twins.
func griddedTask(r *rand.Rand, walls int, step measure.Length) *Task {
	times := func(lo, hi measure.Length) measure.Length {
		return (lo + measure.Length(r.Int64N(int64(hi-lo+1)))).FloorTo(step)
	}
	run := &room.Run{Name: "run", Closed: true}
	for i := range walls {
		width := times(700*mm, 3600*mm)
		w := room.Wall{
			Name: fmt.Sprint("W", i), Width: width, Sight: room.Sight(max(0, r.IntN(6)-3)),
			Outline: geom.Ring{{}, {X: width}, {X: width, Y: 2500 * mm}, {Y: 2500 * mm}},
		}
		if wide := times(500*mm, 1300*mm); wide < width-200*mm && r.IntN(3) > 0 {
			o := room.Opening{Name: fmt.Sprint("o", i), Kind: room.Window, Outline: geom.Ring{}}
			x, foot, head := times(50*mm, width-wide-50*mm), 900*mm, 2200*mm
			if r.IntN(3) == 0 {
				o.Kind, foot, head = room.Door, 0, 2040*mm
			}
			o.Outline = geom.Ring{{X: x, Y: foot}, {X: x + wide, Y: foot}, {X: x + wide, Y: head}, {X: x, Y: head}}
			w.Openings = append(w.Openings, o)
		}
		run.Walls = append(run.Walls, w)
		corner := room.Corner{Angle: 90 * measure.Degree}
		if i > 0 && r.IntN(5) == 0 {
			corner = room.Corner{Kind: room.Outside, Angle: 270 * measure.Degree}
		}
		run.Corners = append(run.Corners, corner)
	}
	p := anyroom.UsualPaper(r)
	p.Width = 530 * mm
	task := asking(run, p, step)
	task.Rules.Wrap, task.Rules.WrapLimit = 10*mm, 20*mm
	if r.IntN(3) == 0 {
		task.Papers[0].Match = paper.Match{Kind: paper.Offset, Num: 1, Den: 3}
		task.Papers[0].Repeat, task.Papers[0].Motif = 610*mm, nil // parts of a repeat that are no whole nanometres
	}
	if p := &task.Papers[0]; p.Repeat > 0 && r.IntN(3) == 0 {
		design := measure.Length(r.Int64N(int64(p.Repeat)))
		task.Runs[0].Fixed.Design = &design
	}
	return task
}

// In a long run, in which no new drops are tried everywhere, nothing is better either.
func TestNoChoiceIsBetterInALongRun(t *testing.T) {
	t.Parallel()
	rooms := 4
	if testing.Short() {
		rooms = 1
	}
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 31))
		step := 106 * mm // a fifth of a width
		task := griddedTask(r, renewWalls+1, step)
		task.Rules.Wrap = 0
		if seed%2 == 1 {
			task.Rules.Wrap, task.Step = 10*mm, 130*mm
		}
		s := searched(t, task)
		got, err := s.find()
		if err != nil {
			t.Fatal(seed, err)
		}
		if !s.proven {
			t.Errorf("run %d is not settled", seed)
		}
		ref := reference{s: searched(t, task), limit: got.score}
		ref.run()
		if ref.best != 0 && got.score > ref.best {
			t.Errorf("run %d: the search finds %d (%+v), the reference %d (%+v)", seed, got.score, got.choice, ref.best, ref.at)
		}
		t.Logf("run %d: %d, of %d layouts", seed, got.score, ref.n)
	}
}

// What is told of a start with its twins in mind is no more than what any choice weighs in
// the end that they do not spare, and often more than what is told without them.
func TestOutlookWithTwinsIsABound(t *testing.T) {
	t.Parallel()
	rooms := 40
	if testing.Short() {
		rooms = 8
	}
	held, more := 0, 0
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 43))
		s := searched(t, griddedTask(r, 3+r.IntN(3), 10*mm))
		s.prepare()
		s.best = candidate{layout: &hanging.Layout{}, score: offWeight}
		m := newCombiner(s)
		s.closeup.m = m
		m.renews, m.twins = true, m.newTwins()
		var tried []choiceAt
		s.gather = func(c choiceAt) { tried = append(tried, c) }
		for i := range s.starts {
			m.start(i)
		}
		twins := m.twins
		m.twins = nil
		without := lookAll(m.newOutlook())
		m.twins = twins
		o := m.newOutlook()
		with := lookAll(o)
		for i := range with {
			for e := range with[i] {
				if with[i][e][1] > without[i][e][1] {
					more++
				}
			}
		}
		for range min(len(tried), 3000) {
			c := &tried[r.IntN(len(tried))]
			if told := with[c.start][o.endOf[c.kill]][min(len(s.choice(c).NewDrop), 1)]; told > c.bound {
				heldAgainst(t, seed, s, c, told)
			}
			held++
		}
	}
	t.Logf("%d choices held; more is told of %d starts and ends with new drops", held, more)
	if more == 0 {
		t.Error("twins tell nothing")
	}
}
