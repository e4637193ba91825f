package main

import "strings"

// comment returns a comment for the reader of TypeScript, above what it is about.
func comment(text, indent string) string {
	text = strings.TrimSpace(strings.ReplaceAll(text, "*/", "* /"))
	if text == "" {
		return ""
	}
	lines := strings.Split(text, "\n")
	if len(lines) == 1 {
		return indent + "/** " + lines[0] + " */\n"
	}
	var b strings.Builder
	b.WriteString(indent + "/**\n")
	for _, line := range lines {
		b.WriteString(strings.TrimRight(indent+" * "+line, " ") + "\n")
	}
	b.WriteString(indent + " */\n")
	return b.String()
}

// wrapped breaks a text into lines of about 90 signs.
func wrapped(text string) string {
	var b strings.Builder
	long := 0
	for i, word := range strings.Fields(text) {
		switch n := len(word); {
		case i == 0:
		case long+n > 90:
			b.WriteByte('\n')
			long = 0
		default:
			b.WriteByte(' ')
			long++
		}
		b.WriteString(word)
		long += len(word)
	}
	return b.String()
}
