package finance_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every exported function is a formula and says where it comes from, unless it
// is named here as none.
func TestEveryFormulaSaysItsSource(t *testing.T) {
	none := map[string]bool{"Check": true, "Width": true}
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	seen := 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		require.NoError(t, err)
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() || none[fn.Name.Name] {
				continue
			}
			seen++
			for _, word := range []string{"Source:", "Units:", "Valid:", "Example:"} {
				assert.Contains(t, fn.Doc.Text(), word, "%s in %s", fn.Name.Name, file)
			}
		}
	}
	assert.GreaterOrEqual(t, seen, 9)
}
