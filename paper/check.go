package paper

import (
	"fmt"
	"strings"

	"firstdrop/measure"
)

// Fault is what is wrong with one field of a label.
type Fault string

// The faults of a label.
const (
	NotPositive  Fault = "must be more than 0"
	Negative     Fault = "must not be less than 0"
	TooLarge     Fault = "is too large"
	OverRoll     Fault = "is longer than the roll"
	NoRepeat     Fault = "needs a repeat, and none is stated"
	NotUsed      Fault = "is not used with a free match, which keeps to no design: leave it out, or say straight"
	NoOffset     Fault = "is no offset: it must be more than 0 and less than the repeat"
	LowestTerms  Fault = "is an offset that is not in lowest terms"
	OutsideWidth Fault = "lies outside the width"
	OverRepeat   Fault = "is more than the repeat"
	NoPack       Fault = "must be 1, 2 or 3"
	UnknownWord  Fault = "is none of the known ones"
)

// The faults of offers and rolls.
const (
	NoName     Fault = "is missing; write on each roll what tells it from the others"
	SameName   Fault = "is the name of another roll already; give each its own"
	NoLength   Fault = "is missing; measure the roll, or list its parts"
	AlsoParts  Fault = "is stated, and parts too; a roll in parts has the lengths of its parts"
	OnePart    Fault = "must be two or more; write one length as the roll's length"
	NoDesign   Fault = "is where a design begins, and the paper has no repeat; leave it out"
	OnThePart  Fault = "belongs to each of the parts; write it there"
	BeginsLate Fault = "must be less than the repeat: the first place counts"
	MustBegin  Fault = "is missing; with a flaw or in parts, the roll has been opened: measure where the design first begins"
	EmptyFlaw  Fault = "must lie after its from"
	OverFlaws  Fault = "lies before the end of the flaw before; list flaws from the leading end on, and join those that touch"
	BeyondEnd  Fault = "lies beyond the end of the roll"
	AllFlawed  Fault = "leave nothing of the roll; leave the roll out"
	TooMany    Fault = "are too many"
	// ShorterThanRepeat is said of a size to be bought.
	ShorterThanRepeat Fault = "is shorter than the repeat"
	PriceMissing      Fault = "is missing, and another size has one; price all sizes or none"
	OtherMoney        Fault = "is in another currency than the price before; use one"
	FreeRolls         Fault = "is 0 and other sizes cost something; say how many there are as available"
	NothingThere      Fault = "is 0, no other size is to be had, and no roll is there"
)

// LabelError says which field of a paper is at fault. Field is its name in a job
// document: "width", "motif.head", "rolls[0].flaws[1].to", counted from 0.
type LabelError struct {
	Paper string
	Field string
	Fault Fault
	// Value is what the field holds, and Limit what it is held against; both 0
	// where the field is no length.
	Value, Limit measure.Length
	// Part is what the field belongs to, as people call it: `roll "3"`; "" for
	// the label itself.
	Part string
}

// Error names the field, its value and the limit, but not the paper.
func (e *LabelError) Error() string {
	field := e.Field
	if e.Part != "" {
		field = e.Part + ": " + field[strings.LastIndexByte(field, '.')+1:]
	}
	switch {
	case e.Limit != 0:
		return fmt.Sprintf("%s %s %s (%s)", field, e.Value, e.Fault, e.Limit)
	case e.Value != 0:
		return fmt.Sprintf("%s %s %s", field, e.Value, e.Fault)
	}
	return fmt.Sprintf("%s %s", field, e.Fault)
}

// LabelErrors is everything wrong with one label, in the order of its fields.
type LabelErrors []*LabelError

// Error names the paper and all faults.
func (es LabelErrors) Error() string {
	texts := make([]string, len(es))
	for i, e := range es {
		texts[i] = e.Error()
	}
	return fmt.Sprintf("paper %q: %s", es[0].Paper, strings.Join(texts, "; "))
}

// Unwrap returns the single errors.
func (es LabelErrors) Unwrap() []error {
	errs := make([]error, len(es))
	for i, e := range es {
		errs[i] = e
	}
	return errs
}

