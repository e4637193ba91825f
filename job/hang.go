package job

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
)

// hangs returns what goes where; without a word about it, the only paper goes on
// all walls.
func (j *Job) hangs() []Hang {
	if len(j.Hang) == 0 && len(j.Papers) > 0 {
		return []Hang{{Paper: j.Papers[0].Name}}
	}
	return j.Hang
}

func hangPath(k int) string { return fmt.Sprintf("hang[%d]", k) }

// checkHang checks whatever needs no sound room.
func (b *builder) checkHang() {
	j := b.job
	if len(j.Hang) == 0 && len(j.Papers) > 1 {
		b.refuse("papers", "papers_unplaced", "papers", len(j.Papers))
	}
	seen := map[string]bool{}
	for k := range j.Hang {
		h, path := &j.Hang[k], hangPath(k)
		if h.Name != "" {
			b.name(path+".name", h.Name, seen)
		}
		if b.paperOf(h) < 0 {
			b.refuse(path+".paper", "paper_unknown", "paper", strconv.Quote(h.Paper), "hint", suggest(h.Paper, b.paperNames()))
		}
		if h.From != nil && h.To != nil && *h.From >= *h.To {
			b.refuse(path+".from", "from_not_below", "from", *h.From, "to", *h.To)
		}
		if s := h.Start; s != nil && s.ways() != 1 {
			b.refuse(path+".start", "start_ways")
		} else if s != nil && s.Of != "" && s.Edge != nil {
			b.refuse(path+".start.of", "start_of_alone")
		}
		b.liningForm(k, h)
		b.panelForm(k, h)
		if h.Kill != nil {
			b.killForm(h.Kill, path+".kill")
		}
	}
}

// killForm checks that a kill seam is named in one way.
func (b *builder) killForm(k *Kill, path string) {
	isCorner, isWall, isOpening := k.Corner != "", k.At != nil, k.Opening != ""
	switch {
	case isCorner && (isWall || isOpening || k.Wall != ""), isWall && isOpening, !isCorner && !isWall && !isOpening:
		b.refuse(path, "kill_ways")
	case isWall && k.Wall == "":
		b.refuse(path, "kill_at_wall")
	case k.Lap != "" && !isCorner:
		b.refuse(path+".lap", "kill_lap")
	}
}

func (b *builder) paperNames() []string {
	var list []string
	for i := range b.job.Papers {
		list = append(list, b.job.Papers[i].Name)
	}
	return list
}

func (b *builder) paperOf(h *Hang) int {
	return slices.IndexFunc(b.job.Papers, func(p Paper) bool { return p.Name == h.Paper })
}

// runs builds the runs of a sound room.
func (b *builder) runs() {
	taken := make([][]band, len(b.job.Room.Walls))
	lined := make([][]band, len(b.job.Room.Walls))
	hung := 0
	var over []hungOver
	for k, h := range b.job.hangs() {
		walls, ok := b.wallsOf(k, &h)
		if hung += len(walls); hung > maxHung {
			b.refuse("hang", "hung_walls_most", "most", maxHung)
			return
		}
		claimed := taken
		if h.Lining != "" {
			claimed = lined
		}
		if !ok || !b.claim(k, &h, walls, claimed) {
			continue
		}
		if h.Lining != "" {
			if run, ok := b.run(k, &h, walls, hangName(k, &h)); ok {
				b.lining(k, &h, run, walls, over)
			}
			continue
		}
		for _, part := range b.parts(k, &h, walls) {
			run, ok := b.run(k, &h, part.walls, part.name)
			if !ok {
				break
			}
			over = append(over, hungOver{len(b.task.Runs), part.walls})
			b.hang(k, &h, run)
		}
	}
}

// hang adds the task of a run.
func (b *builder) hang(k int, h *Hang, run *room.Run) {
	t := plan.RunTask{Run: run, Paper: b.paperOf(h), Panels: h.panelled()}
	t.Fixed.Start, t.Fixed.Centre = b.start(k, h, run)
	t.Fixed.Kill = b.kill(k, h, run)
	t.Fixed.Design = b.design(k, h)
	b.fix(k, h, run, &t.Fixed)
	b.task.Runs = append(b.task.Runs, t)
}

