package web

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"strings"
	"sync"
)

// frontEnd hands out the files of the front end. All of them are read when the
// server starts: the path of a request is looked up among their names, and never
// becomes one.
type frontEnd struct{ files map[string]*asset }

// asset is one file in the encodings that there are.
type asset struct {
	mediaType string
	tag       string // of what it holds
	lasting   bool   // its name changes with what it holds
	plain     []byte
	br        []byte // nil: it was not made
	gz        func() []byte
}

func newFrontEnd(files fs.FS) *frontEnd {
	f := &frontEnd{map[string]*asset{}}
	if files == nil {
		return f
	}
	// What cannot be read is not handed out.
	_ = fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(name) == ".br" || strings.HasPrefix(path.Base(name), ".") {
			return nil
		}
		if data, err := fs.ReadFile(files, name); err == nil {
			f.files[name] = newAsset(files, name, data)
		}
		return nil
	})
	return f
}

func newAsset(files fs.FS, name string, data []byte) *asset {
	sum := sha256.Sum256(data)
	a := &asset{mediaType: typeOf(name), tag: `"` + hex.EncodeToString(sum[:12]) + `"`, lasting: strings.HasPrefix(name, "assets/"), plain: data}
	if br, err := fs.ReadFile(files, name+".br"); err == nil {
		a.br = br
	}
	a.gz = sync.OnceValue(func() []byte { return gzipped(data) })
	return a
}

// types are those that the system may not know, or know otherwise.
var types = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".json": "application/json",
	".wasm": "application/wasm", ".svg": "image/svg+xml", ".png": "image/png", ".ico": "image/x-icon", ".woff2": "font/woff2",
	".webmanifest": "application/manifest+json", ".txt": "text/plain; charset=utf-8", ".map": "application/json",
}

func typeOf(name string) string {
	if t := types[path.Ext(name)]; t != "" {
		return t
	}
	if t := mime.TypeByExtension(path.Ext(name)); t != "" {
		return t
	}
	return "application/octet-stream"
}

// gzipped returns the data in gzip, or nothing when that makes it no smaller.
func gzipped(data []byte) []byte {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	_, _ = w.Write(data) // a buffer takes everything
	_ = w.Close()
	if b.Len() >= len(data) {
		return nil
	}
	return b.Bytes()
}

// ServeHTTP answers with a file. A path that names none, and no file's name either,
// is one of the front end's own places, and gets its page.
func (f *frontEnd) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		refuse(w, http.StatusMethodNotAllowed, "wrong_method", "this can only be read")
		return
	}
	name := strings.TrimPrefix(r.URL.Path, "/")
	a := f.files[name]
	if a == nil && !strings.Contains(name, ".") {
		if a = f.files["index.html"]; a == nil {
			refuse(w, http.StatusNotFound, "no_front_end", "this program was built without its front end; make build builds it. /api works")
			return
		}
	}
	if a == nil {
		refuse(w, http.StatusNotFound, "not_found", "there is no such file")
		return
	}
	a.serve(w, r)
}

func (a *asset) serve(w http.ResponseWriter, r *http.Request) {
	data, encoding := a.plain, ""
	accepted := r.Header.Get("Accept-Encoding")
	if accepts(accepted, "br") && a.br != nil {
		data, encoding = a.br, "br"
	} else if accepts(accepted, "gzip") {
		if gz := a.gz(); gz != nil {
			data, encoding = gz, "gzip"
		}
	}
	h := w.Header()
	h.Set("Content-Type", a.mediaType)
	h.Set("Vary", "Accept-Encoding")
	h.Set("Cache-Control", "no-cache") // asked for again each time
	if a.lasting {
		h.Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	tag := a.tag
	if encoding != "" {
		h.Set("Content-Encoding", encoding)
		tag = strings.TrimSuffix(tag, `"`) + "-" + encoding + `"`
	}
	h.Set("ETag", tag)
	if r.Header.Get("If-None-Match") == tag {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	if r.Method == http.MethodHead {
		return
	}
	_, _ = w.Write(data) // whoever has gone needs no answer
}

// accepts reports whether a list of encodings holds one, and not with weight 0.
func accepts(list, encoding string) bool {
	for item := range strings.SplitSeq(list, ",") {
		name, weight, isWeighed := strings.Cut(item, ";")
		if strings.EqualFold(strings.TrimSpace(name), encoding) {
			q := strings.TrimPrefix(strings.TrimSpace(weight), "q=")
			return !isWeighed || strings.Trim(q, "0.") != ""
		}
	}
	return false
}
