package web

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"mime"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"firstdrop/examples"
	"firstdrop/store/sqlite"
)

// client asks a server over HTTP, and holds every answer against the server's
// own OpenAPI document: the status must be told there, the media type, the shape of
// the body.
type client struct {
	t      *testing.T
	server *Server
	base   string
	doc    *description
	header http.Header // of every request
}

// sampleFiles stand for a built front end.
var sampleFiles = fstest.MapFS{
	"index.html":            {Data: []byte("<!doctype html><title>Firstdrop</title>")},
	"service-worker.js":     {Data: []byte("// a worker")},
	"assets/main-3f2a91.js": {Data: []byte(strings.Repeat("console.log('plain');\n", 50))},
	"assets/p-77aa.wasm":    {Data: []byte("\x00asm plain")},
	"assets/p-77aa.wasm.br": {Data: []byte("as brotli")},
	".keep":                 {Data: []byte("")},
}

func newClient(t *testing.T, change func(*Options)) *client {
	t.Helper()
	s, err := sqlite.Open(t.Context(), filepath.Join(t.TempDir(), "jobs.db"))
	if err != nil {
		t.Fatal(err)
	}
	var log lockedBuffer
	o := Options{Store: s, Files: sampleFiles, Log: newLog(&log), Version: "test", PlanTime: time.Hour}
	if change != nil {
		change(&o)
	}
	server := New(o)
	web := httptest.NewServer(server)
	t.Cleanup(func() {
		web.Close()
		_ = s.Close() // a test may have closed it
		if t.Failed() {
			t.Log("the server's log:\n" + log.String())
		}
	})
	return &client{t, server, web.URL, describe(t, server), http.Header{}}
}

func newLog(w io.Writer) *slog.Logger { return slog.New(slog.NewTextHandler(w, nil)) }

// lockedBuffer is a log for several at once.
type lockedBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (b *lockedBuffer) Write(data []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.b.Write(data)
}

func (b *lockedBuffer) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.b.String()
}

// answer is what came back.
type answer struct {
	status int
	header http.Header
	body   []byte
}

// ask sends a request; headers are names and values in turn.
func (c *client) ask(method, path string, body any, headers ...string) answer {
	c.t.Helper()
	a, err := c.try(method, path, body, headers...)
	if err != nil {
		c.t.Fatal(err)
	}
	return a
}

// try is ask for several at once, which must not end the test.
func (c *client) try(method, path string, body any, headers ...string) (a answer, err error) {
	var data []byte
	switch b := body.(type) {
	case nil:
	case []byte:
		data = b
	case string:
		data = []byte(b)
	default:
		if data, err = json.Marshal(body); err != nil {
			return a, err
		}
	}
	r, err := http.NewRequestWithContext(c.t.Context(), method, c.base+path, bytes.NewReader(data))
	if err != nil {
		return a, err
	}
	for name, values := range c.header {
		r.Header[name] = values
	}
	if body != nil && r.Header.Get("Content-Type") == "" {
		r.Header.Set("Content-Type", "application/json")
	}
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
		}
		r.Header.Set(headers[i], headers[i+1])
	}
	response, err := http.DefaultTransport.RoundTrip(r)
	if err != nil {
		return a, err
	}
	defer response.Body.Close()
	a = answer{status: response.StatusCode, header: response.Header}
	if a.body, err = io.ReadAll(response.Body); err != nil {
		return a, err
	}
	return a, c.doc.holds(r, a)
}

// want asks, and fails the test when the status is another.
func (c *client) want(status int, method, path string, body any, headers ...string) answer {
	c.t.Helper()
	a := c.ask(method, path, body, headers...)
	if a.status != status {
		c.t.Fatalf("%s %s: %d %.500s; want %d", method, path, a.status, a.body, status)
	}
	return a
}

// into reads the body of an answer.
func into[T any](t *testing.T, a answer) (v T) {
	t.Helper()
	if err := json.Unmarshal(a.body, &v); err != nil {
		t.Fatalf("%v in %.500s", err, a.body)
	}
	return v
}

func jobID(n int) string { return fmt.Sprintf("01890a5d-ac96-774b-bcce-%012x", n) }

// begin keeps a document as a new job.
func (c *client) begin(n int, document string) {
	c.t.Helper()
	c.want(201, "PUT", "/api/jobs/"+jobID(n), RevisionBody{Document: Document(document), Label: "begun"}, "If-None-Match", "*")
}

