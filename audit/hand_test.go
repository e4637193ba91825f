package audit_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	orders "firstdrop/order"
	"firstdrop/paper"
	"firstdrop/plan"
)

const mm = measure.Millimetre

// hand is a layout worked out by hand, in millimetres. Nothing here is
// computed by hanging: the figures are those of planning-model 5 and what
// follows from them with pencil and paper.
//
//	drops  "A -25 505 @0": on wall A from −25 to 505, from 0 across the drop;
//	       parts cut apart by "/", folded by "~", "s8" for the skew
//	seams  "butt 0 1 A 505", "carried 3 3 |B lost 12 12": in the corner before B;
//	       "along 320" for a misfit along
//	plumbs "3.1 right": at the right edge of part 1 of drop 3; "right 245": so far within
//	pieces "3 0 2400 @0 530": drop 3 from 0 to 2400, from 0 to 530 across;
//	       "soffit B1 X0 X1" behind it for a return of opening 1 of wall B
//
// Drops count from 0, from the left, in seams, plumbs and pieces.
type hand struct {
	run    string
	paper  paper.Paper
	rules  func(*hanging.Rules)
	choice hanging.Choice
	first  int // index of the leftmost drop
	drops  []string
	seams  []string
	plumbs []string
	pieces []string
}

func num(text string) measure.Length {
	text = strings.TrimLeft(text, "@sX")
	whole, part, _ := strings.Cut(text, ".")
	n, err := strconv.ParseInt(whole+(part + "000000")[:6], 10, 64)
	if err != nil {
		panic(err)
	}
	return measure.Length(n)
}

func count(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil {
		panic(err)
	}
	return n
}

// layout writes the layout out.
func (h hand) layout() *hanging.Layout {
	l := &hanging.Layout{Run: roomtext.Run(h.run), Rules: hanging.DefaultRules(), Choice: h.choice}
	p := h.paper
	l.Paper = &p
	if h.rules != nil {
		h.rules(&l.Rules)
	}
	for i, text := range h.drops {
		d := hanging.Drop{Index: h.first + i}
		d.Reversed = p.Match.Reversing && d.Index%2 != 0
		joined := false
		for _, f := range strings.FieldsFunc(strings.NewReplacer("/", "\n/", "~", "\n~").Replace(text), func(r rune) bool { return r == '\n' }) {
			joined = strings.HasPrefix(f, "~")
			d.Parts = append(d.Parts, part(strings.Fields(strings.TrimLeft(f, "/~ ")), joined))
		}
		l.Drops = append(l.Drops, d)
	}
	for _, text := range h.seams {
		l.Seams = append(l.Seams, seam(strings.Fields(text)))
	}
	h.number(l)
	for _, text := range h.plumbs {
		l.Plumbs = append(l.Plumbs, plumb(l, text))
	}
	return l
}

func wallOf(name string) int { return int(name[0] - 'A') }

func part(f []string, joined bool) hanging.Part {
	p := hanging.Part{Wall: wallOf(f[0]), X: geom.Interval{Lo: num(f[1]), Hi: num(f[2])}, Joined: joined}
	p.Across = geom.Interval{Lo: num(f[3]), Hi: num(f[3]) + p.X.Hi - p.X.Lo}
	if len(f) > 4 {
		p.Skew = num(f[4])
	}
	return p
}

func seam(f []string) hanging.Seam {
	kinds := []string{"butt", "carried", "turned", "renewed", "kill"}
	s := hanging.Seam{Kind: hanging.SeamKind(slices.Index(kinds, f[0])), Left: count(f[1]), Right: count(f[2])}
	if name, ok := strings.CutPrefix(f[3], "|"); ok {
		s.Wall, s.InCorner, f = wallOf(name), true, f[4:]
	} else {
		s.Wall, s.X, f = wallOf(f[3]), num(f[4]), f[5:]
	}
	if len(f) > 0 && f[0] == "lost" {
		s.Across, f = geom.Interval{Lo: num(f[1]), Hi: num(f[2])}, f[3:]
	}
	if len(f) > 0 && f[0] == "along" {
		s.Along = num(f[1])
	}
	return s
}

