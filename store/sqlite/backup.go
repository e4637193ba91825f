package sqlite

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
)

// Backup writes all that the store holds at this moment into one file, while
// others read and write it. The file appears under its name when it is whole,
// checked and synced. One that is there already is replaced only when that is
// asked for; otherwise the error is [fs.ErrExist].
func (s *Store) Backup(ctx context.Context, path string, replace bool) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	if _, err := os.Lstat(path); !replace && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s: %w", path, fs.ErrExist)
	}
	part := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"."+rand.Text()+".part")
	defer os.Remove(part)
	if err := s.copyTo(ctx, part); err != nil {
		return err
	}
	if err := os.Rename(part, path); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(path))
}

// copyTo writes a checked and synced copy.
func (s *Store) copyTo(ctx context.Context, path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	defer f.Close()
	// A pool of its own: neither the writer nor the readers wait for the copy.
	db, err := open(s.path, "deferred")
	if err != nil {
		return err
	}
	defer db.Close()
	if _, err := db.ExecContext(ctx, "VACUUM INTO ?", path); err != nil {
		return told(err)
	}
	if err := check(ctx, path); err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// check says whether a file is sound; it does not change it. The path is absolute.
func check(ctx context.Context, path string) error {
	db, err := sql.Open("sqlite", uri(path, url.Values{"mode": {"ro"}}))
	if err != nil {
		return err
	}
	defer db.Close()
	var verdict string
	if err := db.QueryRowContext(ctx, "PRAGMA integrity_check(1)").Scan(&verdict); err != nil {
		return fmt.Errorf("it is no file of jobs: %w", err)
	}
	if verdict != "ok" {
		return fmt.Errorf("it is damaged: %s", verdict)
	}
	return nil
}

// syncFolder makes a renamed file survive a loss of power. Systems that cannot
// sync a folder do without.
func syncFolder(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	_ = d.Sync()
	return d.Close()
}
