package tell

import (
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/words"
)

// Misses says in words how far a design misses at a seam; it follows "the
// design".
func Misses(c *words.Catalogue, across geom.Interval, along measure.Length) string {
	wide, high := missesAcross(c, across), missesAlong(c, along)
	switch {
	case wide == "" && high == "":
		return c.Text("misses.not")
	case wide == "":
		return high
	case high == "":
		return wide
	}
	return c.Text("misses.and", "across", wide, "along", high)
}

// missesAcross says what becomes of the design's width; "" when it is whole.
func missesAcross(c *words.Catalogue, across geom.Interval) string {
	switch lo, hi := across.Lo, across.Hi; {
	case lo == 0 && hi == 0:
		return ""
	case lo >= 0 && hi >= 0:
		return c.Text("misses.loses", "size", fromTo(c, lo, hi))
	case lo <= 0 && hi <= 0:
		return c.Text("misses.twice", "size", fromTo(c, -hi, -lo))
	default:
		return c.Text("misses.both", "twice", c.Plain(-lo), "lost", c.Plain(hi))
	}
}

// missesAlong says by how much the design stands too low or too high; "" when it
// does not.
func missesAlong(c *words.Catalogue, along measure.Length) string {
	switch {
	case along < 0:
		return c.Text("misses.low", "size", c.Plain(-along))
	case along > 0:
		return c.Text("misses.high", "size", c.Plain(along))
	}
	return ""
}

// missed says how far a design misses, without its direction; it follows "misses
// by". A part that comes to nothing as it is written is left out.
func missed(c *words.Catalogue, across, along measure.Length) string {
	across, along = across.Abs(), along.Abs()
	switch {
	case isNothing(c, along):
		return c.Text("missed.across", "across", across)
	case isNothing(c, across):
		return c.Text("missed.along", "along", along)
	}
	return c.Text("missed.both", "across", across, "along", along)
}

// isNothing reports whether a length comes to nothing as it is written.
func isNothing(c *words.Catalogue, l measure.Length) bool { return l.Rounded(c.Units()) == 0 }

// fromTo writes a length, or the two ends of a stretch: the upper alone where the lower
// comes to nothing as it is written.
func fromTo(c *words.Catalogue, lo, hi measure.Length) string {
	switch {
	case lo == hi:
		return c.Plain(lo)
	case isNothing(c, lo):
		return c.Text("size.up-to", "size", c.Plain(hi))
	}
	return c.Text("size.from-to", "from", c.Plain(lo), "to", c.Plain(hi))
}

// KillOf returns the kill seam of a run; nil for one with two ends.
func KillOf(l *hanging.Layout) *hanging.Seam {
	if n := len(l.Seams); n > 0 && l.Seams[n-1].Kind == hanging.KillSeam {
		return &l.Seams[n-1]
	}
	return nil
}

// Kill tells where the design of a run cannot meet, and by how much.
func Kill(c *words.Catalogue, l *hanging.Layout) string {
	k := KillOf(l)
	if k == nil {
		return c.Text("page.no-kill")
	}
	place := killPlace(c, l, k)
	if l.Paper.Match.Kind == paper.Free && l.Paper.Repeat == 0 {
		return c.Text("page.kill-free", "place", place)
	}
	return c.Text("page.kill", "place", place, "misses", Misses(c, k.Across, k.Along))
}

func killPlace(c *words.Catalogue, l *hanging.Layout, k *hanging.Seam) string {
	if k.InCorner {
		return c.Text("page.kill-in", "corner", Corner(c, l.Run, k.Wall, hanging.Left))
	}
	w := &l.Run.Walls[k.Wall]
	for i := range w.Openings {
		if x, _ := w.Openings[i].Outline.Bounds(); x.Contains(k.X) {
			return c.Text("page.kill-over", "opening", Opening(c, &w.Openings[i]), "wall", Wall(c, l.Run, k.Wall))
		}
	}
	return c.Text("page.kill-on", "wall", Wall(c, l.Run, k.Wall), "from", FromEnd(c, l.Run, k.Wall, k.X, hanging.Left))
}
