package text

import (
	"slices"

	"golang.org/x/text/unicode/bidi"
)

// span is a stretch of a line in one direction: letters from index from, up to
// but not including to. An odd level runs from right to left.
type span struct{ from, to, level int }

// IsRightToLeft reports whether a line runs from right to left: whether its first
// strong letter does (UAX #9, rules P2 and P3).
func IsRightToLeft(line string) bool {
	for _, r := range line {
		switch classOf(r) {
		case bidi.L:
			return false
		case bidi.R, bidi.AL:
			return true
		}
	}
	return false
}

func classOf(r rune) bidi.Class {
	p, _ := bidi.LookupRune(r)
	return p.Class()
}

// spans returns the stretches of a line as they stand from left to right (UAX #9,
// rules L1 and L2).
func spans(line []rune, base int) []span {
	l := levels(line, base)
	var all []span
	for i, level := range l {
		if n := len(all); n > 0 && all[n-1].level == level {
			all[n-1].to = i + 1
			continue
		}
		all = append(all, span{i, i + 1, level})
	}
	for level := slices.Max(append(l, 0)); level > 0; level-- {
		for i := 0; i < len(all); i++ {
			from := i
			for i < len(all) && all[i].level >= level {
				i++
			}
			slices.Reverse(all[from:i])
		}
	}
	return all
}

// levels returns the level of every letter.
func levels(line []rune, base int) []int {
	b := &order{line: line, base: base, class: make([]bidi.Class, len(line))}
	plain := base == 0
	for i, r := range line {
		b.class[i] = classOf(r)
		plain = plain && r < 0x590
	}
	out := make([]int, len(line))
	if plain {
		return out
	}
	first := slices.Clone(b.class)
	b.weak()
	b.brackets(first)
	b.neutral()
	for i, c := range b.class {
		switch {
		case c == bidi.R:
			out[i] = base | 1
		case base == 1 || c != bidi.L:
			out[i] = 2
		}
	}
	trailing(out, first, base)
	return out
}

// trailing gives blanks at the end of the line, and before a tab, the line's own
// level (rule L1).
func trailing(out []int, first []bidi.Class, base int) {
	blank := true
	for i := len(out) - 1; i >= 0; i-- {
		switch first[i] {
		case bidi.S, bidi.B:
			blank = true
		case bidi.WS, bidi.BN:
		default:
			blank = false
		}
		if blank {
			out[i] = base
		}
	}
}

// order works out the directions of one line.
type order struct {
	line  []rune
	base  int
	class []bidi.Class
}

// side returns the class of the line's own direction.
func (b *order) side() bidi.Class {
	if b.base == 1 {
		return bidi.R
	}
	return bidi.L
}

// weak resolves marks and numbers (rules W1 to W7). Classes that carry no
// direction come out as ON.
func (b *order) weak() {
	last, strong := b.side(), b.side()
	for i, c := range b.class {
		switch c {
		case bidi.NSM, bidi.BN: // a mark goes with its letter, what is invisible with its neighbour
			c = last
		case bidi.EN:
			if strong == bidi.AL {
				c = bidi.AN
			}
		case bidi.L, bidi.R, bidi.AL:
			strong = c
		}
		b.class[i], last = c, c
	}
	for i, c := range b.class {
		if c == bidi.AL {
			b.class[i] = bidi.R
		}
	}
	b.separators()
	b.terminators()
	strong = b.side()
	for i, c := range b.class {
		switch c {
		case bidi.L, bidi.R:
			strong = c
		case bidi.EN:
			if strong == bidi.L {
				b.class[i] = bidi.L
			}
		case bidi.AN:
		default:
			b.class[i] = bidi.ON
		}
	}
}

// separators joins a single separator between two numbers to them (W4).
func (b *order) separators() {
	for i := 1; i+1 < len(b.class); i++ {
		before, after := b.class[i-1], b.class[i+1]
		if before != after || before != bidi.EN && before != bidi.AN {
			continue
		}
		if c := b.class[i]; c == bidi.CS || c == bidi.ES && before == bidi.EN {
			b.class[i] = before
		}
	}
}

// terminators joins signs such as % to the number they stand at (W5).
func (b *order) terminators() {
	for i := 0; i < len(b.class); i++ {
		if b.class[i] != bidi.ET {
			continue
		}
		from := i
		for i < len(b.class) && b.class[i] == bidi.ET {
			i++
		}
		if from > 0 && b.class[from-1] == bidi.EN || i < len(b.class) && b.class[i] == bidi.EN {
			for k := from; k < i; k++ {
				b.class[k] = bidi.EN
			}
		}
	}
}

// strength returns the direction that a resolved class counts as among neutrals,
// where numbers count as R; ON for none.
func strength(c bidi.Class) bidi.Class {
	if c == bidi.EN || c == bidi.AN {
		return bidi.R
	}
	return c
}

// neutral gives what has no direction that of its neighbours where they agree,
// the line's where not (N1 and N2).
func (b *order) neutral() {
	before := b.side()
	for i := 0; i < len(b.class); i++ {
		if b.class[i] != bidi.ON {
			before = strength(b.class[i])
			continue
		}
		from := i
		for i < len(b.class) && b.class[i] == bidi.ON {
			i++
		}
		after := b.side()
		if i < len(b.class) {
			after = strength(b.class[i])
		}
		to := b.side()
		if before == after {
			to = before
		}
		for k := from; k < i; k++ {
			b.class[k] = to
		}
		i--
	}
}
