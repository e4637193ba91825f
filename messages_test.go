package firstdrop_test

import (
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

	"firstdrop/words"
)

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
	more, err := os.ReadFile("cmd/firstdrop/catalogue/en-GB.txt")
	if err != nil {
		t.Fatal(err)
	}
	c, err := words.For("").With(string(more))
	if err != nil {
		t.Fatal(err)
	}
	var literals []string
	asked := 0
	for _, dir := range []string{"words", "tell", "sheet", "screen", "screen/printing", "cmd/firstdrop"} {
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

// message returns what a call of text, Text, say or fail asks for: the name, and the
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
	args := call.Args
	switch name {
	case "text", "Text", "say":
	case "fail": // an exit code first
		args = args[1:]
	default:
		return "", nil, false
	}
	id, ok = literal(args[0])
	if !ok || !strings.Contains(id, ".") || call.Ellipsis.IsValid() {
		return "", nil, false
	}
	for i := 1; i < len(args); i += 2 {
		name, _ := literal(args[i])
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

// edge lists what stands in code and looks like a sentence, each with a reason.
var edge = []struct{ begins, why string }{
	{"sheet: ", "an error for programmers"},
	{"wall %s, %v wide, has no room", "an error, said in English at the edge"},
	{"firstdrop ", "a command as it is typed"},
	{"  firstdrop ", "the same, as an example"},
	{"begin next", "the name of a help text"},
}

// No sentence for people stands in the code of what speaks to them.
func TestNoSentencesInCode(t *testing.T) {
	for _, dir := range []string{"tell", "sheet", "cmd/firstdrop"} {
		source(t, dir, func(where string, n ast.Node) bool {
			if kv, ok := n.(*ast.KeyValueExpr); ok {
				if key, ok := kv.Key.(*ast.Ident); ok && key.Name == "Use" {
					return false // how a command is typed
				}
			}
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			s, err := strconv.Unquote(lit.Value)
			if err != nil || !sentence.MatchString(s) {
				return true
			}
			for _, e := range edge {
				if strings.HasPrefix(s, e.begins) {
					return true
				}
			}
			t.Errorf("%s: %q belongs into the catalogues", where, s)
			return true
		})
	}
}
