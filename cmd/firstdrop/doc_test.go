package main

import (
	"bytes"
	"fmt"
	"go/format"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/spf13/cobra"
)

// doc.go is made of the help texts, so that the two cannot differ.
func TestDocIsTheHelp(t *testing.T) {
	want, err := format.Source(docSource())
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("doc.go", want, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("doc.go is not the help text; go test ./cmd/firstdrop -run TestDocIsTheHelp -update writes it anew (-want +got):\n%s", diff)
	}
}

// Every command has an example, and a sentence that fits a list.
func TestEveryCommandHasHelp(t *testing.T) {
	for _, c := range documented() {
		if c.Short == "" || c.Long == "" || !isTopic(c) && c.Example == "" {
			t.Errorf("%s: short %q, long %q, example %q", c.CommandPath(), c.Short, c.Long, c.Example)
		}
		for _, text := range []string{c.Long, c.Example} {
			for line := range strings.Lines(text) {
				if n := len([]rune(strings.TrimRight(line, "\n"))); n > plainWidth {
					t.Errorf("%s: a line of %d columns: %s", c.CommandPath(), n, line)
				}
			}
		}
	}
}

// documented returns the root, its commands, and the topics, in this order.
func documented() []*cobra.Command {
	p := &program{out: newScreen(io.Discard), err: newScreen(io.Discard)}
	p.speak("")
	root := p.root()
	commands := []*cobra.Command{root}
	var pages []*cobra.Command
	for _, c := range root.Commands() {
		if c.Name() == "help" || c.Name() == "completion" {
			continue // cobra's own
		}
		if isTopic(c) {
			pages = append(pages, c)
		} else {
			commands = append(commands, c)
		}
	}
	return append(commands, pages...)
}

func isTopic(c *cobra.Command) bool { return !c.Runnable() }

// docSource writes the package comment.
func docSource() []byte {
	var b bytes.Buffer
	say := func(format string, args ...any) {
		for line := range strings.Lines(fmt.Sprintf(format, args...)) {
			b.WriteString(strings.TrimRight("// "+line, " \n") + "\n")
		}
	}
	for i, c := range documented() {
		if i == 0 {
			say("Command firstdrop plans hanging wallpaper exactly.\n\n%s\n", c.Long)
		} else {
			say("\n# %s\n\n", c.Short)
		}
		switch {
		case isTopic(c):
			say("%s", indented("firstdrop help "+c.Name()))
			say("\n%s\n", topicText(c.Long))
		case i > 0:
			say("%s", indented(c.UseLine()))
			say("\n%s\n", c.Long)
		}
		if c.Example != "" {
			say("\nFor example:\n\n%s", indented(c.Example))
		}
		if flags := c.LocalFlags().FlagUsages(); i > 0 && flags != "" {
			say("\nFlags:\n\n%s", indented(flags))
		}
	}
	b.WriteString("package main\n")
	return b.Bytes()
}

// topicText sets a topic that is a table as one.
func topicText(text string) string {
	if strings.HasPrefix(text, " ") {
		head, tail, _ := strings.Cut(text, "\n\n")
		return indented(head) + "\n" + tail
	}
	return text
}

// indented sets a text off as it stands.
func indented(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		b.WriteString("\t" + strings.TrimPrefix(strings.TrimRight(line, "\n"), "  ") + "\n")
	}
	return b.String()
}
