package printing_test

import (
	"bytes"
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
	read := printing.Print(printing.PrintRequest{ID: 4, Kind: printing.AskRead, Name: "wall.yaml", Text: string(text)})
	if read.ID != 4 || read.Job == nil || len(read.Problems) > 0 {
		t.Fatalf("%+v", read)
	}
	for kind, begins := range map[printing.PrintKind]string{
		printing.AskYAML: "firstdrop: 1\n", printing.AskSheets: "%PDF-", printing.AskWorkbook: "PK\x03\x04", printing.AskWall: "<svg",
	} {
		a := printing.Print(printing.PrintRequest{Kind: kind, Job: read.Job, Words: screen.Words{Locale: "de", Units: "metric"}, Sheets: []string{"cutting"}})
		if a.Failure != "" || a.File == nil || !bytes.Contains(a.File.Data[:min(len(a.File.Data), 200)], []byte(begins)) {
			t.Errorf("%s: %s %v", kind, a.Failure, a.Problems)
		}
	}
}

// What is wrong in a file is told with its line, and what was typed stays as it is.
func TestReadWithFaults(t *testing.T) {
	a := printing.Print(printing.PrintRequest{Kind: printing.AskRead, Name: "a.yaml", Text: "firstdrop: 1\nunits: mm\nroom: {closed: false, walls: [{name: A, width: 012, height: 2400}]}\npapers: [{name: P, widht: 53 cm, roll: 10 m, match: free}]\n"})
	if !strings.Contains(string(a.Job), `"width": "012"`) || !strings.Contains(string(a.Job), `"height": 2400`) {
		t.Errorf("job %s", a.Job)
	}
	if len(a.Problems) == 0 || a.Problems[0].Line != 4 {
		t.Errorf("problems %+v", a.Problems)
	}
	if a := printing.Print(printing.PrintRequest{Kind: "sing"}); a.Failure == "" {
		t.Error("it sings")
	}
}
