package screen

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"firstdrop/job"
)

var everyKind = []Kind{AskSurvey, AskPlan, AskAlternatives, AskWhy, AskPapers, AskCutting, AskCertainty, AskCliffs}

// Lists without anything in them are written as such: the front end takes none for
// null. And every text is there, in every language and both systems.
func TestAnswersAreWhole(t *testing.T) {
	for name, document := range examples(t) {
		p := New()
		for _, w := range []Words{{"en-GB", "metric"}, {"en-US", "imperial"}, {"de", "metric"}, {"fr", "metric"}} {
			for _, kind := range []Kind{AskPlan, AskCutting} {
				answer := p.AnswerJSON(encodedRequest(t, Request{Kind: kind, Job: document, Words: w}))
				checkWhole(t, name, answer)
			}
		}
	}
}

func checkWhole(t *testing.T, name string, answer []byte) {
	t.Helper()
	if bytes.Contains(answer, []byte(`":null`)) && !bytes.Contains(answer, []byte(`"choose"`)) {
		t.Errorf("%s: null in %.200s", name, after(answer, `":null`))
	}
	for _, hole := range []string{`"{`, `{screen`, "{page", "{buy", "{tell"} {
		if at := after(answer, hole); at != nil && hole != `"{` {
			t.Errorf("%s: a text is missing: %.100s", name, at)
		}
	}
	if bytes.Contains(answer, []byte(`"text":"",`)) || bytes.Contains(answer, []byte(`"label":""`)) {
		t.Errorf("%s: an empty text in %.300s", name, after(answer, `"text":""`))
	}
}

func after(text []byte, part string) []byte {
	if i := bytes.Index(text, []byte(part)); i >= 0 {
		return text[max(0, i-80):]
	}
	return nil
}

