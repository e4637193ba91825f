package measure

import (
	"strings"

	"firstdrop/message"
)

// Unit is the unit that people give a number in, and that a number without a
// unit takes from its job. The zero value is no unit: a bare number is then
// refused. Yards are there because wide goods are sold by the lineal yard.
type Unit uint8

// Units from small to large within each system; text names mm, cm, m, in, ft, yd.
const (
	Millimetres Unit = iota + 1
	Centimetres
	Metres
	Inches
	Feet
	Yards
)

var (
	unitNames   = [...]string{"", "mm", "cm", "m", "in", "ft", "yd"}
	unitLengths = [...]Length{0, Millimetre, Centimetre, Metre, Inch, Foot, Yard}
)

// ParseUnit reads a unit by its short name or its word, singular or plural, in
// British or American spelling, upper or lower case. Its error is a
// [*LengthError].
func ParseUnit(text string) (Unit, error) {
	if u := unitFromWord(text); u != 0 {
		return u, nil
	}
	return 0, &LengthError{Text: text, Why: message.New("length_no_unit", "no unit of length; use mm, cm, m, in, ft or yd")}
}

// unitFromWord returns the zero Unit for a word it does not know. It allocates
// for capitals only.
func unitFromWord(word string) Unit {
	switch strings.ToLower(word) {
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return Millimetres
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return Centimetres
	case "m", "metre", "metres", "meter", "meters":
		return Metres
	case "in", "ins", "inch", "inches":
		return Inches
	case "ft", "foot", "feet":
		return Feet
	case "yd", "yds", "yard", "yards":
		return Yards
	}
	return 0
}

// String returns the short name, which [ParseUnit] reads back; "" for no unit.
func (u Unit) String() string {
	if int(u) >= len(unitNames) {
		return "unknown unit"
	}
	return unitNames[u]
}

// Length returns how long one of the unit is; 0 for no unit.
func (u Unit) Length() Length {
	if int(u) >= len(unitLengths) {
		return 0
	}
	return unitLengths[u]
}

// System returns the system the unit belongs to; Metric for no unit.
func (u Unit) System() System {
	if u >= Inches {
		return Imperial
	}
	return Metric
}

// MarshalText writes the short name, so that a job's unit is kept as "mm".
func (u Unit) MarshalText() ([]byte, error) { return []byte(u.String()), nil }

// UnmarshalText reads what [ParseUnit] reads; u is unchanged by an error.
func (u *Unit) UnmarshalText(text []byte) error {
	read, err := ParseUnit(string(text))
	if err == nil {
		*u = read
	}
	return err
}
