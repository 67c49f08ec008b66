package letters_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/letters"
)

func TestTooLongCountsLetters(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"plain", "Rescue 4", "is too long by 4 letters; the most is 4 plain letters"},
		{"by one", "Resc4", "is too long by 1 letter; the most is 4 plain letters"},
		{"cut inside a letter", "Réé4", "is too long by 2 letters; the most is 4 plain letters"},
		{"of more bytes than letters", strings.Repeat("字", 4), "is too long by 3 letters; the most is 4 plain letters"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, letters.TooLong(c.text, 4)) })
	}
}
