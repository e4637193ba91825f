package job

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// builder makes a task of a job, and gathers everything that is in the way. A
// part that depends on a faulty one is left alone, so that one mistake gives one
// message.
type builder struct {
	job      *Job
	unread   []string // paths of what could not be read of the document
	problems Problems
	whole    *room.Run // the room as one run; nil when a wall has no shape
	bands    []Band    // what each entry of hang covers
	task     plan.Task
}

// build makes the task. What it made is worth using only without problems.
func (b *builder) build() {
	if b.job.Version != Version {
		b.refuse("firstdrop", "version_other", "version", b.job.Version, "known", Version)
		return
	}
	b.text("name", b.job.Name)
	b.text("note", b.job.Note)
	b.papers()
	if b.isRead("room") {
		b.room()
	}
	if b.isRead("rules") && b.isRead("weights") {
		b.rules()
	}
	if b.isRead("cutting") {
		b.cutting()
	}
	if !b.isRead("papers") || !b.isRead("room") || !b.isRead("hang") {
		return
	}
	b.checkHang()
	if len(b.problems) == 0 {
		b.runs()
	}
}

// build makes the task of a job that a program made, or that was read whole.
func (j *Job) build() *builder {
	b := &builder{job: j}
	b.build()
	return b
}

// isRead reports whether nothing was wrong in reading the part at a path.
func (b *builder) isRead(path string) bool {
	for _, p := range b.unread {
		rest, isWithin := strings.CutPrefix(p, path)
		if isWithin && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return false
		}
	}
	return true
}

func (b *builder) refuse(path, code string, args ...any) {
	b.refuseSaying(path, says(code, args...))
}

func (b *builder) refuseSaying(path string, what message.Message) {
	b.problems = append(b.problems, b.job.source.problem(path, what))
}

// text checks a text that may be empty; the reader has seen it already, but not
// when the job was made by a program.
func (b *builder) text(path, text string) {
	if err := checkText(text); err != nil {
		b.refuse(path, "at", "part", orThis(path), "why", message.Of(err))
	}
}

// name checks a name, which fits on a line and is unlike all seen before.
func (b *builder) name(path, name string, seen map[string]bool) {
	switch {
	case strings.TrimSpace(name) != name || name == "":
		b.refuse(path, "name_empty", "name", strconv.Quote(name))
	case utf8.RuneCountInString(name) > maxName:
		b.refuse(path, "name_long", "most", maxName)
	case strings.ContainsAny(name, "|\n\t"):
		b.refuse(path, "name_line", "name", strconv.Quote(name))
	case checkText(name) != nil:
		b.text(path, name)
	case seen[name]:
		b.refuse(path, "name_taken", "name", strconv.Quote(name))
	}
	seen[name] = true
}

func (b *builder) papers() {
	seen := map[string]bool{}
	if len(b.job.Papers) == 0 && b.isRead("papers") {
		b.refuse("papers", "no_paper")
	}
	for i := range b.job.Papers {
		p, path := &b.job.Papers[i], fmt.Sprintf("papers[%d]", i)
		if !b.isRead(path) {
			continue
		}
		b.name(path+".name", p.Name, seen)
		b.text(path+".batch", p.Batch)
		b.text(path+".picture", p.Picture)
		label, err := p.label(b.job.Units)
		if err != nil {
			b.refuse(path+".match", "at", "part", "match", "why", message.Of(err))
			label.Match = paper.Match{} // the other fields are checked all the same
			if label.Repeat > 0 {
				label.Match.Kind = paper.Straight
			}
		}
		b.measured(path+".measured", p.Measured, &label)
		b.rollNames(path, p.Rolls)
		b.labelErrors(path, label.Check())
		b.task.Papers = append(b.task.Papers, label)
	}
}

// measured has a paper keep to what was measured of its design.
func (b *builder) measured(path string, m *Measured, label *paper.Paper) {
	if m == nil || !b.isRead(path) {
		return
	}
	d, err := (&paper.Measured{Repeat: m.Repeat, Lower: m.Lower}).Design()
	var e *paper.MeasuredError
	if errors.As(err, &e) {
		b.refuseSaying(path+"."+e.Field, e.What)
		return
	}
	d.Match.Reversing = label.Match.Reversing
	label.Printed = &paper.Design{Repeat: label.Repeat, Match: label.Match}
	label.Repeat, label.Match = d.Repeat, d.Match
}

func (b *builder) labelErrors(path string, err error) {
	var all paper.LabelErrors
	if err != nil && !errors.As(err, &all) {
		b.refuseSaying(path, message.Of(err))
	}
	for _, e := range all {
		if e.Fault != paper.NoName && e.Fault != paper.SameName { // seen to by rollNames
			b.refuseSaying(path+"."+e.Field, e.Said())
		}
	}
}

// rollNames checks what is written on the rolls that are there.
func (b *builder) rollNames(path string, rolls []Roll) {
	seen := map[string]bool{}
	for i := range rolls {
		at := fmt.Sprintf("%s.rolls[%d]", path, i)
		b.name(at+".name", rolls[i].Name, seen)
		b.text(at+".batch", rolls[i].Batch)
	}
}

// label returns the paper that the document describes. With an error, that of
// the match, everything else is there.
func (p *Paper) label(unit measure.Unit) (paper.Paper, error) {
	match, repeat, err := paper.ParseMatch(p.Match, p.Repeat, unit)
	if err != nil {
		repeat = p.Repeat
	}
	match.Reversing = p.Reversing
	label := paper.Paper{
		Name: p.Name, Width: p.Width, DryWidth: p.DryWidth, RollLength: p.Roll,
		Repeat: repeat, Across: p.Across, Match: match, Paste: p.Paste, SoakMin: p.SoakMin,
		Pack: 1, Batch: p.Batch, Price: p.Price,
		Tolerance: paper.StandardTolerance(p.Width, p.Roll),
	}
	if p.Pack != nil {
		label.Pack = *p.Pack
	}
	label.Lines = p.Lines
	label.Available, label.Keep, label.InOrder = p.Available, p.Keep, p.InOrder
	p.stock(&label)
	if p.Motif != nil {
		label.Motif = &paper.Motif{Axis: p.Motif.Axis, Head: p.Motif.Head, Tall: p.Motif.Tall}
	}
	if p.Tolerance != nil {
		label.Tolerance = paper.Tolerance{Length: p.Tolerance.Length, Width: p.Tolerance.Width}
	}
	return label, err
}
