package paper

import (
	"strings"
	"testing"
)

func TestLines(t *testing.T) {
	for _, l := range []Lines{LinesLoose, LinesLevel, LinesUpright, LinesBoth} {
		text, _ := l.MarshalText()
		var back Lines
		if err := back.UnmarshalText(text); err != nil || back != l {
			t.Errorf("%s reads back as %v, %v", text, back, err)
		}
	}
	var l Lines
	if err := l.UnmarshalText([]byte("wavy")); err == nil || !strings.Contains(err.Error(), "loose, level, upright, both") {
		t.Errorf("an unknown word gives %v", err)
	}
	if Lines(9).String() != "unknown lines" || LinesUnstated.String() != "" {
		t.Error("what is unknown or unstated has a name of its own")
	}
}
