package plan_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/examples"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// Mirror the room and the paper, and the plan is the mirrored one: it weighs the same
// and needs as many rolls, where it is settled and the paper's width is of whole
// millimetres, so that the starts that are tried are mirrored as well. Each piece is cut alone in that count: of layouts that weigh
// the same, one may have strips that fit side by side, and another not.

// madeUp is a made-up room with its plan, which tests share.
type madeUp struct {
	run   *room.Run
	label *paper.Paper
	plan  *plan.Plan
	err   error
}

// planOnce returns so many made-up rooms; each is planned when first asked for.
func planOnce(n int, draw func(i int) *madeUp) (rooms []func() *madeUp) {
	for i := range n {
		rooms = append(rooms, sync.OnceValue(func() *madeUp {
			m := draw(i)
			m.plan, m.err = plan.Make(asked(m.run, *m.label))
			return m
		}))
	}
	return rooms
}

var drawnRoom = rapid.Custom(func(t *rapid.T) *madeUp { return &madeUp{run: anyroom.SmallRun(t), label: anyroom.Paper(t)} })

// madeUps are rooms of all kinds, madeUpCrooked such as new building may be.
var (
	madeUps       = planOnce(240, func(i int) *madeUp { return drawnRoom.Example(i) })
	madeUpCrooked = planOnce(50, func(i int) *madeUp {
		label := plain()
		label.Repeat, label.Match.Kind = 640*mm, paper.Straight
		return &madeUp{run: crooked(rand.New(rand.NewPCG(7, uint64(i)))), label: &label}
	})
)

// unsettled lists made-up rooms in which the search ends before it is settled, after half
// a minute: nothing is promised of them.
var unsettled = []int{156}

func TestMirroredRooms(t *testing.T) {
	t.Parallel()
	planned := 0
	for i, m := range madeUps {
		if slices.Contains(unsettled, i) {
			continue
		}
		if m := m(); m.err == nil {
			planned++
			alikeInMirror(t, fmt.Sprint("room ", i), m.plan)
		}
	}
	if planned < len(madeUps)*9/10 {
		t.Errorf("only %d rooms could be planned", planned)
	}
}

// Crooked rooms as well, one of them in designs of which the lines tell what walls are
// set to, and walls beside stairs.
func TestMirroredCrookedRooms(t *testing.T) {
	t.Parallel()
	settled := 0
	for i, m := range madeUpCrooked {
		if p := m().plan; p.Runs[0].Settled() {
			settled++
			alikeInMirror(t, fmt.Sprint("crooked room ", i), p)
		}
	}
	if settled < 30 {
		t.Errorf("only %d crooked rooms are settled", settled)
	}
	r := rand.New(rand.NewPCG(7, 1))
	for _, lines := range []paper.Lines{paper.LinesLoose, paper.LinesLevel, paper.LinesUpright, paper.LinesBoth} {
		p := motif()
		p.Lines = lines
		alikeInMirror(t, fmt.Sprint("tilted room, ", lines), made(t, asked(tilted(), p)))
	}
	for i := range 20 {
		run := &room.Run{Name: "run", Walls: []room.Wall{anyStairs(r), flat(measure.Length(900+r.IntN(2000))*mm, 2400*mm).Walls[0]}}
		run.Corners = []room.Corner{{Angle: 90 * measure.Degree}}
		alikeInMirror(t, fmt.Sprint("stairs ", i), made(t, asked(run, []paper.Paper{plain(), halfDrop(), motif()}[i%3])))
	}
}

// anyStairs is a wall beside stairs that rise to the left, as high as the wall on its
// right where they begin.
func anyStairs(r *rand.Rand) room.Wall {
	width, rise := measure.Length(2500+r.IntN(2500))*mm, measure.Length(600+r.IntN(1600))*mm
	return room.Wall{Name: "stairs", Width: width, Outline: geom.Ring{
		{Y: rise}, {X: width / 4, Y: rise}, {X: width * 3 / 4}, {X: width}, {X: width, Y: 2400 * mm}, {X: width / 2, Y: 2400*mm + rise}, {Y: 2400*mm + rise},
	}}
}

// All examples, with what is fixed in them.
func TestMirroredExamples(t *testing.T) {
	t.Parallel()
	for name, task := range exampleTasks(t) {
		alikeInMirror(t, name, made(t, task))
	}
}

