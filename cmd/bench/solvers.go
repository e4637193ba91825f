package main

import (
	"fmt"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
)

// solvers runs the cutting package's benchmark against general solvers and
// takes its figures over.
func solvers() ([]Figure, error) {
	out, err := exec.Command("go", "test", "./cutting", "-run", "^$", "-bench", "BenchmarkAgainstSolvers", "-benchtime", "5x").CombinedOutput()
	if err != nil {
		return nil, fmt.Errorf("cutting against solvers: %w\n%s", err, out)
	}
	line := regexp.MustCompile(`(?m)^BenchmarkAgainstSolvers/(\S+?)(?:-\d+)?\s.*$`)
	metric := regexp.MustCompile(`([\d.]+) (times-longer|own-µs/room|solver-µs/room)`)
	var all []Figure
	for _, l := range line.FindAllStringSubmatch(string(out), -1) {
		for _, f := range metric.FindAllStringSubmatch(l[0], -1) {
			value, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				return nil, err
			}
			switch f[2] {
			case "times-longer":
				all = append(all, Figure{Name: "cutting: " + l[1] + " takes times as long", Value: value, Unit: "×", Goal: 200, AtLeast: true})
			case "own-µs/room":
				all = append(all, Figure{Name: "cutting: one room, own time beside " + l[1], Value: value, Unit: "µs"})
			default:
				all = append(all, Figure{Name: "cutting: one room, " + l[1], Value: value, Unit: "µs"})
			}
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("no solver was there to compare with:\n%s", strings.TrimSpace(string(out)))
	}
	return all, nil
}
