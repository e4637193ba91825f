package plan

import (
	"errors"

	"firstdrop/cutting"
)

// ErrStopped is the error of a plan that [Task.Stop] has ended before it was made.
var ErrStopped = errors.New("plan: nobody wants this plan any more")

func (t *Task) isStopped() bool { return t.Stop != nil && t.Stop() }

// watch lets a cutting go on as long as somebody wants the plan.
func (t *Task) watch() func(cutting.Progress) bool {
	if t.Stop == nil {
		return nil
	}
	return func(cutting.Progress) bool { return !t.Stop() }
}
