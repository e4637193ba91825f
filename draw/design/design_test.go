package design_test

import (
	"bytes"
	"testing"

	"firstdrop/draw/design"
	"firstdrop/measure"
)

const mm = measure.Millimetre

func TestThreeMatches(t *testing.T) {
	seen := map[int64]bool{}
	for _, d := range design.All() {
		seen[d.Den] = true
		if again, ok := design.Named(d.Name); !ok || again.Title != d.Title {
			t.Errorf("%s is not found by its name", d.Name)
		}
	}
	if len(seen) != 3 || !seen[1] || !seen[2] || !seen[3] {
		t.Errorf("matches by %v, want straight, halves and thirds", seen)
	}
	if _, ok := design.Named("none"); ok {
		t.Error("a design by any name")
	}
}

// What is cut at the right edge goes on at the left edge of the next drop, which
// stands lower on the roll by the drop of the match: where two columns of squares
// meet there, they differ no more than two that meet inside the picture do. Between
// wrong heights they differ much more.
func TestDropsMeet(t *testing.T) {
	const across = 240
	for _, d := range design.All() {
		repeat := d.Width * 6 / 5 // a number of rows that halves and thirds divide: 288
		p, err := d.Picture(d.Width, repeat, across)
		if err != nil {
			t.Fatal(err)
		}
		// What stands at row y of this drop's edge has row y + shift beside it.
		differ := func(a, b, shift int) int {
			sum := 0
			for y := range p.Height {
				y2 := (y + shift) % p.Height
				for c := range 3 {
					n := int(p.Pix[3*(y*across+a)+c]) - int(p.Pix[3*(y2*across+b)+c])
					sum += max(n, -n)
				}
			}
			return sum
		}
		shift := p.Height * int(d.Num) / int(d.Den)
		edge := differ(across-1, 0, shift)
		inside := 0
		for x := range 20 {
			inside = max(inside, differ(12*x, 12*x+1, 0))
		}
		if edge > inside*3/2 {
			t.Errorf("%s: the edges differ by %d, columns inside by %d at most", d.Name, edge, inside)
		}
		if wrong := differ(across-1, 0, shift+p.Height/4); wrong < 2*edge {
			t.Errorf("%s: at the wrong height the edges differ by %d, at the right one by %d", d.Name, wrong, edge)
		}
		head := 0 // and the repeat goes on where it begins anew
		for x := range across {
			for c := range 3 {
				n := int(p.Pix[3*x+c]) - int(p.Pix[3*((p.Height-1)*across+x)+c])
				head += max(n, -n)
			}
		}
		if head > inside*2 {
			t.Errorf("%s: head and foot differ by %d, columns inside by %d at most", d.Name, head, inside)
		}
	}
}

func TestPictureIsTheSameAgain(t *testing.T) {
	d, _ := design.Named("quince")
	a, err := d.Picture(d.Width, d.Repeat, 100)
	b, err2 := d.Picture(d.Width, d.Repeat, 100)
	if err != nil || err2 != nil || a.Width != 100 || a.Height != 121 || !bytes.Equal(a.Pix, b.Pix) {
		t.Errorf("%d × %d, err = %v, %v", a.Width, a.Height, err, err2)
	}
}

func TestPictureRefuses(t *testing.T) {
	d := design.All()[0]
	for _, bad := range [][3]int64{{0, 1, 10}, {1, -1, 10}, {int64(mm), int64(mm), 0}, {1, int64(measure.MaxLength), 1000}} {
		if _, err := d.Picture(measure.Length(bad[0]), measure.Length(bad[1]), int(bad[2])); err == nil {
			t.Errorf("%v: no error", bad)
		}
	}
}