func encodedRequest(t testing.TB, r Request) []byte {
	t.Helper()
	data, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestEveryKind(t *testing.T) {
	document := examples(t)["plain-room.yaml"]
	for _, kind := range everyKind {
		r := Request{ID: 1, Version: 9, Kind: kind, Job: document, Words: Words{Locale: "en-GB"}, Jobs: 50}
		switch kind {
		case AskWhy:
			r.Start = json.RawMessage(`{"wall": "A", "edge": "100 mm"}`)
		case AskPapers:
			r.Papers = []json.RawMessage{json.RawMessage(`{"name": "Q", "width": "700 mm", "roll": "10 m", "match": "free"}`), json.RawMessage(`{"name": "Q", "width": 7}`)}
		}
		a := New().answer(r)
		if a.Failure != "" || len(a.Problems) > 0 {
			t.Errorf("%s: %s %v", kind, a.Failure, a.Problems)
		}
		filled := map[Kind]bool{
			AskSurvey: a.Survey != nil && a.Plan == nil, AskPlan: a.Survey != nil && a.Plan != nil, AskAlternatives: len(a.Alternatives) > 0,
			AskWhy: a.Why != nil, AskPapers: len(a.Papers) == 2, AskCutting: a.Cutting != nil, AskCertainty: a.Certainty != nil, AskCliffs: a.Cliffs != nil,
		}
		if !filled[kind] {
			t.Errorf("%s: not answered: %+v", kind, a)
		}
		answer := New().AnswerJSON(encodedRequest(t, r))
		checkWhole(t, string(kind), answer)
		if kind == AskPapers && (a.Papers[0].Plan == nil || a.Papers[1].Plan != nil || len(a.Papers[1].Problems) == 0) {
			t.Errorf("papers: %+v", a.Papers)
		}
	}
}

// What cannot be planned is still drawn, and says why it cannot.
func TestUnfinishedJob(t *testing.T) {
	a := asked(t, AskPlan, json.RawMessage(`{"firstdrop": 1, "units": "mm", "room": {"closed": true, "height": 2400, "walls": [
		{"name": "A", "width": 3000}, {"name": "B", "width": ""}, {"name": "C", "width": 3000}]}, "papers": []}`))
	if a.Plan != nil || a.Survey == nil || len(a.Survey.Runs) != 1 || len(a.Survey.Runs[0].Walls) != 2 || len(a.Survey.Floor.Walls) != 2 {
		t.Errorf("%+v", a.Survey)
	}
	var paths []string
	for _, p := range a.Problems {
		paths = append(paths, p.Path)
	}
	if diff := cmp.Diff([]string{"room.walls[1].width", "papers"}, paths); diff != "" {
		t.Errorf("problems (-want +got)\n%s\n%v", diff, a.Problems)
	}
}

// A sound job whose pieces no roll gives says so where the roll is written.
func TestTooLong(t *testing.T) {
	a := asked(t, AskPlan, json.RawMessage(`{"firstdrop": 1, "units": "mm", "room": {"closed": false, "height": 24000, "walls": [{"name": "A", "width": 3000}]},
		"papers": [{"name": "P", "width": 530, "roll": "10 m", "match": "free"}]}`))
	if a.Plan != nil || len(a.Problems) != 1 || a.Problems[0].Path != "papers[0].roll" || !strings.Contains(a.Problems[0].Text, "24100 mm") {
		t.Errorf("%+v", a.Problems)
	}
}

// Every alternative of every example, taken into the job, is the very layout that was
// shown.
func TestChoicesComeOutAgain(t *testing.T) {
	for name, document := range examples(t) {
		for n, alternative := range asked(t, AskAlternatives, document).Alternatives {
			again := asked(t, AskPlan, taken(t, document, alternative.Choose))
			if again.Plan == nil {
				t.Fatalf("%s, %d: %v", name, n, again.Problems)
			}
			if diff := cmp.Diff(layoutsOf(&alternative.Plan), layoutsOf(again.Plan)); diff != "" {
				t.Errorf("%s: alternative %d (-offered +planned again)\n%.600s", name, n, diff)
			}
		}
	}
}

// In a crooked room an alternative is chosen by what its walls are set to as well:
// another start might have them set otherwise.
func TestChoicesSetWalls(t *testing.T) {
	a := asked(t, AskAlternatives, examples(t)["crooked-ceiling.yaml"])
	for n, alternative := range a.Alternatives {
		var set []job.SetTo
		for _, c := range alternative.Choose {
			if err := json.Unmarshal(c.Set["set_to"], &set); err != nil || len(set) == 0 {
				t.Errorf("alternative %d: %s, %v", n, c.Set["set_to"], err)
			}
		}
	}
	if len(a.Alternatives) == 0 {
		t.Error("no alternatives")
	}
}

// taken returns a job with what an alternative is chosen by.
func taken(t *testing.T, document json.RawMessage, choices []Choice) json.RawMessage {
	t.Helper()
	doc, err := editable(document)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range choices {
		for key, value := range c.Set {
			if doc.hang[c.Hang][key] = value; string(value) == "null" {
				delete(doc.hang[c.Hang], key)
			}
		}
	}
	return mustText(t, doc)
}

// layoutsOf returns what of a plan does not tell whether it is fixed.
func layoutsOf(p *Plan) (all []any) {
	for i := range p.Runs {
		all = append(all, p.Runs[i].Drops, p.Runs[i].Seams, p.Runs[i].Kill, p.Runs[i].Design)
	}
	return all
}

// A session that has seen other states of a job answers as a new one does: while a
// start, an opening or a wall is dragged, and back again.
func TestDragsAnswerAsNew(t *testing.T) {
	for _, name := range []string{"door-and-windows.yaml", "half-drop.yaml", "out-of-plumb.yaml", "two-batches.yaml"} {
		document := examples(t)[name]
		p := New()
		for step, text := range dragged(t, document) {
			r := Request{Kind: AskPlan, Job: text, Words: Words{Locale: "de"}}
			got, want := encoded(p.answer(r)), encoded(New().answer(r))
			if !bytes.Equal(got, want) {
				t.Errorf("%s, step %d: %.300s, want %.300s", name, step, got, want)
			}
		}
	}
}

// dragged returns a job with its start, and then its first opening, a few
// millimetres on each time.
func dragged(t testing.TB, document json.RawMessage) (texts []json.RawMessage) {
	t.Helper()
	first := asked(t, AskPlan, document)
	start := first.Plan.Runs[0].Start
	for _, by := range []float64{1, 4, 10, 1, 0} {
		doc, err := editable(document)
		if err != nil {
			t.Fatal(err)
		}
		at, _ := json.Marshal(map[string]any{"wall": start.Wall, "edge": jsonMM(start.Edge + by)})
		doc.hang[0]["start"] = at
		texts = append(texts, mustText(t, doc))
	}
	for _, by := range []float64{1, 7, 0} {
		var job map[string]any
		if err := json.Unmarshal(document, &job); err != nil {
			t.Fatal(err)
		}
		if o := firstOpening(job); o != nil {
			o["left"] = jsonMM(mmOf(t, o["left"]) + by)
		}
		text, err := json.Marshal(job)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, text)
	}
	return texts
}

