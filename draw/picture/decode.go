package picture

import (
	"bytes"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"

	"firstdrop/draw"
	"firstdrop/message"
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
		return nil, message.New("picture_empty", "the file is empty")
	}
	if len(data) > MostBytes {
		return nil, message.New("picture_bytes", "the file is larger than {most} MB: save the picture smaller", "most", MostBytes>>20)
	}
	for _, f := range formats {
		if bytes.HasPrefix(data, []byte(f.head)) {
			return f.read(data)
		}
	}
	if isDrawing(data) {
		p, err := decodeDrawing(data)
		if err != nil {
			return nil, message.New("picture_drawing", "the SVG drawing, {why}", "why", message.Of(err)).Because(err)
		}
		return p, nil
	}
	return nil, message.New("picture_kind", "{kind} cannot be read as a picture: save it as PNG, JPEG or SVG", "kind", kindOf(data))
}

func (f *format) read(data []byte) (*draw.Picture, error) {
	c, err := f.config(bytes.NewReader(data))
	if err != nil {
		return nil, message.New("picture_broken", "the {format} file is broken: {why}", "format", f.name, "why", err.Error()).Because(err)
	}
	switch {
	case c.Width < 1 || c.Height < 1:
		return nil, message.New("picture_no_size", "the {format} picture has no size", "format", f.name)
	case c.Width > MostSide || c.Height > MostSide || c.Width*c.Height > MostSquares:
		return nil, message.New("picture_squares", "the picture is {across} × {up} squares, more than {together} together or {side} a side: save it smaller",
			"across", c.Width, "up", c.Height, "together", MostSquares, "side", MostSide)
	}
	m, err := f.decode(bytes.NewReader(data))
	if err != nil {
		return nil, message.New("picture_broken", "the {format} file is broken: {why}", "format", f.name, "why", err.Error()).Because(err)
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
func kindOf(data []byte) message.Message {
	head := data[:min(len(data), 512)]
	for _, k := range []struct {
		kind message.Message
		mark string
	}{
		{message.New("file_pdf", "a PDF file"), "%PDF"},
		{message.New("file_webp", "a WebP picture"), "WEBPVP"},
		{message.New("file_tiff", "a TIFF picture"), "II*\x00"},
		{message.New("file_tiff", "a TIFF picture"), "MM\x00*"},
		{message.New("file_heic", "a HEIC picture"), "ftypheic"},
		{message.New("file_avif", "an AVIF picture"), "ftypavif"},
		{message.New("file_web", "a web page"), "<html"},
	} {
		if bytes.Contains(head, []byte(k.mark)) {
			return k.kind
		}
	}
	if bytes.HasPrefix(head, []byte("BM")) {
		return message.New("file_bmp", "a BMP picture")
	}
	return message.New("file_this", "this file")
}
