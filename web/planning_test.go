package web

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"firstdrop/audit"
	"firstdrop/examples"
	"firstdrop/job/yaml"
	"firstdrop/plan"
)

// made plans an example without a server.
func made(t *testing.T, text []byte) (*plan.Plan, string) {
	t.Helper()
	j, err := yaml.Read("job", text)
	if err != nil {
		t.Fatal(err)
	}
	task, err := j.Task()
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	if wrong := audit.Plan(p); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	return p, j.Name
}

// The plan from the server is the planner's own: of a job that is sent along in
// YAML, of the same in JSON, and of one that is kept.
func TestPlan(t *testing.T) {
	c := newClient(t, nil)
	for i, name := range []string{"plain-room", "imperial"} {
		text, _ := examples.Named(name)
		p, title := made(t, text)
		want, err := json.Marshal(p.Document(title).Summary)
		if err != nil {
			t.Fatal(err)
		}
		c.begin(i, example(t, name))
		for what, a := range map[string]answer{
			"in YAML": c.want(200, "POST", "/api/plan", text, "Content-Type", "application/yaml"),
			"in JSON": c.want(200, "POST", "/api/plan", example(t, name)),
			"kept":    c.want(200, "GET", "/api/jobs/"+jobID(i)+"/plan", nil),
		} {
			got := into[struct{ Summary json.RawMessage }](t, a).Summary
			if !bytes.Equal(got, want) {
				t.Errorf("%s %s: %s, want %s", name, what, got, want)
			}
		}
	}
	c.want(404, "GET", "/api/jobs/"+jobID(9)+"/plan", nil)
}

// Every example is planned as the document says.
func TestPlansOfAllExamplesFitTheirDescription(t *testing.T) {
	if testing.Short() {
		t.Skip("plans every example")
	}
	c := newClient(t, nil)
	for _, name := range examples.Names() {
		text, _ := examples.Named(name)
		c.want(200, "POST", "/api/plan", text, "Content-Type", "application/yaml")
	}
}

func TestUnsoundJobs(t *testing.T) {
	c := newClient(t, nil)
	text := strings.Replace(example(t, "plain-room"), `"width"`, `"widht"`, 1)
	for _, path := range []string{"/api/plan", "/api/sheets.pdf", "/api/import", "/api/lists.xlsx"} {
		p := into[Problem](t, c.want(422, "POST", path, text))
		if p.Code != "unsound_job" || len(p.Errors) == 0 {
			t.Fatalf("%s: %+v", path, p)
		}
		isNamed := func(f Fault) bool {
			return f.Line > 1 && f.Column > 1 && f.Path == "room.walls[0]" && strings.Contains(f.Message, `"widht"`) &&
				f.Code == "key_unknown" && f.Args["key"] == `"widht"` && f.Args["hint"].(map[string]any)["code"] == "suggest_near"
		}
		if !slices.ContainsFunc(p.Errors, isNamed) {
			t.Errorf("%s: the key that is not known is not named in %+v", path, p.Errors)
		}
	}
	check := into[struct {
		Sound    bool
		Problems []Fault
	}](t, c.want(200, "POST", "/api/check", text))
	if check.Sound || len(check.Problems) == 0 || !strings.HasPrefix(check.Problems[0].Path, "room.walls[0]") {
		t.Errorf("checked as %+v", check)
	}
	// A job that is not sound is kept all the same, and comes back as it is.
	c.begin(1, text)
	c.want(422, "GET", "/api/jobs/"+jobID(1)+"/plan", nil)
	c.want(422, "GET", "/api/jobs/"+jobID(1)+"/job.yaml", nil)
	c.want(200, "GET", "/api/jobs/"+jobID(1)+"/job.json", nil)
	c.want(200, "GET", "/api/jobs/"+jobID(1)+"/check", nil)
	for _, text := range []string{"", "{", "- a", "firstdrop: 1\n\tx", "\x00\xff"} {
		if a := c.ask("POST", "/api/import", text, "Content-Type", "application/yaml"); a.status != 422 && a.status != 400 {
			t.Errorf("%q: %d %s", text, a.status, a.body)
		}
	}
}

func TestCheck(t *testing.T) {
	c := newClient(t, nil)
	text, _ := examples.Named("out-of-plumb")
	check := into[struct {
		Sound    bool
		Findings []struct{ Text string }
	}](t, c.want(200, "POST", "/api/check?lang=de", text, "Content-Type", "application/yaml"))
	if !check.Sound {
		t.Errorf("%+v", check)
	}
}

