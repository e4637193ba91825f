package web

import (
	"fmt"
	"net/http"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestJobs(t *testing.T) {
	c := newClient(t, nil)
	url := "/api/jobs/" + jobID(1)
	a := c.want(201, "PUT", url, `{"document": {"name": "Hall", "room": 1}, "label": "begun"}`, "If-None-Match", "*")
	if s := into[SummaryBody](t, a); s.Name != "Hall" || s.Version != 1 || s.Label != "begun" || a.header.Get("ETag") != `"1"` {
		t.Errorf("begun as %+v with ETag %s", s, a.header.Get("ETag"))
	}
	a = c.want(200, "PUT", url, `{"document": {"name": "Long hall"}}`, "If-Match", `"1"`)
	if s := into[SummaryBody](t, a); s.Version != 2 || a.header.Get("ETag") != `"2"` {
		t.Errorf("saved as %+v", s)
	}
	a = c.want(200, "GET", url, nil)
	if j := into[JobBody](t, a); string(j.Document) != `{"name":"Long hall"}` || j.Version != 2 || a.header.Get("ETag") != `"2"` {
		t.Errorf("got %+v", j)
	}
	if l := into[struct{ Jobs []SummaryBody }](t, c.want(200, "GET", "/api/jobs", nil)); len(l.Jobs) != 1 || l.Jobs[0].Name != "Long hall" {
		t.Errorf("listed %+v", l)
	}
}

// A save over a version that is not the last is refused with what stands there.
func TestConflict(t *testing.T) {
	c := newClient(t, nil)
	url := "/api/jobs/" + jobID(1)
	c.begin(1, `{"n":1}`)
	c.want(200, "PUT", url, `{"document": {"n": 2}}`, "If-Match", `"1"`)
	for _, headers := range [][]string{{"If-Match", `"1"`}, {"If-Match", `"3"`}, {"If-None-Match", "*"}} {
		p := into[Problem](t, c.want(412, "PUT", url, `{"document": {"n": 9}}`, headers...))
		if p.Code != "version_conflict" || p.Current == nil || p.Current.Version != 2 || string(p.Current.Document) != `{"n":2}` {
			t.Errorf("%v: %+v", headers, p)
		}
	}
	for _, bad := range []string{`1`, `W/"1"`, `*`, `"1", "2"`, `"01"`, `"x"`, `"-1"`} {
		if p := into[Problem](t, c.want(412, "PUT", url, `{"document": {"n": 9}}`, "If-Match", bad)); p.Code != "no_version" {
			t.Errorf("If-Match %s: %+v", bad, p)
		}
	}
	c.want(428, "PUT", url, `{"document": {"n": 9}}`)
	c.want(404, "PUT", "/api/jobs/"+jobID(2), `{"document": {"n": 9}}`, "If-Match", `"1"`)
	if j := into[JobBody](t, c.want(200, "GET", url, nil)); j.Version != 2 {
		t.Errorf("the job is at version %d", j.Version)
	}
}

func TestPush(t *testing.T) {
	c := newClient(t, nil)
	url := "/api/jobs/" + jobID(1) + "/revisions"
	push := map[string]any{"base": 0, "revisions": []map[string]any{
		{"key": jobID(101), "document": map[string]any{"n": 1}, "label": "begun", "made": "2026-05-01T12:00:00Z"},
		{"key": jobID(102), "document": map[string]any{"n": 2}, "label": "window moved", "made": "2026-05-01T12:00:01Z"},
	}}
	for range 2 { // the second time as if the first answer was lost
		if s := into[SummaryBody](t, c.want(201, "POST", url, push)); s.Version != 2 {
			t.Errorf("pushed as %+v", s)
		}
	}
	push["base"] = 7
	push["revisions"] = []map[string]any{{"document": map[string]any{"n": 3}}}
	c.want(412, "POST", url, push)
	push["base"] = 2
	c.want(200, "POST", url, push)
	vs := into[struct{ Versions []VersionBody }](t, c.want(200, "GET", "/api/jobs/"+jobID(1)+"/history", nil)).Versions
	if len(vs) != 3 || vs[1].Label != "window moved" || vs[1].Made.Format("15:04:05") != "12:00:01" {
		t.Errorf("the history is %+v", vs)
	}
	push["revisions"] = []map[string]any{}
	c.want(422, "POST", url, push)
}

func TestHistory(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, `{"n":1}`)
	url := "/api/jobs/" + jobID(1)
	for v := 1; v < 5; v++ {
		c.want(200, "PUT", url, fmt.Sprintf(`{"document": {"n": %d}}`, v+1), "If-Match", fmt.Sprintf(`"%d"`, v))
	}
	c.want(204, "PUT", url+"/history/2/name", `{"name": "before the window"}`)
	vs := into[struct{ Versions []VersionBody }](t, c.want(200, "GET", url+"/history?below=4&most=2", nil)).Versions
	if len(vs) != 2 || vs[0].Version != 3 || vs[1].Name != "before the window" {
		t.Errorf("the history is %+v", vs)
	}
	if j := into[JobBody](t, c.want(200, "GET", url+"/history/2", nil)); string(j.Document) != `{"n":2}` {
		t.Errorf("version 2 is %s", j.Document)
	}
	c.want(428, "POST", url+"/history/2/restore", `{}`)
	if s := into[SummaryBody](t, c.want(200, "POST", url+"/history/2/restore", `{"label": "version 2 restored"}`, "If-Match", `"5"`)); s.Version != 6 || s.Label != "version 2 restored" {
		t.Errorf("restored as %+v", s)
	}
	c.want(412, "POST", url+"/history/2/restore", `{}`, "If-Match", `"5"`)
	c.want(404, "GET", url+"/history/99", nil)
	c.want(422, "GET", url+"/history/0", nil)
	c.want(422, "GET", url+"/history/x", nil)
	c.want(404, "PUT", url+"/history/99/name", `{"name": "x"}`)
	c.want(404, "GET", "/api/jobs/"+jobID(9)+"/history", nil)
	if s := into[SummaryBody](t, c.want(200, "POST", url+"/name", `{"name": "Attic", "label": "renamed"}`, "If-Match", `"6"`)); s.Name != "Attic" || s.Version != 7 {
		t.Errorf("renamed as %+v", s)
	}
	if j := into[JobBody](t, c.want(200, "GET", url, nil)); string(j.Document) != `{"name":"Attic","n":2}` {
		t.Errorf("renamed the document is %s", j.Document)
	}
}

