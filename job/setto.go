package job

import (
	"fmt"
	"slices"
	"strconv"

	"firstdrop/hanging"
	"firstdrop/message"
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
			b.refuse(at+".wall", "wall_twice", "wall", s.Wall)
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
		b.refuse(path+".set_to", "set_cannot", "why", message.Of(err))
		return
	}
	for i := range run.Corners {
		if step := room.StepAt(turns, i); step != 0 && run.Corners[i].Kind == room.Outside {
			b.refuse(path+".set_to", "set_step", "step", step, "corner", run.CornerName(i))
		}
	}
}

// setting builds the setting of one wall.
func (b *builder) setting(path string, s *SetTo, wall *room.Wall) (out hanging.Setting, ok bool) {
	word := func(key, given, usual string, words []string) int {
		if given == "" {
			given = usual
		}
		i := slices.Index(words, given)
		if i < 0 {
			b.refuse(path+"."+key, "set_word", "key", key, "word", strconv.Quote(given), "hint", suggest(given, words))
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
		b.refuse(path+".design", "set_meets", "side", s.To)
		return out, false
	}
	if out.To != hanging.ToCasing {
		if s.Opening != "" || s.Side != "" {
			b.refuse(path, "set_casing_only", "word", s.To)
			return out, false
		}
		return out, true
	}
	out.Opening = slices.IndexFunc(wall.Openings, func(o room.Opening) bool { return o.Name == s.Opening && s.Opening != "" })
	if out.Opening < 0 {
		b.refuse(path+".opening", "set_opening", "wall", wall.Name, "opening", strconv.Quote(s.Opening))
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
