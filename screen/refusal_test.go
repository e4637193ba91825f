package screen

import (
	"encoding/json"
	"testing"
)

// What is wrong in a job is said in the language of the request too.
func TestProblemsInTheLanguageOfTheRequest(t *testing.T) {
	job := json.RawMessage(`{"firstdrop": 1, "units": "mm", "room": {"closed": false, "walls": [{"name": "A", "width": 3000}]}, "papers": [{"name": "Vine", "width": 530, "roll": 10050, "match": "free"}]}`)
	a := New().answer(Request{Kind: AskPlan, Job: job, Words: Words{Locale: "de"}})
	want := "Wand A hat keine Höhe (height); hier eine schreiben, oder unter room eine für alle Wände"
	if len(a.Problems) != 1 || a.Problems[0].Text != want {
		t.Errorf("%+v, want %q", a.Problems, want)
	}
}

// Why a request cannot be answered is said in its language, to the last word.
func TestRefusals(t *testing.T) {
	sound := examples(t)["plain-room.yaml"]
	start := json.RawMessage(`{"wall": "A", "edge": "9 mm"}`)
	tests := []struct {
		name string
		r    Request
		want string
	}{
		{"no such run", Request{Kind: AskWhy, Job: sound, Run: 6, Start: start}, "Das lässt sich nicht beantworten: eine Fläche 7 gibt es nicht"},
		{"nothing proposed", Request{Kind: AskWhy, Job: sound}, "Das lässt sich nicht beantworten: weder ein Anfang noch eine Schlussnaht ist vorgeschlagen"},
		{
			"no such paper",
			Request{Kind: AskPapers, Job: sound, Paper: "Ranke", Papers: []json.RawMessage{json.RawMessage(`{}`)}},
			"Das lässt sich nicht beantworten: der Auftrag hat keine Tapete mit dem Namen Ranke",
		},
		{
			"no paper at all",
			Request{Kind: AskPapers, Job: sound, Papers: []json.RawMessage{json.RawMessage(`7`)}},
			"Das lässt sich nicht beantworten: „paper“ ist nicht so geschrieben, wie ein Auftrag es braucht",
		},
	}
	for _, tt := range tests {
		tt.r.Words = Words{Locale: "de"}
		if a := New().answer(tt.r); a.Failure != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, a.Failure, tt.want)
		}
	}
}
