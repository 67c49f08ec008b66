package editions_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/pricing/editions"
)

func TestLint(t *testing.T) {
	for _, f := range editions.Lint(edition(t)) {
		require.Equal(t, "note", string(f.Severity), "%s: %s", f.Where, f.Text)
	}
	found := editions.Lint(edition(t,
		`"rules": [`, `"rules": [
    {"id": "no-rubber", "kind": "supplier", "then": {"not": {"pick": "rail-rubber"}}, "reason": "The rubber is no longer made."},`,
		`"mass": {"lb": 23, "tol_lb": 2, "zone": "module-mid", "x_in": 20, "y_in": 10, "z_in": 30}`,
		`"mass": {"lb": 23000, "tol_lb": 2, "zone": "module-mid", "x_in": 20, "y_in": 10, "z_in": 30}`,
		`"clauses": ["kkk-cold-start"]`, `"clauses": ["kkk-cold-star"]`,
	))
	require.Equal(t, "catalogue.no-clause", found[2].Code)
	require.Contains(t, found[2].Text, `"kkk-cold-star"`)
	require.Equal(t, "catalogue.never", found[0].Code)
	require.Contains(t, found[0].Text, `rule "no-rubber"`)
	require.Equal(t, "catalogue.never-within-limits", found[1].Code)
}

func BenchmarkLint(b *testing.B) {
	ed := edition(&testing.T{})
	for b.Loop() {
		editions.Lint(ed)
	}
}
