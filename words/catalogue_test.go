package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/words"
)

const mm = measure.Millimetre

// Every language has the same messages, and each has the same things filled in.
func TestLanguagesSayTheSame(t *testing.T) {
	first := words.For("en-GB")
	if n := len(first.IDs()); n < 200 {
		t.Errorf("only %d messages", n)
	}
	for _, tag := range words.Languages() {
		c := words.For(tag)
		if c.Tag() != tag {
			t.Errorf("%s gives %s", tag, c.Tag())
		}
		for _, id := range first.IDs() {
			if !c.Has(id) {
				t.Errorf("%s: %s is missing", tag, id)
			} else if got, want := c.Needs(id), first.Needs(id); !slices.Equal(got, want) {
				t.Errorf("%s: %s has %v filled in, want %v", tag, id, got, want)
			}
		}
		for _, id := range c.IDs() {
			if !first.Has(id) {
				t.Errorf("%s: %s is in no other language", tag, id)
			}
		}
	}
}

// A finding's code that is declared anywhere has a sentence in every language.
func TestEveryFindingHasASentence(t *testing.T) {
	n := 0
	for _, dir := range []string{"plan", "room", "paper", "hanging", "cutting", "order", "job"} {
		files, err := filepath.Glob(filepath.Join("..", dir, "*.go"))
		if err != nil || len(files) == 0 {
			t.Fatalf("no source of %s: %v", dir, err)
		}
		for _, name := range files {
			for _, code := range codes(t, name) {
				n++
				for _, tag := range words.Languages() {
					if !words.For(tag).Has("finding." + code) {
						t.Errorf("%s: no sentence for %s", tag, code)
					}
				}
			}
		}
	}
	if n < 40 {
		t.Errorf("only %d codes found", n)
	}
}

// codes reads the constants of type finding.Code from a file.
func codes(t *testing.T, name string) (out []string) {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(f, func(n ast.Node) bool {
		v, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		if sel, ok := v.Type.(*ast.SelectorExpr); !ok || sel.Sel.Name != "Code" {
			return true
		}
		for _, value := range v.Values {
			if code, err := strconv.Unquote(value.(*ast.BasicLit).Value); err == nil {
				out = append(out, code)
			}
		}
		return true
	})
	return out
}

// What a translator easily leaves behind: the same text as in English, a double
// space, or the wrong marks.
func TestTranslationsAreTranslated(t *testing.T) {
	same := []string{"Sockets", " the ", " of ", " and ", "drop "}
	for _, tag := range []string{"de", "fr"} {
		data, err := os.ReadFile("catalogue/" + tag + ".txt")
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range strings.Split(string(data), "\n") {
			_, text, ok := strings.Cut(l, " = ")
			if !ok || strings.HasPrefix(l, "#") {
				continue
			}
			for _, word := range same {
				if strings.Contains(" "+text+" ", word) {
					t.Errorf("%s.txt:%d: %q looks English: %s", tag, i+1, word, text)
				}
			}
			if strings.Contains(text, "  ") || strings.Contains(text, "'") {
				t.Errorf("%s.txt:%d: two spaces, or a straight apostrophe: %s", tag, i+1, text)
			}
		}
	}
}

// ownWords leaves out a term of labels, and words of the job document, which are written
// alike in every language.
var ownWords = strings.NewReplacer("half drop", "", "or centre, a line", "", "there is no centre", "", "centre  is not", "")

// American English is written as differences, and each is one.
func TestDifferencesDiffer(t *testing.T) {
	data, err := os.ReadFile("catalogue/en-US.txt")
	if err != nil {
		t.Fatal(err)
	}
	gb, us := words.For("en-GB"), words.For("en-US")
	n := 0
	for l := range strings.Lines(string(data)) {
		id, _, ok := strings.Cut(l, " = ")
		if !ok || strings.HasPrefix(l, "#") || strings.HasPrefix(l, " ") {
			continue
		}
		n++
		id, _, _ = strings.Cut(id, "[")
		if gb.Text(id) == us.Text(id) {
			t.Errorf("%s is said as in British English: %s", id, us.Text(id))
		}
	}
	if n < 20 {
		t.Errorf("only %d differences", n)
	}
	for _, id := range us.IDs() {
		for _, british := range []string{"drop ", "Drop ", "drops", "colour", "neighbour", "centre", "ocket"} {
			text := us.Fill(id, func(string) (any, bool) { return "", true })
			if strings.Contains(ownWords.Replace(text)+" ", british) {
				t.Errorf("%s: %q is British: %s", id, british, text)
			}
		}
	}
}

