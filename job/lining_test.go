package job_test

import (
	"strings"
	"testing"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/plan"
)

// lined is the plain room with a lining under its paper.
func lined(t *testing.T, how string) *job.Job {
	j := example(t, "plain-room.yaml")
	j.Papers = append(j.Papers, job.Paper{Name: "Lining", Width: 560 * mm, Roll: 20000 * mm, Match: "free"})
	j.Hang = []job.Hang{{Paper: j.Papers[0].Name}, {Name: "lining", Paper: "Lining", Lining: how}}
	return j
}

// planOf plans a job, and fails unless the audit passes it.
func planOf(t *testing.T, j *job.Job) *plan.Plan {
	t.Helper()
	p, err := plan.Make(task(t, j))
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range audit.Plan(p) {
		t.Error(v)
	}
	return p
}

// Upright, the lining is a run of its own; its seams keep 25 mm off those of the
// paper over it, and where they cannot (it is as wide, and starts with it) each is
// told of. Its rolls are counted and proven beside the paper's.
func TestLiningUpright(t *testing.T) {
	p := planOf(t, lined(t, "upright"))
	if len(p.Runs) != 2 || p.Papers[1].Buy() == 0 || !p.Papers[1].Proven() {
		t.Fatalf("%d runs, %d rolls of lining", len(p.Runs), p.Papers[1].Buy())
	}
	told := func(p *plan.Plan) (fs []finding.Finding) {
		for _, f := range p.Findings {
			if f.Code == plan.LiningSeam {
				fs = append(fs, f)
			}
		}
		return fs
	}
	free := len(told(p))
	j := lined(t, "upright")
	j.Papers[1].Width = j.Papers[0].Width
	edge := 300 * mm
	for k := range j.Hang {
		j.Hang[k].Start = &job.Start{Wall: "B", Edge: &edge}
	}
	fixed := told(planOf(t, j))
	if len(fixed) <= free || fixed[0].Word != "under" {
		t.Errorf("searched, %d seams lie under others; set on them, %d", free, len(fixed))
	}
}

// Across, each wall is lined by lengths as long as it is wide: as many as its height
// takes.
func TestLiningAcross(t *testing.T) {
	j := lined(t, "across")
	p := planOf(t, j)
	if want := 1 + len(j.Room.Walls); len(p.Runs) != want {
		t.Fatalf("%d runs, want %d", len(p.Runs), want)
	}
	for r := 1; r < len(p.Runs); r++ {
		l, wall := p.Runs[r].Layout, &j.Room.Walls[r-1]
		rows := int((j.Room.Height.Left + 560*mm - 1) / (560 * mm))
		if drops := len(l.Drops); drops < rows || drops > rows+1 {
			t.Errorf("wall %s is lined by %d lengths, its height takes %d", wall.Name, drops, rows)
		}
		for _, q := range l.Pieces {
			if q.Y.Length() > wall.Width || len(wall.Openings) == 0 && q.Y.Length() != wall.Width {
				t.Errorf("wall %s, %v wide, is lined by a length for %v", wall.Name, wall.Width, q.Y.Length())
			}
		}
	}
	if !p.Papers[1].Proven() || p.Papers[1].Buy() == 0 {
		t.Error("the rolls of the lining are not counted")
	}
}

func TestLiningsThatCannotBe(t *testing.T) {
	for says, change := range map[string]func(*job.Job){
		"write linings last":     func(j *job.Job) { j.Hang[0], j.Hang[1] = j.Hang[1], j.Hang[0] },
		"nothing hangs over":     func(j *job.Job) { j.Hang = j.Hang[1:] },
		"one of upright, across": func(j *job.Job) { j.Hang[1].Lining = "slanting" },
		"a lining has no design": func(j *job.Job) { j.Papers[1].Repeat, j.Papers[1].Match = 300*mm, "straight" },
		"planned wall by wall":   func(j *job.Job) { j.Hang[1].Lining, j.Hang[1].Carry = "across", []string{"A|B"} },
		"papered by an entry":    func(j *job.Job) { j.Hang = append(j.Hang, j.Hang[1]); j.Hang[2].Name = "again" },
	} {
		j := lined(t, "upright")
		change(j)
		if _, err := j.Task(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
}
