package config_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
)

func TestRosterIsChecked(t *testing.T) {
	whole := string(catalogue.Demo)
	sound, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	require.NotEmpty(t, sound.Signers)
	k := sound.Signers[0].Key
	for _, x := range []struct{ from, to, says, reason string }{
		{k, k[:40], "43 characters", "a key that is too short"},
		{k, strings.Repeat("!", 43), "43 characters", "no base64url"},
		{k, sound.Signers[1].Key, "twice", "one key for two people"},
		{`"until": "2028-12-31"`, `"until": "2020-12-31"`, "before the first day", "an end before the beginning"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			require.Contains(t, whole, x.from)
			_, err := config.Read([]byte(strings.Replace(whole, x.from, x.to, 1)))
			require.Error(t, err, x.reason)
			assert.Contains(t, err.Error(), x.says, x.reason)
		})
	}
}

// A key that is revoked leaves the edition what it was, so that quotes already
// sent can still be recomputed.
func TestRosterIsNoPartOfTheHash(t *testing.T) {
	a, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	b, err := config.Read([]byte(strings.Replace(string(catalogue.Demo), `"until": "2028-12-31"`,
		`"until": "2028-12-31", "revoked": "2026-12-01"`, 1)))
	require.NoError(t, err)
	assert.Equal(t, a.Hash(), b.Hash())
	assert.NotEqual(t, a.Signers, b.Signers)
	assert.NotNil(t, b.SignerOf(b.Signers[0].PublicKey()))
	assert.Nil(t, b.SignerOf(make([]byte, 32)))
}
