// Package site builds the page: the wasm core, the bundled scripts and styles,
// and the two forms of dist/. It runs on the host only.
package site

// What the core is built with. The tests build with the same, so that what is
// tested is what is shipped.
var (
	WasmEnv   = []string{"GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0"}
	WasmFlags = []string{"-trimpath", "-ldflags=-s -w -buildid="}
)
