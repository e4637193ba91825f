// Package storetest holds what every store must do, as tests that an
// implementation runs on itself.
package storetest

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"firstdrop/store"
)

// Run tests stores that open makes: each call an empty one, which is closed when
// the test ends.
func Run(t *testing.T, open func(t *testing.T) store.Store) {
	for _, c := range []struct {
		name string
		test func(t *testing.T, s *tried)
	}{
		{"begin and get", beginAndGet},
		{"documents stay as they are", documentsStay},
		{"lists", lists},
		{"conflict", conflict},
		{"several revisions are one", severalRevisions},
		{"sent twice counts once", sentTwice},
		{"what is refused", refused},
		{"history", history},
		{"names of versions", names},
		{"rename", rename},
		{"restore", restore},
		{"bin", bin},
		{"a save takes out of the bin", saveFromBin},
		{"erase", erase},
		{"an erased job counts on", countsOn},
		{"pictures", pictures},
		{"ticks", ticks},
		{"nothing is there", nothingThere},
		{"many writers", manyWriters},
		{"readers see whole pushes", wholePushes},
		{"as the model", asTheModel},
	} {
		t.Run(c.name, func(t *testing.T) { c.test(t, &tried{open(t), t}) })
	}
}

// tried is a store in a test, with calls that must succeed.
type tried struct {
	store.Store
	t *testing.T
}

// idOf makes an id for tests from a number.
func idOf(n int) store.ID { return store.ID(fmt.Sprintf("01890a5d-ac96-774b-bcce-%012x", n)) }

// doc is a document for tests.
func doc(name string, n int) []byte {
	return fmt.Appendf(nil, `{"firstdrop": 1, "name": %q, "n": %d}`, name, n)
}

func (s *tried) push(id store.ID, base int64, documents ...[]byte) store.Summary {
	s.t.Helper()
	var rs []store.Revision
	for i, d := range documents {
		rs = append(rs, store.Revision{Document: d, Label: fmt.Sprintf("change %d", i+1)})
	}
	sum, err := s.Push(s.t.Context(), id, base, rs)
	if err != nil {
		s.t.Fatal(err)
	}
	return sum
}

func (s *tried) get(id store.ID) *store.Job {
	s.t.Helper()
	j, err := s.Get(s.t.Context(), id)
	if err != nil {
		s.t.Fatal(err)
	}
	return j
}

func (s *tried) must(err error) {
	s.t.Helper()
	if err != nil {
		s.t.Fatal(err)
	}
}

// want fails unless the error has the code.
func (s *tried) want(code store.Code, err error) {
	s.t.Helper()
	if store.CodeOf(err) != code || err == nil {
		s.t.Errorf("error %v, want one with the code %s", err, code)
	}
}

func (s *tried) wantHead(id store.ID, version int64, document []byte) {
	s.t.Helper()
	j := s.get(id)
	if j.Version != version || !bytes.Equal(j.Document, document) {
		s.t.Errorf("the job is at version %d with %s, want %d with %s", j.Version, j.Document, version, document)
	}
}

func beginAndGet(t *testing.T, s *tried) {
	before := time.Now().Add(-time.Second)
	sum := s.push(idOf(1), 0, doc("Hall", 1))
	j := s.get(idOf(1))
	switch {
	case sum.ID != idOf(1) || sum.Name != "Hall" || sum.Version != 1 || sum.Label != "change 1" || sum.Size != len(doc("Hall", 1)):
		t.Errorf("summary %+v", sum)
	case j.Summary != sum:
		t.Errorf("got %+v, saved %+v", j.Summary, sum)
	case sum.Saved.Before(before) || sum.Begun.Before(before) || sum.Saved.After(time.Now().Add(time.Second)):
		t.Errorf("saved at %v, begun at %v", sum.Saved, sum.Begun)
	case !sum.Binned.IsZero():
		t.Errorf("thrown away at %v", sum.Binned)
	}
	next := s.push(idOf(1), 1, doc("Long hall", 2))
	if next.Version != 2 || next.Name != "Long hall" || !next.Begun.Equal(sum.Begun) {
		t.Errorf("second summary %+v", next)
	}
}

