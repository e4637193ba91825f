package plan_test

import (
	"fmt"
	"testing"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// Published estimates, each with its source. Two kinds occur. A strip count
// divides the girth by the paper's width and the roll by the drop; we lay the
// girth out flat, as one wall without corners, and must agree exactly. An area
// estimate divides the area by what a roll covers; we must find the same area,
// and the same number where the whole roll is counted as cover.

const (
	foot = measure.Foot
	inch = measure.Inch
	yard = measure.Yard
	m    = measure.Metre
	cm   = measure.Centimetre
)

// flat is one wall as long as a room's girth.
func flat(girth, height measure.Length) *room.Run {
	return &room.Run{Name: "flat", Walls: []room.Wall{{Name: "A", Width: girth, Outline: geom.Ring{
		{}, {X: girth}, {X: girth, Y: height}, {Y: height},
	}}}}
}

// box is a closed room of two widths and a height.
func box(a, b, height measure.Length) *room.Run {
	r := &room.Run{Name: "box", Closed: true}
	for i, w := range []measure.Length{a, b, a, b} {
		wall := flat(w, height).Walls[0]
		wall.Name = string(rune('A' + i))
		r.Walls = append(r.Walls, wall)
		r.Corners = append(r.Corners, room.Corner{Angle: 90 * measure.Degree})
	}
	return r
}

// hole adds an opening of a size to a wall, some way from its left end.
func hole(w *room.Wall, left, width, sill, height measure.Length) {
	w.Openings = append(w.Openings, room.Opening{Name: fmt.Sprint("opening ", len(w.Openings)+1), Outline: geom.Ring{
		{X: left, Y: sill}, {X: left + width, Y: sill}, {X: left + width, Y: sill + height}, {X: left, Y: sill + height},
	}})
}

// planned plans a run with both allowances together given, half at each end,
// and no wrap, as strip counts reckon.
func planned(t *testing.T, r *room.Run, p paper.Paper, allowance measure.Length) *plan.Plan {
	t.Helper()
	p.Name, p.Pack = "paper", 1
	task := &plan.Task{Runs: []plan.RunTask{{Run: r}}, Papers: []paper.Paper{p}, Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste()}
	task.Rules.Head, task.Rules.Foot = allowance/2, allowance-allowance/2
	task.Rules.Wrap, task.Rules.Overlap, task.Rules.CutStep = 0, 0, inch/16
	return made(t, task)
}

func TestPublishedStripCounts(t *testing.T) {
	euro := paper.Paper{Width: 53 * cm, RollLength: 10050 * mm}
	double := paper.Paper{Width: 20*inch + inch/2, RollLength: 33 * foot} // a modern US double roll
	eightInch := double
	eightInch.Repeat, eightInch.Match.Kind = 8*inch, paper.Straight
	tests := []struct {
		source    string
		girth     measure.Length
		height    measure.Length
		allowance measure.Length
		paper     paper.Paper
		drops     int
		rolls     int
	}{
		{"E7: tayoma.de, room 4 × 5 m, 2.90 + 0.10 m", 18 * m, 290 * cm, 10 * cm, euro, 34, 12},
		{"E2: New Student's Reference Work 1914, vol. 5 p. 2186: 31 strips, 5 a double roll, 6 1/5 double rolls", 46 * foot, 9 * foot, 0, paper.Paper{Width: 18 * inch, RollLength: 48 * foot}, 31, 7},
		{"E3: Handyman's Pocket Book: 486 in, 21 in paper of 11 1/2 yd, four lengths a roll", 486 * inch, 8 * foot, 6 * inch, paper.Paper{Width: 21 * inch, RollLength: 11*yard + yard/2}, 24, 6},
		{"E4: US arithmetic, Google Books 0k1GxFGxhoYC p. 229: 28 strips at 3 a roll (the strips are its own; the room it names would need 35)", 28 * 18 * inch, 8 * foot, 0, paper.Paper{Width: 18 * inch, RollLength: 24 * foot}, 28, 10},
		{"B1: Wallcoverings Association room 12 × 12 × 8 ft by strips, 8-in repeat, 4 in trim", 48 * foot, 8 * foot, 4 * inch, eightInch, 29, 10},
		{"B6: inspirationdeco 2010, room 20 × 15 × 9 ft by strips, 4 in trim", 70 * foot, 9 * foot, 4 * inch, double, 41, 14},
		// 144 in at 20.5 in are 7.02 widths: the source leaves the last half inch bare and
		// counts 7 strips; an eighth goes into the same 4 rolls.
		{"E32: londonwidepainters.co.uk, ceiling 12 × 14 ft in strips of 14 ft 4 in: 4 rolls", 12 * foot, 14 * foot, 4 * inch, double, 8, 4},
		// T2: franz-woll.de/bedarfsermittlung.htm, rolls 0.53 × 10.05 by girth; at the
		// upper end of each band, 10 cm allowance.
		{"T2 6 m, to 2.35 m", 6 * m, 235 * cm, 10 * cm, euro, 12, 3},
		{"T2 10 m, to 2.35 m", 10 * m, 235 * cm, 10 * cm, euro, 19, 5},
		{"T2 15 m, to 2.35 m", 15 * m, 235 * cm, 10 * cm, euro, 29, 8},
		{"T2 20 m, to 2.35 m", 20 * m, 235 * cm, 10 * cm, euro, 38, 10},
		{"T2 6 m, to 3.05 m", 6 * m, 305 * cm, 10 * cm, euro, 12, 4},
		{"T2 10 m, to 3.05 m", 10 * m, 305 * cm, 10 * cm, euro, 19, 7},
		{"T2 15 m, to 3.05 m", 15 * m, 305 * cm, 10 * cm, euro, 29, 10},
		{"T2 20 m, to 3.05 m: printed 14, one above its own rule", 20 * m, 305 * cm, 10 * cm, euro, 38, 13},
		{"T2 20 m, to 4.00 m", 20 * m, 400 * cm, 10 * cm, euro, 38, 19},
		{"T2 6 m, to 4.00 m: printed 5, one below its own rule", 6 * m, 400 * cm, 10 * cm, euro, 12, 6},
		// Rolls of 8 yd: up to 8 ft three strips, up to 12 ft two. US arithmetic,
		// Google Books 0k1GxFGxhoYC p. 229.
		{"8 yd roll at 8 ft", 6 * 18 * inch, 8 * foot, 0, paper.Paper{Width: 18 * inch, RollLength: 8 * yard}, 6, 2},
		{"8 yd roll at 12 ft", 6 * 18 * inch, 12 * foot, 0, paper.Paper{Width: 18 * inch, RollLength: 8 * yard}, 6, 3},
		// Rolls of 11.5 yd: to 8 ft four lengths, to 10 ft three. Handyman's Pocket Book.
		{"11.5 yd roll at 8 ft", 12 * 21 * inch, 8 * foot, 6 * inch, paper.Paper{Width: 21 * inch, RollLength: 11*yard + yard/2}, 12, 3},
		{"11.5 yd roll at 10 ft", 12 * 21 * inch, 10 * foot, 6 * inch, paper.Paper{Width: 21 * inch, RollLength: 11*yard + yard/2}, 12, 4},
		// climatechange.ru: from a 10.05 m roll, three strips over 2.5 m, two over 3.3 m.
		{"10.05 m roll at 2.6 m", 12 * 53 * cm, 260 * cm, 0, euro, 12, 4},
		{"10.05 m roll at 3.4 m", 12 * 53 * cm, 340 * cm, 0, euro, 12, 6},
		{"E36: 27 in × 27 ft bolt gives three 8-ft strips", 3 * 27 * inch, 8 * foot, 4 * inch, paper.Paper{Width: 27 * inch, RollLength: 27 * foot}, 3, 1},
	}
	for _, tt := range tests {
		p := planned(t, flat(tt.girth, tt.height), tt.paper, tt.allowance).Papers[0]
		if p.Drops != tt.drops || p.Rolls() != tt.rolls || !p.Proven() {
			t.Errorf("%s: %d drops, %d rolls (proven %v), published %d and %d",
				tt.source, p.Drops, p.Rolls(), p.Proven(), tt.drops, tt.rolls)
		}
	}
}

// B15: chestofbooks.com, Cyclopedia of Painting: a wall of 8 1/2 ft yields two
// strips from a piece of 8 yd; the book's own chart, an area table, under-orders
// by two to five pieces (T1 likewise).
func TestCenturyOldChartUnderOrders(t *testing.T) {
	girths := []measure.Length{
		24 * foot, 26*foot + 3*inch, 29*foot + 3*inch, 32 * foot, 34*foot + 3*inch, 37*foot + 3*inch,
		40 * foot, 42*foot + 3*inch, 45*foot + 3*inch, 48 * foot, 50*foot + 8*inch,
	}
	strips := []int{7, 8, 9, 10, 10, 11, 12, 13, 13, 14, 15}
	chart := []int{5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10}
	for i, girth := range girths {
		p := planned(t, flat(girth, 8*foot+6*inch), paper.Paper{Width: 21 * inch, RollLength: 8 * yard}, 0).Papers[0]
		if got := p.Rolls(); got != strips[i] {
			t.Errorf("girth %v: %d pieces, want %d", girth.Format(measure.Imperial), got, strips[i])
		}
		if d := p.Rolls() - chart[i]; d < 2 || d > 5 {
			t.Errorf("girth %v: the chart is out by %d, not by 2 to 5", girth.Format(measure.Imperial), d)
		}
		if d := p.AreaRolls - chart[i]; d < -1 || d > 1 {
			t.Errorf("girth %v: area estimate %d, the chart's %d is an area too", girth.Format(measure.Imperial), p.AreaRolls, chart[i])
		}
	}
}

// T3: "How to build a rural house" (Soviet-era handbook), table 28: rolls 50 cm
// wide for walls of 3 m. Two strips come out of 7 m and three out of 10.5 m, so
// one number of strips must explain both columns within a roll.
func TestRuralHouseTable(t *testing.T) {
	rows := [][2]int{{9, 6}, {10, 7}, {11, 7}, {12, 8}, {13, 9}, {14, 10}, {17, 11}, {18, 12}, {19, 13}, {20, 14}, {21, 14}}
	for _, row := range rows {
		strips := measure.Length(2 * row[0])
		at := func(roll measure.Length) int {
			p := planned(t, flat(strips*50*cm, 3*m), paper.Paper{Width: 50 * cm, RollLength: roll}, 0)
			return p.Papers[0].Rolls()
		}
		seven, ten := at(7*m), at(10*m+50*cm)
		if seven != row[0] || ten < row[1]-1 || ten > row[1]+1 {
			t.Errorf("%d strips: %d rolls of 7 m and %d of 10.5 m, printed %d and %d", strips, seven, ten, row[0], row[1])
		}
	}
}

func TestPublishedAreas(t *testing.T) {
	e6 := box(20*foot, 16*foot, 10*foot)
	hole(&e6.Walls[0], 2*foot, 4*foot, 0, 6*foot+6*inch)
	hole(&e6.Walls[1], 1*foot, 4*foot, 3*foot, 4*foot+6*inch)
	hole(&e6.Walls[1], 8*foot, 4*foot, 3*foot, 4*foot+6*inch)
	hole(&e6.Walls[2], 6*foot, 5*foot, 0, 5*foot)
	e23 := box(12*foot, 12*foot, 8*foot)
	hole(&e23.Walls[0], 2*foot, 3*foot, 0, 7*foot)
	hole(&e23.Walls[1], 2*foot, 3*foot, 2*foot, 4*foot)
	hole(&e23.Walls[2], 2*foot, 3*foot, 2*foot, 4*foot)
	e29 := box(20*foot, 15*foot, 9*foot)
	for i := range 3 {
		hole(&e29.Walls[i], 3*foot, 4*foot, 2*foot, 5*foot)
	}
	hole(&e29.Walls[3], 3*foot, 3*foot, 0, 7*foot)
	// A roll as the source counts it: one whose whole area is its cover.
	covering := func(area int) paper.Paper {
		return paper.Paper{Width: foot, RollLength: measure.Length(area) * foot}
	}
	tests := []struct {
		source     string
		run        *room.Run
		paper      paper.Paper
		squareFeet int // 0: not published
		rolls      int // 0: not published
	}{
		{"E1: Household Work-Management, Wall-Papers Part 2: 15 × 12 × 10 ft, pieces of 63 sq ft", box(15*foot, 12*foot, 10*foot), paper.Paper{Width: 21 * inch, RollLength: 12 * yard}, 540, 9},
		{"E5: Google Books ZTYDAAAAQAAJ p. 33: 16 × 12 × 8 ft", box(16*foot, 12*foot, 8*foot), covering(36), 448, 0},
		{"E6: the same: 20 × 16 × 10 ft less door, two windows and fireplace", e6, covering(36), 633, 0},
		{"E23: Wallcoverings Association: 12 × 12 × 8 ft less door and two windows; 22 sq ft a roll by its table for an 8-in repeat", e23, covering(22), 339, 16},
		{"E26: onlinetips.org: 12 × 14 × 8 ft at 25 sq ft a roll", box(12*foot, 14*foot, 8*foot), covering(25), 416, 17},
		{"E29: inspirationdeco 2010: 20 × 15 × 9 ft less three windows and a door, at 45 sq ft a roll", e29, covering(45), 549, 13},
	}
	for _, tt := range tests {
		p := planned(t, tt.run, tt.paper, 0).Papers[0]
		if want := measure.Area(tt.squareFeet) * measure.SquareFoot; tt.squareFeet > 0 && p.Net != want {
			t.Errorf("%s: %s, published %s", tt.source, p.Net.Format(measure.Imperial), want.Format(measure.Imperial))
		}
		if tt.rolls > 0 && p.AreaRolls != tt.rolls {
			t.Errorf("%s: %d rolls by area, published %d", tt.source, p.AreaRolls, tt.rolls)
		}
	}
	// E11: hausjournal.net: girth 16 m, 2.55 m high, 5 m² a roll: 8.16, so 9.
	p := planned(t, flat(16*m, 255*cm), paper.Paper{Width: 50 * cm, RollLength: 10 * m}, 0).Papers[0]
	if p.AreaRolls != 9 {
		t.Errorf("E11: %d rolls by area, published 9", p.AreaRolls)
	}
}

// E17: kireiga1ban.com/p/14: 14 strips cut 2780 mm for a height of 2400 mm take
// 5.32 m of extra paper.
func TestExtraPaper(t *testing.T) {
	pl := planned(t, flat(14*53*cm, 240*cm), paper.Paper{Width: 53 * cm, RollLength: 50 * m}, 38*cm)
	var extra measure.Length
	for _, piece := range pl.Runs[0].Layout.Pieces {
		extra += piece.Length - piece.Y.Length()
	}
	// Lengths are cut to the sixteenth of an inch here, so up to that much more a strip.
	if extra < 532*cm || extra >= 532*cm+14*inch/16 {
		t.Errorf("%v of extra paper, published 5.32 m", extra)
	}
}

// E33: goodwin.crimea.ua: height 2.75 m, repeat 0.60 m: "height and repeat" gives
// 3.35 m and two strips of a 10 m roll. That rule is an upper bound: cut to the
// pattern, five repeats are 3.00 m and three strips come out.
func TestHeightPlusRepeatIsAnUpperBound(t *testing.T) {
	p := paper.Paper{Width: 53 * cm, RollLength: 10 * m, Repeat: 60 * cm, Match: paper.Match{Kind: paper.Straight}}
	pl := planned(t, flat(3*53*cm, 275*cm), p, 10*cm)
	if got := pl.Papers[0].Rolls(); got != 1 {
		t.Errorf("three strips need %d rolls, want 1", got)
	}
	p.Match = paper.Match{Kind: paper.Offset, Length: 30 * cm}
	pl = planned(t, flat(2*53*cm, 275*cm), p, 10*cm)
	if got := pl.Papers[0].Rolls(); got != 1 {
		t.Errorf("two strips at half drop need %d rolls, published 1", got)
	}
}

// EN 233, clause 5: length within 1.5 %: a roll of 10.05 m may have 9.899 m. Four
// drops of 2.47 m are guaranteed, four of 2.50 m are not, and a plan that
// depends on them says so.
func TestFullLengthIsSaid(t *testing.T) {
	for _, tt := range []struct {
		height measure.Length
		short  int
		said   bool
	}{
		{237 * cm, 2, false},
		{240 * cm, 3, true},
	} {
		p := paper.Paper{Width: 53 * cm, RollLength: 10050 * mm, Tolerance: paper.StandardTolerance(53*cm, 10050*mm)}
		pl := planned(t, flat(8*53*cm, tt.height), p, 10*cm)
		got := pl.Papers[0]
		if got.Rolls() != 2 || got.ShortRolls != tt.short {
			t.Errorf("%v: %d rolls, %d of the shortest, want 2 and %d", tt.height, got.Rolls(), got.ShortRolls, tt.short)
		}
		said := false
		for _, f := range pl.Findings {
			said = said || f.Code == plan.FullLength && f.Severity >= finding.Caution
		}
		if said != tt.said {
			t.Errorf("%v: full length said %v, want %v", tt.height, said, tt.said)
		}
	}
}
