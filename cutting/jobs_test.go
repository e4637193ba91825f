package cutting

import (
	"bufio"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"firstdrop/measure"
)

const mm = measure.Millimetre

// job is a named question in millimetres, as testdata/ten.txt writes it.
type job struct {
	name string
	spec Spec
}

func newProblem(t testing.TB, s Spec) *Problem {
	t.Helper()
	p, err := NewProblem(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// solve solves and checks.
func solve(t testing.TB, s Spec) *Solution {
	t.Helper()
	sol := Solve(newProblem(t, s), Options{})
	for _, err := range sol.Check() {
		t.Errorf("%v\n%+v", err, s)
	}
	return sol
}

func tenJobs(t testing.TB) []job {
	t.Helper()
	f, err := os.Open("testdata/ten.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var jobs []job
	for sc := bufio.NewScanner(f); sc.Scan(); {
		jobs = append(jobs, parseJob(t, sc.Text()))
	}
	return jobs
}

// parseJob reads "name R 10050 P 530 s [77] [{2510 70 13} {980 10 3}]".
func parseJob(t testing.TB, line string) job {
	t.Helper()
	field := strings.Fields(strings.NewReplacer("[", " ", "]", " ", "{", " ", "}", " ").Replace(line))
	num := func(s string) measure.Length {
		n, err := strconv.Atoi(strings.TrimSuffix(s, "h"))
		if err != nil {
			t.Fatal(err)
		}
		return measure.Length(n) * mm
	}
	j := job{name: field[0]}
	j.spec.Roll = Roll{Length: num(field[2]), Start: StartAt(num(field[6]))}
	j.spec.Repeat = num(field[4])
	for f := field[7:]; len(f) >= 3; f = f[3:] {
		for range int(num(f[2]) / mm) {
			j.spec.Pieces = append(j.spec.Pieces, Piece{num(f[0]), num(f[1])})
		}
	}
	return j
}

// anyStart returns the spec with the roll's start unknown.
func anyStart(s Spec) Spec {
	s.Roll.Start = AnyStart
	return s
}

func (j job) String() string { return fmt.Sprintf("%s (%d pieces)", j.name, len(j.spec.Pieces)) }
