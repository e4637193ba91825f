package main

import (
	"image"
	"image/draw"
	stdpng "image/png"
	"os"
	"path/filepath"
	"strings"

	"firstdrop/draw/png"
	"firstdrop/sheet"
)

// What a contact sheet shows: pages of 44 dpi, so many in a row.
const (
	contactDPI = 44
	contactRow = 8
	contactGap = 8
)

// contact writes the sheets of every example into a folder, as PDF and as one picture
// of all pages, to be looked at.
func contact(folder string) error {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for _, file := range files {
		_, s, err := setFrom(file)
		if err != nil {
			return err
		}
		stem := filepath.Join(folder, strings.TrimSuffix(filepath.Base(file), ".yaml"))
		data, _, err := written(s)
		if err != nil {
			return err
		}
		if err := os.WriteFile(stem+".pdf", data, 0o644); err != nil {
			return err
		}
		if err := contactSheet(stem+".png", s); err != nil {
			return err
		}
	}
	return nil
}

// contactSheet draws all pages side by side.
func contactSheet(name string, s sheet.Set) error {
	book, err := s.Book(sheet.Kinds()...)
	if err != nil {
		return err
	}
	var pages []*image.RGBA
	side := 0
	for _, scene := range book.Scenes() {
		m, err := png.Render(scene, contactDPI)
		if err != nil {
			return err
		}
		pages = append(pages, m)
		side = max(side, m.Rect.Dx(), m.Rect.Dy())
	}
	side += contactGap
	rows := (len(pages) + contactRow - 1) / contactRow
	all := image.NewRGBA(image.Rect(0, 0, contactRow*side, rows*side))
	for i := range all.Pix {
		all.Pix[i] = 0x90
		if i%4 == 3 {
			all.Pix[i] = 0xff
		}
	}
	for i, m := range pages {
		at := image.Pt(i%contactRow*side+(side-m.Rect.Dx())/2, i/contactRow*side+(side-m.Rect.Dy())/2)
		draw.Draw(all, m.Rect.Add(at), m, image.Point{}, draw.Src)
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	defer f.Close()
	return stdpng.Encode(f, all)
}
