package main

import (
	"fmt"
	"strings"

	"firstdrop/plan"
)

// rulesTopic is the table of what layouts are judged by, from the planner's own.
func rulesTopic() string {
	taste := plan.DefaultTaste()
	lines := []string{
		"Every rule is a finding with a weight in thousandths of a roll. Change one in",
		"the job: \"weights: {sliver: 600}\". 0 turns a rule off; nothing is forbidden.",
		"",
	}
	for i := range plan.Rules {
		r := &plan.Rules[i]
		head := "  " + pad(strings.ReplaceAll(string(r.Code), "_", " "), 18)
		if r.Key != "" {
			head += fmt.Sprintf("%s: %d, %s", r.Key, r.Weight(&taste.Weights), r.Of)
		} else {
			head += "weighs nothing"
		}
		lines = append(lines, wrapped(head, 20)...)
		lines = append(lines, wrapped("      "+r.Asks+" ("+r.Source+")", 6)...)
	}
	w := &taste.Weights
	return strings.Join(append(lines, "",
		fmt.Sprintf("Beside these: roll %d, drop %d, piece %d, batch_change %d.", w.Roll, w.Drop, w.Piece, w.BatchChange),
		"Where no figure is published, \"common practice\" says so.",
	), "\n")
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
