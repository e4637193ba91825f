package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

// mostRead is how much of a file is read: more than job.Read accepts, so that it
// is job.Read that refuses.
const mostRead = 16 << 20

// read returns the job of that name; "-" is standard input.
func (p *program) read(ctx context.Context, name string) (*job.Job, error) {
	data, err := soon(ctx, func() ([]byte, error) { return p.load(name) })
	if err != nil {
		return nil, err
	}
	return p.readText(ctx, name, data)
}

// readText returns the job that a text holds.
func (p *program) readText(ctx context.Context, name string, data []byte) (*job.Job, error) {
	shown := name
	if name == "-" {
		shown = p.lang.Text("file.standard-input")
	}
	j, err := soon(ctx, func() (*job.Job, error) { return yaml.Read(shown, data) })
	if err != nil {
		return nil, jobError(err)
	}
	return j, nil
}

func (p *program) load(name string) ([]byte, error) {
	in := p.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, fileError("file.read", name, err)
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, mostRead))
	if err != nil {
		return nil, fileError("file.read", name, err)
	}
	return data, nil
}

// fileError says what could not be done with a file, and why, once.
func fileError(id, name string, err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return fail(exitFile, id, "file", name, "why", err)
}

// jobError marks an error as the job's, unless it is marked already.
func jobError(err error) error {
	var f *failure
	if errors.As(err, &f) || errors.Is(err, context.Canceled) {
		return err
	}
	return &failure{code: exitJob, err: err}
}

// planned is a job with its plan, which has passed the audit.
type planned struct {
	name  string // of the file, as it was given
	job   *job.Job
	plan  *plan.Plan
	units measure.System // what lengths are shown in
	lang  *words.Catalogue
	// byLabel says of each paper what would be bought if its label were right, where it is
	// not; 0: nothing is known.
	byLabel []int
}

// plan reads, plans and audits a job. Without error there is a plan that may be
// shown.
func (p *program) plan(ctx context.Context, name string, units unitsFlag) (*planned, error) {
	data, err := soon(ctx, func() ([]byte, error) { return p.load(name) })
	if err != nil {
		return nil, err
	}
	return p.planText(ctx, name, data, units)
}

// planText does the same for a text that need not be in its file yet.
func (p *program) planText(ctx context.Context, name string, data []byte, units unitsFlag) (*planned, error) {
	j, err := p.readText(ctx, name, data)
	if err != nil {
		return nil, err
	}
	return p.planJob(ctx, name, j, units)
}

// planJob plans and audits a job that has been read from a file of that name.
func (p *program) planJob(ctx context.Context, name string, j *job.Job, units unitsFlag) (*planned, error) {
	task, err := j.Task()
	if err != nil {
		return nil, jobError(err)
	}
	made, err := soon(ctx, func() (*plan.Plan, error) { return p.make(task) })
	if err != nil {
		return nil, p.unplannable(j, err, units.or(j.Units.System()))
	}
	wrong, err := soon(ctx, func() ([]audit.Violation, error) { return audit.Plan(made), nil })
	if err != nil {
		return nil, err
	}
	if len(wrong) > 0 {
		return nil, untrue(wrong)
	}
	made.Findings = append(j.Findings(), made.Findings...)
	finding.Sort(made.Findings)
	shown := units.or(j.Units.System())
	return &planned{name: name, job: j, plan: made, units: shown, lang: p.lang.In(shown)}, nil
}

// unplannable says why a sound job has no plan, and what in it looks like a
// slip: a height of 24 m is allowed, but then no roll is long enough.
func (p *program) unplannable(j *job.Job, err error, units measure.System) error {
	err = jobError(err)
	if exitCode(err, true) != exitJob {
		return err
	}
	c := p.lang.In(units)
	text := told(c, err)
	var piece *plan.PieceError
	if errors.As(err, &piece) {
		text = tooLong(c, piece)
	}
	for _, k := range tell.Kinds(j.Findings()) {
		if k.First.Severity == finding.Serious {
			text += "\n" + c.Text("error.look-first", "finding", k.Words(c))
		}
	}
	return fail(exitJob, "error.text", "text", text)
}

// tooLong says in the hanger's words that a piece cannot be cut from its roll.
func tooLong(c *words.Catalogue, e *plan.PieceError) string {
	id := "piece.too-long"
	if e.Length <= e.Roll {
		id = "piece.not-sure"
	}
	return c.Text(id, "piece", e.Piece, "wall", c.Name(e.Wall), "need", e.Length, "paper", e.Paper, "roll", e.Roll)
}

// untrue reports a plan that did not pass its audit: a fault of the program.
func untrue(wrong []audit.Violation) error {
	var rules []string
	count := map[string]int{}
	for _, v := range wrong {
		rule := string(v.Rule)
		if count[rule]++; count[rule] == 1 {
			rules = append(rules, rule)
		}
	}
	slices.Sort(rules)
	for i, r := range rules {
		rules[i] = fmt.Sprintf("%s (%d)", r, count[r])
	}
	return fail(exitInternal, "error.untrue", "rules", strings.Join(rules, ", "), "first", fmt.Sprint(wrong[0]))
}
