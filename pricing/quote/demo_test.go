package quote_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

var today = config.Date{Year: 2026, Month: 11, Day: 25}

func demo(t testing.TB) *quote.Edition {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	return ed
}
