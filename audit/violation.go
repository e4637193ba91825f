package audit

import (
	"fmt"
	"strings"

	"firstdrop/measure"
)

// Rule is the stable name of a promise that a plan makes.
type Rule string

// The rules, in the order in which they are judged.
const (
	Sound         Rule = "sound"           // everything is there, every index leads somewhere, every length is possible
	Faithful      Rule = "faithful"        // layouts answer the task: its run, paper, rules and what the user fixed
	DropOrder     Rule = "drop order"      // drops are consecutive, drop 0 stands at the start, parts follow one another along the run
	Reversal      Rule = "reversal"        // alternate drops hang upside down where the label says so, no others
	Turned        Rule = "turned"          // a wall is turned as its sheets are set: plumb, or to a ceiling, a casing or a neighbour
	Rigid         Rule = "rigid"           // a part is as long as the stretch of the drop that covers it
	Width         Rule = "width"           // parts lie within the drop's width, side by side, and use all of it where they can
	Skew          Rule = "skew"            // a folded sheet leans as the corners that it has turned make it lean
	Corner        Rule = "corner"          // what meets a corner is carried, turned, renewed or cut by the rules
	End           Rule = "end"             // paper ends where the run or the kill seam ends
	Coverage      Rule = "coverage"        // every point to be papered is covered
	DoubleCover   Rule = "double cover"    // no point is covered twice, laps beside a leaning sheet aside
	SeamMissing   Rule = "seam missing"    // every seam is listed
	SeamExtra     Rule = "seam extra"      // no seam is listed that is not there, none twice, and in order
	SeamKind      Rule = "seam kind"       // a seam is of the kind it is listed as
	SeamPlace     Rule = "seam place"      // a seam stands where it is listed
	SeamMisfit    Rule = "seam misfit"     // a seam misses by what is listed
	PlumbLine     Rule = "plumb line"      // every sheet cut loose has a plumb line, at its edge, in hanging order
	PieceSet      Rule = "piece set"       // each connected part of a drop is one piece, and there are no others
	PieceNeed     Rule = "piece need"      // a piece covers what it must, across and upwards
	PieceLength   Rule = "piece length"    // its length is that and both allowances, rounded up to the cut step
	PiecePhase    Rule = "piece phase"     // its leading end is at the right height and design phase
	Returns       Rule = "returns"         // every papered return is covered exactly once
	Numbering     Rule = "numbering"       // hanging order starts at drop 0 and always meets a drop that hangs
	Naming        Rule = "naming"          // pieces stand in hanging order and are named after it
	SpecFaithful  Rule = "spec faithful"   // what is cut is what the layouts need, from rolls as the label says
	StockFaithful Rule = "stock faithful"  // what is cut from is the rolls of the batch and the sizes it is sold in, as the paper has them
	Strips        Rule = "strips"          // narrow pieces lie side by side on their strip, clear of one another, if the task allows it and it saves something
	Batches       Rule = "batches"         // no wall carries two batches, and they meet in inside corners only
	CutPieces     Rule = "cut pieces"      // every piece is cut once, in each order of its roll
	CutLength     Rule = "cut length"      // a cut is as long as its piece
	CutOnRoll     Rule = "cut on roll"     // cuts lie on the roll
	CutApart      Rule = "cut apart"       // cuts do not overlap, and are listed from the roll's beginning
	CutUnbroken   Rule = "cut unbroken"    // a cut lies in one stretch of its roll, clear of flaws, joints and the beginnings of parts
	CutPhase      Rule = "cut phase"       // a cut begins at its piece's phase
	StartClass    Rule = "start class"     // the orders of a roll serve every phase it can begin with
	Replay        Rule = "replay"          // an order fits whatever start of its class the roll has
	Missing       Rule = "missing"         // a piece is missing only if no roll gives it
	StockCount    Rule = "stock count"     // no more rolls of a kind are cut than there are
	Cost          Rule = "cost"            // the cost of a cutting is that of its rolls and missing pieces
	InOrder       Rule = "in order"        // goods that shade come off the rolls in the order in which they hang
	Goals         Rule = "goals"           // what is said to be reached beyond the fewest rolls is in the plan, and within its bound
	InOrderCount  Rule = "in order count"  // the count for cutting in hanging order is that of an own reckoning
	Certificate   Rule = "certificate"     // no roll can carry more weight than the certificate's capacity
	Bound         Rule = "bound"           // the lower bound follows from the certificate
	Proven        Rule = "proven"          // proven is claimed only when plan and bound agree
	Quantities    Rule = "quantities"      // drops and packs add up
	NetArea       Rule = "net area"        // the net area is that of the faces less their openings, and the returns
	AreaCount     Rule = "area count"      // the area estimate follows from the net area
	ShortCount    Rule = "short count"     // the count for short rolls is possible
	FullDropCount Rule = "full drop count" // the count if every drop were cut in full follows from the longest
	Findings      Rule = "findings"        // what people must know of the rolls is told, and nothing else
)

