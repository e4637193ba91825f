// Command types writes the TypeScript types that the screen shares with the
// planner: protocol.ts and printing.ts from the Go types of packages screen and
// screen/printing, and job.ts from the schema of the job document. Comments come along. A test fails when the files
// differ from what it writes.
//
//	go run ./web/wasm/types        # in the root of the module
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	if err := write("."); err != nil {
		fmt.Fprintln(os.Stderr, "types:", err)
		os.Exit(1)
	}
}

// folder is where the front end keeps what it shares with the planner.
const folder = "web/ui/src/planner"

const written = "// Written by web/wasm/types from %s. Do not edit: run make types.\n"

// files returns the text of every file by name, from the module in root.
func files(root string) (map[string]string, error) {
	protocol, err := protocolTypes(filepath.Join(root, "screen"), "screen", []string{"job"}, "Request", "Answer", "Progress")
	if err != nil {
		return nil, err
	}
	printing, err := protocolTypes(filepath.Join(root, "screen", "printing"), "screen/printing", []string{"job", "protocol"}, "PrintRequest", "PrintAnswer")
	if err != nil {
		return nil, err
	}
	document, err := documentTypes(filepath.Join(root, "job", "schema.json"))
	if err != nil {
		return nil, err
	}
	return map[string]string{"protocol.ts": protocol, "printing.ts": printing, "job.ts": document}, nil
}

func write(root string) error {
	all, err := files(root)
	if err != nil {
		return err
	}
	for name, text := range all {
		if err := os.WriteFile(filepath.Join(root, folder, name), []byte(text), 0o644); err != nil {
			return err
		}
	}
	return nil
}
