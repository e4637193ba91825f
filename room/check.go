package room

import (
	"cmp"
	"fmt"
	"slices"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/message"
)

// leastOverlap is the area that two openings may share, or that an opening may
// miss its wall by, before anybody is asked: a millimetre along a metre is
// 1 000 mm², so this is far below what a tape can tell, and far above what
// rounding a slope to nanometres makes.
const leastOverlap = measure.SquareMillimetre

// Check reports every measurement of the run that cannot be right, in the order
// of the run, as [Errors]; nil when there is none. A run that passes can be
// planned. What is possible but unlikely is no error: [Run.Findings] asks about
// it.
func (r *Run) Check() error {
	c := checker{run: r}
	c.countWalls()
	for i := range r.Walls {
		c.wall(i)
		for j := range r.Walls[i].Fittings {
			c.fitting(i, j)
		}
		if i < len(r.Corners) {
			c.corner(i)
		}
	}
	if len(c.errors) == 0 {
		c.faces()
	}
	if len(c.errors) == 0 {
		return nil
	}
	return c.errors
}

// checker collects the errors of a run.
type checker struct {
	run    *Run
	errors Errors
}

// of returns an error about the whole run, for its place to be filled in.
func (c *checker) of(rule Rule, why message.Message) *Error {
	e := &Error{
		Rule: rule, Place: finding.Place{Run: c.run.Name},
		Wall: -1, Opening: -1, Fitting: -1, Corner: -1,
		Why: why,
	}
	c.errors = append(c.errors, e)
	return e
}

func (c *checker) ofWall(i int, rule Rule, why message.Message) *Error {
	e := c.of(rule, why)
	e.Wall, e.Place.Wall = i, c.run.WallName(i)
	return e
}

func (c *checker) ofOpening(i, j int, rule Rule, why message.Message) *Error {
	e := c.ofWall(i, rule, why)
	e.Opening, e.Place.Opening = j, c.run.openingName(i, j)
	return e
}

func (c *checker) ofCorner(i int, rule Rule, why message.Message) *Error {
	e := c.of(rule, why)
	e.Corner, e.Place.Corner = i, c.run.CornerName(i)
	return e
}

func (c *checker) countWalls() {
	walls, corners := len(c.run.Walls), len(c.run.Corners)
	want := walls
	switch {
	case walls == 0:
		c.of(RuleWalls, message.New("no_walls", "there is no wall to paper; give at least one"))
		return
	case c.run.Closed && walls < 3:
		c.of(RuleWalls, message.New("walls_cannot_close", "{walls} walls cannot close a room; give the others, or make it an open run", "walls", walls))
	case !c.run.Closed:
		want--
	}
	if corners != want {
		c.of(RuleCorners, message.New("corners_count", "{corners} corners for {walls} walls, where {want} are needed; look at each corner again", "corners", corners, "walls", walls, "want", want))
	}
}

func (c *checker) wall(i int) {
	w := &c.run.Walls[i]
	switch {
	case w.Width <= 0:
		c.ofWall(i, RuleWidth, message.New("width_none", "its width is {width}; measure it along the level line", "width", w.Width)).Got = w.Width
		return
	case w.Width > measure.MaxLength:
		e := c.ofWall(i, RuleWidth, message.New("width_large", "its width of {width} is more than {most}; measure it again", "width", w.Width, "most", measure.MaxLength))
		e.Got, e.Limit = w.Width, measure.MaxLength
		return
	}
	if err := w.Outline.Check(); err != nil {
		c.ofWall(i, RuleOutline, message.New("outline_wrong", "{why}; measure its corners again", "why", message.Of(err))).Cause = err
		return
	}
	x, _ := w.Outline.Bounds()
	if x.Lo < 0 || x.Hi > w.Width {
		far := max(x.Hi, w.Width-x.Lo)
		e := c.ofWall(i, RuleOutlineWidth, message.New("outline_width", "its outline runs from {from} to {to} across, but the wall is {width} wide; measure its width and its slopes again", "from", x.Lo, "to", x.Hi, "width", w.Width))
		e.Got, e.Limit = far, w.Width
		return
	}
	c.openings(i)
}

// openings checks those of a sound wall.
func (c *checker) openings(i int) {
	w := &c.run.Walls[i]
	var sound []placed
	for j := range w.Openings {
		if c.opening(i, j) {
			x, y := w.Openings[j].Outline.Bounds()
			sound = append(sound, placed{j, x, y})
		}
	}
	slices.SortStableFunc(sound, func(a, b placed) int { return cmp.Compare(a.x.Lo, b.x.Lo) })
	var clashes [][2]int
	for k, a := range sound {
		for _, b := range sound[k+1:] {
			if b.x.Lo >= a.x.Hi {
				break
			}
			if a.y.Overlaps(b.y) && overlap(w.Openings[a.index].Outline, w.Openings[b.index].Outline) {
				clashes = append(clashes, [2]int{max(a.index, b.index), min(a.index, b.index)})
				break // one is enough to measure it again
			}
		}
	}
	slices.SortFunc(clashes, func(a, b [2]int) int { return slices.Compare(a[:], b[:]) })
	for _, clash := range clashes {
		c.ofOpening(i, clash[0], RuleOpeningOverlap,
			message.New("opening_overlaps", "it overlaps {opening}; measure the distance of both from the wall's left corner again", "opening", c.run.openingName(i, clash[1])))
	}
}

