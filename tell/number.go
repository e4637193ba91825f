package tell

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstdrop/plan"
	"firstdrop/words"
)

// Rolled counts rolls: "9 rolls".
func Rolled(c *words.Catalogue, n int) string { return c.Text("page.rolls", "n", n) }

// Packs counts what is to be bought: rolls, or packs of several.
func Packs(c *words.Catalogue, n, per int) string {
	if per <= 1 {
		return Rolled(c, n)
	}
	return c.Text("page.packs", "n", n, "per", per)
}

// SoldIn says what is sold together.
func SoldIn(c *words.Catalogue, per int) string {
	if per <= 1 {
		return c.Text("page.single-rolls")
	}
	return c.Text("page.packs-of", "per", per)
}

// ByArea says how many rolls dividing areas gives.
func ByArea(c *words.Catalogue, pp *plan.PaperPlan) string {
	area := c.Number(pp.Net.Format(c.Units()))
	return c.Text("page.by-area", "area", area, "rolls", Rolled(c, pp.AreaRolls))
}

// Share writes a part of all in tenths of a per cent, cut off: never 100 % for
// less than all.
func Share(c *words.Catalogue, of, all int) string {
	tenths := of * 1000 / max(all, 1)
	return c.Number(fmt.Sprintf("%d.%d %%", tenths/10, tenths%10))
}

// Distinct lists each text once, in the order of its first time.
func Distinct(texts []string) (once []string) {
	for _, t := range texts {
		if !slices.Contains(once, t) {
			once = append(once, t)
		}
	}
	return once
}

// Numbers writes numbers in short: "1–4, 9".
func Numbers(numbers []int) string {
	numbers = slices.Clone(numbers)
	slices.Sort(numbers)
	numbers = slices.Compact(numbers)
	var parts []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		switch k - i {
		case 0:
			parts = append(parts, strconv.Itoa(numbers[i]))
		case 1:
			parts = append(parts, strconv.Itoa(numbers[i]), strconv.Itoa(numbers[k]))
		default:
			parts = append(parts, strconv.Itoa(numbers[i])+"–"+strconv.Itoa(numbers[k]))
		}
		i = k + 1
	}
	return strings.Join(parts, ", ")
}
