// Package steady makes property tests repeatable: the same cases in every run,
// unless asked for others. New cases are what fuzzing is for (make fuzz), and
//
//	go test ./hanging -rapid.seed=7 -rapid.checks=10000
package steady

import (
	"flag"
	"os"
	"strconv"
	"testing"
)

// Seeded calls do with rapid's seed moved on by steps from what it is, and puts it
// back.
func Seeded(steps int, do func()) {
	f := flag.Lookup("rapid.seed")
	before := f.Value.String()
	seed, err := strconv.ParseUint(before, 10, 64)
	if err == nil {
		err = f.Value.Set(strconv.FormatUint(seed+uint64(steps), 10))
	}
	if err != nil {
		panic(err)
	}
	defer func() { _ = f.Value.Set(before) }()
	do()
}

// Main runs the tests of a package with a fixed seed for rapid, if none is given
// on the command line. Call it from TestMain.
func Main(m *testing.M) {
	flag.Parse()
	if f := flag.Lookup("rapid.seed"); f != nil && f.Value.String() == f.DefValue {
		if err := f.Value.Set("1"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
