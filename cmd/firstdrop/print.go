package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"firstdrop/draw"
	"firstdrop/measure"
	"firstdrop/sheet"
)

// printFlags are the flags of `firstdrop print`.
type printFlags struct {
	units   unitsFlag
	to      string
	size    string
	scale   string
	labels  string
	blank   bool
	quiet   bool
	replace bool
}

func (p *program) printCommand() *cobra.Command {
	var f printFlags
	c := p.command(cobra.Command{
		Use: "print JOB [SHEETS...] --to FOLDER|FILE.pdf",
		Example: `  firstdrop print room.yaml --to sheets
  firstdrop print room.yaml hanging --to room.pdf --paper-size A3 --scale 1:20
  firstdrop print room.yaml labels --to labels.pdf --labels 3x7
  firstdrop print --blank --to survey.pdf`,
		Args: f.args,
		ValidArgsFunction: func(_ *cobra.Command, args []string, word string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 0 {
				return completeJobs(nil, args, word)
			}
			return sheetNames(), cobra.ShellCompDirectiveNoFileComp
		},
	}, func(c *cobra.Command, args []string) error {
		set, err := f.set()
		if err != nil {
			return err
		}
		return p.print(c.Context(), args, f, set)
	})
	c.Flags().StringVar(&f.to, "to", "", "")
	c.Flags().StringVar(&f.size, "paper-size", "", "")
	c.Flags().StringVar(&f.scale, "scale", "", "")
	c.Flags().StringVar(&f.labels, "labels", "plain", "")
	c.Flags().BoolVar(&f.blank, "blank", false, "")
	c.Flags().BoolVarP(&f.quiet, "quiet", "q", false, "")
	c.Flags().BoolVar(&f.replace, "replace", false, "")
	return f.units.addTo(c)
}

// sheetNames lists the sheets by name.
func sheetNames() (names []string) {
	for _, k := range sheet.Kinds() {
		names = append(names, string(k))
	}
	return names
}

// args checks the arguments: a job and names of sheets, or none with --blank.
func (f *printFlags) args(c *cobra.Command, args []string) error {
	if f.blank {
		if len(args) > 0 {
			return fail(exitUsage, "print.blank")
		}
		return nil
	}
	if len(args) == 0 {
		return fail(exitUsage, "job.needed", "command", c.CommandPath())
	}
	for _, name := range args[1:] {
		if !slices.Contains(sheetNames(), name) {
			return fail(exitUsage, "print.no-sheet", "sheet", name, "sheets", strings.Join(sheetNames(), ", "))
		}
	}
	return nil
}

// set returns what the flags say of the sheets.
func (f *printFlags) set() (set sheet.Set, err error) {
	if f.to == "" {
		return set, fail(exitUsage, "print.to")
	}
	if f.size != "" {
		format, ok := draw.FormatNamed(f.size)
		if !ok {
			return set, fail(exitUsage, "print.paper-size", "size", f.size)
		}
		set.Format = format
	}
	if f.scale != "" {
		if set.Scale, err = parseScale(f.scale); err != nil {
			return set, err
		}
	}
	grid, ok := sheet.GridNamed(f.labels)
	if !ok {
		return set, fail(exitUsage, "print.labels", "grid", f.labels)
	}
	set.Labels = grid
	return set, nil
}

// parseScale reads "1:20".
func parseScale(text string) (int64, error) {
	one, n, ok := strings.Cut(text, ":")
	scale, err := strconv.ParseInt(n, 10, 64)
	if !ok || one != "1" || err != nil || scale < 1 || scale > 10_000 {
		return 0, fail(exitUsage, "print.scale", "scale", text)
	}
	return scale, nil
}

// simulated is how many jobs the certainty curve of the order sheet stands on: a
// share shows to 3 in 100 at worst.
const simulated = 1000

// print makes the sheets and saves them.
func (p *program) print(ctx context.Context, args []string, f printFlags, set sheet.Set) error {
	set.System, set.Lang = f.units.or(measure.Metric), p.lang
	kinds := []sheet.Kind{sheet.SurveySheet}
	if !f.blank {
		pl, err := p.plan(ctx, args[0], f.units)
		if err != nil {
			return err
		}
		set.Job, set.Plan, set.System, set.Lang, set.Jobs = pl.job.Name, pl.plan, pl.units, pl.lang, simulated
		if set.Repeats, err = pl.pictures(); err != nil {
			return err
		}
		kinds = sheet.Kinds()
		if len(args) > 1 {
			kinds = nil
			for _, name := range args[1:] {
				kinds = append(kinds, sheet.Kind(name))
			}
		}
	}
	bar := newProgress(p.err)
	set.Progress = bar.tell
	files, err := soon(ctx, func() ([]outFile, error) { return sheetFiles(set, kinds, f.to) })
	bar.end()
	if err != nil {
		return tooLarge(err)
	}
	if err := p.savePrint(ctx, f, files); err != nil || f.quiet {
		return err
	}
	if letters := set.Lacking(); letters != "" {
		_, err = fmt.Fprintln(p.out, p.lang.Text("print.lacking", "letters", letters))
	}
	return written(err)
}

// tooLarge marks that something has no room on the paper as a matter of usage.
func tooLarge(err error) error {
	var large *sheet.TooLargeError
	if errors.As(err, &large) {
		return fail(exitUsage, "error.text", "text", err)
	}
	return err
}

// sheetFiles makes the files: one of that name, or one for each sheet.
func sheetFiles(set sheet.Set, kinds []sheet.Kind, to string) ([]outFile, error) {
	if isPDF(to) {
		data, err := pdfOf(set, kinds...)
		return []outFile{{filepath.Base(to), data}}, err
	}
	var files []outFile
	tell := set.Progress
	for i, k := range kinds {
		tell(i, len(kinds))
		set.Progress = nil
		data, err := pdfOf(set, k)
		if err != nil {
			return nil, err
		}
		files = append(files, outFile{string(k) + ".pdf", data})
	}
	return files, nil
}

func pdfOf(set sheet.Set, kinds ...sheet.Kind) ([]byte, error) {
	d, err := set.Document(kinds...)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = d.Write(&b)
	return b.Bytes(), err
}

func isPDF(name string) bool { return strings.EqualFold(filepath.Ext(name), ".pdf") }

// savePrint saves the files and says so.
func (p *program) savePrint(ctx context.Context, f printFlags, files []outFile) error {
	notes := []string{p.lang.Text("file.wrote", "file", f.to)}
	if isPDF(f.to) {
		if err := saveOne(ctx, f.to, files[0].data, f.replace); err != nil {
			return err
		}
	} else {
		// What else stands in the folder is of another command, or a sheet that was
		// not asked for now.
		s, err := saveBeside(ctx, f.to, files, f.replace, func(string) bool { return true })
		if err != nil {
			return err
		}
		notes = s.notes(p.lang)
	}
	if f.quiet {
		return nil
	}
	_, err := fmt.Fprintln(p.out, strings.Join(notes, "\n"))
	return written(err)
}

// saveOne writes a file that is not there yet, or stands there already byte for
// byte.
func saveOne(ctx context.Context, name string, data []byte, replace bool) error {
	old, err := os.ReadFile(name)
	switch {
	case err == nil && bytes.Equal(old, data):
		return nil
	case !errors.Is(err, fs.ErrNotExist) && !replace:
		return fail(exitFile, "file.there", "file", name)
	}
	return saveAlone(ctx, name, name, data, 0)
}