func documentsStay(t *testing.T, s *tried) {
	documents := [][]byte{
		[]byte("{}"), []byte(" {\"a\" :\t[1, 2.50, 1e400]}\n"), []byte(`{"name": 7}`), []byte(`{"name": "a\u0000\nb", "π": "\ud83d\ude00 </script>"}`),
		append(append([]byte(`{"big": "`), bytes.Repeat([]byte("x"), store.MostBytes-20)...), `"}`...),
	}
	for i, d := range documents {
		s.push(idOf(i), 0, d)
		s.wantHead(idOf(i), 1, d)
	}
	if name := s.get(idOf(3)).Name; name != "a b" {
		t.Errorf("the name is %q", name)
	}
}

func lists(t *testing.T, s *tried) {
	all, err := s.List(t.Context())
	s.must(err)
	if all == nil || len(all) != 0 {
		t.Errorf("an empty store lists %v", all)
	}
	for i := range 5 {
		s.push(idOf(i), 0, doc(fmt.Sprint("Room ", i), i))
		time.Sleep(2 * time.Millisecond)
	}
	s.push(idOf(2), 1, doc("Room 2", 9))
	all, err = s.List(t.Context())
	s.must(err)
	if got := idsOf(all); !slices.Equal(got, []store.ID{idOf(2), idOf(4), idOf(3), idOf(1), idOf(0)}) {
		t.Errorf("listed as %v", got)
	}
	if all[0] != s.get(idOf(2)).Summary {
		t.Errorf("listed %+v, got %+v", all[0], s.get(idOf(2)).Summary)
	}
}

func idsOf(all []store.Summary) (ids []store.ID) {
	for _, s := range all {
		ids = append(ids, s.ID)
	}
	return ids
}

func conflict(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1))
	s.push(idOf(1), 1, doc("Hall", 2))
	for _, base := range []int64{0, 1, 3, 1 << 60} {
		_, err := s.Push(t.Context(), idOf(1), base, []store.Revision{{Document: doc("Other", 3)}})
		s.want(store.Conflict, err)
		var e *store.Error
		if errors.As(err, &e) && (e.Current == nil || e.Current.Version != 2 || !bytes.Equal(e.Current.Document, doc("Hall", 2))) {
			t.Errorf("base %d: the error hands over %+v", base, e.Current)
		}
	}
	s.wantHead(idOf(1), 2, doc("Hall", 2))
	_, err := s.Push(t.Context(), idOf(2), 1, []store.Revision{{Document: doc("New", 1)}})
	s.want(store.NotFound, err)
}

func severalRevisions(t *testing.T, s *tried) {
	if sum := s.push(idOf(1), 0, doc("Hall", 1), doc("Hall", 2), doc("Hall, high", 3)); sum.Version != 3 || sum.Name != "Hall, high" || sum.Label != "change 3" {
		t.Errorf("summary %+v", sum)
	}
	for v := int64(1); v <= 3; v++ {
		if j, err := s.Version(t.Context(), idOf(1), v); err != nil || store.NameOf(j.Document) != j.Name || j.Label != fmt.Sprint("change ", v) {
			t.Errorf("version %d: %+v, %v", v, j, err)
		}
	}
	_, err := s.Push(t.Context(), idOf(1), 3, []store.Revision{{Document: doc("Hall", 4)}, {Document: []byte("[]")}})
	s.want(store.Invalid, err)
	s.wantHead(idOf(1), 3, doc("Hall, high", 3))
}

