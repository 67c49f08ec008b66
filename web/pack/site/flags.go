// Package site builds the page: the wasm core, the bundled scripts and styles,
// and the two forms of dist/. It runs on the host only.
package site

// What the core is built with. The tests build with the same, so that what is
// tested is what is shipped.
//
// Functions are not inlined, which makes the core a tenth smaller, except in
// the runtime and the solver: there a click would take a third longer. The
// last flag that fits a package is the one that holds for it.
var (
	WasmEnv   = []string{"GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0"}
	LinkFlags = "-s -w -buildid="
	WasmFlags = []string{
		"-trimpath",
		"-gcflags=all=-l",
		"-gcflags=runtime=",
		"-gcflags=internal/runtime/...=",
		"-gcflags=boxwright/config/solve=",
	}
)

// Budget is the most a visitor's line may be asked to carry, in bytes: core
// with the built-in catalogue, scripts, style and page together, packed.
const Budget = 1_600_000
