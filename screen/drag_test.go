package screen

import (
	"encoding/json"
	"strconv"
	"testing"

	"firstdrop/measure"
)

// jsonMM writes millimetres as a job says them.
func jsonMM(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) + " mm" }

// mmOf reads a length of a job.
func mmOf(t testing.TB, value any) float64 {
	t.Helper()
	text, _ := value.(string)
	l, err := measure.ParseLength(text, measure.Millimetres)
	if err != nil {
		t.Fatal(err)
	}
	return float64(l) / perMM
}

func mustText(t testing.TB, d *document) json.RawMessage {
	t.Helper()
	text, err := d.text()
	if err != nil {
		t.Fatal(err)
	}
	return text
}
