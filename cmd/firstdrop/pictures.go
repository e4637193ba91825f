package main

import (
	"io"
	"os"
	"path/filepath"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/draw/picture"
	"firstdrop/paper"
)

// designSharp is how many squares a demo design is across: sharp at 1:10.
const designSharp = 480

// pictures reads the pictures of the papers' designs, as the plan's papers; nil for
// one without.
func (pl *planned) pictures() ([]*draw.Picture, error) {
	all := make([]*draw.Picture, len(pl.plan.Task.Papers))
	for i := range all {
		name := pl.job.Papers[i].Picture
		if name == "" {
			continue
		}
		var err error
		if all[i], err = pl.picture(name, &pl.plan.Task.Papers[i]); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// picture returns the demo design of that name, or what the file shows.
func (pl *planned) picture(name string, label *paper.Paper) (*draw.Picture, error) {
	if d, ok := design.Named(name); ok {
		repeat := label.Repeat
		if repeat <= 0 {
			repeat = d.Repeat.Scaled(int64(label.Width), int64(d.Width))
		}
		return d.Picture(label.Width, repeat, designSharp)
	}
	path := filepath.FromSlash(name)
	if !filepath.IsLocal(path) {
		return nil, fail(exitJob, "picture.elsewhere", "picture", name, "paper", label.Name)
	}
	folder := "."
	if pl.name != "-" {
		folder = filepath.Dir(pl.name)
	}
	data, err := readPicture(folder, path)
	if err != nil {
		return nil, fileError("file.read-picture", filepath.Join(folder, path), err)
	}
	p, err := picture.Decode(data)
	if err != nil {
		return nil, fail(exitJob, "picture.bad", "picture", name, "paper", label.Name, "why", err)
	}
	return p, nil
}

// readPicture reads a file that lies in a folder or below it, and nothing that a link
// leads to elsewhere.
func readPicture(folder, path string) ([]byte, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	f, err := root.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, picture.MostBytes+1))
	if err == nil && len(data) > picture.MostBytes {
		err = fail(exitFile, "picture.large", "most", picture.MostBytes)
	}
	return data, err
}
