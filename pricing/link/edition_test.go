package link

import (
	"encoding/hex"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/sign"
	"boxwright/web/assets/catalogue"
)

// A signature binds the whole hash of the edition: one that shares the first 8 bytes
// alone does not take its place. Links signed before bind 8 bytes, are read as ever,
// and tell.
func TestSignatureBindsTheWholeEdition(t *testing.T) {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	key, err := sign.New(strings.NewReader(strings.Repeat("a", 32)))
	require.NoError(t, err)
	text, err := Encode(computed(t))
	require.NoError(t, err)
	unsigned, err := unwrap(text)
	require.NoError(t, err)

	made, err := Sign(text, cat, key)
	require.NoError(t, err)
	assert.True(t, BindsWhole(made))
	_, _, err = Decode(cat, made)
	require.NoError(t, err)

	before := sealUp(signed8, slices.Concat(key.Public(), key.Sign(unsigned.content), unsigned.content))
	assert.False(t, BindsWhole(before))
	d, _, err := Decode(cat, before)
	require.NoError(t, err, "a link signed before is read")
	assert.Equal(t, before, d.Issued)

	// An edition of the same first 8 bytes, as somebody with time can make one.
	other, err := hex.DecodeString(cat.Hash())
	require.NoError(t, err)
	other[len(other)-1] ^= 1
	p := parts{hash: other, content: slices.Concat(other, unsigned.content[hashBytes:])}
	_, _, err = Decode(cat, sealUp(signed, slices.Concat(key.Public(), key.Sign(p.bound()), p.content)))
	fault, _ := err.(*Error)
	require.NotNil(t, fault)
	assert.Equal(t, UnknownEdition, fault.Code, "signed for another edition")
	_, _, err = Decode(cat, sealUp(signed, slices.Concat(key.Public(), key.Sign(unsigned.content), unsigned.content)))
	assert.Error(t, err, "a signature of the old kind is none of the new")
	later, err := config.Read([]byte(strings.Replace(string(catalogue.Demo), `"edition": "2026-11"`,
		`"edition": "2027-03"`, 1)))
	require.NoError(t, err)
	_, err = Sign(text, later, key)
	assert.Error(t, err, "a link is signed with its own edition")
}

// A link that was made before links carried the 90 % date is read as ever: the figures it
// does not carry agree with any.
func TestLinkWithoutTheSafeDateIsRead(t *testing.T) {
	q := computed(t)
	cat := q.Edition.Cat
	text, err := Encode(q)
	require.NoError(t, err)
	now, err := unwrap(text)
	require.NoError(t, err)
	plain, packed, err := expand(now.content[hashBytes:])
	require.NoError(t, err)
	before := strings.Replace(string(plain), `,"s":"`+q.Plan.NineInTen.String()+`"`, "", 1)
	require.NotEqual(t, string(plain), before)
	squeezed, err := squeeze([]byte(before))
	require.NoError(t, err)
	_, f, err := Decode(cat, sealUp(unsigned, slices.Concat(now.hash, squeezed, packed)))
	require.NoError(t, err)
	assert.True(t, f.Safe.IsZero())
	assert.True(t, f.Agrees(Freeze(q)))

	other := *Freeze(q)
	other.Safe = other.Safe.AddDays(1)
	assert.False(t, other.Agrees(Freeze(q)), "a date that is carried is compared")
}
