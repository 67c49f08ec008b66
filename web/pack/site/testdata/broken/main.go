//go:build js && wasm

// A core that was never made, in the place of wasm/main.go: every request fails
// where the app looks for its edition. The request "end" fails where nothing
// recovers.
package main

import "boxwright/web/app"

func main() {
	var none *app.App
	ask := func(request []byte) []byte {
		if string(request) == "end" {
			go none.Handle([]byte(`{"v":1}`))
			return []byte(`{}`)
		}
		return none.Handle(request)
	}
	if err := expose("boxwright", ask); err != nil {
		panic(err)
	}
	select {}
}
