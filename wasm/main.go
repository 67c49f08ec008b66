//go:build js && wasm

// Command wasm is the core as the browser runs it: one function that takes a
// request and gives a reply, both JSON texts. Nothing else in the program
// knows JavaScript.
package main

import (
	"runtime/debug"

	"boxwright/web/app"
)

// What the core holds is small beside what a click leaves behind, and while it
// is collected nobody is answered: let it grow to a few dozen megabytes first.
const growth = 400

func main() {
	debug.SetGCPercent(growth)
	core := app.New()
	if err := expose("boxwright", core.Handle); err != nil {
		panic(err) // without the bridge there is nobody to tell
	}
	select {}
}
