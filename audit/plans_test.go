package audit_test

import (
	"slices"
	"testing"

	"firstdrop/audit"
	"firstdrop/hanging"
	"firstdrop/paper"
	"firstdrop/plan"
)

// fourWalls is the room of planning-model 5: paper 530 mm wide, started at a
// corner, so that the first line stands at 505; a wall of 1,975 mm leaves a
// remainder of 120, which with a wrap of 12 makes parts of 422 and 108, and the
// next seam stands at 108. The kill seam is in the corner behind the start.
func fourWalls() *hanging.Layout {
	h := hand{
		run:    "closed: A 1975x2400 | B 1500x2400 | C 1975x2400 | D 1500x2400 |",
		paper:  plain,
		choice: hanging.Choice{Start: hanging.Start{X: -25 * mm}, Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: 3, Lap: hanging.Right}},
		drops: []string{
			"A -25 505 @0", "A 505 1035 @0", "A 1035 1565 @0", "A 1565 1987 @0 / B 0 108 @422",
			"B 108 638 @0", "B 638 1168 @0", "B 1168 1512 @0 / C 0 186 @344",
			"C 186 716 @0", "C 716 1246 @0", "C 1246 1776 @0", "C 1776 1987 @0 / D 0 319 @211",
			"D 319 849 @0", "D 849 1379 @0", "D 1379 1500 @0",
		},
		seams: []string{
			"butt 0 1 A 505", "butt 1 2 A 1035", "butt 2 3 A 1565", "carried 3 3 |B lost 12 12", "butt 3 4 B 108",
			"butt 4 5 B 638", "butt 5 6 B 1168", "carried 6 6 |C lost 12 12", "butt 6 7 C 186",
			"butt 7 8 C 716", "butt 8 9 C 1246", "butt 9 10 C 1776", "carried 10 10 |D lost 12 12", "butt 10 11 D 319",
			"butt 11 12 D 849", "butt 12 13 D 1379", "kill 13 0 |A lost -96 -96",
		},
		plumbs: []string{"0.0 right", "3.1 right", "6.1 right", "10.1 right"},
		pieces: slices.Concat([]string{"0 0 2400 @25 530"}, fullDrops("%d 0 2400 @0 530", 1, 12), []string{"13 0 2400 @0 121"}),
	}
	return h.layout()
}

// doorAndWindow is one wall with a door that one drop hangs wholly over, and a
// window with papered returns that one drop hangs wholly over and under.
func doorAndWindow() *hanging.Layout {
	h := hand{
		run:    "A 3000x2400 door(300+800 0+2000) window(1800+900 900+1200 120)",
		paper:  straight,
		choice: hanging.Choice{Design: 100 * mm},
		drops:  []string{"A 0 530 @0", "A 530 1060 @0", "A 1060 1590 @0", "A 1590 2120 @0", "A 2120 2650 @0", "A 2650 3000 @0"},
		seams:  []string{"butt 0 1 A 530", "butt 1 2 A 1060", "butt 2 3 A 1590", "butt 3 4 A 2120", "butt 4 5 A 2650"},
		plumbs: []string{"0.0 right"},
		pieces: []string{
			"0 0 2400 @0 530", "1 2000 2400 @0 530", "2 0 2400 @0 530", "3 0 2400 @0 530",
			"3 900 2100 @210 330 left A2 1800 1920", "3 1980 2100 @210 530 soffit A2 1800 2120", "3 900 1020 @210 530 sill A2 1800 2120",
			"4 2100 2400 @0 530", "4 0 900 @0 530",
			"4 900 2100 @460 530 right A2 2580 2650", "4 1980 2100 @0 530 soffit A2 2120 2650", "4 900 1020 @0 530 sill A2 2120 2650",
			"5 0 2400 @0 350",
			"5 900 2100 @0 50 right A2 2650 2700", "5 1980 2100 @0 50 soffit A2 2650 2700", "5 900 1020 @0 50 sill A2 2650 2700",
		},
	}
	l := h.layout()
	l.Run.Walls[0].Openings[1].Sides.Sill = true
	return l
}

