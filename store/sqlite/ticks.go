package sqlite

import (
	"context"
	"database/sql"
	"fmt"

	"firstdrop/store"
)

// Tick sets ticks of a job, or takes them away, and tells of all.
func (s *Store) Tick(ctx context.Context, id store.ID, ticks []store.Tick) (all []store.Tick, err error) {
	if len(ticks) == 0 {
		err = s.look(ctx, func(tx *sql.Tx) error {
			if err := exists(ctx, tx, id); err != nil {
				return err
			}
			all, err = ticksOf(ctx, tx, id)
			return err
		})
		return all, err
	}
	for _, t := range ticks {
		if t.Key == "" || len(t.Key) > store.MostKey {
			return nil, &store.Error{Code: store.Invalid, Message: fmt.Sprintf("the key of a tick has %d bytes; it must have 1 to %d", len(t.Key), store.MostKey)}
		}
	}
	err = s.change(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if err := exists(ctx, tx, id); err != nil {
			return err
		}
		for _, t := range ticks {
			// Equal times are no reason to lose what is done.
			_, err := tx.ExecContext(ctx, `INSERT INTO tick (job, key, yes, at) VALUES (?, ?, ?, ?)
				ON CONFLICT (job, key) DO UPDATE SET yes = excluded.yes, at = excluded.at
				WHERE excluded.at > tick.at OR excluded.at = tick.at AND excluded.yes > tick.yes`, id, t.Key, t.On, min(stamp(t.At), stamp(s.now())))
			if err != nil {
				return err
			}
		}
		if all, err = ticksOf(ctx, tx, id); err != nil {
			return err
		}
		if len(all) > store.MostTicks {
			return &store.Error{Code: store.TooLarge, Message: fmt.Sprintf("the job would have %d ticks; at most %d are kept", len(all), store.MostTicks)}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return all, nil
}

func ticksOf(ctx context.Context, tx *sql.Tx, id store.ID) ([]store.Tick, error) {
	rows, err := tx.QueryContext(ctx, "SELECT key, yes, at FROM tick WHERE job = ? ORDER BY key", id)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := []store.Tick{}
	for rows.Next() {
		var t store.Tick
		var at sql.NullInt64
		if err := rows.Scan(&t.Key, &t.On, &at); err != nil {
			return nil, err
		}
		t.At = timeOf(at)
		all = append(all, t)
	}
	return all, rows.Err()
}
