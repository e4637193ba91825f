package main

import (
	"fmt"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
)

// target is what a figure of the cutting package should be at most, or with
// least at least.
type target struct {
	figure *regexp.Regexp
	goal   float64
	least  bool
}

// targets are tried in this order; the first that matches counts.
var targets = []target{
	{regexp.MustCompile(`^Rooms/(known|any)(-left-over)? proven$`), 2000, true},
	{regexp.MustCompile(`^Rooms/(known|any)-changes proven$`), 400, true},
	{regexp.MustCompile(`^Rooms/(known|any)-changes-41-to-60-drops proven$`), 200, true},
	{regexp.MustCompile(`^Rooms/(known|any)-changes\S* µs-most$`), 1_000_000, false},
	{regexp.MustCompile(`^Rooms/known µs-median$`), 18, false},
	{regexp.MustCompile(`^Rooms/any µs-median$`), 47, false},
	{regexp.MustCompile(`^Solvers/\S+ times-longer$`), 200, true},
	{regexp.MustCompile(`^(Hotels|InHand)/\S+ times-500$`), 15, false},
	{regexp.MustCompile(`^Hotels/\S+ times-longer-cbc$`), 40, true},
	{regexp.MustCompile(`^((Hotels|InHand)/\S+ gap|\S+ not-proven|Pricing allocations)$`), 0, false},
}

// cutting runs the cutting package's own figures, by the go command, and takes
// them over. Each comes once; what is timed is already a median of five.
func cutting() ([]Figure, error) {
	out, err := exec.Command("go", "test", "./cutting", "-run", "^$", "-bench", "^BenchmarkFigure", "-benchtime", "1x", "-timeout", "30m").CombinedOutput()
	if err != nil {
		return nil, fmt.Errorf("figures of cutting: %w\n%s", err, out)
	}
	return cuttingFigures(string(out))
}

// cuttingFigures reads what benchmarks print: a line for each, with pairs of a
// value and its unit.
func cuttingFigures(text string) ([]Figure, error) {
	line := regexp.MustCompile(`(?m)^BenchmarkFigure(\S+?)(?:-\d+)?[ \t]+1[ \t]+(.*)$`)
	var all []Figure
	for _, l := range line.FindAllStringSubmatch(text, -1) {
		field := strings.Fields(l[2])
		for i := 0; i+1 < len(field); i += 2 {
			value, err := strconv.ParseFloat(field[i], 64)
			if err != nil {
				return nil, fmt.Errorf("figures of cutting: %q: %w", l[0], err)
			}
			if field[i+1] != "ns/op" {
				all = append(all, cuttingFigure(l[1]+" "+field[i+1], value))
			}
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("no figures of cutting in:\n%s", strings.TrimSpace(text))
	}
	return all, nil
}

// cuttingFigure gives a figure its target. The name says the unit.
func cuttingFigure(name string, value float64) Figure {
	f := Figure{Name: "cutting: " + name, Value: value}
	for _, t := range targets {
		if t.figure.MatchString(name) {
			met := value <= t.goal
			if t.least {
				met = value >= t.goal
			}
			f.Goal, f.AtLeast, f.Met = t.goal, t.least, &met
			break
		}
	}
	return f
}