func TestText(t *testing.T) {
	l := 25025 * mm / 10
	for _, c := range []struct {
		got, want string
	}{
		{words.For("en-GB").Text("opening.wide", "size", l), "2502.5 mm wide"},
		{words.For("de").Text("opening.wide", "size", l), "2502,5 mm breit"},
		{words.For("fr").Text("opening.wide", "size", l), "largeur 2502,5 mm"},
		{words.For("de").In(measure.Imperial).Text("opening.wide", "size", 8*measure.Foot+measure.Inch/2), `8' 0 1/2" breit`},
		{words.For("de").Text("opening.wide"), "{size} breit"}, // a mistake that shows
		{words.For("de").Text("no.such"), "{no.such}"},
		{words.For("fr").Text("kill.free", "kill", "X"), "X\u00a0: le dernier lé est arasé ici\u00a0; ce papier n’a pas de motif à raccorder."},
		{words.For("fr").Text("place.over", "opening", "porte", "wall", "A"), "au-dessus de l’ouverture «\u00a0porte\u00a0» sur le mur A"},
		{(*words.Catalogue)(nil).Text("kind.door"), "door"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestForms(t *testing.T) {
	for tag, want := range map[string][3]string{
		"en-GB": {"0 rolls;", "1 roll;", "2 rolls;"},
		"de":    {"0 Rollen;", "1 Rolle;", "2 Rollen;"},
		"fr":    {"0 rouleau\u00a0;", "1 rouleau\u00a0;", "2 rouleaux\u00a0;"},
	} {
		for n, w := range want {
			if text := words.For(tag).Text("finding.area_misleads", "n", n, "paper", "Quince"); !strings.Contains(text, w) {
				t.Errorf("%s of %d: %q lacks %q", tag, n, text, w)
			}
		}
	}
}

func TestMatch(t *testing.T) {
	for tag, want := range map[string]string{
		"de_AT.UTF-8": "de", "de": "de", "DE-ch": "de", "fr_CA@euro": "fr", "en": "en-GB", "en_US.UTF-8": "en-US",
		"en-AU": "en-GB", "en-gb": "en-GB", "C": "", "POSIX": "", "": "", "C.UTF-8": "", "nl_NL": "", "deu": "", "d": "",
	} {
		got, ok := words.Match(tag)
		if got != want || ok != (want != "") {
			t.Errorf("%q is %q, %v; want %q", tag, got, ok, want)
		}
	}
	if words.For("nl").Tag() != "en-GB" || words.For("de_DE").Language() != "Deutsch" {
		t.Error("For does not fall back")
	}
}

func TestNumbers(t *testing.T) {
	de, fr, gb := words.For("de"), words.For("fr"), words.For("en")
	for _, c := range []struct{ got, want string }{
		{gb.Length(mm / 3), "≈ 0.3 mm"},
		{de.Length(mm / 3), "≈ 0,3 mm"},
		{de.Plain(mm / 3), "0,3 mm"},
		{de.Figure(25 * mm / 10), "2,5"},
		{de.In(measure.Imperial).Figure(measure.Inch), `1"`},
		{de.Exact(mm / 3), "0,333333 mm"},
		{de.Both(mm), `1 mm (1/16")`},
		{fr.Decimal(10050, 1000), "10,05"},
		{gb.Decimal(530, 1000), "0.53"},
		{gb.Decimal(-10125, 1000), "-10.125"},
		{de.Decimal(7, 1), "7,00"},
		{de.Money(money.Amount{Minor: 2490, Currency: "EUR"}), "24,90\u00a0EUR"},
		{gb.Money(money.Amount{Minor: 2490, Currency: "GBP"}), "24.90\u00a0GBP"},
		{de.Money(money.Amount{}), ""},
		{de.Number("1.5° and 3. 4.x .5"), "1,5° and 3. 4.x .5"},
		{gb.Date(2026, 11, 25), "25 November 2026"},
		{words.For("en-US").Date(2026, 11, 25), "November 25, 2026"},
		{de.Date(2026, 3, 1), "1. März 2026"},
		{fr.Date(2026, 8, 1), "1er août 2026"},
		{fr.Date(2026, 8, 2), "2 août 2026"},
		{gb.Page() + de.Page() + fr.Page() + words.For("en-US").Page(), "A4A4A4Letter"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestName(t *testing.T) {
	for name, want := range map[string]string{
		"window": "Fenster", "window 2": "Fenster 2", "left reveal": "linke Laibung", "wall 3": "Wand 3",
		"wall 1|wall 2": "Wand 1|Wand 2", "B, wall 2–A": "B, Wand 2–A", "Window": "Window", "window seat": "window seat",
		"A|B": "A|B", "": "", "|": "|", "garden window": "garden window", "wall ": "Wand ",
		"run 2": "Fläche 2", "run 1 wall 3": "Wand 3", "run 1 north": "Wand north", "run 1 A–C": "Wände A–C", "run 1 wall 2–wall 4": "Wand 2–Wand 4", "run 2, wall 3": "Fläche 2, Wand 3", "run to the sea": "run to the sea",
	} {
		if got := words.For("de").Name(name); got != want {
			t.Errorf("%q is %q, want %q", name, got, want)
		}
	}
}
