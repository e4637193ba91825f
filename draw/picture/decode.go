package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"

	"firstdrop/draw"
)

// Limits of what is read.
const (
	MostBytes   = 32 << 20
	MostSquares = 40_000_000 // width times height
	MostSide    = 20_000
)

// format is a kind of file that can be read.
type format struct {
	name   string
	head   string
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
}

var formats = []format{
	{"PNG", "\x89PNG\r\n\x1a\n", png.DecodeConfig, png.Decode},
	{"JPEG", "\xff\xd8\xff", jpeg.DecodeConfig, jpeg.Decode},
	{"GIF", "GIF8", gif.DecodeConfig, gif.Decode}, // the first frame
}

// Decode reads a picture from the bytes of a file. Its errors say what is wrong with
// the file and what to do.
func Decode(data []byte) (*draw.Picture, error) {
	if len(data) == 0 {
		return nil, errors.New("the file is empty")
	}
	if len(data) > MostBytes {
		return nil, fmt.Errorf("the file is larger than %d MB: save the picture smaller", MostBytes>>20)
	}
	for _, f := range formats {
		if bytes.HasPrefix(data, []byte(f.head)) {
			return f.read(data)
		}
	}
	if isDrawing(data) {
		p, err := decodeDrawing(data)
		if err != nil {
			return nil, fmt.Errorf("the SVG drawing, %w", err)
		}
		return p, nil
	}
	return nil, fmt.Errorf("%s cannot be read as a picture: save it as PNG, JPEG or SVG", kindOf(data))
}

func (f *format) read(data []byte) (*draw.Picture, error) {
	c, err := f.config(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("the %s file is broken: %w", f.name, err)
	}
	switch {
	case c.Width < 1 || c.Height < 1:
		return nil, fmt.Errorf("the %s picture has no size", f.name)
	case c.Width > MostSide || c.Height > MostSide || c.Width*c.Height > MostSquares:
		return nil, fmt.Errorf("the picture is %d × %d squares, more than %d together or %d a side: save it smaller", c.Width, c.Height, MostSquares, MostSide)
	}
	m, err := f.decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("the %s file is broken: %w", f.name, err)
	}
	p := draw.NewPicture(onCanvas(m, c))
	if f.name == "JPEG" {
		p.Photo = true
		p = upright(p, orientation(data))
	}
	return p, nil
}

// onCanvas returns the image on its whole canvas: a frame may be smaller.
func onCanvas(m image.Image, c image.Config) image.Image {
	all := image.Rect(0, 0, c.Width, c.Height)
	if m.Bounds() == all {
		return m
	}
	return framed{m, all}
}

// framed is an image with nothing round it.
type framed struct {
	image.Image
	all image.Rectangle
}

// Bounds returns the whole canvas.
func (f framed) Bounds() image.Rectangle { return f.all }

// kindOf names what a file seems to be.
func kindOf(data []byte) string {
	head := data[:min(len(data), 512)]
	for _, k := range []struct{ name, mark string }{
		{"a PDF file", "%PDF"},
		{"a WebP picture", "WEBPVP"},
		{"a TIFF picture", "II*\x00"},
		{"a TIFF picture", "MM\x00*"},
		{"a HEIC picture", "ftypheic"},
		{"an AVIF picture", "ftypavif"},
		{"a web page", "<html"},
	} {
		if bytes.Contains(head, []byte(k.mark)) {
			return k.name
		}
	}
	if bytes.HasPrefix(head, []byte("BM")) {
		return "a BMP picture"
	}
	return "this file"
}
