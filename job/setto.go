package job

import (
	"fmt"
	"slices"

	"firstdrop/hanging"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// The words of SetTo.
var (
	setWords    = []string{"plumb", "ceiling", "casing", "left", "right"}
	meetWords   = []string{"datum", "left", "right"}
	casingSides = []string{"left", "right"}
	setOfWord   = []hanging.SetTo{hanging.ToPlumb, hanging.ToCeiling, hanging.ToCasing, hanging.ToLeft, hanging.ToRight}
	meetOfWord  = []hanging.Meets{hanging.AtDatum, hanging.MeetLeft, hanging.MeetRight}
)

// setTo adds what the drops of walls are set to, and checks that all of it can be.
func (b *builder) setTo(path string, h *Hang, run *room.Run, f *plan.Fixed) {
	set := make([]hanging.Setting, len(run.Walls))
	for i := range h.SetTo {
		s, at := &h.SetTo[i], fmt.Sprintf("%s.set_to[%d]", path, i)
		wall, ok := b.wallOf(run, at+".wall", s.Wall)
		if !ok {
			return
		}
		if slices.ContainsFunc(f.Set, func(o plan.WallSetting) bool { return o.Wall == wall }) {
			b.refuse(at+".wall", "wall %s stands here twice; keep one of them", s.Wall)
			return
		}
		if set[wall], ok = b.setting(at, s, &run.Walls[wall]); !ok {
			return
		}
		f.Set = append(f.Set, plan.WallSetting{Wall: wall, Setting: set[wall]})
	}
	if len(f.Set) == 0 {
		return
	}
	turns, err := hanging.Turns(run, set)
	if err != nil {
		b.refuse(path+".set_to", "%s; set the wall otherwise, or measure again", messageOfHanging(err))
		return
	}
	for i := range run.Corners {
		if step := room.StepAt(turns, i); step != 0 && run.Corners[i].Kind == room.Outside {
			b.refuse(path+".set_to", "the design would step by %v round the outside corner %s; set both its walls, and let the design of one meet the other", step, run.CornerName(i))
		}
	}
}

// messageOfHanging returns what hanging says, without its name.
func messageOfHanging(err error) string {
	const name = "hanging: "
	return err.Error()[len(name):]
}

// setting builds the setting of one wall.
func (b *builder) setting(path string, s *SetTo, wall *room.Wall) (out hanging.Setting, ok bool) {
	word := func(key, given, usual string, words []string) int {
		if given == "" {
			given = usual
		}
		i := slices.Index(words, given)
		if i < 0 {
			b.refuse(path+"."+key, "%s cannot be %q; %s", key, given, suggest(given, words))
		}
		return i
	}
	to, side := word("to", s.To, "", setWords), word("side", s.Side, "left", casingSides)
	meets := word("design", s.Design, "datum", meetWords)
	if to < 0 || side < 0 || meets < 0 {
		return out, false
	}
	out = hanging.Setting{To: setOfWord[to], Meets: meetOfWord[meets], Side: hanging.Side(side)}
	if neighbour := out.To == hanging.ToLeft || out.To == hanging.ToRight; neighbour && s.Design != "" && s.Design != s.To {
		b.refuse(path+".design", "the drops are set to the wall on the %s, and the design meets there; leave design out", s.To)
		return out, false
	}
	if out.To != hanging.ToCasing {
		if s.Opening != "" || s.Side != "" {
			b.refuse(path, "opening and side say which casing, but the drops are set to %s; leave them out", s.To)
			return out, false
		}
		return out, true
	}
	out.Opening = slices.IndexFunc(wall.Openings, func(o room.Opening) bool { return o.Name == s.Opening && s.Opening != "" })
	if out.Opening < 0 {
		b.refuse(path+".opening", "no opening of wall %s is named %q; write the name of the one whose casing counts", wall.Name, s.Opening)
	}
	return out, out.Opening >= 0
}

// setTaken says what the walls of a layout are set to; nothing where that is not
// searched either.
func setTaken(l *hanging.Layout) (out []SetTo) {
	if l.Choice.Set == nil && (l.Paper.Lines == paper.LinesUnstated || !plan.IsCrooked(l.Run)) {
		return nil
	}
	for i := range l.Run.Walls {
		w, s := &l.Run.Walls[i], hanging.Setting{}
		if l.Choice.Set != nil {
			s = l.Choice.Set[i]
		}
		t := SetTo{Wall: w.Name, To: s.To.String()}
		if s.To == hanging.ToCasing {
			t.Opening, t.Side = w.Openings[s.Opening].Name, s.Side.String()
		}
		if s.Meets != hanging.AtDatum && s.To != hanging.ToLeft && s.To != hanging.ToRight {
			t.Design = s.Meets.String()
		}
		out = append(out, t)
	}
	return out
}
