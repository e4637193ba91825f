package pdf

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image/jpeg"
	"image/png"

	"firstdrop/draw"
	"firstdrop/measure"
)

// image is a picture of the document. It is written once, as sharp as the largest
// of its uses asks.
type image struct {
	name          string
	id            int
	width, height measure.Length // of a repeat, at most
}

// measurePictures finds how large each picture comes out.
func (wr *writer) measurePictures(d *Document) {
	for _, p := range d.Pages {
		if p.Scene == nil {
			continue
		}
		p.Scene.Walk(func(_ string, it draw.Item) {
			t, ok := it.(draw.Tile)
			if !ok || t.IsNone() {
				return
			}
			im := wr.pictures[t.Picture]
			if im == nil {
				im = &image{name: fmt.Sprintf("P%d", len(wr.pictures)+1)}
				wr.pictures[t.Picture] = im
			}
			im.width, im.height = max(im.width, t.Width), max(im.height, t.Height)
		})
	}
}

// image returns the picture's object, and writes it when first asked for.
func (wr *writer) image(p *draw.Picture) *image {
	im := wr.pictures[p]
	if im.id > 0 {
		return im
	}
	squares := func(l measure.Length) int {
		return int(min(l, measure.Metre*10).Scaled(sharp, int64(measure.Inch))) + 1
	}
	q := p.Reduced(squares(im.width), squares(im.height))
	entries := fmt.Sprintf("/Type/XObject/Subtype/Image/Width %d/Height %d/ColorSpace/DeviceRGB/BitsPerComponent 8", q.Width, q.Height)
	if q.Photo {
		var b bytes.Buffer
		_ = jpeg.Encode(&b, q.Image(), &jpeg.Options{Quality: 88}) // a bytes.Buffer never fails
		im.id = wr.file.addPlain(entries+"/Filter/DCTDecode", b.Bytes())
		return im
	}
	im.id = wr.file.addPlain(entries+fmt.Sprintf("/Filter/FlateDecode/DecodeParms<</Predictor 15/Colors 3/Columns %d>>", q.Width), filtered(q))
	return im
}

// filtered returns the picture's squares as PNG packs them: its filters and
// compression are PDF's as well (7.4.4.4).
func filtered(p *draw.Picture) []byte {
	var b, data bytes.Buffer
	var encoder png.Encoder
	_ = encoder.Encode(&b, p.Image()) // a bytes.Buffer never fails
	rest := b.Bytes()[8:]
	for len(rest) >= 12 {
		n := int(binary.BigEndian.Uint32(rest))
		if string(rest[4:8]) == "IDAT" {
			data.Write(rest[8 : 8+n])
		}
		rest = rest[12+n:]
	}
	return data.Bytes()
}

// fade returns the graphics state that lets so many percent of the paper through.
func (wr *writer) fade(percent int) (name string, id int) {
	name = fmt.Sprintf("F%d", percent)
	if wr.fades[percent] == 0 {
		wr.fades[percent] = wr.file.add(fmt.Sprintf("<</Type/ExtGState/ca %s>>", trimmed(fmt.Sprintf("0.%02d", 100-percent))))
	}
	return name, wr.fades[percent]
}
