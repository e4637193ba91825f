package web

import (
	"bytes"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"net/http"
	"strings"
	"testing"

	"firstdrop/store"
)

// A page elsewhere whose name leads to this machine must not be answered.
func TestHost(t *testing.T) {
	c := newClient(t, func(o *Options) { o.Hosts = []string{"van.example"} })
	for host, isOurs := range map[string]bool{
		"localhost": true, "localhost:8080": true, "LOCALHOST": true, "localhost.": true, "127.0.0.1": true, "127.0.0.1:80": true, "127.9.9.9": true, "[::1]": true, "[::1]:99": true,
		"van.example": true, "Van.Example:8443": true,
		"evil.example": false, "localhost.evil.example": false, "127.0.0.1.evil.example": false, "192.168.1.5": false, "10.0.0.1:80": false,
		"0.0.0.0": false, "2130706433": false, "notlocalhost": false, "van.example.evil.example": false,
	} {
		for _, path := range []string{"/", "/api/jobs", "/healthz", "/assets/main-3f2a91.js"} {
			a := c.ask("GET", path, nil, "Host", host)
			if isOurs && a.status != 200 || !isOurs && (a.status != 421 || bytes.Contains(a.body, []byte("jobs"))) {
				t.Errorf("Host %s, %s: %d %.100s", host, path, a.status, a.body)
			}
		}
	}
	reachable := newClient(t, func(o *Options) { o.Reachable, o.Token = true, "secret" })
	for host, status := range map[string]int{"192.168.1.5:8080": 200, "evil.example": 421} {
		reachable.want(status, "GET", "/", nil, "Host", host)
	}
}

func TestOtherOrigins(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, "{}")
	job := "/api/jobs/" + jobID(1)
	own := "http://" + strings.TrimPrefix(c.base, "http://")
	for _, r := range []struct {
		method, path string
		headers      []string
		isLet        bool
	}{
		{"PUT", job, []string{"Sec-Fetch-Site", "cross-site"}, false},
		{"PUT", job, []string{"Sec-Fetch-Site", "same-site"}, false},
		{"PUT", job, []string{"Origin", "https://evil.example"}, false},
		{"PUT", job, []string{"Origin", "null"}, false},
		{"DELETE", job, []string{"Sec-Fetch-Site", "cross-site"}, false},
		{"POST", "/api/plan", []string{"Origin", "http://localhost:1"}, false},
		{"POST", "/api/plan", []string{"Sec-Fetch-Site", "cross-site", "Content-Type", "text/plain"}, false},
		{"GET", job, []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors"}, false},
		{"GET", job + "/wall.svg", []string{"Sec-Fetch-Site", "same-site"}, false},
		{"GET", job, []string{"Sec-Fetch-Site", "same-origin"}, true},
		{"GET", job, []string{"Sec-Fetch-Site", "none"}, true},
		{"GET", "/", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate"}, true},
		{"PUT", job, []string{"Sec-Fetch-Site", "same-origin"}, true},
		{"PUT", job, []string{"Origin", own}, true},
		{"PUT", job, nil, true}, // a program
	} {
		var body any
		if r.method != "GET" && r.method != "DELETE" {
			body = `{"document": {}}`
		}
		a := c.ask(r.method, r.path, body, r.headers...)
		if isRefused := a.status == 403; isRefused == r.isLet {
			t.Errorf("%s %s with %v: %d %.200s", r.method, r.path, r.headers, a.status, a.body)
		}
	}
}

func TestToken(t *testing.T) {
	c := newClient(t, func(o *Options) { o.Token, o.Secure = "a-secret", true })
	c.want(200, "GET", "/", nil)
	c.want(200, "GET", "/healthz", nil)
	for _, headers := range [][]string{nil, {"Authorization", "Bearer wrong"}, {"Authorization", "a-secret"}, {"Cookie", cookieName + "=wrong"}, {"Cookie", cookieName + "="}} {
		if a := c.want(401, "GET", "/api/jobs", nil, headers...); a.header.Get("WWW-Authenticate") == "" {
			t.Error("it is not told how")
		}
		c.want(401, "POST", "/api/plan", "{}", headers...)
	}
	c.want(200, "GET", "/api/jobs", nil, "Authorization", "Bearer a-secret")
	c.want(401, "GET", "/api/enter?token=wrong", nil)
	a := c.want(303, "GET", "/api/enter?token=a-secret", nil)
	cookie, err := http.ParseSetCookie(a.header.Get("Set-Cookie"))
	if err != nil || !cookie.HttpOnly || !cookie.Secure || cookie.SameSite != http.SameSiteLaxMode || a.header.Get("Location") != "/" {
		t.Errorf("%v %v", a.header, err)
	}
	c.want(200, "GET", "/api/jobs", nil, "Cookie", cookieName+"="+cookie.Value)
}

func TestHeaders(t *testing.T) {
	c := newClient(t, nil)
	for _, path := range []string{"/", "/api/jobs", "/api/nothing", "/nothing.js", "/survey/1"} {
		a := c.ask("GET", path, nil)
		for name, want := range map[string]string{
			"Content-Security-Policy": "default-src 'none'; script-src 'self' 'wasm-unsafe-eval';", "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer",
			"Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin", "Permissions-Policy": "camera=()",
		} {
			if got := a.header.Values(name); len(got) != 1 || !strings.HasPrefix(got[0], want) {
				t.Errorf("%s: %s is %q", path, name, got)
			}
		}
		if p := a.header.Get("Content-Security-Policy"); strings.Contains(p, "unsafe-inline") || strings.Contains(p, "'unsafe-eval'") || strings.Contains(p, "http") {
			t.Errorf("%s may %s", path, p)
		}
	}
}

// Paths lead to nothing but what there is by name.
func TestPaths(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, "{}")
	for _, path := range []string{
		"/../etc/passwd", "/..%2f..%2fetc%2fpasswd", "/assets/..%2f..%2f..%2fetc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/assets/../../server.go", "/.keep", "/assets/.%00.js",
		"/api/jobs/..%2f..%2fjobs.db", "/api/jobs/" + jobID(1) + "/pictures/..%2f..%2fjobs.db", "/api/examples/..%2fexamples.go", "/api/examples/%2e%2e%2fgo.mod", "/api/examples/attic.yaml%00",
		"/C:/Windows/win.ini", `/..%5c..%5cjobs.db`, "/api//jobs", "//evil.example/x.js",
	} {
		a := c.ask("GET", path, nil)
		if a.status == 200 || a.status >= 500 || bytes.Contains(a.body, []byte("root:")) {
			t.Errorf("%s: %d %.100q", path, a.status, a.body)
		}
		if to := a.header.Get("Location"); strings.HasPrefix(to, "//") || strings.Contains(to, "://") {
			t.Errorf("%s leads to %s", path, to)
		}
	}
}

