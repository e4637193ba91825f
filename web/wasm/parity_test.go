// Package wasm_test holds what the browser runs against what the machine runs.
package wasm_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/internal/anyroom"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/screen"
)

// program is a program of the browser, running under node.
type program struct {
	t   *testing.T
	in  *bufio.Writer
	out *bufio.Reader
}

// started builds a program for WebAssembly, as make does, and starts it as the screen's worker
// does. It needs node, and what npm installs for the screen.
func started(t *testing.T, name string) *program {
	t.Helper()
	ui, err := filepath.Abs("../ui")
	if err != nil {
		t.Fatal(err)
	}
	_, noTS := os.Stat(filepath.Join(ui, "node_modules", "typescript"))
	node, noNode := exec.LookPath("node")
	if noTS != nil || noNode != nil {
		t.Skip("needs node, and npm ci in web/ui")
	}
	wasm := filepath.Join(t.TempDir(), name+".wasm")
	build := exec.Command("go", append(append([]string{"build", "-trimpath", "-ldflags=-s -w"}, lean(name)...), "-o", wasm, "./"+name)...)
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	filtered := strings.TrimSuffix(wasm, "wasm") + "filtered"
	if text, err := exec.Command("go", "run", "./slim", wasm, filtered).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(node, "parity.mjs", filtered, filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"), ui)
	c.Stderr = os.Stderr
	in, _ := c.StdinPipe()
	out, _ := c.StdoutPipe()
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { in.Close(); _ = c.Wait() })
	return &program{t, bufio.NewWriter(in), bufio.NewReaderSize(out, 1<<20)}
}

// lean returns the options of the compiler that a program is built with, as make does.
func lean(name string) (options []string) {
	text, _ := os.ReadFile(filepath.Join(name, "without-inlining.txt")) // none: with it everywhere
	for _, pkg := range strings.Fields(string(text)) {
		options = append(options, "-gcflags="+pkg+"=-l")
	}
	return options
}

// ask puts a request to the program and returns its answer.
func (p *program) ask(request []byte) []byte {
	p.t.Helper()
	p.in.Write(append(request, '\n'))
	if err := p.in.Flush(); err != nil {
		p.t.Fatal(err)
	}
	line, err := p.out.ReadBytes('\n')
	if err != nil {
		p.t.Fatal(err)
	}
	_, answer, _ := bytes.Cut(bytes.TrimSuffix(line, []byte("\n")), []byte("\t"))
	return answer
}

// The browser plans what the machine plans: for every example, and for rooms that
// are made up, the plan document and the answer that is drawn are the same to the
// byte.
func TestPlanParity(t *testing.T) {
	if testing.Short() {
		t.Skip("plans some hundred rooms twice")
	}
	p := started(t, "planner")
	compare := func(name string, document json.RawMessage, kinds ...screen.Kind) {
		native := screen.New()
		for _, kind := range kinds {
			request, err := json.Marshal(screen.Request{Kind: kind, Job: document, Words: screen.Words{Locale: "fr", Units: "metric"}, Jobs: 50})
			if err != nil {
				t.Fatal(err)
			}
			got, want := p.ask(request), native.AnswerJSON(request)
			if !bytes.Equal(got, want) {
				t.Errorf("%s, %s: in the browser\n%.400s\non the machine\n%.400s", name, kind, got, want)
			}
		}
	}
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) < 12 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		j, err := yaml.Read(file, data)
		if err != nil {
			t.Fatal(err)
		}
		compare(file, written(t, j), screen.AskDocument, screen.AskPlan, screen.AskCutting, screen.AskCertainty)
		t.Log(file)
	}
	planned := 0
	for i := range *rooms {
		document := written(t, rapid.Custom(anyJob).Example(i))
		compare(fmt.Sprintf("room %d", i), document, screen.AskDocument, screen.AskPlan)
		if len(job.ReadDraft(document).Problems) == 0 {
			planned++
		}
	}
	if planned < *rooms*3/4 {
		t.Errorf("only %d of %d rooms can be planned", planned, *rooms)
	}
}

var rooms = flag.Int("rooms", 40, "how many rooms are made up; make ui-test takes 200")

func written(t *testing.T, j *job.Job) json.RawMessage {
	t.Helper()
	var b bytes.Buffer
	if err := j.WriteJSON(&b); err != nil {
		t.Fatal(err)
	}
	var flat bytes.Buffer
	if err := json.Compact(&flat, b.Bytes()); err != nil {
		t.Fatal(err)
	}
	return flat.Bytes()
}

// anyJob makes up a job: a room and a paper as other tests have them.
func anyJob(t *rapid.T) *job.Job {
	run, label := anyroom.SmallRun(t), anyroom.Paper(t)
	j := &job.Job{Version: job.Version, Name: "made up", Room: job.Room{Closed: run.Closed}}
	for i := range run.Walls {
		w := &run.Walls[i]
		wall := job.Wall{Name: w.Name, Width: w.Width, Outline: w.Outline, Sight: w.Sight}
		for k := range w.Openings {
			o := &w.Openings[k]
			wall.Openings = append(wall.Openings, job.Opening{Kind: o.Kind, Outline: slices.Clone(o.Outline), Depth: o.Depth, Returns: o.Sides, Sight: o.Sight})
		}
		if i < len(run.Corners) {
			c := run.Corners[i]
			wall.Corner = &job.Corner{Kind: c.Kind, Angle: c.Angle, Lean: job.Ends{Left: c.LeanLeft, Right: c.LeanRight}}
		}
		j.Room.Walls = append(j.Room.Walls, wall)
	}
	j.Papers = []job.Paper{{
		Name: label.Name, Width: label.Width, Roll: label.RollLength, Repeat: label.Repeat, Match: label.Match.String(), Reversing: label.Match.Reversing,
	}}
	return j
}