func sentTwice(t *testing.T, s *tried) {
	made := time.Date(2026, 5, 1, 12, 0, 0, 0, time.UTC)
	rs := []store.Revision{
		{Key: idOf(101), Document: doc("Hall", 1), Made: made},
		{Key: idOf(102), Document: doc("Hall", 2), Made: made},
		{Key: idOf(103), Document: doc("Hall", 3), Made: made},
	}
	push := func(base int64, rs ...store.Revision) store.Summary {
		t.Helper()
		sum, err := s.Push(t.Context(), idOf(1), base, rs)
		s.must(err)
		return sum
	}
	push(0, rs[:2]...)
	if sum := push(0, rs[:2]...); sum.Version != 2 {
		t.Errorf("sent again it is version %d", sum.Version)
	}
	if sum := push(0, rs...); sum.Version != 3 {
		t.Errorf("with one more it is version %d", sum.Version)
	}
	// Somebody else goes on; what is there already is still acknowledged, as itself.
	s.push(idOf(1), 3, doc("Hall", 4))
	if sum := push(1, rs[1:]...); sum.Version != 3 {
		t.Errorf("sent again after another's save it is version %d", sum.Version)
	}
	_, err := s.Push(t.Context(), idOf(1), 2, []store.Revision{rs[2], {Key: idOf(104), Document: doc("Hall", 5)}})
	s.want(store.Conflict, err)
	_, err = s.Push(t.Context(), idOf(1), 4, rs[:1])
	s.want(store.Invalid, err)
	s.wantHead(idOf(1), 4, doc("Hall", 4))
	// The same key on another job is another revision.
	if sum, err := s.Push(t.Context(), idOf(2), 0, rs[:1]); err != nil || sum.Version != 1 {
		t.Errorf("on another job: %+v, %v", sum, err)
	}
}

func refused(t *testing.T, s *tried) {
	good := store.Revision{Document: doc("Hall", 1)}
	for _, c := range []struct {
		what string
		id   store.ID
		base int64
		rs   []store.Revision
		code store.Code
	}{
		{"a path as id", "../../../../etc/passwd", 0, []store.Revision{good}, store.Invalid},
		{"capitals in the id", "01890A5D-AC96-774B-BCCE-B302099A8057", 0, []store.Revision{good}, store.Invalid},
		{"no id", "", 0, []store.Revision{good}, store.Invalid},
		{"a version below 0", idOf(1), -1, []store.Revision{good}, store.Invalid},
		{"no revision", idOf(1), 0, nil, store.Invalid},
		{"a list", idOf(1), 0, []store.Revision{{Document: []byte("[]")}}, store.Invalid},
		{"no JSON", idOf(1), 0, []store.Revision{{Document: []byte("{")}}, store.Invalid},
		{"nothing", idOf(1), 0, []store.Revision{{}}, store.Invalid},
		{"two objects", idOf(1), 0, []store.Revision{{Document: []byte("{}{}")}}, store.Invalid},
		{"a label of two lines", idOf(1), 0, []store.Revision{{Document: doc("", 1), Label: "a\nb"}}, store.Invalid},
		{"a long label", idOf(1), 0, []store.Revision{{Document: doc("", 1), Label: strings.Repeat("ä", store.MostWords+1)}}, store.Invalid},
		{"a key of another form", idOf(1), 0, []store.Revision{{Document: doc("", 1), Key: "1"}}, store.Invalid},
		{"a key twice", idOf(1), 0, []store.Revision{{Document: doc("", 1), Key: idOf(9)}, {Document: doc("", 2), Key: idOf(9)}}, store.Invalid},
		{"a large document", idOf(1), 0, []store.Revision{{Document: append(doc("", 1), bytes.Repeat([]byte(" "), store.MostBytes)...)}}, store.TooLarge},
		{"many revisions", idOf(1), 0, slices.Repeat([]store.Revision{good}, store.MostRevisions+1), store.TooLarge},
	} {
		if _, err := s.Push(t.Context(), c.id, c.base, c.rs); store.CodeOf(err) != c.code {
			t.Errorf("%s: error %v, want one with the code %s", c.what, err, c.code)
		}
	}
	if all, err := s.List(t.Context()); err != nil || len(all) > 0 {
		t.Errorf("left behind: %v, %v", all, err)
	}
}

