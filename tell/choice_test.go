package tell_test

import (
	"slices"
	"testing"

	"firstdrop/finding"
	"firstdrop/tell"
)

// Up to three findings of a code are listed one by one; of more the first stands for all, where
// it is.
func TestFolded(t *testing.T) {
	for _, c := range []struct {
		codes string // a letter each
		want  string
		count []int
	}{
		{"", "", nil},
		{"aaa", "aaa", []int{1, 1, 1}},
		{"aaaa", "a", []int{4}},
		{"abaabac", "abbc", []int{4, 1, 1, 1}},
		{"bababababc", "bac", []int{5, 4, 1}},
	} {
		var fs []finding.Finding
		for i, code := range c.codes {
			fs = append(fs, finding.Finding{Code: finding.Code(code), Number: i + 1})
		}
		var got string
		var count []int
		last := 0
		for _, k := range tell.Folded(fs) {
			got, count = got+string(k.First.Code), append(count, k.Count)
			if k.First.Number <= last {
				t.Errorf("%s: number %d stands after %d", c.codes, k.First.Number, last)
			}
			last = k.First.Number
		}
		if got != c.want || !slices.Equal(count, c.count) {
			t.Errorf("%s: got %s %v, want %s %v", c.codes, got, count, c.want, c.count)
		}
		if n := len(tell.Each(fs)); n != len(fs) {
			t.Errorf("%s: %d of %d are listed", c.codes, n, len(fs))
		}
	}
}
