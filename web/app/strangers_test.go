package app

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/seal/sealtest"
	"boxwright/web/assets/catalogue"
)

// A draft that goes out by link or on paper says what is missing there, and a complete one
// does not.
func TestADraftSaysWhatIsMissingWhereItIsSentAndPrinted(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "go", ID: "quote"})
	main := s.Regions["main"]
	for _, where := range []string{`id="ready"`, "Draft, not signed and not complete."} {
		assert.Contains(t, main, where)
	}
	assert.Equal(t, 2, strings.Count(main, "Missing: Buyer, Seller, Number."), "beside what prints it, and on paper")
	main = p.do(parties...).Regions["main"]
	assert.NotContains(t, main, "Missing: ")
	assert.Contains(t, main, "It goes out as a draft. To check: ")
	assert.NotContains(t, main, "To check: To check")
	assert.NotContains(t, main, "not complete")
	main = p.do(set("needs.patients", "4")).Regions["main"]
	assert.Contains(t, main, "Draft, not signed and not complete. </b>Must fix: ")
}

// A copy is a quote of its own: it has no number until it is given one, and no signature.
func TestACopyHasNoNumber(t *testing.T) {
	p := open(t)
	p.signed(t, demoKey(t, p, "demo-key.json"))
	s := p.do(Act{Do: "copy-quote"})
	d := signedDraft(t, s)
	assert.Empty(t, d.Number+d.Issued+d.Prev)
	assert.Zero(t, d.Rev)
	assert.Empty(t, d.Title, "what it is called is printed: a copy keeps the unit's own name")
}

// What is still to be named leads to the field where it is said.
func TestWhatIsToBeNamedLeadsThere(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "go", ID: "quote"})
	assert.Contains(t, s.Regions["main"], `id="name-first"`)
	s = p.do(Act{Do: "name", ID: "mrk-unit-number"})
	assert.Contains(t, s.Regions["main"], `id="f-detail.mrk-unit-number"`)
	assert.Equal(t, "f-detail.mrk-unit-number", s.Do[len(s.Do)-1].ID)
}

// What a stranger put into a quote turns, hides and covers nothing, from the first reading on.
func TestTextsOfStrangersAreTamedWhenTheyAreRead(t *testing.T) {
	p := open(t)
	s := p.do(set("buyer.name", "\u202e00.996,672 DSU"), set("number", "רכב 7"),
		set("title", "Z"+strings.Repeat("\u0310", 40)))
	require.Empty(t, s.Fault)
	var d struct {
		Title string
		Buyer struct{ Name string }
	}
	require.NoError(t, json.Unmarshal(s.Draft, &d))
	assert.Equal(t, "00.996,672 DSU", d.Buyer.Name)
	assert.Equal(t, "Z"+strings.Repeat("\u0310", 4), d.Title)
	assert.Contains(t, s.Gist.Line, "\u2068רכב 7\u2069", "its number turns nothing of the line")
	assert.Contains(t, s.Regions["masthead"], "\u2068רכב 7\u2069")

	wild := strings.Replace(string(s.Draft), `"title":"`, `"title":"\u202e`, 1)
	s = p.do(Act{Do: "open-draft", ID: "x.json", Value: wild})
	require.Empty(t, s.Fault)
	assert.NotContains(t, string(s.Draft), "\u202e")

	long := strings.Replace(string(s.Draft), `"rule_set":"`, `"rule_set":"`+strings.Repeat("x", 584), 1)
	s = p.do(Act{Do: "open-draft", ID: "x.json", Value: long})
	assert.Contains(t, s.Fault, "the most is 64")

	cat := strings.Replace(string(catalogue.Demo), `"label": "`, `"label": "\u202e`, 1)
	s = p.do(Act{Do: "load-catalogue", ID: "x.json", Value: cat})
	assert.Contains(t, s.Fault, "turn the direction of writing")
}

// A name in a notice, an alert or a list is written within itself.
func TestNamesOfStrangersTurnNothingOfASentence(t *testing.T) {
	p := open(t)
	s := p.do(set("title", "רכב 7"))
	assert.Equal(t, "\u2068רכב 7\u2069", s.Gist.Name)
	assert.Contains(t, s.Title, "\u2068רכב 7\u2069")
	s = p.do(Act{Do: "load-catalogue", ID: "\u202enosj.\u200fx", Value: "{"})
	assert.NotContains(t, s.Fault, "\u202e")
	assert.NotContains(t, s.Fault, "\u200f")
	s = p.do(Act{Do: "load-catalogue", ID: "רכב", Value: "{"})
	assert.Contains(t, s.Fault, "\u2068רכב\u2069 was not loaded")

	cat := strings.Replace(string(catalogue.Demo), `"edition": "2026-11"`, `"edition": "רכב"`, 1)
	require.NotEqual(t, string(catalogue.Demo), cat)
	s = p.do(Act{Do: "load-catalogue", ID: "x.json", Value: cat})
	assert.Contains(t, s.Say, "edition \u2068רכב\u2069, is in use")
}

