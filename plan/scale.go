package plan

import (
	"errors"
	"fmt"

	"firstdrop/hanging"
)

// Scale weighs layouts of one run one by one, as a search compares them: whoever doubts that
// a plan is the best may put others on it.
type Scale struct{ s *search }

// errNoLayout is what a choice has that is none.
var errNoLayout = errors.New("no layout comes of this choice")

// Scale returns the scale of run i of a plan, with all of its walls plumb and beside what is
// planned of other runs. It returns an error if the plan has no such run, or nothing can hang
// on it so.
func (p *Plan) Scale(i int) (*Scale, error) {
	if i < 0 || i >= len(p.Runs) {
		return nil, fmt.Errorf("the plan has no run %d", i)
	}
	s, err := p.newSearch(i, nil)
	if err != nil {
		return nil, err
	}
	return &Scale{s}, nil
}

// Weigh returns what the layout of a choice weighs with the rolls that it needs, in
// thousandths of a roll, at the design height that suits it best: the [RunPlan.Score] that it
// would have. It returns an error if no layout comes of the choice, or if that cannot be cut.
func (c *Scale) Weigh(choice hanging.Choice) (int64, error) {
	s := c.s
	n := candidate{choice: choice, kill: placeOf(s.run.Run, choice.Kill)}
	if s.layOut(&n); n.layout == nil {
		return 0, errNoLayout
	}
	s.counts, s.patience = map[string]*count{}, 0 // each is counted for itself
	total, err := s.total(&n)
	return total + s.standing, err
}
