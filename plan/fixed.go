package plan

import (
	"slices"
	"strings"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/room"
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
		return message.New("new_drops_fixed", "new drops are fixed in {n} corners of walls {walls}, at most {most} can be", "walls", wallsOf(s.run.Run), "n", len(f.NewDrop), "most", MostNewDrops)
	}
	if len(f.Hung) > 0 && f.Start == nil {
		return message.New("hung_no_start", "of walls {walls} some hang already, but nothing says where a seam of theirs stands", "walls", wallsOf(s.run.Run))
	}
	return nil
}

// mostNamed is how many walls are named one by one.
const mostNamed = 6

// wallsOf names the walls of a run as people know them, since not every run has been
// given a name: "A, B, C"; of many the first and the last.
func wallsOf(run *room.Run) string {
	names := make([]string, len(run.Walls))
	for i := range run.Walls {
		names[i] = run.Walls[i].Name
	}
	if n := len(names); n > mostNamed {
		return names[0] + " … " + names[n-1]
	}
	return strings.Join(names, ", ")
}
