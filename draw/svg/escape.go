package svg

import (
	"encoding/xml"
	"strconv"
	"strings"

	"firstdrop/draw"
)

// escaped returns text that stands between two tags and is nothing but text.
func escaped(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(draw.Clean(text))) // a strings.Builder never fails
	return b.String()
}

// identifier returns an id part made from a name: ASCII letters, digits and
// "-" as they are, everything else as "_" and its number. It begins with a
// letter.
func identifier(name string) string {
	var b strings.Builder
	for _, r := range name {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-':
			b.WriteRune(r)
		default:
			b.WriteString("_" + strconv.FormatInt(int64(r), 16))
		}
	}
	id := b.String()
	if id == "" || (id[0] < 'a' || id[0] > 'z') && (id[0] < 'A' || id[0] > 'Z') {
		id = "s" + id
	}
	return id
}
