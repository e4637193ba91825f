package store

import (
	"encoding/json"
	"testing"
)

func TestNameOf(t *testing.T) {
	for document, want := range map[string]string{
		`{"name": "Hall"}`: "Hall",
		`{"room": {"name": "x"}, "name": "A \"b\" \u00e4"}`: `A "b" ä`,
		`{"name": "a", "name": "b"}`:                        "b",
		`{"name": ["a"]}`:                                   "",
		`{"name": null}`:                                    "",
		`{"name": " two\nlines\u0007 "}`:                    "two lines",
		`{}`:                                                "",
		`[]`:                                                "",
		``:                                                  "",
	} {
		if got := NameOf([]byte(document)); got != want {
			t.Errorf("NameOf(%s) = %q, want %q", document, got, want)
		}
	}
}

func TestWithName(t *testing.T) {
	for document, want := range map[string]string{
		`{ "n" : 1.50, "name" :"Hall" , "x": {"name": 1}}`: `{ "n" : 1.50, "name" :"New" , "x": {"name": 1}}`,
		`{"firstdrop": 1}`: `{"name":"New","firstdrop": 1}`,
		` { } `:            ` {"name":"New" } `,
		`{"name": 7}`:      `{"name": "New"}`,
	} {
		if got := string(WithName([]byte(document), "New")); got != want {
			t.Errorf("WithName(%s) = %s, want %s", document, got, want)
		}
	}
}

func TestParseID(t *testing.T) {
	if id, err := ParseID("01890a5d-ac96-774b-bcce-b302099a8057"); err != nil || id != "01890a5d-ac96-774b-bcce-b302099a8057" {
		t.Error(id, err)
	}
	for _, text := range []string{
		"", "..", "01890a5d-ac96-774b-bcce-b302099a805", "01890a5d-ac96-774b-bcce-b302099a80577", "01890A5D-AC96-774B-BCCE-B302099A8057",
		"01890a5d/ac96-774b-bcce-b302099a8057", "01890a5d-ac96-774b-bcce-b302099a805\x00", "01890a5d-ac96-774b-bcce-b302099a80ß",
		"0-890a5d-ac96-774b-bcce-b302099a8057",
	} {
		if id, err := ParseID(text); err == nil || CodeOf(err) != Invalid {
			t.Errorf("%q is read as %q, %v", text, id, err)
		}
	}
}

// Whatever a document is, finding its name fails on none; and a sound one has the
// name that it was given.
func FuzzWithName(f *testing.F) {
	for _, s := range []string{`{"name": "Hall"}`, `{}`, `{"a": [{"name": 1}]}`, `{"name":"a","name":"b"}`, `[`} {
		f.Add([]byte(s), "New")
	}
	f.Fuzz(func(t *testing.T, document []byte, name string) {
		NameOf(document)
		r := Revision{Document: document}
		if r.check() != nil || CheckWords("name", name) != nil {
			return
		}
		renamed := WithName(document, name)
		if got := NameOf(renamed); got != clipped(name) || !json.Valid(renamed) {
			t.Errorf("%q renamed %q is %q, called %q", document, name, renamed, got)
		}
	})
}
