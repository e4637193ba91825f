package sheet

import (
	"fmt"
	"strings"

	"firstdrop/draw/text"
)

// Lacking returns the letters in the names of the job that the sheets have no font
// for, each once: they stand as boxes.
func (s *Set) Lacking() string {
	names := []string{s.Job}
	if s.Plan != nil {
		for i := range s.Plan.Task.Papers {
			p := &s.Plan.Task.Papers[i]
			names = append(names, p.Name, p.Batch)
			for k := range p.Rolls {
				names = append(names, p.Rolls[k].Name, p.Rolls[k].Batch)
			}
		}
		for i := range s.Plan.Runs {
			run := s.Plan.Runs[i].Layout.Run
			names = append(names, run.Name)
			for w := range run.Walls {
				names = append(names, run.Walls[w].Name)
				for k := range run.Walls[w].Openings {
					names = append(names, run.Walls[w].Openings[k].Name)
				}
				for k := range run.Walls[w].Fittings {
					names = append(names, run.Walls[w].Fittings[k].Name)
				}
			}
		}
	}
	return text.Lacking(strings.Join(names, " "))
}

// mostPoints is how many letters are named on a page.
const mostPoints = 8

// codePoints names letters that cannot be shown, as Unicode does: "U+6771, U+306E".
func codePoints(letters []rune) string {
	var names []string
	for i, r := range letters {
		if i == mostPoints {
			names = append(names, "…")
			break
		}
		names = append(names, fmt.Sprintf("%U", r))
	}
	return strings.Join(names, ", ")
}
