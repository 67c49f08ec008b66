package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/quantity"
)

// Source: Thompson, A. and Taylor, B. N., Guide for the Use of the
// International System of Units (SI), NIST Special Publication 811, 2008
// edition, appendix B.8 (factors for units listed alphabetically). There the
// pound (avoirdupois) is 4.535 924 E-01 kg, exactly 0.453 592 37 kg by its
// footnote; the inch is 2.54 E-02 m, exact; the cubic foot is 2.831 685 E-02 m3.
// Quoted from memory; the last line of the test follows from the inch alone.
func TestFactorsAreThoseOfTheGuide(t *testing.T) {
	assert.Equal(t, 0.45359237, quantity.KilogramsPerPound, "the pound, exact")
	assert.Equal(t, 25.4, quantity.MillimetersPerIn, "the inch, exact")
	assert.InDelta(t, 28.31685, quantity.LitersPerCubicFt, 0.5e-5, "the cubic foot, as printed")
	assert.InEpsilon(t, 12*12*12*2.54*2.54*2.54/1000, quantity.LitersPerCubicFt, 1e-15,
		"the cubic foot, from the exact inch")
}
