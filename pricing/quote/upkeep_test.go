package quote

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Seats are named as one says them: a rescue unit has two.
func TestAllSeats(t *testing.T) {
	for _, tt := range []struct {
		name string
		n    int
		want string
	}{
		{"a driver alone", 1, "the one designated seat"},
		{"the cab's", 2, "both designated seats"},
		{"a full bench", 6, "all 6 designated seats"},
	} {
		t.Run(tt.name, func(t *testing.T) { assert.Equal(t, tt.want, allSeats(tt.n)) })
	}
}
