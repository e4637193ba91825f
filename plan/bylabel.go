package plan

import "slices"

// ByLabel plans the same with paper i taken at its label's word, to tell what it comes to
// that the label is wrong. It returns nil where the label is right, where nobody has measured
// the design, and where rolls are there already; and an error where nothing can be planned so.
func (p *Plan) ByLabel(i int) (*Plan, error) {
	label := p.Task.Papers[i]
	if !label.IsMislabelled() || len(label.Rolls) > 0 {
		return nil, nil
	}
	label.Repeat, label.Match, label.Printed = label.Printed.Repeat, label.Printed.Match, nil
	if m := label.Motif; m != nil && (m.Head >= label.Repeat || m.Tall > label.Repeat) {
		label.Motif = nil
	}
	if err := label.Check(); err != nil {
		return nil, err
	}
	t := *p.Task
	t.Papers = slices.Clone(t.Papers)
	t.Papers[i] = label
	return Make(&t)
}