func TestImportAndExport(t *testing.T) {
	c := newClient(t, nil)
	for i, name := range examples.Names() {
		text, _ := examples.Named(name)
		got := into[struct {
			Name     string
			Document json.RawMessage
		}](t, c.want(200, "POST", "/api/import", text, "Content-Type", "application/yaml"))
		c.begin(i, string(got.Document))
		out := c.want(200, "GET", "/api/jobs/"+jobID(i)+"/job.yaml", nil)
		a, err := yaml.Read("job", text)
		if err != nil {
			t.Fatal(err)
		}
		b, err := yaml.Read("job", out.body)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var x, y bytes.Buffer
		if err := errors.Join(a.WriteJSON(&x), b.WriteJSON(&y)); err != nil || x.String() != y.String() {
			t.Errorf("%s is not the same after import and export: %v\n%s\n%s", name, err, x.String(), y.String())
		}
		// JSON stays as it is.
		again := into[struct{ Document json.RawMessage }](t, c.want(200, "POST", "/api/import", got.Document))
		if !bytes.Equal(again.Document, got.Document) {
			t.Errorf("%s in JSON becomes %s", name, again.Document)
		}
	}
	list := into[struct{ Examples []ExampleBody }](t, c.want(200, "GET", "/api/examples", nil)).Examples
	if len(list) != len(examples.Names()) || list[0].Title == "" {
		t.Errorf("the examples are %+v", list)
	}
	c.want(200, "GET", "/api/examples/attic", nil)
	c.want(404, "GET", "/api/examples/nothing", nil)
	if a := c.want(200, "GET", "/api/schema", nil); !json.Valid(a.body) {
		t.Error("the schema is no JSON")
	}
}

// Everything that is made of a plan is what it says it is.
func TestOutputs(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, example(t, "door-and-windows"))
	kept := "/api/jobs/" + jobID(1)
	for _, o := range []struct {
		path, mediaType string
		sound           func(t *testing.T, data []byte)
	}{
		{"/sheets.pdf?sheets=order,hanging&lang=de&paper_size=A3&scale=20", "application/pdf", isPDF},
		{"/sheets.pdf?sheets=labels&labels=3x8", "application/pdf", isPDF},
		{"/wall.svg?wall=1&units=imperial", "image/svg+xml", isXML},
		{"/wall.dxf?run=0&wall=2", "image/vnd.dxf", func(t *testing.T, data []byte) { has(t, data, "SECTION") }},
		{"/lists.xlsx?lang=fr", typeXLSX, isZip},
		{"/cutting-list.csv?order=cut", typeCSV, isCSV},
		{"/roll-map.csv?paper=0", typeCSV, isCSV},
	} {
		a := c.want(200, "GET", kept+o.path, nil)
		if got := a.header.Get("Content-Type"); got != o.mediaType {
			t.Errorf("%s is %s", o.path, got)
		}
		o.sound(t, a.body)
		if posted := c.want(200, "POST", "/api"+o.path, example(t, "door-and-windows")); o.mediaType != typeXLSX && !bytes.Equal(posted.body, a.body) {
			t.Errorf("%s sent along is not what it is when kept", o.path)
		}
	}
	for path, status := range map[string]int{
		"/wall.svg?wall=99": 404, "/wall.svg?run=1": 404, "/cutting-list.csv?paper=1": 404, "/sheets.pdf?sheets=poster": 422,
		"/sheets.pdf?lang=xx": 422, "/wall.svg?wall=-1": 422, "/wall.svg?wide=1": 422, "/sheets.pdf?paper_size=A9": 422,
	} {
		c.want(status, "GET", kept+path, nil)
	}
}

func has(t *testing.T, data []byte, text string) {
	t.Helper()
	if !bytes.Contains(data, []byte(text)) {
		t.Errorf("%q is not in %.200q", text, data)
	}
}

func isPDF(t *testing.T, data []byte) {
	t.Helper()
	name := filepath.Join(t.TempDir(), "it.pdf")
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("qpdf", "--check", name).CombinedOutput(); err != nil && !errors.Is(err, exec.ErrNotFound) {
		t.Errorf("qpdf: %v\n%s", err, out)
	}
	if !bytes.HasPrefix(data, []byte("%PDF-")) {
		t.Errorf("it begins %.20q", data)
	}
}

func isXML(t *testing.T, data []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := token.(xml.StartElement); ok && (e.Name.Local == "script" || e.Name.Local == "foreignObject") {
			t.Errorf("a drawing holds <%s>", e.Name.Local)
		}
	}
}

func isZip(t *testing.T, data []byte) {
	t.Helper()
	if _, err := zip.NewReader(bytes.NewReader(data), int64(len(data))); err != nil {
		t.Error(err)
	}
}

func isCSV(t *testing.T, data []byte) {
	t.Helper()
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma, r.FieldsPerRecord = commaOf(data), -1
	if rows, err := r.ReadAll(); err != nil || len(rows) < 3 {
		t.Errorf("%d rows, %v", len(rows), err)
	}
}

func commaOf(data []byte) rune {
	if bytes.Count(data, []byte(";")) > bytes.Count(data, []byte(",")) {
		return ';'
	}
	return ','
}

