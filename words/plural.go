package words

// The plural rules of the Unicode CLDR for whole numbers. French has a third
// form for whole millions, which no text here comes to.

// oneIsOne is the rule of English and German.
func oneIsOne(n int) string {
	if n == 1 {
		return "one"
	}
	return "other"
}

// noneIsOne is the rule of French, where nothing is singular too.
func noneIsOne(n int) string {
	if n == 0 || n == 1 || n == -1 {
		return "one"
	}
	return "other"
}
