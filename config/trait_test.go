package config_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
)

// A trait of a group is said of its options, but for those that it leaves out, that say it
// themselves, or that are there for having nothing of the group.
func TestTraits(t *testing.T) {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	for _, c := range []struct{ option, says, not string }{
		{"sc-side", "Off with the master disconnect.", "Set flush."},
		{"rec-action", "Set flush.", "disconnect"},
		{"rail-channel", "Stainless screws, barrier tape.", "switch"},
		{"rail-none", "Lower body without rub rail.", "screws"},
		{"ws-strip", "Front-console switch.", "Surface"},
	} {
		said := cat.Sentences(cat.OptionByID(c.option))
		assert.Contains(t, said, c.says, c.option)
		assert.NotContains(t, said, c.not, c.option)
	}
	rescue := cat.Saying(cat.DutyByID("rescue"))
	said := rescue.Sentences(rescue.OptionByID("il-eight"))
	assert.Contains(t, said, "Switched from the front console.", "a rescue unit has no action area")
	assert.NotContains(t, said, "action-area")
	cat.Traits = []config.Trait{{ID: "odd", Kind: "mood"}}
	assert.Contains(t, fmt.Sprint(cat.Prepare()), "mood")
}
