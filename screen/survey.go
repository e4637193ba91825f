package screen

// Point is x and y in millimetres.
type Point [2]float64

// Survey is the room as measured: every run unrolled, and the floor seen from above.
type Survey struct {
	Runs     []Band    `json:"runs"`
	Floor    Floor     `json:"floor"`
	Findings []Finding `json:"findings"` // questions about sizes, before anything is planned
}

// Floor is the floor plan, adjusted so that it closes where the room is closed.
type Floor struct {
	Closed bool   `json:"closed"`
	Walls  []Edge `json:"walls"` // in the order of the job
}

// Edge is one wall seen from above, from its left end to its right end as one
// faces it from inside the room. y runs away from the reader.
type Edge struct {
	Wall string `json:"wall"`
	From Point  `json:"from"`
	To   Point  `json:"to"`
	// Width is in words; Sight is the job's word for who sees the wall.
	Width string `json:"width"`
	Sight string `json:"sight,omitempty"`
}

// Band is one run of walls, unrolled from left to right.
type Band struct {
	Name   string  `json:"name"`
	Hang   int     `json:"hang"` // its entry in the job's hang; −1 where it cannot be told
	Paper  string  `json:"paper"`
	Closed bool    `json:"closed"`
	Width  float64 `json:"width"`
	Low    float64 `json:"low"`  // lowest point of all walls
	High   float64 `json:"high"` // highest
	Walls  []Wall  `json:"walls"`
}

// Wall is one wall of a band.
type Wall struct {
	Name     string    `json:"name"`
	Index    int       `json:"index"` // in the job's room.walls
	X        float64   `json:"x"`     // of its left end along the band
	Width    float64   `json:"width"`
	Outline  []Point   `json:"outline"` // along the band
	Openings []Opening `json:"openings,omitempty"`
	Fittings []Fitting `json:"fittings,omitempty"`
	Corner   *Corner   `json:"corner,omitempty"` // at its right end; nil at the end of an open run
	Sizes    string    `json:"sizes"`            // "4200 × 2440 mm"
	KeepOff  []Stretch `json:"keep_off,omitempty"`
}

// Stretch is a part of a wall on which the job lets no seam stand.
type Stretch struct {
	Index int     `json:"index"` // in the keep_off of the band's entry of hang
	From  float64 `json:"from"`  // along the band
	To    float64 `json:"to"`
	Label string  `json:"label"` // from where to where on the wall, in words
}

// Opening is a door, a window, or anything else that keeps paper off the wall.
type Opening struct {
	Index   int     `json:"index"` // in the job's openings of the wall
	Name    string  `json:"name"`
	Kind    string  `json:"kind"` // as in the job
	Outline []Point `json:"outline"`
	Label   string  `json:"label"` // name and sizes, in words
}

// Fitting is a thing that is papered round or under.
type Fitting struct {
	Index int    `json:"index"`
	Name  string `json:"name"`
	Kind  string `json:"kind"`
	At    Point  `json:"at"` // its middle
	Size  Point  `json:"size"`
	Label string `json:"label"`
}

// Corner is the fold between two walls.
type Corner struct {
	Name  string  `json:"name"`  // "A|B"
	Kind  string  `json:"kind"`  // "inside" or "outside"
	Angle float64 `json:"angle"` // degrees through the room; 90 or 270 where not measured
	// Lean of the wall's right end and of the next wall's left end: how far the head
	// stands to the right of the foot.
	Lean [2]float64 `json:"lean"`
	Text string     `json:"text,omitempty"` // "leans 6 mm to the right"; empty when plumb
}

// Finding is something people must know.
type Finding struct {
	Number   int    `json:"number"` // as on the drawings and sheets; 0 for one without a place
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Text     string `json:"text"`
	Place    string `json:"place,omitempty"`  // in words
	Rule     string `json:"rule,omitempty"`   // what the rule behind it asks, in words
	Source   string `json:"source,omitempty"` // where the rule comes from
	Run      int    `json:"run"`              // index of the band; −1: about the whole room
	At       *Point `json:"at,omitempty"`     // along the band
	Path     string `json:"path,omitempty"`   // of what was measured, in the document
}
