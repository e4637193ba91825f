package hanging

import (
	"errors"
	"fmt"
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/paper"
	"firstdrop/room"
)

// Hanger lays out one run in one paper by one set of rules. It prepares the
// walls once, so that many choices can be tried. It is not safe for
// concurrent use.
type Hanger struct {
	surveyed *room.Run
	run      *room.Run // as the sheets see it: its walls turned as they are set
	set      []Setting
	turns    []room.Turn // nil: plumb
	paper    *paper.Paper
	rules    Rules
	walls    []wall

	// Reused from layout to layout.
	cells   []geom.Cell
	patches []patch
	ahead   []step
	back    []step
	strip   []step
	renewAt [1]int
}

// wall is a wall prepared for laying out.
type wall struct {
	width               measure.Length
	leanLeft, leanRight measure.Length // of its own two edges, in its own plane
	// Over what heights the corners at its edges lean, and its own heights.
	reachLeft, reachRight, heights geom.Interval
	face                           *geom.Sweep
	zones                          []zone
}

// New returns a hanger for the run and the paper, both of which must be sound
// (room and paper check that). It fails when rules and paper do not fit: a
// wrap or an overlap as wide as the paper, or a corner that leans by more than
// half its width, where no upright drop could be set.
func New(run *room.Run, p *paper.Paper, rules Rules) (*Hanger, error) {
	return NewSet(run, nil, p, rules)
}

// NewSet returns a hanger that sets the sheets of each wall as stated; nil: plumb.
// It fails as [New] and [Turns] do, and where the design would step up or down
// round an outside corner: no sheet can follow it there.
func NewSet(surveyed *room.Run, set []Setting, p *paper.Paper, rules Rules) (*Hanger, error) {
	turns, err := Turns(surveyed, set)
	if err != nil {
		return nil, err
	}
	if turns == nil {
		set = nil
	}
	for i := range surveyed.Corners {
		if surveyed.Corners[i].Kind == room.Outside && room.StepAt(turns, i) != 0 {
			return nil, message.New("outside_step", "the design would step by {step} round the outside corner {corner}", "step", room.StepAt(turns, i), "corner", surveyed.CornerName(i))
		}
	}
	run := surveyed.Turned(turns)
	if len(run.Walls) == 0 {
		return nil, errors.New("hanging: the run has no walls")
	}
	if m := max(rules.Wrap, rules.WrapLimit, rules.OutsideWrap, rules.Overlap); m >= p.Width {
		return nil, message.New("paper_narrow", "paper \"{paper}\" is {width} wide, no wider than the {turn} that is to turn a corner", "paper", p.Name, "width", p.Width, "turn", m)
	}
	h := &Hanger{surveyed: surveyed, run: run, set: set, turns: turns, paper: p, rules: rules, walls: make([]wall, len(run.Walls))}
	for i := range run.Walls {
		w := &h.walls[i]
		w.width = run.Walls[i].Width
		w.leanLeft, w.leanRight = run.LeanAt(i)
		w.reachLeft, w.reachRight = run.Reach(i)
		_, w.heights = run.Walls[i].Outline.Bounds()
		if m := max(w.leanLeft.Abs(), w.leanRight.Abs()); m > p.Width/2 {
			return nil, message.New("wall_leans", "wall {wall} leans by {lean} at a corner, more than half the width of paper \"{paper}\"", "wall", run.Walls[i].Name, "lean", m, "paper", p.Name)
		}
		face := run.Face(i)
		w.face, w.zones = face.Sweep(), newZones(face, run.Walls[i].Openings)
	}
	return h, nil
}

// Run returns the run as the sheets see it, as [Layout.Hung] does.
func (h *Hanger) Run() *room.Run { return h.run }

// Rules returns the rules that the hanger keeps to.
func (h *Hanger) Rules() Rules { return h.rules }

// Set returns how walls are set, Turns how they are turned by it; nil for a run
// that hangs plumb.
func (h *Hanger) Set() []Setting { return h.set }

// Turns returns how walls are turned.
func (h *Hanger) Turns() []room.Turn { return h.turns }

// Layout works out where everything stands for one choice. It fails when the
// choice is none for this run: a wall that is not there, a start off its wall,
// a kill seam in an open run or none in a closed one, a kill seam under the first drop.
func (h *Hanger) Layout(c Choice) (*Layout, error) {
	l := &Layout{}
	if err := h.Sketch(l, c); err != nil {
		return nil, err
	}
	h.addPieces(l)
	l.number()
	h.addPlumbs(l)
	return l, nil
}

// Sketch fills l with drops and seams only, re-using its memory: what a search
// needs to tell a good start from a bad one. Pieces, numbers and plumb lines
// are left out. It fails as Layout does.
func (h *Hanger) Sketch(l *Layout, c Choice) error {
	if err := h.check(c); err != nil {
		return err
	}
	c.Set = h.set
	*l = Layout{
		Run: h.surveyed, Turns: h.turns, hung: h.run, Paper: h.paper, Rules: h.rules, Choice: c,
		Drops: l.Drops[:0], Seams: l.Seams[:0], parts: l.parts[:0],
	}
	h.ahead = h.march(h.ahead[:0], Right, c)
	h.back = h.march(h.back[:0], Left, c)
	l.join(h.ahead, h.back)
	l.addSeams(h)
	return nil
}

// check says whether a choice is one for this run.
func (h *Hanger) check(c Choice) error {
	n := len(h.walls)
	if c.Set != nil && !slices.Equal(c.Set, h.set) {
		return errors.New("hanging: the choice sets walls otherwise than the hanger does")
	}
	if c.Start.Wall < 0 || c.Start.Wall >= n {
		return fmt.Errorf("hanging: the start names wall %d of %d", c.Start.Wall+1, n)
	}
	w := h.walls[c.Start.Wall]
	if c.Start.X <= -h.paper.Width || c.Start.X >= w.width {
		return message.New("start_off", "a drop with its left edge at {x} does not touch wall {wall}", "x", c.Start.X, "wall", h.run.Walls[c.Start.Wall].Name)
	}
	if h.run.Closed == (c.Kill.Kind == NoKill) {
		return errors.New("hanging: a closed run needs a kill seam, an open run has none")
	}
	if c.Kill.Kind == NoKill {
		return nil
	}
	if c.Kill.Wall < 0 || c.Kill.Wall >= n {
		return fmt.Errorf("hanging: the kill seam names wall %d of %d", c.Kill.Wall+1, n)
	}
	if c.Kill.Kind == OnWall {
		k := h.walls[c.Kill.Wall]
		if c.Kill.X <= max(0, k.leanLeft) || c.Kill.X >= k.width+min(0, k.leanRight) {
			return message.New("kill_off", "the kill seam at {x} is off wall {wall}", "x", c.Kill.X, "wall", h.run.Walls[c.Kill.Wall].Name)
		}
		if c.Kill.Wall == c.Start.Wall && c.Kill.X > c.Start.X && c.Kill.X < c.Start.X+h.paper.Width {
			return message.New("kill_under_first", "the kill seam lies under the first drop")
		}
	}
	return nil
}
