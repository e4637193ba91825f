package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"firstdrop/store"
	"firstdrop/store/sqlite"
)

// serving is the program itself as it serves, in a process of its own.
type serving struct {
	cmd    *exec.Cmd
	url    string
	said   []string // line by line
	errors *bytes.Buffer
}

// asServer in the environment makes the test binary the program.
const asServer = "FIRSTDROP_TEST_SERVES"

// startServer starts `firstdrop serve` on a data folder. Without an address it serves
// this machine.
func startServer(t *testing.T, folder string, args ...string) *serving {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	s := &serving{cmd: exec.Command(self, append([]string{"serve", "--data", folder, "--address", "127.0.0.1:0"}, args...)...), errors: &bytes.Buffer{}}
	s.cmd.Env = append(os.Environ(), asServer+"=1", "LC_ALL=C")
	s.cmd.Stderr = s.errors
	out, err := s.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = s.cmd.Process.Kill() })
	for said := bufio.NewScanner(out); said.Scan(); {
		s.said = append(s.said, said.Text())
		if strings.Contains(said.Text(), "Ctrl-C") { // the last line
			s.url = regexp.MustCompile(`https?://[^/]+/`).FindString(s.said[0])
			return s
		}
	}
	t.Fatalf("the server did not begin: %v\n%s", s.cmd.Wait(), s.errors)
	return nil
}

func (s *serving) do(method, path, body string, headers ...string) (status int, etag string, err error) {
	r, err := http.NewRequest(method, s.url+path[1:], strings.NewReader(body))
	if err != nil {
		return 0, "", err
	}
	r.Header.Set("Content-Type", "application/json")
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	response, err := http.DefaultTransport.RoundTrip(r)
	if err != nil {
		return 0, "", err
	}
	defer response.Body.Close()
	_, err = io.Copy(io.Discard, response.Body)
	return response.StatusCode, response.Header.Get("ETag"), err
}

func testID(n int) string { return fmt.Sprintf("01890a5d-ac96-774b-bcce-%012x", n) }

// saver saves the versions of one job, one after the other, until the server is
// gone, and knows which was acknowledged last.
func (s *serving) saver(n int, from int64, saves ...*atomic.Int64) (acknowledged int64) {
	acknowledged = from
	for {
		for _, count := range saves {
			count.Store(acknowledged)
		}
		next := acknowledged + 1
		headers := []string{"If-Match", fmt.Sprintf(`"%d"`, acknowledged)}
		if acknowledged == 0 {
			headers = []string{"If-None-Match", "*"}
		}
		status, etag, err := s.do("PUT", "/api/jobs/"+testID(n), fmt.Sprintf(`{"document": {"n": %d, "pad": %q}}`, next, strings.Repeat("x", 2000)), headers...)
		if err != nil || status != 200 && status != 201 || etag != fmt.Sprintf(`"%d"`, next) {
			return acknowledged
		}
		acknowledged = next
	}
}

// waitFor waits until a saver has saved a few times.
func waitFor(count *atomic.Int64) {
	for count.Load() < 5 {
		time.Sleep(time.Millisecond)
	}
}

// waitForAll waits until savers have saved so many versions between them.
func waitForAll(counts []atomic.Int64, due int64) {
	for {
		sum := int64(0)
		for i := range counts {
			sum += counts[i].Load()
		}
		if sum >= due {
			return
		}
		time.Sleep(time.Millisecond)
	}
}

// numberOf returns the number in a document of saver, and its version.
func numberOf(t *testing.T, s *sqlite.Store, n int) (version, number int64) {
	t.Helper()
	j, err := s.Get(t.Context(), store.ID(testID(n)))
	if store.CodeOf(err) == store.NotFound {
		return 0, 0
	}
	if err != nil {
		t.Fatal(err)
	}
	var d struct{ N int64 }
	if err := json.Unmarshal(j.Document, &d); err != nil {
		t.Fatal(err)
	}
	return j.Version, d.N
}

