package tell

import (
	"slices"
	"strings"

	"firstdrop/plan"
	"firstdrop/words"
)

// mostNames is how many pieces without paper are named.
const mostNames = 12

// Missing tells which pieces of a paper there is nothing to cut from; "" when
// there is enough.
func Missing(c *words.Catalogue, p *plan.Plan, i int) string {
	var names []string
	pp := &p.Papers[i]
	for k := range pp.Batches {
		b := &pp.Batches[k]
		for _, piece := range b.Cutting.Missing {
			for _, lie := range b.Cuts[piece] {
				names = append(names, p.Runs[lie.Run].Layout.Pieces[lie.Piece].Name)
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	shown := strings.Join(names[:min(mostNames, len(names))], ", ")
	if more := len(names) - mostNames; more > 0 {
		shown = c.Text("missing.more", "pieces", shown, "more", more)
	}
	return c.Text("missing", "n", len(names), "paper", p.Task.Papers[i].Name, "pieces", shown)
}

// InHand tells which of the rolls in hand are cut, and which batch hangs where;
// nothing where none is in hand.
func InHand(c *words.Catalogue, p *plan.Plan, i int) []string {
	label := &p.Task.Papers[i]
	if len(label.Rolls) == 0 {
		return nil
	}
	var used []string
	for _, r := range Rolls(p, i) {
		if r.InHand {
			used = append(used, r.Name)
		}
	}
	text := c.Text("hand.none", "n", len(label.Rolls))
	if len(used) > 0 {
		text = c.Text("hand.cut", "used", len(used), "rolls", Rolled(c, len(label.Rolls)), "names", strings.Join(used, ", "))
	}
	return append([]string{text}, batches(c, p, i)...)
}

// batches tells which walls are hung from which batch, where there are several.
func batches(c *words.Catalogue, p *plan.Plan, i int) []string {
	pp := &p.Papers[i]
	if len(pp.Batches) < 2 {
		return nil
	}
	texts := make([]string, len(pp.Batches))
	for k := range pp.Batches {
		walls := strings.Join(wallsOf(c, p, &pp.Batches[k]), ", ")
		texts[k] = c.Text("batch.on", "batch", pp.Batches[k].Batch, "walls", walls)
		if pp.Batches[k].Batch == "" {
			texts[k] = c.Text("batch.unstated-on", "walls", walls)
		}
	}
	return []string{Capital(Joined(c, texts)) + "."}
}

// wallsOf names the walls that a batch is hung on.
func wallsOf(c *words.Catalogue, p *plan.Plan, b *plan.BatchPlan) (names []string) {
	for _, strip := range b.Cuts {
		for _, lie := range strip {
			l := p.Runs[lie.Run].Layout
			name := c.Name(l.Run.WallName(l.PieceWall(&l.Pieces[lie.Piece])))
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}
