package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/app"
	"boxwright/web/pack/site"
)

// list runs go list in the repository and gives its lines.
func list(t *testing.T, env []string, args ...string) []string {
	t.Helper()
	root, err := site.Root()
	require.NoError(t, err)
	cmd := exec.Command("go", append([]string{"list"}, args...)...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err)
	return strings.Fields(string(out))
}

// What must not be in the shipped core, with the reason for each.
func TestWhatTheCoreMustNotCarry(t *testing.T) {
	forbidden := []struct{ path, reason string }{
		{"net", "the page works without a network, and proves it"},
		{"net/http", "the page works without a network, and proves it; half a megabyte"},
		{"net/url", "nothing in the core reads addresses"},
		{"os/exec", "host only"},
		{"html/template", "measured: 793 KB more than the builder in web/page/markup"},
		{"text/template", "reflection over everything; markup is written in Go"},
		{"encoding/xml", "drawings are written by web/page/markup"},
		{"encoding/csv", "config/csv is small and guards against spreadsheet formulas"},
		{"encoding/gob", "nothing is stored in a Go-only form"},
		{"testing", "host only"},
		{"log", "faults are data, never lines of a log"},
		{"log/slog", "faults are data, never lines of a log"},
		{"time/tzdata", "dates have no time of day"},
		{"github.com/invopop/jsonschema", "measured: 349 KB; schemas are made on the host"},
		{"github.com/santhosh-tekuri/jsonschema/v6", "measured: 550 KB; the page reads strictly by type"},
		{"github.com/stretchr/testify/require", "tests only"},
		{"pgregory.net/rapid", "tests only"},
		{"github.com/go-air/gini", "an oracle of the tests"},
		{"github.com/crillab/gophersat/solver", "an oracle of the tests, with known faults"},
		{"gonum.org/v1/gonum/graph", "an oracle of the tests"},
		{"filippo.io/age", "measured: 486 KB; pricing/seal does the same with the standard library"},
		{"github.com/evanw/esbuild/pkg/api", "host only"},
		{"github.com/chromedp/chromedp", "host only"},
		{"boxwright/web/pack/site", "host only"},
		{"boxwright/schema", "host only"},
		{"boxwright/pricing/seal/sealtest", "tests only: it seals with little work"},
	}
	have := list(t, site.WasmEnv, "-deps", "./wasm")
	require.Contains(t, have, "boxwright/config/rules", "the list is that of the core")
	for _, f := range forbidden {
		t.Run(f.reason, func(t *testing.T) {
			require.NotContains(t, have, f.path, f.reason)
		})
	}
}

// edges gives each package of the core, followed by those that it imports.
func edges(t *testing.T) [][]string {
	t.Helper()
	var all [][]string
	for _, line := range list(t, site.WasmEnv, "-deps", "-f", `{{.ImportPath}}{{range .Imports}},{{.}}{{end}}`,
		"./wasm") {
		all = append(all, strings.Split(line, ","))
	}
	require.NotEmpty(t, all)
	return all
}

// Which of our packages may know which, as the design says. A package that is
// not named here must be added with a thought to where it stands.
func TestLayers(t *testing.T) {
	const m = "boxwright/"
	lower := func(layers ...string) []string { return layers }
	may := map[string][]string{
		"config/quantity": nil,
		"config/letters":  nil,
		"config/csv":      nil,
		"config/solve":    nil, // knows nothing of vehicles
		"config":          lower("config/letters", "config/quantity"),
		"config/body":     lower("config", "config/quantity"),
		"config/rules":    lower("config", "config/body", "config/quantity", "config/solve"), // lint asks for shapes
		"pricing/money":   nil,                                                               // knows nothing of quotes
		"pricing/seal":    lower("pricing/seal/internal/effort"),
		"pricing/finance": lower("pricing/money"),
		"web/page/markup": lower("config/letters"),
		"wasm":            lower("web/app"), // the bridge knows the app and JavaScript, nothing else
	}
	within := map[string][]string{ // others, by the roots of what they may know
		"config/":      lower("config"), // money never enters config
		"pricing/link": lower("config", "pricing/quote", "pricing/sign", "pricing/money"),
		"pricing":      lower("config", "pricing"),
		"web/page":     lower("config", "pricing", "web/page"),
		"web/drawing":  lower("config", "pricing", "web/page"),
		"web/session":  lower("config", "pricing", "web/page/markup"), // knows no area; holds what was drawn, draws nothing
		"web/guide":    lower("config", "pricing", "web/page", "web/session"),
		"web/told":     lower("config", "pricing", "web/page", "web/session"),
		"web/areas": lower("config", "pricing", "web/areas", "web/drawing", "web/guide", "web/page", "web/session",
			"web/told"),
		"web/app": lower("config", "pricing", "web/areas", "web/drawing", "web/guide", "web/page", "web/session",
			"web/told", "web/assets/catalogue"),
	}
	for _, pkg := range edges(t) {
		path, imports := pkg[0], pkg[1:]
		name, ours := strings.CutPrefix(path, m)
		if !ours {
			continue
		}
		exact, known := may[name]
		nearest := ""
		for prefix := range within {
			if strings.HasPrefix(name, prefix) && len(prefix) > len(nearest) {
				nearest = prefix
			}
		}
		for _, i := range imports {
			other, ours := strings.CutPrefix(i, m)
			if !ours {
				continue
			}
			if known {
				require.Contains(t, exact, other, "%s may not know %s", name, other)
				continue
			}
			require.True(t, slices.ContainsFunc(within[nearest], func(r string) bool {
				return other == r || strings.HasPrefix(other, r+"/")
			}), "%s may not know %s", name, other)
		}
	}
}

