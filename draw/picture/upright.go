package picture

import (
	"encoding/binary"

	"firstdrop/draw"
)

// orientation returns how a camera was held, 1 to 8, as the file's Exif part says
// (CIPA DC-008, tag 0x0112); 1 for upright or where nothing is said.
func orientation(data []byte) int {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		kind, long := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if kind == 0xda || long < 2 || at+2+long > len(data) { // the picture itself begins
			break
		}
		body := data[at+4 : at+2+long]
		if kind == 0xe1 && len(body) > 14 && string(body[:6]) == "Exif\x00\x00" {
			return orientationTag(body[6:])
		}
		at += 2 + long
	}
	return 1
}

func orientationTag(tiff []byte) int {
	var order binary.ByteOrder = binary.LittleEndian
	if tiff[0] == 'M' {
		order = binary.BigEndian
	}
	at := uint64(order.Uint32(tiff[4:]))
	if at+2 > uint64(len(tiff)) {
		return 1
	}
	n := int(order.Uint16(tiff[at:]))
	for entries := tiff[at+2:]; n > 0 && len(entries) >= 12; n, entries = n-1, entries[12:] {
		if order.Uint16(entries) == 0x0112 {
			if v := int(order.Uint16(entries[8:])); v >= 1 && v <= 8 {
				return v
			}
		}
	}
	return 1
}

// upright returns the picture as it was seen. How the rows and columns of each
// orientation run is in the table of CIPA DC-008, 4.6.4.
func upright(p *draw.Picture, orientation int) *draw.Picture {
	if orientation == 1 {
		return p
	}
	swapped := orientation >= 5
	q := &draw.Picture{Width: p.Width, Height: p.Height, Pix: make([]uint8, len(p.Pix)), Photo: p.Photo}
	if swapped {
		q.Width, q.Height = p.Height, p.Width
	}
	for y := range q.Height {
		for x := range q.Width {
			i, j := x, y // where the square is in the file: column i, row j
			if swapped {
				i, j = y, x
			}
			switch orientation {
			case 2, 3, 7, 8: // the columns run backwards
				i = p.Width - 1 - i
			}
			switch orientation {
			case 3, 4, 6, 7: // the rows do
				j = p.Height - 1 - j
			}
			copy(q.Pix[3*(y*q.Width+x):][:3], p.Pix[3*(j*p.Width+i):][:3])
		}
	}
	return q
}
