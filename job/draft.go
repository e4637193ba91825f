package job

import (
	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
)

// Draft is what can be made of a document that somebody is still working on.
type Draft struct {
	Job      *Job       // as far as it could be read; nil where the document is no job at all
	Problems Problems   // everything that is wrong; none in a job that can be planned
	Task     *plan.Task // nil with problems
	// Bands say what is papered where. Where that cannot be told, there is one band
	// of all walls whose width makes sense, and those without a shape have no
	// outline.
	Bands []Band
	// Room is the whole room as one run; nil where a wall or a corner of it makes no
	// sense.
	Room     *room.Run
	Survey   *room.Survey      // as [Job.Survey]
	Findings []finding.Finding // as [Job.Findings]
}

// Band is what one entry of a job's hang covers.
type Band struct {
	Hang     int // index of the entry; −1 where it cannot be told
	Run      *room.Run
	Walls    []int   // of each of the run's walls: its index in the room
	Openings [][]int // of each of its openings: the index among the wall's
	Fittings [][]int // of each of its fittings, likewise
}

// ReadDraft reads a document in JSON as far as it makes sense.
func ReadDraft(data []byte) *Draft {
	b, problems := read("", data, jsonOnly)
	d := &Draft{}
	if err := problems.asError(); err != nil {
		d.Problems = err.(Problems)
	}
	if b == nil {
		return d
	}
	d.Job, d.Bands, d.Room = b.job, b.bands, b.whole
	if d.Problems != nil {
		if len(d.Bands) == 0 || len(d.Bands) < len(b.job.hangs()) {
			d.Bands = b.sketch()
		}
		return d
	}
	d.Task, d.Survey, d.Findings = &b.task, b.survey(), b.findings()
	return d
}

// sketch returns one band of all walls.
func (b *builder) sketch() []Band {
	r := &b.job.Room
	s := Band{Hang: -1, Run: &room.Run{Name: "run 1"}}
	for i := range r.Walls {
		if w := &r.Walls[i]; w.Width > 0 && w.Width <= measure.MaxLength {
			s.add(b.job, i)
		}
	}
	s.Run.Closed = r.Closed && len(s.Walls) == len(r.Walls) && len(s.Walls) > 2
	for n, i := range s.Walls {
		if n+1 < len(s.Walls) || s.Run.Closed {
			s.Run.Corners = append(s.Run.Corners, r.corner(i))
		}
	}
	return []Band{s}
}

// add adds wall i of a job's room, with what of it makes sense.
func (s *Band) add(j *Job, i int) {
	b := &builder{job: j}
	w := b.wall(i)
	if w.Outline.Check() != nil {
		w.Outline = nil
	}
	var kept []room.Opening
	var openings []int
	for k, o := range w.Openings {
		if o.Outline.Check() == nil {
			kept, openings = append(kept, o), append(openings, k)
		}
	}
	w.Openings = kept
	s.Run.Walls, s.Walls = append(s.Run.Walls, w), append(s.Walls, i)
	s.Openings, s.Fittings = append(s.Openings, openings), append(s.Fittings, upTo(len(w.Fittings)))
}