// What two areas share goes down a floor: no area knows another, and nothing but
// the list in web/app knows any.
func TestAreasAreApart(t *testing.T) {
	found := 0
	for _, pkg := range edges(t) {
		for _, to := range pkg[1:] {
			if strings.HasPrefix(to, "boxwright/web/areas/") {
				found++
				require.Equal(t, "boxwright/web/app", pkg[0], "it knows the area %s", to)
			}
		}
	}
	require.GreaterOrEqual(t, found, len(app.Areas()), "the areas are found")
}

// What a buyer is given must not be able to hold the seller's costs.
func TestCostsStayWithTheSeller(t *testing.T) {
	for _, path := range []string{"./pricing/quote", "./pricing/link", "./pricing/sign"} {
		require.NotContains(t, list(t, site.WasmEnv, "-deps", path), "boxwright/pricing/costs",
			"%s makes what is printed or sent", path)
	}
}

// Only packages that are given money may know it.
func TestNoMoneyInConfig(t *testing.T) {
	have := list(t, site.WasmEnv, "-deps", "./config/...")
	require.NotContains(t, have, "github.com/shopspring/decimal", "money never enters config")
	require.False(t, slices.ContainsFunc(have, func(p string) bool {
		return strings.HasPrefix(p, "boxwright/pricing")
	}), "money never enters config")
}

// The core reads no clock, no network, no file and no chance: those are
// arguments. Names are looked for in the source, test files apart.
func TestTheCoreIsPure(t *testing.T) {
	root, err := site.Root()
	require.NoError(t, err)
	forbidden := map[string]string{
		"time.Now":                  "the day is an argument",
		"time.Since":                "speed is measured in benchmarks",
		"time.After":                "nothing waits",
		"time.Sleep":                "nothing waits",
		"time.NewTimer":             "nothing waits",
		"os.ReadFile":               "data are arguments",
		"os.Open":                   "data are arguments",
		"os.Getenv":                 "the same input gives the same bytes",
		"rand.Int":                  "a source of chance is an argument",
		"rand.Intn":                 "a source of chance is an argument",
		"rand.IntN":                 "a source of chance is an argument",
		"rand.Float64":              "a source of chance is an argument",
		"rand.Perm":                 "a source of chance is an argument",
		"rand.Shuffle":              "a source of chance is an argument",
		"decimal.NewFromFloat":      "money comes from text, never from a binary fraction",
		"decimal.DivisionPrecision": "a setting of the whole program; DivRound says it in place",
	}
	imports := map[string]string{
		"syscall/js":  "JavaScript is known in wasm/ only",
		"math/rand":   "a source of chance is an argument, of math/rand/v2",
		"os":          "the core touches no file",
		"unsafe":      "nothing here needs it",
		"crypto/rand": "a source of chance is an argument",
		"regexp":      "150 KB packed, and sizes, words and numbers have their own readers",
	}
	for _, folder := range []string{
		"config", "pricing", "web/app", "web/areas", "web/drawing", "web/guide", "web/page", "web/session",
	} {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, d os.DirEntry, err error) error {
			if err == nil && d.IsDir() && strings.HasSuffix(d.Name(), "test") { // helpers of tests: pagetest, sealtest
				return filepath.SkipDir
			}
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			fset := token.NewFileSet()
			file, err := parser.ParseFile(fset, path, nil, 0)
			if err != nil {
				return err
			}
			for _, i := range file.Imports {
				name, err := strconv.Unquote(i.Path.Value)
				if err != nil {
					return err
				}
				if reason, no := imports[name]; no {
					t.Errorf("%s imports %s: %s", fset.Position(i.Pos()), name, reason)
				}
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok {
						if reason, no := forbidden[x.Name+"."+s.Sel.Name]; no {
							t.Errorf("%s uses %s.%s: %s", fset.Position(s.Pos()), x.Name, s.Sel.Name, reason)
						}
					}
				}
				return true
			})
			return nil
		})
		require.NoError(t, err)
	}
}
