// Package sqlite keeps jobs in one SQLite file, which several programs may have
// open at once: a server, and a backup beside it.
//
// An acknowledged save has been synced to the disk: it is there after the process
// was killed, and after a loss of power as far as the disk tells the truth. For
// that the file is kept in write-ahead mode with synchronous=FULL. One
// connection writes, several read what was last committed, and none of them waits
// for the writer.
package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	driver "modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"firstdrop/store"
)

// Store is a [store.Store] in one file.
type Store struct {
	path  string
	write *sql.DB // one connection
	read  *sql.DB
	now   func() time.Time
}

var _ store.Store = (*Store)(nil)

// readers is how many connections read at once.
const readers = 4

// Open opens the file at path, which it makes if there is none; its folder must be
// there. A file of an earlier version of the program is brought up to date, after
// a copy of it was put beside it. One of a later version is refused.
func Open(ctx context.Context, path string) (*Store, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	// Whoever else uses the machine need not read it.
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	s := &Store{path: path, now: time.Now}
	if s.write, err = open(path, "immediate"); err != nil {
		return nil, err
	}
	s.write.SetMaxOpenConns(1)
	if s.read, err = open(path, "deferred", "query_only(1)"); err != nil {
		return nil, errors.Join(err, s.write.Close())
	}
	s.read.SetMaxOpenConns(readers)
	s.read.SetMaxIdleConns(readers)
	if err := s.migrate(ctx); err != nil {
		return nil, fmt.Errorf("%s: %w", path, errors.Join(err, s.Close()))
	}
	return s, nil
}

// open opens a pool of connections to a file.
func open(path, transactions string, pragmas ...string) (*sql.DB, error) {
	q := url.Values{"_txlock": {transactions}, "_pragma": append([]string{
		"busy_timeout(10000)", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(1)",
	}, pragmas...)}
	return sql.Open("sqlite", uri(path, q))
}

// uri names a file, whatever its name holds. The path is absolute.
func uri(path string, q url.Values) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive's letter
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: q.Encode()}).String()
}

// Path returns the file's name.
func (s *Store) Path() string { return s.path }

// Ping reports whether the file can be read.
func (s *Store) Ping(ctx context.Context) error {
	var n int
	return s.read.QueryRowContext(ctx, "SELECT count(*) FROM job").Scan(&n)
}

// Close closes the file.
func (s *Store) Close() error {
	var err error
	if s.read != nil {
		err = s.read.Close()
	}
	return errors.Join(err, s.write.Close())
}

// change runs do in one transaction, which is rolled back when it fails. Waiting for
// the connection that writes can be cancelled; what has begun is finished, since it
// takes a moment only.
func (s *Store) change(ctx context.Context, do func(ctx context.Context, tx *sql.Tx) error) error {
	conn, err := s.write.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	ctx = context.WithoutCancel(ctx)
	tx, err := conn.BeginTx(ctx, nil)
	if err != nil {
		return told(err)
	}
	if err := do(ctx, tx); err != nil {
		return errors.Join(told(err), rolledBack(tx))
	}
	return told(tx.Commit())
}

func rolledBack(tx *sql.Tx) error {
	if err := tx.Rollback(); !errors.Is(err, sql.ErrTxDone) {
		return err
	}
	return nil
}

// look runs do on one state of the file.
func (s *Store) look(ctx context.Context, do func(tx *sql.Tx) error) error {
	tx, err := s.read.BeginTx(ctx, &sql.TxOptions{ReadOnly: true})
	if err != nil {
		return err
	}
	return errors.Join(do(tx), rolledBack(tx))
}

// told turns errors of the database that people can do something about into those
// of the store.
func told(err error) error {
	var e *driver.Error
	if errors.As(err, &e) && e.Code()&0xff == lib.SQLITE_FULL {
		return &store.Error{Code: store.Full, Message: "there is no room left on the disk; nothing was saved"}
	}
	return err
}

// stamp writes a time as milliseconds.
func stamp(t time.Time) int64 { return t.UnixMilli() }

// timeOf reads one; the zero time for none.
func timeOf(ms sql.NullInt64) time.Time {
	if !ms.Valid {
		return time.Time{}
	}
	return time.UnixMilli(ms.Int64).UTC()
}
