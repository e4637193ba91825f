package measure

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestUnitNamesReadBack(t *testing.T) {
	for u := Millimetres; u <= Yards; u++ {
		for _, name := range []string{u.String(), strings.ToUpper(u.String())} {
			if got, err := ParseUnit(name); err != nil || got != u {
				t.Errorf("ParseUnit(%q) = %v, %v; want %v", name, got, err, u)
			}
		}
		one, err := ParseLength("1 "+u.String(), 0)
		if err != nil || one != u.Length() {
			t.Errorf("1 %v = %v, %v; want %v", u, one, err, u.Length())
		}
		if imperial := int64(u.Length())%127 == 0; imperial != (u.System() == Imperial) {
			t.Errorf("%v: system %v", u, u.System()) // 127 divides the inch alone
		}
	}
}

func TestUnitRefuses(t *testing.T) {
	for _, text := range []string{"", "km", "mm ", "millimeterss", "'", "2 mm"} {
		if u, err := ParseUnit(text); err == nil || u != 0 || !strings.Contains(err.Error(), "mm, cm, m, in, ft or yd") {
			t.Errorf("ParseUnit(%q) = %v, %v", text, u, err)
		}
	}
}

// A number that is no unit prints and measures as nothing, and does not panic.
func TestUnitOutOfRange(t *testing.T) {
	if Unit(0).String() != "" || Unit(0).Length() != 0 {
		t.Error("the zero unit has a name or a length")
	}
	if u := Unit(99); u.String() != "unknown unit" || u.Length() != 0 {
		t.Errorf("%v %v", u, u.Length())
	}
}

func TestUnitJSON(t *testing.T) {
	var job struct{ Unit Unit }
	if err := json.Unmarshal([]byte(`{"Unit":"inches"}`), &job); err != nil || job.Unit != Inches {
		t.Fatal(job, err)
	}
	if err := json.Unmarshal([]byte(`{"Unit":"ell"}`), &job); err == nil || job.Unit != Inches {
		t.Error("an unknown unit was read, or it changed the old one")
	}
	if text, err := json.Marshal(job); err != nil || string(text) != `{"Unit":"in"}` {
		t.Error(string(text), err)
	}
}
