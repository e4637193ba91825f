package sheet_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/svg"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/sheet"
)

const mm = measure.Millimetre

// All rooms and papers of these tests are invented.

func label(name string, repeat measure.Length, m paper.Match) paper.Paper {
	return paper.Paper{Name: name, Width: 530 * mm, RollLength: 10050 * mm, Repeat: repeat, Match: m, Pack: 1, Tolerance: paper.Tolerance{Length: 15, Width: 15}}
}

var (
	plainLabel = label("Limewash", 0, paper.Match{})
	halfLabel  = label("Hop vine", 640*mm, paper.Match{Kind: paper.Offset, Num: 1, Den: 2})
	thirdLabel = label("Three herons", 600*mm, paper.Match{Kind: paper.Offset, Num: 1, Den: 3})
	turnLabel  = label("Combed sand", 320*mm, paper.Match{Kind: paper.Straight, Reversing: true})
	leafLabel  = func() paper.Paper {
		p := label("Quince", 530*mm, paper.Match{Kind: paper.Straight})
		p.Motif = &paper.Motif{Axis: 265 * mm, Head: 60 * mm, Tall: 300 * mm}
		return p
	}()
)

// sample is a room to draw.
type sample struct {
	name  string
	run   string
	label paper.Paper
	sys   measure.System
	alter func(*room.Run)
	fixed plan.Fixed
}

var samples = []sample{
	{name: "plain", run: "closed: A 4200x2400 | B 3000x2400 | C 4200x2400 | D 3000x2400 |", label: plainLabel},
	{name: "door-windows", run: "closed: A 4200x2450 door(300+850 0+2050) window(2000+1400 900+1200 180) | B 3100x2450 window(900+1100 900+1200) | C 4200x2450 | D 3100x2450 |", label: halfLabel, alter: furnish},
	{name: "half-drop", run: "A 3600x2400! | B 2000x2400", label: halfLabel},
	{name: "third-drop", run: "A 3600x2400 | B 2000x2400", label: thirdLabel},
	{name: "motif", run: "A 3600x2500! | B 2000x2500", label: leafLabel},
	{name: "slope", run: "A 3000x2400/2100 | B 2500x2100 | C 3000x2100/2400", label: leafLabel},
	{name: "outside", run: "A 1500x2400 | B 350x2400 > C 1400x2400 fireplace(250+900 0+1050) > D 350x2400 | E 1500x2400", label: leafLabel},
	{name: "leaning", run: "closed: A 3075x2400 |-4,-8 B 2600x2400 |6,3 C 3075x2400 | D 2600x2400 |", label: halfLabel},
	{name: "imperial", run: "closed: A 4267x2438 door(305+813 0+2032) | B 3353x2438 | C 4267x2438 window(1500+1219 914+1067) | D 3353x2438 |", label: halfLabel, sys: measure.Imperial, alter: furnish},
	{name: "reversed", run: "A 2600x2370 | B 1000x2370", label: turnLabel},
	{name: "reversed-motif", run: "A 2600x2370 | B 1000x2370", label: func() paper.Paper {
		p := turnLabel
		p.Motif = &paper.Motif{Axis: 150 * mm, Head: 70 * mm, Tall: 120 * mm}
		return p
	}()},
	{name: "hall", run: "A 14000x2600 door(6000+900 0+2050) | B 3000x2600", label: halfLabel},
	{name: "narrow", run: "A 480x2400 | B 260x2400 > C 700x2400", label: plainLabel},
}

// furnish adds fittings, and names that are only names.
func furnish(r *room.Run) {
	r.Walls[0].Fittings = []room.Fitting{
		{Name: "double socket", Kind: room.Socket, At: geom.Point{X: 1500 * mm, Y: 300 * mm}, Size: geom.Point{X: 146 * mm, Y: 86 * mm}},
		{Name: "switch", Kind: room.Switch, At: geom.Point{X: 1260 * mm, Y: 1100 * mm}, Size: geom.Point{X: 86 * mm, Y: 86 * mm}},
	}
}

// plans keeps the plans of the samples, which nothing changes.
var plans = map[string]*plan.Plan{}

// kept returns the plan of a sample, made once.
func (s sample) kept(t testing.TB) *plan.Plan {
	if plans[s.name] == nil {
		plans[s.name] = s.plan(t)
	}
	return plans[s.name]
}

// plan makes the plan of a sample.
func (s sample) plan(t testing.TB) *plan.Plan {
	t.Helper()
	run := roomtext.Run(s.run)
	run.Name = "Garden room"
	if s.alter != nil {
		s.alter(run)
	}
	p, err := plan.Make(&plan.Task{
		Runs: []plan.RunTask{{Run: run, Fixed: s.fixed}}, Papers: []paper.Paper{s.label},
		Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(),
	})
	if err != nil {
		t.Fatalf("%s: %v", s.name, err)
	}
	return p
}

func (s sample) options() sheet.Options { return sheet.Options{System: s.sys} }

// eachWall calls check with the scene of every wall of every sample.
func eachWall(t *testing.T, check func(t *testing.T, s sample, p *plan.Plan, wall int, scene *draw.Scene)) {
	for _, s := range samples {
		p := s.kept(t)
		for w := range p.Runs[0].Layout.Run.Walls {
			t.Run(fmt.Sprintf("%s/%s", s.name, p.Runs[0].Layout.Run.Walls[w].Name), func(t *testing.T) {
				check(t, s, p, w, sheet.Wall(p, 0, w, s.options()))
			})
		}
	}
}

func written(t testing.TB, s *draw.Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestPictures writes every sample's walls as SVG into the folder named by
// FIRSTDROP_PICTURES, for people to look at.
func TestPictures(t *testing.T) {
	dir := os.Getenv("FIRSTDROP_PICTURES")
	if dir == "" {
		t.Skip("FIRSTDROP_PICTURES names no folder")
	}
	eachWall(t, func(t *testing.T, s sample, p *plan.Plan, w int, scene *draw.Scene) {
		name := fmt.Sprintf("%s-%s.svg", s.name, p.Runs[0].Layout.Run.Walls[w].Name)
		if err := os.WriteFile(filepath.Join(dir, name), written(t, scene), 0o600); err != nil {
			t.Fatal(err)
		}
	})
}
