package printing

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"firstdrop/draw"
	"firstdrop/draw/svg"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/message"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/screen"
	"firstdrop/sheet"
	"firstdrop/words"
)

// Progress is told before every part of the work how much of it is done.
type Progress func(done, of int)

// AnswerJSON answers a request in JSON with an answer in JSON. Progress may be nil.
func AnswerJSON(request []byte, progress Progress) []byte {
	var r PrintRequest
	if err := json.Unmarshal(request, &r); err != nil {
		return encoded(PrintAnswer{Failure: words.For("").Text("screen.no-request", "why", err.Error())})
	}
	return encoded(Print(r, progress))
}

func encoded(a PrintAnswer) []byte {
	data, err := json.Marshal(a)
	if err != nil {
		return encoded(PrintAnswer{ID: a.ID, Kind: a.Kind, Failure: err.Error()})
	}
	return data
}

// Print answers a request. Whatever it is asked, it does not panic: a mistake of
// the program is told as a failure. Progress may be nil.
func Print(r PrintRequest, progress Progress) (a PrintAnswer) {
	c := r.Words.Catalogue()
	defer func() {
		if mistake := recover(); mistake != nil {
			a = PrintAnswer{ID: r.ID, Kind: r.Kind, Failure: c.Text("screen.mistake", "what", fmt.Sprint(mistake))}
		}
	}()
	p := &printer{request: &r, c: c, progress: progress, answer: PrintAnswer{ID: r.ID, Kind: r.Kind}}
	do, known := map[PrintKind]func(){
		AskRead: p.read, AskYAML: p.yaml, AskSheets: p.sheets, AskWorkbook: p.workbook, AskWall: p.wall,
		AskCuttingList: p.cuttingList, AskRollMap: p.rollMap,
	}[r.Kind]
	if !known {
		p.answer.Failure = c.Text("screen.no-kind", "kind", job.Clip(string(r.Kind)))
		return p.answer
	}
	do()
	return p.answer
}

// printer is one request being answered.
type printer struct {
	request  *PrintRequest
	c        *words.Catalogue
	progress Progress
	answer   PrintAnswer
}

// read answers [AskRead].
func (p *printer) read() {
	document, problems := yaml.Document(p.request.Name, []byte(p.request.Text))
	p.answer.Job = document
	for _, w := range problems {
		p.answer.Problems = append(p.answer.Problems, Fault{Path: w.Path, Line: w.Line, Column: w.Column, Text: p.c.Say(w.What)})
	}
}

// yaml answers [AskYAML].
func (p *printer) yaml() {
	j, err := job.Read("", p.request.Job)
	if err != nil {
		p.faults(err)
		return
	}
	p.file("job.yaml", "application/yaml", func(b *bytes.Buffer) error { return yaml.Write(b, j) })
}

// faults tells the problems of a job.
func (p *printer) faults(err error) {
	var all job.Problems
	if !errors.As(err, &all) {
		p.answer.Failure = err.Error()
	}
	for _, w := range all {
		p.answer.Problems = append(p.answer.Problems, Fault{Path: w.Path, Text: p.c.Say(w.What)})
	}
}

// file makes a file.
func (p *printer) file(name, mediaType string, write func(b *bytes.Buffer) error) {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		p.answer.Failure = err.Error()
		return
	}
	p.answer.File = &File{Name: name, Type: mediaType, Data: b.Bytes()}
}

// planned plans the job; nil, with the reason in the answer, when there is none.
func (p *printer) planned() (*job.Job, *plan.Plan) {
	d := job.ReadDraft(p.request.Job)
	made, problems, failure := screen.Planned(d, p.c)
	p.answer.Failure = failure
	for _, w := range problems {
		p.answer.Problems = append(p.answer.Problems, Fault{Path: w.Path, Text: w.Text})
	}
	return d.Job, made
}

// simulated is how many jobs the certainty curve of the order sheet stands on: a
// share shows to 3 in 100 at worst.
const simulated = 1000

