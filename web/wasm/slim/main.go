// Command slim rewrites a Go program compiled to WebAssembly so that it compresses
// better: by three tenths for the planner. What the program does stays the same.
//
//	go run ./web/wasm/slim build/planner.wasm web/ui/public/planner.filtered
//
// It rewrites the program in its place without what it does not need, and writes that
// once more in filtered form (see filter.go), which is what the server sends.
//
// Two things go. The linker leaves zeros out of the memory that a program begins
// with, and so writes it in a hundred thousand pieces, each with its address, which
// compress worse than the zeros would:
//
//	written   [at 80 █ ][at 92 ██ ][at 108 █ ] …
//	here      [at 80 █   ██    █ … ]
//
// And Go keeps, for every function, which line of which file each instruction comes
// from. Only the runtime's own account of a crash reads that: it then names the
// functions alone, and "?" for the file.
package main

import (
	"fmt"
	"os"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "slim: name a program, which is rewritten, and where it is written in filtered form")
		os.Exit(2)
	}
	if err := slimFile(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintf(os.Stderr, "slim: %s: %v\n", os.Args[1], err)
		os.Exit(1)
	}
}

// slimFile rewrites a program in its place, and writes it in filtered form.
func slimFile(name, filtered string) error {
	program, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	slimmer, err := slim(program)
	if err != nil {
		return err
	}
	if err := os.WriteFile(name, slimmer, 0o755); err != nil {
		return err
	}
	other, err := filter(slimmer)
	if err != nil {
		return err
	}
	return os.WriteFile(filtered, other, 0o644)
}

// slim returns the program with its memory in few pieces and without places in files.
// It fails for what is no Go program in WebAssembly, and for one whose tables are laid
// out in a way that it does not know.
func slim(program []byte) ([]byte, error) {
	sections, err := sectionsOf(program)
	if err != nil {
		return nil, err
	}
	for i := range sections {
		if sections[i].id != dataSection {
			continue
		}
		m, err := memoryOf(sections[i].body)
		if err != nil {
			return nil, err
		}
		if err := m.forgetLines(); err != nil {
			return nil, err
		}
		sections[i].body = m.section()
	}
	return join(sections), nil
}
