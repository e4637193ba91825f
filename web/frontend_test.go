package web

import (
	"bytes"
	"compress/gzip"
	"io"
	"testing"
)

func TestFrontEnd(t *testing.T) {
	c := newClient(t, nil)
	for _, r := range []struct {
		path, accepts       string
		status              int
		mediaType, encoding string
		caching, body       string
	}{
		{"/", "", 200, "text/html; charset=utf-8", "", "no-cache", "<!doctype html><title>Firstdrop</title>"},
		{"/jobs/1/survey", "", 200, "text/html; charset=utf-8", "", "no-cache", "<!doctype html><title>Firstdrop</title>"},
		{"/index.html", "", 200, "text/html; charset=utf-8", "", "no-cache", "<!doctype html><title>Firstdrop</title>"},
		{"/service-worker.js", "gzip, br", 200, "text/javascript; charset=utf-8", "", "no-cache", "// a worker"},
		{"/assets/p-77aa.wasm", "gzip, br", 200, "application/wasm", "br", "public, max-age=31536000, immutable", "as brotli"},
		{"/assets/p-77aa.wasm", "gzip, br;q=0", 200, "application/wasm", "", "public, max-age=31536000, immutable", "\x00asm plain"},
		{"/assets/p-77aa.wasm", "", 200, "application/wasm", "", "public, max-age=31536000, immutable", "\x00asm plain"},
		{"/assets/main-3f2a91.js", "gzip;q=0.5", 200, "text/javascript; charset=utf-8", "gzip", "public, max-age=31536000, immutable", ""},
		{"/assets/old-0000.js", "", 404, "application/problem+json", "", "", ""},
		{"/favicon.ico", "", 404, "application/problem+json", "", "", ""},
		{"/assets/p-77aa.wasm.br", "", 404, "application/problem+json", "", "", ""},
		{"/api/nothing", "", 404, "application/problem+json", "", "no-store", ""},
	} {
		a := c.ask("GET", r.path, nil, "Accept-Encoding", r.accepts)
		h := a.header
		if a.status != r.status || h.Get("Content-Type") != r.mediaType || h.Get("Content-Encoding") != r.encoding || h.Get("Cache-Control") != r.caching || r.body != "" && string(a.body) != r.body {
			t.Errorf("%s for %q: %d %v %.60q", r.path, r.accepts, a.status, h, a.body)
		}
		if tag := h.Get("ETag"); r.status == 200 {
			if again := c.ask("GET", r.path, nil, "Accept-Encoding", r.accepts, "If-None-Match", tag); again.status != 304 || len(again.body) > 0 {
				t.Errorf("%s asked for again: %d", r.path, again.status)
			}
		}
	}
	a := c.want(200, "GET", "/assets/main-3f2a91.js", nil, "Accept-Encoding", "gzip")
	z, err := gzip.NewReader(bytes.NewReader(a.body))
	if err != nil {
		t.Fatal(err)
	}
	if plain, err := io.ReadAll(z); err != nil || !bytes.Equal(plain, sampleFiles["assets/main-3f2a91.js"].Data) {
		t.Errorf("%v, %.60q", err, plain)
	}
	c.want(405, "POST", "/", "{}")
	c.want(200, "HEAD", "/", nil)
}

func TestNoFrontEnd(t *testing.T) {
	c := newClient(t, func(o *Options) { o.Files = nil })
	c.want(404, "GET", "/", nil)
	c.want(200, "GET", "/api/jobs", nil)
}
