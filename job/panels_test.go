package job_test

import (
	"strings"
	"testing"

	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
)

const panelJob = `firstdrop: 1
units: mm
room:
  closed: false
  corner: inside 90
  height: 2500
  walls:
    - {name: A, width: 3460}
    - {name: B, width: 420, corner: outside 270}
    - {name: C, width: 1580}
papers:
  - {name: Cloth, width: 915, roll: 7.32 m, match: free}
  - {name: Rows, width: 530, roll: 10 m, match: straight, repeat: 530}
hang:
  - {paper: Cloth, walls: [A], panels: equal, trim: 38 mm}
  - {paper: Cloth, walls: [B, C], panels: equal}
`

func TestPanels(t *testing.T) {
	j, err := yaml.Read("panels.yaml", []byte(panelJob))
	if err != nil {
		t.Fatal(err)
	}
	ta, err := j.Task()
	if err != nil {
		t.Fatal(err)
	}
	if a, b := ta.Runs[0].Panels, ta.Runs[1].Panels; a == nil || b == nil || a.Trim != 38*measure.Millimetre || b.Trim != 0 {
		t.Errorf("panels %+v and %+v", a, b)
	}
}

func TestPanelsRefused(t *testing.T) {
	for code, change := range map[string]func(*job.Job){
		"panels_inside":       func(j *job.Job) { j.Hang = j.Hang[:1]; j.Hang[0].Walls = nil },
		"panels_leaning":      func(j *job.Job) { j.Room.Walls[1].Corner.Lean.Left = 3 * measure.Millimetre },
		"panels_match":        func(j *job.Job) { j.Hang[0].Paper = "Rows" },
		"panels_word":         func(j *job.Job) { j.Hang[0].Panels = "even" },
		"panels_alone":        func(j *job.Job) { x := measure.Length(0); j.Hang[0].Start = &job.Start{Wall: "A", Edge: &x} },
		"trim_without_panels": func(j *job.Job) { j.Hang[0].Panels = "" },
		"trim_width":          func(j *job.Job) { j.Hang[0].Trim = 458 * measure.Millimetre },
	} {
		j, err := yaml.Read("panels.yaml", []byte(panelJob))
		if err != nil {
			t.Fatal(err)
		}
		change(j)
		_, err = j.Task()
		ps, ok := err.(job.Problems)
		if !ok || !strings.Contains(ps[0].What.Code, code) {
			t.Errorf("%s: %v", code, err)
		}
	}
}
