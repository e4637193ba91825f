package main

import (
	"fmt"
	"strings"
	"time"
)

// progress is a bar on a terminal that shows how far long work has come. Work that
// takes less than a second shows none.
type progress struct {
	out   *screen
	begun time.Time
	shown bool
}

const (
	soonDone = time.Second // what takes less needs no bar
	barWide  = 30
)

func newProgress(out *screen) *progress { return &progress{out: out, begun: time.Now()} }

// tell is told how much is done.
func (b *progress) tell(done, of int) {
	if !b.out.terminal || of < 1 || time.Since(b.begun) < soonDone {
		return
	}
	b.shown = true
	full := barWide * min(done, of) / of
	fmt.Fprintf(b.out, "\r%s%s %d/%d", strings.Repeat("▇", full), strings.Repeat("·", barWide-full), done, of)
}

// end clears the bar away.
func (b *progress) end() {
	if b.shown {
		fmt.Fprintf(b.out, "\r%s\r", strings.Repeat(" ", barWide+16))
	}
}
