package space

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every exported formula says where it comes from, in what units, for what
// range, and gives an example.
func TestFormulasAreDocumented(t *testing.T) {
	seen := 0
	for _, file := range []string{"vehicle.go", "oxygen.go"} {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		require.NoError(t, err)
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Name.IsExported() {
				seen++
				for _, word := range []string{"Source:", "Units:", "Valid:", "Example:"} {
					assert.Contains(t, strings.Join(strings.Fields(fn.Doc.Text()), " "), word, fn.Name.Name)
				}
			}
		}
	}
	assert.Equal(t, 2, seen, "Inside and Minutes")
}