// twoWalls is a half drop hung from the middle both ways round one corner.
func twoWalls() *hanging.Layout {
	h := hand{
		run:    "A 1200x2400 | B 1300x2400",
		paper:  halfDrop,
		choice: hanging.Choice{Start: hanging.Start{Wall: 0, X: 400 * mm}, Design: 630 * mm},
		first:  -1,
		drops: []string{
			"A 0 400 @130", "A 400 930 @0", "A 930 1212 @0 / B 0 248 @282", "B 248 778 @0", "B 778 1300 @0",
		},
		seams:  []string{"butt 0 1 A 400", "butt 1 2 A 930", "carried 2 2 |B lost 12 12", "butt 2 3 B 248", "butt 3 4 B 778"},
		plumbs: []string{"1.0 right", "2.1 right"},
		pieces: []string{"0 0 2400 @130 530", "1 0 2400 @0 530", "2 0 2400 @0 530", "3 0 2400 @0 530", "4 0 2400 @0 522"},
	}
	return h.layout()
}

// leaningCorners: cut in the corner at one that leans by 8 mm, so that the
// design loses 0 to 8 mm (planning-model 5); a remainder of 20 mm turned whole
// at one that leans by −6, so that the next drop laps by the lean.
func leaningCorners() *hanging.Layout {
	h := hand{
		run:    "A 1975x2400 |0,8 B 1200x2400 |0,-6 C 550x2400",
		paper:  plain,
		rules:  func(r *hanging.Rules) { r.Wrap = 0 },
		choice: hanging.Choice{Start: hanging.Start{X: -25 * mm}},
		drops: []string{
			"A 0 505 @25", "A 505 1035 @0", "A 1035 1565 @0", "A 1565 1975 @0 / B 0 120 @410",
			"B 120 650 @0", "B 650 1180 @0", "B 1180 1200 @0 / C -6 504 @20", "C 504 550 @0",
		},
		seams: []string{
			"butt 0 1 A 505", "butt 1 2 A 1035", "butt 2 3 A 1565", "carried 3 3 |B lost 0 8", "butt 3 4 B 120",
			"butt 4 5 B 650", "butt 5 6 B 1180", "carried 6 6 |C lost 0 6", "butt 6 7 C 504",
		},
		plumbs: []string{"0.0 right", "3.1 right", "6.1 right"},
		pieces: slices.Concat([]string{"0 0 2400 @25 530"}, fullDrops("%d 0 2400 @0 530", 1, 6), []string{"7 0 2400 @0 46"}),
	}
	return h.layout()
}

// betweenCupboards: two cupboards from floor to ceiling leave 270 mm between them, and
// both edges of the drop would stand in them. The line stands in the middle, at 735 mm,
// 245 mm within the right edge.
func betweenCupboards() *hanging.Layout {
	h := hand{
		run:    "A 2000x2400 furniture(0+600 0+2400) furniture(870+1130 0+2400)",
		paper:  plain,
		choice: hanging.Choice{Start: hanging.Start{X: 450 * mm}},
		first:  -1,
		drops:  []string{"A 0 450 @80", "A 450 980 @0", "A 980 1510 @0", "A 1510 2000 @0"},
		seams:  []string{"butt 0 1 A 450", "butt 1 2 A 980", "butt 2 3 A 1510"},
		plumbs: []string{"1.0 right 245"},
		pieces: []string{"1 0 2400 @150 420"},
	}
	return h.layout()
}

// pastACupboard: the seam at 1060 mm would stand in a cupboard from floor to ceiling, so
// nothing is there to butt drop 2 to: it has a line of its own, as drop 0.
func pastACupboard() *hanging.Layout {
	h := hand{
		run:    "A 2120x2400 furniture(900+400 0+2400)",
		paper:  plain,
		drops:  []string{"A 0 530 @0", "A 530 1060 @0", "A 1060 1590 @0", "A 1590 2120 @0"},
		seams:  []string{"butt 0 1 A 530", "butt 1 2 A 1060", "butt 2 3 A 1590"},
		plumbs: []string{"0.0 right", "2.0 right"},
		pieces: []string{"0 0 2400 @0 530", "1 0 2400 @0 370", "2 0 2400 @240 530", "3 0 2400 @0 530"},
	}
	return h.layout()
}

