package job_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstdrop/job"
	"firstdrop/job/yaml"
)

// A sound document gives what the job gives by itself.
func TestDraftOfExamples(t *testing.T) {
	for name, data := range examples(t) {
		j, err := yaml.Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		d := job.ReadDraft(b.Bytes())
		task, err := j.Task()
		if err != nil || len(d.Problems) > 0 {
			t.Fatalf("%s: %v, %v", name, err, d.Problems)
		}
		if diff := cmp.Diff(task, d.Task); diff != "" {
			t.Errorf("%s: task (-job +draft)\n%s", name, diff)
		}
		if diff := cmp.Diff(j.Findings(), d.Findings); diff != "" {
			t.Errorf("%s: findings (-job +draft)\n%s", name, diff)
		}
		for i, band := range d.Bands {
			if band.Run != d.Task.Runs[i].Run || len(band.Walls) != len(band.Run.Walls) {
				t.Errorf("%s: band %d is not run %d", name, i, i)
			}
			for n := range band.Run.Walls {
				w := j.Room.Walls[band.Walls[n]]
				if w.Name != band.Run.Walls[n].Name {
					t.Errorf("%s: wall %s is told to be %s", name, band.Run.Walls[n].Name, w.Name)
				}
				for k, o := range band.Run.Walls[n].Openings {
					if own := w.Openings[band.Openings[n][k]]; own.Name != "" && own.Name != o.Name || own.Kind != o.Kind {
						t.Errorf("%s: wall %s: opening %d is told to be %d", name, w.Name, k, band.Openings[n][k])
					}
				}
			}
		}
	}
}

// Of a document with faults, what makes sense is there.
func TestDraftWithFaults(t *testing.T) {
	const sound = `{"firstdrop": 1, "units": "mm", "room": {"closed": true, "height": 2400, "walls": [` +
		`{"name": "A", "width": 4000, "openings": [{"kind": "door", "left": 100, "width": 800, "height": 2000}, {"kind": "window", "left": 2000, "width": 900, "sill": 900, "height": 1000}]},` +
		`{"name": "B", "width": 3000}, {"name": "C", "width": 4000}, {"name": "D", "width": 3000}]},` +
		`"papers": [{"name": "P", "width": 530, "roll": "10 m", "match": "free"}]}`
	for _, c := range []struct {
		name, old, new string
		path           string
		walls          string
		openings       []int // of wall A
	}{
		{"half a paper", `"width": 530`, `"width": ""`, "papers[0].width", "ABCD", []int{0, 1}},
		{"no paper", `[{"name": "P", "width": 530, "roll": "10 m", "match": "free"}]`, `[]`, "papers", "ABCD", []int{0, 1}},
		{"an opening without a width", `"left": 100, "width": 800`, `"left": 100`, "room.walls[0].openings[0].width", "ABCD", []int{1}},
		{"a wall without a width", `"name": "C", "width": 4000`, `"name": "C", "width": ""`, "room.walls[2].width", "ABD", []int{0, 1}},
		{"a door off the wall", `"left": 100`, `"left": 3900`, "room.walls[0].openings[0].left", "ABCD", []int{0, 1}},
		{"no walls", `[{"name": "A"`, `[3], "corner": [{"name": "A"`, "room", "", nil},
	} {
		text := strings.Replace(sound, c.old, c.new, 1)
		d := job.ReadDraft([]byte(text))
		if d.Job == nil || d.Task != nil || len(d.Problems) == 0 || len(d.Bands) != 1 || !strings.HasPrefix(d.Problems[0].Path, c.path) {
			t.Errorf("%s: %+v", c.name, d.Problems)
			continue
		}
		walls := ""
		for n, w := range d.Bands[0].Run.Walls {
			walls += w.Name
			if w.Name == "A" && !cmp.Equal(d.Bands[0].Openings[n], c.openings) {
				t.Errorf("%s: openings %v, want %v", c.name, d.Bands[0].Openings[n], c.openings)
			}
		}
		if walls != c.walls {
			t.Errorf("%s: walls %q, want %q", c.name, walls, c.walls)
		}
	}
	for _, text := range []string{"", "{", "[]", "null", `{"firstdrop": 9}`, "firstdrop: 1"} {
		if d := job.ReadDraft([]byte(text)); d.Job != nil || len(d.Problems) != 1 || len(d.Bands) != 0 {
			t.Errorf("%q: %+v", text, d)
		}
	}
}

func FuzzDraft(f *testing.F) {
	for name, data := range examples(f) {
		j, err := yaml.Read(name, data)
		if err != nil {
			f.Fatal(err)
		}
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			f.Fatal(err)
		}
		f.Add(b.Bytes())
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d := job.ReadDraft(data)
		if (d.Task == nil) != (len(d.Problems) > 0) {
			t.Errorf("a task: %v; problems: %v", d.Task != nil, d.Problems)
		}
		for _, b := range d.Bands {
			if n := len(b.Run.Walls); n != len(b.Walls) || n != len(b.Openings) || n != len(b.Fittings) {
				t.Errorf("%d walls, indexes %v %v %v", n, b.Walls, b.Openings, b.Fittings)
			}
		}
	})
}