// hangName returns the name of what an entry hangs.
func hangName(k int, h *Hang) string {
	if h.Name == "" {
		return fmt.Sprintf("run %d", k+1)
	}
	return h.Name
}

// wallsOf finds the walls of an entry, which are neighbours to the right.
func (b *builder) wallsOf(k int, h *Hang) (walls []int, ok bool) {
	r := &b.job.Room
	if len(h.Walls) == 0 {
		for i := range r.Walls {
			walls = append(walls, i)
		}
		return walls, true
	}
	for n, name := range h.Walls {
		path := fmt.Sprintf("%s.walls[%d]", hangPath(k), n)
		i := slices.IndexFunc(r.Walls, func(w Wall) bool { return w.Name == name })
		switch {
		case i < 0:
			b.refuse(path, "wall_unknown", "wall", strconv.Quote(name), "hint", suggest(name, r.wallNames()))
			return nil, false
		case slices.Contains(walls, i):
			b.refuse(path, "wall_twice", "wall", name)
			return nil, false
		case n > 0 && i != (walls[n-1]+1)%len(r.Walls), n > 0 && i == 0 && !r.Closed:
			b.refuse(path, "wall_not_next", "wall", name, "before", h.Walls[n-1])
			return nil, false
		}
		walls = append(walls, i)
	}
	return walls, true
}

func (r *Room) wallNames() []string {
	var list []string
	for i := range r.Walls {
		list = append(list, r.Walls[i].Name)
	}
	return list
}

// run builds a run of one entry: its walls within its heights, the corners
// between them, and the corners of the room at its ends.
func (b *builder) run(k int, h *Hang, walls []int, name string) (*room.Run, bool) {
	run := &room.Run{Name: name, Closed: h.Panels == "" && b.isRound(k, h, walls)}
	limits := band{h.From, h.To}
	own := Band{Hang: k, Run: run, Walls: walls}
	for _, i := range walls {
		wall, openings, fittings, ok := limits.clipped(b.whole.Walls[i])
		if !ok {
			b.refuse(hangPath(k), "nothing_between", "wall", wall.Name)
			return nil, false
		}
		run.Walls = append(run.Walls, wall)
		own.Openings, own.Fittings = append(own.Openings, openings), append(own.Fittings, fittings)
	}
	b.corners(run, walls)
	if err := run.Check(); err != nil {
		for _, e := range faults(err) {
			if e.Rule == room.RuleOutline && !limits.isAll() {
				b.refuse(hangPath(k), "wall_in_parts", "wall", e.Place.Wall)
				continue
			}
			b.refuseSaying(hangPath(k), messageOf(e))
		}
		return nil, false
	}
	b.bands = append(b.bands, own)
	return run, true
}

// isRound reports whether an entry's paper goes all the way round on its walls. Where it
// cannot, and is to, that is refused.
func (b *builder) isRound(k int, h *Hang, walls []int) bool {
	all := b.whole.Closed && len(walls) == len(b.whole.Walls)
	if h.Closed == nil {
		return all
	}
	if *h.Closed && !all {
		b.refuse(hangPath(k)+".closed", "not_all_round")
	}
	return *h.Closed && all
}

func (b *builder) corners(run *room.Run, walls []int) {
	whole, last := b.whole, len(walls)-1
	for n, i := range walls {
		if n < last || run.Closed {
			run.Corners = append(run.Corners, whole.Corners[i])
		}
	}
	if run.Closed {
		return
	}
	run.Ends = whole.Ends
	all := len(whole.Walls)
	if first := walls[0]; first > 0 || whole.Closed {
		before := (first + all - 1) % all
		run.Ends.Left, run.Beyond.Left = whole.Corners[before], whole.Walls[before].Name
	}
	if walls[last] < len(whole.Corners) {
		run.Ends.Right, run.Beyond.Right = whole.Corners[walls[last]], whole.Walls[(walls[last]+1)%all].Name
	}
}

