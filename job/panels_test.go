package job_test

import (
	"strings"
	"testing"

	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/room"
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

// One entry for all walls gives the runs that an entry for each row of walls would: from
// inside corner to inside corner, also where the first wall stands in the middle of a row.
func TestPanelsOfARoom(t *testing.T) {
	for _, tt := range []struct {
		change func(*job.Job)
		want   string
	}{
		{func(j *job.Job) {}, "run 1 A: A; run 1 B–C: B C"},
		{func(j *job.Job) { j.Room.Closed = true }, "run 1 A: A; run 1 B–C: B C"},
		{func(j *job.Job) { // the breast is cut in two by where the list begins
			j.Room.Closed, j.Room.Walls = true, append(j.Room.Walls[2:], j.Room.Walls[:2]...)
			j.Hang[0].Name = "Study"
		}, "Study, A: A; Study, B–C: B C"},
		{func(j *job.Job) { closed := false; j.Room.Closed, j.Hang[0].Closed = true, &closed }, "run 1 A: A; run 1 B–C: B C"},
		{func(j *job.Job) { j.Hang[0].Walls = []string{"B", "C"} }, "run 1: B C"},
	} {
		j, err := yaml.Read("panels.yaml", []byte(panelJob))
		if err != nil {
			t.Fatal(err)
		}
		j.Hang = []job.Hang{{Paper: "Cloth", Panels: "equal", Trim: 38 * measure.Millimetre}}
		tt.change(j)
		ta, err := j.Task()
		if err != nil {
			t.Errorf("%s: %v", tt.want, err)
			continue
		}
		var got []string
		for i := range ta.Runs {
			text := ta.Runs[i].Run.Name + ":"
			for _, w := range ta.Runs[i].Run.Walls {
				text += " " + w.Name
			}
			if ta.Runs[i].Panels == nil || ta.Runs[i].Run.Closed {
				text += " (no panels)"
			}
			got = append(got, text)
		}
		if text := strings.Join(got, "; "); text != tt.want {
			t.Errorf("runs %s, want %s", text, tt.want)
		}
		for i, k := range j.Entries(ta) {
			if k != 0 {
				t.Errorf("%s: run %d is of entry %d", tt.want, i, k)
			}
		}
	}
}

// A stretch without seams is kept to in the run of its wall; a wall that is nowhere is
// refused, once.
func TestPanelsKeepOff(t *testing.T) {
	j, err := yaml.Read("panels.yaml", []byte(panelJob))
	if err != nil {
		t.Fatal(err)
	}
	j.Hang = []job.Hang{{Paper: "Cloth", Panels: "equal", KeepOff: []job.KeepOff{{Wall: "C", From: 100 * measure.Millimetre, To: 300 * measure.Millimetre}}}}
	ta, err := j.Task()
	if err != nil {
		t.Fatal(err)
	}
	if a, b := ta.Runs[0].Fixed.KeepOff, ta.Runs[1].Fixed.KeepOff; len(a) != 0 || len(b) != 1 || b[0].Wall != 1 {
		t.Errorf("kept off %v and %v", a, b)
	}
	j.Hang[0].KeepOff[0].Wall = "Z"
	if _, err = j.Task(); err == nil || !strings.Contains(err.(job.Problems)[0].What.Code, "wall_not_here") {
		t.Errorf("a wall that is nowhere: %v", err)
	}
}

func TestPanelsRefused(t *testing.T) {
	for code, change := range map[string]func(*job.Job){
		"panels_round": func(j *job.Job) {
			j.Room.Closed, j.Hang = true, j.Hang[:1]
			for i := range j.Room.Walls {
				j.Room.Walls[i].Corner = &job.Corner{Kind: room.Outside, Angle: 240 * measure.Degree}
			}
			j.Hang[0].Walls = nil
		},
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
