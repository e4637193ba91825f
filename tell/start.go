package tell

import (
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/words"
)

// Start tells where the first plumb line of a run stands, which edge of the
// paper is set to it, and which way the hanging goes.
func Start(c *words.Catalogue, l *hanging.Layout) []string {
	if len(l.Plumbs) == 0 || len(l.Pieces) == 0 {
		return []string{c.Text("page.nothing")}
	}
	texts := []string{FirstLine(c, l), Directions(c, l)}
	if lean := LineLean(c, l, l.Plumbs[0].Wall); lean != "" {
		texts = append(texts, lean)
	}
	return texts
}

// FirstLine tells where the first plumb line of a run stands, and which edge is
// set to it. The run must have one.
func FirstLine(c *words.Catalogue, l *hanging.Layout) string {
	b := &l.Plumbs[0]
	return c.Text("page.start-"+SetEdge(b), "wall", Wall(c, l.Run, b.Wall),
		"from", FromEnd(c, l.Run, b.Wall, b.X, b.From), "drop", l.Drops[b.Drop].Number, "beyond", c.Plain(b.Beyond))
}

// SetEdge ends the names of the sentences on the edge that a plumb line sets: on its
// side, and whether it stands beyond the line.
func SetEdge(b *hanging.Plumb) string {
	if b.Beyond != 0 {
		return b.Edge.String() + "-beyond"
	}
	return b.Edge.String()
}

// Directions tells which way the drops follow drop 1.
func Directions(c *words.Catalogue, l *hanging.Layout) string {
	switch right, left := l.Ways(); {
	case left == 0 && right == 0:
		return c.Text("page.only-drop")
	case left == 0:
		return c.Text("page.all-right")
	case right == 0:
		return c.Text("page.all-left")
	default:
		return c.Text("page.both-ways", "right", right, "left", left)
	}
}

// Counted says how many drops a plan hangs, in how many pieces.
func Counted(c *words.Catalogue, p *plan.Plan) string {
	drops, pieces := 0, 0
	for i := range p.Papers {
		drops += p.Papers[i].Drops
		pieces += p.Papers[i].Pieces()
	}
	return c.Text("count.drops-in", "drops", c.Text("count.drop", "n", drops), "pieces", c.Text("count.piece", "n", pieces))
}

// RollOf returns the roll that a piece is cut from; nil when there is none.
func RollOf(p *plan.Plan, want plan.PieceRef) *Roll {
	rolls := Rolls(p, p.Task.Runs[want.Run].Paper)
	for i := range rolls {
		for _, cut := range rolls[i].Orders[0].Cuts {
			for _, g := range rolls[i].Gifts(p, cut) {
				if g.PieceRef == want {
					return &rolls[i]
				}
			}
		}
	}
	return nil
}