// claim refuses a stretch of wall that is papered already.
func (b *builder) claim(k int, h *Hang, walls []int, taken [][]band) bool {
	mine := band{h.From, h.To}
	for _, i := range walls {
		for _, other := range taken[i] {
			if mine.meets(other) {
				b.refuse(hangPath(k), "wall_claimed", "wall", b.job.Room.Walls[i].Name)
				return false
			}
		}
		taken[i] = append(taken[i], mine)
	}
	return true
}

// meets reports whether two bands share more than a line.
func (b band) meets(other band) bool {
	isBelow := func(a, b band) bool { return a.to != nil && b.from != nil && *a.to <= *b.from }
	return !isBelow(b, other) && !isBelow(other, b)
}

// wallOf returns the index of a wall within a run.
func (b *builder) wallOf(run *room.Run, path, name string) (int, bool) {
	i := slices.IndexFunc(run.Walls, func(w room.Wall) bool { return w.Name == name })
	if i < 0 {
		var known []string
		for k := range run.Walls {
			known = append(known, run.Walls[k].Name)
		}
		b.refuse(path, "wall_not_here", "wall", strconv.Quote(name), "hint", suggest(name, known))
	}
	return i, i >= 0
}

// lines are the words of Start.Of.
var lines = map[string]plan.CentreOf{"": plan.Either, "drop": plan.DropCentre, "seam": plan.SeamCentre, "motif": plan.MotifAxis}

func (b *builder) start(k int, h *Hang, run *room.Run) (*hanging.Start, *plan.Centre) {
	s, path := h.Start, hangPath(k)+".start"
	if s == nil {
		return nil, nil
	}
	i, ok := b.wallOf(run, path+".wall", s.Wall)
	if !ok {
		return nil, nil
	}
	of, known := lines[s.Of]
	width := run.Walls[i].Width
	centre := s.Centre
	if len(s.Middle) > 0 {
		if centre = b.middle(&run.Walls[i], s.Middle, path+".middle"); centre == nil {
			return nil, nil
		}
	}
	switch {
	case !known:
		b.refuse(path+".of", "start_of_word", "word", strconv.Quote(s.Of))
	case s.Edge != nil && (*s.Edge >= width || *s.Edge < -b.task.Papers[b.paperOf(h)].Width):
		b.refuse(path+".edge", "edge_off", "edge", *s.Edge, "wall", s.Wall, "width", width)
	case s.Edge != nil:
		return &hanging.Start{Wall: i, X: *s.Edge}, nil
	case *centre < 0 || *centre > width:
		b.refuse(path+".centre", "centre_off", "centre", *centre, "wall", s.Wall, "width", width)
	case of == plan.MotifAxis && b.task.Papers[b.paperOf(h)].Motif == nil:
		b.refuse(path+".of", "motif_unknown", "paper", h.Paper)
	}
	if centre == nil {
		return nil, nil
	}
	return nil, &plan.Centre{Wall: i, X: *centre, Of: of}
}

// ways counts in how many ways a start is given.
func (s *Start) ways() (n int) {
	for _, given := range []bool{s.Edge != nil, s.Centre != nil, len(s.Middle) > 0} {
		if given {
			n++
		}
	}
	return n
}

// middle returns the line named by what it is the middle of: the wall, one of its
// openings or fittings, or two of them, with the pier between; nil, with a
// problem, when there is none.
func (b *builder) middle(w *room.Wall, names []string, path string) *measure.Length {
	if len(names) > 2 {
		b.refuse(path, "middle_many", "n", len(names))
		return nil
	}
	var things []geom.Interval
	for n, name := range names {
		x, ok := reachOf(w, name)
		if !ok {
			b.refuse(fmt.Sprintf("%s[%d]", path, n), "thing_unknown", "wall", w.Name, "name", strconv.Quote(name), "hint", suggest(name, thingsOn(w)))
			return nil
		}
		things = append(things, x)
	}
	between := things[0]
	if len(things) == 2 {
		slices.SortFunc(things, func(a, b geom.Interval) int { return cmp.Compare(a.Lo, b.Lo) })
		between = geom.Interval{Lo: things[0].Hi, Hi: things[1].Lo}
	}
	x := between.Lo + between.Length()/2
	return &x
}

