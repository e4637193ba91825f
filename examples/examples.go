// Package examples answers the question: what does a job look like? It holds the
// sample jobs that a user can open. Every room and paper in them is invented.
package examples

import (
	"embed"
	"io/fs"
	"strings"
)

//go:embed *.yaml
var files embed.FS

// Names lists the sample jobs in alphabetical order: "attic", "bay-window".
func Names() []string {
	all, err := fs.Glob(files, "*.yaml")
	if err != nil {
		panic(err) // only for a pattern that is none
	}
	for i := range all {
		all[i] = strings.TrimSuffix(all[i], ".yaml")
	}
	return all
}

// Named returns the text of a sample job, in YAML.
func Named(name string) ([]byte, bool) {
	text, err := files.ReadFile(name + ".yaml")
	return text, err == nil
}
