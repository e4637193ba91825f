package finding

import (
	"cmp"
	"slices"

	"firstdrop/measure"
)

// Severity says how much a finding weighs.
type Severity int

// The severities, lightest first.
const (
	Note    Severity = iota // good to know; nothing to do
	Caution                 // look at it before cutting
	Serious                 // looks wrong on the wall, or costs paper, if left as it is
)

var severityNames = [...]string{"note", "caution", "serious"}

// String returns the severity's name in lower case.
func (s Severity) String() string { return severityNames[s] }

// MarshalText writes the severity's name.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Code names the kind of a finding: a stable word for programs, such as
// "sliver". The package that raises a finding declares its codes.
type Code string

// Place says where a finding stands. Fields that do not apply are empty.
type Place struct {
	Run     string          `json:"run,omitempty"`
	Wall    string          `json:"wall,omitempty"`
	Corner  string          `json:"corner,omitempty"`  // "A|B": the corner between walls A and B
	Opening string          `json:"opening,omitempty"` // the opening's name
	Paper   string          `json:"paper,omitempty"`
	Drop    int             `json:"drop,omitempty"` // hanging number, from 1
	X       *measure.Length `json:"x,omitempty"`    // from the wall's left end
	Y       *measure.Length `json:"y,omitempty"`    // from the datum
}

// Size is one named figure of a finding.
type Size struct {
	Name  string         `json:"name"` // for instance "width", "misfit_along"
	Value measure.Length `json:"value"`
}

// Finding is one thing people must know.
type Finding struct {
	Number   int      `json:"number,omitempty"` // in its list, from 1; the same in text and drawings
	Code     Code     `json:"code"`
	Severity Severity `json:"severity"`
	// Weight is what it costs where plans are compared, in thousandths of a roll;
	// 0 for what is only good to know.
	Weight int64  `json:"weight,omitempty"`
	Place  Place  `json:"place"`
	Sizes  []Size `json:"sizes,omitempty"`
	Count  int    `json:"count,omitempty"` // a plain number where the code needs one
	Word   string `json:"word,omitempty"`  // a name or text where the code needs one
}

// Size returns the figure of that name, and whether there is one.
func (f Finding) Size(name string) (measure.Length, bool) {
	for _, s := range f.Sizes {
		if s.Name == name {
			return s.Value, true
		}
	}
	return 0, false
}

// Sort puts the gravest first and leaves the order within a severity as it is,
// so that findings raised along the run stay in the order of the run. Then it
// numbers them.
func Sort(fs []Finding) {
	slices.SortStableFunc(fs, func(a, b Finding) int { return cmp.Compare(b.Severity, a.Severity) })
	for i := range fs {
		fs[i].Number = i + 1
	}
}
