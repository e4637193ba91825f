package main

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"firstdrop/measure"
	"firstdrop/plan"
)

// examples are the jobs that a user can open. All of them must plan.
func examples(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	return files
}

// called runs the program in this process.
func called(args ...string) (code int, stdout, stderr string) {
	var out, err bytes.Buffer
	code = run(context.Background(), args, strings.NewReader(""), &out, &err)
	return code, out.String(), err.String()
}

// The document of every example has what other programs rely on. That the
// figures are right is what package audit checks on the way; here they are held
// against each other.
func TestExamplesPlan(t *testing.T) {
	for _, file := range examples(t) {
		code, out, stderr := called("plan", file, "--json")
		if code != exitDone || stderr != "" {
			t.Errorf("%s: exit code %d, %s", file, code, stderr)
			continue
		}
		var doc struct {
			Summary struct{ Papers []map[string]any }
			Runs    []struct {
				Drops  []struct{ Number int }
				Pieces []any
			}
		}
		if err := json.Unmarshal([]byte(out), &doc); err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		drops, pieces := 0.0, 0.0
		for _, p := range doc.Summary.Papers {
			for _, key := range []string{"drops", "pieces", "rolls", "lower_bound", "proven", "area_estimate_rolls"} {
				if _, ok := p[key]; !ok {
					t.Errorf("%s: a paper's summary has no %s", file, key)
				}
			}
			drops += p["drops"].(float64)
			pieces += p["pieces"].(float64)
			if lower, buy := p["lower_bound"].(float64), p["buy"].(float64); lower > buy || p["proven"].(bool) != (lower == buy) {
				t.Errorf("%s: lower bound %v, rolls to buy %v, proven %v", file, lower, buy, p["proven"])
			}
		}
		for _, r := range doc.Runs {
			for _, d := range r.Drops {
				drops -= float64(min(d.Number, 1))
			}
			pieces -= float64(len(r.Pieces))
		}
		if drops != 0 || pieces != 0 {
			t.Errorf("%s: the papers' drops and pieces are not those of the runs: %v and %v too many", file, drops, pieces)
		}
	}
}

// The summary of every example fits a screen of 80 by 24, and those of one run do
// in both systems; it says the same twice.
func TestSummariesFit(t *testing.T) {
	for _, file := range examples(t) {
		code, first, _ := called("plan", file)
		_, second, _ := called("plan", file)
		if code != exitDone || first != second {
			t.Errorf("%s: exit code %d, two summaries differ (-first +second):\n%s", file, code, cmp.Diff(first, second))
		}
		other := "imperial"
		if strings.Contains(first, "sq ft") {
			other = "metric"
		}
		_, third, _ := called("plan", file, "--units", other)
		for _, out := range []string{first, third} {
			lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
			if runs := strings.Count(out, "\nStart "); len(lines) > 23 && (runs == 1 || out == first) {
				t.Errorf("%s: %d lines leave no room for the prompt:\n%s", file, len(lines), out)
			}
			for _, l := range lines {
				if n := utf8.RuneCountInString(l); n > plainWidth {
					t.Errorf("%s: a line of %d columns: %s", file, n, l)
				}
			}
		}
	}
}

// Colours change nothing but colours: without them the text is the plain one.
func TestColoursAreOnlyColours(t *testing.T) {
	p := &program{out: newScreen(io.Discard), err: newScreen(io.Discard), make: plan.Make}
	p.speak("")
	for _, file := range []string{"bay-window", "dado"} {
		pl, err := p.plan(t.Context(), "../../examples/"+file+".yaml", unitsFlag{})
		if err != nil {
			t.Fatal(err)
		}
		plain := strings.Join(p.out.summary(pl, nil), "\n")
		coloured := *p.out
		coloured.coloured = true
		text := strings.Join(coloured.summary(pl, nil), "\n")
		if !strings.Contains(text, "\x1b[1mBuy") || strings.Contains(plain, "\x1b") {
			t.Errorf("%s: colours where there should be none, or none where there should", file)
		}
		if got := regexp.MustCompile("\x1b\\[[0-9]*m").ReplaceAllString(text, ""); got != plain {
			t.Errorf("%s: without its colours the text differs (-want +got):\n%s", file, cmp.Diff(plain, got))
		}
	}
}

