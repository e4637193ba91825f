package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
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
		Use:   "open JOB --roll NAME --length LENGTH",
		Short: "Write a roll that has been opened into the job",
		Long: `Open writes into the job what one finds on opening a roll: its true length, how
far from its beginning the design first begins, flaws, separate lengths, and its
batch. From then on the plan cuts this very roll. Every other line of a YAML job
stays as it is, with its comments. Write the name on the roll, too.`,
		Example: `  firstdrop open room.yaml --roll A1 --length 10.03m --begins 212mm --batch 17
  firstdrop open room.yaml --paper Ferns --roll A2 --length 9m --flaw 3.2m-3.35m
  firstdrop open room.yaml --roll 3 --part 6.1m@120mm --part 3.9m@40mm`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error { return p.open(c.Context(), args[0], &f) })
	flags := c.Flags()
	flags.StringVar(&f.paper, "paper", "", "which paper, if the job has several")
	flags.StringVar(&f.roll, "roll", "", "what is written on the roll")
	flags.StringVar(&f.batch, "batch", "", "its batch, if not the label's")
	flags.StringVar(&f.length, "length", "", "how much of it can be used")
	flags.StringVar(&f.begins, "begins", "", "from its beginning to where the design first begins")
	flags.StringArrayVar(&f.flaws, "flaw", nil, "a stretch not to be used, `FROM-TO`; as often as needed")
	flags.StringArrayVar(&f.parts, "part", nil, "a separate length, `LENGTH[@BEGINS]`, instead of --length")
	flags.BoolVar(&f.replace, "replace", false, "replace a roll of that name")
	_ = c.RegisterFlagCompletionFunc("paper", cobra.NoFileCompletions)
	return c
}

// open writes a roll into a job's file, and says what that changes.
func (p *program) open(ctx context.Context, name string, f *openFlags) error {
	switch {
	case name == "-":
		return fail(exitUsage, "open changes a job's file, so it needs its name")
	case f.roll == "":
		return fail(exitUsage, "--roll needs the name that is written on the roll")
	case (f.length == "") == (len(f.parts) == 0):
		return fail(exitUsage, "give either --length or, for a roll in separate lengths, --part for each")
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
		return fail(exitUsage, "%w", err)
	}
	text, err := yaml.WithRoll(name, data, f.paper, roll, f.replace)
	switch {
	case errors.Is(err, job.ErrRollThere):
		return fail(exitFile, "%w; give it another name, or add --replace", err)
	case err != nil:
		return jobError(err)
	}
	before, _ := p.plan(ctx, name, unitsFlag{}) // there may be none yet
	after, err := p.planText(ctx, name, text, unitsFlag{})
	if err != nil {
		return fmt.Errorf("with this roll the job cannot be planned, so nothing was written: %w", err)
	}
	if err := rewrite(ctx, name, text); err != nil {
		return err
	}
	_, err = fmt.Fprint(p.out, told(name, f, before, after))
	return written(err)
}

// read turns the flags into a roll.
func (f *openFlags) read(bare measure.Unit) (job.Roll, error) {
	r := job.Roll{Name: f.roll, Batch: f.batch}
	var err error
	length := func(flag, text string) (l measure.Length) {
		var e error
		if l, e = measure.ParseLength(strings.TrimSpace(text), bare); e != nil && err == nil {
			err = fmt.Errorf("--%s: %w", flag, e)
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
			err = fmt.Errorf("--flaw %s: write from where to where, as 3.2m-3.35m", text)
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
		return fileError("cannot write", name, err)
	}
	info, err := os.Stat(real)
	if err != nil {
		return fileError("cannot write", name, err)
	}
	return saveAlone(ctx, name, real, text, info.Mode().Perm())
}

// told says what was written, and how the count of rolls to buy has changed.
func told(name string, f *openFlags, before, after *planned) string {
	i := 0
	for k := range after.plan.Task.Papers {
		if after.plan.Task.Papers[k].Name == f.paper {
			i = k
		}
	}
	paper := printable(after.plan.Task.Papers[i].Name)
	done := "Added"
	if f.replace {
		done = "Put in place"
	}
	text := fmt.Sprintf("%s roll %s of %s: %s\n", done, printable(f.roll), paper, printable(name))
	buy := after.plan.Papers[i].Buy()
	if before != nil && i < len(before.plan.Papers) {
		was := before.plan.Papers[i].Buy()
		text += fmt.Sprintf("To buy before: %s; now: %s.\n", count(was, "roll"), count(buy, "roll"))
	} else {
		text += fmt.Sprintf("To buy now: %s.\n", count(buy, "roll"))
	}
	if !after.cutsFrom(i, f.roll) {
		text += fmt.Sprintf("The plan does not cut from roll %s: look at its batch, its length and its flaws.\n", printable(f.roll))
	}
	if missing := after.missing(i); missing != "" {
		text += "MISSING: " + printable(missing) + "\n"
	}
	return text
}
