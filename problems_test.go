package firstdrop_test

import (
	"go/ast"
	"maps"
	"slices"
	"strings"
	"testing"

	"firstdrop/words"
)

// problem is a message that is made somewhere in the code: its code, its English
// ("" where only the catalogues have it), and the names of what it is given.
type problem struct {
	code, english string
	given         []string
}

// madeBy reads what a call makes: message.New(code, english, …), or in job
// says(code, …), whole(code, …), at(node, code, …), refuse(path, …, code, …).
func madeBy(n ast.Node) (p problem, ok bool) {
	call, isCall := n.(*ast.CallExpr)
	if !isCall || call.Ellipsis.IsValid() {
		return p, false
	}
	args := call.Args
	switch {
	case callee(call) == "message.New" && len(args) > 1:
		p.english, ok = literal(args[1])
		args = slices.Concat(args[:1], args[2:])
	case callee(call) == "says", callee(call) == "whole":
		ok = true
	case callee(call) == "at":
		args, ok = args[1:], true
	case strings.HasSuffix(callee(call), ".refuse"):
		args, ok = args[1:], true
		if _, isCode := literal(args[0]); !isCode {
			args = args[1:] // the place
		}
	}
	if !ok || len(args) == 0 {
		return p, false
	}
	if p.code, ok = literal(args[0]); !ok {
		return p, false
	}
	for i := 1; i < len(args); i += 2 {
		name, _ := literal(args[i])
		p.given = append(p.given, name)
	}
	return p, true
}

// callee names what is called, as it is written.
func callee(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok {
			return x.Name + "." + f.Sel.Name
		}
	}
	return ""
}

// Whatever is found to be wrong has its sentence in the catalogues, with what it is
// given filled in, and speaks the same English without them; no sentence is there
// for nothing.
func TestProblemsAreSaid(t *testing.T) {
	c := words.For("")
	made := map[string]bool{}
	literals := map[string]bool{}
	for _, dir := range []string{"measure", "money", "geom", "room", "paper", "draw/picture", "hanging", "cutting", "order", "plan", "job", "job/yaml"} {
		source(t, dir, func(where string, n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok {
				if s, ok := literal(lit); ok {
					literals[s] = true
				}
			}
			p, ok := madeBy(n)
			if !ok || dir != "job" && dir != "job/yaml" && p.english == "" {
				return true
			}
			made[p.code] = true
			id := "problem." + p.code
			if !c.Has(id) {
				t.Errorf("%s: there is no message %s", where, id)
				return true
			}
			if p.given != nil && !slices.Equal(slices.Sorted(slices.Values(p.given)), c.Needs(id)) {
				t.Errorf("%s: %s is given %v, and needs %v", where, id, p.given, c.Needs(id))
			}
			if text := c.Fill(id, func(name string) (any, bool) { return "{" + name + "}", true }); p.english != "" && p.english != text {
				t.Errorf("%s: %q, but the catalogue says %q", where, p.english, text)
			}
			return true
		})
	}
	if len(made) < 180 {
		t.Errorf("only %d problems found: %v", len(made), slices.Sorted(maps.Keys(made)))
	}
	for _, id := range c.IDs() {
		if code, is := strings.CutPrefix(id, "problem."); is && !made[code] && !literals[code] && !literals[strings.TrimPrefix(code, "label_")] {
			t.Errorf("nobody says %s", id)
		}
	}
}