// What was acknowledged is there after the program was killed in the middle of
// saving, 200 times over. One version more may be there: it was saved, and the
// answer did not come any more.
func TestKilledServerLosesNoSave(t *testing.T) {
	times := 200
	if testing.Short() {
		times = 10
	}
	const savers = 3
	folder := t.TempDir()
	random := rand.New(rand.NewPCG(1, 2))
	known := make([]int64, savers)
	for kill := range times {
		s := startServer(t, folder)
		var all sync.WaitGroup
		var counts [savers]atomic.Int64
		due := int64(random.IntN(6))
		for n := range savers {
			due += known[n]
			all.Go(func() { known[n] = s.saver(n, known[n], &counts[n]) })
		}
		waitForAll(counts[:], due)
		time.Sleep(time.Duration(random.IntN(5000)) * time.Microsecond)
		if err := s.cmd.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		_ = s.cmd.Wait()
		all.Wait()
		kept, err := sqlite.Open(t.Context(), filepath.Join(folder, databaseName))
		if err != nil {
			t.Fatalf("kill %d: %v", kill, err)
		}
		for n := range savers {
			version, number := numberOf(t, kept, n)
			if version != number || version < known[n] || version > known[n]+1 {
				t.Fatalf("kill %d: job %d is at version %d with number %d; version %d was acknowledged", kill, n, version, number, known[n])
			}
			known[n] = version
		}
		if err := kept.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if known[0]+known[1]+known[2] < int64(times) {
		t.Errorf("only %v saves in %d runs: the server was killed before it could save", known, times)
	}
	t.Logf("%v saves acknowledged over %d kills", known, times)
}

// Stopped gracefully, the program answers what has begun, loses nothing, and
// leaves no write-ahead file behind.
func TestStoppedServerLosesNothing(t *testing.T) {
	folder := t.TempDir()
	s := startServer(t, folder)
	var known [3]int64
	var counts [3]atomic.Int64
	var all sync.WaitGroup
	for n := range known {
		all.Go(func() { known[n] = s.saver(n, 0, &counts[n]) })
	}
	for n := range counts {
		waitFor(&counts[n])
	}
	s.stop(t)
	all.Wait()
	if left, _ := filepath.Glob(filepath.Join(folder, "*-wal")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	kept, err := sqlite.Open(context.Background(), filepath.Join(folder, databaseName))
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	for n := range known {
		// Here nothing may be there that was not acknowledged, either.
		if version, number := numberOf(t, kept, n); version != known[n] || number != version || version == 0 {
			t.Errorf("job %d is at version %d with number %d; version %d was acknowledged", n, version, number, known[n])
		}
	}
}

// The server says where it is, and what one must know when others reach it.
func TestServerGreets(t *testing.T) {
	folder := t.TempDir()
	own := startServer(t, folder, "--log", "json")
	if status, _, err := own.do("GET", "/api/jobs", ""); err != nil || status != 200 || len(own.said) != 2 {
		t.Errorf("%d, %v: %q", status, err, own.said)
	}
	others := startServer(t, folder, "--address", ":0", "--allow-host", "localhost")
	said := strings.Join(others.said, "\n")
	token := regexp.MustCompile(`/api/enter\?token=([A-Z2-7]{26})\n`).FindStringSubmatch(said)
	if token == nil || !strings.Contains(said, "no accounts") || !strings.Contains(said, "only over HTTPS") {
		t.Fatalf("it says %q", others.said)
	}
	for header, want := range map[string]int{"": 401, "Bearer " + token[1]: 200} {
		if status, _, err := others.do("GET", "/api/jobs", "", "Authorization", header); err != nil || status != want {
			t.Errorf("with %q: %d, %v", header, status, err)
		}
	}
	again := startServer(t, folder, "--address", ":0", "--allow-host", "localhost")
	if !strings.Contains(again.said[0], token[1]) {
		t.Errorf("the second time it says %q", again.said)
	}
	if info, err := os.Stat(filepath.Join(folder, tokenName)); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the token's file: %v, %v", info, err)
	}
	own.stop(t)
	if log := own.errors.String(); !strings.Contains(log, `"path":"/api/jobs"`) {
		t.Errorf("the log is %s", log)
	}
	others.stop(t)
	if log := others.errors.String(); strings.Contains(log, token[1]) {
		t.Errorf("the log tells the token: %s", log)
	}
}

// stop stops the program as Ctrl-C does.
func (s *serving) stop(t *testing.T) {
	t.Helper()
	if err := s.cmd.Process.Signal(syscall.SIGINT); err != nil {
		t.Fatal(err)
	}
	if err := s.cmd.Wait(); err != nil {
		t.Errorf("the server ended with %v\n%s", err, s.errors)
	}
}

// A backup and a restore work beside a server that is saving.
func TestBackupBesideTheServer(t *testing.T) {
	folder := t.TempDir()
	s := startServer(t, folder)
	var known int64
	var count atomic.Int64
	var all sync.WaitGroup
	all.Go(func() { known = s.saver(1, 0, &count) })
	waitFor(&count)
	copied := filepath.Join(t.TempDir(), "kept.db")
	for _, args := range [][]string{{"backup", copied}, {"restore", copied}} {
		var out, errs bytes.Buffer
		if code := run(t.Context(), append(args, "--data", folder), nil, &out, &errs); code != exitDone {
			t.Errorf("%v: exit code %d\n%s", args, code, errs.String())
		}
	}
	// The restore made a version of its own, which the saver runs into.
	all.Wait()
	status, etag, err := s.do("GET", "/api/jobs/"+testID(1), "")
	if err != nil || status != 200 || known == 0 {
		t.Fatal(status, known, err)
	}
	if want := fmt.Sprintf(`"%d"`, known+1); etag != want {
		t.Errorf("the job has ETag %s, want %s", etag, want)
	}
	if status, _, err := s.do("GET", fmt.Sprintf("/api/jobs/%s/history/%d", testID(1), known), ""); err != nil || status != 200 {
		t.Errorf("the last acknowledged version: %d, %v", status, err)
	}
}