// placed is an opening with its bounds.
type placed struct {
	index int
	x, y  geom.Interval
}

// opening checks one opening by itself, and reports whether its place is sound.
func (c *checker) opening(i, j int) bool {
	w := &c.run.Walls[i]
	o := &w.Openings[j]
	if o.Depth < 0 {
		c.ofOpening(i, j, RuleDepth, message.New("depth_negative", "its depth is {depth}; measure how far it goes back from the wall's face", "depth", o.Depth)).Got = o.Depth
	}
	if err := o.Outline.Check(); err != nil {
		c.ofOpening(i, j, RuleOpening, message.New("outline_wrong", "{why}; measure its corners again", "why", message.Of(err))).Cause = err
		return false
	}
	x, _ := o.Outline.Bounds()
	switch {
	case x.Length() > w.Width:
		e := c.ofOpening(i, j, RuleOpeningWidth, message.New("opening_wide", "it is {width} wide, but the wall is only {wall} wide; measure both again", "width", x.Length(), "wall", w.Width))
		e.Got, e.Limit = x.Length(), w.Width
	case x.Lo < 0:
		e := c.ofOpening(i, j, RuleOpeningPlace, message.New("opening_before", "it begins {by} before the wall's left corner; measure its distance from there again", "by", -x.Lo))
		e.Got = x.Lo
	case x.Hi > w.Width:
		e := c.ofOpening(i, j, RuleOpeningPlace, message.New("opening_beyond", "it ends {by} beyond the wall's right corner; measure its width and its distance from the left corner again", "by", x.Hi-w.Width))
		e.Got, e.Limit = x.Hi, w.Width
	case !overlap(o.Outline, w.Outline):
		c.ofOpening(i, j, RuleOpeningPlace, message.New("opening_above_below", "it lies above or below all of the wall; measure the heights of its head and foot again"))
	default:
		return true
	}
	return false
}

// outside returns the parts of ring a that lie outside ring b.
func outside(a, b geom.Ring) []geom.Cell {
	p := geom.Polygon{Outline: a, Holes: []geom.Ring{b}}
	x, _ := p.Bounds()
	return p.Cells(x)
}

// overlap reports whether two rings share more area than measuring can tell.
func overlap(a, b geom.Ring) bool {
	return a.Area()-geom.AreaOf(outside(a, b)) > leastOverlap
}

func (c *checker) fitting(i, j int) {
	f := &c.run.Walls[i].Fittings[j]
	if f.Size.X < 0 || f.Size.Y < 0 {
		e := c.ofWall(i, RuleFitting, message.New("fitting_size", "{fitting}: its size is {across} by {up}; measure it again", "fitting", fittingName(f, j), "across", f.Size.X, "up", f.Size.Y))
		e.Fitting, e.Got = j, min(f.Size.X, f.Size.Y)
	}
}

// fittingName returns the name of fitting j, or "socket 2" (counted from 1
// within the wall) for one without.
func fittingName(f *Fitting, j int) string {
	if f.Name != "" {
		return f.Name
	}
	return fmt.Sprintf("%v %d", f.Kind, j+1)
}

func (c *checker) corner(i int) {
	k := &c.run.Corners[i]
	const straight, full = 180 * measure.Degree, 360 * measure.Degree
	switch angle := k.InteriorAngle(); {
	case angle < 0 || angle >= full:
		c.ofCorner(i, RuleAngle, message.New("angle_none", "its angle of {angle} is none between 0° and 360°; measure it through the room", "angle", angle))
	case angle == straight:
		c.ofCorner(i, RuleCornerKind, message.New("angle_straight", "180° is no corner; make the two walls one, or measure the angle again"))
	case (angle > straight) != (k.Kind == Outside):
		c.ofCorner(i, RuleCornerKind, notOf(k.Kind, angle))
	}
}

// notOf says that a corner of that angle is not of the kind that it is said to be.
func notOf(kind CornerKind, angle measure.Angle) message.Message {
	if kind == Outside {
		return message.New("corner_not_outside", "it is said to be an outside corner, but measures {angle} through the room; look whether it points towards you, and measure the angle again", "angle", angle)
	}
	return message.New("corner_not_inside", "it is said to be an inside corner, but measures {angle} through the room; look whether it points towards you, and measure the angle again", "angle", angle)
}

// faces checks that the corners' leans leave each wall a face. A run with
// other errors has none to look at.
func (c *checker) faces() {
	for i := range c.run.Walls {
		w := &c.run.Walls[i]
		left, right := c.run.LeanAt(i)
		for _, lean := range []measure.Length{left, right} {
			if lean >= w.Width || lean <= -w.Width {
				e := c.ofWall(i, RuleLean, message.New("lean_large", "a corner leans by {lean}, but the wall is only {width} wide; measure the lean with a plumb line again", "lean", lean, "width", w.Width))
				e.Got, e.Limit = lean, w.Width
			}
		}
		if err := c.run.Face(i).Outline.Check(); err != nil && -w.Width < min(left, right) && max(left, right) < w.Width {
			e := c.ofWall(i, RuleLean, message.New("leans_cross", "its corners lean by {left} and {right}, so that they cross; measure both leans with a plumb line again", "left", left, "right", right))
			e.Got, e.Limit, e.Cause = right-left, w.Width, err
		}
	}
}
