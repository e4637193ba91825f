package job

import (
	"testing"

	"firstdrop/words"
)

// kitten and sitting are the textbook pair for edit distance; the others follow
// from the definition.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3},
		{"", "", 0},
		{"", "wall", 4},
		{"wall", "wall", 0},
		{"widht", "width", 1},
		{"hieght", "height", 1},
		{"corner", "corners", 1},
		{"ca", "abc", 3},
	} {
		if got := distance(c.a, c.b); got != c.want {
			t.Errorf("distance(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
		if got := distance(c.b, c.a); got != c.want {
			t.Errorf("distance(%q, %q) = %d, want %d", c.b, c.a, got, c.want)
		}
	}
}

func TestSuggest(t *testing.T) {
	known := []string{"name", "width", "height"}
	for word, want := range map[string]string{
		"Width":  "did you mean width?",
		"hight":  "did you mean height?",
		"colour": "known here: name, width, height",
		"x":      "known here: name, width, height",
		"":       "known here: name, width, height",
	} {
		if got := words.For("").Say(suggest(word, known)); got != want {
			t.Errorf("suggest(%q) = %q, want %q", word, got, want)
		}
	}
	if got := distance("a very long word that nobody would write as a key", "a"); got < 40 {
		t.Errorf("a long word is only %d away", got)
	}
}
