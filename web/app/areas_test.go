package app

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

// The word of an act belongs to one area, or to the whole page: of two the second would
// never be heard.
func TestEachActHasOneOwner(t *testing.T) {
	owner := map[string]string{}
	own := func(word, who string) {
		assert.Empty(t, owner[word], "%s is an act of two", word)
		owner[word] = who
	}
	for word := range acts {
		own(word, "the page")
	}
	for _, a := range tabs {
		for word := range a.Acts {
			own(word, a.ID)
		}
		for word := range a.Editions {
			own(word, a.ID)
		}
	}
	assert.Greater(t, len(owner), 50)
}

// The guided quote of a catalogue opens the areas that there are.
func TestGuideKnowsTheAreas(t *testing.T) { assert.Equal(t, Areas(), config.GuideAreas) }
