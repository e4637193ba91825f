// Package ui answers the question: what does the browser load?
//
// It embeds the built front end. A tree in which it was never built holds only a
// marker, and everything else still works.
package ui

import (
	"embed"
	"io/fs"
)

//go:embed all:dist
var dist embed.FS

// Files returns the built front end, with index.html at its root if it was built.
func Files() fs.FS {
	files, err := fs.Sub(dist, "dist")
	if err != nil {
		panic(err) // only for a path that is no path
	}
	return files
}
