package storetest

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/store"
)

// model is a store of a few jobs in plain maps, to hold a real one against.
type model struct {
	jobs    map[store.ID][][]byte // every version's document; what was erased is nil
	binned  map[store.ID]bool
	counter int
}

// asTheModel tries calls in any order on a store and on the model.
func asTheModel(t *testing.T, s *tried) {
	from := 1000
	rapid.Check(t, func(r *rapid.T) {
		m := &model{jobs: map[store.ID][][]byte{}, binned: map[store.ID]bool{}}
		from += 10 // every try has ids of its own in the one store
		id := func() store.ID { return idOf(from + rapid.IntRange(0, 2).Draw(r, "job")) }
		r.Repeat(map[string]func(*rapid.T){
			"push":    func(r *rapid.T) { m.push(t, r, s, id()) },
			"restore": func(r *rapid.T) { m.restore(t, r, s, id()) },
			"discard": func(r *rapid.T) { m.bin(t, r, s, id(), true) },
			"recover": func(r *rapid.T) { m.bin(t, r, s, id(), false) },
			"erase":   func(r *rapid.T) { m.erase(t, r, s, id()) },
			"":        func(r *rapid.T) { m.compare(t, r, s) },
		})
	})
}

// lives reports whether the model has the job.
func (m *model) lives(id store.ID) bool {
	vs := m.jobs[id]
	return len(vs) > 0 && vs[len(vs)-1] != nil
}

func (m *model) push(t *testing.T, r *rapid.T, s store.Store, id store.ID) {
	base := rapid.Int64Range(0, 4).Draw(r, "base")
	if rapid.Bool().Draw(r, "up to date") && m.lives(id) {
		base = int64(len(m.jobs[id]))
	}
	rs := make([]store.Revision, rapid.IntRange(1, 3).Draw(r, "revisions"))
	for i := range rs {
		m.counter++
		rs[i].Document = doc("Model", m.counter)
	}
	_, err := s.Push(t.Context(), id, base, rs)
	var want store.Code
	switch {
	case !m.lives(id) && base > 0:
		want = store.NotFound
	case m.lives(id) && base != int64(len(m.jobs[id])):
		want = store.Conflict
	}
	m.expect(r, "push", want, err)
	if want == "" {
		m.add(id, rs...)
	}
}

func (m *model) add(id store.ID, rs ...store.Revision) {
	for i := range rs {
		m.jobs[id] = append(m.jobs[id], rs[i].Document)
	}
	m.binned[id] = false
}

func (m *model) restore(t *testing.T, r *rapid.T, s store.Store, id store.ID) {
	vs := m.jobs[id]
	version := rapid.Int64Range(1, 6).Draw(r, "version")
	_, err := store.Restore(t.Context(), s, id, int64(len(vs)), version, "restored")
	if !m.lives(id) || version > int64(len(vs)) || vs[version-1] == nil {
		m.expect(r, "restore", store.NotFound, err)
		return
	}
	m.expect(r, "restore", "", err)
	m.add(id, store.Revision{Document: vs[version-1]})
}

func (m *model) bin(t *testing.T, r *rapid.T, s store.Store, id store.ID, into bool) {
	do := s.Recover
	if into {
		do = s.Discard
	}
	var want store.Code
	if !m.lives(id) {
		want = store.NotFound
	}
	m.expect(r, "bin", want, do(t.Context(), id))
	m.binned[id] = into && m.lives(id)
}

func (m *model) erase(t *testing.T, r *rapid.T, s store.Store, id store.ID) {
	var want store.Code
	if !m.binned[id] {
		want = store.NotFound
	}
	m.expect(r, "erase", want, s.Erase(t.Context(), id))
	if want == "" {
		m.jobs[id] = make([][]byte, len(m.jobs[id]))
		m.binned[id] = false
	}
}

func (m *model) expect(r *rapid.T, what string, want store.Code, err error) {
	if store.CodeOf(err) != want || (err == nil) != (want == "") {
		r.Fatalf("%s: error %v, want the code %q", what, err, want)
	}
}

// compare holds every version of every job against the model.
func (m *model) compare(t *testing.T, r *rapid.T, s store.Store) {
	for id, vs := range m.jobs {
		j, err := s.Get(t.Context(), id)
		if !m.lives(id) {
			m.expect(r, "get", store.NotFound, err)
			continue
		}
		m.expect(r, "get", "", err)
		if j.Version != int64(len(vs)) || !bytes.Equal(j.Document, vs[len(vs)-1]) || j.Binned.IsZero() == m.binned[id] {
			r.Fatalf("the job is %+v, want version %d, in the bin: %v", j, len(vs), m.binned[id])
		}
		for i, document := range vs {
			old, err := s.Version(t.Context(), id, int64(i+1))
			if document == nil {
				m.expect(r, "version", store.NotFound, err)
			} else if err != nil || !bytes.Equal(old.Document, document) {
				r.Fatalf("version %d is %+v, %v", i+1, old, err)
			}
		}
	}
}
