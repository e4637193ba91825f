package words

import (
	"os"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	got, err := parse("# remark\na = x {b} y\n  z\n\nn[one] = {n} roll\r\nn[other] = {n} rolls\nc.d-e_2 = {f}{g}\n")
	if err != nil {
		t.Fatal(err)
	}
	if s := spell(got["a"].forms["other"]); s != "x {b} y z" {
		t.Errorf("a = %q", s)
	}
	if s := spell(got["n"].forms["one"]) + "|" + spell(got["n"].forms["other"]); s != "{n} roll|{n} rolls" {
		t.Errorf("n = %q", s)
	}
	if s := spell(got["c.d-e_2"].forms["other"]); s != "{f}{g}" || len(got) != 3 {
		t.Errorf("c = %q of %d", s, len(got))
	}
}

// spell writes a text as it stands in its file.
func spell(t text) (s string) {
	for _, p := range t {
		if p.name != "" {
			s += "{" + p.name + "}"
		}
		s += p.plain
	}
	return s
}

func TestParseRefuses(t *testing.T) {
	for file, want := range map[string]string{
		"a":                    "line 1: a message is written: name = text",
		" a = b":               "line 1: this line goes on, and there is nothing to go on with",
		"a = b\n\n c":          "line 3: this line goes on, and there is nothing to go on with",
		"a = b\na = c":         "line 2: a is there twice; first on line 1",
		"a = ":                 "line 1: a: a message without a text",
		"\na = {b":             "line 2: a: a brace is opened and no name closed: {b",
		"a = b}":               "line 1: a: a brace is closed that was not opened",
		"a = {}":               "line 1: a: a brace is opened and no name closed: {}",
		"a[few] = b":           "line 1: a[few]: a form is [one] or [other]",
		"A = b":                `line 1: "A": a name has small letters, digits, dots and dashes`,
		" = b":                 "line 1: this line goes on, and there is nothing to go on with",
		"= b":                  "line 1: a message is written: name = text",
		"a = \xff":             "line 1: not UTF-8",
		"a[one] = x":           "line 1: a has the form one and not other",
		"a[one] = x\n[o] = x ": "line 2: [o]: a form is [one] or [other]",
	} {
		if _, err := parse(file); err == nil || err.Error() != want {
			t.Errorf("%q: %v, want %s", file, err, want)
		}
	}
}

// Whatever a file holds, it is refused with a line, or every message has a text
// in its usual form, and comes out again the same.
func FuzzParse(f *testing.F) {
	for _, l := range locales {
		data, err := os.ReadFile("catalogue/" + l.tag + ".txt")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(data))
	}
	f.Add("a[one] = {n} x\na[other] = {n}\n  {b}")
	f.Fuzz(func(t *testing.T, file string) {
		got, err := parse(file)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "line ") {
				t.Errorf("no line: %v", err)
			}
			return
		}
		var b strings.Builder
		for id, m := range got {
			if len(m.forms["other"]) == 0 {
				t.Fatalf("%s has no usual form", id)
			}
			for form, text := range m.forms {
				b.WriteString(id + "[" + form + "] = " + spell(text) + "\n")
			}
		}
		again, err := parse(b.String())
		if err != nil || len(again) != len(got) {
			t.Fatalf("%v: %d messages of %d from %q", err, len(again), len(got), b.String())
		}
		for id, m := range got {
			for form, text := range m.forms {
				if spell(again[id].forms[form]) != spell(text) {
					t.Errorf("%s: %q came back as %q", id, spell(text), spell(again[id].forms[form]))
				}
			}
		}
	})
}