func plumb(l *hanging.Layout, text string) hanging.Plumb {
	place, side, _ := strings.Cut(text, " ")
	side, beyond, _ := strings.Cut(side, " ")
	drop, nth, _ := strings.Cut(place, ".")
	b := hanging.Plumb{Drop: count(drop), Part: count(nth)}
	p := &l.Drops[b.Drop].Parts[b.Part]
	b.Wall, b.X = p.Wall, p.X.Lo
	if side == "right" {
		b.X, b.Edge = p.X.Hi, hanging.Right
	}
	b.From = b.Edge.Opposite()
	if beyond != "" {
		b.Beyond = num(beyond)
		b.X += b.Beyond
		if b.Edge == hanging.Right {
			b.X -= 2 * b.Beyond
		}
	}
	return b
}

// number adds the pieces and numbers the drops: from drop 0 to the right, then
// to the left.
func (h hand) number(l *hanging.Layout) {
	for _, text := range h.pieces {
		l.Pieces = append(l.Pieces, h.piece(l, strings.Fields(text)))
	}
	has := map[int]int{}
	for _, p := range l.Pieces {
		has[p.Drop]++
	}
	n := 0
	for _, i := range slices.Concat(from(-h.first, len(l.Drops), 1), from(-h.first-1, -1, -1)) {
		if has[i] > 0 {
			n++
			l.Drops[i].Number = n
		}
	}
	slices.SortStableFunc(l.Pieces, func(a, b hanging.Piece) int { return l.Drops[a.Drop].Number - l.Drops[b.Drop].Number })
	letter := 0
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if i == 0 || l.Pieces[i-1].Drop != p.Drop {
			letter = 0
		}
		p.Name = strconv.Itoa(l.Drops[p.Drop].Number)
		if has[p.Drop] > 1 {
			p.Name += string(rune('a' + letter))
		}
		letter++
	}
}

func from(i, end, step int) (all []int) {
	for ; i != end; i += step {
		all = append(all, i)
	}
	return all
}

// piece works out length, leading end and phase the plain way: in whole
// millimetres, and for the phase by counting repeats.
func (h hand) piece(l *hanging.Layout, f []string) hanging.Piece {
	p := hanging.Piece{Drop: count(f[0]), Y: geom.Interval{Lo: num(f[1]), Hi: num(f[2])}, Across: geom.Interval{Lo: num(f[3]), Hi: num(f[4])}}
	if len(f) > 5 {
		sides := []string{"left", "right", "soffit", "sill"}
		p.Return = &hanging.Return{
			Wall: wallOf(f[6]), Opening: count(f[6][1:]) - 1, Side: hanging.ReturnSide(slices.Index(sides, f[5])),
			X: geom.Interval{Lo: num(f[7]), Hi: num(f[8])}, Y: p.Y,
		}
	}
	p.Length = p.Y.Hi - p.Y.Lo + l.Rules.Head + l.Rules.Foot
	for p.Length%l.Rules.CutStep != 0 {
		p.Length++
	}
	d := &l.Drops[p.Drop]
	p.Lead = p.Y.Hi + l.Rules.Head
	if d.Reversed {
		p.Lead = p.Y.Lo - l.Rules.Foot
	}
	if repeat := h.paper.Repeat; repeat > 0 {
		p.Phase = h.choice.Design - p.Lead
		if h.paper.Match.Kind == paper.Offset && d.Index%2 != 0 {
			p.Phase += repeat / 2
		}
		if d.Reversed {
			p.Phase = -p.Phase
		}
		for p.Phase < 0 {
			p.Phase += repeat
		}
		p.Phase %= repeat
	}
	return p
}

var (
	plain    = paper.Paper{Name: "Plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1, Tolerance: paper.Tolerance{Length: 15, Width: 15}}
	straight = paper.Paper{Name: "Straight", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1, Repeat: 640 * mm, Match: paper.Match{Kind: paper.Straight}}
	halfDrop = paper.Paper{Name: "Half", Width: 530 * mm, RollLength: 10050 * mm, Pack: 2, Repeat: 640 * mm, Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 2}}
)

func with(p paper.Paper, change func(*paper.Paper)) paper.Paper {
	change(&p)
	return p
}

