package bid_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

func TestLint(t *testing.T) {
	notes := 0
	for _, f := range bid.Lint(demo(t)) {
		assert.Equal(t, config.Note, f.Severity, "%s: %s", f.Where, f.Text)
		notes++
	}
	assert.Less(t, notes, 60, "most options are read by their own label")

	var cat map[string]any
	require.NoError(t, json.Unmarshal(catalogue.Demo, &cat))
	cat["asked"] = []any{map[string]any{"id": "no-such-thing", "names": []string{"x ray"}},
		map[string]any{"id": "cot-power", "names": []string{"shall be provided"}}}
	file, err := json.Marshal(cat)
	require.NoError(t, err)
	ed, err := quote.OpenEdition(file)
	require.NoError(t, err)
	codes := map[string]bool{}
	for _, f := range bid.Lint(ed) {
		codes[f.Code] = true
	}
	assert.True(t, codes["catalogue.asked-unknown"] && codes["catalogue.asked-idle"])
}
