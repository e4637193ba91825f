package hanging_test

import (
	"fmt"
	"strings"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

const mm = measure.Millimetre

func plain() *paper.Paper {
	return &paper.Paper{Name: "plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1}
}

func halfDrop() *paper.Paper {
	p := plain()
	p.Repeat = 640 * mm
	p.Match = paper.Match{Kind: paper.Offset, Num: 1, Den: 2}
	return p
}

// layout lays out a run given in the notation of roomtext.
func layout(t testing.TB, text string, p *paper.Paper, c hanging.Choice, change func(*hanging.Rules)) *hanging.Layout {
	t.Helper()
	rules := hanging.DefaultRules()
	if change != nil {
		change(&rules)
	}
	h, err := hanging.New(run(text), p, rules)
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(c)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// parts writes the parts of all drops: "0:A[-25,505]", joined parts with "~".
func parts(l *hanging.Layout) string {
	var b strings.Builder
	for _, d := range l.Drops {
		for i, p := range d.Parts {
			sep := " "
			switch {
			case i > 0 && p.Joined:
				sep = "~"
			case i > 0:
				sep = "/"
			}
			if i == 0 {
				fmt.Fprintf(&b, " %d:", d.Index)
			} else {
				b.WriteString(sep)
			}
			fmt.Fprintf(&b, "%s[%s,%s]", l.Run.Walls[p.Wall].Name, num(p.X.Lo), num(p.X.Hi))
			if p.Skew != 0 {
				fmt.Fprintf(&b, "s%s", num(p.Skew))
			}
		}
	}
	return strings.TrimSpace(b.String())
}

func num(l measure.Length) string { return strings.TrimSuffix(l.String(), " mm") }

func run(text string) *room.Run { return roomtext.Run(text) }

func start(wall int, x measure.Length) hanging.Start { return hanging.Start{Wall: wall, X: x * mm} }

func atCorner(wall int) hanging.Kill {
	return hanging.Kill{Kind: hanging.AtCorner, Wall: wall, Lap: hanging.Right}
}

func TestParts(t *testing.T) {
	tests := []struct {
		name   string
		run    string
		choice hanging.Choice
		rules  func(*hanging.Rules)
		want   string
	}{
		{
			// planning-model 5: started at a corner, the first line stands at 505 mm and
			// drop 1 covers −25 … 505.
			name:   "start at a corner, last drop ends in the corner",
			run:    "closed: A 2095x2400 | B 1000x2400 | C 2095x2400 | D 1000x2400 |",
			choice: hanging.Choice{Start: start(0, -25), Kill: atCorner(3)},
			want: "0:A[-25,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,2095]" +
				" 4:B[0,530] 5:B[530,1012]/C[0,48] 6:C[48,578] 7:C[578,1108] 8:C[1108,1638] 9:C[1638,2107]/D[0,61] 10:D[61,591] 11:D[591,1000]",
		},
		{
			// Worked by hand: drop 0 turns 25 mm round its left corner, so drop −1 ends at
			// 975 on D; drop −2 has 445 left there, wraps 12 and leaves 73 for C; drop −6 has
			// 312 on C, wraps 12 and leaves 206 for B.
			name:   "walked to the left, the kill seam on the right",
			run:    "closed: A 1975x2400 | B 1000x2400 | C 1975x2400 | D 1000x2400 |",
			choice: hanging.Choice{Start: start(0, -25), Kill: atCorner(0)},
			want: "-8:B[-25,264] -7:B[264,794] -6:B[794,1000]/C[-12,312] -5:C[312,842] -4:C[842,1372] -3:C[1372,1902] -2:C[1902,1975]/D[-12,445]" +
				" -1:D[445,975] 0:D[975,1000]~A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,1975]",
		},
		{
			// planning-model 5: on a wall of 1,975 mm the remainder is 120 mm: 410 and the
			// wrap of 12, then 108 mm; the next seam stands at 108 mm.
			name:   "remainder carried with a wrap",
			run:    "A 1975x2400 | B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,1987]/B[0,108] 4:B[108,638] 5:B[638,1000]",
		},
		{
			// The corner leans by 8 mm on the new wall, away from it: the near edge is set
			// at the corner's nearest point, 8 mm before the foot.
			name:   "remainder carried past a leaning corner",
			run:    "A 1975x2400 |0,-8 B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,1987]/B[-8,100] 4:B[100,630] 5:B[630,1000]",
		},
		{
			name:   "cut in the corner",
			run:    "A 1975x2400 | B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			rules:  func(r *hanging.Rules) { r.Wrap = 0 },
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,1975]/B[0,120] 4:B[120,650] 5:B[650,1000]",
		},
		{
			// planning-model 5: a remainder of 20 mm turns whole.
			name:   "remainder turns whole",
			run:    "A 2075x2400 | B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,2075]~B[0,20] 4:B[20,550] 5:B[550,1000]",
		},
		{
			// The same corner leaning by 8 mm: the next drop is set plumb and laps by the lean.
			name:   "remainder turns a leaning corner whole",
			run:    "A 2075x2400 |0,-8 B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,2075]~B[0,20]s-8 4:B[12,542] 5:B[542,1000]",
		},
		{
			name:   "outside corner, plumb: the drop goes round",
			run:    "A 1975x2400 > B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,1975]~B[0,120] 4:B[120,650] 5:B[650,1000]",
		},
		{
			name:   "outside corner out of plumb: cut after a wide wrap, set anew",
			run:    "A 1975x2400 >0,8 B 1000x2400",
			choice: hanging.Choice{Start: start(0, -25)},
			want:   "0:A[0,505] 1:A[505,1035] 2:A[1035,1565] 3:A[1565,1975]~B[0,50]s8/B[50,120] 4:B[120,650] 5:B[650,1000]",
		},
		{
			name:   "both ways from the middle, kill over the door",
			run:    "closed: A 2000x2400 | B 1000x2400 | C 2000x2400 door(600+800 0+2000) | D 1000x2400 |",
			choice: hanging.Choice{Start: start(0, 735), Kill: hanging.Kill{Kind: hanging.OnWall, Wall: 2, X: 1000 * mm}},
			// Worked by hand: 2000 − 1795 = 205 and 12 of wrap leave 313 for B; B ends 157
			// into drop 4, 157 and 12 leave 361 for C. Leftwards 205 and 12 leave 313 for D.
			want: "-6:C[1000,1109] -5:C[1109,1639] -4:C[1639,2000]/D[-12,157] -3:D[157,687] -2:D[687,1000]/A[-12,205] -1:A[205,735]" +
				" 0:A[735,1265] 1:A[1265,1795] 2:A[1795,2012]/B[0,313] 3:B[313,843] 4:B[843,1012]/C[0,361] 5:C[361,891] 6:C[891,1000]",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := layout(t, tt.run, plain(), tt.choice, tt.rules)
			if got := parts(l); got != tt.want {
				t.Errorf("run %s\n got %s\nwant %s", tt.run, got, tt.want)
			}
		})
	}
}
