package main

import (
	"bytes"
	"encoding/hex"
	"encoding/json"
	"os"
	"strings"
	"testing"
)

// filtered is one program in both forms. The programs were written by hand from the
// WebAssembly Core Specification 2.0, 5.4 and 5.5, and how Go calls and jumps from
// cmd/internal/obj/wasm/wasmobj.go; the screen's unfilter.test.ts reads the same file.
type filtered struct {
	Name              string
	Program, Filtered hexLines
}

// hexLines are bytes, written in lines of hexadecimal digits and spaces.
type hexLines []byte

func (h *hexLines) UnmarshalJSON(data []byte) error {
	var lines []string
	if err := json.Unmarshal(data, &lines); err != nil {
		return err
	}
	all, err := hex.DecodeString(strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
	*h = all
	return err
}

func filteredCases(t testing.TB) (all []filtered) {
	t.Helper()
	data, err := os.ReadFile("testdata/filtered.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

func TestFilter(t *testing.T) {
	for _, c := range filteredCases(t) {
		got, err := filter(c.Program)
		if err != nil || !bytes.Equal(got, c.Filtered) {
			t.Errorf("%s: %v\n%x\nand not\n%x", c.Name, err, got, []byte(c.Filtered))
		}
	}
}

func TestFilterRefuses(t *testing.T) {
	code := func(body string) []section {
		return []section{{codeSection, append([]byte{1}, appendBytes(nil, []byte(body))...)}}
	}
	for _, c := range []struct {
		sections []section
		want     string
	}{
		{code("\x00"), "section 10: function 0: the file ends where more must follow"},
		{code("\x00\x0b\x01"), "section 10: function 0: instructions follow its end"},
		{code("\x00\xd0\x70\x0b"), "section 10: function 0: instruction 0xd0, which Go 1.26 does not write"},
		{code("\x00\xfc\x0c\x0b"), "section 10: function 0: instruction 0xfc 0x0c, which Go 1.26 does not write"},
		{code("\x00\xff\x01\x0b"), "section 10: function 0: instruction 0xff, which Go 1.26 does not write"},
		{code("\x00\x0c\x01\x0b"), "section 10: function 0: a branch leads out of its function"},
		{code("\x00\x0c\x80\x00\x0b"), "section 10: function 0: a number is longer than it need be"},
		{code("\x00\x0e\x05\x00\x0b"), "section 10: function 0: the file ends where more must follow"},
		{[]section{{codeSection, []byte{1, 9, 0}}}, "section 10: function 0: the file ends where more must follow"},
		{[]section{{codeSection, []byte{0, 0}}}, "section 10: more follows than it holds"},
		{[]section{{elementSection, []byte{1, 1, i32Const, 0, end, 0}}}, "section 9: the table of functions is filled otherwise than Go 1.26 does it"},
		{[]section{{elementSection, []byte{1, 0, i32Const, 0, 0, 0}}}, "section 9: the table of functions is filled otherwise than Go 1.26 does it"},
	} {
		if _, err := filter(join(c.sections)); err == nil || err.Error() != c.want {
			t.Errorf("%x: %v, and not %s", c.sections[0].body, err, c.want)
		}
	}
	if _, err := filter([]byte("\x00asm\x01\x00\x00\x00\x05\x83\x00\x01\x00\x01")); err != errLong {
		t.Errorf("a section's length in two bytes: %v", err)
	}
}

// What is filtered never gets lost: it is refused, or comes out longer than its header.
func FuzzFilter(f *testing.F) {
	for _, c := range filteredCases(f) {
		f.Add([]byte(c.Program))
	}
	f.Fuzz(func(t *testing.T, program []byte) {
		if got, err := filter(program); (err == nil) != bytes.HasPrefix(got, []byte(filteredHeader)) {
			t.Errorf("%x, %v", got, err)
		}
	})
}
