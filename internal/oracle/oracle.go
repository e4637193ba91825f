// Package oracle finds the programs of others that tests ask for a second opinion.
package oracle

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// Tool returns the path of a program. Where it is not installed the test is
// skipped, or fails if FIRSTDROP_ORACLE says that it is required.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("FIRSTDROP_ORACLE") == "required" {
			t.Fatalf("%s is not installed, and FIRSTDROP_ORACLE requires it (make oracles)", name)
		}
		t.Skipf("%s is not installed (make oracles)", name)
	}
	return path
}

// Run runs a program and returns what it prints. It fails the test if the program
// fails.
func Run(t testing.TB, name string, args ...string) string {
	t.Helper()
	var errs strings.Builder
	cmd := exec.Command(Tool(t, name), args...)
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s%s", name, strings.Join(args, " "), err, out, errs.String())
	}
	return string(out)
}

// Python runs a script with arguments, which needs a module of Python's from
// Debian, and returns what it prints. Where the module is not installed the test
// is skipped or fails, as by [Tool].
func Python(t testing.TB, module, script string, args ...string) string {
	t.Helper()
	const python = "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import "+module).Run(); err != nil {
		Tool(t, "python module "+module)
	}
	return Run(t, python, append([]string{"-c", script}, args...)...)
}

// Node runs a script of JavaScript with arguments, which needs a package that make
// oracles puts under npm beside this file, and returns what it prints. Where the
// package is not there the test is skipped or fails, as by [Tool].
func Node(t *testing.T, pkg, script string, args ...string) string {
	t.Helper()
	_, file, _, _ := runtime.Caller(0)
	folder := filepath.Join(filepath.Dir(file), "npm", "node_modules")
	if _, err := os.Stat(filepath.Join(folder, pkg)); err != nil {
		Tool(t, "npm package "+pkg)
	}
	t.Setenv("NODE_PATH", folder)
	return Run(t, "node", append([]string{"-e", script, "--"}, args...)...)
}
