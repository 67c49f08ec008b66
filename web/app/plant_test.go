package app

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/seal/sealtest"
	"boxwright/pricing/sign"
	"boxwright/pricing/tables"
	"boxwright/web/assets/catalogue"
)

// plantKey is a key of an invented plant, and another one.
func plantKey(t *testing.T, letter string) *sign.Key {
	t.Helper()
	k, err := sign.New(strings.NewReader(strings.Repeat(letter, 32)))
	require.NoError(t, err)
	return k
}

func signedBy(t *testing.T, file string, k *sign.Key) string {
	t.Helper()
	signed, err := tables.Sign([]byte(file), k)
	require.NoError(t, err)
	return string(signed)
}

// A catalogue that a plant signed is taken as it was signed, and not when anything in it,
// its list of signers among it, was changed since.
func TestACatalogueThatWasSignedIsTakenUnchangedAlone(t *testing.T) {
	k := plantKey(t, "p")
	signed := signedBy(t, dearer(t), k)
	ed, err := quote.Accept([]byte(signed))
	require.NoError(t, err)
	plain, err := config.Read([]byte(dearer(t)))
	require.NoError(t, err)
	assert.Equal(t, plain.Hash(), ed.Cat.Hash(), "a signature is no other edition")
	again := signedBy(t, signed, plantKey(t, "q"))
	assert.Equal(t, 1, strings.Count(again, `"signed"`), "one signature takes the place of the other")
	_, err = quote.Accept([]byte(again))
	require.NoError(t, err)

	tried := 0
	refuse := func(reason, file string) {
		t.Helper()
		tried++
		require.NotEqual(t, signed, file, reason)
		_, err := quote.Accept([]byte(file))
		assert.ErrorContains(t, err, "signature does not hold", reason)
	}
	replace := func(old, to string) string {
		t.Helper()
		require.Contains(t, signed, old)
		return strings.Replace(signed, old, to, 1)
	}
	refuse("a price", replace(`"rail-rubber": "480.00"`, `"rail-rubber": "48.00"`))
	refuse("a mass", replace(`"gvwr_lb": 9500`, `"gvwr_lb": 9600`))
	refuse("an edition", replace(`"edition": "`, `"edition": "x`))
	refuse("a reason", replace(`"reason": "`, `"reason": "x`))
	cat := ed.Cat
	for i := range cat.Signers {
		s := &cat.Signers[i]
		refuse("the name of a signer", replace(`"name": "`+s.Name, `"name": "x`+s.Name))
		refuse("the key of a signer", replace(s.Key, sign.Text(k.Public())[:42]+"A"))
		if !s.Revoked.IsZero() {
			refuse("a revocation", replace(`"revoked": "`+s.Revoked.String(), `"revoked": "2099-01-01`))
		}
	}
	refuse("another key", replace(`"key":"`+sign.Text(k.Public()), `"key":"`+sign.Text(plantKey(t, "q").Public())))
	refuse("no key", replace(`"key":"`+sign.Text(k.Public()), `"key":"`))
	for at := range cat.Signed.Signature {
		letter := "A"
		if cat.Signed.Signature[at] == 'A' {
			letter = "B"
		}
		forged := cat.Signed.Signature[:at] + letter + cat.Signed.Signature[at+1:]
		c := *cat
		c.Signed = &config.PlantSignature{Key: cat.Signed.Key, Signature: forged}
		require.NotNil(t, sign.CheckCatalogue(&c), "letter %d", at)
		tried++
	}
	quoted := *cat
	quoted.Signed = &config.PlantSignature{Key: cat.Signed.Key, Signature: "AQ" + strings.Repeat("A", 84)}
	require.NotNil(t, sign.CheckCatalogue(&quoted))
	t.Logf("%d altered catalogues refused", tried)
}

// A page for one plant takes what that plant signed, and nothing else, in every way in
// which a catalogue comes in.
func TestAPageForOnePlantTakesItsCataloguesAlone(t *testing.T) {
	k, thief := plantKey(t, "p"), plantKey(t, "q")
	catalogue.Plant = sign.Text(k.Public())
	defer func() { catalogue.Plant = "" }()
	p := open(t)
	good, unsigned := signedBy(t, dearer(t), k), dearer(t)
	for name, file := range map[string]string{"unsigned": unsigned, "signed by another": signedBy(t, unsigned, thief)} {
		for _, act := range []string{"load-catalogue", "kept-catalogue", "built-in"} {
			s := p.do(Act{Do: act, ID: "x.json", Value: file})
			assert.Contains(t, s.Fault, "the plant did not sign this one", "%s, %s", name, act)
		}
		s := p.do(Act{Do: "go", ID: "catalogue"}, Act{Do: "set-beside", ID: "x.json", Value: file})
		assert.Contains(t, s.Regions["main"], "the plant did not sign this one", name)
	}
	s := p.do(Act{Do: "built-in", Value: good}, Act{Do: "go", ID: "catalogue"})
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "Signed by the plant")

	require.NotEmpty(t, p.app.memory.Edition.Cat.Signers)
	fresh := open(t)
	fresh.do(Act{Do: "start"})
	assert.Empty(t, fresh.app.memory.Edition.Cat.Signers, "nobody of the demonstration signs for the plant")
}

// Whoever keeps a catalogue signs it in the page; what another did not sign is shown
// before it is used.
func TestACatalogueIsSignedInThePage(t *testing.T) {
	sealtest.Cheap()
	p := open(t)
	s := p.do(Act{Do: "go", ID: "catalogue"})
	assert.Contains(t, s.Regions["main"], "It needs a signing key on this device")
	key := demoKey(t, p, "demo-key.json")
	s = p.do(Act{Do: "restore"})
	assert.Contains(t, s.Regions["main"], `id="sign-catalogue"`)
	s = p.do(Act{Do: "sign-catalogue", Value: "a wrong passphrase", File: key})
	assert.Contains(t, s.Fault, "was not signed")
	s = p.do(Act{Do: "sign-catalogue", Value: keyPhrase, File: key})
	require.Empty(t, s.Fault)
	require.NotNil(t, stepOf(s, "save"))
	signed := stepOf(s, "save").Text
	assert.Equal(t, signed, stepOf(s, "keep-catalogue").Text)
	cat, err := config.Read([]byte(signed))
	require.NoError(t, err)
	assert.Nil(t, sign.CheckCatalogue(cat))
	assert.Contains(t, s.Regions["main"], "Signed by the plant")

	s = p.do(Act{Do: "load-catalogue", ID: "x.json", Value: signedBy(t, dearer(t), plantKey(t, "q"))})
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "Signed with another key than the edition in use")
	s = p.do(Act{Do: "load-catalogue", ID: "x.json", Value: dearer(t)})
	assert.Contains(t, s.Regions["main"], "No plant signed it")
	table := saved(t, p.do(Act{Do: "tables-out", ID: "prices"}))
	p.do(Act{Do: "drop-beside"})
	s = p.do(Act{Do: "tables-in", ID: "prices.csv", Value: sheetsOf(t, "prices.csv", strings.Replace(table,
		"insert,380.00,", "insert,490,", 1))})
	assert.NotContains(t, s.Regions["main"], "does not hold", "what is edited is unsigned until it is signed again")
	assert.Contains(t, s.Regions["main"], "No plant signed it")
}
