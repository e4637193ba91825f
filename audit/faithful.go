package audit

import (
	"reflect"
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
)

// judgeFaithful: the layout of run i answers what the task asks.
func judgeFaithful(b *book, t *plan.Task, i int, l *hanging.Layout) {
	rt := &t.Runs[i]
	alike := func(what string, want, got any) {
		if !reflect.DeepEqual(want, got) {
			b.note(Faithful, Place{}, what, "the task's", "another")
		}
	}
	if l.Run != rt.Run {
		alike("run", rt.Run, l.Run)
	}
	label := &t.Papers[rt.Paper]
	if rt.Panels != nil && rt.Fixed.Start == nil {
		label = judgePanels(b, rt, label, l)
	}
	if l.Paper != label {
		alike("paper", label, l.Paper)
	}
	alike("rules", t.Rules, l.Rules)
	f := &rt.Fixed
	if f.Start != nil {
		alike("start", *f.Start, l.Choice.Start)
	}
	if f.Design != nil {
		alike("design height", *f.Design, l.Choice.Design)
	}
	if f.Kill != nil {
		alike("kind of kill seam", f.Kill.Kind, l.Choice.Kill.Kind)
		alike("wall of the kill seam", f.Kill.Wall, l.Choice.Kill.Wall)
		if !f.Kill.Free {
			alike("place of the kill seam", f.Kill.Kill, l.Choice.Kill)
		}
	}
	for _, c := range f.NewDrop {
		if !slices.Contains(l.Choice.NewDrop, c) && (l.Choice.Kill.Kind != hanging.AtCorner || l.Choice.Kill.Wall != c) {
			b.note(Faithful, Place{Wall: c + 1}, "a new drop in the corner on the right", "there", "none")
		}
	}
	for _, c := range f.Carry {
		if slices.Contains(l.Choice.NewDrop, c) {
			b.note(Faithful, Place{Wall: c + 1}, "a new drop in the corner on the right", "none", "there")
		}
	}
	judgeSet(b, f, l)
	judgeKeptOff(b, f, l)
	if f.Centre != nil && !onCentre(l, f.Centre) {
		b.note(Faithful, Place{Wall: f.Centre.Wall + 1}, "what is centred on "+figure(f.Centre.X), "there", "elsewhere")
	}
}

// judgeSet: walls whose setting is fixed are set so. One that hangs plumb with all
// others may be left out of the layout's settings.
func judgeSet(b *book, f *plan.Fixed, l *hanging.Layout) {
	for _, s := range f.Set {
		var got hanging.Setting
		switch {
		case s.Wall < len(l.Choice.Set):
			got = l.Choice.Set[s.Wall]
		case len(l.Turns) == 0:
			got = levelled(s.Setting, l.Run, f)
		}
		if got != s.Setting {
			b.note(Faithful, Place{Wall: s.Wall + 1}, "what its drops are set to", s.To, got.To)
		}
	}
}

// levelled returns a setting that comes to plumb and level, as all do together
// where nothing on their walls is crooked; else the zero setting.
func levelled(s hanging.Setting, run *room.Run, f *plan.Fixed) hanging.Setting {
	set := make([]hanging.Setting, len(run.Walls))
	for _, k := range f.Set {
		if k.Wall < 0 || k.Wall >= len(set) {
			return hanging.Setting{}
		}
		set[k.Wall] = k.Setting
	}
	all, ok := turnings(run, set)
	for _, t := range all {
		ok = ok && t == turning{}
	}
	if ok {
		return s
	}
	return hanging.Setting{}
}

// onCentre reports whether a drop stands as the centre line asks: with its
// middle, its edge or its motif's axis on it (the middle where no motif is
// stated), to the nanometre that half an uneven width leaves.
func onCentre(l *hanging.Layout, c *plan.Centre) bool {
	for i := range l.Drops {
		for _, p := range l.Drops[i].Parts {
			if p.Wall != c.Wall {
				continue
			}
			off := 2 * (c.X - (p.X.Lo - p.Across.Lo)) // twice the line's place across the drop
			w := l.Paper.Width
			drop := (off - w).Abs() <= 1
			seam := off == 0 || off == 2*w
			motif := drop
			if l.Paper.Motif != nil {
				motif = off == 2*l.Paper.Motif.Axis
			}
			switch {
			case c.Of == plan.Either && (drop || seam || motif), c.Of == plan.DropCentre && drop,
				c.Of == plan.SeamCentre && seam, c.Of == plan.MotifAxis && motif:
				return true
			}
		}
	}
	return false
}

// judgeKeptOff: no part of a drop ends within a stretch kept free of seams, and
// what hangs already is not cut open.
func judgeKeptOff(b *book, f *plan.Fixed, l *hanging.Layout) {
	for _, k := range f.KeepOff {
		for i := range l.Drops {
			for _, p := range l.Drops[i].Parts {
				for _, x := range [...]measure.Length{p.X.Lo, p.X.Hi} {
					if p.Wall == k.Wall && k.X.Lo < x && x < k.X.Hi && x > 0 && x < l.Run.Walls[p.Wall].Width {
						b.note(Faithful, Place{Wall: p.Wall + 1}, "a seam at "+figure(x), "none", "there")
					}
				}
			}
		}
	}
	if k := l.Choice.Kill; k.Kind == hanging.OnWall && slices.Contains(f.Hung, k.Wall) {
		b.note(Faithful, Place{Wall: k.Wall + 1}, "a kill seam on a wall that hangs", "none", "there")
	}
}
