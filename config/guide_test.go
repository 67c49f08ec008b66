package config_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

const soundGuide = `{"title": "A first quote", "offer": "a unit in a minute", "from": "cutaway", "seats": 2,
	"brings": ["step"], "steps": [{"begin": "cutaway", "do": "Begin.", "because": "It is."}]}`

// A guide that names what is not there, or asks for two things at once, is refused with
// its place.
func TestGuidesAreChecked(t *testing.T) {
	with := func(guide string) error {
		file := strings.Replace(small, `"title": "Small catalogue"`, `"title": "Small catalogue", "guide": `+guide, 1)
		_, err := config.Read([]byte(file))
		return err
	}
	sound := soundGuide
	cat, err := config.Read([]byte(small))
	require.NoError(t, err)
	sound = strings.ReplaceAll(sound, "cutaway", cat.Chassis[0].ID)
	sound = strings.ReplaceAll(sound, `"step"`, `"`+cat.Options[0].ID+`"`)
	require.NoError(t, with(sound))
	for _, c := range []struct{ name, from, to, code, where string }{
		{"no chassis", `"from": "` + cat.Chassis[0].ID, `"from": "boat`, "unknown-id", "guide from"},
		{"no option", `"brings": ["`, `"brings": ["x`, "unknown-id", "guide brings[0]"},
		{"no title", `"A first quote"`, `" "`, "missing", "guide title, offer"},
		{"no steps", `"steps": [`, `"steps": [], "x": [`, "", ""},
		{"a crowd", `"seats": 2`, `"seats": 200`, "range", "guide seats, patients"},
		{"two things at once", `"do": "Begin."`, `"do": "Begin.", "open": "weight"`, "value", "guide steps[0]"},
		{"no area", `"steps": [`, `"steps": [{"open": "attic", "do": "Go.", "because": "So."}, `, "value", "guide steps[0] open"},
		{"nothing to press", `"steps": [`, `"steps": [{"press": "bell", "do": "Go.", "because": "So."}, `, "value",
			"guide steps[0] press"},
		{"it does not begin", `"steps": [`, `"steps": [{"open": "weight", "do": "Go.", "because": "So."}, `, "value", "guide steps"},
		{"no words", `"because": "It is."`, `"because": ""`, "missing", "guide steps[0] do, because"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Contains(t, sound, c.from)
			err := with(strings.Replace(sound, c.from, c.to, 1))
			require.Error(t, err)
			if c.code == "" {
				return
			}
			ps, ok := err.(config.Problems)
			require.True(t, ok)
			found := false
			for _, p := range ps {
				found = found || p.Code == "catalogue."+c.code && p.Where == c.where
			}
			assert.True(t, found, "%v", ps)
		})
	}
}
