package catalogue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/web/assets/catalogue"
)

func read(t *testing.T) *config.Catalogue {
	t.Helper()
	cat, err := config.Read(catalogue.Demo)
	if ps, ok := err.(config.Problems); ok {
		for _, p := range ps {
			t.Errorf("%s", p)
		}
	}
	require.NoError(t, err)
	return cat
}

func TestDemoIsOfRealSize(t *testing.T) {
	cat := read(t)
	assert.GreaterOrEqual(t, len(cat.Chassis), 8)
	assert.GreaterOrEqual(t, len(cat.Bodies), 8)
	assert.GreaterOrEqual(t, len(cat.Groups), 40)
	assert.GreaterOrEqual(t, len(cat.Options), 250)
	assert.GreaterOrEqual(t, len(cat.Rules), 200)
	assert.GreaterOrEqual(t, len(cat.Equipment), 25)
	assert.Contains(t, cat.Notice, "invented")
}

func TestDemoIsPriced(t *testing.T) {
	cat := read(t)
	book, err := pricing.ReadBook(cat.PriceBook, cat) // refuses a missing, a strange and a malformed price
	require.NoError(t, err)
	for i := range cat.Chassis {
		id := cat.Chassis[i].ID
		assert.Equal(t, 1, pricing.PriceOf(book, cat, id).Sign(), "%s costs something", id)
	}
}
