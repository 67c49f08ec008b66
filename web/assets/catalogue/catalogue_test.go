package catalogue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
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
