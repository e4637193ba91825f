package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/message"
)

// offWeight is what a seam weighs that must not stand where it does: more than all
// else together.
const offWeight = 1_000_000_000_000

// isKeptOff reports whether no seam may stand at x on a wall.
func (f *Fixed) isKeptOff(wall int, x measure.Length) bool {
	return slices.ContainsFunc(f.KeepOff, func(s WallStretch) bool { return s.Wall == wall && s.X.Lo < x && x < s.X.Hi })
}

// isHung reports whether a kill place lies on what hangs already.
func (f *Fixed) isHung(k *hanging.Kill, walls int) bool {
	switch k.Kind {
	case hanging.OnWall:
		return slices.Contains(f.Hung, k.Wall)
	case hanging.AtCorner:
		return slices.Contains(f.Hung, k.Wall) && slices.Contains(f.Hung, (k.Wall+1)%walls)
	}
	return false
}

// allows reports whether new drops in some corners, each plus one, are as fixed,
// for a kill seam.
func (f *Fixed) allows(corners *[mostNew]int16, k *hanging.Kill) bool {
	for _, c := range f.NewDrop {
		if !slices.Contains(corners[:], int16(c)+1) && (k.Kind != hanging.AtCorner || k.Wall != c) {
			return false
		}
	}
	for _, c := range f.Carry {
		if slices.Contains(corners[:], int16(c)+1) {
			return false
		}
	}
	return true
}

// checkFixed says what is fixed that cannot be.
func (s *search) checkFixed() error {
	f := &s.run.Fixed
	if len(f.NewDrop) > MostNewDrops {
		return message.New("new_drops_fixed", "run \"{run}\": new drops are fixed in {n} corners, at most {most} can be", "run", s.run.Run.Name, "n", len(f.NewDrop), "most", MostNewDrops)
	}
	if len(f.Hung) > 0 && f.Start == nil {
		return message.New("hung_no_start", "run \"{run}\": walls hang already, but nothing says where a seam of theirs stands", "run", s.run.Run.Name)
	}
	return nil
}
