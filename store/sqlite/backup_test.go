package sqlite

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/store"
)

func backup(t *testing.T, s *Store) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "kept.db")
	if err := s.Backup(t.Context(), path, false); err != nil {
		t.Fatal(err)
	}
	return path
}

// A backup that is made while jobs are saved is one state of the store: whole,
// with every save that was acknowledged before it began.
func TestBackupWhileWriting(t *testing.T) {
	s := opened(t)
	const jobs = 4
	for n := range jobs {
		save(t, s, n, 0, "{}")
	}
	stop, stopped := make(chan bool), make(chan error)
	for n := range jobs {
		go func() {
			for v := int64(1); ; v++ {
				select {
				case <-stop:
					stopped <- nil
					return
				default:
				}
				if _, err := s.Push(t.Context(), id(n), v, []store.Revision{{Document: fmt.Appendf(nil, `{"n":%d}`, v+1)}}); err != nil {
					stopped <- err
					return
				}
			}
		}()
	}
	for range 5 {
		before := make([]int64, jobs)
		for n := range jobs {
			before[n], _ = documentOf(t, s, n)
		}
		kept := openAt(t, backup(t, s))
		for n := range jobs {
			v, d := documentOf(t, kept, n)
			if v < before[n] || v > 1 && d != fmt.Sprintf(`{"n":%d}`, v) {
				t.Errorf("job %d is at version %d with %s; version %d was saved before", n, v, d, before[n])
			}
			vs, err := kept.History(t.Context(), id(n), -1, 1<<30)
			if err != nil || int64(len(vs)) != v {
				t.Errorf("job %d has %d of %d versions, %v", n, len(vs), v, err)
			}
		}
	}
	close(stop)
	for range jobs {
		if err := <-stopped; err != nil {
			t.Error(err)
		}
	}
}

func TestBackupReplacesNothing(t *testing.T) {
	s := opened(t)
	path := filepath.Join(t.TempDir(), "kept.db")
	if err := os.WriteFile(path, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(t.Context(), path, false); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if data, _ := os.ReadFile(path); string(data) != "mine" {
		t.Errorf("the file is now %q", data)
	}
	if err := s.Backup(t.Context(), path, true); err != nil {
		t.Fatal(err)
	}
	if err := check(t.Context(), path); err != nil {
		t.Error(err)
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if err := s.Backup(t.Context(), filepath.Join(t.TempDir(), "no", "folder"), false); err == nil {
		t.Error("a backup went into a folder that is not there")
	}
}

// Paths that people type lead from where they are.
func TestRelativePaths(t *testing.T) {
	t.Chdir(t.TempDir())
	s := openAt(t, "jobs.db")
	save(t, s, 1, 0, "{}")
	if err := s.Backup(t.Context(), "kept.db", false); err != nil {
		t.Fatal(err)
	}
	if r, err := s.Restore(t.Context(), "kept.db", "restored"); err != nil || r.Same != 1 {
		t.Errorf("%+v, %v", r, err)
	}
}

func TestRestore(t *testing.T) {
	s := opened(t)
	save(t, s, 1, 0, `{"name":"same"}`)
	save(t, s, 2, 0, `{"name":"changed","n":1}`)
	save(t, s, 3, 0, `{"name":"erased"}`)
	save(t, s, 4, 0, `{"name":"binned"}`)
	if err := s.AddPicture(t.Context(), id(3), store.Picture{Name: "a.png", Bytes: []byte("a")}); err != nil {
		t.Fatal(err)
	}
	kept := backup(t, s)
	save(t, s, 2, 1, `{"name":"changed","n":2}`)
	save(t, s, 5, 0, `{"name":"begun since"}`)
	for _, n := range []int{3, 4} {
		if err := s.Discard(t.Context(), id(n)); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Erase(t.Context(), id(3)); err != nil {
		t.Fatal(err)
	}
	r, err := s.Restore(t.Context(), kept, "restored from a backup")
	if err != nil || r != (Restored{Added: 1, Changed: 2, Same: 1}) {
		t.Errorf("%+v, %v", r, err)
	}
	for n, want := range map[int]string{
		1: `1 {"name":"same"}`, 2: `3 {"name":"changed","n":1}`, 3: `1001 {"name":"erased"}`, 4: `2 {"name":"binned"}`, 5: `1 {"name":"begun since"}`,
	} {
		if v, d := documentOf(t, s, n); fmt.Sprint(v, " ", d) != want {
			t.Errorf("job %d is %d %s, want %s", n, v, d, want)
		}
	}
	all, err := s.List(t.Context())
	if err != nil || len(all) != 5 {
		t.Errorf("listed %v, %v", all, err)
	}
	if old, err := s.Version(t.Context(), id(2), 2); err != nil || string(old.Document) != `{"name":"changed","n":2}` {
		t.Errorf("what was changed since is gone: %v, %v", old, err)
	}
	if p, err := s.Picture(t.Context(), id(3), "a.png"); err != nil || string(p.Bytes) != "a" {
		t.Errorf("the picture is %v, %v", p, err)
	}
	// Once more changes nothing.
	if r, err = s.Restore(t.Context(), kept, "again"); err != nil || r != (Restored{Same: 4}) {
		t.Errorf("again: %+v, %v", r, err)
	}
}

// A new file counts on from beyond what any device may have seen.
func TestRestoreIntoNothing(t *testing.T) {
	s := opened(t)
	save(t, s, 1, 0, `{"n":1}`)
	kept := backup(t, s)
	save(t, s, 1, 1, `{"n":2}`) // a device knows version 2, and the backup does not
	fresh := opened(t)
	if r, err := fresh.Restore(t.Context(), kept, "restored"); err != nil || r.Added != 1 {
		t.Fatal(r, err)
	}
	if v, d := documentOf(t, fresh, 1); v <= 2 || d != `{"n":1}` {
		t.Errorf("version %d: %s", v, d)
	}
	_, err := fresh.Push(t.Context(), id(1), 2, []store.Revision{{Document: []byte(`{"n":3}`)}})
	if store.CodeOf(err) != store.Conflict {
		t.Errorf("the device's save gives %v", err)
	}
	if vs, err := fresh.History(t.Context(), id(1), -1, 10); err != nil || len(vs) != 2 {
		t.Errorf("history %v, %v", vs, err)
	}
}

func TestRestoreOfAnOlderFile(t *testing.T) {
	path := older(t, 1)
	s := opened(t)
	if r, err := s.Restore(t.Context(), path, "restored"); err != nil || r.Added != 1 {
		t.Errorf("%+v, %v", r, err)
	}
}

func TestRestoreRefuses(t *testing.T) {
	s := opened(t)
	save(t, s, 1, 0, "{}")
	sound := backup(t, s)
	data, err := os.ReadFile(sound)
	if err != nil {
		t.Fatal(err)
	}
	for i := 4096; i < len(data); i += 97 {
		data[i] ^= 0x5a
	}
	for name, data := range map[string][]byte{"damaged": data, "no database": []byte(strings.Repeat("no database ", 1000)), "cut short": data[:5000]} {
		path := filepath.Join(t.TempDir(), "kept.db")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if r, err := s.Restore(t.Context(), path, "restored"); err == nil {
			t.Errorf("%s: %+v", name, r)
		}
	}
	if _, err := s.Restore(t.Context(), filepath.Join(t.TempDir(), "none"), "restored"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	if v, d := documentOf(t, s, 1); v != 1 || d != "{}" {
		t.Errorf("version %d: %s", v, d)
	}
}