// turnedWhole: a remainder of 20 mm turns a leaning corner whole and leans
// beyond it; the next drop is set plumb beside it and laps by the lean.
func turnedWhole() *hanging.Layout {
	h := hand{
		run:    "A 510x2400 |2,-6 B 600x2400",
		paper:  plain,
		choice: hanging.Choice{},
		drops:  []string{"A 0 510 @0 ~ B 0 20 @510 s-8", "B 12 542 @0", "B 542 600 @0"},
		seams:  []string{"turned 0 1 B 12 lost 0 8", "butt 1 2 B 542"},
		plumbs: []string{"0.0 left", "1.0 right"},
		pieces: []string{"0 0 2400 @0 530", "1 0 2400 @0 530", "2 0 2400 @0 58"},
	}
	return h.layout()
}

// outsideCorners: round one that is plumb in one, and cut after the wide wrap
// at one that is not.
func outsideCorners() *hanging.Layout {
	h := hand{
		run:    "A 700x2400 > B 600x2400 >0,10 C 600x2400",
		paper:  plain,
		choice: hanging.Choice{},
		drops:  []string{"A 0 530 @0", "A 530 700 @0 ~ B 0 360 @170", "B 360 600 @0 ~ C 0 50 @240 s10 / C 50 290 @290", "C 290 600 @0"},
		seams:  []string{"butt 0 1 A 530", "butt 1 2 B 360", "carried 2 2 C 50 lost 0 10", "butt 2 3 C 290"},
		plumbs: []string{"0.0 right", "2.0 left", "2.2 right"},
		pieces: []string{"0 0 2400 @0 530", "1 0 2400 @0 530", "2 0 2400 @0 530", "3 0 2400 @0 310"},
	}
	return h.layout()
}

// reversed is a wall in a paper whose alternate drops hang upside down, with a
// ceiling that slopes from 2400 to 2100.
func reversed() *hanging.Layout {
	h := hand{
		run:    "A 1060x2400/1870",
		paper:  with(straight, func(p *paper.Paper) { p.Match.Reversing = true }),
		choice: hanging.Choice{Design: 40 * mm},
		drops:  []string{"A 0 530 @0", "A 530 1060 @0"},
		seams:  []string{"butt 0 1 A 530"},
		plumbs: []string{"0.0 right"},
		pieces: []string{"0 0 2400 @0 530", "1 0 2135 @0 530"},
	}
	return h.layout()
}

var layouts = map[string]func() *hanging.Layout{
	"four walls":        fourWalls,
	"door and window":   doorAndWindow,
	"two walls":         twoWalls,
	"leaning corners":   leaningCorners,
	"turned whole":      turnedWhole,
	"outside corners":   outsideCorners,
	"reversed":          reversed,
	"between cupboards": betweenCupboards,
	"past a cupboard":   pastACupboard,
}

// Sound layouts have no violation.
func TestLayoutSound(t *testing.T) {
	for name, make := range layouts {
		for _, v := range audit.Layout(make()) {
			t.Errorf("%s: %v", name, v)
		}
	}
}

// plans makes the sound plans that the falsifications start from.
//
// Four walls: 14 pieces of 2.5 m from rolls of 10.05 m, four to a roll: 4 rolls.
// 2 × (1975 + 1500) × 2400 = 16,680,000 mm²; a roll has 5,326,500.
//
// Two walls: three pieces of one phase and two of the other, 2.5 m each, at
// a pitch of 4 repeats (2,560 mm) after a wait of at most one: 640 + 2 × 2560 +
// 2500 = 8,260 mm, three to a roll, and no roll that may begin anywhere gives
// four. (1200 + 1300) × 2400 = 6,000,000 mm².
var plans = map[string]func(t testing.TB) *plan.Plan{
	"four walls": func(t testing.TB) *plan.Plan { return planned(t, 4, 16_680_000, 5_326_500, fourWalls()) },
	"two walls":  func(t testing.TB) *plan.Plan { return planned(t, 3, 6_000_000, 5_326_500, twoWalls()) },
}

// Sound plans have no violation.
func TestPlanSound(t *testing.T) {
	for name, make := range plans {
		for _, v := range audit.Plan(make(t)) {
			t.Errorf("%s: %v", name, v)
		}
	}
}