// Wider screens are used, but only so far as lines can be read; narrower ones
// get what they can take.
func TestSummaryUsesTheWidth(t *testing.T) {
	p := &program{out: newScreen(io.Discard), err: newScreen(io.Discard), make: plan.Make}
	p.speak("")
	pl, err := p.plan(t.Context(), "../../examples/bay-window.yaml", unitsFlag{})
	if err != nil {
		t.Fatal(err)
	}
	normal := screen{Writer: io.Discard, width: plainWidth, height: 60}
	lines := len(normal.summary(pl, nil))
	for _, tt := range []struct{ width, sign int }{{60, 1}, {mostWidth, -1}} {
		s := screen{Writer: io.Discard, width: tt.width, height: 60}
		got := s.summary(pl, nil)
		if (len(got)-lines)*tt.sign <= 0 {
			t.Errorf("%d columns: %d lines, with 80 columns %d", tt.width, len(got), lines)
		}
		for _, l := range got {
			if n := utf8.RuneCountInString(l); n > tt.width {
				t.Errorf("%d columns: a line of %d: %s", tt.width, n, l)
			}
		}
	}
}

// Stairs are told by a floor that rises; a high room by its height; current by
// what is on the walls. The texts are held against the rooms as they are drawn
// in the examples.
func TestCareIsTakenWhereItIsNeeded(t *testing.T) {
	for _, tt := range []struct {
		file, want, not string
	}{
		{"stair-wall", "safe platform", "Power off"},
		{"tall-room", "safe platform", "Power off"},
		{"dado", "Power off at the board", "safe platform"},
		{"plain-room", "Mind the blade", "safe platform"},
	} {
		_, out, _ := called("plan", "../../examples/"+tt.file+".yaml")
		lines, _, _ := strings.Cut(out[strings.Index(out, "Care:"):], "Lists and drawings:")
		care := strings.Join(strings.Fields(lines), " ")
		if !strings.Contains(care, tt.want) || strings.Contains(care, tt.not) || !strings.Contains(care, "lead and asbestos") {
			t.Errorf("%s: care %q, want %q and not %q", tt.file, care, tt.want, tt.not)
		}
		if n := strings.Count(lines, "\n"); n > 2 {
			t.Errorf("%s: the cautions take %d lines", tt.file, n)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, tt := range []struct {
		text string
		want []string
	}{
		{"", nil},
		{"  ", nil},
		{"one", []string{"one"}},
		{"one two", []string{"one two"}},
		{"one two three", []string{"one two", "three"}},
		{"1′ 2½″ × ≈", []string{"1′ 2½″", "× ≈"}},
		{"overlong-word a", []string{"overlong-word", "a"}},
	} {
		if got := wrap(tt.text, 7); !cmp.Equal(got, tt.want) {
			t.Errorf("wrap(%q, 7) = %q, want %q", tt.text, got, tt.want)
		}
	}
}

// A label's sizes are in metres with at least two decimals, as labels print
// them, and exact.
func TestDecimal(t *testing.T) {
	for _, tt := range []struct {
		n    measure.Length
		want string
	}{
		{10050 * measure.Millimetre, "10.05"},
		{10 * measure.Metre, "10.00"},
		{685 * measure.Millimetre, "0.685"},
		{measure.Inch, "0.0254"},
		{measure.Nanometre, "0.000000001"},
	} {
		if got := speaking("").Decimal(int64(tt.n), int64(measure.Metre)); got != tt.want {
			t.Errorf("decimal(%v) = %s, want %s", tt.n, got, tt.want)
		}
	}
}

// What is taken on trust is said, and where nothing is, nothing is said.
func TestTrustIsTold(t *testing.T) {
	p := &program{out: newScreen(io.Discard), err: newScreen(io.Discard), make: plan.Make}
	p.speak("")
	pl, err := p.plan(t.Context(), "../../examples/bay-window.yaml", unitsFlag{})
	if err != nil {
		t.Fatal(err)
	}
	if got := pl.trusted(0, false); got != nil {
		t.Errorf("a proof that stands by itself: %q", got)
	}
	pl.plan.Papers[0].Batches[0].Cutting.Certificate.Exhausted = 1
	if got := pl.trusted(0, false); len(got) != 1 || !strings.Contains(got[0], "trust") {
		t.Errorf("a proof by search: %q", got)
	}
}
