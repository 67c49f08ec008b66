// Package site builds the page: the wasm core, the bundled scripts and styles,
// and the two forms of dist/. It runs on the host only.
package site

// Flags and environment the core is built with. The tests build with the same,
// so that what is tested is what is shipped. The linker leaves out debug tables;
// stack traces still name functions, files and lines.
//
// Inlining stays on wherever a press spends its time: switching it off in the solver
// and the runtime alone saves 0.4 MB and presses take half as much CPU time again
// (wasm under Node). It is off where it only repeats the same calls: in the areas'
// drawing, in requirement lists and in tables, which saves 0.17 MB; a press takes
// 5.0 ms instead of 4.9 natively. Package config, which reads and checks catalogues, is
// 0.1 MB smaller so, and presses are no slower in wasm (24 to 27 s of processor time for
// 500 presses under Node, 28 with inlining). The drawings of the unit, which come with the second part
// of an answer, are without it 0.05 MB smaller; the page's frame, the session, clauses,
// signing, sealing, links and the protocol some KB each. Prices and electrical figures save 0.03 MB, and 200
// presses take 1.7 to 1.9 s of processor time natively with them and without. With inlining everywhere the core is
// 0.47 MB larger, with it everywhere but in what draws 0.2. A profile of presses given to the
// compiler made it 0.1 MB larger and presses no faster.
var (
	WasmEnv   = []string{"GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0"}
	LinkFlags = "-s -w -buildid="
	WasmFlags = append([]string{"-trimpath"}, plain("config", "web/areas/...", "web/drawing", "web/page",
		"web/guide", "web/told", "web/session", "pricing/bid/...", "pricing/tables", "pricing/editions",
		"pricing/costs", "pricing/finance", "pricing/sign", "pricing/seal", "pricing/link", "config/standards", "config/csv",
		"config/letters", "web/app", "pricing", "config/power")...)
)

// Budget is the most that a visit may download, in bytes: core with the built-in
// catalogue, scripts, style and page together, packed. It guards against
// accidents, such as an import that drags half a library in. (3.8 MB before links were
// opened in reading and the unit was drawn from ten sides, 4.3 before requirement lists of
// strangers were read word by word, 4.4 before the catalogue told how each thing is mounted,
// fed and worked in the words that purchasers have for it, 4.5 before what a requirement list
// says of every thing, of others and in which state was held against it, 4.6 before what only
// holds a thing was told from the thing.)
const Budget = 4_650_000

// plain are the flags that build packages of the module without inlining.
func plain(packages ...string) []string {
	flags := make([]string, len(packages))
	for i, p := range packages {
		flags[i] = "-gcflags=boxwright/" + p + "=-l"
	}
	return flags
}
