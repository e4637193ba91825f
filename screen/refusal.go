package screen

import (
	"errors"

	"firstdrop/words"
)

// refusal is why a request cannot be answered: a message of the catalogues, so that
// it is said in the language of the request.
type refusal struct {
	id   string
	args []any // names and values in turn
}

func (r *refusal) Error() string { return r.in(nil) }

func (r *refusal) in(c *words.Catalogue) string { return c.Text(r.id, r.args...) }

// refused says why a request cannot be answered. What came from a reader of JSON is
// for whoever writes programs, and stays as it is.
func (q *question) refused(err error) string {
	why := err.Error()
	if r, ok := errors.AsType[*refusal](err); ok {
		why = r.in(q.c)
	}
	return q.c.Text("screen.no-request", "why", why)
}
