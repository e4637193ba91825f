package job_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/santhosh-tekuri/jsonschema/v6"
	v4 "go.yaml.in/yaml/v4"
	"pgregory.net/rapid"

	"firstdrop/job"
	"firstdrop/job/yaml"
)

// same compares what two jobs say, not where it stood.
var same = cmpopts.IgnoreUnexported(job.Job{})

// printed prints a job both ways and reads it back both times.
func printed(t interface {
	Helper()
	Fatalf(format string, args ...any)
}, j *job.Job,
) (asYAML, asJSON string) {
	t.Helper()
	var y, n bytes.Buffer
	if err := yaml.Write(&y, j); err != nil {
		t.Fatalf("Write: %v", err)
	}
	if err := j.WriteJSON(&n); err != nil {
		t.Fatalf("WriteJSON: %v", err)
	}
	for _, text := range []string{y.String(), n.String()} {
		back, err := yaml.Read("printed", []byte(text))
		if err != nil {
			t.Fatalf("printed and not read back:\n%s\n%v", text, err)
		}
		if diff := cmp.Diff(j, back, same); diff != "" {
			t.Fatalf("printed\n%s\nreads back differently (-printed +read):\n%s", text, diff)
		}
	}
	return y.String(), n.String()
}

// Programs need no reader of YAML, and are told so.
func TestReadTakesJSONOnly(t *testing.T) {
	for name, data := range examples(t) {
		j, err := yaml.Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		_, asJSON := printed(t, j)
		back, err := job.Read("printed", []byte(asJSON))
		if diff := cmp.Diff(j, back, same); err != nil || diff != "" {
			t.Errorf("%s: %v %s", name, err, diff)
		}
		if _, err := job.Read(name, data); err == nil || err.Error() != name+":1:1: this is no JSON: a job begins with {" {
			t.Errorf("%s, as it stands: %v", name, err)
		}
	}
}

func TestPrintingReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		if err := j.Check(); err != nil {
			t.Fatalf("the drawn job is not sound: %v", err)
		}
		_, asJSON := printed(t, j)
		if !json.Valid([]byte(asJSON)) {
			t.Fatalf("no JSON:\n%s", asJSON)
		}
	})
}

// compiled compiles the published schema.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(job.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("job.json", document); err != nil {
		t.Fatal(err)
	}
	return c.MustCompile("job.json")
}

// Examples as a program that knows nothing of jobs reads them.
func TestExamplesKeepToTheSchema(t *testing.T) {
	schema := compiled(t)
	for name, data := range examples(t) {
		var plain any
		if err := v4.Unmarshal(data, &plain); err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(plain); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		j, err := yaml.Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		value, err := jsonschema.UnmarshalJSON(&b)
		if err == nil {
			err = schema.Validate(value)
		}
		if err != nil {
			t.Errorf("%s, printed: %v", name, err)
		}
	}
}

func TestPrintedJobsKeepToTheSchema(t *testing.T) {
	schema := compiled(t)
	rapid.Check(t, func(t *rapid.T) {
		var b bytes.Buffer
		if err := anyJob(t).WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		value, err := jsonschema.UnmarshalJSON(&b)
		if err == nil {
			err = schema.Validate(value)
		}
		if err != nil {
			t.Fatal(err)
		}
	})
}

func TestPrintingIsRepeatable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		y, n := printed(t, j)
		back, _ := yaml.Read("printed", []byte(n))
		if y2, n2 := printed(t, back); y2 != y || n2 != n {
			t.Fatalf("prints differently the second time:\n%s\n%s", y, y2)
		}
	})
}

// An imperial job prints feet and inches wherever they are exact, and
// millimetres where they are not.
func TestPrintingInInches(t *testing.T) {
	data, err := os.ReadFile("../examples/imperial.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := yaml.Read("imperial.yaml", data)
	if err != nil {
		t.Fatal(err)
	}
	j.Room.Walls[1].Width += 1
	y, _ := printed(t, j)
	for _, want := range []string{`height: 8' 2 1/2"`, `width: 12' 4 3/4"`, "width: 3200.400001 mm", `allowance: 2"`} {
		if !strings.Contains(y, want) {
			t.Errorf("%q is not in\n%s", want, y)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, seed := range documents(f) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := yaml.Read("fuzz", data)
		if err != nil {
			if err.Error() == "" {
				t.Error("refused without a word")
			}
			return
		}
		printed(t, j)
		if _, err := j.Task(); err != nil {
			t.Errorf("read and checked, but no task: %v", err)
		}
		j.Findings()
	})
}
