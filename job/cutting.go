package job

import (
	"fmt"
	"slices"

	"firstdrop/cutting"
	"firstdrop/plan"
)

// cutting sets how rolls are cut: the usual way, and what the job says instead.
func (b *builder) cutting() {
	c, cut := &b.job.Cutting, &b.task.Cut
	*cut = plan.CutIn(b.job.Units.System())
	b.shortLength("cutting.lead", c.Lead, &cut.Lead)
	b.shortLength("cutting.loss", c.Loss, &cut.Loss)
	b.shortLength("cutting.blade", c.Blade, &cut.Blade)
	b.shortLength("cutting.slit_over", c.SlitOver, &cut.SlitOver)
	cut.Alone = c.Alone
	if len(c.Goals) > 0 && b.goals(c.Goals) {
		cut.First, cut.Then = c.Goals[0], slices.Clone(c.Goals[1:])
	}
}

// goals checks the order of the goals, and reports whether it can be pursued.
func (b *builder) goals(goals []cutting.Goal) bool {
	before := len(b.problems)
	for i, g := range goals {
		path := fmt.Sprintf("cutting.goals[%d]", i)
		switch {
		case g < cutting.FewestRolls || g > cutting.FewestChanges:
			b.refuse(path, "goal_none", "goal", int(g))
		case slices.Contains(goals[:i], g):
			b.refuse(path, "twice", "what", g)
		case i == 0 && g == cutting.LongestLeftover:
			b.refuse(path, "leftover_first")
		}
	}
	return len(b.problems) == before
}
