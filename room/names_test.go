package room

import (
	"encoding"
	"testing"
)

// parsing gives any of the Parse functions one shape.
func parsing[T encoding.TextMarshaler](parse func(string) (T, error)) func(string) (encoding.TextMarshaler, error) {
	return func(s string) (encoding.TextMarshaler, error) { v, err := parse(s); return v, err }
}

func TestNamesThereAndBack(t *testing.T) {
	for _, c := range []struct {
		what  string
		names []string
		parse func(string) (encoding.TextMarshaler, error)
		wrong string
	}{
		{"opening", []string{"door", "window", "arch", "fireplace", "furniture", "panel"}, parsing(ParseOpeningKind), `"hatch" is no kind of opening; it is one of door, window, arch, fireplace, furniture, panel`},
		{"fitting", []string{"socket", "switch", "light", "radiator", "bracket", "vent"}, parsing(ParseFittingKind), `"hatch" is no kind of fitting; it is one of socket, switch, light, radiator, bracket, vent`},
		{"sight", []string{"plain", "focal", "hidden"}, parsing(ParseSight), `"hatch" is no sight; it is one of plain, focal, hidden`},
		{"corner", []string{"inside", "outside"}, parsing(ParseCornerKind), `"hatch" is no kind of corner; it is one of inside, outside`},
	} {
		for _, name := range c.names {
			v, err := c.parse(name)
			if err != nil {
				t.Errorf("%s: %v", c.what, err)
				continue
			}
			if got, _ := v.MarshalText(); string(got) != name {
				t.Errorf("%s %q comes back as %q", c.what, name, got)
			}
		}
		if _, err := c.parse("hatch"); err == nil || err.Error() != c.wrong {
			t.Errorf("%s: error %v", c.what, err)
		}
	}
}

func TestNamesAreInTheOrderOfTheConstants(t *testing.T) {
	for _, c := range []struct {
		got  interface{ String() string }
		want string
	}{
		{Door, "door"},
		{Panel, "panel"},
		{Socket, "socket"},
		{Vent, "vent"},
		{Plain, "plain"},
		{Hidden, "hidden"},
		{Inside, "inside"},
		{Outside, "outside"},
		{OpeningKind(9), "unnamed 9"},
		{CornerKind(-1), "unnamed -1"},
	} {
		if got := c.got.String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestUnmarshalNames(t *testing.T) {
	var (
		o OpeningKind
		f FittingKind
		s Sight
		k CornerKind
	)
	values := []encoding.TextUnmarshaler{&o, &f, &s, &k}
	for i, text := range []string{"arch", "radiator", "focal", "outside"} {
		if err := values[i].UnmarshalText([]byte(text)); err != nil {
			t.Error(err)
		}
	}
	if o != Arch || f != Radiator || s != Focal || k != Outside {
		t.Errorf("read %v, %v, %v, %v", o, f, s, k)
	}
	for _, v := range values {
		if err := v.UnmarshalText(nil); err == nil {
			t.Errorf("%T reads an empty text", v)
		}
	}
}
