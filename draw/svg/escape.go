package svg

import (
	"encoding/xml"
	"strconv"
	"strings"
)

// escaped returns text that stands between two tags and is nothing but text. A
// character that XML cannot hold becomes the replacement character. Marks that
// would reverse the direction of what follows are left out.
func escaped(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return -1
		case r == '\n' || r == '\r' || r == '\t':
			return ' '
		}
		return r
	}, text)
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a strings.Builder never fails
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
