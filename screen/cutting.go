package screen

// Cutting is what is cut from which roll, and what to buy.
type Cutting struct {
	Papers []PaperCutting `json:"papers"`
}

// PaperCutting is the cutting of one paper.
type PaperCutting struct {
	Name   string   `json:"name"`
	Rolls  []Roll   `json:"rolls"`
	Order  []string `json:"order"`  // what to buy, in words
	Why    []string `json:"why"`    // why so many: the proof, what exact cutting saves, the area estimate
	Notes  []string `json:"notes"`  // batch, goals, what is on trust
	Counts []Count  `json:"counts"` // the same count by several roads, for a picture
}

// Count is a number of rolls and how it is counted.
type Count struct {
	Label string `json:"label"`
	Rolls int    `json:"rolls"`
	Ours  bool   `json:"ours"` // the one that is planned
}

// Roll is what one roll gives, for one range of starts of its design. Where the
// cutting depends on the start, there is more than one order of cuts.
type Roll struct {
	Number int     `json:"number"`
	Name   string  `json:"name,omitempty"`
	Batch  string  `json:"batch,omitempty"`
	InHand bool    `json:"in_hand,omitempty"`
	Length float64 `json:"length"`
	Orders []Order `json:"orders"`
}

// Order is one order of cuts.
type Order struct {
	When string  `json:"when,omitempty"` // which starts it serves; empty: any
	Cuts []Cut   `json:"cuts"`
	Left float64 `json:"left"` // behind the last cut
	Rest string  `json:"rest"` // the same in words, with what it can still patch
}

// Cut is one cut off a roll.
type Cut struct {
	From   float64 `json:"from"`
	To     float64 `json:"to"`
	Pieces []Piece `json:"pieces"` // one, or narrow ones side by side
	Text   string  `json:"text"`   // as in the cutting list: length, mark to look for, head or foot first
	// Marks are where the design begins anew within the cut; none without a repeat.
	Marks []float64 `json:"marks,omitempty"`
}

// Piece is what a cut gives.
type Piece struct {
	Name   string `json:"name"`
	Drop   int    `json:"drop"`
	Wall   string `json:"wall"`
	Run    string `json:"run"`
	Length string `json:"length"`
}

// Certainty is how sure a number of rolls is.
type Certainty struct {
	Papers []Curve  `json:"papers"`
	Inputs []string `json:"inputs"` // what is simulated, in words, with sources
}

// Curve is the chance of having enough, by number of rolls.
type Curve struct {
	Name    string  `json:"name"`
	Planned int     `json:"planned"`
	Points  []Share `json:"points"`
	Text    string  `json:"text"`
	Refused string  `json:"refused,omitempty"` // why it cannot be said
}

// Share is the share of jobs for which so many rolls are enough.
type Share struct {
	Rolls  int     `json:"rolls"`
	Chance float64 `json:"chance"` // from 0 to 1
}

// Cliff is a change at which the count becomes another.
type Cliff struct {
	Paper string `json:"paper"`
	Rolls int    `json:"rolls"` // more; negative: saved
	Text  string `json:"text"`
}
