package room

import (
	"slices"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/measure"
)

// The codes of findings about a room. Sizes are named in the comments.
const (
	CodeHeightUnlikely   finding.Code = "height_unlikely"   // a wall's "height" is below or above what rooms have, "limit"
	CodeWidthUnlikely    finding.Code = "width_unlikely"    // a wall's "width" is above what rooms have, "limit"
	CodeNarrowWall       finding.Code = "narrow_wall"       // a wall's "width" is less than "limit"
	CodeOutlineShort     finding.Code = "outline_short"     // a wall's outline ends "gap" before a corner
	CodeHeightJump       finding.Code = "height_jump"       // two walls' heads or feet (Word) differ by "jump" at their corner
	CodeLeanLarge        finding.Code = "lean_large"        // a corner's "lean" is beyond "limit", the workmanship tolerance
	CodeLeanUnlikely     finding.Code = "lean_unlikely"     // a corner's "lean" is beyond "limit", a tenth of its height
	CodeOpeningBeyond    finding.Code = "opening_beyond"    // an opening reaches past its wall's head or foot (Word) or past its slope, by "beyond"
	CodeCornerWedge      finding.Code = "corner_wedge"      // an opening reaches into a corner that leans away from it, and leaves a wedge of wall, "width" wide
	CodeFittingOutside   finding.Code = "fitting_outside"   // the middle of a fitting (Word) is not on its wall, or in an opening
	CodeMisclosure       finding.Code = "misclosure"        // a closed run does not close, by "misclosure" ("along" and "across" wall 0); Word names what to measure again, "likely" what it may be
	CodeAngleMisclosure  finding.Code = "angle_misclosure"  // the angles of a closed run do not add up, by Word
	CodePlanUnadjustable finding.Code = "plan_unadjustable" // a closed run is so far from closing, by "misclosure", that a wall or corner (Word) must be missing
)

// What rooms have. All are limits for asking, none for refusing.
const (
	leastHeight  = 1 * measure.Metre        // common practice: a dado or an attic's knee wall is about 1 m
	mostHeight   = 6 * measure.Metre        // common practice: a 16 ft ceiling is 4.88 m; 24 m is 2.4 m mistyped
	mostWidth    = 30 * measure.Metre       // common practice
	leastWidth   = 100 * measure.Millimetre // common practice: narrower walls are papered with their neighbour
	mostJump     = 20 * measure.Millimetre  // NHBC Standards 2020, 9.1.3: a ceiling is level within 20 mm over 6 m
	leastStep    = 300 * measure.Millimetre // from here on a jump is taken for a step that is meant
	storey       = 3 * measure.Metre        // NHBC Standards 2020, 9.1.3: out of plumb by up to
	storeyLean   = 8 * measure.Millimetre   // 8 mm in a storey of up to 3 m
	mostLean     = 12 * measure.Millimetre  // and 12 mm in total
	absurdFactor = 10                       // a corner off by a tenth of its height is a mistake or a slope
)

// Findings returns what people must know about a run that passed
// [Run.Check], in the order of the run: what is possible but unlikely, what
// is worse than good workmanship leaves, and whether a closed run closes.
func (r *Run) Findings() []finding.Finding {
	var fs []finding.Finding
	for i := range r.Walls {
		fs = r.wallFindings(fs, i)
		if i < len(r.Corners) {
			fs = r.jumpFindings(fs, i)
		}
		fs = r.leanFindings(fs, i)
	}
	return append(fs, r.closureFindings()...)
}

func size(name string, l measure.Length) finding.Size { return finding.Size{Name: name, Value: l} }

func (r *Run) placeOfWall(i int) finding.Place {
	return finding.Place{Run: r.Name, Wall: r.WallName(i)}
}

func (r *Run) wallFindings(fs []finding.Finding, i int) []finding.Finding {
	w, place := &r.Walls[i], r.placeOfWall(i)
	add := func(code finding.Code, s finding.Severity, sizes ...finding.Size) {
		fs = append(fs, finding.Finding{Code: code, Severity: s, Place: place, Sizes: sizes})
	}
	x, y := w.Outline.Bounds()
	switch {
	case w.Width > mostWidth:
		add(CodeWidthUnlikely, finding.Caution, size("width", w.Width), size("limit", mostWidth))
	case w.Width < leastWidth:
		add(CodeNarrowWall, finding.Note, size("width", w.Width), size("limit", leastWidth))
	}
	switch height := y.Length(); {
	case height > mostHeight:
		add(CodeHeightUnlikely, finding.Serious, size("height", height), size("limit", mostHeight))
	case height < leastHeight:
		add(CodeHeightUnlikely, finding.Caution, size("height", height), size("limit", leastHeight))
	}
	if gap := max(x.Lo, w.Width-x.Hi); gap > 0 {
		add(CodeOutlineShort, finding.Caution, size("gap", gap))
	}
	for j := range w.Openings {
		fs = r.openingFindings(fs, i, j)
		fs = r.wedgeFinding(fs, i, j)
	}
	return r.fittingFindings(fs, i)
}

