package sheet

import (
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