func history(t *testing.T, s *tried) {
	made := time.Date(2026, 5, 1, 12, 0, 0, 123e6, time.UTC)
	_, err := s.Push(t.Context(), idOf(1), 0, []store.Revision{{Document: doc("Hall", 1), Label: "window moved", Made: made}})
	s.must(err)
	for v := int64(1); v < 7; v++ {
		s.push(idOf(1), v, doc("Hall", int(v)+1))
	}
	for _, c := range []struct {
		below int64
		most  int
		want  []int64
	}{{-1, 100, []int64{7, 6, 5, 4, 3, 2, 1}}, {-1, 2, []int64{7, 6}}, {3, 10, []int64{2, 1}}, {6, 2, []int64{5, 4}}, {1, 5, nil}, {100, 1, []int64{7}}} {
		vs, err := s.History(t.Context(), idOf(1), c.below, c.most)
		s.must(err)
		var got []int64
		for _, v := range vs {
			got = append(got, v.Version)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("at most %d below %d: %v, want %v", c.most, c.below, got, c.want)
		}
	}
	vs, err := s.History(t.Context(), idOf(1), 2, 1)
	s.must(err)
	if v := vs[0]; v.Label != "window moved" || !v.Made.Equal(made) || v.Job != "Hall" || v.Size != len(doc("Hall", 1)) || time.Since(v.Saved) > time.Hour {
		t.Errorf("the first version is told as %+v", v)
	}
	j, err := s.Version(t.Context(), idOf(1), 3)
	s.must(err)
	if !bytes.Equal(j.Document, doc("Hall", 3)) || j.Version != 3 {
		t.Errorf("version 3 is %+v", j)
	}
}

func names(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1), doc("Hall", 2))
	s.must(s.NameVersion(t.Context(), idOf(1), 1, "before the window"))
	s.must(s.NameVersion(t.Context(), idOf(1), 2, "x"))
	s.must(s.NameVersion(t.Context(), idOf(1), 2, ""))
	s.want(store.NotFound, s.NameVersion(t.Context(), idOf(1), 3, "x"))
	s.want(store.NotFound, s.NameVersion(t.Context(), idOf(2), 1, "x"))
	s.want(store.Invalid, s.NameVersion(t.Context(), idOf(1), 1, "a\tb"))
	vs, err := s.History(t.Context(), idOf(1), -1, 10)
	s.must(err)
	if vs[0].Name != "" || vs[1].Name != "before the window" {
		t.Errorf("the versions are called %q and %q", vs[0].Name, vs[1].Name)
	}
	s.wantHead(idOf(1), 2, doc("Hall", 2))
}

func rename(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1))
	sum, err := store.Rename(t.Context(), s, idOf(1), 1, `The "long" hall`, "renamed")
	s.must(err)
	if sum.Name != `The "long" hall` || sum.Version != 2 || sum.Label != "renamed" {
		t.Errorf("renamed it is %+v", sum)
	}
	s.wantHead(idOf(1), 2, []byte(`{"firstdrop": 1, "name": "The \"long\" hall", "n": 1}`))
	_, err = store.Rename(t.Context(), s, idOf(1), 1, "Other", "")
	s.want(store.Conflict, err)
	_, err = store.Rename(t.Context(), s, idOf(2), 1, "Other", "")
	s.want(store.NotFound, err)
}

func restore(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1), doc("Hall", 2))
	sum, err := store.Restore(t.Context(), s, idOf(1), 2, 1, "version 1 restored")
	s.must(err)
	if sum.Version != 3 || sum.Label != "version 1 restored" {
		t.Errorf("restored it is %+v", sum)
	}
	s.wantHead(idOf(1), 3, doc("Hall", 1))
	_, err = store.Restore(t.Context(), s, idOf(1), 2, 1, "")
	s.want(store.Conflict, err)
	_, err = store.Restore(t.Context(), s, idOf(1), 3, 9, "")
	s.want(store.NotFound, err)
	if vs, err := s.History(t.Context(), idOf(1), -1, 10); err != nil || len(vs) != 3 {
		t.Errorf("the history has %d versions, %v", len(vs), err)
	}
}

