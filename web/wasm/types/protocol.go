package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// protocol holds the types of package screen as its files declare them.
type protocol struct {
	order   []string // names in the order of files and declarations
	types   map[string]*ast.TypeSpec
	docs    map[string]string
	members map[string][]string // the constants of a named string
	used    map[string]bool
}

// protocolTypes returns whatever the types of those names are made of, as a package
// in dir declares them.
func protocolTypes(dir, from string, imports []string, roots ...string) (string, error) {
	p := &protocol{
		types: map[string]*ast.TypeSpec{}, docs: map[string]string{},
		members: map[string][]string{}, used: map[string]bool{},
	}
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return "", err
	}
	slices.Sort(names)
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		source, err := os.ReadFile(name)
		if err != nil {
			return "", err
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, source, parser.ParseComments)
		if err != nil {
			return "", err
		}
		p.read(f)
	}
	for _, root := range roots {
		p.use(root)
	}
	var b strings.Builder
	fmt.Fprintf(&b, written, "the Go package "+from)
	for _, name := range imports {
		fmt.Fprintf(&b, "import type * as %s from \"./%[1]s\";\n", name)
	}
	for _, name := range p.order {
		if p.used[name] {
			b.WriteString("\n" + p.declared(name))
		}
	}
	return b.String(), nil
}

// read gathers the types and constants of a file.
func (p *protocol) read(f *ast.File) {
	for _, d := range f.Decls {
		decl, ok := d.(*ast.GenDecl)
		if !ok {
			continue
		}
		for _, spec := range decl.Specs {
			switch s := spec.(type) {
			case *ast.TypeSpec:
				p.order = append(p.order, s.Name.Name)
				p.types[s.Name.Name] = s
				p.docs[s.Name.Name] = first(s.Doc.Text(), decl.Doc.Text())
			case *ast.ValueSpec:
				p.constant(s)
			}
		}
	}
}

func first(texts ...string) string {
	for _, t := range texts {
		if t != "" {
			return t
		}
	}
	return ""
}

// constant adds one of a type's words.
func (p *protocol) constant(s *ast.ValueSpec) {
	kind, ok := s.Type.(*ast.Ident)
	if !ok || len(s.Values) != 1 {
		return
	}
	if lit, ok := s.Values[0].(*ast.BasicLit); ok && lit.Kind == token.STRING {
		line := comment(s.Comment.Text(), "  ") + "  | " + lit.Value
		p.members[kind.Name] = append(p.members[kind.Name], line)
	}
}

// use marks a type and all that it is made of.
func (p *protocol) use(name string) {
	spec := p.types[name]
	if spec == nil || p.used[name] {
		return
	}
	p.used[name] = true
	ast.Inspect(spec.Type, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok && id.IsExported() {
			p.use(id.Name)
		}
		return true
	})
}

// declared returns one type in TypeScript.
func (p *protocol) declared(name string) string {
	doc := comment(p.linked(p.docs[name]), "")
	if words := p.members[name]; len(words) > 0 {
		return doc + "export type " + name + " =\n" + strings.Join(words, "\n") + ";\n"
	}
	s, ok := p.types[name].Type.(*ast.StructType)
	if !ok {
		return doc + "export type " + name + " = " + p.typed(p.types[name].Type) + ";\n"
	}
	var b strings.Builder
	b.WriteString(doc + "export interface " + name + " {\n")
	for _, f := range s.Fields.List {
		b.WriteString(p.member(f))
	}
	b.WriteString("}\n")
	return b.String()
}

// member returns one line of an interface with its comment. A member that may be
// left out is optional; lists without that are never null.
func (p *protocol) member(f *ast.Field) string {
	tag := reflect.StructTag("")
	if f.Tag != nil {
		text, _ := strconv.Unquote(f.Tag.Value)
		tag = reflect.StructTag(text)
	}
	key, options, _ := strings.Cut(tag.Get("json"), ",")
	if key == "" || key == "-" {
		return ""
	}
	if strings.Contains(options, "omitempty") {
		key += "?"
	}
	kind := tag.Get("ts")
	if kind == "" {
		kind = p.typed(f.Type)
	}
	return comment(p.linked(f.Doc.Text()+f.Comment.Text()), "  ") + "  " + key + ": " + kind + ";\n"
}

// typed returns a Go type in TypeScript.
func (p *protocol) typed(t ast.Expr) string {
	switch t := t.(type) {
	case *ast.StarExpr:
		return p.typed(t.X)
	case *ast.MapType:
		return "Record<" + p.typed(t.Key) + ", " + p.typed(t.Value) + ">"
	case *ast.ArrayType:
		inner := p.typed(t.Elt)
		if t.Len == nil {
			return inner + "[]"
		}
		n, _ := strconv.Atoi(t.Len.(*ast.BasicLit).Value)
		return "[" + strings.Join(slices.Repeat([]string{inner}, n), ", ") + "]"
	case *ast.SelectorExpr: // of package screen; others say what they are in a tag
		return "protocol." + t.Sel.Name
	case *ast.Ident:
		switch t.Name {
		case "int", "int64", "float64":
			return "number"
		case "bool":
			return "boolean"
		}
		return t.Name
	}
	return "unknown"
}

var link = regexp.MustCompile(`\[([A-Z]\w*)(?:\.([A-Z]\w*))?\]`)

// linked turns Go's links into those of TypeScript, where what they name is there.
func (p *protocol) linked(text string) string {
	return link.ReplaceAllStringFunc(text, func(m string) string {
		parts := link.FindStringSubmatch(m)
		if !p.used[parts[1]] {
			return strings.Trim(m, "[]")
		}
		if parts[2] == "" {
			return "{@link " + parts[1] + "}"
		}
		return "{@link " + parts[1] + "." + p.key(parts[1], parts[2]) + "}"
	})
}

// key returns the JSON key of a field.
func (p *protocol) key(name, field string) string {
	s, _ := p.types[name].Type.(*ast.StructType)
	for _, f := range s.Fields.List {
		if len(f.Names) == 1 && f.Names[0].Name == field && f.Tag != nil {
			text, _ := strconv.Unquote(f.Tag.Value)
			key, _, _ := strings.Cut(reflect.StructTag(text).Get("json"), ",")
			return key
		}
	}
	return field
}
