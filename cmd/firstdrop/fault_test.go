package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/plan"
)

const plainRoom = "../../examples/plain-room.yaml"

// faulty runs the program with a planner of ours.
func faulty(ctx context.Context, planner func(*plan.Task) (*plan.Plan, error), args ...string) (code int, stdout, stderr string) {
	var out, err bytes.Buffer
	p := &program{in: strings.NewReader(""), out: newScreen(&out), err: newScreen(&err), make: planner}
	code = p.run(ctx, args)
	return code, out.String(), err.String()
}

// A plan that does not pass the audit is neither shown nor saved: here a seam
// and a cut are falsified after planning.
func TestUntruePlanIsNotShown(t *testing.T) {
	falsify := func(task *plan.Task) (*plan.Plan, error) {
		p, err := plan.Make(task)
		if err != nil {
			return nil, err
		}
		p.Runs[0].Layout.Seams[0].X += measure.Millimetre
		first := func(r []cutting.RollPlan) *cutting.Cut { return &r[0].Orders[0].Cuts[0] }
		first(p.Papers[0].Batches[0].Cutting.Rolls).To -= measure.Millimetre
		return p, nil
	}
	folder := filepath.Join(t.TempDir(), "out")
	for _, args := range [][]string{
		{"plan", plainRoom},
		{"plan", plainRoom, "--json"},
		{"plan", plainRoom, "--folder", folder},
		{"findings", plainRoom},
	} {
		code, out, stderr := faulty(context.Background(), falsify, args...)
		if code != exitInternal || out != "" {
			t.Errorf("%v: exit code %d, want %d; printed %q", args, code, exitInternal, out)
		}
		for _, want := range []string{"internal error", "did not pass its audit", "cut length"} {
			if !strings.Contains(stderr, want) {
				t.Errorf("%v: %q does not say %q", args, stderr, want)
			}
		}
	}
	if _, err := os.Stat(folder); !os.IsNotExist(err) {
		t.Errorf("the folder was made: %v", err)
	}
}

// A panic is a fault of the program; people get a sentence, no stack.
func TestPanicIsCaught(t *testing.T) {
	code, out, stderr := faulty(context.Background(), func(*plan.Task) (*plan.Plan, error) { panic("out of paste") }, "plan", plainRoom)
	if code != exitInternal || out != "" || !strings.Contains(stderr, "out of paste") || strings.Contains(stderr, "goroutine") {
		t.Errorf("exit code %d, stdout %q, stderr %q", code, out, stderr)
	}
}

// An interrupt ends planning at once and leaves nothing behind.
func TestInterruptWhilePlanning(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	planning := make(chan struct{})
	go func() {
		<-planning
		cancel()
	}()
	folder := filepath.Join(t.TempDir(), "out")
	code, out, stderr := faulty(ctx, func(*plan.Task) (*plan.Plan, error) {
		close(planning)
		select {} // a plan that takes for ever
	}, "plan", plainRoom, "--folder", folder)
	if code != exitInterrupted || out != "" || !strings.Contains(stderr, "interrupted") {
		t.Errorf("exit code %d, stdout %q, stderr %q", code, out, stderr)
	}
	if _, err := os.Stat(folder); !os.IsNotExist(err) {
		t.Errorf("the folder was made: %v", err)
	}
}

// breaking is a context that is cancelled after it was asked a few times.
type breaking struct {
	context.Context
	after int
}

func (b *breaking) Err() error {
	if b.after--; b.after < 0 {
		return context.Canceled
	}
	return nil
}

// An interrupt between two files leaves the folder as it was.
func TestInterruptWhileWriting(t *testing.T) {
	folder := t.TempDir()
	before := []outFile{{"plan.json", []byte("one")}, {"roll-map.csv", []byte("two")}}
	if _, err := saveFolder(context.Background(), folder, before, false); err != nil {
		t.Fatal(err)
	}
	was := contents(t, folder)
	after := []outFile{{"plan.json", []byte("new one")}, {"cutting-list.csv", []byte("new")}, {"roll-map.csv", []byte("new two")}}
	for n := range after {
		_, err := saveFolder(&breaking{context.Background(), n}, folder, after, false)
		if exitCode(err, true) != exitInterrupted {
			t.Errorf("interrupted before file %d: %v", n, err)
		}
		if is := contents(t, folder); is != was {
			t.Errorf("interrupted before file %d: %s, was %s", n, is, was)
		}
	}
	if _, err := saveFolder(&breaking{context.Background(), len(after)}, folder, after, false); err != nil {
		t.Fatal(err)
	}
	if is := contents(t, folder); !strings.Contains(is, "new two") || strings.Contains(is, ".part") {
		t.Errorf("written: %s", is)
	}
}

// contents lists a folder with what its files hold.
func contents(t *testing.T, folder string) string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		b.WriteString(e.Name() + "=" + string(data) + ";")
	}
	return b.String()
}

// While new files are renamed into place the ledger knows old and new ones, so
// that a crash in between locks nobody out.
func TestLedgerKnowsOldAndNew(t *testing.T) {
	folder := t.TempDir()
	old, young := outFile{"plan.json", []byte("old")}, outFile{"plan.json", []byte("new")}
	ledger := hashOf(old.data) + "  plan.json\n" + hashOf(young.data) + "  plan.json\n"
	for _, standing := range []outFile{old, young} {
		for name, data := range map[string][]byte{ledgerName: []byte(ledger), standing.name: standing.data} {
			if err := os.WriteFile(filepath.Join(folder, name), data, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		if _, err := saveFolder(context.Background(), folder, []outFile{{"plan.json", []byte("newest")}}, false); err != nil {
			t.Errorf("with %q in place: %v", standing.data, err)
		}
	}
}

func TestSafeNames(t *testing.T) {
	for _, tt := range []struct{ name, want string }{
		{"A", "a"},
		{"Chimney breast, left", "chimney-breast-left"},
		{"../../etc/passwd", "etc-passwd"},
		{"  --  ", "unnamed"},
		{"", "unnamed"},
		{".hidden", "hidden"},
		{"Küche №2", "küche-2"},
		{"a\x00b\nc", "a-b-c"},
		{`C:\wall`, "c-wall"},
		{"стена", "стена"},
	} {
		if got := safe(tt.name); got != tt.want {
			t.Errorf("safe(%q) = %q, want %q", tt.name, got, tt.want)
		}
	}
	if got := safe(strings.Repeat("ж", 200)); len(got) > mostSafe {
		t.Errorf("a name of %d bytes", len(got))
	}
}

func TestNamesAreDistinct(t *testing.T) {
	n := &namer{taken: map[string]int{}}
	seen := map[string]bool{}
	for _, stem := range []string{"a", "a", "a-2", "a", "a-2", "a-2-2", "b"} {
		name := n.name(stem)
		if seen[name] {
			t.Errorf("%s is given twice", name)
		}
		seen[name] = true
	}
}

// What is not printable is replaced before it reaches a terminal.
func TestErrorsCannotSteerATerminal(t *testing.T) {
	_, _, stderr := called("plan", "\x1b]0;title\a.yaml")
	if strings.ContainsAny(stderr, "\x1b\a") {
		t.Errorf("%q", stderr)
	}
}
