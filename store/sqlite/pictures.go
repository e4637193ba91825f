package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"firstdrop/store"
)

// AddPicture keeps a picture of a job.
func (s *Store) AddPicture(ctx context.Context, id store.ID, p store.Picture) error {
	if len(p.Bytes) > store.MostPicture {
		return &store.Error{Code: store.TooLarge, Message: fmt.Sprintf("the picture has %d bytes; at most %d are kept", len(p.Bytes), store.MostPicture)}
	}
	return s.change(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if err := exists(ctx, tx, id); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, `INSERT INTO picture (job, name, type, width, height, bytes) VALUES (?, ?, ?, ?, ?, ?)
			ON CONFLICT DO NOTHING`, id, p.Name, p.Type, p.Width, p.Height, p.Bytes)
		if err != nil {
			return err
		}
		var n int
		if err := tx.QueryRowContext(ctx, "SELECT count(*) FROM picture WHERE job = ?", id).Scan(&n); err != nil {
			return err
		}
		if n > store.MostPictures {
			return &store.Error{Code: store.TooLarge, Message: fmt.Sprintf("the job has %d pictures already, and cannot have more", store.MostPictures)}
		}
		return nil
	})
}

// Pictures tells of the pictures of a job.
func (s *Store) Pictures(ctx context.Context, id store.ID) ([]store.Picture, error) {
	all := []store.Picture{}
	err := s.look(ctx, func(tx *sql.Tx) error {
		if err := exists(ctx, tx, id); err != nil {
			return err
		}
		rows, err := tx.QueryContext(ctx, "SELECT name, type, width, height, length(bytes) FROM picture WHERE job = ? ORDER BY rowid", id)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var p store.Picture
			if err := rows.Scan(&p.Name, &p.Type, &p.Width, &p.Height, &p.Size); err != nil {
				return err
			}
			all = append(all, p)
		}
		return rows.Err()
	})
	return all, err
}

// Picture returns one of them.
func (s *Store) Picture(ctx context.Context, id store.ID, name string) (*store.Picture, error) {
	p := store.Picture{Name: name}
	err := s.read.QueryRowContext(ctx, "SELECT type, width, height, bytes FROM picture WHERE job = ? AND name = ?", id, name).
		Scan(&p.Type, &p.Width, &p.Height, &p.Bytes)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, store.MissingPicture(id, name)
	}
	p.Size = len(p.Bytes)
	return &p, err
}
