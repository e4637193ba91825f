package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"firstdrop/plan"
	"firstdrop/words"
)

// Every language says everything, with the same things filled in.
func TestTheProgramSpeaksEveryLanguage(t *testing.T) {
	first := speaking("en-GB")
	for _, tag := range words.Languages() {
		c := speaking(tag)
		for _, id := range first.IDs() {
			if !c.Has(id) {
				t.Errorf("%s: %s is missing", tag, id)
			} else if got, want := c.Needs(id), first.Needs(id); !slices.Equal(got, want) {
				t.Errorf("%s: %s has %v filled in, want %v", tag, id, got, want)
			}
		}
		for _, id := range c.IDs() {
			if !first.Has(id) {
				t.Errorf("%s: %s is in no other language", tag, id)
			}
		}
	}
}

// Every rule says what it asks, what its weight is for, and where it is from.
func TestRulesAreTold(t *testing.T) {
	c := speaking("")
	for i := range plan.Rules {
		r := &plan.Rules[i]
		code := string(r.Code)
		if !c.Has("asks."+code) || !c.Has("from."+code) || c.Has("weighs."+code) != (r.Key != "") {
			t.Errorf("%s is not told of as it should be", code)
		}
	}
}

// The table of rules in the documentation has every rule, and of it what the help says.
func TestRulesStandInTheDocumentation(t *testing.T) {
	docs, err := os.ReadFile("../../docs/craft.md")
	if err != nil {
		t.Fatal(err)
	}
	c := speaking("")
	for i := range plan.Rules {
		r := &plan.Rules[i]
		key := "none: said only"
		if r.Key != "" {
			key = "`" + r.Key + "`"
		}
		row := fmt.Sprintf("\n| `%s` | %s | %s | %s |\n", r.Code, c.Text("asks."+string(r.Code)), key, c.Text("from."+string(r.Code)))
		if !strings.Contains(string(docs), row) {
			t.Errorf("docs/craft.md has not the row %s", strings.TrimSpace(row))
		}
	}
}

// What stands at the margin of the summary leaves a space before the text.
func TestLabelsHaveRoom(t *testing.T) {
	for _, tag := range words.Languages() {
		for _, id := range speaking(tag).IDs() {
			if strings.HasPrefix(id, "label.") && id != "label.care" && utf8.RuneCountInString(speaking(tag).Text(id)) >= labelWidth {
				t.Errorf("%s: %s, %q, is too long", tag, id, speaking(tag).Text(id))
			}
		}
	}
}

// Every command, topic and flag has its help in every language, in lines that fit
// a screen, and no help text is there for nothing.
func TestHelpIsWholeInEveryLanguage(t *testing.T) {
	for _, tag := range words.Languages() {
		p := &program{out: newScreen(io.Discard), err: newScreen(io.Discard)}
		p.speak(tag)
		used := map[string]bool{"firstdrop examples": true, "begin next": true, "flags": true}
		for _, c := range append(documented(), p.root().Commands()...) {
			if c.HasParent() && c.Parent().Name() == "completion" {
				continue
			}
			used[c.Name()] = true
			if p.helps[c.Name()].short == "" {
				t.Errorf("%s: no help on %s", tag, c.CommandPath())
			}
		}
		for name := range p.helps {
			if !used[name] {
				t.Errorf("%s: help on %s, which is not there", tag, name)
			}
		}
		for _, c := range p.root().Commands() {
			for _, l := range strings.Split(c.Long, "\n") {
				if n := utf8.RuneCountInString(l); n > plainWidth {
					t.Errorf("%s, %s: a line of %d columns: %s", tag, c.Name(), n, l)
				}
			}
			checkFlags(t, tag, c)
		}
	}
}

// checkFlags wants a text for every flag, and one that fits.
func checkFlags(t *testing.T, tag string, c *cobra.Command) {
	t.Helper()
	if c.Name() == "completion" {
		return
	}
	for l := range strings.Lines(c.LocalFlags().FlagUsages()) {
		l = strings.TrimRight(l, " \n")
		if n := utf8.RuneCountInString(l); n > 110 {
			t.Errorf("%s, %s: %d columns: %s", tag, c.Name(), n, l)
		}
		if len(strings.Fields(l)) < 3 {
			t.Errorf("%s, %s: a flag without a text: %s", tag, c.Name(), l)
		}
	}
}

// The summary of every example fits its screen's width in every language.
func TestSummariesFitInEveryLanguage(t *testing.T) {
	for _, tag := range words.Languages() {
		for _, job := range []string{"bay-window", "two-batches", "tall-room", "imperial", "narrow-strips"} {
			code, out, stderr := called("plan", "../../examples/"+job+".yaml", "--lang", tag)
			if code != exitDone || strings.ContainsAny(out, "{}") {
				t.Errorf("%s, %s: exit code %d\n%s%s", tag, job, code, out, stderr)
			}
			for l := range strings.Lines(out) {
				if n := utf8.RuneCountInString(strings.TrimRight(l, "\n")); n > plainWidth {
					t.Errorf("%s, %s: a line of %d columns: %s", tag, job, n, l)
				}
			}
		}
	}
}

// The language is known before the call is understood.
func TestAsked(t *testing.T) {
	env := func(name string) string { return map[string]string{"LANG": "fr_FR.UTF-8"}[name] }
	for _, tt := range []struct {
		args []string
		want string
	}{
		{nil, "fr_FR.UTF-8"},
		{[]string{"plan", "a.yaml", "--lang", "de"}, "de"},
		{[]string{"--lang=en-us", "plan"}, "en-US"},
		{[]string{"plan", "--lang"}, "fr_FR.UTF-8"},
		{[]string{"plan", "--lang", "klingon"}, "fr_FR.UTF-8"},
		{[]string{"plan", "--", "--lang", "de"}, "fr_FR.UTF-8"},
	} {
		if got := asked(tt.args, env); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.args, got, tt.want)
		}
	}
}
