package firstdrop_test

import (
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"firstdrop/audit"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/plan"
)

var update = flag.Bool("update", false, "rewrite what golden jobs are expected to give, for review")

// planned reads, plans and audits a job.
func planned(t *testing.T, name string, data []byte) *plan.Plan {
	t.Helper()
	p, err := makePlan(name, data)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range audit.Plan(p) {
		t.Errorf("%s: %v", name, v)
	}
	return p
}

func makePlan(name string, data []byte) (*plan.Plan, error) {
	j, err := yaml.Read(name, data)
	if err != nil {
		return nil, err
	}
	task, err := j.Task()
	if err != nil {
		return nil, err
	}
	return plan.Make(task)
}

// Golden jobs: a room, its label, and what is to be cut, side by side. What is
// expected was looked through once and is reviewed like code when it changes.
func TestGoldenJobs(t *testing.T) {
	files, err := filepath.Glob("testdata/jobs/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatalf("no golden jobs: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			ar, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if len(ar.Files) == 0 || ar.Files[0].Name != "job.yaml" {
				t.Fatalf("%s does not begin with job.yaml", file)
			}
			got := []byte(told(planned(t, file, ar.Files[0].Data)))
			if *update {
				ar.Files = append(ar.Files[:1], txtar.File{Name: "want", Data: got})
				if err := os.WriteFile(file, txtar.Format(ar), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if len(ar.Files) != 2 || !bytes.Equal(ar.Files[1].Data, got) {
				t.Errorf("%s gives\n%s\n(go test . -run Golden -update rewrites it)", file, got)
			}
		})
	}
}

// told writes down what a person would compare: counts, where to begin, the
// seams that miss, the pieces in hanging order and the rolls.
func told(p *plan.Plan) string {
	var b strings.Builder
	d := p.Document("")
	for _, s := range d.Summary.Papers {
		fmt.Fprintf(&b, "%s: %d drops, %d pieces, %d rolls, at least %d, by area %d\n",
			s.Name, s.Drops, s.Pieces, s.Rolls, s.LowerBound, s.AreaEstimateRolls)
	}
	for i, r := range d.Runs {
		fmt.Fprintf(&b, "run %s\n", r.Name)
		for _, l := range r.Plumbs {
			fmt.Fprintf(&b, "  plumb %s %v from %v, %v edge of %d\n", l.Wall, l.Distance, l.From, l.Edge, l.Drop)
		}
		for k, s := range r.Seams {
			if !p.Runs[i].Layout.Seams[k].Meets() {
				fmt.Fprintf(&b, "  %v at %s %v: across %v to %v, along %v\n", s.Kind, s.Wall, s.X, s.Across[0], s.Across[1], s.Along)
			}
		}
		for _, piece := range r.Pieces {
			fmt.Fprintf(&b, "  %s %s %v at %v\n", piece.Name, piece.Wall, piece.Length, piece.Phase)
		}
	}
	for _, paper := range d.Papers {
		for _, batch := range paper.Batches {
			for _, r := range batch.Rolls {
				fmt.Fprintf(&b, "roll %d of %s:", r.Roll, paper.Name)
				for _, c := range r.Orders[0].Cuts {
					for k, g := range c.Gives {
						fmt.Fprintf(&b, "%s%s", map[bool]string{true: " ", false: "|"}[k == 0], g.Piece)
					}
				}
				fmt.Fprintf(&b, ", left %v\n", r.Left.FloorTo(measure.Millimetre))
			}
		}
	}
	return b.String()
}

// Every example plans, and passes the audit.
func TestExamples(t *testing.T) {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil || len(files) < 12 {
		t.Fatalf("%d examples: %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p := planned(t, file, data)
		for i := range p.Papers {
			if pp := &p.Papers[i]; !pp.Proven() {
				t.Errorf("%s: %d rolls to buy, at least %d: not proven", file, pp.Buy(), pp.LowerBound())
			}
		}
	}
}

// Whatever figure of an example is mistyped, the job is refused, or planned so
// that it passes the audit: never planned wrong.
func TestMistypedExamples(t *testing.T) {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	figure := regexp.MustCompile(`\b\d+\b`)
	cases := 120
	if testing.Short() {
		cases = 20
	}
	planned := 0
	for seed := range cases {
		r := rand.New(rand.NewPCG(1, uint64(seed)))
		file := files[r.IntN(len(files))]
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		at := figure.FindAllIndex(data, -1)
		where := at[r.IntN(len(at))]
		mistyped := string(data[:where[0]]) + mistype(r, string(data[where[0]:where[1]])) + string(data[where[1]:])
		p, err := makePlan(file, []byte(mistyped))
		if err != nil {
			continue
		}
		planned++
		if vs := audit.Plan(p); len(vs) > 0 {
			t.Errorf("seed %d, %s with %q changed: %v", seed, file, data[where[0]:where[1]], vs[0])
		}
	}
	if planned < cases/3 {
		t.Errorf("only %d of %d mistyped jobs were planned", planned, cases)
	}
}

// mistype returns another figure: one digit wrong, lost or doubled, or a little
// off.
func mistype(r *rand.Rand, text string) string {
	i := r.IntN(len(text))
	switch r.IntN(4) {
	case 0:
		return text[:i] + strconv.Itoa(r.IntN(10)) + text[i+1:]
	case 1:
		if len(text) > 1 {
			return text[:i] + text[i+1:]
		}
	case 2:
		return text[:i] + text[i:i+1] + text[i:]
	}
	n, _ := strconv.Atoi(text)
	return strconv.Itoa(max(0, n+r.IntN(41)-20))
}
