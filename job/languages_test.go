package job_test

import (
	"errors"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"firstdrop/job"
	"firstdrop/job/yaml"
	catalogues "firstdrop/words"
)

// english is what no German or French sentence holds outside quotation marks.
var english = regexp.MustCompile(`(?i)\b(the|is|are|must|write|leave|measure it|known here|keep one)\b`)

// quotedText is what came from the document itself.
var quotedText = regexp.MustCompile("\"[^\"]*\"|`[^`]*`")

// Every mistake in the test documents is said in every language, with everything
// filled in, and in no language but the one asked for.
func TestProblemsInEveryLanguage(t *testing.T) {
	files, _ := filepath.Glob("testdata/*.txtar")
	codes := map[string]bool{}
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range archive.Files {
			var wrong job.Problems
			if _, err := yaml.Read(f.Name, f.Data); strings.HasSuffix(f.Name, ".want") || !errors.As(err, &wrong) {
				continue
			}
			for _, p := range wrong {
				codes[p.What.Code] = true
				inEveryLanguage(t, p)
			}
		}
	}
	if len(codes) < 75 {
		t.Errorf("only %d kinds of problems met", len(codes))
	}
}

func inEveryLanguage(t *testing.T, p job.Problem) {
	t.Helper()
	p.File = "" // speaks English
	first := p.In(nil)
	for _, tag := range catalogues.Languages()[1:] {
		text := p.In(catalogues.For(tag))
		if strings.Contains(text, "{"+p.What.Code) || strings.Contains(text, "{why}") {
			t.Errorf("%s: %s", tag, text)
		}
		if tag == "en-US" {
			continue
		}
		if said := quotedText.ReplaceAllString(text, ""); said == quotedText.ReplaceAllString(first, "") || english.MatchString(said) {
			t.Errorf("%s, %s: not translated: %s", tag, p.What.Code, text)
		}
	}
}
