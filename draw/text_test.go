package draw_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/measure"
)

// The widths are held against three plain faces: the sums of advance widths of
// "0123456789" and "Hamburgefonts" in thousandths of the size, read from the
// hmtx tables of DejaVu Sans 2.37 (plain and bold) and Liberation Sans 2.1.
func TestTextWidthHoldsRealFaces(t *testing.T) {
	tests := []struct {
		text   string
		bold   bool
		dejavu measure.Length
		other  measure.Length
	}{
		{"0123456789", false, 6370, 5570},
		{"0123456789", true, 6960, 5570},
		// H a m b u r g e f o n t s
		{"Hamburgefonts", false, 752 + 613 + 975 + 635 + 634 + 412 + 635 + 616 + 353 + 612 + 634 + 393 + 521, 723 + 557 + 834 + 557 + 557 + 334 + 557 + 557 + 278 + 557 + 557 + 278 + 500},
	}
	for _, tt := range tests {
		got := draw.TextWidth(tt.text, 1000, tt.bold)
		if got < tt.dejavu || got < tt.other {
			t.Errorf("TextWidth(%q) = %d, too narrow for %d and %d", tt.text, got, tt.dejavu, tt.other)
		}
		if got > tt.dejavu*101/100 {
			t.Errorf("TextWidth(%q) = %d, far more than the widest face's %d", tt.text, got, tt.dejavu)
		}
	}
}

func TestTextWidthOfOtherScripts(t *testing.T) {
	// Widths in DejaVu Sans 2.37: ж 902, Я 630, Ω 765, × 838, → 838, … 1000.
	for text, least := range map[string]measure.Length{"ж": 902, "Я": 630, "Ω": 765, "→": 838, "…": 1000, "壁": 1000, "é": 616} {
		if got := draw.TextWidth(text, 1000, false); got < least {
			t.Errorf("TextWidth(%q) = %d, less than %d", text, got, least)
		}
	}
	if got, want := draw.TextWidth("e\u0301", 1000, false), draw.TextWidth("e", 1000, false); got != want {
		t.Errorf("a combining accent takes room: %d, want %d", got, want)
	}
}

func TestTextBox(t *testing.T) {
	w := draw.TextWidth("drop", 10*mm, false)
	tests := []struct {
		text draw.Text
		want draw.Box
	}{
		{draw.Text{}, draw.BoxAt(50*mm, 50*mm-2400*mm/1000, w, 10*mm)},
		{draw.Text{Anchor: draw.Middle}, draw.BoxAt(50*mm-w/2, 50*mm-2400*mm/1000, w, 10*mm)},
		{draw.Text{Anchor: draw.End}, draw.BoxAt(50*mm-w, 50*mm-2400*mm/1000, w, 10*mm)},
		{draw.Text{Turn: draw.Upwards}, draw.BoxAt(50*mm-7600*mm/1000, 50*mm, 10*mm, w)},
		{draw.Text{Turn: draw.Upwards, Anchor: draw.End}, draw.BoxAt(50*mm-7600*mm/1000, 50*mm-w, 10*mm, w)},
	}
	for _, tt := range tests {
		tt.text.Text, tt.text.Size, tt.text.At = "drop", 10*mm, pt(50, 50)
		if got := tt.text.Box(); got != tt.want {
			t.Errorf("anchor %d, turn %d: %v, want %v", tt.text.Anchor, tt.text.Turn, got, tt.want)
		}
	}
}

func TestWrapped(t *testing.T) {
	one := draw.TextWidth("0", mm, false)
	tests := []struct {
		text string
		room measure.Length // in digits
		want string
	}{
		{"", 9, ""},
		{"00 00", 9, "00 00"},
		{"00 00", 3, "00/00"},
		{"00000", 2, "00/00/0"},
		{"0 00000", 2, "0/00/00/0"},
		{"  00  ", 9, "00"},
		{"00", 0, "0/0"}, // one letter a line is the least
	}
	for _, tt := range tests {
		if got := strings.Join(draw.Wrapped(tt.text, mm, false, tt.room*one), "/"); got != tt.want {
			t.Errorf("Wrapped(%q, %d digits) = %q, want %q", tt.text, tt.room, got, tt.want)
		}
	}
}

func TestWrappedKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("abW éж壁 ")), 0, 60, -1).Draw(t, "text")
		room := measure.Length(rapid.IntRange(2000, 12000).Draw(t, "room"))
		lines := draw.Wrapped(text, 1000, true, room)
		strip := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := strip(strings.Join(lines, "")); got != strip(text) {
			t.Fatalf("Wrapped(%q) = %q", text, lines)
		}
		for _, l := range lines {
			if draw.TextWidth(l, 1000, true) > room {
				t.Fatalf("line %q of %q is wider than %d", l, text, room)
			}
		}
	})
}

func TestWithin(t *testing.T) {
	const name = "chimney breast"
	full := draw.TextWidth(name, 5*mm, false)
	for _, c := range []struct {
		room, least  measure.Length
		smaller, cut bool
	}{
		{full, 2 * mm, false, false},
		{full * 2 / 3, 2 * mm, true, false},
		{full / 3, 3 * mm, true, true},
		{full / 3, 9 * mm, false, true},
		{0, 2 * mm, true, true},
	} {
		got := draw.Text{Text: name, Size: 5 * mm}.Within(c.room, c.least)
		if w := draw.TextWidth(got.Text, got.Size, false); w > c.room || (got.Size < 5*mm) != c.smaller || (got.Text != name) != c.cut {
			t.Errorf("within %v, at least %v: %q in %v, %v wide", c.room, c.least, got.Text, got.Size, w)
		}
	}
}

func TestFitted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("abW éж壁")), 0, 40, -1).Draw(t, "text")
		room := measure.Length(rapid.IntRange(0, 30000).Draw(t, "room"))
		got := draw.Fitted(text, 1000, false, room)
		switch {
		case draw.TextWidth(got, 1000, false) > room:
			t.Fatalf("Fitted(%q) = %q, wider than %d", text, got, room)
		case got == text:
		case got == "" && draw.TextWidth(string([]rune(text)[:1])+"…", 1000, false) <= room:
			t.Fatalf("Fitted(%q) gives up with room %d", text, room)
		case got != "" && !strings.HasPrefix(text, strings.TrimSuffix(got, "…")):
			t.Fatalf("Fitted(%q) = %q", text, got)
		}
	})
}
