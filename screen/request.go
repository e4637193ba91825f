package screen

import (
	"encoding/json"

	"firstdrop/plan"
)

// Request asks for one thing about one version of one job.
type Request struct {
	ID      int             `json:"id"`      // given back in the answer
	Version int64           `json:"version"` // of the job as the screen counts it; given back
	Kind    Kind            `json:"kind"`
	Job     json.RawMessage `json:"job,omitempty" ts:"job.Job"` // the job document as JSON
	Words   Words           `json:"words"`

	// What else some kinds are asked with:

	Run    int               `json:"run,omitempty"`                                         // why: which run, counted from 0
	Start  json.RawMessage   `json:"start,omitempty" ts:"NonNullable<job.Hang[\"start\"]>"` // why: "why not from here?", as a job says it
	Kill   json.RawMessage   `json:"kill,omitempty" ts:"NonNullable<job.Hang[\"kill\"]>"`   // why: "why not here?", as a job says it
	Papers []json.RawMessage `json:"papers,omitempty" ts:"job.Paper[]"`                     // papers: those to compare in place of Paper, as a job says them
	Paper  string            `json:"paper,omitempty"`                                       // papers: the name of the job's paper whose place they take
	Jobs   int               `json:"jobs,omitempty"`                                        // certainty: how many are simulated
	Most   int               `json:"most,omitempty"`                                        // alternatives: at most so many
}

// Words says in which words and units texts are wanted.
type Words struct {
	Locale string `json:"locale"` // "en-GB", "en-US", "de", "fr"
	Units  string `json:"units"`  // "metric" or "imperial"
}

// Kind is what is asked for.
type Kind string

// The kinds of requests, and the member of the [Answer] that each fills.
const (
	AskSurvey       Kind = "survey"       // Survey: the room, as far as it makes sense
	AskPlan         Kind = "plan"         // Survey and Plan
	AskAlternatives Kind = "alternatives" // Alternatives
	AskWhy          Kind = "why"          // Why
	AskPapers       Kind = "papers"       // Papers: the room in several papers
	AskCutting      Kind = "cutting"      // Cutting: rolls, cuts, what to buy, why so many
	AskCertainty    Kind = "certainty"    // Certainty
	AskCliffs       Kind = "cliffs"       // Cliffs
	AskDocument     Kind = "document"     // Document: the plan for other programs
)

// Answer is what one request is told. Problems say why a job cannot be planned;
// then only what still makes sense is filled.
type Answer struct {
	ID       int       `json:"id"`
	Version  int64     `json:"version"`
	Kind     Kind      `json:"kind"`
	Problems []Problem `json:"problems,omitempty"`
	Failure  string    `json:"failure,omitempty"` // something that should not happen, in words

	Survey       *Survey       `json:"survey,omitempty"`
	Plan         *Plan         `json:"plan,omitempty"`
	Alternatives []Alternative `json:"alternatives,omitempty"`
	Why          *Why          `json:"why,omitempty"`
	Papers       []PaperTry    `json:"papers,omitempty"`
	Cutting      *Cutting      `json:"cutting,omitempty"`
	Certainty    *Certainty    `json:"certainty,omitempty"`
	Cliffs       []Cliff       `json:"cliffs,omitempty"`
	// Document is what the command line prints with --json.
	Document *plan.Document `json:"document,omitempty" ts:"unknown"`
}

// Problem is one contradiction in a job, at the place in the document where it is.
type Problem struct {
	Path string `json:"path"` // "room.walls[2].width"
	Text string `json:"text"`
}
