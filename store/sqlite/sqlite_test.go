package sqlite

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/store"
	"firstdrop/store/storetest"
)

// opened opens a store in a folder whose name has whatever makes trouble in URIs.
func opened(t *testing.T) *Store {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "a folder? #1 100%")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	return openAt(t, filepath.Join(folder, "jobs.db"))
}

func openAt(t *testing.T, path string) *Store {
	t.Helper()
	s, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

func TestStore(t *testing.T) {
	storetest.Run(t, func(t *testing.T) store.Store { return opened(t) })
}

func id(n int) store.ID { return store.ID(fmt.Sprintf("01890a5d-ac96-774b-bcce-%012x", n)) }

func save(t *testing.T, s store.Store, n int, base int64, document string) store.Summary {
	t.Helper()
	sum, err := s.Push(t.Context(), id(n), base, []store.Revision{{Document: []byte(document), Label: "saved"}})
	if err != nil {
		t.Fatal(err)
	}
	return sum
}

func documentOf(t *testing.T, s store.Store, n int) (version int64, document string) {
	t.Helper()
	j, err := s.Get(t.Context(), id(n))
	if err != nil {
		t.Fatal(err)
	}
	return j.Version, string(j.Document)
}

// What the promise about loss of power stands on, asked of the database itself.
func TestEveryConnectionSyncs(t *testing.T) {
	s := opened(t)
	for pragma, want := range map[string]string{"journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "busy_timeout": "10000"} {
		var got string
		if err := s.write.QueryRow("PRAGMA " + pragma).Scan(&got); err != nil || got != want {
			t.Errorf("%s is %q, %v; want %q", pragma, got, err, want)
		}
	}
	if _, err := s.read.Exec("DELETE FROM job"); err == nil {
		t.Error("a reader can write")
	}
}

func TestFileIsPrivate(t *testing.T) {
	s := opened(t)
	save(t, s, 1, 0, "{}")
	files, err := filepath.Glob(s.Path() + "*")
	if err != nil || len(files) < 2 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		if info, err := os.Stat(name); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %v, %v", name, info.Mode(), err)
		}
	}
}

func TestJobsStayWhenClosed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	save(t, s, 1, 0, `{"name":"Hall"}`)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if v, d := documentOf(t, openAt(t, path), 1); v != 1 || d != `{"name":"Hall"}` {
		t.Errorf("version %d: %s", v, d)
	}
}

// Two programs may have the file open: neither loses what the other saves.
func TestTwoPrograms(t *testing.T) {
	a := opened(t)
	b := openAt(t, a.Path())
	for i := range int64(10) {
		save(t, []*Store{a, b}[i%2], 1, i, fmt.Sprintf(`{"n":%d}`, i))
	}
	if v, d := documentOf(t, a, 1); v != 10 || d != `{"n":9}` {
		t.Errorf("version %d: %s", v, d)
	}
}

func TestOpenRefuses(t *testing.T) {
	folder := t.TempDir()
	for name, make := range map[string]func(path string) error{
		"no database": func(path string) error {
			return os.WriteFile(path, []byte(strings.Repeat("not a database ", 100)), 0o600)
		},
		"a folder": func(path string) error { return os.Mkdir(path, 0o700) },
		"version 99 of it": func(path string) error {
			s, err := Open(context.Background(), path)
			if err == nil {
				_, err = s.write.Exec("PRAGMA user_version = 99")
			}
			return err
		},
	} {
		path := filepath.Join(folder, strings.ReplaceAll(name, " ", "-"))
		if err := make(path); err != nil {
			t.Fatal(err)
		}
		s, err := Open(t.Context(), path)
		if err == nil {
			t.Errorf("%s was opened: %v", name, s.Close())
			continue
		}
		if !strings.Contains(err.Error(), path) {
			t.Errorf("%s: the message %q does not name the file", name, err)
		}
	}
}

// A cancelled save is not there, and the store goes on.
func TestCancelled(t *testing.T) {
	s := opened(t)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := s.Push(ctx, id(1), 0, []store.Revision{{Document: []byte("{}")}}); err == nil {
		t.Error("a cancelled save succeeded")
	}
	if sum := save(t, s, 1, 0, "{}"); sum.Version != 1 {
		t.Errorf("after it the save is version %d", sum.Version)
	}
}
