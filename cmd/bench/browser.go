package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"time"

	"firstdrop/job/yaml"
	"firstdrop/screen"
)

// What is asked of the planner in the browser, which runs under node here, with the
// loader of the screen's own worker. Times are of the processor, not of the clock, on
// both sides: what else the machine does at the time counts for neither.
const (
	planner  = "web/ui/public/planner.filtered"
	wasmRuns = 5
	moves    = 5
	edits    = 1000 // as many as half an hour of work has, at one in two seconds
)

// inBrowser compares planning in WebAssembly with planning on the machine, in turn,
// example by example; times the answer to a start that was moved; and measures the
// memory that many edits leave taken.
func inBrowser() ([]Figure, error) {
	if !isBuilt() {
		return nil, nil
	}
	p, err := startWasm()
	if err != nil {
		return nil, err
	}
	defer p.end()
	all, names, err := documents()
	if err != nil {
		return nil, err
	}
	figures, err := p.against(all, names)
	if err != nil {
		return nil, err
	}
	for _, name := range names {
		f, err := p.moved(name, all[name])
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		figures = append(figures, f)
	}
	memory, err := edited(all["door-and-windows.yaml"])
	return append(figures, memory...), err
}

// isBuilt reports whether there is what the browser loads, and says so where not:
// without npm, make build leaves it out.
func isBuilt() bool {
	_, err := os.Stat(planner)
	if err != nil {
		fmt.Println("what the browser loads is not built, and not measured: npm is missing")
	}
	return err == nil
}

// wasm is the planner of the browser, under node.
type wasm struct {
	command *exec.Cmd
	in      *bufio.Writer
	out     *bufio.Reader
}

func startWasm() (*wasm, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	front, err := filepath.Abs("web/ui")
	if err != nil {
		return nil, err
	}
	c := exec.Command("node", "web/wasm/parity.mjs", planner,
		filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"), front)
	c.Stderr = os.Stderr
	in, err := c.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := c.StdoutPipe()
	if err != nil {
		return nil, err
	}
	return &wasm{c, bufio.NewWriter(in), bufio.NewReaderSize(out, 1<<20)}, c.Start()
}

func (p *wasm) end() {
	_ = p.command.Process.Kill() // it has nothing to lose
	_ = p.command.Wait()
}

// ask returns an answer, the processor's time that it took in milliseconds, and how
// much memory the program has taken so far, in bytes.
func (p *wasm) ask(request []byte) (answer []byte, ms, memory float64, err error) {
	if _, err = p.in.Write(append(request, '\n')); err == nil {
		err = p.in.Flush()
	}
	if err != nil {
		return nil, 0, 0, err
	}
	line, err := p.out.ReadBytes('\n')
	if err != nil {
		return nil, 0, 0, err
	}
	figures, answer, _ := bytes.Cut(bytes.TrimSuffix(line, []byte("\n")), []byte("\t"))
	_, err = fmt.Sscan(string(figures), &ms, &memory)
	return answer, ms, memory, err
}

// documents returns the examples as the screen has them, by name.
func documents() (all map[string]json.RawMessage, names []string, err error) {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil {
		return nil, nil, err
	}
	all = map[string]json.RawMessage{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			return nil, nil, err
		}
		j, err := yaml.Read(file, data)
		if err != nil {
			return nil, nil, err
		}
		var whole, flat bytes.Buffer
		if err := j.WriteJSON(&whole); err != nil {
			return nil, nil, err
		}
		if err := json.Compact(&flat, whole.Bytes()); err != nil {
			return nil, nil, err
		}
		name := filepath.Base(file)
		all[name], names = flat.Bytes(), append(names, name)
	}
	return all, names, nil
}

func planRequest(document json.RawMessage) ([]byte, error) {
	return json.Marshal(screen.Request{Kind: screen.AskPlan, Job: document, Words: screen.Words{Locale: "en-GB", Units: "metric"}})
}

