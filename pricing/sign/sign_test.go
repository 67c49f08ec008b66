package sign_test

import (
	"bytes"
	"encoding/hex"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/pricing/seal/sealtest"
	"boxwright/pricing/sign"
)

func key(t testing.TB, letter string) *sign.Key {
	k, err := sign.New(strings.NewReader(strings.Repeat(letter, 32)))
	require.NoError(t, err)
	return k
}

func TestAnyChangeIsSeen(t *testing.T) {
	k, other := key(t, "a"), key(t, "b")
	rapid.Check(t, func(r *rapid.T) {
		message := rapid.SliceOfN(rapid.Byte(), 1, 200).Draw(r, "message")
		s := k.Sign(message)
		require.True(r, sign.Check(k.Public(), message, s))
		require.Equal(r, s, k.Sign(message), "the same message, the same signature")
		require.False(r, sign.Check(other.Public(), message, s))
		at := rapid.IntRange(0, len(message)-1).Draw(r, "at")
		changed := bytes.Clone(message)
		changed[at] ^= byte(rapid.IntRange(1, 255).Draw(r, "by"))
		require.False(r, sign.Check(k.Public(), changed, s))
		forged := bytes.Clone(s)
		forged[rapid.IntRange(0, len(s)-1).Draw(r, "at")] ^= byte(rapid.IntRange(1, 255).Draw(r, "by"))
		require.False(r, sign.Check(k.Public(), message, forged))
	})
}

func TestCheckRefusesOddSizes(t *testing.T) {
	k := key(t, "a")
	for _, n := range []int{0, 1, 31, 33, 64} {
		assert.False(t, sign.Check(make([]byte, n), []byte("x"), k.Sign([]byte("x"))))
		assert.False(t, sign.Check(k.Public(), []byte("x"), make([]byte, n)))
	}
}

// The public key of RFC 8032, section 7.1, TEST 1 (from memory; the secret key
// and public key are printed side by side there).
func TestPublicKeyPublished(t *testing.T) {
	seed, err := hex.DecodeString("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")
	require.NoError(t, err)
	k, err := sign.New(bytes.NewReader(seed))
	require.NoError(t, err)
	assert.Equal(t, "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", hex.EncodeToString(k.Public()))
}

func TestSealedKeyComesBack(t *testing.T) {
	sealtest.Cheap()
	k := key(t, "a")
	sealed, err := k.Seal(bytes.NewReader(make([]byte, 28)), "several plain words")
	require.NoError(t, err)
	assert.NotContains(t, string(sealed), strings.Repeat("a", 8), "the seed does not show")
	back, err := sign.Open(sealed, "several plain words")
	require.NoError(t, err)
	assert.Equal(t, k.Public(), back.Public())
	_, err = sign.Open(sealed, "other plain words")
	assert.Error(t, err)
	for reason, file := range map[string]string{
		"another form": `{"format":"boxwright-key/9","seed":"` + strings.Repeat("A", 43) + `"}`,
		"a short seed": `{"format":"boxwright-key/1","seed":"AAAA"}`,
		"no key":       `{}`, "no JSON": `seed`, "far too long": strings.Repeat(" ", 5000),
	} {
		t.Run(reason, func(t *testing.T) {
			_, err := sign.Read([]byte(file))
			assert.ErrorIs(t, err, sign.ErrKey, reason)
		})
	}
	_, err = sign.New(strings.NewReader("too little"))
	assert.Error(t, err)
}

func day(text string) config.Date {
	d, err := config.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

func TestJudge(t *testing.T) {
	k := key(t, "a")
	line := config.Signer{Name: "Invented Person", Role: "sales", Key: sign.Text(k.Public()), From: day("2026-01-01"),
		Until: day("2026-12-31")}
	revoked := line
	revoked.Revoked = day("2026-06-01")
	for _, x := range []struct {
		roster       []config.Signer
		dated, today string
		want         string
		reason       string
	}{
		{nil, "2026-05-01", "2026-05-02", sign.Unknown, "an empty roster"},
		{[]config.Signer{line}, "2026-05-01", "2026-05-02", sign.Known, "within the time"},
		{[]config.Signer{line}, "2026-01-01", "2026-01-01", sign.Known, "the first day"},
		{[]config.Signer{line}, "2026-12-31", "2026-12-31", sign.Known, "the last day"},
		{[]config.Signer{line}, "2025-12-31", "2026-05-02", sign.TooSoon, "the day before"},
		{[]config.Signer{line}, "2027-01-01", "2027-01-01", sign.Ended, "the day after"},
		{[]config.Signer{line}, "2026-05-01", "2027-01-01", sign.Left, "read when the signer may sign no longer: perhaps backdated"},
		{[]config.Signer{line}, "2026-05-01", "", sign.Known, "a reader without a clock"},
		{[]config.Signer{line}, "2026-05-03", "2026-05-01", sign.Ahead, "dated after the day it is read"},
		{[]config.Signer{line}, "2026-05-02", "2026-05-01", sign.Known, "where the day begins earlier"},
		{[]config.Signer{revoked}, "2026-05-01", "2026-05-02", sign.Revoked, "dated before it was revoked: a thief writes any date"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			today, _ := config.ParseDate(x.today)
			got := sign.Judge(&config.Catalogue{Signers: x.roster}, k.Public(), day(x.dated), today)
			assert.Equal(t, x.want, got.Code, x.reason)
			assert.NotEmpty(t, got.Words())
		})
	}
}

func ExampleKey_Sign() {
	k, _ := sign.New(strings.NewReader("thirty-two bytes of randomness.."))
	s := k.Sign([]byte("quote 2026-114"))
	fmt.Println(sign.Check(k.Public(), []byte("quote 2026-114"), s),
		sign.Check(k.Public(), []byte("quote 2026-115"), s))
	// Output: true false
}
