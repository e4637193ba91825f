package measure

import "strconv"

// Area is an area in whole hundredths of a square millimetre, because both
// systems are whole in it: a square foot is 92 903.04 mm² exactly. The range is
// about ±92 000 km². It may be negative, as a deduction is.
type Area int64

// Units of area. All are exact.
const (
	SquareMillimetre Area = 100
	SquareMetre           = 1_000_000 * SquareMillimetre
	SquareInch       Area = 64_516
	SquareFoot            = 144 * SquareInch
	SquareYard            = 9 * SquareFoot
)

// nm2PerArea is the number of square nanometres in the unit of Area.
const nm2PerArea = int64(Millimetre) * int64(Millimetre) / int64(SquareMillimetre)

// Times returns l·other, rounded once to the nearest 0.01 mm², halves away from
// zero; whole millimetres and whole tenths are exact. It is negative when one
// side is. Any two lengths up to [MaxLength] are safe, which as a product of
// int64 they would not be from 3 m × 4 m on.
func (l Length) Times(other Length) Area {
	return Area(scaled(int64(l), int64(other), nm2PerArea))
}

// String returns the area in square metres as [Area.Format] does.
func (a Area) String() string { return a.Format(Metric) }

// Format returns the area as people read it: "5.33 m²" to two decimals, or
// "57.3 sq ft" to one, halves away from zero. It always rounds; count with the
// Area itself.
func (a Area) Format(sys System) string {
	if sys == Imperial {
		return a.fixed(SquareFoot, 1) + " sq ft"
	}
	return a.fixed(SquareMetre, 2) + " m²"
}

// fixed returns a/unit with exactly so many decimals; never "-0".
func (a Area) fixed(unit Area, places int) string {
	scale := int64(1)
	for range places {
		scale *= 10
	}
	n := scaled(int64(a), scale, int64(unit))
	b := make([]byte, 0, 24)
	if n < 0 {
		b = append(b, '-')
	}
	b = append(strconv.AppendUint(b, magnitude(n)/uint64(scale), 10), '.')
	rest := strconv.FormatUint(uint64(scale)+magnitude(n)%uint64(scale), 10)
	return string(append(b, rest[1:]...))
}
