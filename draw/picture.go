package draw

import (
	"image"
	"image/color"
	"image/draw"
)

// Picture is a picture made of small squares, without transparency.
type Picture struct {
	Width, Height int     // in squares, both > 0
	Pix           []uint8 // red, green and blue of each, row by row from the upper left
	// Photo says that the picture has the soft changes of a photograph, so that a
	// writer may keep it with small losses and much shorter.
	Photo bool
}

// NewPicture returns an image as a picture. What is transparent shows white paper.
func NewPicture(m image.Image) *Picture {
	b := m.Bounds()
	flat := image.NewRGBA(image.Rect(0, 0, b.Dx(), b.Dy()))
	draw.Draw(flat, flat.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(flat, flat.Rect, m, b.Min, draw.Over)
	p := &Picture{Width: b.Dx(), Height: b.Dy(), Pix: make([]uint8, 3*b.Dx()*b.Dy())}
	for i := range b.Dx() * b.Dy() {
		copy(p.Pix[3*i:3*i+3], flat.Pix[4*i:])
	}
	return p
}

// Image returns the picture as an image of the standard library, which shares no
// memory with it.
func (p *Picture) Image() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, p.Width, p.Height))
	for i := range p.Width * p.Height {
		m.SetRGBA(i%p.Width, i/p.Width, color.RGBA{p.Pix[3*i], p.Pix[3*i+1], p.Pix[3*i+2], 255})
	}
	return m
}

// Reduced returns the picture with at most that many squares across and upwards,
// each the mean of those it stands for; the picture itself where it has no more.
func (p *Picture) Reduced(width, height int) *Picture {
	width, height = min(max(width, 1), p.Width), min(max(height, 1), p.Height)
	if width == p.Width && height == p.Height {
		return p
	}
	across := p.squeezed(width)
	return across.turned().squeezed(height).turned()
}

// squeezed returns the picture with fewer squares across: each new one is the mean
// of the old ones under it, weighted by how much of them it covers. Weights are
// whole numbers, so that every machine gets the same.
func (p *Picture) squeezed(width int) *Picture {
	q := &Picture{Width: width, Height: p.Height, Pix: make([]uint8, 3*width*p.Height), Photo: p.Photo}
	for y := range p.Height {
		row, out := p.Pix[3*p.Width*y:], q.Pix[3*width*y:]
		for x := range width {
			lo, hi := x*p.Width, (x+1)*p.Width // in parts of 1/width of an old square
			var sum [3]int
			for i := lo / width; i*width < hi; i++ {
				weight := min(hi, (i+1)*width) - max(lo, i*width)
				for c := range sum {
					sum[c] += weight * int(row[3*i+c])
				}
			}
			for c := range sum {
				out[3*x+c] = uint8((sum[c] + p.Width/2) / p.Width)
			}
		}
	}
	return q
}

// turned returns the picture with rows and columns exchanged.
func (p *Picture) turned() *Picture {
	q := &Picture{Width: p.Height, Height: p.Width, Pix: make([]uint8, len(p.Pix)), Photo: p.Photo}
	for y := range p.Height {
		for x := range p.Width {
			copy(q.Pix[3*(x*p.Height+y):][:3], p.Pix[3*(y*p.Width+x):][:3])
		}
	}
	return q
}
