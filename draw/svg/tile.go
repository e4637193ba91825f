package svg

import (
	"bytes"
	"encoding/base64"
	"image/jpeg"
	"image/png"
	"strconv"

	"firstdrop/draw"
	"firstdrop/measure"
)

// sharp is to how many squares to the inch pictures are reduced.
const sharp = 300

// pictures writes every picture of the scene once, as sharp as its largest repeat
// asks, for tiles to refer to.
func (e *encoder) pictures(s *draw.Scene) {
	type size struct{ width, height measure.Length }
	sizes := map[*draw.Picture]size{}
	var order []*draw.Picture
	s.Walk(func(_ string, it draw.Item) {
		t, ok := it.(draw.Tile)
		if !ok || t.IsNone() {
			return
		}
		if _, ok := sizes[t.Picture]; !ok {
			order = append(order, t.Picture)
		}
		was := sizes[t.Picture]
		sizes[t.Picture] = size{max(was.width, t.Width), max(was.height, t.Height)}
	})
	if len(order) == 0 {
		return
	}
	e.images = map[*draw.Picture]string{}
	e.put("<defs>\n")
	for _, p := range order {
		e.images[p] = e.id("picture")
		squares := func(l measure.Length) int {
			return int(min(l, 10*measure.Metre).Scaled(sharp, int64(measure.Inch))) + 1
		}
		e.put(`<image id="`, e.images[p], `" width="1" height="1" preserveAspectRatio="none" xlink:href="`,
			embedded(p.Reduced(squares(sizes[p].width), squares(sizes[p].height))), `"/>`, "\n")
	}
	e.put("</defs>\n")
}

// embedded returns a picture as an address that holds it.
func embedded(p *draw.Picture) string {
	var b bytes.Buffer
	kind := "png"
	if p.Photo {
		kind = "jpeg"
		_ = jpeg.Encode(&b, p.Image(), &jpeg.Options{Quality: 88}) // a bytes.Buffer never fails
	} else {
		var encoder png.Encoder
		_ = encoder.Encode(&b, p.Image())
	}
	return "data:image/" + kind + ";base64," + base64.StdEncoding.EncodeToString(b.Bytes())
}

// tile writes a pattern that repeats the picture, and the polygon filled with it.
func (e *encoder) tile(t draw.Tile) {
	if t.IsNone() {
		return
	}
	e.tiles++
	id := e.id("tile" + strconv.Itoa(e.tiles))
	w, h := millimetres(t.Width), millimetres(t.Height)
	move := w + " 0 0 " + h + " 0 0"
	if t.UpsideDown {
		move = "-" + w + " 0 0 -" + h + " " + w + " " + h
	}
	e.put(`<pattern id="`, id, `" patternUnits="userSpaceOnUse" x="`, millimetres(t.At.X), `" y="`, millimetres(-t.At.Y-t.Height), `" width="`, w, `" height="`, h, `">`)
	e.put(`<use xlink:href="#`, e.images[t.Picture], `" transform="matrix(`, move, `)"/></pattern>`, "\n")
	if fade := min(max(t.Fade, 0), 100); fade > 0 {
		e.put(`<g opacity="`, strconv.FormatFloat(float64(100-fade)/100, 'f', -1, 64), `">`)
		defer e.put("</g>\n")
	}
	e.polygon(t.Shape, "url(#"+id+")", draw.Pen{})
}
