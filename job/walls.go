package job

import (
	"errors"
	"fmt"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/room"
)

// room builds the whole room as one run and checks it.
func (b *builder) room() {
	r := &b.job.Room
	if len(r.Walls) == 0 {
		b.refuse("room.walls", "walls_none")
		return
	}
	if len(r.Walls) > maxItems {
		b.refuse("room.walls", "walls_many", "n", len(r.Walls), "most", maxItems)
		return
	}
	before := len(b.problems)
	if b.countOpenings(); len(b.problems) > before {
		return
	}
	run := &room.Run{Closed: r.Closed}
	seen := map[string]bool{}
	for i := range r.Walls {
		b.name(wallPath(i)+".name", r.Walls[i].Name, seen)
		run.Walls = append(run.Walls, b.wall(i))
	}
	for i := range r.cornerCount() {
		run.Corners = append(run.Corners, r.corner(i))
	}
	b.ends(run)
	if len(b.problems) > before {
		return
	}
	if err := run.Check(); err != nil {
		for _, e := range faults(err) {
			b.refuseSaying(pathOf(e), messageOf(e))
		}
		return
	}
	b.whole = run
	b.diagonals()
}

// countOpenings refuses more openings than anybody would ever measure, before
// they are held against one another.
func (b *builder) countOpenings() {
	total := 0
	for i := range b.job.Room.Walls {
		n := len(b.job.Room.Walls[i].Openings)
		if total += n; n > maxAtWall {
			b.refuse(wallPath(i)+".openings", "wall_openings_many", "wall", b.job.Room.Walls[i].Name, "n", n, "most", maxAtWall)
		}
	}
	if total > maxAtWalls {
		b.refuse("room.walls", "openings_many", "n", total, "most", maxAtWalls)
	}
}

func wallPath(i int) string { return fmt.Sprintf("room.walls[%d]", i) }

// cornerCount returns how many corners the room has: none at the ends of an
// open one.
func (r *Room) cornerCount() int {
	if r.Closed {
		return len(r.Walls)
	}
	return len(r.Walls) - 1
}

// corner returns the corner at the right end of wall i.
func (r *Room) corner(i int) room.Corner {
	c := r.Walls[i].Corner
	if c == nil {
		c = r.Corner
	}
	if c == nil {
		return room.Corner{}
	}
	return room.Corner{Kind: c.Kind, Angle: c.Angle, LeanLeft: c.Lean.Left, LeanRight: c.Lean.Right, Sight: c.Sight}
}

// ends sets how the ends of an open room lean, and refuses corners and ends
// where there are none.
func (b *builder) ends(run *room.Run) {
	r := &b.job.Room
	last := len(r.Walls) - 1
	switch {
	case r.Closed && r.Ends != (Ends{}):
		b.refuse("room.ends", "ends_closed")
	case !r.Closed && r.Walls[last].Corner != nil:
		b.refuse(wallPath(last)+".corner", "corner_at_end", "wall", r.Walls[last].Name)
	}
	run.Ends.Left.LeanRight = r.Ends.Left
	run.Ends.Right.LeanLeft = r.Ends.Right
}

// wall builds one wall.
func (b *builder) wall(i int) room.Wall {
	w := &b.job.Room.Walls[i]
	built := room.Wall{Name: w.Name, Width: w.Width, Sight: w.Sight, Outline: b.outline(i)}
	for k := range w.Openings {
		built.Openings = append(built.Openings, b.opening(i, k, built.Outline))
	}
	for k, f := range w.Fittings {
		b.text(fmt.Sprintf("%s.fittings[%d].name", wallPath(i), k), f.Name)
		built.Fittings = append(built.Fittings, room.Fitting(f))
	}
	return built
}

// outline returns a wall's shape: as stated, or from floor and height.
func (b *builder) outline(i int) geom.Ring {
	w, path := &b.job.Room.Walls[i], wallPath(i)
	if w.Outline != nil {
		if w.Height != nil || w.Floor != nil {
			b.refuse(path+".outline", "wall_outline_too", "wall", w.Name)
		}
		return w.Outline
	}
	height, floor := w.Height, Span{}
	if height == nil {
		height = b.job.Room.Height
	}
	if w.Floor != nil {
		floor = *w.Floor
	}
	if height == nil {
		b.refuse(path+".height", "wall_no_height", "wall", w.Name)
		return nil
	}
	ring, fault := shape(w.Width, floor, *height)
	if fault.Code != "" {
		b.refuse(path+".height", "at_wall", "wall", w.Name, "why", fault)
	}
	return ring
}

// shape returns the wall between a floor and a ceiling line, counter-clockwise
// from its left foot. The two lines may meet at one end, not at both, and must
// not cross.
func shape(width measure.Length, floor, head Span) (ring geom.Ring, fault message.Message) {
	left, right := head.Left-floor.Left, head.Right-floor.Right
	switch {
	case left < 0 || left == 0 && right <= 0:
		return nil, says("ceiling_left", "height", head.Left, "floor", floor.Left)
	case right < 0:
		return nil, says("ceiling_right", "height", head.Right, "floor", floor.Right)
	}
	ring = geom.Ring{{X: 0, Y: floor.Left}, {X: width, Y: floor.Right}}
	if right > 0 {
		ring = append(ring, geom.Point{X: width, Y: head.Right})
	}
	if left > 0 {
		ring = append(ring, geom.Point{X: 0, Y: head.Left})
	}
	return ring, fault
}

