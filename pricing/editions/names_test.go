package editions

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
)

// A kind of thing without a name would be left out of every comparison.
func TestEveryKindIsNamed(t *testing.T) {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	seen := map[string]bool{}
	for k := range valuesOf(cat) {
		kind, _, _ := strings.Cut(k, between)
		seen[kind] = true
		require.True(t, slices.ContainsFunc(names, func(n struct{ key, name string }) bool { return n.key == kind }),
			kind)
	}
	require.Len(t, seen, len(names))
}
