//go:build js && wasm

// Command wasm is the core as the browser runs it: one function that takes a
// request and gives a reply, both JSON texts. Nothing else in the program
// knows JavaScript.
package main

import (
	"boxwright/web/app"
)

func main() {
	core := app.New()
	if err := expose("boxwright", core.Handle); err != nil {
		panic(err) // without the bridge there is nobody to tell
	}
	select {}
}
