package job_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"firstdrop/job/yaml"
)

var update = flag.Bool("update", false, "rewrite the expected messages in testdata")

// TestRead holds pairs of documents and messages; see the head of each file.
func TestRead(t *testing.T) {
	files, _ := filepath.Glob("testdata/*.txtar")
	if len(files) == 0 {
		t.Fatal("no cases in testdata")
	}
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for i := 0; i+1 < len(archive.Files); i += 2 {
			document, want := archive.Files[i], &archive.Files[i+1]
			name := strings.TrimSuffix(document.Name, filepath.Ext(document.Name))
			if want.Name != name+".want" {
				t.Fatalf("%s: %s follows %s", file, want.Name, document.Name)
			}
			got := ""
			if _, err := yaml.Read(document.Name, document.Data); err != nil {
				got = err.Error() + "\n"
			}
			if *update {
				want.Data = []byte(got)
			} else if got != string(want.Data) {
				t.Errorf("%s: %s\n%s\n got %s\nwant %s", file, document.Name, document.Data, got, want.Data)
			}
		}
		if *update {
			if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// document returns a plain room with so many walls.
func document(walls int) []byte {
	var b bytes.Buffer
	b.WriteString("firstdrop: 1\nunits: mm\nroom:\n  height: 2400\n  closed: false\n  walls:\n")
	for i := range walls {
		fmt.Fprintf(&b, "    - {name: W%d, width: 3200, openings: [{kind: door, left: 100, width: 800, height: 2000}]}\n", i)
	}
	b.WriteString("papers:\n  - {name: Ferns, width: 530, roll: 10.05 m, match: free}\n")
	return b.Bytes()
}

// crowded returns a room whose walls have so many openings each, all in the same
// place.
func crowded(walls, openings int) string {
	one := "{kind: door, left: 100, width: 800, height: 2000}"
	return strings.ReplaceAll(string(document(walls)), one, strings.Repeat(one+", ", openings-1)+one)
}

// bands returns a room of 500 walls papered in so many bands.
func bands(n int) string {
	var b strings.Builder
	b.Write(document(500))
	b.WriteString("hang:\n")
	for i := range n {
		fmt.Fprintf(&b, "  - {paper: Ferns, from: %d, to: %d}\n", i, i+1)
	}
	return b.String()
}

// Sizes that only a mistake or malice makes are answered in good time, in
// words. The time limits are far above what is needed, for slow machines.
func TestLimits(t *testing.T) {
	sound := string(document(3))
	for _, c := range []struct {
		name string
		data string
		want string // "" for a document that is accepted
	}{
		{"500 walls", string(document(500)), ""},
		{"10,000 walls", string(document(10_000)), "walls has 10000 items; a job holds at most 1000"},
		{"61 openings", crowded(1, 61), "wall W0 has 61 openings; a wall holds at most 60"},
		{"2040 openings", crowded(34, 60), "there are 2040 openings; a job holds at most 2000"},
		{"1980 openings in the same places", crowded(33, 60), "overlaps door 1"},
		{"20 bands", bands(20), ""},
		{"900 bands", bands(900), "the entries have more than 10000 walls in all"},
		{"1001 bands", bands(1001), "hang has 1001 items; a job holds at most 1000"},
		{"9 MB", strings.Repeat("# nothing\n", 900_000), "the document has 8 MB; a job has at most 8"},
		{"entries", strings.Repeat("- a: [1, 2]\n", 100_000), "at most 200000: make several jobs"},
		{"brackets", "firstdrop: 1\nroom: " + strings.Repeat("[", 20_000), "too many lists or keys within one another"},
		{"deep keys", "firstdrop: 1\nroom:" + strings.Repeat(" {walls:", 5_000), "document.yaml:"},
		{"JSON brackets", `{"firstdrop": 1, "room": ` + strings.Repeat("[", 20_000), "too many lists or keys within one another"},
		{"a long word", "firstdrop: 1\nname: " + strings.Repeat("a", 1_000_000), "is longer than 10000 characters"},
		{"long note", "note: " + strings.Repeat("long ", 1900) + "\n" + sound, ""},
		{"NUL", "firstdrop: 1\nname: a\x00b\n", "document.yaml:2:8: this is not text in UTF-8"},
		{"Latin 1", "firstdrop: 1\nname: Tapetenger\xfcst\n", "document.yaml:2:17: this is not text in UTF-8"},
		{"UTF-16", "\xff\xfef\x00i\x00r\x00s\x00t\x00", "document.yaml:1:1: this is not text in UTF-8"},
		{"byte order mark", "\ufeff" + sound, ""},
		{"Windows line ends", strings.ReplaceAll(sound, "\n", "\r\n"), ""},
		{"a picture", "\x89PNG\r\n\x1a\n\x00\x00", "document.yaml:1:1: this is not text in UTF-8"},
	} {
		begin := time.Now()
		_, err := yaml.Read("document.yaml", []byte(c.data))
		if took := time.Since(begin); took > 5*time.Second {
			t.Errorf("%s took %v", c.name, took)
		}
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: %.300v; want %q in it", c.name, err, c.want)
		}
	}
}

// A document with a mistake in every line is answered with the first hundred.
func TestManyProblems(t *testing.T) {
	data := strings.ReplaceAll(string(document(400)), "kind: door", "kind: dor")
	_, err := yaml.Read("many.yaml", []byte(data))
	lines := strings.Split(fmt.Sprint(err), "\n")
	if len(lines) != 101 || lines[100] != "many.yaml: and 300 more problems" {
		t.Errorf("%d lines, the last: %s", len(lines), lines[len(lines)-1])
	}
}

func BenchmarkRead500Walls(b *testing.B) {
	data := document(500)
	for b.Loop() {
		if _, err := yaml.Read("bench.yaml", data); err != nil {
			b.Fatal(err)
		}
	}
}
