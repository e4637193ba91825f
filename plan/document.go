package plan

import (
	"encoding/json"
	"fmt"
	"strconv"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// DocumentVersion is the version of the plan document.
const DocumentVersion = 1

// Document is a plan for other programs: everything a [Plan] decides, by name
// instead of index. Every length is a number of millimetres with up to six
// decimals, which is exact. Positions on a wall count from its left end and
// from the datum.
type Document struct {
	Version  int               `json:"firstdrop_plan"`
	Unit     string            `json:"unit"` // always "mm"
	Job      string            `json:"job,omitempty"`
	Summary  Summary           `json:"summary"`
	Runs     []RunDocument     `json:"runs"`
	Papers   []PaperDocument   `json:"papers"`
	Findings []finding.Finding `json:"findings"`
}

// Summary is what one wants to know first.
type Summary struct {
	Papers []PaperSummary `json:"papers"`
	Runs   []RunSummary   `json:"runs"`
}

// PaperSummary is what one paper comes to.
type PaperSummary struct {
	Name              string      `json:"name"`
	Drops             int         `json:"drops"`
	Pieces            int         `json:"pieces"`
	Rolls             int         `json:"rolls"` // that are cut, those in hand included
	Buy               int         `json:"buy"`   // rolls to be bought
	LowerBound        int         `json:"lower_bound"`
	Proven            bool        `json:"proven"`
	Missing           int         `json:"missing,omitempty"` // pieces for which there is no paper
	Order             []OrderLine `json:"order"`
	AreaSquareMetres  json.Number `json:"area_m2"`
	AreaEstimateRolls int         `json:"area_estimate_rolls"`
	// ShortRolls: see [PaperPlan.ShortRolls].
	ShortRolls int `json:"rolls_if_shortest"`
	// InOrderRolls, FullDropRolls: see [PaperPlan].
	InOrderRolls  int `json:"rolls_in_hanging_order"`
	FullDropRolls int `json:"rolls_by_full_drops"`
	SavedBySide   int `json:"saved_side_by_side,omitempty"`
}

// OrderLine is what to buy of one size of roll.
type OrderLine struct {
	RollLength measure.Length `json:"roll"`
	Rolls      int            `json:"rolls"`
	Kept       int            `json:"kept,omitempty"` // bought beside, to stay unopened
	PerPack    int            `json:"rolls_per_pack"`
	Packs      int            `json:"packs"`
	Spare      int            `json:"spare"`
}

// RunSummary says how to begin one run.
type RunSummary struct {
	Name      string         `json:"name"`
	Paper     string         `json:"paper"`
	FirstLine *PlumbDocument `json:"first_line,omitempty"`
	Kill      *SeamDocument  `json:"kill_seam,omitempty"`
	Tried     int            `json:"layouts_tried"`
	// Settled: no choice on the grid is better. Untried tells what was neither tried nor
	// ruled out: see [Untried].
	Settled bool      `json:"settled"`
	Untried []Untried `json:"untried,omitempty"`
	// Ways and Searched are of the ways to set the walls: see [RunPlan].
	Ways     int            `json:"ways_to_set_walls"`
	Searched int            `json:"ways_searched"`
	Gain     int64          `json:"ways_gain_at_most,omitempty"`
	Design   measure.Length `json:"design_at_datum"`
	// Closing tells how the run closes; nil for one with two ends, or in a paper
	// without a design.
	Closing *ClosingDocument `json:"closing,omitempty"`
}

// ClosingDocument is how a run that goes all the way round will close.
type ClosingDocument struct {
	Place   finding.Place  `json:"place"`
	Height  measure.Length `json:"height"`
	Across  Stretch        `json:"misfit_across"`
	Along   measure.Length `json:"misfit_along"`
	Weight  int64          `json:"weight"`
	Corners int            `json:"corners_that_can_give"`
	Spread  measure.Length `json:"more_round_each_to_meet_across"`
	Turns   []TurnDocument `json:"if_each_takes_more,omitempty"`
	Least   finding.Place  `json:"seen_least_at"`
}

// TurnDocument is the misfit when each corner takes so much more paper.
type TurnDocument struct {
	More   measure.Length `json:"more"`
	Across measure.Length `json:"misfit_across"`
	Along  measure.Length `json:"misfit_along"`
}

// RunDocument is the layout of one run.
type RunDocument struct {
	Name   string   `json:"name"`
	Paper  string   `json:"paper"`
	Closed bool     `json:"closed"`
	Walls  []string `json:"walls"`
	// Set tells what the drops of each wall are set to; nil where all are plumb.
	// Places on a wall out of plumb are meant at the foot of its left corner.
	Set []SetDocument `json:"set_to,omitempty"`
	// Panels tells how the run is divided; nil where drops are as wide as the paper.
	Panels *PanelsDocument `json:"equal_panels,omitempty"`
	Drops  []DropDocument  `json:"drops"`
	Seams  []SeamDocument  `json:"seams"`
	Plumbs []PlumbDocument `json:"plumb_lines"`
	// Wet tells what the growth of soaked paper comes to; nil for paper that does not grow.
	Wet    []WetDocument   `json:"growth,omitempty"`
	Pieces []PieceDocument `json:"pieces"`
}

// PanelsDocument is into how many panels of what width a run is divided, and what is cut
// off either edge of the paper for it.
type PanelsDocument struct {
	Count int            `json:"count"`
	Width measure.Length `json:"width"`
	Trim  measure.Length `json:"off_either_edge"`
}

// SetDocument is what the drops of one wall are set to, and what runs off by it.
type SetDocument struct {
	Wall    string         `json:"wall"`
	To      hanging.SetTo  `json:"to"`
	Opening string         `json:"opening,omitempty"` // whose casing
	Side    *hanging.Side  `json:"side,omitempty"`    // of the casing
	Design  hanging.Meets  `json:"design"`            // where its height comes from
	Lean    measure.Length `json:"off_plumb"`         // head of an edge to the right of its foot, over the wall's height
	Rise    measure.Length `json:"off_level"`         // rise of a row to the right, over the wall's width
	Lift    measure.Length `json:"lift"`              // of the design at the wall's left end
	// Ceiling is how far the ceiling rises off a row, over the wall's width; nil
	// where it is no straight line.
	Ceiling *measure.Length `json:"off_ceiling,omitempty"`
}

// Stretch is an interval as a pair.
type Stretch [2]measure.Length

// DropDocument is one drop.
type DropDocument struct {
	Number   int  `json:"number"` // hanging order; 0: needs no paper
	Index    int  `json:"index"`  // from drop 0, to the right
	Reversed bool `json:"reversed,omitempty"`
	// Higher is by how much it is hung higher than the heights here say, by a ceiling out
	// of level.
	Higher measure.Length `json:"hang_higher_by,omitempty"`
	Parts  []PartDocument `json:"parts"`
}

// PartDocument is one part of a drop.
type PartDocument struct {
	Wall   string         `json:"wall"`
	X      Stretch        `json:"x"`
	Across Stretch        `json:"across"`
	Joined bool           `json:"joined,omitempty"`
	Skew   measure.Length `json:"skew,omitempty"`
}

// SeamDocument is one seam.
type SeamDocument struct {
	Kind     hanging.SeamKind `json:"kind"`
	Wall     string           `json:"wall"`
	X        measure.Length   `json:"x"`
	InCorner bool             `json:"in_corner,omitempty"`
	Left     int              `json:"left_drop"`  // number of the drop on the left
	Right    int              `json:"right_drop"` // number of the drop on the right
	Across   Stretch          `json:"misfit_across"`
	Along    measure.Length   `json:"misfit_along"`
	// Dry is where a seam on a wall would stand if the paper did not grow when wet.
	Dry *measure.Length `json:"x_dry,omitempty"`
}

// WetDocument is by how much the seams of a wall, as hung, stand off those set out with
// dry paper from its plumb line: at either end of the wall, as far as it adds up.
type WetDocument struct {
	Wall  string         `json:"wall"`
	Line  measure.Length `json:"from_line_at"`
	Left  measure.Length `json:"off_at_left_end"`
	Right measure.Length `json:"off_at_right_end"`
}

// PlumbDocument is one plumb line.
type PlumbDocument struct {
	Wall     string         `json:"wall"`
	X        measure.Length `json:"x"`
	Drop     int            `json:"drop"`
	Edge     hanging.Side   `json:"edge"`     // the edge of the paper set to the line
	From     hanging.Side   `json:"from"`     // the end of the wall it is measured from
	Distance measure.Length `json:"distance"` // from there
	// Beyond is how far that edge stands beyond the line, where it stands on no wall.
	Beyond measure.Length `json:"edge_beyond,omitempty"`
}

// PieceDocument is one piece to cut.
type PieceDocument struct {
	Name   string         `json:"name"`
	Drop   int            `json:"drop"`
	Wall   string         `json:"wall"`
	Length measure.Length `json:"length"`
	Phase  measure.Length `json:"phase"` // design phase at the leading end
	Y      Stretch        `json:"y"`     // what it covers, lowest to highest
	Across Stretch        `json:"across"`
	Return string         `json:"return,omitempty"` // "left reveal of window"
}

// PaperDocument is the cutting of one paper, batch by batch.
type PaperDocument struct {
	Name    string          `json:"name"`
	Repeat  measure.Length  `json:"repeat"`
	Batches []BatchDocument `json:"batches"`
}

// BatchDocument is the cutting of the rolls of one batch.
type BatchDocument struct {
	Batch   string         `json:"batch,omitempty"`
	Rolls   []RollDocument `json:"rolls"`
	Missing []GiveDocument `json:"missing,omitempty"` // pieces for which there is no paper
	Goals   []GoalDocument `json:"goals,omitempty"`
	Proof   ProofDocument  `json:"proof"`
}

// RollDocument is what one roll gives.
type RollDocument struct {
	Roll   int            `json:"roll"`           // from 1, over all batches of the paper
	Name   string         `json:"name,omitempty"` // what is written on a roll that is there
	InHand bool           `json:"in_hand,omitempty"`
	Length measure.Length `json:"length"`
	Left   measure.Length `json:"left"` // behind the last cut, at the worst start
	// Of a roll that is there: stretches not to be used, and where its separate
	// lengths begin, but for the first.
	Flaws  []Stretch        `json:"flaws,omitempty"`
	Parts  []measure.Length `json:"parts_begin,omitempty"`
	Orders []OrderDocument  `json:"orders"`
}

// OrderDocument is a cutting order and the start phases it serves.
type OrderDocument struct {
	After measure.Length `json:"start_after"`
	UpTo  measure.Length `json:"start_up_to"`
	At    measure.Length `json:"start_at"`
	Cuts  []CutDocument  `json:"cuts"`
}

// CutDocument is one cut and what it gives: a piece, or narrow pieces side by
// side, from left to right.
type CutDocument struct {
	From  measure.Length `json:"from"`
	To    measure.Length `json:"to"`
	Phase measure.Length `json:"phase"`          // of the design at From
	Mark  string         `json:"mark,omitempty"` // the same in words, where the document speaks a language
	Gives []GiveDocument `json:"gives"`
}

// GiveDocument names a piece.
type GiveDocument struct {
	Run    string         `json:"run"`
	Piece  string         `json:"piece"`
	Wall   string         `json:"wall"`
	Offset measure.Length `json:"offset,omitempty"` // from the cut's leading end to the piece's
}

// GoalDocument says how far something wanted beyond the fewest rolls is reached.
// Lengths are in millimetres.
type GoalDocument struct {
	Goal   cutting.Goal `json:"goal"`
	Value  json.Number  `json:"value"`
	Bound  json.Number  `json:"bound"`
	Proven bool         `json:"proven"`
}

// ProofDocument shows why fewer rolls are impossible: no roll can carry pieces
// whose weights come to more than Capacity.
type ProofDocument struct {
	LowerBound int     `json:"lower_bound"`
	Reason     string  `json:"reason"`
	Weights    []int64 `json:"weights"` // per piece that is cut
	Capacity   int64   `json:"capacity"`
	// Start is a phase at its beginning with which a roll carries no more; with
	// AllStarts none does by itself, but what fits from every start.
	Start     measure.Length `json:"start"`
	AllStarts bool           `json:"all_starts,omitempty"`
	Excluded  int            `json:"excluded_by_search,omitempty"` // rolls beyond what the weights prove
	// With several kinds of roll there is a capacity for each, and a cost that
	// they prove, in the smallest unit of the prices or in packs if there are none.
	Kinds []CapacityDocument `json:"kinds,omitempty"`
	Cost  int64              `json:"cost,omitempty"`
	// Of goods in hanging order: pieces, from 0, no two of which lie on one roll,
	// or with several kinds of roll the least cost.
	Breaks  []int `json:"breaks,omitempty"`
	InOrder int64 `json:"cost_in_order,omitempty"`

	Changes *ChangesDocument `json:"changes,omitempty"`
}

// CapacityDocument says what one kind of roll can carry at most.
type CapacityDocument struct {
	Length   measure.Length `json:"length"`
	InHand   bool           `json:"in_hand,omitempty"`
	Capacity int64          `json:"capacity"`
	Start    measure.Length `json:"start"`
}

// ChangesDocument shows why there must be so many changes of roll: with a price
// on each piece that is cut, and one on each stretch that a roll is hung in one
// go, no roll can earn more than Earned; the one with the left-over, if that is
// wanted more, no more than ShortEarned. What all pieces earn then needs that
// many stretches, one more than the changes.
type ChangesDocument struct {
	Changes     int64   `json:"changes"` // a bound beyond that comes from a complete search
	Prices      []int64 `json:"prices"`  // per piece that is cut
	Stretch     int64   `json:"stretch"`
	Earned      int64   `json:"earned"`
	ShortEarned *int64  `json:"short_earned,omitempty"`
}

// Document writes the plan down. job is the job's name.
func (p *Plan) Document(job string) *Document {
	d := &Document{Version: DocumentVersion, Unit: "mm", Job: job, Findings: p.Findings}
	if d.Findings == nil {
		d.Findings = []finding.Finding{}
	}
	for i := range p.Runs {
		d.addRun(p, i)
	}
	for i := range p.Papers {
		if len(p.Papers[i].Batches) > 0 {
			d.addPaper(p, i)
		}
	}
	return d
}

func stretch(i geom.Interval) Stretch { return Stretch{i.Lo, i.Hi} }

func (d *Document) addRun(p *Plan, i int) {
	l := p.Runs[i].Layout
	run := l.Run
	r := RunDocument{Name: run.Name, Paper: l.Paper.Name, Closed: run.Closed}
	for w := range run.Walls {
		r.Walls = append(r.Walls, run.Walls[w].Name)
	}
	for w := range l.Turns {
		r.Set = append(r.Set, setDocument(l, w))
	}
	if trim := p.PanelTrim(i); trim > 0 {
		r.Panels = &PanelsDocument{len(l.Drops), l.Paper.Width, trim}
	}
	for k := range l.Drops {
		d := dropDocument(l, &l.Drops[k])
		if l.Lifts != nil {
			d.Higher = l.Lifts[k]
		}
		r.Drops = append(r.Drops, d)
	}
	for _, s := range l.Seams {
		r.Seams = append(r.Seams, seamDocument(l, s))
	}
	r.addDry(l)
	for _, w := range WetWalls(l) {
		r.Wet = append(r.Wet, WetDocument{run.Walls[w.Wall].Name, w.Line, w.Left.X - w.Left.Dry, w.Right.X - w.Right.Dry})
	}
	for _, b := range l.Plumbs {
		r.Plumbs = append(r.Plumbs, plumbDocument(l, b))
	}
	for k := range l.Pieces {
		r.Pieces = append(r.Pieces, pieceDocument(l, &l.Pieces[k]))
	}
	d.Runs = append(d.Runs, r)
	s := RunSummary{Name: r.Name, Paper: r.Paper, Tried: p.Runs[i].Tried, Design: l.Choice.Design}
	s.Settled, s.Untried, s.Ways, s.Searched, s.Gain = p.Runs[i].Settled(), p.Runs[i].Untried, p.Runs[i].Ways, p.Runs[i].Searched, p.Runs[i].Gain
	if len(r.Plumbs) > 0 {
		s.FirstLine = &r.Plumbs[0]
	}
	if n := len(r.Seams); n > 0 && r.Seams[n-1].Kind == hanging.KillSeam {
		s.Kill = &r.Seams[n-1]
	}
	if c, ok := p.Closing(i); ok {
		s.Closing = closingDocument(c)
	}
	d.Summary.Runs = append(d.Summary.Runs, s)
}

func setDocument(l *hanging.Layout, w int) SetDocument {
	wall, s, t := &l.Run.Walls[w], l.Choice.Set[w], l.Turns[w]
	d := SetDocument{Wall: wall.Name, To: s.To, Design: s.Meets, Lean: t.Lean, Rise: t.Rise, Lift: t.Lift}
	if s.To == hanging.ToCasing {
		d.Opening, d.Side = wall.Openings[s.Opening].Name, &s.Side
	}
	if left, right, ok := wall.Ceiling(); ok {
		off := right - left - t.Rise
		d.Ceiling = &off
	}
	return d
}

func closingDocument(c Closing) *ClosingDocument {
	d := &ClosingDocument{
		Place: c.Place, Height: c.Height, Across: stretch(c.Across), Along: c.Along, Weight: c.Weight,
		Corners: c.Corners, Spread: c.Spread, Least: c.Least,
	}
	for _, t := range c.Turns {
		d.Turns = append(d.Turns, TurnDocument(t))
	}
	return d
}

// addDry adds where seams would stand dry.
func (r *RunDocument) addDry(l *hanging.Layout) {
	for _, dry := range DrySeams(l) {
		for k := range r.Seams {
			if l.Seams[k].Wall == dry.Wall && l.Seams[k].X == dry.X && !l.Seams[k].InCorner {
				r.Seams[k].Dry = &dry.Dry
			}
		}
	}
}

func dropDocument(l *hanging.Layout, d *hanging.Drop) DropDocument {
	out := DropDocument{Number: d.Number, Index: d.Index, Reversed: d.Reversed}
	for _, p := range d.Parts {
		out.Parts = append(out.Parts, PartDocument{
			Wall: l.Run.Walls[p.Wall].Name, X: stretch(p.X), Across: stretch(p.Across), Joined: p.Joined, Skew: p.Skew,
		})
	}
	return out
}

func seamDocument(l *hanging.Layout, s hanging.Seam) SeamDocument {
	return SeamDocument{
		Kind: s.Kind, Wall: l.Run.Walls[s.Wall].Name, X: s.X, InCorner: s.InCorner,
		Left: l.Drops[s.Left].Number, Right: l.Drops[s.Right].Number, Across: stretch(s.Across), Along: s.Along,
	}
}

func plumbDocument(l *hanging.Layout, b hanging.Plumb) PlumbDocument {
	w := &l.Run.Walls[b.Wall]
	d := PlumbDocument{Wall: w.Name, X: b.X, Drop: l.Drops[b.Drop].Number, Edge: b.Edge, From: b.From, Distance: b.X, Beyond: b.Beyond}
	if b.From == hanging.Right {
		d.Distance = w.Width - b.X
	}
	return d
}

func pieceDocument(l *hanging.Layout, p *hanging.Piece) PieceDocument {
	d := PieceDocument{
		Name: p.Name, Drop: l.Drops[p.Drop].Number, Wall: l.Run.Walls[l.PieceWall(p)].Name,
		Length: p.Length, Phase: p.Phase, Y: stretch(p.Y), Across: stretch(p.Across),
	}
	if r := p.Return; r != nil {
		d.Return = fmt.Sprintf("%v of %s", r.Side, l.Run.Walls[r.Wall].Openings[r.Opening].Name)
	}
	return d
}

func (d *Document) addPaper(p *Plan, i int) {
	label, pp := &p.Task.Papers[i], &p.Papers[i]
	d.Summary.Papers = append(d.Summary.Papers, paperSummary(label, pp))
	out := PaperDocument{Name: label.Name, Repeat: label.Repeat}
	roll := 0
	for k := range pp.Batches {
		out.Batches = append(out.Batches, p.batchDocument(label, &pp.Batches[k], roll))
		roll += len(pp.Batches[k].Cutting.Rolls)
	}
	d.Papers = append(d.Papers, out)
}

func paperSummary(label *paper.Paper, pp *PaperPlan) PaperSummary {
	s := PaperSummary{
		Name: label.Name, Drops: pp.Drops, Pieces: pp.Pieces(), Rolls: pp.Rolls(), Buy: pp.Buy(),
		LowerBound: pp.LowerBound(), Proven: pp.Proven(), Missing: pp.Missing(), Order: []OrderLine{},
		AreaSquareMetres: squareMetres(pp.Net), AreaEstimateRolls: pp.AreaRolls, ShortRolls: pp.ShortRolls,
		InOrderRolls: pp.InOrderRolls, FullDropRolls: pp.FullDropRolls, SavedBySide: pp.SavedBySide(),
	}
	for _, line := range pp.Orders {
		s.Order = append(s.Order, OrderLine{line.RollLength, line.Rolls, line.Kept, line.PerPack, line.Packs, line.Spare})
	}
	return s
}

func (p *Plan) batchDocument(label *paper.Paper, b *BatchPlan, before int) BatchDocument {
	sol := b.Cutting
	d := BatchDocument{Batch: b.Batch, Rolls: []RollDocument{}, Proof: proofDocument(sol)}
	left := sol.Leftovers()
	for k, r := range sol.Rolls {
		roll := RollDocument{Roll: before + k + 1, Length: b.RollLength(label, k), Left: left[k]}
		if at, ok := b.InHand(k); ok {
			roll.found(&label.Rolls[at])
		}
		for _, o := range r.Orders {
			roll.Orders = append(roll.Orders, p.orderDocument(b, o))
		}
		d.Rolls = append(d.Rolls, roll)
	}
	for _, piece := range sol.Missing {
		d.Missing = append(d.Missing, p.gives(b.Cuts[piece])...)
	}
	for _, g := range sol.Goals {
		d.Goals = append(d.Goals, goalDocument(g))
	}
	return d
}

func proofDocument(s *cutting.Solution) ProofDocument {
	c := &s.Certificate
	d := ProofDocument{
		LowerBound: s.LowerBound, Reason: c.Reason(), Weights: c.Weights, Capacity: c.Capacity,
		Start: c.At, AllStarts: c.AllStarts, Excluded: c.Exhausted, Cost: c.ByCost, Breaks: c.Breaks, InOrder: c.ByOrder,
		Changes: changesDocument(c.Changes),
	}
	stock := s.Problem.Spec().Stock
	for k, capacity := range c.Capacities {
		d.Kinds = append(d.Kinds, CapacityDocument{stock[k].Total(), stock[k].InHand, capacity, c.Starts[k]})
	}
	return d
}

// found writes down what is known of a roll that is there.
func (d *RollDocument) found(r *paper.Roll) {
	d.Name, d.InHand = r.Name, true
	for _, f := range r.Flaws {
		d.Flaws = append(d.Flaws, Stretch{f.From, f.To})
	}
	d.Parts = r.Joints()
}

func changesDocument(c *cutting.ChangesProof) *ChangesDocument {
	if c == nil {
		return nil
	}
	d := &ChangesDocument{Changes: c.Changes, Prices: c.Prices, Stretch: c.Stretch, Earned: c.Earned}
	if c.Short {
		d.ShortEarned = &c.ShortEarned
	}
	return d
}

// goalDocument writes lengths in millimetres and numbers of changes as they are.
func goalDocument(r cutting.Result) GoalDocument {
	number := func(v int64) json.Number {
		if r.Goal != cutting.LongestLeftover {
			return json.Number(strconv.FormatInt(v, 10))
		}
		text, _ := json.Marshal(measure.Length(v))
		return json.Number(text)
	}
	return GoalDocument{r.Goal, number(r.Value), number(r.Bound), r.Proven}
}

func (p *Plan) orderDocument(b *BatchPlan, o cutting.Order) OrderDocument {
	d := OrderDocument{After: o.After, UpTo: o.UpTo, At: o.At}
	for _, c := range o.Cuts {
		phase := b.Cutting.Problem.Spec().Pieces[c.Piece].Phase
		d.Cuts = append(d.Cuts, CutDocument{From: c.From, To: c.To, Phase: phase, Gives: p.gives(b.Cuts[c.Piece])})
	}
	return d
}

func (p *Plan) gives(strip Strip) (out []GiveDocument) {
	for _, lie := range strip {
		l := p.Runs[lie.Run].Layout
		piece := &l.Pieces[lie.Piece]
		out = append(out, GiveDocument{l.Run.Name, piece.Name, l.Run.WallName(l.PieceWall(piece)), lie.Offset})
	}
	return out
}

// squareMetres writes an area as a number of square metres, all of its digits.
func squareMetres(a measure.Area) json.Number {
	const m2 = measure.SquareMetre
	return json.Number(fmt.Sprintf("%d.%08d", a/m2, a%m2))
}
