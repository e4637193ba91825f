package text_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw/text"
)

// fontsOf returns the fonts of a line's runs from left to right, each with what
// it shows in the order of reading.
func fontsOf(line string, bold bool) string {
	var all []string
	for _, r := range text.Shape(line, bold).Runs {
		all = append(all, strings.TrimPrefix(r.Font.Name, "NotoSans")+" "+strings.TrimSpace(string(r.Text)))
	}
	return strings.Join(all, "|")
}

func TestEachLetterInTheFirstFontThatHasIt(t *testing.T) {
	for _, tt := range []struct {
		line string
		bold bool
		want string
	}{
		{"Wall 1", false, "-Regular Wall 1"},
		{"Wall 1", true, "-Bold Wall 1"},
		{"Ωmega Щука", false, "-Regular Ω|-Regular mega|-Regular Щука"}, // one font, three scripts
		{"a → b", false, "-Regular a|Math-Regular →|-Regular b"},
		{"שלום", true, "Hebrew-Bold שלום"},
		{"غرفة 12", false, "-Regular 12|Arabic-Regular غرفة"}, // the number stands on the left
		{"हिन्दी", false, "Devanagari-Regular हिन्दी"},
		{"✓ done", true, "Symbols2-Regular ✓|-Bold done"},
	} {
		if got := fontsOf(tt.line, tt.bold); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.line, got, tt.want)
		}
	}
}

// What hb-shape 6.0.0 (HarfBuzz, Debian package libharfbuzz-bin) says for the same
// files: number and advance of every glyph.
func TestShapesAsHarfBuzzDoes(t *testing.T) {
	for _, tt := range []struct{ line, want string }{
		{"Wall", "58+910 68+561 79+258 79+258"}, // W and a are set closer
		{"لا", "700+582"},                       // two letters become one
		{"क्षत्र", "179+712 269+552"},           // two stacks of consonants
	} {
		var got []string
		for _, r := range text.Shape(tt.line, false).Runs {
			for _, g := range r.Glyphs {
				got = append(got, fmt.Sprintf("%d+%d", g.ID, g.Advance))
			}
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%s: %s, want %s", tt.line, s, tt.want)
		}
	}
}

func TestLineAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line, bold := names(60).Draw(t, "line"), rapid.Bool().Draw(t, "bold")
		l := text.Shape(line, bold)
		x, letters := 0, 0
		for _, r := range l.Runs {
			if r.X != x {
				t.Fatalf("a run begins at %d, want %d", r.X, x)
			}
			sum := 0
			for _, g := range r.Glyphs {
				sum += g.Advance
				if g.From < 0 || g.To > len(r.Text) || g.From >= g.To {
					t.Fatalf("a glyph shows letters %d to %d of %d", g.From, g.To, len(r.Text))
				}
			}
			if sum != r.Width {
				t.Fatalf("a run is %d wide, its glyphs %d", r.Width, sum)
			}
			x, letters = x+r.Width, letters+len(r.Text)
		}
		if x != l.Width || letters != len([]rune(line)) {
			t.Fatalf("width %d, runs %d; %d letters, runs %d", l.Width, x, len([]rune(line)), letters)
		}
	})
}
