package store

import "context"

// Rename gives a job another name: a new version of it, made on base. Errors are
// those of [Store.Push].
func Rename(ctx context.Context, s Store, id ID, base int64, name, label string) (Summary, error) {
	if err := CheckWords("name", name); err != nil {
		return Summary{}, err
	}
	j, err := at(ctx, s, id, base)
	if err != nil {
		return Summary{}, err
	}
	return s.Push(ctx, id, base, []Revision{{Document: WithName(j.Document, name), Label: label}})
}

// Restore makes what the job was at a version the next version of it, made on
// base: what came in between stays in its history. Errors are those of
// [Store.Version] and [Store.Push].
func Restore(ctx context.Context, s Store, id ID, base, version int64, label string) (Summary, error) {
	old, err := s.Version(ctx, id, version)
	if err != nil {
		return Summary{}, err
	}
	return s.Push(ctx, id, base, []Revision{{Document: old.Document, Label: label}})
}

// at returns the job if it is at that version.
func at(ctx context.Context, s Store, id ID, base int64) (*Job, error) {
	j, err := s.Get(ctx, id)
	if err == nil && j.Version != base {
		return nil, Moved(base, j)
	}
	return j, err
}