// opening builds one opening of a wall.
func (b *builder) opening(i, k int, wall geom.Ring) room.Opening {
	o := &b.job.Room.Walls[i].Openings[k]
	path := fmt.Sprintf("%s.openings[%d]", wallPath(i), k)
	b.text(path+".name", o.Name)
	if o.Returns != (room.Sides{}) && o.Depth == 0 {
		b.refuse(path+".returns", "returns_no_depth")
	}
	built := room.Opening{Name: o.Name, Kind: o.Kind, Depth: o.Depth, Sides: o.Returns, Sight: o.Sight}
	if o.Outline != nil {
		if o.Left != nil || o.Width != nil || o.Sill != nil || o.Height != nil {
			b.refuse(path+".outline", "opening_outline_too", "kind", o.Kind)
		}
		built.Outline = o.Outline
		return built
	}
	built.Outline = b.rectangle(o, path, wall)
	return built
}

// rectangle returns the shape of an opening without an outline. Without a sill it
// goes down to the lowest point of the floor under it, and its height counts from
// the higher end of the floor: nothing is papered under a door.
func (b *builder) rectangle(o *Opening, path string, wall geom.Ring) geom.Ring {
	missing := false
	for _, f := range []struct {
		key   string
		value *measure.Length
	}{{"left", o.Left}, {"width", o.Width}, {"height", o.Height}} {
		if f.value == nil {
			b.refuse(path+"."+f.key, "opening_lacks", "kind", o.Kind, "key", f.key)
			missing = true
		}
	}
	needsSill := o.Kind == room.Window || o.Kind == room.Panel
	if o.Sill == nil && needsSill {
		b.refuse(path+".sill", "opening_no_sill", "kind", o.Kind)
		missing = true
	}
	if missing {
		return nil
	}
	for _, f := range []struct {
		key   string
		value measure.Length
	}{{"width", *o.Width}, {"height", *o.Height}} {
		if f.value <= 0 {
			b.refuse(path+"."+f.key, "opening_not_positive", "kind", o.Kind, "key", f.key, "value", f.value)
			missing = true
		}
	}
	left, right := *o.Left, *o.Left+*o.Width
	if missing {
		return nil
	}
	var foot, head measure.Length
	if o.Sill != nil {
		foot, head = *o.Sill, *o.Sill+*o.Height
	} else {
		foot = lowestFloor(wall, left, right)
		head = max(floorAt(wall, left), floorAt(wall, right)) + *o.Height
	}
	return geom.Ring{{X: left, Y: foot}, {X: right, Y: foot}, {X: right, Y: head}, {X: left, Y: head}}
}

// lowestFloor returns the lowest height that a wall has from left to right.
func lowestFloor(wall geom.Ring, left, right measure.Length) measure.Length {
	lowest := min(floorAt(wall, left), floorAt(wall, right))
	for _, p := range wall {
		if left < p.X && p.X < right {
			lowest = min(lowest, floorAt(wall, p.X))
		}
	}
	return lowest
}

// floorAt returns the lowest height of a wall at x, rounded to the nearest
// nanometre; 0 where the wall is not.
func floorAt(wall geom.Ring, x measure.Length) measure.Length {
	lowest, found := measure.Length(0), false
	for i, p := range wall {
		q := wall[(i+1)%len(wall)]
		if p.X > q.X {
			p, q = q, p
		}
		if x < p.X || x > q.X {
			continue
		}
		y := min(p.Y, q.Y)
		if p.X < q.X {
			y = p.Y + (x-p.X).Scaled(int64(q.Y-p.Y), int64(q.X-p.X))
		}
		if !found || y < lowest {
			lowest, found = y, true
		}
	}
	return lowest
}

// faults returns the single faults of a run that [room.Run.Check] refuses.
func faults(err error) room.Errors {
	var all room.Errors
	if !errors.As(err, &all) {
		return room.Errors{{Wall: -1, Opening: -1, Fitting: -1, Corner: -1, Why: message.Of(err)}}
	}
	return all
}

// fieldOf names the key that each of the room's rules is about.
var fieldOf = map[room.Rule]string{
	room.RuleWidth: ".width", room.RuleOutline: ".outline", room.RuleOutlineWidth: ".outline",
	room.RuleOpening: ".outline", room.RuleOpeningWidth: ".width", room.RuleOpeningPlace: ".left",
	room.RuleDepth: ".depth", room.RuleFitting: ".size", room.RuleCorners: ".walls", room.RuleWalls: ".walls",
}

// pathOf returns where in the document a fault of the room stands.
func pathOf(e *room.Error) string {
	path := "room"
	switch {
	case e.Corner >= 0:
		path = wallPath(e.Corner) + ".corner"
	case e.Wall >= 0:
		path = wallPath(e.Wall)
	}
	if e.Opening >= 0 {
		path = fmt.Sprintf("%s.openings[%d]", path, e.Opening)
	}
	if e.Fitting >= 0 {
		path = fmt.Sprintf("%s.fittings[%d]", path, e.Fitting)
	}
	return path + fieldOf[e.Rule]
}

// messageOf returns a fault with the names of what it is about.
func messageOf(e *room.Error) message.Message {
	switch {
	case e.Place.Opening != "":
		return says("at_opening", "wall", e.Place.Wall, "opening", e.Place.Opening, "why", e.Why)
	case e.Place.Wall != "":
		return says("at_wall", "wall", e.Place.Wall, "why", e.Why)
	case e.Place.Corner != "":
		return says("at_corner", "corner", e.Place.Corner, "why", e.Why)
	}
	return e.Why
}