func bin(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1))
	s.push(idOf(2), 0, doc("Attic", 1))
	s.must(s.Discard(t.Context(), idOf(1)))
	s.must(s.Discard(t.Context(), idOf(1)))
	all, err := s.List(t.Context())
	s.must(err)
	binned, err := s.Bin(t.Context())
	s.must(err)
	if !slices.Equal(idsOf(all), []store.ID{idOf(2)}) || !slices.Equal(idsOf(binned), []store.ID{idOf(1)}) {
		t.Errorf("listed %v, in the bin %v", idsOf(all), idsOf(binned))
	}
	if binned[0].Binned.IsZero() || s.get(idOf(1)).Binned.IsZero() {
		t.Error("it is not told when it was thrown away")
	}
	s.must(s.Recover(t.Context(), idOf(1)))
	s.must(s.Recover(t.Context(), idOf(1)))
	if all, err = s.List(t.Context()); err != nil || len(all) != 2 {
		t.Errorf("recovered, listed %v, %v", all, err)
	}
	s.wantHead(idOf(1), 1, doc("Hall", 1))
}

func saveFromBin(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1))
	s.must(s.Discard(t.Context(), idOf(1)))
	s.push(idOf(1), 1, doc("Hall", 2))
	if j := s.get(idOf(1)); !j.Binned.IsZero() || j.Version != 2 {
		t.Errorf("saved again it is %+v", j.Summary)
	}
}

func erase(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1))
	s.want(store.NotFound, s.Erase(t.Context(), idOf(1)))
	s.must(s.Discard(t.Context(), idOf(1)))
	s.must(s.Erase(t.Context(), idOf(1)))
	_, err := s.Get(t.Context(), idOf(1))
	s.want(store.NotFound, err)
	_, err = s.Version(t.Context(), idOf(1), 1)
	s.want(store.NotFound, err)
	_, err = s.History(t.Context(), idOf(1), -1, 1)
	s.want(store.NotFound, err)
	s.want(store.NotFound, s.Recover(t.Context(), idOf(1)))
	s.want(store.NotFound, s.Discard(t.Context(), idOf(1)))
	s.want(store.NotFound, s.Erase(t.Context(), idOf(1)))
	if binned, err := s.Bin(t.Context()); err != nil || len(binned) > 0 {
		t.Errorf("in the bin: %v, %v", binned, err)
	}
	erased := func(want ...store.ID) {
		t.Helper()
		got, err := s.Erased(t.Context())
		s.must(err)
		if !slices.Equal(got, want) {
			t.Errorf("erased: %v, want %v", got, want)
		}
	}
	erased(idOf(1))
	s.push(idOf(1), 0, doc("Hall", 1))
	erased()
}

func countsOn(t *testing.T, s *tried) {
	s.push(idOf(1), 0, doc("Hall", 1), doc("Hall", 2))
	s.must(s.Discard(t.Context(), idOf(1)))
	s.must(s.Erase(t.Context(), idOf(1)))
	_, err := s.Push(t.Context(), idOf(1), 2, []store.Revision{{Document: doc("Hall", 3)}})
	s.want(store.NotFound, err)
	if sum := s.push(idOf(1), 0, doc("New hall", 1)); sum.Version != 3 {
		t.Errorf("begun again it is version %d", sum.Version)
	}
	_, err = s.Push(t.Context(), idOf(1), 2, []store.Revision{{Document: doc("Hall", 3)}})
	s.want(store.Conflict, err)
}

