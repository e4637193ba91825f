package plan

import (
	"slices"

	"firstdrop/room"
)

// untried lists what the search neither tried nor ruled out: where bounds did not
// settle it, where starts of the grid were left out, and where a new drop was not
// tried in every corner where one may begin. None: no choice on the grid weighs less
// than the best found.
func (s *search) untried() (out []Untried) {
	if s.coarse > s.step {
		out = append(out, StartsUntried)
	}
	if !s.proven {
		out = append(out, ChoicesUntried)
	}
	run := s.run.Run
	for i := range run.Corners {
		if len(run.Walls) > renewWalls && run.Corners[i].Kind == room.Inside && !slices.Contains(s.run.Fixed.Carry, i) {
			return append(out, NewDropsUntried)
		}
	}
	return out
}
