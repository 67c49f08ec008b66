package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/seal/sealtest"
	"boxwright/pricing/sign"
	"boxwright/web/assets/catalogue"
)

func TestACatalogueIsSignedOnTheCommandLine(t *testing.T) {
	sealtest.Cheap()
	dir := t.TempDir()
	name, keyName := filepath.Join(dir, "cat.json"), filepath.Join(dir, "key.sealed")
	require.NoError(t, os.WriteFile(name, catalogue.Demo, 0o600))
	k, err := sign.New(strings.NewReader(strings.Repeat("p", 32)))
	require.NoError(t, err)
	const words = "lantern river copper seventeen"
	sealed, err := k.Seal(strings.NewReader(strings.Repeat("r", 28)), words)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(keyName, sealed, 0o600))

	var out, errs strings.Builder
	assert.Equal(t, 2, signFile(keyName, name, strings.NewReader("another passphrase of words\n"), &out, &errs))
	file, err := os.ReadFile(name)
	require.NoError(t, err)
	assert.Equal(t, catalogue.Demo, file, "nothing is written")

	require.Equal(t, 0, signFile(keyName, name, strings.NewReader(words+"\n"), &out, &errs), errs.String())
	assert.Contains(t, out.String(), "-plant "+sign.Text(k.Public()))
	file, err = os.ReadFile(name)
	require.NoError(t, err)
	cat, err := config.Read(file)
	require.NoError(t, err)
	assert.Nil(t, sign.CheckCatalogue(cat))
	assert.Nil(t, sign.OfPlant(cat, sign.Text(k.Public())))

	changed := strings.Replace(string(file), `"gvwr_lb": 9500`, `"gvwr_lb": 9600`, 1)
	require.NoError(t, os.WriteFile(name, []byte(changed), 0o600))
	errs.Reset()
	assert.Equal(t, 1, checkFile(name, false, &out, &errs))
	require.Equal(t, 0, signFile(keyName, name, strings.NewReader(words), &out, &errs), errs.String())
	assert.Equal(t, 0, checkFile(name, false, &out, &errs))

	assert.Equal(t, 2, signFile(name, name, strings.NewReader(""), &out, &errs), "a catalogue is no key")
}
