package sheet

import (
	"testing"

	"firstdrop/measure"
)

func TestPage(t *testing.T) {
	const w, h = 530 * mm, 2400 * mm
	tests := []struct {
		name          string
		o             Options
		width, height measure.Length
		scale         int64
		page          measure.Length
	}{
		{"an ordinary wall", Options{}, 4200 * mm, h, 30, 180 * mm},
		{"a narrow one is as tall as it may be", Options{}, 350 * mm, h, 20, 180 * mm},
		{"a long one lies on its side", Options{}, 8000 * mm, h, 40, 267 * mm},
		{"a hall needs a longer sheet", Options{}, 14000 * mm, h, 50, 320 * mm},
		{"given scale", Options{Scale: 10}, 4200 * mm, h, 10, 460 * mm},
		{"given width", Options{Width: 110 * mm}, 4200 * mm, h, 75, 110 * mm},
		{"imperial", Options{System: measure.Imperial}, 14 * measure.Foot, 8 * measure.Foot, 32, 180 * mm},
	}
	for _, tt := range tests {
		scale, page := tt.o.page(tt.width, tt.height, w)
		if scale != tt.scale || page != tt.page {
			t.Errorf("%s: 1:%d on %v, want 1:%d on %v", tt.name, scale, page, tt.scale, tt.page)
		}
	}
}

// ISO 5455:1979 (EN ISO 5455:1994), clause 5: reductions 1:2, 1:5, 1:10 and these
// times ten, up to 1:10 000; the list is from memory.
func TestScalesHoldThoseOfISO5455(t *testing.T) {
	has := map[int64]bool{}
	for _, n := range scales[measure.Metric] {
		has[n] = true
	}
	for _, n := range []int64{10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000} {
		if !has[n] {
			t.Errorf("1:%d is missing", n)
		}
	}
}

// Letters of the body are at least 9 pixels high on a phone 390 pixels wide, a
// usual width (common practice: nothing under 9).
func TestLegibleOnAPhone(t *testing.T) {
	for _, size := range []measure.Length{body, small, large, heading} {
		if px := size * 390 / upright; px < 9 {
			t.Errorf("letters of %v are %d pixels high", size, px)
		}
	}
}
