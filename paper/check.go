package paper

import (
	"fmt"
	"strings"

	"firstdrop/measure"
	"firstdrop/message"
)

// Fault is what is wrong with one field of a label.
type Fault string

// The faults of a label.
const (
	NotPositive  Fault = "not_positive"
	Negative     Fault = "negative"
	TooLarge     Fault = "too_large"
	OverRoll     Fault = "over_roll"
	NoRepeat     Fault = "no_repeat"
	NotUsed      Fault = "not_used"
	NoOffset     Fault = "no_offset"
	LowestTerms  Fault = "lowest_terms"
	OutsideWidth Fault = "outside_width"
	OverRepeat   Fault = "over_repeat"
	NoPack       Fault = "no_pack"
	UnknownWord  Fault = "unknown_word"
	TooManyKept  Fault = "too_many_kept"
)

// The faults of offers and rolls.
const (
	NoName     Fault = "no_name"
	SameName   Fault = "same_name"
	NoLength   Fault = "no_length"
	AlsoParts  Fault = "also_parts"
	OnePart    Fault = "one_part"
	NoDesign   Fault = "no_design"
	OnThePart  Fault = "on_the_part"
	BeginsLate Fault = "begins_late"
	MustBegin  Fault = "must_begin"
	EmptyFlaw  Fault = "empty_flaw"
	OverFlaws  Fault = "over_flaws"
	BeyondEnd  Fault = "beyond_end"
	AllFlawed  Fault = "all_flawed"
	TooMany    Fault = "too_many"
	// ShorterThanRepeat is said of a size to be bought.
	ShorterThanRepeat Fault = "shorter_than_repeat"
	PriceMissing      Fault = "price_missing"
	OtherMoney        Fault = "other_money"
	FreeRolls         Fault = "free_rolls"
	NothingThere      Fault = "nothing_there"
)

// faults says them in English, behind the field and its value.
var faults = map[Fault]string{
	NotPositive:       "must be more than 0",
	Negative:          "must not be less than 0",
	TooLarge:          "is too large",
	OverRoll:          "is longer than the roll",
	NoRepeat:          "needs a repeat, and none is stated",
	NotUsed:           "is not used with a free match, which keeps to no design: leave it out, or say straight",
	NoOffset:          "is no offset: it must be more than 0 and less than the repeat",
	LowestTerms:       "is an offset that is not in lowest terms",
	OutsideWidth:      "lies outside the width",
	OverRepeat:        "is more than the repeat",
	NoPack:            "must be 1, 2 or 3",
	UnknownWord:       "is none of the known ones",
	TooManyKept:       "is more than anybody keeps: up to 1000",
	NoName:            "is missing; write on each roll what tells it from the others",
	SameName:          "is the name of another roll already; give each its own",
	NoLength:          "is missing; measure the roll, or list its parts",
	AlsoParts:         "is stated, and parts too; a roll in parts has the lengths of its parts",
	OnePart:           "must be two or more; write one length as the roll's length",
	NoDesign:          "is where a design begins, and the paper has no repeat; leave it out",
	OnThePart:         "belongs to each of the parts; write it there",
	BeginsLate:        "must be less than the repeat: the first place counts",
	MustBegin:         "is missing; with a flaw or in parts, the roll has been opened: measure where the design first begins",
	EmptyFlaw:         "must lie after its from",
	OverFlaws:         "lies before the end of the flaw before; list flaws from the leading end on, and join those that touch",
	BeyondEnd:         "lies beyond the end of the roll",
	AllFlawed:         "leave nothing of the roll; leave the roll out",
	TooMany:           "are too many",
	ShorterThanRepeat: "is shorter than the repeat",
	PriceMissing:      "is missing, and another size has one; price all sizes or none",
	OtherMoney:        "is in another currency than the price before; use one",
	FreeRolls:         "is 0 and other sizes cost something; say how many there are as available",
	NothingThere:      "is 0, no other size is to be had, and no roll is there",
}

// LabelError says which field of a paper is at fault. Field is its name in a job
// document: "width", "motif.head", "rolls[0].flaws[1].to", counted from 0.
type LabelError struct {
	Paper string
	Field string
	Fault Fault
	// Value is what the field holds, and Limit what it is held against; both 0
	// where the field is no length.
	Value, Limit measure.Length
	// Part is what the field belongs to, as people call it: `roll "3"`; the zero
	// Message for the label itself.
	Part message.Message
}

// Error names the field, its value and the limit, but not the paper.
func (e *LabelError) Error() string { return e.Said().Error() }

// Said returns the same to be said in any language.
func (e *LabelError) Said() message.Message {
	if e.Part.Code == "" {
		return e.said(e.Field)
	}
	field := e.Field[strings.LastIndexByte(e.Field, '.')+1:]
	return message.New("label_part", "{part}: {what}", "part", e.Part, "what", e.said(field))
}

// said says it of a field by its own name.
func (e *LabelError) said(field string) message.Message {
	fault := message.New("label_"+string(e.Fault), faults[e.Fault])
	switch {
	case e.Limit != 0:
		return message.New("label_limit", "{field} {value} {fault} ({limit})", "field", field, "value", e.Value, "fault", fault, "limit", e.Limit)
	case e.Value != 0:
		return message.New("label_value", "{field} {value} {fault}", "field", field, "value", e.Value, "fault", fault)
	}
	return message.New("label", "{field} {fault}", "field", field, "fault", fault)
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
	// What is looked at, for people and as a path; nothing for the label itself.
	part message.Message
	path string
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

// mostKept is up to how many rolls are kept: a count beyond that is a slip.
const mostKept = 1000

func (c *checker) goods() {
	p := c.paper
	if p.Paste < PasteTheWall || p.Paste > SelfAdhesive {
		c.refuse("paste", UnknownWord, 0, 0)
	}
	if p.SoakMin < 0 {
		c.refuse("soak_minutes", Negative, 0, 0)
	}
	switch {
	case p.Keep < 0:
		c.refuse("keep", Negative, 0, 0)
	case p.Keep > mostKept:
		c.refuse("keep", TooManyKept, 0, 0)
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