func firstOpening(job map[string]any) map[string]any {
	for _, w := range job["room"].(map[string]any)["walls"].([]any) {
		openings, _ := w.(map[string]any)["openings"].([]any)
		for _, o := range openings {
			if o := o.(map[string]any); o["left"] != nil {
				return o
			}
		}
	}
	return nil
}

// Whatever comes, there is an answer, and no mistake of the program in it.
func FuzzAnswerJSON(f *testing.F) {
	for _, document := range examples(f) {
		for _, kind := range []Kind{AskSurvey, AskPlan, AskWhy} {
			f.Add([]byte(encodedRequest(f, Request{Kind: kind, Job: document, Start: json.RawMessage(`{"wall": "A", "edge": "9 mm"}`)})))
		}
	}
	f.Add([]byte(`{"kind":"papers","job":{"papers":[null]},"papers":[{}]}`))
	f.Add([]byte(`{"kind":"why","job":{"papers":[{"name":1}],"hang":[null]},"kill":3}`))
	f.Fuzz(func(t *testing.T, request []byte) {
		var r Request
		if json.Unmarshal(request, &r) != nil {
			New().AnswerJSON(request)
			return
		}
		r.Jobs = min(r.Jobs, 20)
		if r.Kind == AskAlternatives || r.Kind == AskCliffs {
			return // whole searches: too long for a fuzzer
		}
		// Go's fuzzer takes what answers in over ten seconds for a hang, and measures
		// coverage meanwhile, which makes a search several times as slow. Who plans longer
		// than this is stopped, and told so, like a plan that nobody waits for.
		p, late := New(), time.Now().Add(3*time.Second)
		p.Stop = func() bool { return time.Now().After(late) }
		if a := p.answer(r); !json.Valid(encoded(a)) {
			t.Errorf("no JSON: %+v", a)
		}
	})
}

// Where no seam may stand is drawn on its wall, and only there.
func TestKeepOffIsDrawn(t *testing.T) {
	document := bytes.Replace(examples(t)["plain-room.yaml"], []byte(`"papers":`),
		[]byte(`"hang":[{"paper":"`+paperName(t, "plain-room.yaml")+`","keep_off":[{"wall":"B","from":"40 cm","to":"1.2 m"},{"wall":"A","from":"5 m","to":"4 m"}]}],"papers":`), 1)
	found := 0
	for _, w := range asked(t, AskSurvey, document).Survey.Runs[0].Walls {
		for _, k := range w.KeepOff {
			found++
			if w.Name != "B" || k.Index != 0 || k.From != w.X+400 || k.To != w.X+1200 || !strings.Contains(k.Label, "400 mm") {
				t.Errorf("on wall %s: %+v", w.Name, k)
			}
		}
	}
	if found != 1 {
		t.Errorf("%d stretches are drawn", found)
	}
}

func paperName(t *testing.T, example string) string {
	t.Helper()
	var j struct{ Papers []struct{ Name string } }
	if err := json.Unmarshal(examples(t)[example], &j); err != nil || len(j.Papers) == 0 {
		t.Fatal(err)
	}
	return j.Papers[0].Name
}

// The marks on a cut lie one repeat apart, and the first as far behind its leading end
// as the cutting list says that the end lies behind such a mark, less a repeat.
func TestMarksOnCuts(t *testing.T) {
	a := asked(t, AskCutting, examples(t)["door-and-windows.yaml"])
	const repeat = 530.0 // of the example's label
	into := regexp.MustCompile(`(\d+) mm into the repeat`)
	seen := 0
	for _, roll := range a.Cutting.Papers[0].Rolls {
		for _, cut := range roll.Orders[0].Cuts {
			if m := into.FindStringSubmatch(cut.Text); m != nil && len(cut.Marks) > 0 {
				seen++
				phase, _ := strconv.ParseFloat(m[1], 64)
				if off := cut.Marks[0] - cut.From - (repeat - phase); math.Abs(off) > 1 {
					t.Errorf("%s: the first mark lies %v behind the leading end", cut.Text, cut.Marks[0]-cut.From)
				}
			}
			for i := range cut.Marks {
				if i > 0 && math.Abs(cut.Marks[i]-cut.Marks[i-1]-repeat) > 0.01 || cut.Marks[i] < cut.From || cut.Marks[i] >= cut.To {
					t.Errorf("%s: marks at %v, from %v to %v", cut.Text, cut.Marks, cut.From, cut.To)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no cut begins within the repeat")
	}
}