func pictures(t *testing.T, s *tried) {
	p := store.Picture{Name: "abc.png", Type: "image/png", Width: 3, Height: 2, Bytes: []byte("\x89PNG…")}
	s.want(store.NotFound, s.AddPicture(t.Context(), idOf(1), p))
	s.push(idOf(1), 0, doc("Hall", 1))
	s.must(s.AddPicture(t.Context(), idOf(1), p))
	s.must(s.AddPicture(t.Context(), idOf(1), p))
	got, err := s.Picture(t.Context(), idOf(1), "abc.png")
	s.must(err)
	if got.Name != p.Name || got.Type != p.Type || got.Width != 3 || got.Height != 2 || got.Size != len(p.Bytes) || !bytes.Equal(got.Bytes, p.Bytes) {
		t.Errorf("got %+v", got)
	}
	all, err := s.Pictures(t.Context(), idOf(1))
	s.must(err)
	if len(all) != 1 || all[0].Name != p.Name || all[0].Size != len(p.Bytes) || all[0].Bytes != nil {
		t.Errorf("listed %+v", all)
	}
	_, err = s.Picture(t.Context(), idOf(1), "abd.png")
	s.want(store.NotFound, err)
	_, err = s.Picture(t.Context(), idOf(2), "abc.png")
	s.want(store.NotFound, err)
	_, err = s.Pictures(t.Context(), idOf(2))
	s.want(store.NotFound, err)
	s.want(store.TooLarge, s.AddPicture(t.Context(), idOf(1), store.Picture{Name: "x", Bytes: make([]byte, store.MostPicture+1)}))
	for i := 1; i < store.MostPictures; i++ {
		s.must(s.AddPicture(t.Context(), idOf(1), store.Picture{Name: fmt.Sprint(i), Type: "image/png", Bytes: []byte("x")}))
	}
	s.want(store.TooLarge, s.AddPicture(t.Context(), idOf(1), store.Picture{Name: "more", Type: "image/png", Bytes: []byte("x")}))
	s.must(s.AddPicture(t.Context(), idOf(1), p))
	s.must(s.Discard(t.Context(), idOf(1)))
	s.must(s.Erase(t.Context(), idOf(1)))
	_, err = s.Picture(t.Context(), idOf(1), "abc.png")
	s.want(store.NotFound, err)
}

func ticks(t *testing.T, s *tried) {
	_, err := s.Tick(t.Context(), idOf(1), nil)
	s.want(store.NotFound, err)
	_, err = s.Tick(t.Context(), idOf(1), []store.Tick{{Key: "cut|1", On: true, Turn: 1}})
	s.want(store.NotFound, err)
	s.push(idOf(1), 0, doc("Hall", 1))
	is := func(want ...store.Tick) {
		t.Helper()
		got, err := s.Tick(t.Context(), idOf(1), nil)
		s.must(err)
		if !slices.Equal(got, want) {
			t.Errorf("ticks %v, want %v", got, want)
		}
	}
	tick := func(ticks ...store.Tick) {
		t.Helper()
		_, err := s.Tick(t.Context(), idOf(1), ticks)
		s.must(err)
	}
	is()
	tick(store.Tick{Key: "hung|1", On: true, Turn: 2}, store.Tick{Key: "cut|1", On: true, Turn: 1})
	is(store.Tick{Key: "cut|1", On: true, Turn: 1}, store.Tick{Key: "hung|1", On: true, Turn: 2})
	tick(store.Tick{Key: "hung|1", Turn: 1}) // before
	tick(store.Tick{Key: "hung|1", Turn: 2}) // neither has heard of the other
	tick(store.Tick{Key: "cut|1", Turn: 3})  // after
	is(store.Tick{Key: "cut|1", Turn: 3}, store.Tick{Key: "hung|1", On: true, Turn: 2})
	for _, wrong := range []store.Tick{{Turn: 1}, {Key: "cut|1"}, {Key: "cut|1", Turn: -1}} {
		_, err = s.Tick(t.Context(), idOf(1), []store.Tick{wrong})
		s.want(store.Invalid, err)
	}
	many := make([]store.Tick, store.MostTicks)
	for i := range many {
		many[i] = store.Tick{Key: fmt.Sprint("n", i), Turn: 1}
	}
	_, err = s.Tick(t.Context(), idOf(1), many)
	s.want(store.TooLarge, err)
	s.must(s.Discard(t.Context(), idOf(1)))
	s.must(s.Erase(t.Context(), idOf(1)))
	s.push(idOf(1), 0, doc("Hall", 1))
	is()
}

func nothingThere(t *testing.T, s *tried) {
	_, err := s.Get(t.Context(), idOf(1))
	s.want(store.NotFound, err)
	s.push(idOf(1), 0, doc("Hall", 1))
	_, err = s.Version(t.Context(), idOf(1), 2)
	s.want(store.NotFound, err)
	s.want(store.NotFound, s.Discard(t.Context(), idOf(2)))
	s.must(s.Ping(t.Context()))
}
