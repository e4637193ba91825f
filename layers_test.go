package firstdrop_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rows says which row of the house each package lives in. A package imports
// from rows above its own only. See ARCHITECTURE.md.
var rows = map[string]int{
	"message": 0,
	"measure": 1, "money": 1,
	"finding": 2, "geom": 2,
	"room": 3, "paper": 3, "draw": 3, "draw/text": 3, "words": 3,
	"hanging": 4, "cutting": 4, "draw/svg": 4, "draw/png": 4, "draw/pdf": 4, "draw/dxf": 4, "draw/picture": 4,
	"order": 5, "draw/design": 5, "draw/page": 5,
	"plan":  6,
	"audit": 7, "job": 7, "tell": 7,
	"job/yaml": 8, "sheet": 8, "screen": 8, "web/ui": 8,
	"store": 8, "store/sqlite": 9, "store/storetest": 9, "examples": 8, "web": 9,
	"cmd/firstdrop": 10, "cmd/bench": 10,
	"screen/printing": 9,
	"web/wasm/types":  10, "web/wasm/planner": 10, "web/wasm/printer": 10, "web/wasm/slim": 10,
}

// banned lists imports that the rows would allow but the house does not.
var banned = []struct{ from, to, why string }{
	{"cutting", "room", "cutting never sees a wall"},
	{"cutting", "paper", "cutting knows lengths and phases, not labels"},
	{"cutting", "geom", "a roll has one dimension"},
	{"cutting", "finding", "what a bound means for people is said by plan"},
	{"hanging", "finding", "what a layout means for people is said by plan"},
	{"tell", "audit", "a plan that is told of has passed"},
	{"tell", "job", "what is said is said of a plan, however it came about"},
	{"tell", "draw", "sentences know no page"},
	{"store", "job", "a store keeps documents, sound or not"},
	{"web", "store/sqlite", "web sees the interface only"},
}

// impure lists what the planner (rows 1 to 7) must not touch, so that it runs
// alike on the command line, in a server and in a browser.
var impure = map[string]string{
	"os": "no files", "io/ioutil": "no files", "path/filepath": "no files", "time": "no clock",
	"net": "no network", "net/http": "no network", "math/rand": "no random source without a seed",
	"math/rand/v2": "no random source without a seed", "crypto/rand": "no random source without a seed",
	"C": "no cgo", "unsafe": "same plan on every machine", "runtime": "same plan on every machine",
}

// Files are read with go/parser, not asked of the go command: go test caches by
// the files a test opens, and would miss a new import otherwise.
func TestLayers(t *testing.T) {
	seen := map[string]bool{}
	eachFile(t, func(pkg, file string, f *ast.File) {
		seen[pkg] = true
		row, ok := rows[pkg]
		switch {
		case strings.HasPrefix(pkg, "internal/") || pkg == ".":
			return
		case !ok:
			t.Errorf("%s: package %s has no row in the house: give it one in layers_test.go and ARCHITECTURE.md", file, pkg)
			return
		}
		for _, imp := range f.Imports {
			to, _ := strconv.Unquote(imp.Path.Value)
			own, isOwn := strings.CutPrefix(to, "firstdrop/")
			switch {
			case isOwn && strings.HasPrefix(own, "internal/"):
				if pkg != "cmd/bench" {
					t.Errorf("%s imports %s: internal is scaffolding for tests and benchmarks", file, to)
				}
			case isOwn && rows[own] >= row:
				t.Errorf("%s (row %d) imports %s (row %d): imports go up only", file, row, own, rows[own])
			case row <= 7 && impure[to] != "":
				t.Errorf("%s imports %s: %s in the planner", file, to, impure[to])
			}
			for _, b := range banned {
				if b.from == pkg && b.to == own {
					t.Errorf("%s imports %s: %s", file, to, b.why)
				}
			}
		}
	})
	for pkg := range rows {
		if !seen[pkg] {
			t.Errorf("row %d names package %s, which is not there", rows[pkg], pkg)
		}
	}
}

// heavy lists what makes a program for the browser large.
var heavy = map[string]string{
	"regexp": "a machine for a few digits", "time": "a clock", "net": "a network", "net/http": "a network",
	"go.yaml.in/yaml/v4":          "a job document",
	"github.com/xuri/excelize/v2": "a workbook", "firstdrop/draw": "a page", "firstdrop/draw/text": "fonts", "embed": "files",
}

