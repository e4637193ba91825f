package sheet_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/text"
	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/sheet"
	"firstdrop/tell"
	"firstdrop/words"
)

// examples plans every example once.
func examples(t *testing.T) map[string]*plan.Plan {
	t.Helper()
	files, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(files) < 15 {
		t.Fatalf("%d examples: %v", len(files), err)
	}
	plans := map[string]*plan.Plan{}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		j, p := planned(t, name, data)
		p.Findings = append(j.Findings(), p.Findings...)
		finding.Sort(p.Findings)
		plans[strings.TrimSuffix(filepath.Base(name), ".yaml")] = p
	}
	return plans
}

// In every language, in both systems, every word on every wall of every example
// has its place: on the page, over no other word, and not cut off.
func TestWordsHaveTheirPlaceInEveryLanguage(t *testing.T) {
	for name, p := range examples(t) {
		for _, tag := range words.Languages() {
			for _, sys := range []measure.System{measure.Metric, measure.Imperial} {
				for r := range p.Runs {
					for w := range p.Runs[r].Layout.Run.Walls {
						where := fmt.Sprintf("%s, %s, %v, wall %s", name, tag, sys, p.Runs[r].Layout.Run.WallName(w))
						n := haveTheirPlace(t, where, sheet.Wall(p, r, w, sheet.Options{System: sys, Lang: words.For(tag)}))
						if want := haveTheirPlace(t, where, sheet.Wall(p, r, w, sheet.Options{System: sys})); n != want {
							t.Errorf("%s: %d sizes, %d in English", where, n, want)
						}
					}
				}
			}
		}
	}
}

// haveTheirPlace checks the words of a wall and counts those among its sizes,
// which must not be left out for want of room.
func haveTheirPlace(t *testing.T, where string, s *draw.Scene) (sizes int) {
	t.Helper()
	var all []draw.Text
	s.Walk(func(layer string, it draw.Item) {
		word, ok := it.(draw.Text)
		if !ok {
			return
		}
		if !s.Window.Contains(word.Box()) {
			t.Errorf("%s: %q leaves the page", where, word.Text)
		}
		if layer == "sizes" {
			sizes++
		}
		if wide := text.Width(word.Text, word.Size, word.Bold); wide > draw.TextWidth(word.Text, word.Size, word.Bold) {
			t.Errorf("%s: %q is wider than its box", where, word.Text)
		}
		if strings.HasSuffix(word.Text, "…") {
			t.Errorf("%s: %q is cut off", where, word.Text)
		}
		for _, other := range all {
			if word.Box().Grown(-mm / 10).Overlaps(other.Box().Grown(-mm / 10)) {
				t.Errorf("%s: %q covers %q", where, word.Text, other.Text)
			}
		}
		all = append(all, word)
	})
	return sizes
}

// What a finding says is whole in every language: everything filled in.
func TestFindingsAreWholeInEveryLanguage(t *testing.T) {
	for name, p := range examples(t) {
		for _, tag := range words.Languages() {
			for _, f := range p.Findings {
				text := tell.Finding(words.For(tag), f)
				if strings.ContainsAny(text, "{}") || strings.Contains(text, "  ") || strings.Contains(text, words.For(tag).Text("size.unknown")) {
					t.Errorf("%s, %s: %q", name, tag, text)
				}
			}
		}
	}
}