// against plans every example in the browser and on the machine, in turn. The rooms
// take turns too, so that neither side has planned one just before; the first round is
// not counted: the browser translates the program while it runs.
func (p *wasm) against(all map[string]json.RawMessage, names []string) ([]Figure, error) {
	native := screen.New()
	there, here := map[string][]float64{}, map[string][]float64{}
	for round := range wasmRuns + 1 {
		for _, name := range names {
			request, err := planRequest(all[name])
			if err != nil {
				return nil, err
			}
			got, ms, _, err := p.ask(request)
			if err != nil {
				return nil, err
			}
			before := processorMS()
			want := native.AnswerJSON(request)
			after := processorMS()
			if !bytes.Equal(got, want) {
				return nil, fmt.Errorf("%s is planned otherwise in the browser", name)
			}
			if round > 0 {
				there[name], here[name] = append(there[name], ms), append(here[name], after-before)
			}
		}
	}
	var figures []Figure
	var ratios []float64
	for _, name := range names {
		w, n := middle(there[name]), middle(here[name])
		ratios = append(ratios, w/n)
		figures = append(figures,
			Figure{Name: "browser: plan " + name, Value: w, Unit: "ms"},
			Figure{Name: "browser ÷ machine: plan " + name, Value: w / n, Unit: "×", Goal: 4})
	}
	return append(figures, Figure{Name: "browser ÷ machine: median of the examples", Value: middle(ratios), Unit: "×", Goal: 4}), nil
}

// processorMS is how long this process has used the processor, its garbage collector
// included.
func processorMS() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return float64(time.Duration(u.Utime.Nano()+u.Stime.Nano()).Microseconds()) / 1000
}

func middle(xs []float64) float64 {
	sorted := slices.Sorted(slices.Values(xs))
	return sorted[len(sorted)/2]
}

// moved times the answer to a start that was moved by a few millimetres.
func (p *wasm) moved(name string, document json.RawMessage) (Figure, error) {
	start, err := p.startOf(document)
	if err != nil {
		return Figure{}, err
	}
	var took []float64
	for i := range moves {
		ms, _, err := p.edit(document, start, float64(1+3*i))
		if err != nil {
			return Figure{}, err
		}
		took = append(took, ms)
	}
	return Figure{Name: "browser: start moved in " + name, Value: middle(took), Unit: "ms"}, nil
}

// startOf asks where hanging begins.
func (p *wasm) startOf(document json.RawMessage) (screen.Start, error) {
	request, err := planRequest(document)
	if err != nil {
		return screen.Start{}, err
	}
	answer, _, _, err := p.ask(request)
	if err != nil {
		return screen.Start{}, err
	}
	var a screen.Answer
	if err := json.Unmarshal(answer, &a); err != nil {
		return screen.Start{}, err
	}
	if a.Plan == nil {
		return screen.Start{}, fmt.Errorf("no plan: %s %v", a.Failure, a.Problems)
	}
	return a.Plan.Runs[0].Start, nil
}

// edit asks for the plan with its start moved so many millimetres to the right.
func (p *wasm) edit(document json.RawMessage, start screen.Start, by float64) (ms, memory float64, err error) {
	var j map[string]any
	if err := json.Unmarshal(document, &j); err != nil {
		return 0, 0, err
	}
	hang, _ := j["hang"].([]any)
	if len(hang) == 0 {
		first := j["papers"].([]any)[0].(map[string]any)
		hang = []any{map[string]any{"paper": first["name"]}}
		j["hang"] = hang
	}
	hang[0].(map[string]any)["start"] = map[string]any{"wall": start.Wall, "edge": fmt.Sprintf("%g mm", start.Edge+by)}
	changed, err := json.Marshal(j)
	if err != nil {
		return 0, 0, err
	}
	request, err := planRequest(changed)
	if err != nil {
		return 0, 0, err
	}
	_, ms, memory, err = p.ask(request)
	return ms, memory, err
}

// edited measures the memory that is taken while the start is moved again and again,
// by a planner that has planned nothing else.
// What WebAssembly has taken it never gives back: it is flat when nothing more is
// taken in the second half.
func edited(document json.RawMessage) ([]Figure, error) {
	p, err := startWasm()
	if err != nil {
		return nil, err
	}
	defer p.end()
	start, err := p.startOf(document)
	if err != nil {
		return nil, err
	}
	var memory []float64
	for i := range edits {
		_, taken, err := p.edit(document, start, float64(i%400))
		if err != nil {
			return nil, err
		}
		memory = append(memory, taken/1e6)
	}
	name := func(n int) string { return fmt.Sprintf("browser: memory taken after %d edits", n) }
	return []Figure{
		{Name: name(1), Value: memory[0], Unit: "MB"},
		{Name: name(edits / 2), Value: memory[edits/2], Unit: "MB"},
		{Name: name(edits), Value: memory[edits-1], Unit: "MB"},
		{Name: "browser: memory taken, end ÷ middle", Value: memory[edits-1] / memory[edits/2], Unit: "×", Goal: 1.02},
	}, nil
}
