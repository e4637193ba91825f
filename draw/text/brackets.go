package text

import (
	"slices"

	"golang.org/x/text/unicode/bidi"
)

// mates are the brackets that open and close a pair, beside the general ones of
// the Unicode Character Database (BidiBrackets.txt) those that texts about rooms
// hold; others count as plain signs.
var mates = map[rune]rune{
	'(': ')', '[': ']', '{': '}', '⁅': '⁆', '⁽': '⁾', '₍': '₎', '⟦': '⟧', '⟨': '⟩', '⟪': '⟫',
	'〈': '〉', '《': '》', '「': '」', '『': '』', '【': '】', '〔': '〕', '（': '）', '［': '］', '｛': '｝',
}

// depth is how many brackets may stand open at once (UAX #9, BD16).
const depth = 63

// pairs returns the pairs of brackets, by where they open.
func (b *order) pairs() [][2]int {
	var open []int
	var all [][2]int
	for i, r := range b.line {
		if b.class[i] != bidi.ON {
			continue
		}
		if mates[r] != 0 {
			if open = append(open, i); len(open) > depth {
				return nil
			}
			continue
		}
		for k := len(open) - 1; k >= 0; k-- {
			if mates[b.line[open[k]]] == r {
				all = append(all, [2]int{open[k], i})
				open = open[:k]
				break
			}
		}
	}
	slices.SortFunc(all, func(p, q [2]int) int { return p[0] - q[0] })
	return all
}

// brackets gives both brackets of a pair one direction: the line's where the pair
// holds a letter of that direction, the other where it holds only such and one
// stands before it as well (rule N0). first are the classes at the outset.
func (b *order) brackets(first []bidi.Class) {
	for _, p := range b.pairs() {
		own, other := false, false
		for _, c := range b.class[p[0]+1 : p[1]] {
			s := strength(c)
			own = own || s == b.side()
			other = other || s != b.side() && s != bidi.ON
		}
		to := b.side()
		if !own {
			if !other {
				continue
			}
			to = b.before(p[0])
		}
		for _, i := range p {
			b.class[i] = to
			for k := i + 1; k < len(first) && first[k] == bidi.NSM; k++ {
				b.class[k] = to
			}
		}
	}
}

// before returns the last direction before letter i.
func (b *order) before(i int) bidi.Class {
	for i--; i >= 0; i-- {
		if s := strength(b.class[i]); s != bidi.ON {
			return s
		}
	}
	return b.side()
}
