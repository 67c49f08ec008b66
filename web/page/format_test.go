package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A line breaks nowhere between a figure and its unit, and everywhere else.
func TestFiguresAreHeldWithTheirUnits(t *testing.T) {
	for _, c := range []struct{ reason, text, want string }{
		{"a range", "138.6 A to 169.4 A", "138.6\u00a0A to 169.4\u00a0A"},
		{"two systems", "1,990 lb (903 kg)", "1,990\u00a0lb (903\u00a0kg)"},
		{"the end of a sentence", "12 V load at 13.6 V.", "12\u00a0V load at 13.6\u00a0V."},
		{"a word that is no unit", "3 seats in a row", "3 seats in a row"},
		{"a unit's letters as a word", "part A of 2", "part A of 2"},
		{"an exponent", "66.1 ft³", "66.1\u00a0ft³"},
		{"spaces apart", "5  A", "5  A"},
		{"nothing", "", ""},
	} {
		t.Run(c.reason, func(t *testing.T) { assert.Equal(t, c.want, Held(c.text)) })
	}
}
