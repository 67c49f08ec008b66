package power

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every exported function that computes a number from numbers says where its
// formula comes from, in what units, for what range, and gives an example.
func TestFormulasAreDocumented(t *testing.T) {
	seen := map[string]bool{}
	for _, file := range []string{"battery.go", "wire.go", "circuit.go", "vehicle.go"} {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		require.NoError(t, err)
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() || notFormulas[fn.Name.Name] {
				continue
			}
			seen[fn.Name.Name] = true
			for _, word := range []string{"Source:", "Units:", "Valid:", "Example:"} {
				assert.Contains(t, strings.Join(strings.Fields(fn.Doc.Text()), " "), word, fn.Name.Name)
			}
		}
	}
	for _, name := range []string{"Peukert", "AreaFor", "DropByArea", "DropHot", "NextFuse", "Size",
		"SizeParallel", "AtVolts", "InverterAmps"} {
		assert.True(t, seen[name], "%s should have been looked at", name)
	}
}

var notFormulas = map[string]bool{"String": true, "Area": true, "WiringOf": true,
	"Circuits": true, "Wire": true, "Fuse": true}