// reachOf returns from where to where something named reaches on a wall.
func reachOf(w *room.Wall, name string) (geom.Interval, bool) {
	for i := range w.Openings {
		if w.Openings[i].Name == name {
			x, _ := w.Openings[i].Outline.Bounds()
			return x, true
		}
	}
	for i := range w.Fittings {
		if f := &w.Fittings[i]; f.Name == name {
			return geom.Interval{Lo: f.At.X - f.Size.X/2, Hi: f.At.X + f.Size.X/2}, true
		}
	}
	return geom.Interval{Lo: 0, Hi: w.Width}, name == "wall"
}

// thingsOn lists what a centre line may be the middle of.
func thingsOn(w *room.Wall) []string {
	list := []string{"wall"}
	for i := range w.Openings {
		if n := w.Openings[i].Name; n != "" {
			list = append(list, n)
		}
	}
	for i := range w.Fittings {
		if n := w.Fittings[i].Name; n != "" {
			list = append(list, n)
		}
	}
	return list
}

func (b *builder) kill(k int, h *Hang, run *room.Run) *plan.Kill {
	seam, path := h.Kill, hangPath(k)+".kill"
	switch {
	case seam == nil:
		return nil
	case !run.Closed:
		b.refuse(path, "kill_open_run")
		return nil
	case seam.Corner != "":
		return b.killCorner(seam, path, run)
	case seam.Opening != "":
		return b.killOpening(seam, path, run)
	}
	i, ok := b.wallOf(run, path+".wall", seam.Wall)
	if ok && (*seam.At < 0 || *seam.At > run.Walls[i].Width) {
		b.refuse(path+".at", "kill_at_off", "at", *seam.At, "wall", seam.Wall, "width", run.Walls[i].Width)
	}
	return &plan.Kill{Kill: hanging.Kill{Kind: hanging.OnWall, Wall: i, X: *seam.At}}
}

func (b *builder) killCorner(seam *Kill, path string, run *room.Run) *plan.Kill {
	kill := &plan.Kill{Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: b.cornerOf(run, path+".corner", seam.Corner)}}
	switch seam.Lap {
	case "":
		kill.Free = true
	case "left":
	case "right":
		kill.Lap = hanging.Right
	default:
		b.refuse(path+".lap", "lap_word", "word", strconv.Quote(seam.Lap))
	}
	return kill
}

// cornerOf returns the corner "A|B" of a run by the wall on its left; −1, with a
// problem, when there is none.
func (b *builder) cornerOf(run *room.Run, path, name string) int {
	var known []string
	for i := range run.Corners {
		if run.CornerName(i) == name {
			return i
		}
		known = append(known, run.CornerName(i))
	}
	b.refuse(path, "corner_none", "corner", strconv.Quote(name), "known", Clip(strings.Join(known, ", ")))
	return -1
}

// killOpening puts the kill seam over an opening, at its middle if that is as good as
// anywhere over it.
func (b *builder) killOpening(seam *Kill, path string, run *room.Run) *plan.Kill {
	var found []plan.Kill
	for i := range run.Walls {
		for _, o := range run.Walls[i].Openings {
			if o.Name == seam.Opening && (seam.Wall == "" || seam.Wall == run.Walls[i].Name) {
				x, _ := o.Outline.Bounds()
				found = append(found, plan.Kill{Kill: hanging.Kill{Kind: hanging.OnWall, Wall: i, X: (x.Lo + x.Hi) / 2}, Free: true})
			}
		}
	}
	switch len(found) {
	case 0:
		b.refuse(path+".opening", "opening_none", "opening", strconv.Quote(seam.Opening))
	case 1:
		return &found[0]
	default:
		b.refuse(path+".opening", "openings_same", "n", len(found), "opening", strconv.Quote(seam.Opening))
	}
	return nil
}

func (b *builder) design(k int, h *Hang) *measure.Length {
	if h.Design == nil {
		return nil
	}
	switch repeat := b.task.Papers[b.paperOf(h)].Repeat; {
	case repeat == 0:
		b.refuse(hangPath(k)+".design", "design_none", "paper", h.Paper)
	case *h.Design < 0 || *h.Design >= repeat:
		b.refuse(hangPath(k)+".design", "design_over", "design", *h.Design, "repeat", repeat)
	}
	design := *h.Design
	return &design
}
