package job_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"firstdrop/finding"
	"firstdrop/job/yaml"
	"firstdrop/paper"
)

// examples returns the documents under examples/ by name.
func examples(t testing.TB) map[string][]byte {
	t.Helper()
	files, _ := filepath.Glob("../examples/*.yaml")
	if len(files) < 12 {
		t.Fatalf("only %d examples", len(files))
	}
	found := map[string][]byte{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		found[filepath.Base(file)] = data
	}
	return found
}

// documents returns all documents of the examples and of testdata, sound and
// faulty.
func documents(t testing.TB) [][]byte {
	t.Helper()
	var list [][]byte
	for _, data := range examples(t) {
		list = append(list, data)
	}
	files, _ := filepath.Glob("testdata/*.txtar")
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range archive.Files {
			if !strings.HasSuffix(f.Name, ".want") {
				list = append(list, f.Data)
			}
		}
	}
	return list
}

func TestExamples(t *testing.T) {
	for name, data := range examples(t) {
		j, err := yaml.Read(name, data)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if !bytes.Contains(data, []byte("invented")) || !strings.Contains(j.Name, "(invented)") {
			t.Errorf("%s does not say that it is invented", name)
		}
		for _, p := range j.Papers {
			if !strings.Contains(p.Name, "(invented)") {
				t.Errorf("%s: paper %q does not say that it is invented", name, p.Name)
			}
		}
		printed(t, j)
		if _, err := j.Task(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for _, f := range j.Findings() {
			if f.Severity != finding.Note && f.Code != paper.LabelDiffers { // which one of them is there to show
				t.Errorf("%s: %v %s at %+v %+v", name, f.Severity, f.Code, f.Place, f.Sizes)
			}
		}
	}
}

// A closed floor plan of the examples closes to the millimetre, as far as its
// angles were measured or are square.
func TestExamplesClose(t *testing.T) {
	closed := 0
	for name, data := range examples(t) {
		j, err := yaml.Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		s := j.Survey()
		if s == nil {
			continue
		}
		closed++
		a, err := s.Adjust()
		if err != nil || a.Misclosure > mm || a.Angular != 0 {
			t.Errorf("%s: misclosure %v, angles off by %v, %v", name, a.Misclosure, a.Angular, err)
		}
	}
	if closed < 10 {
		t.Errorf("only %d examples are closed rooms", closed)
	}
}
