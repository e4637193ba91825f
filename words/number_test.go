package words_test

import (
	"testing"

	"firstdrop/words"
)

// Lengths are not broken across lines.
func TestUnbroken(t *testing.T) {
	for text, want := range map[string]string{
		"12 mm of 530 mm":         "12\u00a0mm of 530\u00a0mm",
		`3' 5 15/16" from`:        "3'\u00a05\u00a015/16\" from",
		`7/8" wide`:               `7/8" wide`,
		"2400 mm on drops 11, 9":  "2400\u00a0mm on drops 11, 9",
		"drop 3 makes its corner": "drop 3 makes its corner",
		"9899 mm, and 3 mmm":      "9899\u00a0mm, and 3 mmm",
	} {
		if got := words.Unbroken(text); got != want {
			t.Errorf("words.Unbroken(%q) = %q, want %q", text, got, want)
		}
	}
}

// A sentence within another begins small, but for German nouns and names.
func TestWithin(t *testing.T) {
	for _, tt := range []struct{ lang, text, want string }{
		{"en-GB", "Wall A ends", "wall A ends"},
		{"de", "Die Tapete wächst", "die Tapete wächst"},
		{"de", "Wand A endet", "Wand A endet"},
		{"fr", "Étiquette", "étiquette"},
		{"fr", "", ""},
	} {
		if got := words.For(tt.lang).Within(tt.text); got != tt.want {
			t.Errorf("%s: %q within is %q, want %q", tt.lang, tt.text, got, tt.want)
		}
	}
}
