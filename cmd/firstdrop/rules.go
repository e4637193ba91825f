package main

import (
	"fmt"
	"strings"

	"firstdrop/plan"
)

// rulesTopic is the table of what layouts are judged by, from the planner's own.
func (p *program) rulesTopic() string {
	taste := plan.DefaultTaste()
	lines := append(wrap(p.lang.Text("rules.intro", "example", `"weights: {sliver: 600}"`), plainWidth), "")
	for i := range plan.Rules {
		r, code := &plan.Rules[i], string(plan.Rules[i].Code)
		head := "  " + pad(strings.ReplaceAll(code, "_", " "), 18)
		if r.Key != "" {
			head += fmt.Sprintf("%s: %d, %s", r.Key, r.Weight(&taste.Weights), p.lang.Text("weighs."+code))
		} else {
			head += p.lang.Text("rules.none")
		}
		lines = append(lines, wrapped(head, 20)...)
		lines = append(lines, wrapped("      "+p.lang.Text("asks."+code)+" ("+p.lang.Text("from."+code)+")", 6)...)
	}
	w := &taste.Weights
	lines = append(lines, "")
	beside := p.lang.Text("rules.beside", "roll", fmt.Sprint(w.Roll), "drop", fmt.Sprint(w.Drop), "piece", fmt.Sprint(w.Piece), "batch", fmt.Sprint(w.BatchChange))
	return strings.Join(append(lines, wrap(beside, plainWidth)...), "\n")
}

// wrapped breaks a line at 80 columns; what follows the first is indented.
func wrapped(line string, indent int) (out []string) {
	for len(line) > 80 {
		cut := strings.LastIndex(line[:81], " ")
		out = append(out, line[:cut])
		line = strings.Repeat(" ", indent) + line[cut+1:]
	}
	return append(out, line)
}
