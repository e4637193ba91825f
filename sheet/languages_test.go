package sheet_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/text"
	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/sheet"
	"firstdrop/words"
)

// examples plans every example once.
func examples(t *testing.T) map[string]*plan.Plan {
	t.Helper()
	files, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(files) < 15 {
		t.Fatalf("%d examples: %v", len(files), err)
	}
	plans := map[string]*plan.Plan{}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		j, p := planned(t, name, data)
		p.Findings = append(j.Findings(), p.Findings...)
		finding.Sort(p.Findings)
		plans[strings.TrimSuffix(filepath.Base(name), ".yaml")] = p
	}
	return plans
}

// In every language, in both systems, every word on every wall of every example
// has its place: on the page, over no other word, and not cut off.
func TestWordsHaveTheirPlaceInEveryLanguage(t *testing.T) {
	for name, p := range examples(t) {
		for _, tag := range words.Languages() {
			for _, sys := range []measure.System{measure.Metric, measure.Imperial} {
				for r := range p.Runs {
					for w := range p.Runs[r].Layout.Run.Walls {
						where := fmt.Sprintf("%s, %s, %v, wall %s", name, tag, sys, p.Runs[r].Layout.Run.WallName(w))
						n := haveTheirPlace(t, where, sheet.Wall(p, r, w, sheet.Options{System: sys, Lang: words.For(tag)}))
						if want := haveTheirPlace(t, where, sheet.Wall(p, r, w, sheet.Options{System: sys})); n != want {
							t.Errorf("%s: %d sizes, %d in English", where, n, want)
						}
					}
				}
			}
		}
	}
}

// haveTheirPlace checks the words of a wall and counts those among its sizes,
// which must not be left out for want of room.
func haveTheirPlace(t *testing.T, where string, s *draw.Scene) (sizes int) {
	t.Helper()
	var all []draw.Text
	s.Walk(func(layer string, it draw.Item) {
		word, ok := it.(draw.Text)
		if !ok {
			return
		}
		if !s.Window.Contains(word.Box()) {
			t.Errorf("%s: %q leaves the page", where, word.Text)
		}
		if layer == "sizes" {
			sizes++
		}
		if wide := text.Width(word.Text, word.Size, word.Bold); wide > draw.TextWidth(word.Text, word.Size, word.Bold) {
			t.Errorf("%s: %q is wider than its box", where, word.Text)
		}
		if strings.HasSuffix(word.Text, "…") {
			t.Errorf("%s: %q is cut off", where, word.Text)
		}
		for _, other := range all {
			if word.Box().Grown(-mm / 10).Overlaps(other.Box().Grown(-mm / 10)) {
				t.Errorf("%s: %q covers %q", where, word.Text, other.Text)
			}
		}
		all = append(all, word)
	})
	return sizes
}

// What a finding says is whole in every language: everything filled in.
func TestFindingsAreWholeInEveryLanguage(t *testing.T) {
	for name, p := range examples(t) {
		for _, tag := range words.Languages() {
			for _, f := range p.Findings {
				text := sheet.Words(f, words.For(tag))
				if strings.ContainsAny(text, "{}") || strings.Contains(text, "  ") || strings.Contains(text, words.For(tag).Text("size.unknown")) {
					t.Errorf("%s, %s: %q", name, tag, text)
				}
			}
		}
	}
}

// source calls do for everything in the Go files of a folder that are no tests.
func source(t *testing.T, dir string, do func(where string, n ast.Node) bool) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no source in %s: %v", dir, err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if n == nil {
				return true
			}
			return do(set.Position(n.Pos()).String(), n)
		})
	}
}

// Every message that the program asks for by name is there, and is given what it
// has filled in; none is there for nothing.
func TestMessagesAreAskedForRightly(t *testing.T) {
	c := words.For("")
	var literals []string
	asked := 0
	for _, dir := range []string{".", "../words", "../cmd/firstdrop"} {
		source(t, dir, func(where string, n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				if s, err := strconv.Unquote(lit.Value); err == nil {
					literals = append(literals, s)
				}
			}
			id, given, ok := message(n)
			if !ok {
				return true
			}
			asked++
			if !c.Has(id) {
				t.Errorf("%s: there is no message %s", where, id)
			}
			for _, need := range c.Needs(id) {
				if !slices.Contains(given, need) {
					t.Errorf("%s: %s needs %s", where, id, need)
				}
			}
			for _, name := range given {
				if !slices.Contains(c.Needs(id), name) {
					t.Errorf("%s: %s has no use for %s", where, id, name)
				}
			}
			return true
		})
	}
	if asked < 60 {
		t.Errorf("only %d messages are asked for", asked)
	}
	for _, id := range c.IDs() {
		if !slices.ContainsFunc(literals, func(s string) bool { return s == id || isStem(s) && strings.HasPrefix(id, s) }) {
			t.Errorf("nobody asks for %s", id)
		}
	}
}

// isStem reports whether a literal is the beginning of the names of messages.
func isStem(s string) bool { return len(s) > 2 && (s[len(s)-1] == '.' || s[len(s)-1] == '-') }

// message returns what a call of text, Text or say asks for: the name, and the
// names of what it gives, where they stand there as they are.
func message(n ast.Node) (id string, given []string, ok bool) {
	call, isCall := n.(*ast.CallExpr)
	if !isCall || len(call.Args) == 0 {
		return "", nil, false
	}
	name := ""
	switch f := call.Fun.(type) {
	case *ast.SelectorExpr:
		name = f.Sel.Name
	case *ast.Ident:
		name = f.Name
	}
	if name != "text" && name != "Text" && name != "say" {
		return "", nil, false
	}
	id, ok = literal(call.Args[0])
	if !ok || !strings.Contains(id, ".") || call.Ellipsis.IsValid() {
		return "", nil, false
	}
	for i := 1; i < len(call.Args); i += 2 {
		name, _ := literal(call.Args[i])
		given = append(given, name)
	}
	return id, given, true
}

func literal(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(lit.Value)
	return s, err == nil
}

// sentence is what only people read: two words with a space between.
var sentence = regexp.MustCompile(`[A-Za-z]{2,}[,:;]? [A-Za-z]{2,}`)

// No sentence for people stands in the package's code. Errors for programmers
// begin with the package's name.
func TestNoSentencesInCode(t *testing.T) {
	source(t, ".", func(where string, n ast.Node) bool {
		lit, ok := n.(*ast.BasicLit)
		if !ok || lit.Kind != token.STRING {
			return true
		}
		s, err := strconv.Unquote(lit.Value)
		if err != nil || strings.HasPrefix(s, "sheet: ") || strings.HasPrefix(s, "wall %s, %v wide, has no room") {
			return true // errors
		}
		if sentence.MatchString(s) {
			t.Errorf("%s: %q belongs into the catalogues", where, s)
		}
		return true
	})
}
