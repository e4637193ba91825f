package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/tell"
)

// openFlags are the flags of `firstdrop open`.
type openFlags struct {
	paper, roll, batch, length, begins string
	flaws, parts                       []string
	replace                            bool
}

func (p *program) openCommand() *cobra.Command {
	var f openFlags
	c := p.command(cobra.Command{
		Use: "open JOB --roll NAME --length LENGTH",
		Example: `  firstdrop open room.yaml --roll A1 --length 10.03m --begins 212mm --batch 17
  firstdrop open room.yaml --paper Ferns --roll A2 --length 9m --flaw 3.2m-3.35m
  firstdrop open room.yaml --roll 3 --part 6.1m@120mm --part 3.9m@40mm`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error { return p.open(c.Context(), args[0], &f) })
	flags := c.Flags()
	flags.StringVar(&f.paper, "paper", "", "")
	flags.StringVar(&f.roll, "roll", "", "")
	flags.StringVar(&f.batch, "batch", "", "")
	flags.StringVar(&f.length, "length", "", "")
	flags.StringVar(&f.begins, "begins", "", "")
	flags.StringArrayVar(&f.flaws, "flaw", nil, "")
	flags.StringArrayVar(&f.parts, "part", nil, "")
	flags.BoolVar(&f.replace, "replace", false, "")
	_ = c.RegisterFlagCompletionFunc("paper", cobra.NoFileCompletions)
	return c
}

// open writes a roll into a job's file, and says what that changes.
func (p *program) open(ctx context.Context, name string, f *openFlags) error {
	switch {
	case name == "-":
		return fail(exitUsage, "open.file")
	case f.roll == "":
		return fail(exitUsage, "open.roll")
	case (f.length == "") == (len(f.parts) == 0):
		return fail(exitUsage, "open.length-or-parts")
	}
	data, err := p.load(name)
	if err != nil {
		return err
	}
	was, err := p.read(ctx, name)
	if err != nil {
		return err
	}
	roll, err := f.read(was.Units)
	if err != nil {
		return fail(exitUsage, "error.text", "text", err)
	}
	text, err := yaml.WithRoll(name, data, f.paper, roll, f.replace)
	switch {
	case errors.Is(err, job.ErrRollThere):
		return fail(exitFile, "open.there", "why", err)
	case err != nil:
		return jobError(err)
	}
	before, _ := p.plan(ctx, name, unitsFlag{}) // there may be none yet
	after, err := p.planText(ctx, name, text, unitsFlag{})
	if err != nil {
		return fail(exitCode(err, true), "open.no-plan", "why", err)
	}
	if err := rewrite(ctx, name, text); err != nil {
		return err
	}
	_, err = fmt.Fprint(p.out, opened(name, f, before, after))
	return written(err)
}

// read turns the flags into a roll.
func (f *openFlags) read(bare measure.Unit) (job.Roll, error) {
	r := job.Roll{Name: f.roll, Batch: f.batch}
	var err error
	length := func(flag, text string) (l measure.Length) {
		var e error
		if l, e = measure.ParseLength(strings.TrimSpace(text), bare); e != nil && err == nil {
			err = fail(exitUsage, "flag.wrong", "flag", "--"+flag, "why", e)
		}
		return l
	}
	begins := func(flag, text string) *measure.Length {
		if text == "" {
			return nil
		}
		l := length(flag, text)
		return &l
	}
	if f.length != "" {
		r.Length = length("length", f.length)
	}
	r.Begins = begins("begins", f.begins)
	for _, text := range f.parts {
		size, at, _ := strings.Cut(text, "@")
		r.Parts = append(r.Parts, job.RollPart{Length: length("part", size), Begins: begins("part", at)})
	}
	for _, text := range f.flaws {
		from, to, ok := cutRange(text, bare)
		if !ok && err == nil {
			err = fail(exitUsage, "open.flaw", "text", text)
		}
		r.Flaws = append(r.Flaws, job.Flaw{From: from, To: to})
	}
	return r, err
}

// cutRange reads two lengths with a dash between them. Inches may hold dashes of
// their own, so every dash is tried; only one way may make sense.
func cutRange(text string, bare measure.Unit) (from, to measure.Length, ok bool) {
	text = strings.ReplaceAll(text, "–", "-")
	for i := range text {
		if text[i] != '-' || i == 0 {
			continue
		}
		a, errA := measure.ParseLength(strings.TrimSpace(text[:i]), bare)
		b, errB := measure.ParseLength(strings.TrimSpace(text[i+1:]), bare)
		if errA != nil || errB != nil || a >= b {
			continue
		}
		if ok {
			return 0, 0, false
		}
		from, to, ok = a, b, true
	}
	return from, to, ok
}

// rewrite replaces a file's text: it is the old one or the new one at every
// moment. A symbolic link goes on pointing where it does.
func rewrite(ctx context.Context, name string, text []byte) error {
	real, err := filepath.EvalSymlinks(name)
	if err != nil {
		return fileError("file.write", name, err)
	}
	info, err := os.Stat(real)
	if err != nil {
		return fileError("file.write", name, err)
	}
	return saveAlone(ctx, name, real, text, info.Mode().Perm())
}

// opened says what was written, and how the count of rolls to buy has changed.
func opened(name string, f *openFlags, before, after *planned) string {
	i := max(0, slices.IndexFunc(after.plan.Task.Papers, func(p paper.Paper) bool { return p.Name == f.paper }))
	id := "open.added"
	if f.replace {
		id = "open.replaced"
	}
	lines := []string{after.text(id, "roll", printable(f.roll), "paper", printable(after.plan.Task.Papers[i].Name), "file", printable(name))}
	buy := tell.Rolled(after.lang, after.plan.Papers[i].Buy())
	if before != nil && i < len(before.plan.Papers) {
		lines = append(lines, after.text("open.buy-before", "before", tell.Rolled(after.lang, before.plan.Papers[i].Buy()), "now", buy))
	} else {
		lines = append(lines, after.text("open.buy", "now", buy))
	}
	if !after.cutsFrom(i, f.roll) {
		lines = append(lines, after.text("open.not-cut", "roll", printable(f.roll)))
	}
	if missing := tell.Missing(after.lang, after.plan, i); missing != "" {
		lines = append(lines, after.text("page.of", "title", after.text("label.missing"), "name", printable(missing)))
	}
	return strings.Join(lines, "\n") + "\n"
}