// Names in a job are text in drawings, whatever they look like.
func TestDrawingsHoldNoScripts(t *testing.T) {
	c := newClient(t, nil)
	text := strings.ReplaceAll(example(t, "door-and-windows"), `"name": "A"`, `"name": "<script>alert(1)</script>"`)
	if !strings.Contains(text, "script") {
		t.Fatal("the example has no wall A")
	}
	text = strings.ReplaceAll(text, `"A|`, `"<script>alert(1)</script>|`)
	for w := range 4 {
		a := c.ask("POST", "/api/wall.svg?wall="+string(rune('0'+w)), text)
		if a.status != 200 {
			t.Fatalf("%d %s", a.status, a.body)
		}
		isXML(t, a.body)
		if p := a.header.Get("Content-Security-Policy"); !strings.Contains(p, "sandbox") || strings.Contains(p, "script-src") {
			t.Errorf("a drawing may %s", p)
		}
	}
}

// Beyond what can be done and what can wait, requests are sent away, and those that
// wait are served.
func TestLine(t *testing.T) {
	release := make(chan bool)
	c := newClient(t, func(o *Options) {
		o.Plans = 1
		o.Make = func(task *plan.Task) (*plan.Plan, error) {
			<-release
			return plan.Make(task)
		}
	})
	text := example(t, "plain-room")
	answers := make(chan answer)
	const asked = 1 + mostWaiting + 5
	for range asked {
		go func() {
			a, err := c.try("POST", "/api/wall.svg", text)
			if err != nil {
				t.Error(err)
			}
			answers <- a
		}()
	}
	for range 5 {
		a := <-answers
		if a.status != 503 || a.header.Get("Retry-After") == "" || into[Problem](t, a).Code != "busy" {
			t.Errorf("%d %s", a.status, a.body)
		}
	}
	// Saving does not wait for plans.
	c.begin(1, "{}")
	close(release)
	for range asked - 5 {
		if a := <-answers; a.status != 200 {
			t.Errorf("%d %.200s", a.status, a.body)
		}
	}
}

// Whoever has waited long enough is sent away, and may come again.
func TestPlansThatTakeLong(t *testing.T) {
	release := make(chan bool)
	defer close(release)
	c := newClient(t, func(o *Options) {
		o.PlanTime = time.Millisecond
		o.Make = func(*plan.Task) (*plan.Plan, error) { <-release; return nil, errors.New("too late") }
	})
	if p := into[Problem](t, c.want(503, "POST", "/api/plan", example(t, "plain-room"))); p.Code != "busy" {
		t.Errorf("%+v", p)
	}
}

// A plan that takes too long, or that nobody waits for, is given up, and makes room for
// the next.
func TestPlansAreGivenUp(t *testing.T) {
	ended := make(chan error, 2)
	c := newClient(t, func(o *Options) {
		o.Plans, o.PlanTime = 1, 200*time.Millisecond
		o.Make = func(task *plan.Task) (*plan.Plan, error) {
			for !task.Stop() {
				time.Sleep(time.Millisecond)
			}
			_, err := plan.Make(task)
			ended <- err
			return nil, err
		}
	})
	for range 2 { // the second gets the only slot
		c.want(503, "POST", "/api/plan", example(t, "plain-room"))
		if err := <-ended; err != plan.ErrStopped {
			t.Error(err)
		}
	}
}

// A plan that breaks its promises, or a planner that fails, is told as a fault and
// shows nothing.
func TestFaults(t *testing.T) {
	for name, wrong := range map[string]func(*plan.Task) (*plan.Plan, error){
		"a panic": func(*plan.Task) (*plan.Plan, error) { panic("a fault") },
		"an untrue plan": func(task *plan.Task) (*plan.Plan, error) {
			p, err := plan.Make(task)
			if err == nil {
				p.Papers[0].Drops++
			}
			return p, err
		},
	} {
		c := newClient(t, func(o *Options) { o.Make = wrong })
		if p := into[Problem](t, c.want(500, "POST", "/api/plan", example(t, "plain-room"))); p.Code != "internal" || strings.Contains(p.Detail, "fault:") {
			t.Errorf("%s: %+v", name, p)
		}
	}
}

// Whoever goes away while waiting leaves the line.
func TestGone(t *testing.T) {
	l := newLine(1, time.Hour)
	hold := make(chan bool)
	go do(t.Context(), l, func(context.Context) (int, error) { <-hold; return 0, nil })
	for len(l.slots) == 0 {
		time.Sleep(time.Millisecond)
	}
	ctx, cancel := context.WithCancel(t.Context())
	gone := make(chan error)
	go func() {
		_, err := do(ctx, l, func(context.Context) (int, error) { t.Error("done all the same"); return 0, nil })
		gone <- err
	}()
	for l.waiting.Load() == 0 {
		time.Sleep(time.Millisecond)
	}
	cancel()
	if err := <-gone; err == nil {
		t.Error("no error")
	}
	if n := l.waiting.Load(); n != 0 {
		t.Errorf("%d wait", n)
	}
	close(hold)
}