// Check reports everything in which the label contradicts itself, as
// [LabelErrors]; nil when it is sound and every other method may be used.
func (p *Paper) Check() error {
	c := checker{paper: p}
	c.sizes()
	c.match()
	c.motif()
	c.goods()
	c.offers()
	c.rolls()
	if len(c.errs) == 0 {
		return nil
	}
	return c.errs
}

// checker gathers the errors of one paper.
type checker struct {
	paper *Paper
	errs  LabelErrors
	// What is looked at, for people and as a path; "" for the label itself.
	part, path string
}

func (c *checker) refuse(field string, fault Fault, value, limit measure.Length) {
	c.errs = append(c.errs, &LabelError{c.paper.Name, c.path + field, fault, value, limit, c.part})
}

func (c *checker) sizes() {
	p := c.paper
	for _, f := range []struct {
		name   string
		value  measure.Length
		needed bool
	}{
		{"width", p.Width, true},
		{"dry_width", p.DryWidth, false},
		{"roll", p.RollLength, true},
		{"repeat", p.Repeat, false},
		{"across", p.Across, false},
	} {
		switch {
		case f.needed && f.value <= 0:
			c.refuse(f.name, NotPositive, f.value, 0)
		case f.value < 0:
			c.refuse(f.name, Negative, f.value, 0)
		case f.value > measure.MaxLength:
			c.refuse(f.name, TooLarge, f.value, measure.MaxLength)
		}
	}
	if p.RollLength > 0 && p.Repeat > p.RollLength {
		c.refuse("repeat", OverRoll, p.Repeat, p.RollLength)
	}
}

func (c *checker) match() {
	m, repeat := c.paper.Match, c.paper.Repeat
	isBare := m.Num == 0 && m.Den == 0 && m.Length == 0
	switch {
	case m.Kind < Free || m.Kind > Offset || m.Kind != Offset && !isBare:
		c.refuse("match", UnknownWord, 0, 0)
	case m.Kind == Free && repeat > 0:
		c.refuse("repeat", NotUsed, repeat, 0)
	case m.Kind == Free:
	case repeat <= 0:
		c.refuse("match", NoRepeat, 0, 0)
	case m.Kind == Straight:
	case m.Den == 0 && (m.Num != 0 || m.Length <= 0 || m.Length >= repeat):
		c.refuse("match", NoOffset, m.Length, repeat)
	case m.Den == 0:
	case m.Num <= 0 || m.Num >= m.Den || m.Length != 0:
		c.refuse("match", NoOffset, 0, 0)
	case gcd(m.Den, m.Num) != 1:
		c.refuse("match", LowestTerms, 0, 0)
	case m.Den > MaxDen:
		c.refuse("match", TooLarge, 0, 0)
	}
}

func (c *checker) motif() {
	p, m := c.paper, c.paper.Motif
	if m == nil {
		return
	}
	if m.Axis < 0 || m.Axis > p.Width {
		c.refuse("motif.axis", OutsideWidth, m.Axis, p.Width)
	}
	if p.Repeat <= 0 {
		c.refuse("motif", NoRepeat, 0, 0)
		return
	}
	if m.Head < 0 || m.Head >= p.Repeat {
		c.refuse("motif.head", within(m.Head), m.Head, p.Repeat)
	}
	if m.Tall < 0 || m.Tall > p.Repeat {
		c.refuse("motif.tall", within(m.Tall), m.Tall, p.Repeat)
	}
}

// within tells the two ways of lying outside the repeat apart.
func within(l measure.Length) Fault {
	if l < 0 {
		return Negative
	}
	return OverRepeat
}

func (c *checker) goods() {
	p := c.paper
	if p.Paste < PasteTheWall || p.Paste > SelfAdhesive {
		c.refuse("paste", UnknownWord, 0, 0)
	}
	if p.SoakMin < 0 {
		c.refuse("soak_minutes", Negative, 0, 0)
	}
	c.share("tolerance.length", p.Tolerance.Length)
	c.share("tolerance.width", p.Tolerance.Width)
}

// share checks parts per thousand: half a roll too short is no tolerance.
func (c *checker) share(field string, thousandths int) {
	switch {
	case thousandths < 0:
		c.refuse(field, Negative, 0, 0)
	case thousandths > 500:
		c.refuse(field, TooLarge, 0, 0)
	}
}
