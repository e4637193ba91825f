package sqlite

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

//go:embed migrations/*.sql
var migrations embed.FS

// steps returns the statements that take a file from each version to the next:
// steps[0] makes version 1 of an empty file.
func steps() ([]string, error) {
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		return nil, err
	}
	all := make([]string, len(names))
	for i, name := range names { // in alphabetical order
		text, err := migrations.ReadFile(name)
		if err != nil {
			return nil, err
		}
		all[i] = string(text)
	}
	return all, nil
}

// querier is a transaction, a connection or a pool of them.
type querier interface {
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

func versionOf(ctx context.Context, q querier) (v int, err error) {
	return v, q.QueryRowContext(ctx, "PRAGMA user_version").Scan(&v)
}

// migrate brings the file up to date. What it holds is copied first to a file
// beside it, named after the version that it had. Of two programs that open it at
// once one does the work, and the other finds it done.
func (s *Store) migrate(ctx context.Context) error {
	all, err := steps()
	if err != nil {
		return err
	}
	from, err := versionOf(ctx, s.write)
	switch {
	case err != nil:
		return fmt.Errorf("it is no file of jobs: %w", err)
	case from == len(all):
		return nil
	case from > len(all):
		return fmt.Errorf("it is of version %d, and this program knows versions up to %d; use a newer program", from, len(all))
	case from > 0:
		if err := s.keep(ctx, from); err != nil {
			return fmt.Errorf("no copy can be made before it is brought up to date: %w", err)
		}
	}
	return s.change(ctx, func(ctx context.Context, tx *sql.Tx) error {
		from, err := versionOf(ctx, tx)
		if err != nil {
			return err
		}
		for _, step := range all[min(from, len(all)):] {
			if _, err := tx.ExecContext(ctx, step); err != nil {
				return err
			}
		}
		_, err = tx.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d", max(from, len(all))))
		return err
	})
}

// keptName is the name of the copy that is made before a file is brought up to date.
func keptName(path string, version int) string { return fmt.Sprintf("%s.version-%d", path, version) }

// keep copies the file before it is changed; a copy that is there stays.
func (s *Store) keep(ctx context.Context, version int) error {
	err := s.Backup(ctx, keptName(s.path, version), false)
	if errors.Is(err, os.ErrExist) {
		return nil
	}
	return err
}
