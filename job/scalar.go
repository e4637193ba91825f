package job

import (
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"unicode/utf8"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/room"
)

// scale is what the meaning of a number without a unit depends on.
type scale struct{ unit measure.Unit }

// errNoUnit says that only the unit is missing, in a job that states none.
var errNoUnit = errors.New("a unit is missing")

func (s scale) length(text string) (measure.Length, error) {
	l, err := measure.ParseLength(text, s.unit)
	if err != nil && s.unit == 0 {
		if _, other := measure.ParseLength(text, measure.Millimetres); other == nil {
			return 0, errNoUnit
		}
	}
	return l, err
}

// scalars says how the types that are single values are read.
var scalars = map[reflect.Type]func(s scale, text string, v reflect.Value) error{
	reflect.TypeFor[measure.Length](): func(s scale, text string, v reflect.Value) error {
		l, err := s.length(text)
		v.SetInt(int64(l))
		return err
	},
	reflect.TypeFor[measure.Angle](): func(_ scale, text string, v reflect.Value) error {
		a, err := measure.ParseAngle(text)
		v.SetInt(int64(a))
		return err
	},
	reflect.TypeFor[money.Amount]():     readText,
	reflect.TypeFor[measure.Unit]():     readText,
	reflect.TypeFor[paper.Paste]():      readText,
	reflect.TypeFor[paper.Lines]():      readText,
	reflect.TypeFor[cutting.Goal]():     readText,
	reflect.TypeFor[room.Sight]():       readText,
	reflect.TypeFor[room.CornerKind]():  readText,
	reflect.TypeFor[room.OpeningKind](): readText,
	reflect.TypeFor[room.FittingKind](): readText,
}

// readText lets the type read itself.
func readText(_ scale, text string, v reflect.Value) error {
	if text == "" {
		return says("empty")
	}
	return v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text))
}

// offsetIn returns how many characters behind the beginning of the node the
// trouble stands, where the error knows.
func offsetIn(n *Node, err error) int {
	offset, text := 0, ""
	var length *measure.LengthError
	var angle *measure.AngleError
	switch {
	case errors.As(err, &length):
		offset, text = length.Offset, length.Text
	case errors.As(err, &angle):
		offset, text = angle.Offset, angle.Text
	}
	// An escape or a line break would shift the count.
	if n.Quoted || text != n.Value || strings.ContainsAny(text, "\n\\") {
		return 0
	}
	return utf8.RuneCountInString(text[:min(offset, len(text))])
}

// shaped is a type with a notation of its own.
type shaped interface {
	readNode(r *reader, n *Node, path string)
	node(s scale) *Node
}

// A Span and an Allowance are written as one length, which stands for both, or
// as a mapping; these are the mappings.
type (
	spanKeys struct {
		Left  measure.Length `job:"left,required"`
		Right measure.Length `job:"right,required"`
	}
	allowanceKeys struct {
		Head measure.Length `job:"head,required"`
		Foot measure.Length `job:"foot,required"`
	}
)

func (s *Span) readNode(r *reader, n *Node, path string) {
	if n.Kind == Scalar {
		r.read(n, reflect.ValueOf(&s.Left).Elem(), path)
		s.Right = s.Left
		return
	}
	r.mapping(n, reflect.ValueOf((*spanKeys)(s)).Elem(), path)
}

func (a *Allowance) readNode(r *reader, n *Node, path string) {
	if n.Kind == Scalar {
		r.read(n, reflect.ValueOf(&a.Head).Elem(), path)
		a.Foot = a.Head
		return
	}
	r.mapping(n, reflect.ValueOf((*allowanceKeys)(a)).Elem(), path)
}

// cornerKeys is a corner written as a mapping.
type cornerKeys struct {
	Kind  *room.CornerKind `job:"kind"`
	Angle *measure.Angle   `job:"angle"`
	Lean  Ends             `job:"lean"`
	Sight room.Sight       `job:"sight"`
}

func (c *Corner) readNode(r *reader, n *Node, path string) {
	if n.Kind == Scalar {
		r.scalar(n, path, func() error { return c.parse(n.Value) })
		return
	}
	var keys cornerKeys
	r.mapping(n, reflect.ValueOf(&keys).Elem(), path)
	c.Lean, c.Sight = keys.Lean, keys.Sight
	switch {
	case keys.Kind != nil:
		c.Kind = *keys.Kind
	case keys.Angle != nil && *keys.Angle > 180*measure.Degree:
		c.Kind = room.Outside
	case n.Kind == Keys && keys.Angle == nil:
		r.refuse(path, n.place(), "corner_bare")
	}
	if keys.Angle != nil {
		c.Angle = *keys.Angle
	}
}

// parse reads "outside", "inside 135" or "270".
func (c *Corner) parse(text string) (err error) {
	word, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	c.Kind, err = room.ParseCornerKind(word)
	switch {
	case err == nil && strings.TrimSpace(rest) == "":
		c.Angle = 0
		return nil
	case err != nil:
		return says("corner_unread", "text", quoted(text))
	}
	if c.Angle, err = measure.ParseAngle(strings.TrimSpace(rest)); err != nil {
		return err
	}
	if c.Kind == room.Outside && c.Angle < 180*measure.Degree && c.Angle > 0 {
		return says("corner_through_room", "angle", measure.FullTurn-c.Angle)
	}
	return nil
}

// point reads [across, up].
func (r *reader) point(n *Node, p *geom.Point, path string) {
	if n.Kind != List || len(n.Items) != 2 {
		r.refuse(path, n.place(), "needs_point", "part", orThis(path))
		return
	}
	r.read(n.Items[0], reflect.ValueOf(&p.X).Elem(), path+"[0]")
	r.read(n.Items[1], reflect.ValueOf(&p.Y).Elem(), path+"[1]")
}

// sides reads a list of left, right, head and sill.
func (r *reader) sides(n *Node, s *room.Sides, path string) {
	var words []string
	r.list(n, reflect.ValueOf(&words).Elem(), path)
	for i, w := range words {
		at := fmt.Sprintf("%s[%d]", path, i)
		side := sideOf(s, w)
		switch {
		case side == nil:
			r.refuse(at, n.Items[i].place(), "side_unknown", "text", quoted(w))
		case *side:
			r.refuse(at, n.Items[i].place(), "twice", "what", w)
		default:
			*side = true
		}
	}
}

// sideWords are the sides in the order in which they are printed.
var sideWords = []string{"left", "right", "head", "sill"}

func sideOf(s *room.Sides, word string) *bool {
	switch word {
	case "left":
		return &s.Left
	case "right":
		return &s.Right
	case "head":
		return &s.Head
	case "sill":
		return &s.Sill
	}
	return nil
}
