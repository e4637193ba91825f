package sqlite

import (
	"os"
	"path/filepath"
	"testing"

	"firstdrop/store"
)

// older makes a file of an earlier version with a job of two versions in it, as
// that version of the program wrote it.
func older(t *testing.T, version int) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "jobs.db")
	all, err := steps()
	if err != nil {
		t.Fatal(err)
	}
	db, err := open(path, "immediate")
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range all[:version] {
		if _, err := db.Exec(step); err != nil {
			t.Fatal(err)
		}
	}
	for _, text := range []string{
		"PRAGMA user_version = 1",
		"INSERT INTO job (id, name, version, begun, saved) VALUES ('" + string(id(1)) + "', 'Hall', 2, 1, 2)",
	} {
		if _, err := db.Exec(text); err != nil {
			t.Fatal(err)
		}
	}
	for v, d := range []string{`{"name":"Hall","n":1}`, `{"name":"Hall","n":2}`} {
		_, err := db.Exec(`INSERT INTO revision (job, version, made, saved, name, label, size, document) VALUES (?, ?, 1, 2, 'Hall', 'x', ?, ?)`,
			id(1), v+1, len(d), deflate([]byte(d)))
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestOlderFileIsBroughtUpToDate(t *testing.T) {
	path := older(t, 1)
	s := openAt(t, path)
	if v, d := documentOf(t, s, 1); v != 2 || d != `{"name":"Hall","n":2}` {
		t.Errorf("version %d: %s", v, d)
	}
	if err := s.AddPicture(t.Context(), id(1), store.Picture{Name: "a.png", Bytes: []byte("x")}); err != nil {
		t.Error(err)
	}
	if _, err := s.Tick(t.Context(), id(1), []store.Tick{{Key: "cut|1", On: true, Turn: 1}}); err != nil {
		t.Error(err)
	}
	if v, err := versionOf(t.Context(), s.write); err != nil || v != 4 {
		t.Errorf("the file is of version %d, %v", v, err)
	}
	// The copy is as the file was, and whole.
	kept := keptName(path, 1)
	if err := check(t.Context(), kept); err != nil {
		t.Fatal(err)
	}
	db, err := open(kept, "deferred")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if v, err := versionOf(t.Context(), db); err != nil || v != 1 {
		t.Errorf("the copy is of version %d, %v", v, err)
	}
	var n int
	if err := db.QueryRow("SELECT count(*) FROM revision").Scan(&n); err != nil || n != 2 {
		t.Errorf("the copy has %d versions, %v", n, err)
	}
}

func TestAnEarlierCopyStays(t *testing.T) {
	path := older(t, 1)
	if err := os.WriteFile(keptName(path, 1), []byte("an earlier copy"), 0o600); err != nil {
		t.Fatal(err)
	}
	openAt(t, path)
	if data, err := os.ReadFile(keptName(path, 1)); err != nil || string(data) != "an earlier copy" {
		t.Errorf("the copy that was there is now %q, %v", data, err)
	}
}

// Two programs that open an old file at once both find it brought up to date.
func TestOpenedAtOnce(t *testing.T) {
	path := older(t, 1)
	errs := make(chan error)
	for range 4 {
		go func() {
			s, err := Open(t.Context(), path)
			if err == nil {
				err = s.Close()
			}
			errs <- err
		}()
	}
	for range 4 {
		if err := <-errs; err != nil {
			t.Error(err)
		}
	}
}

// Ticks that were made with a time count on from it, as devices do that have kept them so.
func TestTicksWithATimeCountOn(t *testing.T) {
	path := older(t, 1)
	s := openAt(t, path)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	db, err := open(path, "immediate")
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"ALTER TABLE tick RENAME COLUMN turn TO at",
		"INSERT INTO tick (job, key, yes, at) VALUES ('" + string(id(1)) + "', 'cut|1', 1, 1767355200000)",
		"PRAGMA user_version = 3",
	} {
		if _, err := db.Exec(text); err != nil {
			t.Fatal(err)
		}
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	s = openAt(t, path)
	for _, c := range []struct {
		tick store.Tick
		on   bool
	}{
		{store.Tick{Key: "cut|1", Turn: 1}, true},
		{store.Tick{Key: "cut|1", Turn: 1767355200001}, false},
	} {
		all, err := s.Tick(t.Context(), id(1), []store.Tick{c.tick})
		if err != nil || len(all) != 1 || all[0].On != c.on {
			t.Errorf("after %+v: %v, %v", c.tick, all, err)
		}
	}
}
