package job_test

import (
	"strings"
	"testing"

	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/plan"
)

// A centre line is named by what it is the middle of.
func TestMiddle(t *testing.T) {
	const room = `firstdrop: 1
units: mm
room:
  closed: false
  walls:
    - name: A
      width: 4000
      height: 2400
      openings:
        - {name: left window, kind: window, left: 500, width: 900, sill: 900, height: 1200}
        - {name: right window, kind: window, left: 2300, width: 900, sill: 900, height: 1200}
      fittings:
        - {name: bed, kind: bracket, at: [3000, 400], size: [1500, 800]}
papers:
  - {name: P, width: 530, roll: 10 m, match: free}
hang:
  - paper: P
    start: {wall: A, middle: MIDDLE}
`
	for middle, want := range map[string]measure.Length{
		"[wall]": 2000 * mm, "[left window]": 950 * mm, "[bed]": 3000 * mm, "[left window, right window]": 1850 * mm,
	} {
		c := task(t, read(t, strings.Replace(room, "MIDDLE", middle, 1))).Runs[0].Fixed.Centre
		if c == nil || c.X != want || c.Of != plan.Either {
			t.Errorf("%s: %+v, want a line at %v", middle, c, want)
		}
	}
	for middle, want := range map[string]string{
		"[lft window]":          `nothing on wall A is named "lft window"; did you mean left window?`,
		"[wall, bed, bed]":      "middle names 3 things",
		"[wall], edge: 10":      "write one of them",
		"[wall], of: motif":     "says nothing about one",
		"[left window], of: at": "of cannot be",
	} {
		_, err := yaml.Read("job.yaml", []byte(strings.Replace(room, "MIDDLE", middle, 1)))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", middle, err, want)
		}
	}
}
