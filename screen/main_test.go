package screen

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"firstdrop/internal/steady"
	"firstdrop/job/yaml"
)

func TestMain(m *testing.M) { steady.Main(m) }

// examples returns the examples as JSON documents, by name.
func examples(t testing.TB) map[string]json.RawMessage {
	t.Helper()
	files, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(files) < 12 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	all := map[string]json.RawMessage{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		j, err := yaml.Read(file, data)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		all[filepath.Base(file)] = b.Bytes()
	}
	return all
}

// asked asks a new planner one thing about a job, in metric British English.
func asked(t testing.TB, kind Kind, document json.RawMessage) Answer {
	t.Helper()
	a := New().answer(Request{ID: 7, Version: 3, Kind: kind, Job: document, Words: Words{Locale: "en-GB", Units: "metric"}})
	if a.ID != 7 || a.Version != 3 || a.Kind != kind || a.Failure != "" {
		t.Fatalf("%s: %+v", kind, a)
	}
	return a
}
