package main

import (
	"bytes"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// lines counts the lines of Go code and of tests of each package.
func lines() ([]Figure, error) {
	type count struct{ code, test int }
	counts := map[string]*count{}
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != "." && (strings.HasPrefix(d.Name(), ".") || d.Name() == "build" || d.Name() == "testdata"):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(p, ".go"):
			return nil
		}
		data, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		pkg := path.Dir(filepath.ToSlash(p))
		if counts[pkg] == nil {
			counts[pkg] = &count{}
		}
		if n := bytes.Count(data, []byte("\n")); strings.HasSuffix(p, "_test.go") {
			counts[pkg].test += n
		} else {
			counts[pkg].code += n
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	var pkgs []string
	for pkg := range counts {
		pkgs = append(pkgs, pkg)
	}
	slices.Sort(pkgs)
	var all []Figure
	for _, pkg := range pkgs {
		all = append(all,
			Figure{Name: "lines " + pkg, Value: float64(counts[pkg].code)},
			Figure{Name: "test lines " + pkg, Value: float64(counts[pkg].test)})
	}
	return all, nil
}
