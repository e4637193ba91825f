package web

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// The document describes every operation once, with a summary, and nothing that
// comes from elsewhere is handed out with it.
func TestOpenAPI(t *testing.T) {
	c := newClient(t, nil)
	doc := into[struct {
		OpenAPI string
		Paths   map[string]map[string]struct {
			OperationID string `json:"operationId"`
			Summary     string
		}
	}](t, c.want(200, "GET", "/api/openapi.json", nil))
	if !strings.HasPrefix(doc.OpenAPI, "3.1") {
		t.Errorf("it is of version %q", doc.OpenAPI)
	}
	ids := map[string]bool{}
	for _, path := range slices.Sorted(maps.Keys(doc.Paths)) {
		for method, op := range doc.Paths[path] {
			if op.OperationID == "" || op.Summary == "" || ids[op.OperationID] {
				t.Errorf("%s %s is called %q, %q", method, path, op.OperationID, op.Summary)
			}
			ids[op.OperationID] = true
		}
	}
	for _, path := range []string{"/api/docs", "/docs", "/schemas/Problem.json", "/api/schemas"} {
		if a := c.ask("GET", path, nil); strings.Contains(string(a.body), "unpkg") || strings.Contains(string(a.body), "<script") {
			t.Errorf("%s: %s", path, a.body)
		}
	}
}

func TestHealth(t *testing.T) {
	c := newClient(t, nil)
	c.want(200, "GET", "/healthz", nil)
	if err := c.server.Store.Close(); err != nil {
		t.Fatal(err)
	}
	c.want(503, "GET", "/healthz", nil)
	c.want(500, "GET", "/api/jobs", nil)
}

// The server's log tells of requests, and of no token.
func TestLogHoldsNoToken(t *testing.T) {
	var log lockedBuffer
	c := newClient(t, func(o *Options) { o.Token, o.Log = "a-secret", newLog(&log) })
	c.want(303, "GET", "/api/enter?token=a-secret", nil)
	c.want(401, "GET", "/api/jobs?x=a-secret", nil)
	if text := log.String(); strings.Contains(text, "a-secret") || !strings.Contains(text, "/api/enter") {
		t.Error(text)
	}
}

// Whatever is sent as a document, the server answers as it says it does.
func FuzzDocuments(f *testing.F) {
	for _, s := range []string{`{"document": {"name": "Hall"}, "label": "x"}`, `{"base": 0, "revisions": [{"document": {}}]}`, "firstdrop: 1\nroom: {}\npapers: []\n", `{"firstdrop": 1}`, `[`, "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, body string) {
		c := newClient(t, nil)
		for i, r := range []struct{ method, path, header, value string }{
			{"PUT", "/api/jobs/" + jobID(1), "If-None-Match", "*"},
			{"PUT", "/api/jobs/" + jobID(1), "If-Match", body},
			{"POST", "/api/jobs/" + jobID(2) + "/revisions", "X", "x"},
			{"POST", "/api/import", "Content-Type", "application/yaml"},
			{"POST", "/api/check", "Content-Type", "application/yaml"},
			{"POST", "/api/jobs/" + jobID(1) + "/pictures", "Content-Type", "image/png"},
		} {
			if strings.ContainsFunc(r.value, func(c rune) bool { return c < ' ' || c > '~' }) {
				continue
			}
			a, err := c.try(r.method, r.path, body, r.header, r.value)
			if err != nil || a.status >= 500 {
				t.Errorf("%s of %q: %d %s, %v", fmt.Sprint(i, " ", r.path), body, a.status, a.body, err)
			}
		}
		// What was kept comes back.
		if a := c.ask("GET", "/api/jobs/"+jobID(1), nil); a.status == 200 {
			c.want(200, "GET", "/api/jobs/"+jobID(1)+"/job.json", nil)
		}
	})
}
