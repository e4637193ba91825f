package main

import (
	"strings"
	"testing"

	"firstdrop/job/yaml"
	"firstdrop/tell"
)

// What the starter's comments suggest can be written just so: with every
// suggestion taken, the job is still sound.
func TestStartersSuggestions(t *testing.T) {
	for name, tt := range map[string]struct {
		starter []byte
		corner  string
	}{
		"metric":   {metricStarter, "corner: {kind: inside, lean: {left: 8, right: -3}}"},
		"imperial": {imperialStarter, "corner: {kind: inside, lean: {left: 1/4, right: -1/8}}"},
	} {
		text := string(tt.starter)
		take := func(comment, line string) {
			if strings.Count(text, comment) != 1 {
				t.Errorf("%s: %q stands %d times in the starter", name, comment, strings.Count(text, comment))
			}
			text = strings.Replace(text, comment, line, 1)
		}
		take("# "+tt.corner, tt.corner)
		take("# diagonals:", "diagonals:")
		take("#   - {from:", "  - {from:")
		take("# measured:", "measured:")
		take("# motif:", "motif:")
		take("# price:", "price:")
		take("# keep:", "keep:")
		height := text[strings.Index(text, "height: {"):]
		height = height[:strings.Index(height, "}")+1]
		take("      sight: focal #", "      "+height+"\n      sight: focal #")
		j, err := yaml.Read(name, []byte(text))
		if err != nil {
			t.Errorf("%s:\n%v\n%s", name, err, text)
			continue
		}
		if len(j.Room.Diagonals) != 1 || j.Papers[0].Measured == nil || j.Papers[0].Keep != 1 || j.Papers[0].Motif == nil || !j.Papers[0].Price.IsStated() ||
			j.Room.Walls[1].Corner == nil || j.Room.Walls[0].Height == nil {
			t.Errorf("%s: a suggestion was not taken: %+v", name, j)
		}
		for _, f := range j.Findings() {
			t.Errorf("%s: %s", name, tell.Finding(speaking("").In(j.Units.System()), f))
		}
	}
}
