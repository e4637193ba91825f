package main

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"firstdrop/store/sqlite"
	"firstdrop/web"
	"firstdrop/web/ui"
)

// patience is how long a first visit may take until it asks for what is needed later.
const patience = 90 * time.Second

// firstVisit has a browser that was never here before open the screen, and counts what
// the server sends it, file by file, until everything is there that works without a
// network. The printer is fetched after that, and the room in 3-D when it is wanted.
func firstVisit() (all []Figure, err error) {
	if !isBuilt() {
		return nil, nil
	}
	folder, err := os.MkdirTemp("", "firstdrop-bench-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	s, err := sqlite.Open(context.Background(), filepath.Join(folder, "jobs.db"))
	if err != nil {
		return nil, err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, errors.Join(err, s.Close())
	}
	server := web.New(web.Options{Store: s, Files: ui.Files(), Version: "bench"}).HTTP()
	c := &counter{next: server.Handler, sent: map[string]int{}, late: make(chan struct{})}
	server.Handler = c
	go server.Serve(listener) //nolint:errcheck // ends when it is closed
	defer func() { err = errors.Join(err, server.Close(), s.Close()) }()
	if err := c.visited("http://"+listener.Addr().String(), folder); err != nil {
		return nil, err
	}
	return c.figures(), nil
}

// counter counts the bytes of what is answered, by path, until the printer is asked for.
type counter struct {
	next http.Handler
	mu   sync.Mutex
	sent map[string]int
	done bool
	late chan struct{}
}

func (c *counter) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	c.mu.Lock()
	if strings.HasSuffix(r.URL.Path, "/printer.filtered") && !c.done {
		c.done = true
		close(c.late)
	}
	c.mu.Unlock()
	c.next.ServeHTTP(&counted{w, c, r.URL.Path}, r)
}

// counted is an answer that is counted as it is written: compressed, without headers.
type counted struct {
	http.ResponseWriter
	c    *counter
	path string
}

// Unwrap lets the server reach what is behind.
func (w *counted) Unwrap() http.ResponseWriter { return w.ResponseWriter }

func (w *counted) Write(data []byte) (int, error) {
	w.c.mu.Lock()
	if !w.c.done {
		w.c.sent[w.path] += len(data)
	}
	w.c.mu.Unlock()
	return w.ResponseWriter.Write(data)
}

// visited opens an address in a browser without a past, until the printer is asked for.
func (c *counter) visited(address, folder string) error {
	browser := exec.Command("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run",
		"--remote-debugging-port=0", "--user-data-dir="+filepath.Join(folder, "browser"), address)
	if err := browser.Start(); err != nil {
		return err
	}
	defer func() {
		_ = browser.Process.Kill() // it has nothing to lose
		_ = browser.Wait()
	}()
	select {
	case <-c.late:
		return nil
	case <-time.After(patience):
		c.mu.Lock()
		defer c.mu.Unlock()
		return fmt.Errorf("a first visit is not over after %v: it has fetched %v", patience, slices.Sorted(maps.Keys(c.sent)))
	}
}

func (c *counter) figures() (all []Figure) {
	c.mu.Lock()
	defer c.mu.Unlock()
	sum := 0
	for _, path := range slices.Sorted(maps.Keys(c.sent)) {
		sum += c.sent[path]
		all = append(all, Figure{Name: "first visit: " + path, Value: float64(c.sent[path]) / 1000, Unit: "kB"})
	}
	return append(all, Figure{Name: "first visit: all, compressed", Value: float64(sum) / 1000, Unit: "kB", Goal: 1500})
}
