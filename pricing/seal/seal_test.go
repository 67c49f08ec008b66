package seal_test

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/seal"
	"boxwright/pricing/seal/internal/effort"
	"boxwright/pricing/seal/sealtest"
)

const passphrase = "four plain words here"

// fixed is a source of randomness for tests: always the same bytes.
func fixed() *bytes.Reader { return bytes.NewReader(bytes.Repeat([]byte{7}, 28)) }

func ExampleSeal() {
	sealed, _ := seal.Seal(rand.Reader, "costs", passphrase, []byte("cost 73911.37"))
	fmt.Println(bytes.Contains(sealed, []byte("73911")))
	data, err := seal.Open("costs", passphrase, sealed)
	fmt.Println(string(data), err)
	_, err = seal.Open("costs", "four plain words there", sealed)
	fmt.Println(err == seal.ErrWrong)
	// Output:
	// false
	// cost 73911.37 <nil>
	// true
}

// The example above seals with it too.
func TestFilesAreSealedWithTheShippedWork(t *testing.T) {
	sealed, err := seal.Seal(fixed(), "costs", passphrase, []byte("x"))
	require.NoError(t, err)
	require.Equal(t, []byte{15, 8, 3}, sealed[8:11], "1<<15 blocks of 8*128 bytes, three times over")
}

// cheap has a test seal with less work, which it is not about.
func cheap(t *testing.T) {
	t.Cleanup(func() { effort.Sealing = effort.Shipped })
	sealtest.Cheap()
}

func TestSameInputSameBytes(t *testing.T) {
	cheap(t)
	a, err := seal.Seal(fixed(), "costs", passphrase, []byte("x"))
	require.NoError(t, err)
	b, err := seal.Seal(fixed(), "costs", passphrase, []byte("x"))
	require.NoError(t, err)
	assert.Equal(t, a, b)
	c, err := seal.Seal(rand.Reader, "costs", passphrase, []byte("x"))
	require.NoError(t, err)
	assert.NotEqual(t, a, c, "other randomness, other bytes")
	assert.True(t, seal.Sealed(a))
}

func TestAnyChangeIsNoticed(t *testing.T) {
	cheap(t)
	sealed, err := seal.Seal(fixed(), "costs", passphrase, []byte("margin"))
	require.NoError(t, err)
	// One byte of each part: salt, nonce, ciphertext, tag.
	for _, at := range []int{11, 26, 27, 38, 39, len(sealed) - 1} {
		changed := bytes.Clone(sealed)
		changed[at] ^= 1
		_, err := seal.Open("costs", passphrase, changed)
		assert.ErrorIs(t, err, seal.ErrWrong, "byte %d", at)
	}
	_, err = seal.Open("key", passphrase, sealed)
	assert.ErrorIs(t, err, seal.ErrWrong, "sealed for another purpose")
	_, err = seal.Open("costs", "", sealed)
	assert.ErrorIs(t, err, seal.ErrWrong, "no passphrase")
}

func TestHostileFilesCostNothing(t *testing.T) {
	cheap(t)
	sealed, err := seal.Seal(fixed(), "costs", passphrase, nil)
	require.NoError(t, err)
	with := func(at int, b byte) []byte {
		c := bytes.Clone(sealed)
		c[at] = b
		return c
	}
	for _, c := range []struct {
		file   []byte
		err    error
		reason string
	}{
		{nil, seal.ErrForm, "nothing"},
		{[]byte("bxseal1\n"), seal.ErrForm, "cut short"},
		{sealed[:len(sealed)-1], seal.ErrForm, "cut by a byte"},
		{with(0, 'B'), seal.ErrForm, "another file"},
		{with(8, 40), seal.ErrForm, "would take a million gigabytes"},
		{with(8, 0), seal.ErrForm, "would take no work at all"},
		{with(9, 255), seal.ErrForm, "large blocks"},
		{with(10, 255), seal.ErrForm, "many rounds"},
		{make([]byte, seal.MaxBytes+1000), seal.ErrTooLarge, "too large"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, err := seal.Open("costs", passphrase, c.file)
			assert.ErrorIs(t, err, c.err, c.reason)
		})
	}
}

func TestSealRefuses(t *testing.T) {
	_, err := seal.Seal(fixed(), "costs", "short", nil)
	assert.ErrorIs(t, err, seal.ErrPassphrase)
	_, err = seal.Seal(fixed(), "costs", passphrase, make([]byte, seal.MaxBytes+1))
	assert.ErrorIs(t, err, seal.ErrTooLarge)
	broken := errors.New("no entropy")
	_, err = seal.Seal(iotest.ErrReader(broken), "costs", passphrase, nil)
	assert.ErrorIs(t, err, broken)
	_, err = seal.Seal(bytes.NewReader([]byte{1}), "costs", passphrase, nil)
	assert.Error(t, err, "too little randomness is none")
}

func BenchmarkSeal(b *testing.B) {
	for b.Loop() {
		if _, err := seal.Seal(fixed(), "costs", passphrase, []byte("x")); err != nil {
			b.Fatal(err)
		}
	}
}

// What is easily guessed seals nothing; what was sealed with it before still opens.
func TestPassphrasesThatAreEasilyGuessed(t *testing.T) {
	cheap(t)
	for _, weak := range []string{"", "short", "lantern2026", "aaaaaaaaaaaaaaaaaaaaaaaa", "abababababababababab",
		"1234567 1234567",
		"password password", "1234567890123456", "qwertyuiopasdfgh", "ambulanceambulance", "abcdefghijklmnopqrst",
		"zyxwvutsrqponmlk", "county rescue station 4", "lantern lantern lantern", strings.Repeat("kT9#x!mQ2@", 103)} {
		_, err := seal.Seal(fixed(), "costs", weak, nil)
		assert.ErrorIs(t, err, seal.ErrPassphrase, weak)
	}
	for _, good := range []string{"plum orchard lantern", "vier schöne Wörter", "kT9#x!mQ2@vL7$pR",
		"correct horse battery staple", "winter gate copper river"} {
		_, err := seal.Seal(fixed(), "costs", good, nil)
		assert.NoError(t, err, good)
	}
}
