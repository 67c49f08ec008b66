package sign

import (
	"crypto/ed25519"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A signature of all zeros but for its point holds for one message in eight or more
// under each weak key, whoever wrote it; none of them is taken.
func TestWeakKeysAreRefused(t *testing.T) {
	point := make([]byte, ed25519.SignatureSize)
	point[0] = 1 // the neutral point, and zero behind it
	for _, k := range weakKeys {
		forged := 0
		for i := range 200 {
			message := []byte{byte(i), 'x'}
			if ed25519.Verify(k[:], append([]byte(domain), message...), point) {
				forged++
			}
			assert.False(t, Check(k[:], message, point), "%x", k)
		}
		assert.NotZero(t, forged, "%x is weak indeed", k)
	}
	public, _, err := ed25519.GenerateKey(nil)
	assert.NoError(t, err)
	assert.False(t, weak(public))
}
