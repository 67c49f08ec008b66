package app

import (
	"encoding/base64"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/costs"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/seal"
)

const passphrase = "plum orchard lantern"

// A cost sheet with a text and figures that stand nowhere else.
const private = `{"format": "boxwright-costs/1", "catalogue": "CATALOGUE", "title": "CANARY-TITLE-7391",
  "costs": {"cut-14500-158-gas": "43117.91", "mod-146-72": "98713.37"},
  "shares": {"chassis": "61.73", "body": "62.37", "option": "63.91"}, "charges": {"freight": "81.19"},
  "overheads": [{"id": "prep", "label": "CANARY-OVERHEAD", "amount": "917.13"}],
  "roles": [{"id": "seller", "label": "CANARY-ROLE", "max_discount": "2.17", "min_margin": "16.71"}]}`

// raw is a request whose whole reply is looked at.
func (p *browser) raw(acts ...Act) (shown, string) {
	p.t.Helper()
	p.req["acts"] = acts
	data, err := json.Marshal(p.req)
	require.NoError(p.t, err)
	reply := string(p.app.Handle(data))
	var s shown
	require.NoError(p.t, json.Unmarshal([]byte(reply), &s))
	if s.Regions != nil {
		p.req["draft"], p.req["view"], p.req["pins"] = s.Draft, s.View, s.Pins
	}
	return s, reply
}

func (p *browser) openPrivate() (shown, string) {
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	file := strings.Replace(private, "CATALOGUE", p.app.memory.Edition.Cat.ID, 1)
	return p.raw(Act{Do: "open-costs", ID: "costs.json", Value: passphrase,
		File:   base64.StdEncoding.EncodeToString([]byte(file)),
		Random: base64.StdEncoding.EncodeToString(make([]byte, 32))})
}

func stepOf(s shown, do string) *Step {
	for i := range s.Do {
		if s.Do[i].Do == do {
			return &s.Do[i]
		}
	}
	return nil
}

// secrets are everything that must not be seen: the sheet's own words and
// figures, and those worked out from them.
func (p *browser) secrets() []string {
	d, err := quote.ReadDraft(p.req["draft"].(json.RawMessage))
	require.NoError(p.t, err)
	q, err := quote.Compute(p.app.memory.Edition, d)
	require.NoError(p.t, err)
	file := strings.Replace(private, "CATALOGUE", p.app.memory.Edition.Cat.ID, 1)
	sheet, err := costs.Read([]byte(file), p.app.memory.Edition.Cat, p.app.memory.Edition.Book)
	require.NoError(p.t, err)
	m := costs.Judge(sheet, q.Price)
	out := []string{"CANARY", passphrase, "43117.91", "43,117.91", "98713.37", "98,713.37", "61.73", "62.37", "63.91",
		"81.19", "917.13", "2.17 %", "16.71"}
	return append(out, m.Cost.Show(), m.Cost.String(), m.Margin.Show(), m.Margin.String(), m.Percent.Show())
}

func (p *browser) clean(where, text string, secrets []string) {
	p.t.Helper()
	for _, s := range secrets {
		assert.NotContains(p.t, text, s, where)
	}
}

// While the cost sheet is open, its figures stand in a section of Costs and keys
// on the screen; every other output is searched for them.
func TestCostsReachNothingButTheirSection(t *testing.T) {
	p := open(t)
	s, reply := p.openPrivate()
	require.Empty(t, s.Fault)
	secrets := p.secrets()
	p.clean("the reply to opening, elsewhere than Costs and keys", reply, secrets)
	kept := stepOf(s, "keep-costs")
	require.NotNil(t, kept)
	sealed, err := base64.StdEncoding.DecodeString(kept.Text)
	require.NoError(t, err)
	require.True(t, seal.Sealed(sealed))
	p.clean("what the browser keeps", string(sealed), secrets)
	saved := stepOf(s, "save")
	require.NotNil(t, saved)
	assert.True(t, saved.Base64)
	assert.Equal(t, kept.Text, saved.Text, "the file saved is the sealed one")

	for _, area := range Areas() {
		if area == "seller" {
			continue // the one that shows them
		}
		_, reply := p.raw(Act{Do: "go", ID: area})
		p.clean("area "+area, reply, secrets)
	}
	s, _ = p.raw(Act{Do: "go", ID: "seller"})
	main := s.Regions["main"]
	for _, must := range []string{"CANARY-TITLE", "CANARY-ROLE", "CANARY-OVERHEAD", "43,117.91", "98,713.37"} {
		assert.Contains(t, main, must, "the search would find it")
	}
	before, rest, found := strings.Cut(main, `<section class="block screen private" id="costs">`)
	require.True(t, found, "the section is one that paper leaves out")
	_, after, found := strings.Cut(rest, "</section>")
	require.True(t, found)
	p.clean("the area around the section", before+after, secrets)
	delete(s.Regions, "main")
	others, err := json.Marshal(s)
	require.NoError(t, err)
	p.clean("what the page keeps and says", string(others), secrets)

	_, reply = p.raw(Act{Do: "go", ID: "quote"}, Act{Do: "save-draft"}, Act{Do: "pin"}, Act{Do: "print"})
	p.clean("file, pins, print and paper", reply, secrets)
	text := linkOf(t, reply)
	packed, err := base64.RawURLEncoding.DecodeString(strings.TrimPrefix(text, "q="))
	require.NoError(t, err)
	d, frozen, err := link.Decode(p.app.memory.Edition.Cat, text)
	require.NoError(t, err)
	unpacked, err := json.Marshal([]any{d, frozen})
	require.NoError(t, err)
	p.clean("the link", text+string(packed)+string(unpacked), secrets)
}

