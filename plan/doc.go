// Package plan answers the question: which plan is best?
//
// A [Task] is what is asked: runs of walls, papers, rules, and what the user
// has already decided. [Make] tries every start, kill seam and design height
// and returns the best [Plan], with its roll count proven. It is the only
// place that trades one thing against another.
package plan
