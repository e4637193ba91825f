package web

import (
	"context"
	"fmt"
	"net/http"
	"runtime/debug"
	"sync/atomic"
	"time"
)

// line is where work waits that takes a processor: so much is done at once, so
// much waits, and the rest is sent away to come again.
type line struct {
	slots   chan struct{}
	waiting atomic.Int64
	most    time.Duration // that somebody waits
}

// mostWaiting is how many wait at once.
const mostWaiting = 32

func newLine(slots int, most time.Duration) *line {
	return &line{slots: make(chan struct{}, slots), most: most}
}

// do carries out work when its turn has come. It returns soon after ctx is done, or
// when most of the line has passed. The work is told by its own context: planning then
// ends, and whatever does not listen keeps its slot until it has ended.
func do[T any](ctx context.Context, l *line, work func(ctx context.Context) (T, error)) (T, error) {
	var none T
	ctx, cancel := context.WithTimeout(ctx, l.most)
	defer cancel()
	if l.waiting.Add(1) > mostWaiting {
		l.waiting.Add(-1)
		return none, busy("too many plans are being worked out")
	}
	select {
	case l.slots <- struct{}{}:
		l.waiting.Add(-1)
	case <-ctx.Done():
		l.waiting.Add(-1)
		return none, l.late(ctx)
	}
	type result struct {
		value T
		err   error
	}
	done := make(chan result, 1)
	go func() {
		var r result
		defer func() {
			if fault := recover(); fault != nil {
				r.err = fmt.Errorf("fault: %v\n%s", fault, debug.Stack())
			}
			<-l.slots
			done <- r
		}()
		r.value, r.err = work(ctx)
	}()
	select {
	case r := <-done:
		return r.value, r.err
	case <-ctx.Done():
		return none, l.late(ctx)
	}
}

// late is the error for work that was not there in time, or is no longer wanted.
func (l *line) late(ctx context.Context) error {
	if ctx.Err() == context.DeadlineExceeded {
		return busy(fmt.Sprintf("this took longer than %d s", l.most/time.Second))
	}
	return ctx.Err()
}

func busy(why string) *Problem {
	p := newProblem(http.StatusServiceUnavailable, "busy", why+"; try again in a moment")
	p.wait = 5
	return p
}
