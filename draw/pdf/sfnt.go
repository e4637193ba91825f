package pdf

import (
	"encoding/binary"
	"errors"
	"slices"
)

// sfnt is a TrueType font file taken apart (ISO/IEC 14496-22, the OpenType
// specification; table names are its).
type sfnt struct {
	tables map[string][]byte
	loca   []uint32 // where each glyph begins in glyf, and where the last ends
	wide   int      // how many glyphs have a width of their own
}

var errFont = errors.New("no TrueType font")

func parsed(data []byte) (*sfnt, error) {
	if len(data) < 12 {
		return nil, errFont
	}
	s := &sfnt{tables: map[string][]byte{}}
	for i := range int(binary.BigEndian.Uint16(data[4:])) {
		entry := data[min(12+16*i, len(data)):]
		if len(entry) < 16 {
			return nil, errFont
		}
		from, long := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		if uint64(from)+uint64(long) > uint64(len(data)) {
			return nil, errFont
		}
		s.tables[string(entry[:4])] = data[from : from+long]
	}
	for name, least := range map[string]int{"head": 54, "hhea": 36, "maxp": 32, "hmtx": 4, "loca": 4, "glyf": 0} {
		if t, ok := s.tables[name]; !ok || len(t) < least {
			return nil, errFont
		}
	}
	s.wide = int(binary.BigEndian.Uint16(s.tables["hhea"][34:]))
	return s, s.readLoca()
}

func (s *sfnt) readLoca() error {
	t := s.tables["loca"]
	long := binary.BigEndian.Uint16(s.tables["head"][50:]) != 0
	for n := int(binary.BigEndian.Uint16(s.tables["maxp"][4:])) + 1; n > 0; n-- {
		switch {
		case long && len(t) >= 4:
			s.loca, t = append(s.loca, binary.BigEndian.Uint32(t)), t[4:]
		case !long && len(t) >= 2:
			s.loca, t = append(s.loca, 2*uint32(binary.BigEndian.Uint16(t))), t[2:]
		default:
			return errFont
		}
	}
	if !slices.IsSorted(s.loca) || int(s.loca[len(s.loca)-1]) > len(s.tables["glyf"]) || s.wide < 1 || len(s.tables["hmtx"]) < 4*s.wide {
		return errFont
	}
	return nil
}

// advance returns a glyph's width.
func (s *sfnt) advance(glyph uint16) int {
	return int(binary.BigEndian.Uint16(s.tables["hmtx"][4*min(int(glyph), s.wide-1):]))
}

// bounds returns the box that holds every glyph: left, foot, right, head.
func (s *sfnt) bounds() (box [4]int) {
	for i := range box {
		box[i] = int(int16(binary.BigEndian.Uint16(s.tables["head"][36+2*i:])))
	}
	return box
}

// glyph returns a glyph's outline as stored; nothing for a blank one.
func (s *sfnt) glyph(id int) []byte {
	if id+1 >= len(s.loca) {
		return nil
	}
	return s.tables["glyf"][s.loca[id]:s.loca[id+1]]
}

// Flags of a glyph made of others.
const (
	argsAreWords = 0x0001
	hasScale     = 0x0008
	morePieces   = 0x0020
	hasXYScale   = 0x0040
	hasMatrix    = 0x0080
)

// pieces returns the glyphs that a glyph is made of.
func (s *sfnt) pieces(id int) (ids []int) {
	g := s.glyph(id)
	if len(g) < 10 || int16(binary.BigEndian.Uint16(g)) >= 0 {
		return nil
	}
	for g = g[10:]; len(g) >= 4; {
		flags := binary.BigEndian.Uint16(g)
		ids = append(ids, int(binary.BigEndian.Uint16(g[2:])))
		skip := 6
		if flags&argsAreWords != 0 {
			skip = 8
		}
		switch {
		case flags&hasScale != 0:
			skip += 2
		case flags&hasXYScale != 0:
			skip += 4
		case flags&hasMatrix != 0:
			skip += 8
		}
		if flags&morePieces == 0 || skip > len(g) {
			break
		}
		g = g[skip:]
	}
	return ids
}

// subset returns the font with the outlines of these glyphs, and of what they are
// made of, alone. Glyphs keep their numbers.
func (s *sfnt) subset(glyphs []uint16) []byte {
	keep := map[int]bool{0: true}
	var need func(id int)
	need = func(id int) {
		if keep[id] && id != 0 {
			return
		}
		keep[id] = true
		for _, p := range s.pieces(id) {
			need(p)
		}
	}
	last := 0
	for _, g := range glyphs {
		need(int(g))
	}
	for id := range keep {
		last = max(last, id)
	}
	var glyf, loca, hmtx []byte
	for id := range last + 1 {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		width, side := 0, []byte{0, 0}
		if keep[id] {
			glyf = append(glyf, s.glyph(id)...)
			for len(glyf)%4 != 0 {
				glyf = append(glyf, 0)
			}
			width, side = s.advance(uint16(id)), s.bearing(id)
		}
		hmtx = append(binary.BigEndian.AppendUint16(hmtx, uint16(width)), side...)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	return s.assembled(last+1, glyf, loca, hmtx)
}

// bearing returns the two bytes of a glyph's left side bearing.
func (s *sfnt) bearing(id int) []byte {
	t, at := s.tables["hmtx"], 4*id+2
	if id >= s.wide {
		at = 4*s.wide + 2*(id-s.wide)
	}
	if at+2 > len(t) {
		return []byte{0, 0}
	}
	return t[at : at+2]
}

// assembled returns a font file of n glyphs.
func (s *sfnt) assembled(n int, glyf, loca, hmtx []byte) []byte {
	head, hhea, maxp := slices.Clone(s.tables["head"]), slices.Clone(s.tables["hhea"]), slices.Clone(s.tables["maxp"])
	binary.BigEndian.PutUint32(head[8:], 0)
	binary.BigEndian.PutUint16(head[50:], 1)
	binary.BigEndian.PutUint16(hhea[34:], uint16(n))
	binary.BigEndian.PutUint16(maxp[4:], uint16(n))
	tables := []struct {
		name string
		data []byte
	}{{"glyf", glyf}, {"head", head}, {"hhea", hhea}, {"hmtx", hmtx}, {"loca", loca}, {"maxp", maxp}}
	out := []byte{0, 1, 0, 0, 0, byte(len(tables)), 0, 64, 0, 2, 0, 32} // six tables: 4·16 bytes searched in two steps
	at := len(out) + 16*len(tables)
	var body []byte
	headAt := 0
	for _, t := range tables {
		if t.name == "head" {
			headAt = at + len(body)
		}
		out = append(out, t.name...)
		out = binary.BigEndian.AppendUint32(out, checksum(t.data))
		out = binary.BigEndian.AppendUint32(out, uint32(at+len(body)))
		out = binary.BigEndian.AppendUint32(out, uint32(len(t.data)))
		body = append(body, t.data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[headAt+8:], 0xb1b0afba-checksum(out))
	return out
}

// checksum adds up a table's words.
func checksum(data []byte) (sum uint32) {
	for len(data) >= 4 {
		sum, data = sum+binary.BigEndian.Uint32(data), data[4:]
	}
	var rest [4]byte
	copy(rest[:], data)
	return sum + binary.BigEndian.Uint32(rest[:])
}
