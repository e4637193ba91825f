package picture_test

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/picture"
)

// quarters is red over green on the left, blue over white on the right.
func quarters(m interface {
	image.Image
	Set(x, y int, c color.Color)
},
) {
	b := m.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := [2][2]color.RGBA{{{255, 0, 0, 255}, {0, 0, 255, 255}}, {{0, 255, 0, 255}, {255, 255, 255, 255}}}[2*(y-b.Min.Y)/b.Dy()][2*(x-b.Min.X)/b.Dx()]
			m.Set(x, y, c)
		}
	}
}

func encoded(t testing.TB, name string, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	var err error
	switch name {
	case "png":
		err = png.Encode(&b, m)
	case "jpeg":
		err = jpeg.Encode(&b, m, &jpeg.Options{Quality: 95})
	case "gif":
		err = gif.Encode(&b, m, nil)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// corners returns the colours in the four corners, r, g, b, w or ?.
func corners(p *draw.Picture) string {
	out := ""
	for _, i := range []int{0, p.Width - 1, (p.Height - 1) * p.Width, p.Height*p.Width - 1} {
		c := p.Pix[3*i : 3*i+3]
		letter := "?"
		for name, want := range map[string][3]int{"r": {255, 0, 0}, "g": {0, 255, 0}, "b": {0, 0, 255}, "w": {255, 255, 255}} {
			ok := true
			for k := range want {
				ok = ok && int(c[k])-want[k] < 40 && want[k]-int(c[k]) < 40
			}
			if ok {
				letter = name
			}
		}
		out += letter
	}
	return out
}

func TestEveryKindOfColour(t *testing.T) {
	size := image.Rect(0, 0, 32, 48)
	plain, deep, clear := image.NewRGBA(size), image.NewNRGBA64(size), image.NewNRGBA(size)
	few := image.NewPaletted(size, color.Palette{color.RGBA{255, 0, 0, 255}, color.RGBA{0, 255, 0, 255}, color.RGBA{0, 0, 255, 255}, color.White})
	quarters(plain)
	quarters(deep)
	quarters(few)
	quarters(clear)
	for x := range 4 { // clear in the lower right corner: white paper shows
		clear.Set(28+x, 47, color.NRGBA{9, 9, 9, 0})
	}
	for name, data := range map[string][]byte{
		"PNG": encoded(t, "png", plain), "PNG of 16 bits": encoded(t, "png", deep), "PNG of few colours": encoded(t, "png", few),
		"PNG partly clear": encoded(t, "png", clear), "JPEG": encoded(t, "jpeg", plain), "GIF": encoded(t, "gif", few),
	} {
		p, err := picture.Decode(data)
		if err != nil || p.Width != 32 || p.Height != 48 || corners(p) != "rbgw" {
			t.Errorf("%s: %v, %+v", name, err, p)
		}
	}
	grey := image.NewGray16(size)
	p, err := picture.Decode(encoded(t, "png", grey))
	if err != nil || p.Pix[0] != 0 || p.Photo {
		t.Errorf("grey: %v", err)
	}
}

func TestFirstFrameOnItsCanvas(t *testing.T) {
	palette := color.Palette{color.White, color.RGBA{255, 0, 0, 255}}
	small := image.NewPaletted(image.Rect(2, 3, 6, 7), palette)
	for i := range small.Pix {
		small.Pix[i] = 1
	}
	var b bytes.Buffer
	next := image.NewPaletted(image.Rect(0, 0, 10, 10), palette)
	if err := gif.EncodeAll(&b, &gif.GIF{Image: []*image.Paletted{small, next}, Delay: []int{1, 1}, Config: image.Config{ColorModel: palette, Width: 10, Height: 10}}); err != nil {
		t.Fatal(err)
	}
	p, err := picture.Decode(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	at := func(x, y int) uint8 { return p.Pix[3*(10*y+x)+1] }
	if p.Width != 10 || p.Height != 10 || at(2, 3) != 0 || at(5, 6) != 0 || at(1, 3) != 255 || at(6, 6) != 255 {
		t.Errorf("%d × %d: %v", p.Width, p.Height, p.Pix)
	}
}

// exif returns a JPEG file with a note of how the camera was held.
func exif(data []byte, orientation uint16) []byte {
	body := []byte("Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01")
	body = append(binary.BigEndian.AppendUint16(body, orientation), 0, 0, 0, 0, 0, 0)
	out := append([]byte{0xff, 0xd8, 0xff, 0xe1}, binary.BigEndian.AppendUint16(nil, uint16(len(body)+2))...)
	return append(append(out, body...), data[2:]...)
}

// CIPA DC-008, 4.6.4: where row 0 and column 0 of the file are seen. The corners
// follow by hand: upper left, upper right, lower left, lower right.
func TestHeldSideways(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 32, 48))
	quarters(m)
	data := encoded(t, "jpeg", m)
	for orientation, want := range map[uint16]string{
		1: "rbgw", // top, left
		2: "brwg", // top, right
		3: "wgbr", // bottom, right
		4: "gwrb", // bottom, left
		5: "rgbw", // left, top
		6: "grwb", // right, top
		7: "wbgr", // right, bottom
		8: "bwrg", // left, bottom
		9: "rbgw", // no such thing
	} {
		p, err := picture.Decode(exif(data, orientation))
		if err != nil {
			t.Fatal(err)
		}
		if got := corners(p); got != want {
			t.Errorf("orientation %d shows %s, want %s", orientation, got, want)
		}
		if turned := orientation >= 5 && orientation <= 8; turned != (p.Width == 48) || !p.Photo {
			t.Errorf("orientation %d is %d × %d", orientation, p.Width, p.Height)
		}
	}
}

// huge returns a PNG that says it has that size.
func huge(t testing.TB, width, height uint32) []byte {
	data := encoded(t, "png", image.NewGray(image.Rect(0, 0, 1, 1)))
	binary.BigEndian.PutUint32(data[16:], width)
	binary.BigEndian.PutUint32(data[20:], height)
	return append(binary.BigEndian.AppendUint32(data[:29:29], crc32.ChecksumIEEE(data[12:29])), data[33:]...)
}

func TestRefused(t *testing.T) {
	good := encoded(t, "png", image.NewGray(image.Rect(0, 0, 50, 50)))
	for name, tt := range map[string]struct {
		data []byte
		want string
	}{
		"nothing":   {nil, "empty"},
		"words":     {[]byte("hello"), "this file cannot be read"},
		"a drawing": {[]byte(`<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>`), "the SVG drawing, line 1: it has neither a viewBox nor width and height"},
		"a page":    {[]byte("%PDF-1.7"), "a PDF file"},
		"cut off":   {good[:len(good)/2], "the PNG file is broken"},
		"a head":    {good[:8], "the PNG file is broken"},
		"wide":      {huge(t, 30_000, 2), "save it smaller"},
		"large":     {huge(t, 10_000, 10_000), "save it smaller"},
		"long":      {append([]byte("GIF8"), make([]byte, picture.MostBytes)...), "larger than 32 MB"},
	} {
		if _, err := picture.Decode(tt.data); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: err = %v, want %q", name, err, tt.want)
		}
	}
}

func FuzzDecode(f *testing.F) {
	m := image.NewPaletted(image.Rect(0, 0, 9, 7), color.Palette{color.White, color.Black})
	for _, name := range []string{"png", "jpeg", "gif"} {
		f.Add(encoded(f, name, m))
	}
	f.Add(exif(encoded(f, "jpeg", m), 6))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := picture.Decode(data)
		if err != nil {
			return
		}
		if p.Width < 1 || p.Height < 1 || len(p.Pix) != 3*p.Width*p.Height {
			t.Fatalf("%d × %d with %d bytes", p.Width, p.Height, len(p.Pix))
		}
	})
}
