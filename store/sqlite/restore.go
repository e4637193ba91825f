package sqlite

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"firstdrop/store"
)

// Restored tells what a backup brought back.
type Restored struct {
	Added   int // jobs that were not there
	Changed int // jobs that were otherwise, and have a new version
	Same    int // jobs that stood as they are in the backup, or lay there in the bin
}

// beyond is by how much a job's count goes on when it is brought back from a
// backup that is behind: devices may know versions that were made after the
// backup, and must not take other ones for them.
const beyond = 1000

// Restore brings back what a backup holds, while others read and write the store.
// Nothing is lost: a job that is otherwise now gets a new version, with the label,
// and keeps its history; jobs that were begun since stay. The backup is not
// changed; it may be of an earlier version of the program.
func (s *Store) Restore(ctx context.Context, path, label string) (r Restored, err error) {
	if err := store.CheckWords("label", label); err != nil {
		return r, err
	}
	folder, err := os.MkdirTemp("", "firstdrop-restore-")
	if err != nil {
		return r, err
	}
	defer os.RemoveAll(folder)
	kept := filepath.Join(folder, "kept.db")
	if err := upToDate(ctx, path, kept); err != nil {
		return r, err
	}
	conn, err := s.write.Conn(ctx)
	if err != nil {
		return r, err
	}
	defer conn.Close()
	if _, err := conn.ExecContext(ctx, "ATTACH DATABASE ? AS kept", kept); err != nil {
		return r, err
	}
	defer conn.ExecContext(context.WithoutCancel(ctx), "DETACH DATABASE kept")
	tx, err := conn.BeginTx(ctx, nil)
	if err != nil {
		return r, err
	}
	if r, err = s.bringBack(ctx, tx, label); err != nil {
		return Restored{}, errors.Join(told(err), rolledBack(tx))
	}
	return r, told(tx.Commit())
}

// upToDate writes a checked copy of a backup that has the tables of today.
func upToDate(ctx context.Context, path, copied string) error {
	if err := copyFile(path, copied); err != nil {
		return err
	}
	if err := check(ctx, copied); err != nil {
		return fmt.Errorf("%s cannot be restored: %w", path, err)
	}
	k, err := Open(ctx, copied)
	if err != nil {
		return fmt.Errorf("%s cannot be restored: %w", path, err)
	}
	return k.Close()
}

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}

// bringBack merges what is kept into what is there.
func (s *Store) bringBack(ctx context.Context, tx *sql.Tx, label string) (r Restored, err error) {
	kept, err := ids(ctx, tx, "SELECT id FROM kept.job WHERE erased = 0 ORDER BY id")
	if err != nil {
		return r, err
	}
	for _, id := range kept {
		done, err := s.bringBackJob(ctx, tx, id, label)
		if err != nil {
			return r, err
		}
		*map[outcome]*int{added: &r.Added, changed: &r.Changed, same: &r.Same}[done]++
	}
	return r, nil
}

// outcome is what became of one job.
type outcome int

const (
	added outcome = iota
	changed
	same
)

// keptHead is what a backup holds of one job.
type keptHead struct {
	version int64
	binned  sql.NullInt64
	begun   int64
	name    string
	size    int
	packed  []byte
}

func (s *Store) bringBackJob(ctx context.Context, tx *sql.Tx, id store.ID, label string) (outcome, error) {
	var k keptHead
	err := tx.QueryRowContext(ctx, `SELECT job.version, job.binned, job.begun, revision.name, revision.size, revision.document
		FROM kept.job AS job JOIN kept.revision AS revision ON revision.job = job.id AND revision.version = job.version
		WHERE job.id = ?`, id).Scan(&k.version, &k.binned, &k.begun, &k.name, &k.size, &k.packed)
	if err != nil {
		return same, err
	}
	live, err := head(ctx, tx, id)
	switch {
	case store.CodeOf(err) == store.NotFound:
		return added, s.addKept(ctx, tx, id, k, label)
	case err != nil:
		return same, err
	case k.binned.Valid:
		return same, nil
	}
	return s.changeKept(ctx, tx, live, k, label)
}

// addKept brings back a job that is not there, with its history. It ends with a
// version of its own, beyond all that a device may know.
func (s *Store) addKept(ctx context.Context, tx *sql.Tx, id store.ID, k keptHead, label string) error {
	var counted int64 // if it was erased
	err := tx.QueryRowContext(ctx, "SELECT coalesce(max(version), 0) FROM job WHERE id = ?", id).Scan(&counted)
	if err != nil {
		return err
	}
	version := max(counted, k.version) + beyond
	_, err = tx.ExecContext(ctx, `INSERT INTO job (id, name, version, begun, saved, binned) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
		ON CONFLICT (id) DO UPDATE SET name = ?2, version = ?3, begun = ?4, saved = ?5, binned = ?6, erased = 0`,
		id, k.name, version, k.begun, stamp(s.now()), k.binned)
	if err != nil {
		return err
	}
	return s.bringBackRest(ctx, tx, id, version, k, label)
}

// changeKept makes what is kept of a job its next version, unless that is what
// stands there.
func (s *Store) changeKept(ctx context.Context, tx *sql.Tx, live *store.Job, k keptHead, label string) (outcome, error) {
	document, err := inflate(k.packed, k.size)
	if err != nil {
		return same, err
	}
	if live.Version >= k.version && live.Binned.IsZero() && bytes.Equal(live.Document, document) {
		return same, nil
	}
	version := live.Version + 1
	if live.Version < k.version {
		version = k.version + beyond
	}
	_, err = tx.ExecContext(ctx, "UPDATE job SET name = ?, version = ?, saved = ?, binned = NULL WHERE id = ?",
		k.name, version, stamp(s.now()), live.ID)
	if err != nil {
		return same, err
	}
	return changed, s.bringBackRest(ctx, tx, live.ID, version, k, label)
}

// bringBackRest adds the versions and pictures that are missing, and the new
// version.
func (s *Store) bringBackRest(ctx context.Context, tx *sql.Tx, id store.ID, version int64, k keptHead, label string) error {
	now := stamp(s.now())
	for _, st := range []struct {
		text string
		args []any
	}{
		{`INSERT OR IGNORE INTO revision (job, version, key, made, saved, name, label, title, size, document)
			SELECT job, version, key, made, saved, name, label, title, size, document FROM kept.revision WHERE job = ?`, []any{id}},
		{`INSERT OR IGNORE INTO picture (job, name, type, width, height, bytes)
			SELECT job, name, type, width, height, bytes FROM kept.picture WHERE job = ? ORDER BY rowid`, []any{id}},
		{`INSERT OR IGNORE INTO tick (job, key, yes, turn) SELECT job, key, yes, turn FROM kept.tick WHERE job = ?`, []any{id}},
		{
			`INSERT INTO revision (job, version, made, saved, name, label, size, document) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
			[]any{id, version, now, now, k.name, label, k.size, k.packed},
		},
	} {
		if _, err := tx.ExecContext(ctx, st.text, st.args...); err != nil {
			return err
		}
	}
	return nil
}
