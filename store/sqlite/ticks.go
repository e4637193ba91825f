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
		if t.Turn < 1 {
			return nil, &store.Error{Code: store.Invalid, Message: fmt.Sprintf("the turn of the tick %q is %d; turns count from 1", t.Key, t.Turn)}
		}
	}
	err = s.change(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if err := exists(ctx, tx, id); err != nil {
			return err
		}
		for _, t := range ticks {
			// Equal turns are no reason to lose what is done.
			_, err := tx.ExecContext(ctx, `INSERT INTO tick (job, key, yes, turn) VALUES (?, ?, ?, ?)
				ON CONFLICT (job, key) DO UPDATE SET yes = excluded.yes, turn = excluded.turn
				WHERE excluded.turn > tick.turn OR excluded.turn = tick.turn AND excluded.yes > tick.yes`, id, t.Key, t.On, t.Turn)
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
	rows, err := tx.QueryContext(ctx, "SELECT key, yes, turn FROM tick WHERE job = ? ORDER BY key", id)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := []store.Tick{}
	for rows.Next() {
		var t store.Tick
		if err := rows.Scan(&t.Key, &t.On, &t.Turn); err != nil {
			return nil, err
		}
		all = append(all, t)
	}
	return all, rows.Err()
}
