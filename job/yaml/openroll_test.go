package yaml_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
)

const mm = measure.Millimetre

func opened(name string) job.Roll {
	begins := 12 * mm
	return job.Roll{
		Name: name, Length: 10030 * mm, Begins: &begins, Batch: "17",
		Flaws: []job.Flaw{{From: 3200 * mm, To: 3350 * mm}},
	}
}

// Every example takes a roll for each of its papers; each line of the document
// is still there, in its place, and the job is what it was, and the roll.
func TestWithRollKeepsEveryLine(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{string(data), strings.ReplaceAll(string(data), "\n", "\r\n"), strings.TrimRight(string(data), "\n")} {
			was, err := yaml.Read(file, []byte(text))
			if err != nil {
				t.Fatal(err)
			}
			for i := range was.Papers {
				roll := opened("A 1")
				if task, err := was.Task(); err == nil && task.Papers[i].Repeat == 0 {
					roll.Begins = nil // there is no design
				}
				out, err := yaml.WithRoll(file, []byte(text), was.Papers[i].Name, roll, false)
				if err != nil {
					t.Errorf("%s: %v", file, err)
					continue
				}
				keepsLines(t, file, text, string(out))
				now, err := yaml.Read(file, out)
				if err != nil {
					t.Fatalf("%s: %v\n%s", file, err, out)
				}
				if n := len(now.Papers[i].Rolls); n != len(was.Papers[i].Rolls)+1 || now.Papers[i].Rolls[n-1].Flaws[0] != roll.Flaws[0] {
					t.Errorf("%s: %d rolls", file, n)
				}
				if _, err := yaml.WithRoll(file, out, was.Papers[i].Name, roll, false); !errors.Is(err, job.ErrRollThere) {
					t.Errorf("%s: the same roll again: %v", file, err)
				}
			}
		}
	}
}

// keepsLines fails unless all lines of one text stand in another, in order.
func keepsLines(t *testing.T, file, text, in string) {
	t.Helper()
	rest := strings.Split(strings.ReplaceAll(in, "\r\n", "\n"), "\n")
	added := len(rest)
	for line := range strings.SplitSeq(strings.ReplaceAll(strings.TrimRight(text, "\r\n"), "\r\n", "\n"), "\n") {
		for len(rest) > 0 && rest[0] != line {
			rest = rest[1:]
		}
		if len(rest) == 0 {
			t.Fatalf("%s: the line %q is lost", file, line)
		}
		rest = rest[1:]
		added--
	}
	if added > 3 {
		t.Errorf("%s: %d lines more", file, added)
	}
}

const rollRoom = `firstdrop: 1 # the format
units: mm
room:
  closed: false
  walls: [{name: A, width: 3000, height: 2400}]
papers:
`

func TestWithRoll(t *testing.T) {
	const item = `{name: A 1, batch: '17', length: 10030 mm, begins: 12 mm, flaws: [{from: 3200 mm, to: 3350 mm}]}`
	for _, tt := range []struct{ name, before, after string }{
		{"no rolls yet, with a comment behind", `- name: P
  width: 530 # measured
  roll: 10 m
  repeat: 530
  match: straight

# what follows
rules:
  allowance: 50
`, `- name: P
  width: 530 # measured
  roll: 10 m
  repeat: 530
  match: straight
  rolls:
    - ` + item + `

# what follows
rules:
  allowance: 50
`},
		{"on one line", `- {name: P, width: 530, roll: 10 m, repeat: 530, match: straight} # {so far}
`, `- {name: P, width: 530, roll: 10 m, repeat: 530, match: straight, rolls: [` + item + `]} # {so far}
`},
		{"an empty list", `- name: P
  width: 530
  rolls: []
  roll: 10 m
  repeat: 530
  match: straight
`, `- name: P
  width: 530
  rolls: [` + item + `]
  roll: 10 m
  repeat: 530
  match: straight
`},
		{"a list at its key's margin", `- name: P
  width: 530
  rolls:
  # opened on Monday
  - {name: "]", length: 9 m} # short
  - name: other
    length: 9 m

  roll: 10 m
  repeat: 530
  match: straight
`, `- name: P
  width: 530
  rolls:
  # opened on Monday
  - {name: "]", length: 9 m} # short
  - name: other
    length: 9 m
  - ` + item + `

  roll: 10 m
  repeat: 530
  match: straight
`},
	} {
		out, err := yaml.WithRoll("room.yaml", []byte(rollRoom+tt.before), "", opened("A 1"), false)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
		} else if string(out) != rollRoom+tt.after {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, out[len(rollRoom):], tt.after)
		}
	}
}

func TestWithRollReplaces(t *testing.T) {
	const label = "- name: P\n  width: 530\n  roll: 10 m\n  repeat: 530\n  match: straight\n  rolls:\n"
	for _, tt := range []struct{ before, after string }{
		{"    - {name: A 1, length: 9 m} # short\n    - {name: B, length: 9 m}\n", "    - {name: A 1, length: 8500 mm} # short\n    - {name: B, length: 9 m}\n"},
		{"    - name: A 1\n      length: 9 m\n    # the next\n    - {name: B, length: 9 m}\n", "    - {name: A 1, length: 8500 mm}\n    # the next\n    - {name: B, length: 9 m}\n"},
		{"    - name: A 1\n      # a comment of its own\n      length: 9 m\n", ""},
	} {
		out, err := yaml.WithRoll("room.yaml", []byte(rollRoom+label+tt.before), "P", job.Roll{Name: "A 1", Length: 8500 * mm}, true)
		switch {
		case tt.after == "" && err == nil:
			t.Errorf("a roll with a comment was replaced:\n%s", out)
		case tt.after != "" && err != nil:
			t.Error(err)
		case tt.after != "" && string(out) != rollRoom+label+tt.after:
			t.Errorf("got\n%s", out)
		}
	}
}

// What is not sound is refused, with what is wrong.
func TestWithRollRefuses(t *testing.T) {
	const label = "- {name: P, width: 530, roll: 10 m, repeat: 530, match: straight}\n"
	far := 600 * mm
	for _, tt := range []struct {
		paper string
		roll  job.Roll
		want  string
	}{
		{"Q", opened("A 1"), `no paper "Q"`},
		{"P", job.Roll{Name: "A 1"}, "length"},
		{"P", job.Roll{Name: "A 1", Length: 9 * measure.Metre, Begins: &far}, "begins"},
	} {
		if _, err := yaml.WithRoll("room.yaml", []byte(rollRoom+label), tt.paper, tt.roll, false); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("error %v, want one that says %q", err, tt.want)
		}
	}
}

// A job in JSON is printed anew, with the roll.
func TestWithRollInJSON(t *testing.T) {
	const doc = `{"firstdrop": 1, "units": "mm", "room": {"closed": false, "walls": [{"name": "A", "width": 3000, "height": 2400}]},
		"papers": [{"name": "P", "width": 530, "roll": "10 m", "repeat": 530, "match": "straight"}]}`
	out, err := yaml.WithRoll("room.json", []byte(doc), "", opened("A 1"), false)
	if err != nil {
		t.Fatal(err)
	}
	if j, err := yaml.Read("room.json", out); err != nil || len(j.Papers[0].Rolls) != 1 {
		t.Errorf("%v\n%s", err, out)
	}
}
