//go:build js && wasm

// Command wasm is the core as the browser runs it: one function that takes a
// request and gives a reply, both JSON texts. Nothing else in the program
// knows JavaScript.
package main

import (
	"runtime"
	"runtime/debug"
	"time"

	"boxwright/web/app"
)

// The live heap is small and a press leaves much garbage behind. Collecting it
// delays a reply by some frames, so it is done while nobody waits: a moment after
// the last reply, once the heap has doubled. Only a page that is never left alone
// gets to the limit of growth, in percent, at which the runtime collects by itself; or
// to half of the 4 GB that wasm can address, since the solvers of a large catalogue
// would let the heap grow beyond all of it.
const (
	growth = 400
	most   = 2 << 30
	lull   = 80 * time.Millisecond
)

// slice is what is done at once of what nobody waits for, in steps of a solver: some
// 12 ms, so that a press never waits much longer.
const slice = 20_000

func main() {
	debug.SetGCPercent(growth)
	debug.SetMemoryLimit(most)
	core := app.New()
	core.Slice = slice
	tidy := time.AfterFunc(lull, collect)
	err := expose("boxwright", func(request []byte) []byte {
		tidy.Stop()
		defer func() { tidy.Reset(max(lull, took)) }()
		return core.Handle(request)
	})
	if err != nil {
		panic(err) // without the bridge there is nobody to tell
	}
	select {}
}

// live is the size of the heap after the last collection here, which took so long:
// the longer one takes, the longer it waits, since a press in it waits for its end.
var (
	live uint64
	took time.Duration
)

func collect() {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	if m.HeapAlloc < 2*live {
		return
	}
	began := time.Now()
	runtime.GC()
	took = time.Since(began)
	runtime.ReadMemStats(&m)
	live = m.HeapAlloc
}