// exampleTasks returns the tasks of all examples by name.
func exampleTasks(t *testing.T) map[string]*plan.Task {
	t.Helper()
	tasks := map[string]*plan.Task{}
	for _, name := range examples.Names() {
		text, _ := examples.Named(name)
		j, err := yaml.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		if tasks[name], err = j.Task(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	return tasks
}

// alikeInMirror plans a task as seen in a mirror and holds the plan against its own.
func alikeInMirror(t *testing.T, name string, p *plan.Plan) {
	t.Helper()
	q := made(t, mirrored(p.Task))
	alone := func(p *plan.PaperPlan) int { return p.Rolls() + p.SavedBySide() }
	var unlike []string
	for i := range p.Papers {
		if x, y := alone(&p.Papers[i]), alone(&q.Papers[i]); x != y {
			unlike = append(unlike, fmt.Sprintf("%d rolls, mirrored %d", x, y))
		}
	}
	for i := range p.Runs {
		if x, y := &p.Runs[i], &q.Runs[i]; x.Settled() && y.Settled() && x.Score != y.Score {
			unlike = append(unlike, fmt.Sprintf("it weighs %d at %+v (%v), mirrored %d at %+v (%v)", x.Score, x.Layout.Choice, x.Untried, y.Score, y.Layout.Choice, y.Untried))
		}
	}
	if len(unlike) > 0 {
		t.Errorf("%s: %v", name, unlike)
	}
}

// mirrored returns a task as seen in a mirror, with all that is fixed.
func mirrored(t *plan.Task) *plan.Task {
	m := *t
	m.Papers = nil
	for i := range t.Papers {
		m.Papers = append(m.Papers, *t.Papers[i].Mirrored())
	}
	m.Runs = slices.Clone(t.Runs)
	for i := range m.Runs {
		m.Runs[i] = mirroredRun(&t.Runs[i], &t.Papers[t.Runs[i].Paper])
	}
	for i := range m.Runs { // of each wall of a lining, its index in the run over it
		for k := range m.Runs[i].Over {
			over := &m.Runs[i].Over[k]
			n := len(m.Runs[over.Run].Run.Walls)
			over.Walls = slices.Clone(over.Walls)
			slices.Reverse(over.Walls)
			for w, at := range over.Walls {
				if at >= 0 {
					over.Walls[w] = n - 1 - at
				}
			}
		}
	}
	return &m
}

func mirroredRun(rt *plan.RunTask, label *paper.Paper) plan.RunTask {
	m, n := *rt, len(rt.Run.Walls)
	m.Run = rt.Run.Mirrored()
	m.Over = slices.Clone(rt.Over)
	wall := func(w int) int { return n - 1 - w }
	corner := func(c int) int { return (2*n - 2 - c) % n }
	each := func(all []int, mirror func(int) int) (out []int) {
		for _, i := range all {
			out = append(out, mirror(i))
		}
		return out
	}
	m.Lining = nil
	for _, l := range rt.Lining {
		m.Lining = append(m.Lining, plan.Line{Wall: wall(l.Wall), X: rt.Run.Walls[l.Wall].Width - l.X})
	}
	f := &rt.Fixed
	m.Fixed.NewDrop, m.Fixed.Carry, m.Fixed.Hung = each(f.NewDrop, corner), each(f.Carry, corner), each(f.Hung, wall)
	choice := hanging.Choice{}
	if f.Start != nil {
		choice.Start = *f.Start
	}
	if f.Kill != nil {
		choice.Kill = f.Kill.Kill
	}
	choice = anyroom.Mirrored(choice, rt.Run, label)
	if f.Start != nil {
		m.Fixed.Start = &choice.Start
	}
	if f.Kill != nil {
		m.Fixed.Kill = &plan.Kill{Kill: choice.Kill, Free: f.Kill.Free}
	}
	if c := f.Centre; c != nil {
		m.Fixed.Centre = &plan.Centre{Wall: wall(c.Wall), X: rt.Run.Walls[c.Wall].Width - c.X, Of: c.Of}
	}
	m.Fixed.KeepOff = nil
	for _, k := range f.KeepOff {
		m.Fixed.KeepOff = append(m.Fixed.KeepOff, plan.WallStretch{Wall: wall(k.Wall), X: k.X.Mirrored().Shifted(rt.Run.Walls[k.Wall].Width)})
	}
	m.Fixed.Set = nil
	for _, s := range f.Set {
		s.Wall = wall(s.Wall)
		s.Side = s.Side.Opposite()
		switch s.To {
		case hanging.ToLeft:
			s.To = hanging.ToRight
		case hanging.ToRight:
			s.To = hanging.ToLeft
		}
		switch s.Meets {
		case hanging.MeetLeft:
			s.Meets = hanging.MeetRight
		case hanging.MeetRight:
			s.Meets = hanging.MeetLeft
		}
		m.Fixed.Set = append(m.Fixed.Set, s)
	}
	return m
}
