package text

import (
	"fmt"
	"math/rand/v2"
	"os/exec"
	"strings"
	"testing"

	"firstdrop/internal/oracle"
)

// visual returns a line's letters as they stand from left to right, brackets
// turned where they run from right to left.
func visual(line string) string {
	base := 0
	if IsRightToLeft(line) {
		base = 1
	}
	runes := []rune(line)
	var b strings.Builder
	for _, s := range spans(runes, base) {
		for i := range s.to - s.from {
			if s.level%2 == 0 {
				b.WriteRune(runes[s.from+i])
			} else {
				b.WriteRune(mirrored(runes[s.to-1-i]))
			}
		}
	}
	return b.String()
}

func mirrored(r rune) rune {
	for open, shut := range map[rune]rune{'(': ')', '[': ']', '<': '>', '{': '}'} {
		switch r {
		case open:
			return shut
		case shut:
			return open
		}
	}
	return r
}

// By hand, by the rules of UAX #9. Capitals stand for Hebrew letters.
func TestOrder(t *testing.T) {
	hebrew := func(s string) string {
		return strings.Map(func(r rune) rune {
			if r >= 'A' && r <= 'Z' {
				return r - 'A' + 'א'
			}
			return r
		}, s)
	}
	for _, tt := range []struct{ line, want string }{
		{"", ""},
		{"plain", "plain"},
		{"ABC", "CBA"},
		{"wall ABC 12 high", "wall 12 CBA high"}, // the number belongs to the Hebrew word
		{"wall 12 ABC", "wall 12 CBA"},
		{"ABC 12", "12 CBA"},
		{"ABC 2.40 m x 12%", "m x 12% 2.40 CBA"},
		{"ABC (de) F", "F (de) CBA"},
		{"a (BC) d", "a (CB) d"},
		{"ab, CD, EF.", "ab, FE ,DC."},
		{"ABC!", "!CBA"},
		{"ABC  ", "  CBA"},
	} {
		if got := visual(hebrew(tt.line)); got != hebrew(tt.want) {
			t.Errorf("%s stands as %q, want %s", tt.line, got, tt.want)
		}
	}
}

// fribidi is an independent reading of UAX #9 (GNU FriBidi, Debian package
// libfribidi-bin).
func TestOrderAgainstFriBidi(t *testing.T) {
	tool := oracle.Tool(t, "fribidi")
	letters := []rune("ab1290 .,:+-/%€()[]!אבגابت٣٤é ")
	random := rand.New(rand.NewPCG(5, 1))
	var lines []string
	for range 4000 {
		n := 1 + random.IntN(14)
		var b strings.Builder
		for range n {
			b.WriteRune(letters[random.IntN(len(letters))])
		}
		lines = append(lines, b.String())
	}
	cmd := exec.Command(tool, "--charset", "UTF-8", "--nobreak", "--novisual", "--levels")
	cmd.Stdin = strings.NewReader(strings.Join(lines, "\n") + "\n")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
	if len(want) != len(lines) {
		t.Fatalf("%d lines came back, want %d", len(want), len(lines))
	}
	wrong := 0
	for i, line := range lines {
		base := 0
		if IsRightToLeft(line) {
			base = 1
		}
		if got := strings.Trim(fmt.Sprint(levels([]rune(line), base)), "[]"); got != strings.TrimSpace(want[i]) && wrong < 10 {
			wrong++
			t.Errorf("%q has the levels\n%s, FriBidi says\n%s", line, got, want[i])
		}
	}
}
