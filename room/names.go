package room

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstdrop/message"
)

// The names that job files, programs and messages use. They are in the order
// of the constants.
var (
	openingKindNames = []string{"door", "window", "arch", "fireplace", "furniture", "panel"}
	fittingKindNames = []string{"socket", "switch", "light", "radiator", "bracket", "vent"}
	sightNames       = []string{"plain", "focal", "hidden"}
	cornerKindNames  = []string{"inside", "outside"}
)

// nameOf returns the name of value i, or its number where it has none.
func nameOf(names []string, i int) string {
	if 0 <= i && i < len(names) {
		return names[i]
	}
	return fmt.Sprintf("unnamed %d", i)
}

// parseName returns the value of that name, or else the message that there is none,
// with the names that there are.
func parseName(names []string, text string, none message.Message) (int, error) {
	if i := slices.Index(names, text); i >= 0 {
		return i, nil
	}
	none.Args = message.Args{"text", strconv.Quote(text), "words", strings.Join(names, ", ")}
	return 0, none
}

// String returns the kind's name: door, window, arch, fireplace, furniture or
// panel.
func (k OpeningKind) String() string { return nameOf(openingKindNames, int(k)) }

// ParseOpeningKind reads what String writes; the error lists what there is.
func ParseOpeningKind(text string) (OpeningKind, error) {
	i, err := parseName(openingKindNames, text, message.New("opening_unknown", "{text} is no kind of opening; it is one of {words}"))
	return OpeningKind(i), err
}

// MarshalText writes the kind's name.
func (k OpeningKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the kind's name.
func (k *OpeningKind) UnmarshalText(text []byte) (err error) {
	*k, err = ParseOpeningKind(string(text))
	return err
}

// String returns the kind's name: socket, switch, light, radiator, bracket or
// vent.
func (k FittingKind) String() string { return nameOf(fittingKindNames, int(k)) }

// ParseFittingKind reads what String writes; the error lists what there is.
func ParseFittingKind(text string) (FittingKind, error) {
	i, err := parseName(fittingKindNames, text, message.New("fitting_unknown", "{text} is no kind of fitting; it is one of {words}"))
	return FittingKind(i), err
}

// MarshalText writes the kind's name.
func (k FittingKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the kind's name.
func (k *FittingKind) UnmarshalText(text []byte) (err error) {
	*k, err = ParseFittingKind(string(text))
	return err
}

// String returns the sight's name: plain, focal or hidden.
func (s Sight) String() string { return nameOf(sightNames, int(s)) }

// ParseSight reads what String writes; the error lists what there is.
func ParseSight(text string) (Sight, error) {
	i, err := parseName(sightNames, text, message.New("sight_unknown", "{text} is no sight; it is one of {words}"))
	return Sight(i), err
}

// MarshalText writes the sight's name.
func (s Sight) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the sight's name.
func (s *Sight) UnmarshalText(text []byte) (err error) {
	*s, err = ParseSight(string(text))
	return err
}

// String returns the kind's name: inside or outside.
func (k CornerKind) String() string { return nameOf(cornerKindNames, int(k)) }

// ParseCornerKind reads what String writes; the error lists what there is.
func ParseCornerKind(text string) (CornerKind, error) {
	i, err := parseName(cornerKindNames, text, message.New("corner_unknown", "{text} is no kind of corner; it is one of {words}"))
	return CornerKind(i), err
}

// MarshalText writes the kind's name.
func (k CornerKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the kind's name.
func (k *CornerKind) UnmarshalText(text []byte) (err error) {
	*k, err = ParseCornerKind(string(text))
	return err
}
