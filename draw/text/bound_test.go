package text_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/draw/text"
)

// draw.TextWidth says how wide a text may come out at most, and drawings are laid
// out by it: no letter that the fonts hold may come out wider.
func TestNoLetterIsWiderThanDrawSays(t *testing.T) {
	wrong := 0
	for _, bold := range []bool{false, true} {
		for r := rune(' '); r < 0x1f600; r++ {
			if r >= 0xd800 && r < 0xe000 || draw.Clean(string(r)) != string(r) {
				continue
			}
			got, most := text.Width(string(r), text.Em, bold), draw.TextWidth(string(r), text.Em, bold)
			if got > most && wrong < 20 {
				wrong++
				t.Errorf("%q (%U, bold %v) is %d wide, draw says %d at most", r, r, bold, got, most)
			}
		}
	}
}

// names are made of letters of every script that rooms are named in, and signs.
func names(most int) *rapid.Generator[string] {
	letters := []rune("abcWMÄéßŁőΩωЖщ 0123456789.,:;/()'\"-–—…×½⅜←→≤≈✓⚠☂אבגדהוזشقةدارسلام٣٤हिन्दीक्षत्रทำ้กาაბՀայ壁紙🧻👷🏽\u200d\u0301\u064b")
	return rapid.StringOfN(rapid.OneOf(rapid.SampledFrom(letters), rapid.Rune()), 0, most, -1)
}

func TestNoTextIsWiderThanDrawSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line, bold := draw.Clean(names(300).Draw(t, "line")), rapid.Bool().Draw(t, "bold")
		if got, most := text.Width(line, text.Em, bold), draw.TextWidth(line, text.Em, bold); got > most {
			t.Fatalf("%q is %d wide, draw says %d at most", line, got, most)
		}
	})
}