// cut makes a cutting plan by hand: the pieces of one phase after the other,
// as many on a roll as go, in one order for every start. perRoll is how many
// of the longest a roll gives; each weighs one.
func cut(t testing.TB, p *paper.Paper, pieces []cutting.Piece, perRoll int) *cutting.Solution {
	t.Helper()
	problem, err := cutting.NewProblem(cutting.Spec{Repeat: p.Repeat, Roll: cutting.Roll{Length: p.RollLength}, Pieces: pieces})
	if err != nil {
		t.Fatal(err)
	}
	s := &cutting.Solution{Problem: problem}
	order := from(0, len(pieces), 1)
	slices.SortStableFunc(order, func(a, b int) int { return int(pieces[a].Phase - pieces[b].Phase) })
	for n := 0; n < len(order); {
		var o cutting.Order
		end := measure.Length(0)
		if p.Repeat > 0 {
			o.After = pieces[order[n]].Phase
			o.UpTo = o.After
			o.At = (o.After + 1) % p.Repeat
		}
		for first := n; n < len(order) && n-first < perRoll; n++ {
			q := pieces[order[n]]
			at := end
			for p.Repeat > 0 && (at+o.At)%p.Repeat != q.Phase {
				at += (q.Phase - (at+o.At)%p.Repeat + p.Repeat) % p.Repeat
			}
			if at+q.Length > p.RollLength {
				break
			}
			end = at + q.Length
			o.Cuts = append(o.Cuts, cutting.Cut{Piece: order[n], From: at, To: end})
		}
		s.Rolls = append(s.Rolls, cutting.RollPlan{Orders: []cutting.Order{o}})
	}
	c := &s.Certificate
	c.Weights, c.Capacity = slices.Repeat([]int64{1}, len(pieces)), int64(perRoll)
	c.ByWeights = (len(pieces) + perRoll - 1) / perRoll
	s.LowerBound = c.ByWeights
	s.Proven = s.LowerBound == len(s.Rolls)
	s.Cost, s.CostBound = int64(len(s.Rolls)), int64(s.LowerBound)
	if p.Repeat > 0 {
		c.At = (pieces[0].Phase + 1) % p.Repeat
	}
	return s
}

// planned makes a plan of layouts in one paper. net is the area to be papered
// in mm², worked out by hand.
func planned(t testing.TB, perRoll int, net, roll int64, layouts ...*hanging.Layout) *plan.Plan {
	t.Helper()
	p := &plan.Plan{Task: &plan.Task{Rules: layouts[0].Rules, Papers: []paper.Paper{*layouts[0].Paper}}}
	pp := plan.PaperPlan{Net: measure.Area(net) * measure.SquareMillimetre}
	b := plan.BatchPlan{Kinds: []plan.RollKind{{Roll: -1}}}
	var pieces []cutting.Piece
	for r, l := range layouts {
		p.Task.Runs = append(p.Task.Runs, plan.RunTask{Run: l.Run})
		p.Runs = append(p.Runs, plan.RunPlan{Layout: l})
		for i := range l.Pieces {
			b.Cuts = append(b.Cuts, plan.Strip{{PieceRef: plan.PieceRef{Run: r, Piece: i}}})
			pieces = append(pieces, cutting.Piece{Length: l.Pieces[i].Length, Phase: l.Pieces[i].Phase})
		}
		for _, d := range l.Drops {
			if d.Number > 0 {
				pp.Drops++
			}
		}
	}
	label := layouts[0].Paper
	b.Cutting = cut(t, label, pieces, perRoll)
	pp.Batches = []plan.BatchPlan{b}
	n := len(b.Cutting.Rolls)
	packs := (n + label.Pack - 1) / label.Pack
	pp.Orders = []orders.Line{{RollLength: label.RollLength, Rolls: n, PerPack: label.Pack, Packs: packs, Spare: packs*label.Pack - n}}
	pp.AreaRolls = int((net + roll - 1) / roll)
	pp.ShortRolls, pp.FullDropRolls, pp.InOrderRolls = n, n, n
	p.Papers = []plan.PaperPlan{pp}
	return p
}

func point(x, y measure.Length) geom.Point { return geom.Point{X: x * mm, Y: y * mm} }

func fullDrops(pattern string, from, to int) (all []string) {
	for i := from; i <= to; i++ {
		all = append(all, fmt.Sprintf(pattern, i))
	}
	return all
}
