package main

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"time"

	"firstdrop/examples"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/store/sqlite"
	"firstdrop/web"
)

// How much is asked of the server, and by how many at once.
const (
	clients     = 8
	savesOfEach = 150
	loadsOfEach = 500
	jobBytes    = 50_000
)

// serving measures how fast jobs are saved and loaded over HTTP, and how fast
// SQLite alone does the same: a row with the document, synced each time.
func serving() (all []Figure, err error) {
	folder, err := os.MkdirTemp("", "firstdrop-bench-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	document, err := largeJob()
	if err != nil {
		return nil, err
	}
	path := filepath.Join(folder, "jobs.db")
	over, err := overHTTP(path, document)
	if err != nil {
		return nil, err
	}
	raw, err := rawSQLite(filepath.Join(folder, "raw.db"), document)
	if err != nil {
		return nil, err
	}
	size, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	for i, what := range []string{"save", "load"} {
		name := fmt.Sprintf("serve: %s jobs of %d kB, %d clients", what, len(document)/1000, clients)
		h, r := over[i], raw[i]
		all = append(
			all,
			Figure{Name: name, Value: h.rate(), Unit: "/s"},
			Figure{Name: name + ", p99", Value: h.share(0.99), Unit: "ms"},
			Figure{Name: name + ", failed", Value: float64(h.failed), Unit: "", Met: new(h.failed == 0)},
			Figure{Name: name + ", SQLite alone", Value: r.rate(), Unit: "/s"},
			Figure{Name: name + ", SQLite alone, p99", Value: r.share(0.99), Unit: "ms"},
		)
	}
	perVersion := float64(size.Size()) / (clients * (savesOfEach + 1))
	return append(all, Figure{Name: "serve: file per kept version of 50 kB", Value: perVersion / 1000, Unit: "kB"}), nil
}

// largeJob is a sample job with so many walls, all of other sizes, that it has 50 kB.
func largeJob() ([]byte, error) {
	text, _ := examples.Named("door-and-windows")
	j, err := yaml.Read("job", text)
	if err != nil {
		return nil, err
	}
	var compact bytes.Buffer
	for walls, n := j.Room.Walls, 1; compact.Len() < jobBytes; n++ {
		for _, w := range walls {
			w.Name = fmt.Sprintf("%s of room %d", w.Name, n)
			w.Width += measure.Length(n*37) * measure.Millimetre
			w.Openings = slices.Clone(w.Openings)
			for i := range w.Openings {
				w.Openings[i].Left = new(*w.Openings[i].Left + measure.Length(n*13)*measure.Millimetre)
			}
			j.Room.Walls = append(j.Room.Walls, w)
		}
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			return nil, err
		}
		compact.Reset()
		if err := json.Compact(&compact, b.Bytes()); err != nil {
			return nil, err
		}
	}
	return compact.Bytes(), nil
}

// calls are how long each of many took.
type calls struct {
	took   []time.Duration
	whole  time.Duration
	failed int
}

func (t *calls) rate() float64 { return float64(len(t.took)) / t.whole.Seconds() }

// share returns the time within which a share of the calls was done, in
// milliseconds.
func (t *calls) share(of float64) float64 {
	slices.Sort(t.took)
	return float64(t.took[int(of*float64(len(t.took)-1))].Microseconds()) / 1000
}

// together has every client do something so often, and times each.
func together(each int, do func(client, i int) error) *calls {
	t := &calls{}
	var mu sync.Mutex
	var all sync.WaitGroup
	begun := time.Now()
	for c := range clients {
		all.Go(func() {
			for i := range each {
				from := time.Now()
				err := do(c, i)
				took := time.Since(from)
				mu.Lock()
				t.took = append(t.took, took)
				if err != nil {
					t.failed++
				}
				mu.Unlock()
			}
		})
	}
	all.Wait()
	t.whole = time.Since(begun)
	return t
}

// overHTTP times saving and loading through a server.
func overHTTP(path string, document []byte) (saveAndLoad [2]*calls, err error) {
	s, err := sqlite.Open(context.Background(), path)
	if err != nil {
		return saveAndLoad, err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return saveAndLoad, errors.Join(err, s.Close())
	}
	server := web.New(web.Options{Store: s, Version: "bench"}).HTTP()
	go server.Serve(listener) //nolint:errcheck // ends when it is closed
	defer func() { err = errors.Join(err, server.Close(), s.Close()) }()
	asker := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}}
	base := "http://" + listener.Addr().String() + "/api/jobs/"
	save := func(c, version int) error {
		body := fmt.Appendf(nil, `{"label": "version %d", "document": %s}`, version+1, document)
		if version == 0 {
			return ask(asker, "PUT", base+benchID(c), body, "If-None-Match", "*")
		}
		return ask(asker, "PUT", base+benchID(c), body, "If-Match", fmt.Sprintf(`"%d"`, version))
	}
	if begun := together(1, func(c, _ int) error { return save(c, 0) }); begun.failed > 0 {
		return saveAndLoad, errors.New("the jobs cannot be begun")
	}
	saveAndLoad[0] = together(savesOfEach, func(c, i int) error { return save(c, i+1) })
	saveAndLoad[1] = together(loadsOfEach, func(c, _ int) error { return ask(asker, "GET", base+benchID(c), nil) })
	return saveAndLoad, nil
}

func benchID(n int) string { return fmt.Sprintf("01890a5d-ac96-774b-bcce-%012x", n) }

// ask sends a request and reads the answer, which must be a good one.
func ask(asker *http.Client, method, url string, body []byte, headers ...string) error {
	r, err := http.NewRequest(method, url, bytes.NewReader(body))
	if err != nil {
		return err
	}
	r.Header.Set("Content-Type", "application/json")
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	response, err := asker.Do(r)
	if err != nil {
		return err
	}
	defer response.Body.Close()
	if _, err := io.Copy(io.Discard, response.Body); err != nil {
		return err
	}
	if response.StatusCode > 299 {
		return fmt.Errorf("%s: %s", url, response.Status)
	}
	return nil
}

// rawSQLite times the least that the same takes: one row written and synced, one
// row read.
func rawSQLite(path string, document []byte) (saveAndLoad [2]*calls, err error) {
	pragmas := "?_txlock=immediate&_pragma=busy_timeout(10000)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)"
	db, err := sql.Open("sqlite", "file:"+path+pragmas)
	if err != nil {
		return saveAndLoad, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	db.SetMaxOpenConns(1)
	if _, err := db.Exec("CREATE TABLE job (id TEXT, version INTEGER, document BLOB, PRIMARY KEY (id, version))"); err != nil {
		return saveAndLoad, err
	}
	saveAndLoad[0] = together(savesOfEach, func(c, i int) error {
		_, err := db.Exec("INSERT INTO job VALUES (?, ?, ?)", benchID(c), i, document)
		return err
	})
	db.SetMaxOpenConns(4)
	saveAndLoad[1] = together(loadsOfEach, func(c, i int) error {
		var read []byte
		return db.QueryRow("SELECT document FROM job WHERE id = ? AND version = ?", benchID(c), savesOfEach-1).Scan(&read)
	})
	if saveAndLoad[0].failed+saveAndLoad[1].failed > 0 {
		return saveAndLoad, errors.New("SQLite alone failed")
	}
	return saveAndLoad, nil
}
