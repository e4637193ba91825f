package words

import (
	"testing"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
)

// The independent list is the Unicode CLDR data in golang.org/x/text. (Its
// French has no third form for whole millions yet.)
func TestPluralsAgreeWithCLDR(t *testing.T) {
	names := map[plural.Form]string{plural.One: "one", plural.Other: "other"}
	for _, l := range locales {
		tag := tagOf(t, l.tag)
		for n := range 1200 {
			want := names[plural.Cardinal.MatchPlural(tag, n, 0, 0, 0, 0)]
			if got := l.plural(n); got != want {
				t.Errorf("%s: %d is %s, CLDR says %s", l.tag, n, got, want)
			}
		}
	}
}

func tagOf(t *testing.T, tag string) language.Tag {
	t.Helper()
	parsed, err := language.Parse(tag)
	if err != nil {
		t.Fatal(err)
	}
	return parsed
}
