package job

import (
	"fmt"

	"firstdrop/finding"
	"firstdrop/plan"
	"firstdrop/room"
)

// Check reports everything in which the job contradicts itself, as [Problems];
// nil when it can be planned. [Read] has called it already.
func (j *Job) Check() error { return j.build().problems.asError() }

// Task returns what is to be planned: each entry of Hang as a run with its
// paper, and the rules with their defaults filled in. The error is [Problems].
func (j *Job) Task() (*plan.Task, error) {
	b := j.build()
	if err := b.problems.asError(); err != nil {
		return nil, err
	}
	return &b.task, nil
}

// Findings returns what is legal but worth a question before anything is bought
// or cut: unlikely sizes on the labels and in the room, and how far a closed
// floor plan is from closing, with the measurement most worth taking again. The
// gravest come first. It is nil for a job that [Job.Check] refuses. Places carry
// no run: they are about the room as a whole.
func (j *Job) Findings() []finding.Finding {
	b := j.build()
	if len(b.problems) > 0 {
		return nil
	}
	return b.findings()
}

func (b *builder) findings() (fs []finding.Finding) {
	for i := range b.task.Papers {
		fs = append(fs, b.task.Papers[i].Findings()...)
	}
	fs = append(fs, b.roomFindings()...)
	finding.Sort(fs)
	return fs
}

// roomFindings asks about the room; with diagonals the floor plan is judged by
// them too.
func (b *builder) roomFindings() []finding.Finding {
	all := b.whole.Findings()
	s := b.survey()
	if s == nil || len(s.Diagonals) == 0 {
		return all
	}
	var fs []finding.Finding
	for _, f := range all {
		switch f.Code {
		case room.CodeMisclosure, room.CodeAngleMisclosure, room.CodePlanUnadjustable:
		default:
			fs = append(fs, f)
		}
	}
	return append(fs, b.whole.SurveyFindings(s)...)
}

// Survey returns the floor plan as measured, with the diagonals; nil for an open
// room, which has nothing to close, and for a job that [Job.Check] refuses.
func (j *Job) Survey() *room.Survey {
	b := j.build()
	if len(b.problems) > 0 {
		return nil
	}
	return b.survey()
}

func (b *builder) survey() *room.Survey {
	if b.whole == nil || !b.whole.Closed {
		return nil
	}
	s := b.whole.Survey()
	for i, d := range b.job.Room.Diagonals {
		path := fmt.Sprintf("room.diagonals[%d]", i)
		reading := room.Diagonal{From: b.cornerOf(b.whole, path+".from", d.From), To: b.cornerOf(b.whole, path+".to", d.To)}
		reading.Length = d.Length
		s.Diagonals = append(s.Diagonals, reading)
	}
	return s
}

// diagonals checks that those of the document can be used.
func (b *builder) diagonals() {
	given := b.job.Room.Diagonals
	if len(given) == 0 {
		return
	}
	s := b.survey()
	if s == nil {
		b.refuse("room.diagonals", "diagonals_open")
		return
	}
	for i, d := range s.Diagonals {
		path := fmt.Sprintf("room.diagonals[%d]", i)
		switch {
		case d.From < 0 || d.To < 0:
		case d.From == d.To:
			b.refuse(path+".to", "diagonal_back", "corner", given[i].From)
		case d.Length <= 0:
			b.refuse(path+".length", "diagonal_length", "length", d.Length)
		}
	}
}
