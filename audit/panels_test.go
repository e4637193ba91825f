package audit_test

import (
	"testing"

	"firstdrop/audit"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// Panels that are not equal, or less trimmed than asked, do not pass.
func TestPanelsAreJudged(t *testing.T) {
	task := func() *plan.Task {
		return &plan.Task{
			Runs:   []plan.RunTask{{Run: roomtext.Run("A 3460x2500"), Panels: &plan.Panels{Trim: 38 * mm}}},
			Papers: []paper.Paper{{Name: "cloth", Width: 915 * mm, RollLength: 7320 * mm, Pack: 1}},
			Rules:  hanging.DefaultRules(), Taste: plan.DefaultTaste(),
		}
	}
	for name, change := range map[string]func(*plan.Plan){
		"more to trim than there is": func(p *plan.Plan) { p.Task.Runs[0].Panels.Trim = 26 * mm * 5 },
		"panels too narrow":          func(p *plan.Plan) { p.Runs[0].Layout.Paper.Width -= measure.Millimetre },
		"another paper":              func(p *plan.Plan) { p.Task.Papers[0].RollLength -= mm },
		"begun off the end": func(p *plan.Plan) {
			q := &p.Runs[0].Layout.Drops[0].Parts[0]
			q.Across.Lo += mm
		},
		"full widths where panels are asked for": func(p *plan.Plan) {
			full := task()
			full.Runs[0].Panels = nil
			q, err := plan.Make(full)
			if err != nil {
				t.Fatal(err)
			}
			*p = *q
			full.Runs[0].Panels = &plan.Panels{}
		},
	} {
		p, err := plan.Make(task())
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range audit.Plan(p) {
			t.Errorf("before: %v", v)
		}
		change(p)
		found := false
		for _, v := range audit.Plan(p) {
			found = found || v.Rule == audit.Faithful
		}
		if !found {
			t.Errorf("%s: passes", name)
		}
	}
}
