package sqlite

import (
	"context"
	"database/sql"
	"errors"

	"firstdrop/store"
)

// List tells of all jobs outside the bin.
func (s *Store) List(ctx context.Context) ([]store.Summary, error) {
	return s.list(ctx, "binned IS NULL ORDER BY job.saved DESC, job.id DESC")
}

// Bin tells of all jobs in the bin.
func (s *Store) Bin(ctx context.Context) ([]store.Summary, error) {
	return s.list(ctx, "binned IS NOT NULL ORDER BY job.binned DESC, job.id DESC")
}

// Erased tells which jobs are erased.
func (s *Store) Erased(ctx context.Context) ([]store.ID, error) {
	return ids(ctx, s.read, "SELECT id FROM job WHERE erased = 1 ORDER BY id")
}

// ids reads what a query gives, which is one column of them; none is an empty list.
func ids(ctx context.Context, q interface {
	QueryContext(context.Context, string, ...any) (*sql.Rows, error)
}, query string,
) ([]store.ID, error) {
	rows, err := q.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	list := []store.ID{}
	for rows.Next() {
		var id store.ID
		if err := rows.Scan(&id); err != nil {
			return nil, err
		}
		list = append(list, id)
	}
	return list, rows.Err()
}

// heads are the columns of a summary, for scan.
const heads = `SELECT job.id, revision.name, revision.version, revision.label, revision.size, job.begun, revision.saved, job.binned
	FROM job JOIN revision ON revision.job = job.id `

func (s *Store) list(ctx context.Context, which string) ([]store.Summary, error) {
	rows, err := s.read.QueryContext(ctx, heads+"AND revision.version = job.version WHERE "+which)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := []store.Summary{}
	for rows.Next() {
		var sum store.Summary
		if err := scan(rows, &sum); err != nil {
			return nil, err
		}
		all = append(all, sum)
	}
	return all, rows.Err()
}

// scan reads the columns of heads, and further ones.
func scan(row interface{ Scan(dest ...any) error }, s *store.Summary, more ...any) error {
	var begun, saved, binned sql.NullInt64
	err := row.Scan(append([]any{&s.ID, &s.Name, &s.Version, &s.Label, &s.Size, &begun, &saved, &binned}, more...)...)
	s.Begun, s.Saved, s.Binned = timeOf(begun), timeOf(saved), timeOf(binned)
	return err
}

// Get returns a job as it stands.
func (s *Store) Get(ctx context.Context, id store.ID) (*store.Job, error) {
	return head(ctx, s.read, id)
}

// bodies are heads with the document.
const bodies = `SELECT job.id, revision.name, revision.version, revision.label, revision.size, job.begun, revision.saved, job.binned,
	revision.document FROM job JOIN revision ON revision.job = job.id `

// head returns a job as it stands.
func head(ctx context.Context, q querier, id store.ID) (*store.Job, error) {
	j, err := jobAt(q.QueryRowContext(ctx, bodies+"AND revision.version = job.version WHERE job.id = ?", id))
	if errors.Is(err, sql.ErrNoRows) {
		return nil, store.Missing(id)
	}
	return j, err
}

func jobAt(row *sql.Row) (*store.Job, error) {
	var j store.Job
	var packed []byte
	if err := scan(row, &j.Summary, &packed); err != nil {
		return nil, err
	}
	var err error
	j.Document, err = inflate(packed, j.Size)
	return &j, err
}

// Version returns the job as it stood.
func (s *Store) Version(ctx context.Context, id store.ID, version int64) (*store.Job, error) {
	j, err := jobAt(s.read.QueryRowContext(ctx, bodies+"WHERE job.id = ? AND revision.version = ?", id, version))
	if errors.Is(err, sql.ErrNoRows) {
		return nil, store.MissingVersion(id, version)
	}
	return j, err
}

// History tells of the versions below one.
func (s *Store) History(ctx context.Context, id store.ID, below int64, most int) ([]store.Version, error) {
	all := []store.Version{}
	err := s.look(ctx, func(tx *sql.Tx) error {
		if err := exists(ctx, tx, id); err != nil {
			return err
		}
		rows, err := tx.QueryContext(ctx, `SELECT version, name, label, title, made, saved, size FROM revision
			WHERE job = ?1 AND (?2 < 0 OR version < ?2) ORDER BY version DESC LIMIT ?3`, id, below, most)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var v store.Version
			var made, saved sql.NullInt64
			if err := rows.Scan(&v.Version, &v.Job, &v.Label, &v.Name, &made, &saved, &v.Size); err != nil {
				return err
			}
			v.Made, v.Saved = timeOf(made), timeOf(saved)
			all = append(all, v)
		}
		return rows.Err()
	})
	return all, err
}

// exists says when a job is not there.
func exists(ctx context.Context, q querier, id store.ID) error {
	var one int
	err := q.QueryRowContext(ctx, "SELECT 1 FROM job WHERE id = ? AND erased = 0", id).Scan(&one)
	if errors.Is(err, sql.ErrNoRows) {
		return store.Missing(id)
	}
	return err
}

// NameVersion gives a version a name.
func (s *Store) NameVersion(ctx context.Context, id store.ID, version int64, name string) error {
	if err := store.CheckWords("name", name); err != nil {
		return err
	}
	return s.one(ctx, store.MissingVersion(id, version), "UPDATE revision SET title = ? WHERE job = ? AND version = ?", name, id, version)
}

// one carries out a statement that changes one row, and returns missing when there
// is none.
func (s *Store) one(ctx context.Context, missing error, statement string, args ...any) error {
	return s.change(ctx, func(ctx context.Context, tx *sql.Tx) error { return oneRow(ctx, tx, missing, statement, args...) })
}

func oneRow(ctx context.Context, tx *sql.Tx, missing error, statement string, args ...any) error {
	r, err := tx.ExecContext(ctx, statement, args...)
	if err != nil {
		return err
	}
	if n, err := r.RowsAffected(); err != nil || n == 0 {
		return errors.Join(err, missing)
	}
	return nil
}

// Discard moves a job into the bin.
func (s *Store) Discard(ctx context.Context, id store.ID) error {
	return s.one(ctx, store.Missing(id), "UPDATE job SET binned = coalesce(binned, ?) WHERE id = ? AND erased = 0", stamp(s.now()), id)
}

// Recover takes a job out of the bin.
func (s *Store) Recover(ctx context.Context, id store.ID) error {
	return s.one(ctx, store.Missing(id), "UPDATE job SET binned = NULL WHERE id = ? AND erased = 0", id)
}

// Erase removes a job for good. How far it counted is kept, so that a device that
// still holds it cannot take a new job of that id for the old one.
func (s *Store) Erase(ctx context.Context, id store.ID) error {
	return s.change(ctx, func(ctx context.Context, tx *sql.Tx) error {
		err := oneRow(ctx, tx, store.Missing(id),
			"UPDATE job SET erased = 1, name = '', binned = NULL WHERE id = ? AND binned IS NOT NULL", id)
		if err != nil {
			return err
		}
		for _, table := range []string{"revision", "picture", "tick"} {
			if _, err := tx.ExecContext(ctx, "DELETE FROM "+table+" WHERE job = ?", id); err != nil {
				return err
			}
		}
		return nil
	})
}
