package screen

import "encoding/json"

// Plan is a plan ready to be drawn. It passed the audit, or it would not be here.
type Plan struct {
	Runs     []RunPlan      `json:"runs"`
	Papers   []PaperSummary `json:"papers"`
	Findings []Finding      `json:"findings"`
	Lines    []string       `json:"lines"` // what to know first, in words: first line, kill seam, closing
}

// RunPlan is the layout of one run along its band ([Survey.Runs]).
type RunPlan struct {
	Drops  []Drop `json:"drops"` // from left to right
	Seams  []Seam `json:"seams"`
	Plumbs []Line `json:"plumbs"`
	Start  Start  `json:"start"`
	// Design is the place of the repeat that the first drop shows at the datum.
	Design float64 `json:"design"`
	Kill   *Seam   `json:"kill,omitempty"`
	// Settled says that no start, kill seam or height on the grid is better; Untried,
	// why that is not known.
	Settled bool   `json:"settled"`
	Untried string `json:"untried,omitempty"`
}

// Start is where hanging begins.
type Start struct {
	Wall string  `json:"wall"`
	Edge float64 `json:"edge"` // of the first drop's left edge, from the wall's left end
	X    float64 `json:"x"`    // the same along the band
	Text string  `json:"text"`
	// Fixed says that the job fixes it; otherwise the search has found it.
	Fixed bool `json:"fixed"`
}

// Drop is one width of paper as it hangs.
type Drop struct {
	Number   int    `json:"number"` // in hanging order; 0: needs no paper
	Reversed bool   `json:"reversed,omitempty"`
	Parts    []Part `json:"parts"`
	Label    string `json:"label"` // what a screen reader says: number, wall, from–to, length
}

// Part is what one sheet covers of one wall.
type Part struct {
	Wall int `json:"wall"` // index in the band's walls
	// Rings bound what is covered, as it will be trimmed: outer rings and holes, to
	// be filled by the even-odd rule.
	Rings [][]Point `json:"rings"`
	// Tile takes a point of the design (x from the left edge of the width, y
	// downwards from the beginning of the repeat, in millimetres) to the band:
	// X = a·x + c·y + e, Y = b·x + d·y + f, as [a b c d e f].
	Tile [6]float64 `json:"tile"`
}

// Seam is where two sheets meet.
type Seam struct {
	Kind   string  `json:"kind"` // butt, carried, turned, renewed, kill
	Wall   string  `json:"wall"`
	X      float64 `json:"x"` // along the band, at Low
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
	Lean   float64 `json:"lean,omitempty"`   // how far it stands to the right of X at High
	Text   string  `json:"text"`             // where it stands, measured from a named corner
	Misfit string  `json:"misfit,omitempty"` // empty where the design meets
}

// Line is a plumb line to draw on the wall, or one that leans as its sheets are to.
type Line struct {
	Wall string  `json:"wall"`
	X    float64 `json:"x"` // along the band, at Low
	Low  float64 `json:"low"`
	High float64 `json:"high"`
	Lean float64 `json:"lean,omitempty"` // how far it stands to the right of X at High
	Drop int     `json:"drop"`
	Text string  `json:"text"`
}

// PaperSummary is what one paper comes to.
type PaperSummary struct {
	Name    string  `json:"name"`
	Width   float64 `json:"width"`             // of the design's tile
	Repeat  float64 `json:"repeat"`            // 0: none
	Picture string  `json:"picture,omitempty"` // as the job names it
	Drops   int     `json:"drops"`
	Buy     int     `json:"buy"`
	Bound   int     `json:"bound"`
	Proven  bool    `json:"proven"`
	Text    string  `json:"text"` // "7 rolls to buy; fewer are impossible"
	Cost    string  `json:"cost,omitempty"`
}

// Choice is what an entry of a job's hang list must say so that a plan comes out
// again: members to put in place of those that are there, as a job says them.
type Choice struct {
	Hang int                        `json:"hang"`                                                    // index in the list; 0 where a job has none, for its only paper
	Set  map[string]json.RawMessage `json:"set" ts:"{ [K in keyof job.Hang]?: job.Hang[K] | null }"` // members of the entry; null takes one away
}

// Alternative is one of several plans to choose from; the first is the best on
// the whole.
type Alternative struct {
	Title  string   `json:"title"`  // in what it is the best, in words
	Gains  []string `json:"gains"`  // what it saves or does better than the first
	Losses []string `json:"losses"` // what it costs or does worse
	Choose []Choice `json:"choose"`
	Plan   Plan     `json:"plan"`
}

// Why compares what the user proposes with the plan of the job.
type Why struct {
	Text   string   `json:"text"` // the verdict, one sentence
	Gains  []string `json:"gains"`
	Losses []string `json:"losses"`
	Choose []Choice `json:"choose"`
	Plan   Plan     `json:"plan"` // as proposed
}

// PaperTry is the room in one of the papers to compare.
type PaperTry struct {
	Name     string    `json:"name"`
	Problems []Problem `json:"problems,omitempty"`
	Buy      int       `json:"buy"`
	Cost     string    `json:"cost,omitempty"`
	Text     string    `json:"text"`
	Looks    []string  `json:"looks"` // the gravest findings, in words
	Plan     *Plan     `json:"plan,omitempty"`
}
