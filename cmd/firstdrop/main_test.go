package main

import (
	"encoding/hex"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "write doc.go and the expected outputs anew")

func TestMain(m *testing.M) {
	if os.Getenv(asServer) != "" {
		main()
	}
	testscript.Main(m, map[string]func(){"firstdrop": main})
}

// The scripts call the program as people do. They add four commands to those
// of testscript: exits, which checks the exit code; walls, which writes a room
// of many walls; bytes, which writes a file that is no text; and fits, which
// checks the size of what was printed.
func TestScripts(t *testing.T) {
	examples, err := filepath.Abs("../../examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", examples)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "walls": walls, "bytes": writeBytes, "fits": fits,
		},
	})
}

// exits runs a program and checks its exit code: exits 2 firstdrop plan.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits code program args...")
	}
	code := 0
	var failed *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &failed) {
		code = failed.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if want := args[0]; strconv.Itoa(code) != want {
		ts.Fatalf("exit code %d, want %s\n%s", code, want, ts.ReadFile("stderr"))
	}
	if strings.Contains(ts.ReadFile("stderr"), "goroutine ") {
		ts.Fatalf("a stack trace is shown")
	}
}

// walls writes a job with that many walls: walls 10000 many.yaml.
func walls(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[0])
	ts.Check(err)
	var b strings.Builder
	b.WriteString("firstdrop: 1\nunits: mm\nroom:\n  height: 2400\n  closed: false\n  walls:\n")
	for i := range n {
		fmt.Fprintf(&b, "    - {name: w%d, width: 1000}\n", i)
	}
	b.WriteString("papers:\n  - {name: Oatmeal, width: 530, roll: 10050, match: free}\n")
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(b.String()), 0o666))
}

// writeBytes writes a file of bytes given in hexadecimal: bytes picture.png 89 50.
func writeBytes(ts *testscript.TestScript, _ bool, args []string) {
	data, err := hex.DecodeString(strings.Join(args[1:], ""))
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o666))
}

// fits checks that what was printed fits a screen: fits 80 24.
func fits(ts *testscript.TestScript, _ bool, args []string) {
	width, _ := strconv.Atoi(args[0])
	height, _ := strconv.Atoi(args[1])
	lines := strings.Split(strings.TrimSuffix(ts.ReadFile("stdout"), "\n"), "\n")
	if len(lines) > height {
		ts.Fatalf("%d lines, want at most %d", len(lines), height)
	}
	for i, l := range lines {
		if n := len([]rune(l)); n > width {
			ts.Fatalf("line %d has %d columns, want at most %d: %s", i+1, n, width, l)
		}
	}
}
