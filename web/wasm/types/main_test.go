package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const root = "../../.."

// The front end's types are those of the planner.
func TestFilesAreAsWritten(t *testing.T) {
	all, err := files(root)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range all {
		got, err := os.ReadFile(filepath.Join(root, folder, name))
		if err != nil || string(got) != want {
			t.Errorf("%s is not what the Go types say (%v): run make types", name, err)
		}
	}
}

// Lines worked by hand from the Go types and the schema.
func TestTypes(t *testing.T) {
	all, err := files(root)
	if err != nil {
		t.Fatal(err)
	}
	for name, lines := range map[string][]string{
		"protocol.ts": {
			"export type Point = [number, number];",
			"  rings: Point[][];",
			"  tile: [number, number, number, number, number, number];",
			"  job?: job.Job;",
			"  kill?: Seam;",
			"  closed: boolean;",
			"  set: { [K in keyof job.Hang]?: job.Hang[K] | null };",
			`  | "cliffs"`,
		},
		"job.ts": {
			"export type Length = string | number;",
			"export type Point = [Length, Length];",
			`  units?: "mm" | "cm" | "m" | "in" | "ft" | "yd";`,
			"  firstdrop: 1;",
			"  outline?: Outline;",
			`  returns?: ("left" | "right" | "head" | "sill")[];`,
			"  keep_off?: {",
			"export type Outline = Point[];",
		},
	} {
		for _, line := range lines {
			if !strings.Contains(all[name], line) {
				t.Errorf("%s has no line %q", name, line)
			}
		}
	}
}
