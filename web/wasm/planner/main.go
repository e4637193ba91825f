//go:build js && wasm

// Command planner is live planning in the browser: package screen behind one
// function. It is compiled to WebAssembly and run in a worker.
package main

import (
	"runtime/debug"
	"syscall/js"
	"time"

	"firstdrop/screen"
)

// main sets answer, a function of the worker's global object that takes a request
// as the bytes of its JSON and returns the answer likewise, and waits for ever. While
// it works it tells the global function progress, where there is one, how far it is.
func main() {
	debug.SetMemoryLimit(enough)
	debug.SetGCPercent(200)
	planner := screen.New()
	planner.Progress = told
	js.Global().Set("answer", js.FuncOf(func(_ js.Value, args []js.Value) any {
		request := make([]byte, args[0].Length())
		js.CopyBytesToGo(request, args[0])
		answer := planner.AnswerJSON(request)
		out := js.Global().Get("Uint8Array").New(len(answer))
		js.CopyBytesToJS(out, answer)
		return out
	}))
	select {}
}

// enough is the memory up to which the collector may take its time: what WebAssembly has
// taken it never gives back, and no plan of the examples has more in use than 72 MB.
const enough = 96 << 20

// often is how often it is told how far the work is: more nobody sees.
const often = 50 * time.Millisecond

var last time.Time

func told(p screen.Progress) {
	if now := time.Now(); now.Sub(last) >= often {
		last = now
		if listener := js.Global().Get("progress"); listener.Type() == js.TypeFunction {
			listener.Invoke(p.Done, p.Of, string(p.What), p.Whole)
		}
	}
}
