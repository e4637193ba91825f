package printing

import (
	"encoding/json"

	"firstdrop/screen"
)

// PrintRequest asks for one thing to be read or made.
type PrintRequest struct {
	ID    int             `json:"id"` // given back in the answer
	Kind  PrintKind       `json:"kind"`
	Job   json.RawMessage `json:"job,omitempty" ts:"job.Job"` // the job document; all kinds but read
	Words screen.Words    `json:"words"`

	// What else some kinds are asked with:

	Name string `json:"name,omitempty"` // read: of the file
	Text string `json:"text,omitempty"` // read: what stands in it
	// Sheets are those wanted: survey, order, hanging, cutting, rolls, labels, steps,
	// record; none: all.
	Sheets    []string  `json:"sheets,omitempty"`
	PaperSize string    `json:"paper_size,omitempty"` // sheets: A4, A3, letter or tabloid; none: that of the language
	Scale     int64     `json:"scale,omitempty"`      // sheets: n for elevations at 1:n; 0: the largest that fits
	Labels    string    `json:"labels,omitempty"`     // sheets: plain, 3x8, 3x7 or 3x10; none: plain
	Pictures  []Picture `json:"pictures,omitempty"`   // sheets, wall: of the papers' designs
	Run       int       `json:"run,omitempty"`        // wall: which of the plan's runs
	Wall      int       `json:"wall,omitempty"`       // wall: which of the run's walls
	Paper     string    `json:"paper,omitempty"`      // cutting-list, roll-map: of which paper, by its name
	AsCut     bool      `json:"as_cut,omitempty"`     // cutting-list: roll by roll, not in hanging order
}

// Picture is a picture that a job names.
type Picture struct {
	Name string `json:"name"`             // as the job has it
	Data []byte `json:"data" ts:"string"` // PNG, JPEG or GIF, in base64
}

// PrintKind is what is asked for.
type PrintKind string

// The kinds of requests, and the member of the [PrintAnswer] that each fills.
const (
	AskRead     PrintKind = "read"     // Job: a file in YAML or JSON, with the user's own notation, even where Problems are told
	AskYAML     PrintKind = "yaml"     // File: the job for people
	AskSheets   PrintKind = "sheets"   // File: the sheets for the wall, as PDF
	AskWorkbook PrintKind = "workbook" // File: the lists, for spreadsheets
	AskWall     PrintKind = "wall"     // File: one wall, as SVG

	AskCuttingList PrintKind = "cutting-list" // File: the pieces of one paper, as CSV
	AskRollMap     PrintKind = "roll-map"     // File: the cuts of its rolls, as CSV
)

// PrintAnswer is what one request is told. Problems say why a job cannot be
// printed, or what is wrong with one that was read.
type PrintAnswer struct {
	ID       int             `json:"id"`
	Kind     PrintKind       `json:"kind"`
	Problems []Fault         `json:"problems,omitempty"`
	Failure  string          `json:"failure,omitempty"` // why it cannot be done, in words
	Job      json.RawMessage `json:"job,omitempty" ts:"job.Job"`
	File     *File           `json:"file,omitempty"`
}

// Fault is a problem of a job, and where it stands in the file it was read from.
type Fault struct {
	Path   string `json:"path"`           // as of a problem on the screen
	Line   int    `json:"line,omitempty"` // from 1
	Column int    `json:"column,omitempty"`
	Text   string `json:"text"`
}

// File is something to be saved.
type File struct {
	Name string `json:"name"` // "sheets.pdf"
	Type string `json:"type"` // its media type
	Data []byte `json:"data" ts:"string"`
}
