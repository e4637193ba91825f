package sheet_test

import (
	"testing"

	"firstdrop/internal/steady"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/plan"
)

func TestMain(m *testing.M) { steady.Main(m) }

// planned reads a job document and plans it.
func planned(t testing.TB, name string, data []byte) (*job.Job, *plan.Plan) {
	t.Helper()
	j, err := yaml.Read(name, data)
	if err != nil {
		t.Fatal(err)
	}
	task, err := j.Task()
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(task)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return j, p
}
