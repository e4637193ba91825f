package png

import (
	"firstdrop/draw"
)

// tile fills a polygon with a repeated picture.
func (c *canvas) tile(t draw.Tile) {
	if t.IsNone() {
		return
	}
	c.shape(t.Shape)
	s := c.sampler(t)
	fade := min(max(t.Fade, 0), 100)
	c.cover.each(evenOdd, func(x, y int, cover []int32) {
		pix := c.image.Pix[c.image.PixOffset(x, y):]
		for i, n := range cover {
			if n > 0 {
				r, g, b := s.at(x+i, y)
				mix(pix[4*i:], n*int32(100-fade)/100, r, g, b)
			}
		}
	})
}

// sampler tells the colour that a repeated picture shows at a square.
type sampler struct {
	picture       *draw.Picture
	left, foot    int // of a repeat, in parts
	width, height int // of a repeat, in parts
	upsideDown    bool
}

func (c *canvas) sampler(t draw.Tile) sampler {
	corner := c.place(t.At)
	return sampler{
		picture: c.reduced(t), left: corner.x, foot: corner.y,
		width: max(c.across.of(t.Width), 1), height: max(c.down.of(t.Height), 1), upsideDown: t.UpsideDown,
	}
}

// reduced returns the tile's picture with no more squares than the canvas can
// show, found once for each picture.
func (c *canvas) reduced(t draw.Tile) *draw.Picture {
	p := c.tiles[t.Picture]
	if p == nil {
		p = t.Picture.Reduced((c.across.of(t.Width)+parts-1)/parts, (c.down.of(t.Height)+parts-1)/parts)
		c.tiles[t.Picture] = p
	}
	return p
}

// at returns the colour at the middle of a square, mixed from the four squares of
// the picture round it.
func (s *sampler) at(x, y int) (r, g, b uint8) {
	across := wrapped(x*parts+parts/2-s.left, s.width)
	down := wrapped(y*parts+parts/2-s.foot, s.height)
	if s.upsideDown {
		across, down = s.width-1-across, s.height-1-down
	}
	p := s.picture
	// In parts of a square of the picture, from the middle of its first.
	u := across*p.Width*parts/s.width - parts/2
	v := down*p.Height*parts/s.height - parts/2
	i, j := floor(u, parts), floor(v, parts)
	fu, fv := u-i*parts, v-j*parts
	i0, j0 := wrapped(i, p.Width), wrapped(j, p.Height)
	i1, j1 := (i0+1)%p.Width, (j0+1)%p.Height
	rgb := [3]uint8{}
	for c := range rgb {
		top := int(p.Pix[3*(j0*p.Width+i0)+c])*(parts-fu) + int(p.Pix[3*(j0*p.Width+i1)+c])*fu
		low := int(p.Pix[3*(j1*p.Width+i0)+c])*(parts-fu) + int(p.Pix[3*(j1*p.Width+i1)+c])*fu
		rgb[c] = uint8((top*(parts-fv) + low*fv) / (parts * parts))
	}
	return rgb[0], rgb[1], rgb[2]
}

// wrapped returns n within [0, size).
func wrapped(n, size int) int {
	if n %= size; n < 0 {
		n += size
	}
	return n
}
