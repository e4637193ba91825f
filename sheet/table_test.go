package sheet

import (
	"bytes"
	"testing"

	"firstdrop/measure"
	"firstdrop/words"
)

func TestTable(t *testing.T) {
	tests := []struct {
		sys  measure.System
		want string
	}{
		{measure.Metric, "roll_name,length_mm\r\n\"a, b\",12.7\r\n'=x,-1\r\n"},
		{measure.Imperial, "roll_name,length_mm,length_ft_in\r\n\"a, b\",12.7,\"1/2\"\"\"\r\n'=x,-1,\"≈ -1/16\"\"\"\r\n"},
	}
	for _, tt := range tests {
		var b bytes.Buffer
		tab := newTable("as-hung", words.For("").In(tt.sys))
		tab.text("roll-name", "a, b")
		tab.length("length", measure.Inch/2)
		tab.end()
		tab.text("roll-name", "=x")
		tab.length("length", -mm) // a negative number is a number
		tab.end()
		if err := tab.WriteCSV(&b); err != nil {
			t.Fatal(err)
		}
		if got := b.String(); got != tt.want {
			t.Errorf("%v:\n got %q\nwant %q", tt.sys, got, tt.want)
		}
	}
}

func TestInert(t *testing.T) {
	for text, want := range map[string]string{"": "", "A": "A", "=1": "'=1", "+1": "'+1", "-x": "'-x", "@x": "'@x", "\tx": "'\tx", "a=1": "a=1"} {
		if got := inert(text); got != want {
			t.Errorf("inert(%q) = %q, want %q", text, got, want)
		}
	}
}
