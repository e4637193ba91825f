package tell

import "strings"

// Sentences sets lines that stand below each other elsewhere in one after another,
// each with a full stop unless it ends in a mark of its own. Empty ones are left out.
func Sentences(lines ...string) string {
	var b strings.Builder
	for _, line := range lines {
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(line)
		if !strings.ContainsAny(line[len(line)-1:], ".:;!?") {
			b.WriteByte('.')
		}
	}
	return b.String()
}
