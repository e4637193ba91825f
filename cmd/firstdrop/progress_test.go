package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

func TestProgressShowsAfterASecond(t *testing.T) {
	for _, c := range []struct {
		terminal bool
		ago      time.Duration
		want     bool
	}{{true, 0, false}, {true, 2 * time.Second, true}, {false, 2 * time.Second, false}} {
		var b bytes.Buffer
		bar := &progress{out: &screen{Writer: &b, terminal: c.terminal}, begun: time.Now().Add(-c.ago)}
		bar.tell(3, 12)
		if got := strings.Contains(b.String(), "▇▇▇▇▇▇▇·"); got != c.want || strings.Contains(b.String(), "3/12") != c.want {
			t.Errorf("terminal %v, begun %v ago: %q", c.terminal, c.ago, b.String())
		}
		b.Reset()
		bar.end()
		if cleared := strings.HasPrefix(b.String(), "\r ") && strings.HasSuffix(b.String(), "\r"); cleared != c.want {
			t.Errorf("cleared away by %q", b.String())
		}
	}
}