// sheets answers [AskSheets].
func (p *printer) sheets() {
	set, ok := p.set()
	if !ok {
		return
	}
	j, made := p.planned()
	if made == nil {
		return
	}
	set.Job, set.Plan = j.Name, made
	var err error
	if set.Repeats, err = p.repeats(j, made); err != nil {
		p.answer.Failure = p.c.Say(message.Of(err))
		return
	}
	p.file("sheets.pdf", "application/pdf", func(b *bytes.Buffer) error {
		d, err := set.Document(kinds(p.request.Sheets)...)
		if err != nil {
			return err
		}
		return d.Write(b)
	})
}

// set returns what the request says of the sheets.
func (p *printer) set() (set sheet.Set, ok bool) {
	r := p.request
	set = sheet.Set{System: p.c.Units(), Lang: p.c, Jobs: simulated, Scale: r.Scale, Progress: p.progress}
	known := true
	if r.PaperSize != "" {
		set.Format, known = draw.FormatNamed(r.PaperSize)
	}
	grid := r.Labels
	if grid == "" {
		grid = "plain"
	}
	labels, ok := sheet.GridNamed(grid)
	set.Labels = labels
	if !known || !ok || r.Scale < 0 || r.Scale > 10_000 {
		p.answer.Failure = p.c.Text("screen.no-request", "why", fmt.Sprintf("%q, %q, 1:%d", r.PaperSize, r.Labels, r.Scale))
		return set, false
	}
	return set, true
}

// kinds returns the sheets of those names; all for none.
func kinds(names []string) (kinds []sheet.Kind) {
	if len(names) == 0 {
		return sheet.Kinds()
	}
	for _, n := range names {
		kinds = append(kinds, sheet.Kind(n))
	}
	return kinds
}

// workbook answers [AskWorkbook].
func (p *printer) workbook() {
	_, made := p.planned()
	if made == nil {
		return
	}
	p.file("lists.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", func(b *bytes.Buffer) error {
		return sheet.Workbook(b, made, p.c)
	})
}

// wall answers [AskWall].
func (p *printer) wall() {
	j, made := p.planned()
	if made == nil {
		return
	}
	run, wall := p.request.Run, p.request.Wall
	if run < 0 || run >= len(made.Runs) || wall < 0 || wall >= len(made.Runs[run].Layout.Run.Walls) {
		p.answer.Failure = p.c.Text("screen.no-request", "why", fmt.Sprintf("%d, %d", run, wall))
		return
	}
	repeats, err := p.repeats(j, made)
	if err != nil {
		p.answer.Failure = p.c.Say(message.Of(err))
		return
	}
	o := sheet.Options{System: p.c.Units(), Lang: p.c, Repeat: repeats[made.Task.Runs[run].Paper]}
	p.file("wall.svg", "image/svg+xml", func(b *bytes.Buffer) error { return svg.Write(b, sheet.Wall(made, run, wall, o)) })
}

// cuttingList answers [AskCuttingList].
func (p *printer) cuttingList() {
	by := sheet.AsHung
	if p.request.AsCut {
		by = sheet.AsCut
	}
	p.list("cutting-list.csv", func(b *bytes.Buffer, made *plan.Plan, paper int) error {
		return sheet.CuttingList(b, made, paper, by, p.c)
	})
}

// rollMap answers [AskRollMap].
func (p *printer) rollMap() {
	p.list("roll-map.csv", func(b *bytes.Buffer, made *plan.Plan, paper int) error {
		return sheet.RollMap(b, made, paper, p.c)
	})
}

// list makes a list of the paper that is asked for.
func (p *printer) list(name string, write func(b *bytes.Buffer, made *plan.Plan, paper int) error) {
	_, made := p.planned()
	if made == nil {
		return
	}
	i := slices.IndexFunc(made.Task.Papers, func(l paper.Paper) bool { return l.Name == p.request.Paper })
	if i < 0 || made.Papers[i].Batches == nil {
		p.answer.Failure = p.c.Text("screen.no-request", "why", job.Clip(p.request.Paper))
		return
	}
	p.file(name, "text/csv", func(b *bytes.Buffer) error { return write(b, made, i) })
}
