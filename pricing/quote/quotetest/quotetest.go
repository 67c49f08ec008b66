// Package quotetest has what the tests of quotes begin with.
package quotetest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// Today is the day of every test.
var Today = config.Date{Year: 2026, Month: 11, Day: 25}

// Demo is the demonstration catalogue.
func Demo(t testing.TB) *quote.Edition {
	t.Helper()
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	return ed
}
