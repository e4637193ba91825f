package text_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"firstdrop/draw/text"
	"firstdrop/measure"
)

const mm = measure.Millimetre

func TestWrapped(t *testing.T) {
	for _, tt := range []struct {
		text string
		room measure.Length
		want []string
	}{
		{"", 40 * mm, nil},
		{"   ", 40 * mm, nil},
		{"Wall A", 40 * mm, []string{"Wall A"}},
		{"first\nsecond", 40 * mm, []string{"first", "second"}},
		{"one two three four five six", 25 * mm, []string{"one two", "three four", "five six"}},
		{"half-drop match", 16 * mm, []string{"half-", "drop", "match"}},
		{"12 m", 1, []string{"1", "2", "m"}},
	} {
		if got := text.Wrapped(tt.text, 5*mm, false, tt.room); !slices.Equal(got, tt.want) {
			t.Errorf("%q in %v: %q, want %q", tt.text, tt.room, got, tt.want)
		}
	}
}

// Nothing is wider than its room, unless it is one letter; no letter is lost.
func TestWrappedHoldsItsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, bold := names(300).Draw(t, "text"), rapid.Bool().Draw(t, "bold")
		room := measure.Length(rapid.IntRange(1, 80).Draw(t, "room")) * mm
		lines := text.Wrapped(s, 4*mm, bold, room)
		for _, l := range lines {
			if w := text.Width(l, 4*mm, bold); w > room && text.Fitted(l, 4*mm, bold, w-1) != "" && graphemes(l) > 1 {
				t.Fatalf("%q is %v wide in %v", l, w, room)
			}
		}
		if got, want := bare(strings.Join(lines, "")), bare(s); got != want {
			t.Fatalf("%q became %q", want, got)
		}
	})
}

// graphemes counts letters, a letter with its marks as one.
func graphemes(s string) int {
	n := 0
	for rest := s; rest != ""; n++ {
		next := text.Wrapped(rest, mm, false, 1)
		if len(next) == 0 {
			break
		}
		rest = strings.TrimPrefix(rest, next[0])
	}
	return n
}

// bare returns the text without the blanks that a break may swallow.
func bare(s string) string { return strings.NewReplacer(" ", "", "\n", "").Replace(s) }

func TestFittedHoldsItsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, bold := names(300).Draw(t, "text"), rapid.Bool().Draw(t, "bold")
		room := measure.Length(rapid.IntRange(0, 90).Draw(t, "room")) * mm
		short := text.Fitted(s, 4*mm, bold, room)
		if w := text.Width(short, 4*mm, bold); w > room {
			t.Fatalf("%q is %v wide in %v", short, w, room)
		}
		if short != s && short != "" && (!strings.HasSuffix(short, "…") || !strings.HasPrefix(s, strings.TrimSuffix(short, "…"))) {
			t.Fatalf("%q became %q", s, short)
		}
		if !utf8.ValidString(short) {
			t.Fatalf("%q is no text", short)
		}
	})
}

func FuzzWrapped(f *testing.F) {
	for _, s := range []string{"", "Wall A", "שלום 12", strings.Repeat("long ", 60), "a\x00b\u202ec", "\xff\xfe", "壁\xb7🏽\u200d\xe5%%", "👷🏽\u200d壁"} {
		f.Add(s, int64(20*mm), true)
	}
	f.Fuzz(func(t *testing.T, s string, room int64, bold bool) {
		if len(s) > 2000 {
			return
		}
		text.Wrapped(s, 4*mm, bold, measure.Length(room))
		if short := text.Fitted(s, 4*mm, bold, measure.Length(room)); room >= 0 && text.Width(short, 4*mm, bold) > measure.Length(room) {
			t.Fatalf("%q does not fit", short)
		}
	})
}
