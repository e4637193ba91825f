package tell

import (
	"slices"
	"strings"

	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/words"
)

// Cautions lists the cautions that apply to the work of a plan, in full.
func Cautions(c *words.Catalogue, p *plan.Plan) (texts []string) {
	if HasCurrent(p) {
		texts = append(texts, c.Text("page.power"))
	}
	if IsHigh(p) {
		texts = append(texts, c.Text("page.heights"))
	} else {
		texts = append(texts, c.Text("page.ladder"))
	}
	return append(texts, c.Text("page.old-coats"), c.Text("page.mould"), c.Text("page.blades"), c.Text("page.air"), c.Text("page.local-law"))
}

// Care lists the usual cautions as far as they apply, short enough for two lines
// of a screen. [Cautions] says more.
func Care(c *words.Catalogue, p *plan.Plan) string {
	var texts []string
	if HasCurrent(p) {
		texts = append(texts, c.Text("care.power"))
	}
	if IsHigh(p) {
		texts = append(texts, c.Text("care.high"))
	}
	return strings.Join(append(texts, c.Text("care.blade"), c.Text("care.coats"), c.Text("care.local")), " ")
}

// HasCurrent reports whether a papered wall carries something electrical.
func HasCurrent(p *plan.Plan) bool {
	for _, r := range p.Runs {
		for i := range r.Layout.Run.Walls {
			if slices.ContainsFunc(r.Layout.Run.Walls[i].Fittings, isElectric) {
				return true
			}
		}
	}
	return false
}

func isElectric(f room.Fitting) bool {
	return f.Kind == room.Socket || f.Kind == room.Switch || f.Kind == room.Light
}

// highWork is the height from which a platform is asked for (common practice).
const highWork = 3 * measure.Metre

// IsHigh reports whether a wall reaches above 3 m from its own foot, or stands on
// stairs.
func IsHigh(p *plan.Plan) bool {
	for _, r := range p.Runs {
		for i := range r.Layout.Run.Walls {
			w := &r.Layout.Run.Walls[i]
			if _, y := w.Outline.Bounds(); y.Length() > highWork || w.IsStair() {
				return true
			}
		}
	}
	return false
}
