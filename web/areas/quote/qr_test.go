package quote

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Byte capacity at level M. Source: capacity arrays identical in several public
// general-purpose encoders; versions 1 to 5 also in a printed manual of a
// projector (reference, section 10).
func TestCodeTakesTheSmallestVersion(t *testing.T) {
	for version, holds := range map[int]int{1: 14, 2: 26, 3: 42, 4: 62, 5: 84, 6: 106, 15: 412, 18: 560, 20: 666} {
		path, side := code(strings.Repeat("q", holds))
		assert.Equal(t, 4*version+17, side, "%d bytes fill version %d", holds, version)
		assert.True(t, strings.HasPrefix(path, "M4 4h7v1h-7z"), "the first corner stands inside its margin")
		_, more := code(strings.Repeat("q", holds+1))
		if version < 20 {
			assert.Greater(t, more, side, "one byte more needs a larger one")
		} else {
			assert.Zero(t, more, "version 20 is the largest that is printed")
		}
	}
}

func BenchmarkCode(b *testing.B) {
	for b.Loop() {
		code(strings.Repeat("q", 600))
	}
}
