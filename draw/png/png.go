package png

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	stdpng "image/png"
	"io"

	"firstdrop/draw"
	"firstdrop/measure"
)

// Most is how many squares a picture may have: an A0 sheet at 300 dpi has about
// 140 million.
const Most = 160_000_000

// Render draws the scene on white, at so many squares to the inch. The picture is
// as large as the window, rounded up to whole squares.
func Render(s *draw.Scene, dpi int) (*image.RGBA, error) {
	if dpi < 1 || dpi > 2400 {
		return nil, fmt.Errorf("%d dots per inch: give a number from 1 to 2400", dpi)
	}
	width, height := squares(s.Window.X.Length(), dpi), squares(s.Window.Y.Length(), dpi)
	same := ratio{int64(dpi) * parts, int64(measure.Inch)}
	return render(s, width, height, same, same)
}

// RenderSized draws the scene on white so that its window fills a picture of that
// many squares exactly; squares may stand for more one way than the other. That is
// what a picture needs which is to be repeated.
func RenderSized(s *draw.Scene, width, height int) (*image.RGBA, error) {
	across := ratio{int64(width) * parts, int64(s.Window.X.Length())}
	down := ratio{int64(height) * parts, int64(s.Window.Y.Length())}
	return render(s, width, height, across, down)
}

func render(s *draw.Scene, width, height int, across, down ratio) (*image.RGBA, error) {
	if width < 1 || height < 1 || s.Window.X.Length() <= 0 || s.Window.Y.Length() <= 0 {
		return nil, fmt.Errorf("drawing %q has no size", s.Title)
	}
	if width > Most/height {
		return nil, fmt.Errorf("a picture of %d × %d squares is too large: give fewer dots per inch", width, height)
	}
	c := &canvas{window: s.Window, across: across, down: down, tiles: map[*draw.Picture]*draw.Picture{}}
	c.image = image.NewRGBA(image.Rect(0, 0, width, height))
	c.cover.width, c.cover.height = width, height
	for i := range c.image.Pix {
		c.image.Pix[i] = 0xff
	}
	s.Walk(func(_ string, it draw.Item) { c.item(it) })
	return c.image, nil
}

func squares(l measure.Length, dpi int) int {
	if l <= 0 || l > measure.MaxLength {
		return 0
	}
	return int((int64(l)*int64(dpi) + int64(measure.Inch) - 1) / int64(measure.Inch))
}

// Write renders the scene and writes it as a PNG that says how large a square is,
// so that programs show and print it at its true size. The same scene gives the
// same bytes.
func Write(w io.Writer, s *draw.Scene, dpi int) error {
	m, err := Render(s, dpi)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := stdpng.Encode(&b, m); err != nil {
		return err
	}
	// Signature and the first chunk, IHDR, take 33 bytes (PNG specification, 5.2
	// and 11.2.2); pHYs may follow there.
	out := b.Bytes()
	for _, part := range [][]byte{out[:33], physical(dpi), out[33:]} {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}

// physical returns the pHYs chunk: squares to the metre (PNG specification,
// 11.3.5.3).
func physical(dpi int) []byte {
	perMetre := uint32((int64(dpi)*int64(measure.Metre) + int64(measure.Inch)/2) / int64(measure.Inch))
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, 1) // metres
	return binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
}