func TestBin(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, `{"name": "Hall"}`)
	job, bin := "/api/jobs/"+jobID(1), "/api/bin/"+jobID(1)
	c.want(404, "DELETE", bin, nil)
	c.want(204, "DELETE", job, nil)
	if l := into[struct{ Jobs []SummaryBody }](t, c.want(200, "GET", "/api/bin", nil)); len(l.Jobs) != 1 || l.Jobs[0].Binned == nil {
		t.Errorf("in the bin: %+v", l)
	}
	c.want(204, "POST", bin+"/recover", nil)
	c.want(200, "GET", job, nil)
	c.want(204, "DELETE", job, nil)
	c.want(204, "DELETE", bin, nil)
	c.want(404, "GET", job, nil)
	c.want(404, "DELETE", job, nil)
	c.want(404, "POST", bin+"/recover", nil)
}

func TestRefusedSaves(t *testing.T) {
	c := newClient(t, nil)
	url := "/api/jobs/" + jobID(1)
	for _, r := range []struct {
		status int
		url    string
		body   string
	}{
		{422, url, `{"document": []}`},
		{422, url, `{"document": "x"}`},
		{422, url, `{"document": null}`},
		{422, url, `{}`},
		{422, url, `{"document": {}, "unknown": 1}`},
		{422, url, `{"document": {}, "label": "two\nlines"}`},
		{422, url, `{"document": {}, "key": "x"}`},
		{422, url, `{"document": {}, "made": "yesterday"}`},
		{400, url, `{"document": {`},
		{400, url, ``},
		{422, "/api/jobs/x", `{"document": {}}`},
		{422, "/api/jobs/..%2f..%2fetc%2fpasswd", `{"document": {}}`},
		{413, url, `{"document": {"x": "` + strings.Repeat("x", mostBody) + `"}}`},
	} {
		if a := c.ask("PUT", r.url, r.body, "If-None-Match", "*"); a.status != r.status {
			t.Errorf("%.60s: %d %.300s, want %d", r.body, a.status, a.body, r.status)
		}
	}
	if l := into[struct{ Jobs []SummaryBody }](t, c.want(200, "GET", "/api/jobs", nil)); len(l.Jobs) > 0 {
		t.Errorf("left behind: %+v", l)
	}
}

// Documents come back as they went in.
func TestDocumentsStay(t *testing.T) {
	c := newClient(t, nil)
	for i, d := range []string{`{"a":1.50,"b":1e2,"c":"ä<&>\u2028","d":[{},[]],"name":"x"}`, example(t, "door-and-windows")} {
		c.begin(i, d)
		want, got := into[any](t, answer{body: []byte(d)}), into[struct{ Document any }](t, c.want(200, "GET", "/api/jobs/"+jobID(i), nil)).Document
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
		if file := c.want(200, "GET", "/api/jobs/"+jobID(i)+"/job.json", nil); cmp.Diff(want, into[any](t, file)) != "" {
			t.Errorf("saved as a file it is %s", file.body)
		}
	}
}

// Fifty writers each add one to a number; each tries again when somebody was
// faster. None of their changes is lost.
func TestManyWriters(t *testing.T) {
	const writers, times = 50, 2
	c := newClient(t, nil)
	c.begin(1, `{"n":0}`)
	var all sync.WaitGroup
	for range writers {
		all.Go(func() {
			for range times {
				if err := c.addOne("/api/jobs/" + jobID(1)); err != nil {
					t.Error(err)
					return
				}
			}
		})
	}
	all.Wait()
	j := into[JobBody](t, c.want(200, "GET", "/api/jobs/"+jobID(1), nil))
	if want := fmt.Sprintf(`{"n":%d}`, writers*times); string(j.Document) != want || j.Version != 1+writers*times {
		t.Errorf("version %d: %s, want %s", j.Version, j.Document, want)
	}
}

func (c *client) addOne(url string) error {
	for {
		a, err := c.try("GET", url, nil)
		if err != nil {
			return err
		}
		j := into[struct{ Document struct{ N int } }](c.t, a)
		saved, err := c.try("PUT", url, fmt.Sprintf(`{"document": {"n": %d}}`, j.Document.N+1), "If-Match", a.header.Get("ETag"))
		switch {
		case err != nil:
			return err
		case saved.status == http.StatusOK:
			return nil
		case saved.status != http.StatusPreconditionFailed:
			return fmt.Errorf("%d %s", saved.status, saved.body)
		}
	}
}
