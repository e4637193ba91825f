package printing_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"firstdrop/screen"
	"firstdrop/screen/printing"
)

// A file is read, written again, printed and drawn.
func TestPrint(t *testing.T) {
	text, err := os.ReadFile("../../examples/feature-wall.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := printing.Print(printing.PrintRequest{ID: 4, Kind: printing.AskRead, Name: "wall.yaml", Text: string(text)}, nil)
	if read.ID != 4 || read.Job == nil || len(read.Problems) > 0 {
		t.Fatalf("%+v", read)
	}
	var job struct{ Papers []struct{ Name string } }
	if err := json.Unmarshal(read.Job, &job); err != nil {
		t.Fatal(err)
	}
	for kind, begins := range map[printing.PrintKind]string{
		printing.AskYAML: "firstdrop: 1\n", printing.AskSheets: "%PDF-", printing.AskWorkbook: "PK\x03\x04", printing.AskWall: "<svg",
		printing.AskCuttingList: "_mm,", printing.AskRollMap: "_mm,",
	} {
		a := printing.Print(printing.PrintRequest{
			Kind: kind, Job: read.Job, Words: screen.Words{Locale: "de", Units: "metric"}, Sheets: []string{"cutting"}, Paper: job.Papers[0].Name,
		}, nil)
		if a.Failure != "" || a.File == nil || !bytes.Contains(a.File.Data[:min(len(a.File.Data), 200)], []byte(begins)) {
			t.Errorf("%s: %s %v", kind, a.Failure, a.Problems)
		}
	}
}

// A list is of a paper that hangs; in the order of cutting the first piece comes off
// the first roll. The sheets tell how far they are, to the end.
func TestListsAndProgress(t *testing.T) {
	text, err := os.ReadFile("../../examples/door-and-windows.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := printing.Print(printing.PrintRequest{Kind: printing.AskRead, Name: "room.yaml", Text: string(text)}, nil)
	ask := func(r printing.PrintRequest) *printing.File {
		r.Job, r.Words = read.Job, screen.Words{Locale: "en-GB", Units: "metric"}
		last := -1
		a := printing.Print(r, func(done, of int) {
			if done < last || done > of {
				t.Errorf("%d of %d after %d", done, of, last)
			}
			last = done
		})
		if (last >= 0) != (r.Kind == printing.AskSheets) {
			t.Errorf("%s tells of %d parts", r.Kind, last)
		}
		return a.File
	}
	hung, cut := ask(printing.PrintRequest{Kind: printing.AskCuttingList, Paper: "Trellis (invented)"}), ask(printing.PrintRequest{Kind: printing.AskCuttingList, Paper: "Trellis (invented)", AsCut: true})
	if hung == nil || cut == nil || bytes.Equal(hung.Data, cut.Data) || bytes.Count(hung.Data, []byte("\n")) != bytes.Count(cut.Data, []byte("\n")) {
		t.Error("the list is the same in both orders, or has other pieces")
	}
	if ask(printing.PrintRequest{Kind: printing.AskRollMap, Paper: "another"}) != nil {
		t.Error("a list of a paper that does not hang")
	}
	if ask(printing.PrintRequest{Kind: printing.AskSheets, Sheets: []string{"cutting", "hanging"}}) == nil {
		t.Error("no sheets")
	}
}

// What is wrong in a file is told with its line, and what was typed stays as it is.
func TestReadWithFaults(t *testing.T) {
	a := printing.Print(printing.PrintRequest{Kind: printing.AskRead, Name: "a.yaml", Text: "firstdrop: 1\nunits: mm\nroom: {closed: false, walls: [{name: A, width: 012, height: 2400}]}\npapers: [{name: P, widht: 53 cm, roll: 10 m, match: free}]\n"}, nil)
	if !strings.Contains(string(a.Job), `"width": "012"`) || !strings.Contains(string(a.Job), `"height": 2400`) {
		t.Errorf("job %s", a.Job)
	}
	if len(a.Problems) == 0 || a.Problems[0].Line != 4 {
		t.Errorf("problems %+v", a.Problems)
	}
	if a := printing.Print(printing.PrintRequest{Kind: "sing"}, nil); a.Failure == "" {
		t.Error("it sings")
	}
}
