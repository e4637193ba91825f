package measure

import "strconv"

// System is the system of units that people read. The zero value is Metric.
type System uint8

// Systems of units.
const (
	Metric   System = iota // millimetres, square metres
	Imperial               // feet, inches and fractions; square feet
)

// String returns "metric" or "imperial".
func (sys System) String() string {
	if sys == Imperial {
		return "imperial"
	}
	return "metric"
}

// String returns the exact length in millimetres with as many of six decimals
// as it needs: "2502 mm", "-2502.5 mm", "0.396875 mm". Up to [MaxLength]
// [ParseLength] reads it back to the same value, whatever the bare unit.
func (l Length) String() string {
	return string(append(appendDecimal(nil, int64(l), 6), " mm"...))
}

// Rounded returns the length that [Length.Format] shows. Metric: to the tenth
// of a millimetre. Imperial: a whole number of 1/64 in stays, everything else
// goes to the nearest 1/16 in. Halves go away from zero. Rounding is for
// showing; round what is cut with [Length.CeilTo].
func (l Length) Rounded(sys System) Length {
	switch {
	case sys == Metric:
		return l.RoundTo(Millimetre / 10)
	case l%SixtyFourth == 0:
		return l
	}
	return l.RoundTo(Sixteenth)
}

// Format returns the length as people read it: "2502 mm", "2502.5 mm" (the
// tenth is left out when it is zero), or `8' 2 1/2"`, `8' 0"`, `-3/4"`. A length
// that had to be rounded ([Length.Rounded]) says so: `≈ 8' 2 1/2"`. A text
// without that sign reads back exactly.
func (l Length) Format(sys System) string {
	if l.Rounded(sys) != l {
		return "≈ " + l.spelled(sys)
	}
	return l.spelled(sys)
}

// Both returns the length in both systems, for those who check one tape
// against another: `2502 mm (8' 2 1/2")`. Each side is rounded as by
// [Length.Rounded] and none is marked, since at most a few lengths are exact in
// both.
func Both(l Length) string { return l.spelled(Metric) + " (" + l.spelled(Imperial) + ")" }

// spelled returns the rounded length without the sign that it was rounded.
func (l Length) spelled(sys System) string {
	l = l.Rounded(sys)
	if sys == Metric {
		return l.String()
	}
	b := make([]byte, 0, 24)
	if l < 0 {
		b = append(b, '-')
	}
	l = l.Abs()
	feet, inches, parts := int64(l/Foot), int64(l%Foot/Inch), int64(l%Inch/SixtyFourth)
	if feet > 0 {
		b = append(strconv.AppendInt(b, feet, 10), "' "...)
	}
	return string(append(appendInches(b, inches, parts, feet > 0), '"'))
}

// appendInches writes whole inches and sixty-fourths in lowest terms. The 0 is
// written after feet and when there is nothing else: 8' 0 1/2", 0", but 1/2".
func appendInches(b []byte, inches, parts int64, afterFeet bool) []byte {
	if inches > 0 || afterFeet || parts == 0 {
		b = strconv.AppendInt(b, inches, 10)
		if parts == 0 {
			return b
		}
		b = append(b, ' ')
	}
	den := int64(64)
	for parts%2 == 0 {
		parts, den = parts/2, den/2
	}
	b = append(strconv.AppendInt(b, parts, 10), '/')
	return strconv.AppendInt(b, den, 10)
}

// appendDecimal writes n/10^places, without zeros at the end of the decimals.
func appendDecimal(b []byte, n int64, places int) []byte {
	if n < 0 {
		b = append(b, '-')
	}
	scale := uint64(1)
	for range places {
		scale *= 10
	}
	b = strconv.AppendUint(b, magnitude(n)/scale, 10)
	rest := magnitude(n) % scale
	if rest == 0 {
		return b
	}
	b = append(b, '.')
	for rest > 0 {
		scale /= 10
		b = append(b, byte('0'+rest/scale))
		rest %= scale
	}
	return b
}

// MarshalText writes what [Length.String] returns, exact and readable. JSON has
// a number instead: see [Length.MarshalJSON].
func (l Length) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads what [ParseLength] reads, but the unit must be written,
// for 0 as well: a file says what it means. l is unchanged by an error.
func (l *Length) UnmarshalText(text []byte) error {
	read, err := ParseLength(string(text), 0)
	if err == nil {
		*l = read
	}
	return err
}