// example returns a sample job as a document.
func example(t *testing.T, name string) string {
	t.Helper()
	text, ok := examples.Named(name)
	if !ok {
		t.Fatal("there is no example ", name)
	}
	got, err := imported(text)
	if err != nil {
		t.Fatal(err)
	}
	return string(got.Body.Document)
}

// description is an OpenAPI document that answers are held against.
type description struct {
	paths    map[string]map[string]map[string]any // path, method, operation
	compiler *jsonschema.Compiler
	mu       sync.Mutex
	schemas  map[string]*jsonschema.Schema
	seen     map[string]bool // operations that were answered as they are described to
}

func describe(t *testing.T, s *Server) *description {
	t.Helper()
	w := httptest.NewRecorder()
	r := httptest.NewRequest("GET", "http://localhost/api/openapi.json", nil)
	r.Header.Set("Authorization", "Bearer "+s.Token)
	s.ServeHTTP(w, r)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(w.Body.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	d := &description{compiler: jsonschema.NewCompiler(), schemas: map[string]*jsonschema.Schema{}, seen: map[string]bool{}}
	d.compiler.AssertFormat()
	if err := d.compiler.AddResource("urn:openapi", doc); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(w.Body.Bytes(), &struct{ Paths any }{&d.paths}); err != nil {
		t.Fatal(err)
	}
	return d
}

// holds says how an answer differs from what the document says.
func (d *description) holds(r *http.Request, a answer) error {
	path, ok := d.pathOf(r.URL.Path)
	if !ok || d.paths[path][strings.ToLower(r.Method)] == nil {
		return nil // of the front end, or no operation at all
	}
	method := strings.ToLower(r.Method)
	what := fmt.Sprintf("%s %s: %d", r.Method, path, a.status)
	responses := d.paths[path][method]["responses"].(map[string]any)
	response, _ := responses[fmt.Sprint(a.status)].(map[string]any)
	if response == nil {
		return fmt.Errorf("%s is not described: %.300s", what, a.body)
	}
	d.mu.Lock()
	d.seen[fmt.Sprint(method, " ", path, " ", a.status)] = true
	d.mu.Unlock()
	content, _ := response["content"].(map[string]any)
	if content == nil {
		if len(a.body) > 0 {
			return fmt.Errorf("%s has a body, and none is described: %.300s", what, a.body)
		}
		return nil
	}
	full := a.header.Get("Content-Type")
	short, _, err := mime.ParseMediaType(full)
	if err != nil {
		return fmt.Errorf("%s: media type %q: %w", what, full, err)
	}
	for _, t := range []string{full, short} {
		if content[t] != nil {
			return d.fits(what, "urn:openapi#/paths/"+pointer(path)+"/"+method+"/responses/"+fmt.Sprint(a.status)+"/content/"+pointer(t)+"/schema", short, a.body)
		}
	}
	return fmt.Errorf("%s: media type %q is not described", what, full)
}

// fits holds a body in JSON against its schema.
func (d *description) fits(what, schema, mediaType string, body []byte) error {
	if !strings.HasSuffix(mediaType, "/json") && !strings.HasSuffix(mediaType, "+json") || strings.Contains(mediaType, "schema") {
		return nil
	}
	if strings.Contains(what, "job.json") && mediaType == "application/json" {
		return nil // a file
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.schemas[schema] == nil {
		s, err := d.compiler.Compile(schema)
		if err != nil {
			return fmt.Errorf("%s: %w", what, err)
		}
		d.schemas[schema] = s
	}
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(body))
	if err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	if err := d.schemas[schema].Validate(v); err != nil {
		return fmt.Errorf("%s: %w\n%.1000s", what, err, body)
	}
	return nil
}

// pathOf returns the path of an operation that a request goes to.
func (d *description) pathOf(path string) (string, bool) {
	if d.paths[path] != nil {
		return path, true
	}
	parts := strings.Split(path, "/")
	for p := range d.paths {
		if matches(strings.Split(p, "/"), parts) {
			return p, true
		}
	}
	return "", false
}

func matches(pattern, parts []string) bool {
	if len(pattern) != len(parts) {
		return false
	}
	for i := range pattern {
		if pattern[i] != parts[i] && !strings.HasPrefix(pattern[i], "{") {
			return false
		}
	}
	return true
}

// pointer escapes a part of a JSON pointer in a fragment (RFC 6901).
func pointer(part string) string {
	return strings.NewReplacer("~", "~0", "/", "~1", "{", "%7B", "}", "%7D", " ", "%20").Replace(part)
}
