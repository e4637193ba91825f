// Command bench measures the planner and writes the figures as a table and as
// JSON: a list of name, value, unit, goal and whether the goal is met.
//
// Every time is the median of several runs in this process; figures against
// general solvers come from the cutting package's own benchmarks, run here by
// the go command, so that both sides are timed in the same minute.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
)

// Figure is one measurement. Goal is the most it should be, or with AtLeast
// the least; 0 means that there is none, unless
// Met is given.
type Figure struct {
	Name    string  `json:"name"`
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
	Goal    float64 `json:"goal,omitempty"`
	AtLeast bool    `json:"at_least,omitempty"`
	Met     *bool   `json:"met,omitempty"`
}

// judged says whether the goal is met, unless that is settled.
func (f Figure) judged() Figure {
	if f.Goal != 0 && f.Met == nil {
		met := f.Value <= f.Goal
		if f.AtLeast {
			met = f.Value >= f.Goal
		}
		f.Met = &met
	}
	return f
}

func main() {
	debug.SetGCPercent(400) // as the program does
	out := flag.String("out", "build/bench.json", "file to write")
	show := flag.String("pages", "", "write the sheets of all examples into this folder to be looked at, and measure nothing")
	flag.Parse()
	if *show != "" {
		if err := contact(*show); err != nil {
			fmt.Fprintln(os.Stderr, "bench:", err)
			os.Exit(1)
		}
		return
	}
	if err := run(*out); err != nil {
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	}
}

func run(out string) error {
	var all []Figure
	for _, measure := range []func() ([]Figure, error){planning, searching, certainty, pages, cutting, serving, inBrowser, firstVisit, lines} {
		fs, err := measure()
		if err != nil {
			return err
		}
		for _, f := range fs {
			f = f.judged()
			all = append(all, f)
			print(f)
		}
	}
	data, err := json.MarshalIndent(all, "", "  ")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return err
	}
	return os.WriteFile(out, append(data, '\n'), 0o644)
}

func print(f Figure) {
	goal := ""
	if f.Met != nil {
		word, sign := "missed", "≤"
		if *f.Met {
			word = "met"
		}
		if f.AtLeast {
			sign = "≥"
		}
		goal = fmt.Sprintf("goal %s %g: %s", sign, f.Goal, word)
	}
	fmt.Printf("%-52s %12.3f %-6s %s\n", f.Name, f.Value, f.Unit, goal)
}