func pictureFile(t *testing.T, write func(b *bytes.Buffer, m image.Image) error, w, h int) []byte {
	t.Helper()
	m := image.NewPaletted(image.Rect(0, 0, w, h), color.Palette{color.White, color.RGBA{200, 30, 30, 255}})
	for i := range m.Pix {
		m.Pix[i] = uint8(i/3) % 2
	}
	var b bytes.Buffer
	if err := write(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The description for programs names every kind of picture that is taken.
func TestPictureKindsAreDescribed(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, "{}")
	api := into[struct {
		Paths map[string]map[string]struct {
			RequestBody struct {
				Content map[string]any `json:"content"`
			} `json:"requestBody"`
		} `json:"paths"`
	}](t, c.want(200, "GET", "/api/openapi.json", nil))
	taken := api.Paths["/api/jobs/{id}/pictures"]["post"].RequestBody.Content
	for _, kind := range []string{"image/png", "image/jpeg", "image/gif", "image/svg+xml"} {
		if taken[kind] == nil {
			t.Errorf("%s is taken, and not described", kind)
		}
	}
	drawing := `<svg xmlns="http://www.w3.org/2000/svg" width="10" height="20"><rect width="10" height="5"/></svg>`
	if p := into[PictureBody](t, c.want(201, "POST", "/api/jobs/"+jobID(1)+"/pictures", drawing, "Content-Type", "image/svg+xml")); p.Type != "image/png" {
		t.Errorf("a drawing is kept as %+v", p)
	}
}

func TestPictures(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, "{}")
	url := "/api/jobs/" + jobID(1) + "/pictures"
	for kind, write := range map[string]func(b *bytes.Buffer, m image.Image) error{
		"image/png":  func(b *bytes.Buffer, m image.Image) error { return png.Encode(b, m) },
		"image/jpeg": func(b *bytes.Buffer, m image.Image) error { return jpeg.Encode(b, m, nil) },
		"image/gif":  func(b *bytes.Buffer, m image.Image) error { return gif.Encode(b, m, nil) },
	} {
		sent := append(pictureFile(t, write, 30, 20), []byte("<script>alert(1)</script>")...)
		p := into[PictureBody](t, c.want(201, "POST", url, sent, "Content-Type", kind))
		if again := into[PictureBody](t, c.want(201, "POST", url, sent, "Content-Type", kind)); again != p {
			t.Errorf("%s: sent again it is %+v, and was %+v", kind, again, p)
		}
		a := c.want(200, "GET", url+"/"+p.Name, nil)
		if p.Width != 30 || p.Height != 20 || len(a.body) != p.Size || a.header.Get("Content-Type") != p.Type || !strings.HasPrefix(p.Type, "image/") {
			t.Errorf("%s: %+v, %v", kind, p, a.header)
		}
		if bytes.Contains(a.body, []byte("script")) || http.DetectContentType(a.body) != p.Type {
			t.Errorf("%s: what is handed out is not only a picture", kind)
		}
		if policy := a.header.Get("Content-Security-Policy"); policy != inertPolicy {
			t.Errorf("%s: it may %s", kind, policy)
		}
	}
	if l := into[struct{ Pictures []PictureBody }](t, c.want(200, "GET", url, nil)).Pictures; len(l) != 3 && len(l) != 2 {
		t.Errorf("listed %+v", l) // the GIF and the PNG show the same
	}
	c.want(404, "GET", url+"/"+strings.Repeat("0", 64)+".png", nil)
	c.want(404, "POST", "/api/jobs/"+jobID(2)+"/pictures", pictureFile(t, func(b *bytes.Buffer, m image.Image) error { return png.Encode(b, m) }, 2, 2))
}