// openingFindings asks about an opening that reaches past its wall. A door
// whose foot is below the paper is as it should be.
func (r *Run) openingFindings(fs []finding.Finding, i, j int) []finding.Finding {
	w := &r.Walls[i]
	o := &w.Openings[j]
	place := r.placeOfWall(i)
	place.Opening = r.openingName(i, j)
	_, wall := w.Outline.Bounds()
	_, y := o.Outline.Bounds()
	beyond := outside(o.Outline, w.Outline)
	if o.Kind == Door {
		beyond = slices.DeleteFunc(beyond, func(c geom.Cell) bool { return c.Y().Lo == y.Lo && c.Y().Hi < y.Hi })
	}
	if geom.AreaOf(beyond) <= leastOverlap {
		return fs
	}
	f := finding.Finding{Code: CodeOpeningBeyond, Severity: finding.Caution, Place: place}
	switch {
	case y.Hi > wall.Hi:
		f.Word, f.Sizes = "head", []finding.Size{size("beyond", y.Hi-wall.Hi)}
	case y.Lo < wall.Lo:
		f.Word, f.Sizes = "foot", []finding.Size{size("beyond", wall.Lo-y.Lo)}
	default:
		var most measure.Length
		for _, c := range beyond {
			most = max(most, c.Left.Length(), c.Right.Length())
		}
		f.Word, f.Sizes = "slope", []finding.Size{size("beyond", most)}
	}
	return append(fs, f)
}

// wedgeFinding tells of a wedge of wall between an opening and the corner it
// was measured to stand in.
func (r *Run) wedgeFinding(fs []finding.Finding, i, j int) []finding.Finding {
	o := &r.Walls[i].Openings[j]
	x, y := o.Outline.Bounds()
	left, right := r.edges(i)
	var wedge measure.Length
	if x.Lo == 0 {
		wedge = -left.at(y.Hi)
	}
	if x.Hi == r.Walls[i].Width {
		wedge = max(wedge, right.at(y.Hi))
	}
	if wedge <= 0 {
		return fs
	}
	place := r.placeOfWall(i)
	place.Opening = r.openingName(i, j)
	return append(fs, finding.Finding{
		Code: CodeCornerWedge, Severity: finding.Note, Place: place, Sizes: []finding.Size{size("width", wedge)},
	})
}

func (r *Run) fittingFindings(fs []finding.Finding, i int) []finding.Finding {
	w := &r.Walls[i]
	if len(w.Fittings) == 0 {
		return fs
	}
	face := r.Face(i)
	for j := range w.Fittings {
		at := w.Fittings[j].At
		if face.Contains(at) {
			continue
		}
		place := r.placeOfWall(i)
		place.X, place.Y = &at.X, &at.Y
		fs = append(fs, finding.Finding{
			Code: CodeFittingOutside, Severity: finding.Caution,
			Place: place, Word: fittingName(&w.Fittings[j], j),
		})
	}
	return fs
}

// jumpFindings compares the heads and the feet of the two walls at corner i.
func (r *Run) jumpFindings(fs []finding.Finding, i int) []finding.Finding {
	next := &r.Walls[(i+1)%len(r.Walls)]
	left, right := r.Walls[i].reachAt(r.Walls[i].Width), next.reachAt(0)
	if left.IsEmpty() || right.IsEmpty() {
		return fs
	}
	for _, end := range []struct {
		word string
		jump measure.Length
	}{{"head", right.Hi - left.Hi}, {"foot", right.Lo - left.Lo}} {
		if end.jump.Abs() <= mostJump {
			continue
		}
		severity := finding.Caution
		if end.jump.Abs() >= leastStep {
			severity = finding.Note
		}
		fs = append(fs, finding.Finding{
			Code: CodeHeightJump, Severity: severity, Word: end.word,
			Place: finding.Place{Run: r.Name, Corner: r.CornerName(i)},
			Sizes: []finding.Size{size("jump", end.jump)},
		})
	}
	return fs
}

// leanFindings looks at the corner or end on the right of wall i, and before
// the first wall of an open run at the end on its left.
func (r *Run) leanFindings(fs []finding.Finding, i int) []finding.Finding {
	left, right := r.edges(i)
	if i == 0 && !r.Closed {
		fs = r.leanFinding(fs, left, "|"+r.WallName(0))
	}
	if i < len(r.Corners) {
		next, _ := r.edges((i + 1) % len(r.Walls))
		if next.lean.Abs() > right.lean.Abs() {
			right.lean = next.lean
		}
	}
	return r.leanFinding(fs, right, r.CornerName(i))
}

func (r *Run) leanFinding(fs []finding.Finding, edge edgeLine, corner string) []finding.Finding {
	height, lean := edge.reach.Length(), edge.lean.Abs()
	limit := storeyLean
	if height > storey {
		limit = mostLean
	}
	f := finding.Finding{Place: finding.Place{Run: r.Name, Corner: corner}}
	switch {
	case lean > 0 && lean >= height/absurdFactor:
		f.Code, f.Severity, limit = CodeLeanUnlikely, finding.Serious, max(height/absurdFactor, 0)
	case lean > limit:
		f.Code, f.Severity = CodeLeanLarge, finding.Caution
	default:
		return fs
	}
	f.Sizes = []finding.Size{size("lean", edge.lean), size("limit", limit)}
	return append(fs, f)
}
