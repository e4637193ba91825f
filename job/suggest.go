package job

import (
	"strings"

	"firstdrop/message"
)

// suggest returns what to write instead of an unknown word: the nearest known
// one, or all of them when none is near.
func suggest(word string, known []string) message.Message {
	best, least := "", len(word)/3+2
	for _, k := range known {
		if d := distance(strings.ToLower(word), strings.ToLower(k)); d < least && d < len(word) {
			best, least = k, d
		}
	}
	if best != "" {
		return says("suggest_near", "word", best)
	}
	return says("suggest_known", "words", strings.Join(known, ", "))
}

// distance returns how many letters must be added, left out, replaced or
// exchanged with their neighbour to turn a into b. Words longer than 40 bytes
// are far from everything.
func distance(a, b string) int {
	if len(a) > 40 || len(b) > 40 {
		return max(len(a), len(b))
	}
	var rows [3][41]int // the two rows before, and this one
	for j := range len(b) + 1 {
		rows[1][j] = j
	}
	for i := 1; i <= len(a); i++ {
		rows[2][0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(rows[1][j]+1, rows[2][j-1]+1, rows[1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[0][j-2]+1)
			}
			rows[2][j] = d
		}
		rows[0], rows[1] = rows[1], rows[2]
	}
	return rows[1][len(b)]
}
