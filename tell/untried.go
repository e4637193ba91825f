package tell

import (
	"firstdrop/plan"
	"firstdrop/words"
)

// Untried says why a better layout of a run may exist; "" where none can, on the grid
// of starts.
func Untried(c *words.Catalogue, r *plan.RunPlan) string {
	var whats []string
	for _, u := range r.Untried {
		id := "untried." + string(u)
		if u == plan.WaysUntried && r.Ways == 0 {
			id += "-many"
		}
		whats = append(whats, c.Text(id, "searched", r.Searched, "ways", r.Ways, "gain", int(r.Gain)))
	}
	if len(whats) == 0 {
		return ""
	}
	return c.Text("untried", "what", Joined(c, whats))
}
