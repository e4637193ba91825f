package storetest

import (
	"encoding/json"
	"fmt"
	"sync"
	"testing"

	"firstdrop/store"
)

// Fifty writers each add one to a number twice, and try again when somebody
// was faster: none of their changes is lost.
func manyWriters(t *testing.T, s *tried) {
	const writers, times = 50, 2
	s.push(idOf(1), 0, doc("Counter", 0))
	var all sync.WaitGroup
	for range writers {
		all.Go(func() {
			for range times {
				if err := addOne(t, s, idOf(1)); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	s.wantHead(idOf(1), 1+writers*times, doc("Counter", writers*times))
}

func addOne(t *testing.T, s store.Store, id store.ID) error {
	for {
		j, err := s.Get(t.Context(), id)
		if err != nil {
			return err
		}
		n, err := numberIn(j)
		if err != nil {
			return err
		}
		_, err = s.Push(t.Context(), id, j.Version, []store.Revision{{Document: doc("Counter", n+1)}})
		if store.CodeOf(err) != store.Conflict {
			return err
		}
	}
}

// numberIn returns the number in a document of doc.
func numberIn(j *store.Job) (int, error) {
	var d struct{ N int }
	return d.N, json.Unmarshal(j.Document, &d)
}

// A push of three revisions is there whole or not at all, for whoever reads.
func wholePushes(t *testing.T, s *tried) {
	const pushes = 30
	s.push(idOf(1), 0, doc("Hall", 0), doc("Hall", 1), doc("Hall", 2))
	var all sync.WaitGroup
	all.Go(func() {
		for i := int64(1); i < pushes; i++ {
			rs := make([]store.Revision, 3)
			for k := range rs {
				rs[k].Document = doc("Hall", int(3*i)+k)
			}
			if _, err := s.Push(t.Context(), idOf(1), 3*i, rs); err != nil {
				t.Error(err)
			}
		}
	})
	for range 3 {
		all.Go(func() {
			for range pushes {
				if err := seesWhole(t, s); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
}

func seesWhole(t *testing.T, s store.Store) error {
	j, err := s.Get(t.Context(), idOf(1))
	if err != nil {
		return err
	}
	n, err := numberIn(j)
	if err != nil {
		return err
	}
	if j.Version%3 != 0 || int64(n) != j.Version-1 {
		return fmt.Errorf("version %d with number %d was seen", j.Version, n)
	}
	return nil
}
