// Package steady makes property tests repeatable: the same cases in every run,
// unless asked for others. New cases are what fuzzing is for (make fuzz), and
//
//	go test ./hanging -rapid.seed=7 -rapid.checks=10000
package steady

import (
	"flag"
	"os"
	"testing"
)

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
