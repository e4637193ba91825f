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
		r := &plan.Rules[i]
		head := "  " + pad(strings.ReplaceAll(string(r.Code), "_", " "), 18)
		if r.Key != "" {
			head += fmt.Sprintf("%s: %d, %s", r.Key, r.Weight(&taste.Weights), r.Of)
		} else {
			head += p.lang.Text("rules.none")
		}
		lines = append(lines, wrapped(head, 20)...)
		lines = append(lines, wrapped("      "+r.Asks+" ("+r.Source+")", 6)...)
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
