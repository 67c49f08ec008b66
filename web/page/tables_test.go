package page

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

func TestChancesAreSaidAsPeopleSayThem(t *testing.T) {
	for _, c := range []struct {
		chance float64
		want   string
		reason string
	}{
		{0.032, "3 in 100 that it is missed", "the usual case"},
		{0.0014, "1 in 1,000 that it is missed", "small chances count by the thousand"},
		{0.0001, "", "next to nothing is not said"},
		{0.9999, "almost certainly missed", "no false doubt"},
		{0, "", "not known"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			assert.Equal(t, c.want, Chance(config.Figure{Sense: config.AtMost, Chance: c.chance}), c.reason)
		})
	}
	assert.Empty(t, Chance(config.Figure{Chance: 0.5}), "without a limit there is nothing to miss")
}
