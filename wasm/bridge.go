//go:build js && wasm

package main

import (
	"encoding/json"
	"fmt"
	"runtime/debug"

	"github.com/hack-pad/safejs"
)

// expose gives the page a function of one text to one text. A panic must not
// end the Go program, so it comes back as an error reply; where it happened goes
// to standard error, which is the developer's console.
func expose(name string, handle func(request []byte) []byte) error {
	f, err := safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) (reply any) {
		defer func() {
			if fault := recover(); fault != nil {
				// fmt would wait for the page, which waits for us
				println("panic:", fmt.Sprint(fault)+"\n"+string(debug.Stack()))
				reply = failure(fmt.Sprint(fault))
			}
		}()
		if len(args) != 1 {
			return failure("one argument is expected")
		}
		request, err := args[0].String()
		if err != nil {
			return failure(err.Error())
		}
		return string(handle([]byte(request)))
	})
	if err != nil {
		return err
	}
	return safejs.Global().Set(name, f)
}

func failure(text string) string {
	reply, err := json.Marshal(map[string]string{"fault": text})
	if err != nil {
		return `{"fault":"the fault could not be written down"}`
	}
	return string(reply)
}