// Place says where a violation stands. All figures count from 1; 0 means that
// one does not apply.
type Place struct {
	Run   int // in Plan.Runs
	Wall  int // in Run.Walls
	Drop  int // in Layout.Drops, from the left
	Part  int // in Drop.Parts
	Seam  int // in Layout.Seams
	Plumb int // in Layout.Plumbs
	Piece int // in Layout.Pieces, or in Spec.Pieces where Paper is set
	Paper int // in Plan.Papers
	Roll  int // in Solution.Rolls
	Order int // in RollPlan.Orders
	Cut   int // in Order.Cuts
}

// String names the place: "run 1, wall 2, drop 4".
func (p Place) String() string {
	var words []string
	for _, w := range []struct {
		name   string
		number int
	}{
		{"paper", p.Paper},
		{"run", p.Run},
		{"wall", p.Wall},
		{"drop", p.Drop},
		{"part", p.Part},
		{"seam", p.Seam},
		{"plumb line", p.Plumb},
		{"piece", p.Piece},
		{"roll", p.Roll},
		{"order", p.Order},
		{"cut", p.Cut},
	} {
		if w.number != 0 {
			words = append(words, fmt.Sprintf("%s %d", w.name, w.number))
		}
	}
	return strings.Join(words, ", ")
}

// Violation is a promise that a plan does not keep.
type Violation struct {
	Rule  Rule
	Place Place
	What  string // the thing judged: "right edge"
	Want  string // as worked out here
	Got   string // as the plan has it
}

// Error says all of it in a sentence.
func (v Violation) Error() string {
	place := v.Place.String()
	if place != "" {
		place += ": "
	}
	return fmt.Sprintf("audit: %s%s: %s must be %s and is %s", place, v.Rule, v.What, v.Want, v.Got)
}

// mostFound is how many violations one audit lists: a plan with so many is
// wrong altogether.
const mostFound = 500

// book gathers violations. at is the place that all of them share.
type book struct {
	at    Place
	found []Violation
}

// note adds a violation; want and got are figures or words.
func (b *book) note(rule Rule, at Place, what string, want, got any) {
	if len(b.found) >= mostFound {
		return
	}
	at.Run, at.Paper = b.at.Run, b.at.Paper
	b.found = append(b.found, Violation{Rule: rule, Place: at, What: what, Want: figure(want), Got: figure(got)})
}

// same notes a violation unless the two figures are equal, and reports whether
// they are.
func (b *book) same(rule Rule, at Place, what string, want, got any) bool {
	if want == got {
		return true
	}
	b.note(rule, at, what, want, got)
	return false
}

// figure writes a figure: lengths in millimetres to the nanometre.
func figure(v any) string {
	switch v := v.(type) {
	case measure.Length:
		return millimetres(int64(v))
	case int64:
		return millimetres(v)
	case span:
		return millimetres(v.lo) + " … " + millimetres(v.hi)
	case height:
		if v.num != 0 {
			return fmt.Sprintf("%s and %d/%d nm", millimetres(v.whole), v.num, v.den)
		}
		return millimetres(v.whole)
	}
	return fmt.Sprint(v)
}

func millimetres(nm int64) string {
	sign := ""
	m := uint64(nm)
	if nm < 0 {
		sign, m = "-", -m
	}
	text := fmt.Sprintf("%s%d", sign, m/1_000_000)
	if rest := m % 1_000_000; rest != 0 {
		text += strings.TrimRight(fmt.Sprintf(".%06d", rest), "0")
	}
	return text + " mm"
}