func linkOf(t *testing.T, reply string) string {
	t.Helper()
	_, rest, found := strings.Cut(reply, "#q=")
	require.True(t, found)
	end := strings.IndexFunc(rest, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_')
	})
	return "q=" + rest[:end]
}

// Locked, or in a worker started anew, nothing is known but the sealed file.
func TestCostsAreLostOnLockAndRestart(t *testing.T) {
	p := open(t)
	s, _ := p.openPrivate()
	sealed := stepOf(s, "keep-costs").Text
	secrets := p.secrets()
	p.req["costs"] = true
	p.do(Act{Do: "go", ID: "seller"})
	s, reply := p.raw(Act{Do: "lock-costs"})
	p.clean("locked", reply, secrets)
	assert.Contains(t, s.Regions["main"], "Unlock")

	p.app = New()
	_, reply = p.raw(Act{Do: "start"})
	p.clean("after a restart", reply, secrets)
	s, reply = p.raw(Act{Do: "open-costs", Value: "another passphrase", File: sealed})
	assert.Contains(t, s.Fault, "passphrase is wrong")
	assert.NotContains(t, reply, "another passphrase")
	p.clean("not opened", reply, secrets)
	s, _ = p.raw(Act{Do: "open-costs", Value: passphrase, File: sealed})
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "CANARY-TITLE")
	assert.NotContains(t, s.Regions["main"], passphrase)
	s, reply = p.raw(Act{Do: "forget-costs"})
	assert.Empty(t, stepOf(s, "keep-costs").Text)
	p.clean("taken out", reply, secrets)
}

func TestCostFilesThatAreNotTaken(t *testing.T) {
	for _, c := range []struct{ reason, file, pass, want string }{
		{"no file at all", "", passphrase, "choose its file"},
		{"not a cost sheet", `{"secret-key": "CANARY"}`, passphrase, "was not taken"},
		{"a passphrase that is too short", "sheet", "short", "was not sealed"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			p := open(t)
			p.do(Act{Do: "start"})
			file := c.file
			if file == "sheet" {
				file = strings.Replace(private, "CATALOGUE", p.app.memory.Edition.Cat.ID, 1)
			}
			s, reply := p.raw(Act{Do: "open-costs", Value: c.pass,
				File:   base64.StdEncoding.EncodeToString([]byte(file)),
				Random: base64.StdEncoding.EncodeToString(make([]byte, 32))})
			assert.Contains(t, s.Fault, c.want, c.reason)
			assert.NotContains(t, reply, "CANARY", c.reason)
			assert.Nil(t, p.app.memory.Costs, c.reason)
			assert.Nil(t, stepOf(s, "keep-costs"), c.reason)
		})
	}
}

// The demonstration sheet is one the page takes.
func TestDemonstrationCosts(t *testing.T) {
	file, err := os.ReadFile("../assets/catalogue/demo-costs.json")
	require.NoError(t, err)
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	s := p.do(Act{Do: "open-costs", Value: passphrase, File: base64.StdEncoding.EncodeToString(file),
		Random: base64.StdEncoding.EncodeToString(make([]byte, 32))}, Act{Do: "go", ID: "seller"})
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "Sales manager")
	assert.Contains(t, s.Regions["main"], "What a discount does to the margin")
}