// Sealed quotes come back with the passphrase alone, whatever else is tried.
func TestSavedQuotesAreSealedByTheCore(t *testing.T) {
	sealtest.Cheap()
	p := open(t)
	s := p.do(set("title", "Secret 1"))
	file := `{"format":"boxwright-kept/1","quotes":[{"id":"a","name":"n","line":"l","saved":"","draft":` +
		string(s.Draft) +
		`,"pins":[],"steps":[],"at":0}]}`
	const words = "lantern river copper seventeen"
	s = p.do(Act{Do: "seal-kept", Value: "short", File: file, Random: keyRandom})
	assert.Contains(t, s.Fault, "were not sealed")
	s = p.do(Act{Do: "seal-kept", Value: words, File: "{}", Random: keyRandom})
	assert.Contains(t, s.Fault, "were not sealed")
	s = p.do(Act{Do: "seal-kept", Value: words, File: file, Random: keyRandom})
	require.Empty(t, s.Fault)
	sealed := stepOf(s, "keep-sealed")
	require.NotNil(t, sealed)
	raw, err := base64.StdEncoding.DecodeString(sealed.Text)
	require.NoError(t, err)
	assert.False(t, bytes.Contains(raw, []byte("Secret 1")))

	s = p.do(Act{Do: "open-sealed", Value: "another passphrase of words", File: sealed.Text})
	assert.Contains(t, s.Fault, "were not opened")
	assert.Nil(t, stepOf(s, "import"))
	for at := 0; at < len(raw); at += 1 + len(raw)/16 {
		changed := bytes.Clone(raw)
		changed[at] ^= 1
		s = p.do(Act{Do: "open-sealed", Value: words, File: base64.StdEncoding.EncodeToString(changed)})
		require.Contains(t, s.Fault, "were not opened", "byte %d", at)
	}
	s = p.do(Act{Do: "open-sealed", Value: words, File: sealed.Text})
	require.Empty(t, s.Fault)
	back := stepOf(s, "import")
	require.NotNil(t, back)
	assert.Equal(t, "sealed", back.ID)
	assert.Contains(t, back.Text, "Secret 1")
}

// A copy of everything brings a sealed key and cost sheet along, and replaces none that
// is there.
func TestACopyBringsWhatIsSealed(t *testing.T) {
	sealtest.Cheap()
	p := open(t)
	key := demoKey(t, p, "demo-key.json")
	public := p.req["key"].(string)
	copied := `{"format":"boxwright-kept/1","quotes":[],"key":{"sealed":"` + key + `","public":"` + public + `"}}`
	s := p.do(Act{Do: "import", ID: "x.json", Value: copied})
	require.Empty(t, s.Fault)
	assert.Nil(t, stepOf(s, "keep-key"), "the key that is there stays")
	p.req["key"] = ""
	s = p.do(Act{Do: "import", ID: "x.json", Value: copied})
	require.NotNil(t, stepOf(s, "keep-key"))
	assert.Equal(t, key, stepOf(s, "keep-key").Text)
	for bad, said := range map[string]string{
		strings.Replace(copied, key, "AAAA", 1):                      "a signing key",
		strings.Replace(copied, public, "AAAA", 1):                   "a signing key",
		strings.Replace(copied, `"key"`, `"catalogue":"{","key"`, 1): "a catalogue that cannot be used (",
		strings.Replace(copied, `"key"`, `"costs":"AAAA","key"`, 1):  "a cost sheet",
		strings.Replace(copied, `"key"`, `"sealed":"!","key"`, 1):    "sealed quotes",
	} {
		s = p.do(Act{Do: "import", ID: "x.json", Value: bad})
		assert.Empty(t, s.Fault, "what cannot be used stands in the way of no quote")
		assert.Contains(t, s.Said, "Left out: "+said)
		require.NotNil(t, stepOf(s, "import"))
		assert.NotRegexp(t, `"(catalogue|costs|sealed)"`, stepOf(s, "import").Text)
		assert.Equal(t, said != "a signing key", stepOf(s, "keep-key") != nil)
	}
}
