package job

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"firstdrop/message"
)

// ErrRollThere says that a paper has a roll of that name already.
var ErrRollThere = errors.New("is there already")

// paperNamed returns the index of a paper.
func (j *Job) paperNamed(name string) (int, error) {
	var names []string
	for i := range j.Papers {
		if j.Papers[i].Name == name || name == "" && len(j.Papers) == 1 {
			return i, nil
		}
		names = append(names, j.Papers[i].Name)
	}
	if name == "" {
		return 0, message.New("papers_several", "the job has several papers; say which one: {papers}", "papers", strings.Join(names, ", "))
	}
	return 0, message.New("paper_not_in_job", "there is no paper {paper} in this job; it has {papers}", "paper", strconv.Quote(name), "papers", strings.Join(names, ", "))
}

// WithRoll returns a copy of the job with one more roll of a paper, or with
// replace, in place of the one of that name. paper may be "" where there is only
// one. at is the index of the paper, and old that of the roll replaced; −1 if it
// is added. The error wraps [ErrRollThere] if only replace is lacking, and is
// [Problems] if the roll is not sound.
func (j *Job) WithRoll(paper string, roll Roll, replace bool) (want *Job, at, old int, err error) {
	if at, err = j.paperNamed(paper); err != nil {
		return nil, 0, 0, err
	}
	next := *j
	next.source = nil
	next.Papers = slices.Clone(j.Papers)
	p := &next.Papers[at]
	p.Rolls = slices.Clone(p.Rolls)
	old = slices.IndexFunc(p.Rolls, func(r Roll) bool { return r.Name == roll.Name })
	switch {
	case old < 0:
		p.Rolls = append(p.Rolls, roll)
	case !replace:
		return nil, 0, 0, message.New("roll_there", "roll {roll} of {paper} is there already", "roll", roll.Name, "paper", p.Name).Because(ErrRollThere)
	default:
		p.Rolls[old] = roll
	}
	return &next, at, old, next.Check()
}
