package geom

import "firstdrop/measure"

// Area returns the area enclosed, never negative whichever way round the
// corners go: exact in 128 bits and then rounded once.
func (r Ring) Area() measure.Area {
	var double wide
	for i := range r {
		double = double.plus(cross(r[0], r[i], r.after(i)))
	}
	return areaOfDouble(double.abs())
}

// Area returns the net area: that of the outline less what its holes take from
// it together. It is that of the outline, exact but for the one rounding, where
// there are no holes, and that of all its cells otherwise.
func (p Polygon) Area() measure.Area {
	if len(p.Holes) == 0 {
		return p.Outline.Area()
	}
	x, _ := p.Bounds()
	return AreaOf(p.Cells(x))
}

// AreaOf returns the area of cells that do not overlap, rounded once.
func AreaOf(cells []Cell) measure.Area {
	var double wide
	for _, c := range cells {
		double = double.plus(c.doubleArea())
	}
	return areaOfDouble(double)
}

// areaOfDouble returns half of a whole number of square nanometres, not
// negative, rounded once to the unit of Area.
func areaOfDouble(double wide) measure.Area {
	const nm2 = uint64(measure.Millimetre) * uint64(measure.Millimetre) / uint64(measure.SquareMillimetre)
	return measure.Area(double.dividedBy(2 * nm2))
}