// What is said of a plan is said in the browser too, where size counts: neither
// tell nor anything of the house that it stands on imports what is heavy. Only
// words embeds files, the catalogues.
func TestTellIsLight(t *testing.T) {
	imports := map[string]map[string]bool{}
	eachFile(t, func(pkg, _ string, f *ast.File) {
		if imports[pkg] == nil {
			imports[pkg] = map[string]bool{}
		}
		for _, imp := range f.Imports {
			to, _ := strconv.Unquote(imp.Path.Value)
			imports[pkg][to] = true
		}
	})
	seen := map[string]bool{}
	var visit func(pkg string)
	visit = func(pkg string) {
		if seen[pkg] {
			return
		}
		seen[pkg] = true
		for to := range imports[pkg] {
			if what, is := heavy[to]; is && (to != "embed" || pkg != "words") {
				t.Errorf("%s, which tell stands on, imports %s: %s", pkg, to, what)
			}
			if own, isOwn := strings.CutPrefix(to, "firstdrop/"); isOwn {
				visit(own)
			}
		}
	}
	visit("tell")
	if !seen["words"] || !seen["plan"] {
		t.Errorf("tell stands on %v: words and plan are missing", slices.Sorted(maps.Keys(seen)))
	}
}

// The second road shares no planning code with the first: audit may hold the
// result types of the planner, but calls none of its functions and methods.
func TestAuditCallsNoPlanner(t *testing.T) {
	planner := map[string]bool{}
	for _, name := range []string{"Shift", "Phase", "IsReversed", "Face", "LeanAt", "Mirrored", "Cells", "AppendCells", "Sweep", "Parcels"} {
		planner[name] = true
	}
	eachFile(t, func(pkg, _ string, f *ast.File) {
		if pkg != "hanging" && pkg != "cutting" && pkg != "plan" {
			return
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Name.IsExported() && !isPlainName(fn.Name.Name) {
				planner[fn.Name.Name] = true
			}
		}
	})
	eachFile(t, func(pkg, file string, f *ast.File) {
		if pkg != "audit" {
			return
		}
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			sel, ok := call.Fun.(*ast.SelectorExpr)
			if !ok || !planner[sel.Sel.Name] {
				return true
			}
			if x, ok := sel.X.(*ast.Ident); ok && slices.Contains([]string{"big", "slices", "cmp", "fmt", "errors"}, x.Name) {
				return true
			}
			t.Errorf("%s calls %s, a name of the planner's: derive it anew", file, sel.Sel.Name)
			return true
		})
	})
}

// isPlainName reports names that every type has, which tell nothing about where
// a call goes, and plain accessors that hand out the question as it was put, or the run that a
// layout says it was laid on.
func isPlainName(name string) bool {
	return slices.Contains([]string{"String", "Error", "Unwrap", "MarshalText", "MarshalJSON", "Opposite", "Spec", "Hung"}, name)
}

// eachFile calls do for every Go file of the house that is not a test.
func eachFile(t *testing.T, do func(pkg, file string, f *ast.File)) {
	t.Helper()
	var files []string
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || d.Name() == "build" || d.Name() == "node_modules" || strings.HasPrefix(d.Name(), ".") && p != "."):
			return fs.SkipDir
		case strings.HasSuffix(p, ".go") && !strings.HasSuffix(p, "_test.go"):
			files = append(files, filepath.ToSlash(p))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		do(path.Dir(file), file, f)
	}
}

// Every package says in one comment, in one file, what question it answers.
func TestPackageComments(t *testing.T) {
	comments := map[string][]string{}
	eachFile(t, func(pkg, file string, f *ast.File) {
		comments[pkg] = append(comments[pkg], nil...)
		if f.Doc != nil {
			comments[pkg] = append(comments[pkg], file)
			if !strings.HasPrefix(f.Doc.Text(), "Package ") && !strings.HasPrefix(f.Doc.Text(), "Command ") {
				t.Errorf("%s: the package comment begins %q", file, strings.SplitN(f.Doc.Text(), "\n", 2)[0])
			}
		}
	})
	for _, pkg := range slices.Sorted(maps.Keys(comments)) {
		if n := len(comments[pkg]); n != 1 {
			t.Errorf("package %s has %d package comments, want one: %v", pkg, n, comments[pkg])
		}
	}
}

// Every exported name is documented.
func TestExportedNamesAreDocumented(t *testing.T) {
	eachFile(t, func(_, file string, f *ast.File) {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && exportedReceiver(d) && d.Doc == nil && !isPlainName(d.Name.Name) {
					t.Errorf("%s: %s has no comment", file, d.Name.Name)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					if ts, ok := s.(*ast.TypeSpec); ok && ts.Name.IsExported() && d.Doc == nil && ts.Doc == nil {
						t.Errorf("%s: %s has no comment", file, ts.Name.Name)
					}
				}
			}
		}
	})
}

// exportedReceiver reports whether a function is one, or a method of a type that
// can be seen outside its package.
func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	t := d.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	id, ok := t.(*ast.Ident)
	return ok && id.IsExported()
}