// A small file can say that it shows a huge picture; it is believed and refused,
// without being read.
func TestPicturesThatAreNone(t *testing.T) {
	c := newClient(t, nil)
	c.begin(1, "{}")
	url := "/api/jobs/" + jobID(1) + "/pictures"
	small := pictureFile(t, func(b *bytes.Buffer, m image.Image) error { return png.Encode(b, m) }, 4, 4)
	large := pictureFile(t, func(b *bytes.Buffer, m image.Image) error { return gif.Encode(b, m, nil) }, 4001, 4000)
	huge := bytes.Clone(small)
	copy(huge[16:24], []byte{0, 0, 0xff, 0xff, 0, 0, 0xff, 0xff}) // width and height in the IHDR chunk
	for name, r := range map[string]struct {
		data   []byte
		status int
	}{
		"an SVG drawing":   {[]byte(`<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><script>alert(1)</script></svg>`), 422},
		"a web page":       {[]byte(`<!doctype html><script>alert(1)</script>`), 422},
		"nothing":          {[]byte{}, 422},
		"half a picture":   {small[:len(small)/2], 422},
		"a huge picture":   {huge, 422},
		"a large picture":  {large, 422},
		"a huge file":      {append(bytes.Clone(small), make([]byte, store.MostPicture)...), 413},
		"a script as JPEG": {[]byte("\xff\xd8\xff<script>alert(1)</script>"), 422},
	} {
		if a := c.ask("POST", url, r.data, "Content-Type", "image/png"); a.status != r.status && !(len(r.data) == 0 && a.status == 400) {
			t.Errorf("%s: %d %.200s", name, a.status, a.body)
		}
	}
	if l := into[struct{ Pictures []PictureBody }](t, c.want(200, "GET", url, nil)).Pictures; len(l) > 0 {
		t.Errorf("kept %+v", l)
	}
}

// A sheet shows the picture that the document names, and says which one is not
// there.
func TestSheetsWithPictures(t *testing.T) {
	c := newClient(t, nil)
	text := example(t, "door-and-windows")
	if !strings.Contains(text, `"picture": "tulips"`) {
		t.Fatal("the example has no picture")
	}
	c.begin(1, text)
	url := "/api/jobs/" + jobID(1)
	p := into[PictureBody](t, c.want(201, "POST", url+"/pictures", pictureFile(t, func(b *bytes.Buffer, m image.Image) error { return png.Encode(b, m) }, 52, 53), "Content-Type", "image/png"))
	named := strings.Replace(text, `"picture": "tulips"`, `"picture": "`+p.Name+`"`, 1)
	c.want(200, "PUT", url, `{"document": `+named+`}`, "If-Match", `"1"`)
	isPDF(t, c.want(200, "GET", url+"/sheets.pdf?sheets=hanging", nil).body)
	missing := into[Problem](t, c.want(422, "POST", "/api/sheets.pdf?sheets=hanging", named))
	if len(missing.Errors) != 1 || missing.Errors[0].Path != "papers[0].picture" {
		t.Errorf("%+v", missing)
	}
}
