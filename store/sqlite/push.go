package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"firstdrop/store"
)

// Push adds revisions as the next versions of a job.
func (s *Store) Push(ctx context.Context, id store.ID, base int64, revisions []store.Revision) (store.Summary, error) {
	if _, err := store.ParseID(string(id)); err != nil {
		return store.Summary{}, err
	}
	if err := store.CheckPush(base, revisions); err != nil {
		return store.Summary{}, err
	}
	// What takes a while is done before the file is locked.
	ready := make([]version, len(revisions))
	for i := range revisions {
		r := &revisions[i]
		ready[i] = version{r, store.NameOf(r.Document), deflate(r.Document)}
	}
	var last store.Summary
	err := s.change(ctx, func(ctx context.Context, tx *sql.Tx) error {
		p := &push{tx: tx, id: id, base: base, now: s.now()}
		if err := p.begin(ctx); err != nil {
			return err
		}
		there, err := p.there(ctx, revisions)
		if err != nil {
			return err
		}
		if err := p.add(ctx, ready[there:]); err != nil {
			return err
		}
		last, err = p.last(ctx)
		return err
	})
	return last, err
}

// version is a revision as it is written.
type version struct {
	*store.Revision
	name   string
	packed []byte
}

// push is one push in its transaction.
type push struct {
	tx   *sql.Tx
	id   store.ID
	now  time.Time
	base int64 // the version behind which the next revision belongs
	head int64 // the job's last version; 0 before it is begun
	// isNew says that the job has no revisions, since it was never begun or is erased.
	isNew bool
}

// begin looks up how far the job is.
func (p *push) begin(ctx context.Context) error {
	err := p.tx.QueryRowContext(ctx, "SELECT version, erased FROM job WHERE id = ?", p.id).Scan(&p.head, &p.isNew)
	if errors.Is(err, sql.ErrNoRows) {
		p.isNew, err = true, nil
	}
	switch {
	case err != nil:
		return err
	case p.isNew && p.base > 0:
		return store.Missing(p.id)
	case p.isNew:
		p.base = p.head
	}
	return nil
}

// there counts the revisions at the beginning that are there already, right
// behind the base, and moves the base behind them. What then belongs elsewhere
// than behind the last version is a conflict.
func (p *push) there(ctx context.Context, revisions []store.Revision) (n int, err error) {
	for n < len(revisions) && revisions[n].Key != "" && !p.isNew {
		at, err := p.find(ctx, revisions[n].Key)
		if err != nil {
			return 0, err
		}
		if at == 0 || p.base > 0 && at != p.base+1 {
			break
		}
		p.base = at
		n++
	}
	if n == len(revisions) || p.base == p.head {
		return n, nil
	}
	current, err := head(ctx, p.tx, p.id)
	if err != nil {
		return 0, err
	}
	return 0, store.Moved(p.base, current)
}

// find returns the version of a revision; 0 when it is not there.
func (p *push) find(ctx context.Context, key store.ID) (version int64, err error) {
	err = p.tx.QueryRowContext(ctx, "SELECT version FROM revision WHERE job = ? AND key = ?", p.id, key).Scan(&version)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return version, err
}

// add writes revisions behind the last version.
func (p *push) add(ctx context.Context, versions []version) error {
	if len(versions) == 0 {
		return nil
	}
	_, err := p.tx.ExecContext(ctx, `INSERT INTO job (id, name, version, begun, saved) VALUES (?1, ?2, ?3, ?4, ?4)
		ON CONFLICT (id) DO UPDATE SET name = ?2, version = ?3, saved = ?4, binned = NULL, erased = 0,
		begun = CASE WHEN erased THEN ?4 ELSE begun END`,
		p.id, versions[len(versions)-1].name, p.base+int64(len(versions)), stamp(p.now))
	if err != nil {
		return err
	}
	for i := range versions {
		if err := p.insert(ctx, &versions[i]); err != nil {
			return err
		}
	}
	return nil
}

func (p *push) insert(ctx context.Context, v *version) error {
	made := v.Made
	if made.IsZero() {
		made = p.now
	}
	key := sql.NullString{String: string(v.Key), Valid: v.Key != ""}
	if key.Valid {
		if at, err := p.find(ctx, v.Key); err != nil || at > 0 {
			return errors.Join(err, &store.Error{Code: store.Invalid, Message: "another version has the key " + key.String})
		}
	}
	p.base++
	_, err := p.tx.ExecContext(ctx, `INSERT INTO revision (job, version, key, made, saved, name, label, size, document)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		p.id, p.base, key, stamp(made), stamp(p.now), v.name, v.Label, len(v.Document), v.packed)
	return err
}

// last tells of the version that the push ends at, which others may have gone
// beyond.
func (p *push) last(ctx context.Context) (sum store.Summary, err error) {
	row := p.tx.QueryRowContext(ctx, heads+"WHERE job.id = ? AND revision.version = ?", p.id, p.base)
	return sum, scan(row, &sum)
}
