package plan_test

import (
	"runtime/debug"
	"testing"

	"firstdrop/internal/steady"
)

func TestMain(m *testing.M) {
	debug.SetGCPercent(400) // a sixth of the time would go into it
	steady.Main(m)
}
