package weight

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every exported function that computes a number says where its formula comes
// from, its units, where it holds, and one example.
func TestFormulasSayTheirSource(t *testing.T) {
	entries, err := os.ReadDir(".")
	require.NoError(t, err)
	formulas := 0
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, parser.ParseComments)
		require.NoError(t, err)
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || !f.Name.IsExported() || f.Recv != nil || f.Type.Results == nil {
				continue
			}
			if id, ok := f.Type.Results.List[0].Type.(*ast.Ident); !ok || id.Name != "float64" {
				continue
			}
			formulas++
			for _, word := range []string{"Source:", "Units:", "Valid:", "Example:"} {
				assert.Contains(t, f.Doc.Text(), word, f.Name.Name)
			}
		}
	}
	assert.GreaterOrEqual(t, formulas, 10)
}
