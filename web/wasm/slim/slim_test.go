package main

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A module of one memory with "hi" at 8 and "there" at 100, written by hand from the
// WebAssembly Core Specification 2.0, 5.4 and 5.5.
var small = "\x00asm\x01\x00\x00\x00" + "\x05\x03\x01\x00\x01" + "\x0b\x13\x02" + "\x00\x41\x08\x0b\x02hi" + "\x00\x41\xe4\x00\x0b\x05there"

func TestMemoryIsPutTogether(t *testing.T) {
	all, err := sectionsOf([]byte(small))
	if err != nil || len(all) != 2 || !bytes.Equal(join(all), []byte(small)) {
		t.Fatal(all, err)
	}
	m, err := memoryOf(all[1].body)
	if err != nil || m.from != 8 || len(m.image) != 97 || string(m.image[92:]) != "there" {
		t.Fatal(m, err)
	}
	again, err := memoryOf(m.section())
	if err != nil || again.from != 8 || !bytes.Equal(again.image, m.image) {
		t.Error(again, err)
	}
	if _, err := slim([]byte(small)); err != errTables {
		t.Errorf("a program without a table of functions: %v", err)
	}
}

// Whatever pieces there are, the memory is the same when they have been joined.
func TestMemoryStays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		body, want := []byte{}, make([]byte, 40_000)
		n := rapid.IntRange(1, 20).Draw(t, "pieces")
		for range n {
			data := rapid.SliceOfN(rapid.Byte(), 0, 30).Draw(t, "data")
			at := rapid.IntRange(0, len(want)-30).Draw(t, "at")
			copy(want[at:], data)
			body = append(appendSigned(append(body, 0, i32Const), int64(at)), end)
			body = appendBytes(body, data)
		}
		m, err := memoryOf(append(binary.AppendUvarint(nil, uint64(n)), body...))
		if err != nil {
			t.Fatal(err)
		}
		again, err := memoryOf(m.section())
		if err != nil {
			t.Fatal(err)
		}
		got := make([]byte, len(want))
		copy(got[again.from:], again.image)
		if !bytes.Equal(got, want) {
			t.Error("the memory is another")
		}
	})
}

func TestSignedNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64().Draw(t, "n")
		if got, err := (&reader{appendSigned(nil, n)}).signed(); got != n || err != nil {
			t.Errorf("%d comes back as %d, %v", n, got, err)
		}
	})
}

func FuzzSlim(f *testing.F) {
	f.Add([]byte(small))
	table := append(bytes.Clone(magic), make([]byte, 200)...)
	for i, at := range []uint64{1, 0, 0, 72, 72, 72, 72, 80} {
		binary.LittleEndian.PutUint64(table[8+8*i:], at)
	}
	m := &memory{8, append(table, 1)}
	f.Add(join([]section{{dataSection, m.section()}}))
	f.Fuzz(func(t *testing.T, program []byte) {
		if len(program) > 1<<16 {
			return
		}
		if slimmer, err := slim(program); err == nil {
			if _, err := sectionsOf(slimmer); err != nil {
				t.Error(err)
			}
		}
	})
}

// A Go program does the same when it is slim, down to how it crashes: only places in
// files are gone. Node runs it with Go's own wasm_exec_node.js.
func TestProgramDoesTheSame(t *testing.T) {
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("needs node")
	}
	whole := filepath.Join(t.TempDir(), "crash.wasm")
	build := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", whole, "./testdata/crash")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	said, crash := run(t, whole)
	filtered := filepath.Join(t.TempDir(), "crash.filtered")
	if err := slimFile(whole, filtered); err != nil {
		t.Fatal(err)
	}
	comesBack(t, filtered, whole)
	saidSlim, crashSlim := run(t, whole)
	if want := strings.Replace(said, "true true true", "false false true", 1); saidSlim != want || want == said {
		t.Errorf("it says\n%s\nand not\n%s", saidSlim, want)
	}
	if !strings.Contains(crash, "index out of range [12]") || !strings.Contains(crash, "main.main") {
		t.Fatal(crash)
	}
	if crashSlim != crash {
		t.Errorf("it crashes with\n%s\nand not\n%s", crashSlim, crash)
	}
}

// comesBack has the screen make a program out of its filtered form.
func comesBack(t *testing.T, filtered, program string) {
	t.Helper()
	if _, err := os.Stat("../../ui/node_modules/typescript"); err != nil {
		t.Log("needs npm ci in web/ui: the screen unfilters nothing")
		return
	}
	if text, err := exec.Command("node", "../unfiltered.mjs", filtered, program, "../../ui").CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, text)
	}
}

// places are the lines of a crash that tell of files and addresses.
var places = regexp.MustCompile(`(?m)^\t.*\n|\(0x.*\)|\+0x.*$`)

// run runs a program, and returns what it says and how it crashes.
func run(t *testing.T, wasm string) (said, crash string) {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command("node", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), wasm)
	var out, wrong bytes.Buffer
	c.Stdout, c.Stderr = &out, &wrong
	if err := c.Run(); err == nil {
		t.Fatal("it does not crash")
	}
	return out.String(), places.ReplaceAllString(wrong.String(), "")
}
