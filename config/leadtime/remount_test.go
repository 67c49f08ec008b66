package leadtime_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/leadtime"
)

// A remount is stripped and refurbished where a new module is framed, waits for
// no slot of the framing line, and keeps the order of the steps that follow.
func TestRemountHasStepsOfItsOwn(t *testing.T) {
	c, u := demo(t)
	u.Chassis = "cut-14500-158-gas"
	steps := func(body string) map[string]leadtime.Step {
		u.Body = body
		p, err := leadtime.Schedule(c, u, few)
		require.NoError(t, err)
		m := map[string]leadtime.Step{}
		for _, s := range p.Steps {
			m[s.ID] = s
			assert.False(t, body == "old-module" && s.Source == "slot", s.ID)
		}
		return m
	}
	fresh, old := steps("mod-153-72"), steps("old-module")
	for _, id := range []string{"framing", "squaring", "skin", "weld", "grind"} {
		assert.Contains(t, fresh, id)
		assert.NotContains(t, old, id)
	}
	for _, id := range []string{"old-receive", "old-strip", "old-weld", "old-skin", "old-grind"} {
		assert.Contains(t, old, id)
		assert.NotContains(t, fresh, id)
	}
	assert.True(t, slices.Contains(old["doors"].After, "old-grind"))
	assert.GreaterOrEqual(t, old["doors"].ES, old["old-grind"].EF, "doors are hung on a module that is repaired")
	assert.Contains(t, old, "mount", "an existing module is mounted like a new one")
}
