package draw_test

import (
	"bytes"
	"image"
	"image/color"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
)

func TestPictureIsFlattenedOnWhite(t *testing.T) {
	m := image.NewNRGBA(image.Rect(3, 4, 6, 5))
	m.Set(3, 4, color.NRGBA{200, 100, 0, 255})
	m.Set(4, 4, color.NRGBA{0, 0, 0, 0})
	m.Set(5, 4, color.NRGBA{0, 0, 0, 51}) // one fifth of black
	p := draw.NewPicture(m)
	if want := []uint8{200, 100, 0, 255, 255, 255, 204, 204, 204}; p.Width != 3 || p.Height != 1 || !bytes.Equal(p.Pix, want) {
		t.Errorf("%d × %d: %v, want %v", p.Width, p.Height, p.Pix, want)
	}
	if back := draw.NewPicture(p.Image()); !bytes.Equal(back.Pix, p.Pix) {
		t.Errorf("comes back as %v", back.Pix)
	}
}

// By hand: five squares in two are 2½ each, the third shared.
func TestPictureReduced(t *testing.T) {
	p := &draw.Picture{Width: 5, Height: 1, Pix: []uint8{0, 0, 0, 10, 0, 0, 20, 0, 0, 30, 0, 0, 40, 0, 0}}
	q := p.Reduced(2, 9)
	if q.Width != 2 || q.Height != 1 || q.Pix[0] != 8 || q.Pix[3] != 32 {
		t.Errorf("%d × %d: %v, want 8 and 32", q.Width, q.Height, q.Pix)
	}
	if p.Reduced(5, 1) != p || p.Reduced(100, 100) != p {
		t.Error("a picture that is small enough is changed")
	}
}

// The mean of all squares stays what it was, but for rounding: twice by half a step.
func TestPictureReducedKeepsItsMean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &draw.Picture{Width: rapid.IntRange(1, 20).Draw(t, "width"), Height: rapid.IntRange(1, 20).Draw(t, "height")}
		p.Pix = rapid.SliceOfN(rapid.Uint8(), 3*p.Width*p.Height, 3*p.Width*p.Height).Draw(t, "pix")
		q := p.Reduced(rapid.IntRange(1, 20).Draw(t, "to width"), rapid.IntRange(1, 20).Draw(t, "to height"))
		mean := func(p *draw.Picture) float64 {
			sum := 0
			for _, v := range p.Pix {
				sum += int(v)
			}
			return float64(sum) / float64(len(p.Pix))
		}
		if a, b := mean(p), mean(q); a-b > 1 || b-a > 1 {
			t.Fatalf("mean %v became %v", a, b)
		}
	})
}
