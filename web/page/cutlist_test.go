package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Alike pieces of one compartment name it once; their names hold commas of their own.
func TestUsesOf(t *testing.T) {
	assert.Equal(t, "Street side, rear, tall: back, ends; Curb side, rear, tall: back; Roof bows; Wheel box: top",
		usesOf([]string{"Street side, rear, tall, back", "Street side, rear, tall, ends", "Curb side, rear, tall, back",
			"Roof bows", "Wheel box, top"}))
}
