package sheet

// Words of the survey sheet.
const (
	textSurvey       = "Survey"
	textHowHead      = "What to measure, and where"
	textSurveyDesc   = "A wall with a window, a door and a socket. Letters stand for the sizes that are asked for below: a its width, b and c its heights at the two ends, d to h an opening, i and k a fitting."
	textWallsHead    = "Walls, turning to the right inside the room"
	textOpeningsHead = "Doors, windows, whatever keeps paper off the wall"
	textFittingsHead = "Sockets, switches, lights, radiators"
	textAcrossHead   = "Across the room"
	textLabelHead    = "The paper's label"
	textNotesHead    = "Notes and a sketch"
	textSurvWall     = "Wall"
	textSurvWidth    = "a width at the datum"
	textSurvCeiling  = "width at the ceiling"
	textSurvLeft     = "b height left"
	textSurvRight    = "c height right"
	textSurvFloor    = "floor left / right"
	textSurvCorner   = "corner at its right end"
	textSurvLean     = "lean on either side"
	textSurvWhat     = "what"
	textSurvD        = "d from left end"
	textSurvE        = "e width"
	textSurvF        = "f sill over datum"
	textSurvG        = "g height"
	textSurvH        = "h depth of return"
	textSurvI        = "i from left end"
	textSurvK        = "k over datum"
	textSurvSize     = "width × height"
	textSurvFrom     = "from corner"
	textSurvTo       = "to corner"
	textSurvLength   = "length"
	textSurvKnown    = "What the job says stands small in its box; write what you measure below it. Where the two differ, change the job and plan again."
	textHowDatum     = "Draw a level line round the room, the datum, about a metre over the floor or at the foot of the walls. All heights count from it, up and down."
	textHowWidth     = "Width of every wall, once at the datum and once under the ceiling, with a steel tape, to the millimetre (1/16 in). Write each down at once and read it back."
	textHowHeight    = "From the datum up to the ceiling and down to the floor or skirting, at both ends of every wall and wherever the ceiling changes."
	textHowCorner    = "Hold a plumb line into every corner: how far does its head stand from its foot, on the wall to its left and on the wall to its right? To the right counts plus."
	textHowOpening   = "Every opening: distance from the wall's left end, width, sill over the datum, height. Where reveals and soffits are papered, their depth."
	textHowFitting   = "Middle of every socket, switch and light, and its size. Do not open anything: power off at the board first, and then it is a matter for whoever may do it under local rules."
	textHowDiagonal  = "Two diagonals at the height of the datum, corner to corner: they show whether the widths close."
	textHowAngle     = "Corners that are not square: their angle, with bevel and protractor, or three lengths of a triangle."
	textHowSlope     = "Sloping ceiling: the points of the wall's outline, each by its distance from the left end and its height."
	textHowStair     = "Stairs: the line of the strings or skirtings and of the ceiling, point by point, and the longest drop. Measure from a platform made for stairs, with a second person at the tape's other end."
	textHowArch      = "Arches: the outline, point by point, every 100 mm (4 in) along the curve."
	textHowLabel     = "The label: width, length, repeat, match, batch. Unroll a roll: measure where the repeat begins, and a strip that has soaked."
	textHowLook      = "Look for damp, mould, flaking or old textured coats, and write them down: old paint may hold lead, old textures asbestos. Have them tested before anybody sands or scrapes."
	textHowSight     = "Which wall is seen first on entering? Where does the light come from? Which corner is hidden? Where does furniture stay?"
	textInside       = "inside"
	textOutside      = "outside"
)

var textLabelFields = []string{
	"Name, number", "Width", "Roll length", "Repeat", "Match", "Motif: axis, head", "Batch", "Paste on, soak minutes", "Sold in packs of", "Price",
}

func textAngle(kind, angle string) string { return kind + " " + angle }

func textSurvFitting(w, h string) string { return w + " × " + h }
