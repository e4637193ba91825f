package tell

import "testing"

func TestSentences(t *testing.T) {
	got := Sentences("9 rolls: 251.10 EUR", "", "8 will not do (proven).", " Ask for one batch ")
	if want := "9 rolls: 251.10 EUR. 8 will not do (proven). Ask for one batch."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := Sentences(); got != "" {
		t.Errorf("nothing said: got %q", got)
	}
}
