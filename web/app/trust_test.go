package app

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"html"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/assets/catalogue"
	"boxwright/web/page/pagetest"
)

const keyPhrase = "several plain words"

var keyRandom = base64.StdEncoding.EncodeToString(bytes.Repeat([]byte{7}, 64))

// imported are the keys that were imported already, by file: sealing is made to
// take long, and gives the same each time.
var imported = map[string]Step{}

// demoKey is the published key of an invented person, as a page keeps it.
func demoKey(t *testing.T, p *browser, file string) (sealed string) {
	t.Helper()
	if step, ok := imported[file]; ok {
		p.req["key"] = step.ID
		return step.Text
	}
	data, err := os.ReadFile("../assets/catalogue/" + file)
	require.NoError(t, err)
	s := p.do(Act{Do: "key-import", Value: keyPhrase, File: base64.StdEncoding.EncodeToString(data), Random: keyRandom})
	require.Empty(t, s.Fault)
	require.Equal(t, "keep-key", s.Do[0].Do)
	imported[file] = s.Do[0]
	p.req["key"] = s.Do[0].ID
	return s.Do[0].Text
}

// parties names who buys and who sells, and numbers the quote.
var parties = []Act{set("buyer.name", "Alder County Rescue"), set("seller.name", "Lakeland Fleet (invented)"),
	set("number", "2026-114")}

func (p *browser) signed(t *testing.T, key string) shown {
	t.Helper()
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	p.do(append(parties, Act{Do: "go", ID: "quote"})...)
	s := p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	require.Empty(t, s.Fault)
	return s
}

// sentLink is the link that the Quote area offers to copy.
func sentLink(t *testing.T, s shown) string {
	t.Helper()
	_, rest, found := strings.Cut(s.Regions["main"], `id="link-text"`)
	require.True(t, found)
	_, rest, _ = strings.Cut(rest, ">")
	text, _, _ := strings.Cut(rest, "<")
	_, text, _ = strings.Cut(html.UnescapeString(text), "#")
	return text
}

func signedDraft(t *testing.T, s shown) *quote.Draft {
	t.Helper()
	d, err := quote.ReadDraft(s.Draft)
	require.NoError(t, err)
	return d
}

func TestSignAndRead(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	s := seller.signed(t, demoKey(t, seller, "demo-key.json"))
	link := signedDraft(t, s).Issued
	require.NotEmpty(t, link)
	assert.Contains(t, s.Regions["main"], "Dana Whitfield (invented), sales manager, is an authorized signer")
	assert.Contains(t, s.Regions["main"], link, "the link offered is the signed one")
	assert.Contains(t, s.Regions["main"], `class="qr"`)

	buyer := open(t)
	b := buyer.do(Act{Do: "start"}, Act{Do: "open-link", Value: "https://quotes.example/#" + link})
	require.Empty(t, b.Fault)
	assert.JSONEq(t, string(s.Draft), string(b.Draft))
	assert.Contains(t, b.Regions["main"], "Genuine")
	assert.Contains(t, b.Regions["main"], "agree with those signed")
	b = buyer.do(Act{Do: "go", ID: "weight"}, Act{Do: "units"})
	assert.Equal(t, link, signedDraft(t, b).Issued, "looking at it changes nothing")
}

// Who reads a price of several units is told so where the price stands.
func TestAReaderSeesHowManyUnitsAPriceIsFor(t *testing.T) {
	seller := open(t)
	s := seller.do(set("terms.units", "3"), Act{Do: "pin"})
	require.Empty(t, s.Fault)
	buyer := open(t)
	b := buyer.do(Act{Do: "start"}, Act{Do: "open-link", Value: s.Pins[0]})
	require.Empty(t, b.Fault)
	assert.Contains(t, textOf(b.Regions["main"]), "USD, all 3 units")
}

func TestEveryAlteredByteIsSaid(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	link := signedDraft(t, seller.signed(t, demoKey(t, seller, "demo-key.json"))).Issued
	before := seller.do(Act{Do: "go", ID: "quote"})
	for i := 2; i < len(link); i += 5 {
		other := byte('A')
		if link[i] == 'A' {
			other = 'B'
		}
		s := seller.do(Act{Do: "open-link", Value: link[:i] + string(other) + link[i+1:]})
		require.NotEmpty(t, s.Fault, "character %d", i)
		require.JSONEq(t, string(before.Draft), string(s.Draft), "the quote before stays")
	}
}

// otherwiseSigned is a link that a key of ours signed which the page would not sign with.
func otherwiseSigned(t *testing.T, p *browser, file string) string {
	t.Helper()
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	p.do(append(parties, Act{Do: "go", ID: "quote"})...)
	data, err := os.ReadFile("../assets/catalogue/" + file)
	require.NoError(t, err)
	key, err := sign.Read(data)
	require.NoError(t, err)
	q, err := quote.Compute(p.app.memory.Edition, p.draft())
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	text, err = link.Sign(text, p.app.memory.Edition.Cat, key)
	require.NoError(t, err)
	return text
}

func TestStandingOfTheSigner(t *testing.T) {
	for _, x := range []struct{ key, today, heads, says, reason string }{
		{"demo-key.json", "2026-11-25", "Genuine. ", "days from today", "a sound quote"},
		{"demo-key.json", "2028-03-01", "Genuine, but expired. ", "It expired", "long after"},
		{"demo-key.json", "2029-03-01", "Ask the seller first. ", "nothing proves the date", "the signer has left since"},
		{"demo-key.json", "2026-10-01", "Ask the seller first. ", "dated after today", "dated ahead"},
		{"demo-key-revoked.json", "2026-11-25", "Do not rely on this quote. ", "was revoked on", "a revoked key"},
		{"", "2026-11-25", "Signed by somebody unknown. ", "does not know the key", "a key on no roster"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			seller := open(t)
			seller.do(Act{Do: "start"})
			var link string
			switch x.key {
			case "":
				s := seller.do(Act{Do: "key-new", Value: keyPhrase, Random: keyRandom})
				require.Empty(t, s.Fault)
				link = signedDraft(t, seller.signed(t, s.Do[0].Text)).Issued
			case "demo-key-revoked.json":
				link = otherwiseSigned(t, seller, x.key)
			default:
				link = signedDraft(t, seller.signed(t, demoKey(t, seller, x.key))).Issued
			}
			buyer := open(t)
			buyer.req["today"] = x.today
			s := buyer.do(Act{Do: "start"}, Act{Do: "open-link", Value: link})
			assert.Contains(t, textOf(s.Regions["main"]), x.heads, "the page is headed by it")
			assert.Contains(t, s.Regions["main"], x.says, x.reason)
		})
	}
}

// Whoever signs with a key on no list is told that it is their own, and does not have to ask the
// seller for it; what goes on paper is worded for the buyer.
func TestAnOwnKeyOnNoListIsTheSignersOwn(t *testing.T) {
	seller := open(t)
	s := seller.do(Act{Do: "start"}, Act{Do: "key-new", Value: keyPhrase, Random: keyRandom})
	require.Empty(t, s.Fault)
	seller.req["key"] = s.Do[0].ID
	s = seller.signed(t, s.Do[0].Text)
	screen, paper, known := strings.Cut(textOf(s.Regions["main"]), "This quote on a screen")
	require.True(t, known)
	assert.Contains(t, screen, "Signer: you, with the key of this device. It is on no list of signers of this catalogue")
	assert.NotContains(t, screen, "Whoever signed may be anybody")
	assert.Contains(t, paper, "Whoever signed may be anybody")
	assert.NotContains(t, paper, "you, with the key of this device")

	link := signedDraft(t, s).Issued
	s = seller.do(Act{Do: "open-link", Value: link})
	assert.Contains(t, textOf(s.Regions["main"]), "Signed with your own key. ")
}

func TestSignedQuoteThatIsEditedIsARevision(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	key := demoKey(t, seller, "demo-key.json")
	first := signedDraft(t, seller.signed(t, key)).Issued
	s := seller.do(Act{Do: "pick", ID: "hvac-roof", On: true}, set("own.space.height-all", "120"),
		Act{Do: "set", ID: "terms.training_days", Value: "3"},
		Act{Do: "go", ID: "quote"})
	d := signedDraft(t, s)
	assert.Empty(t, d.Issued, "never silently signed")
	assert.Equal(t, 1, d.Rev)
	assert.NotEmpty(t, d.Prev)
	assert.Equal(t, first, d.Earlier)
	assert.Contains(t, s.Regions["main"], "The change order comes to")
	assert.Contains(t, s.Regions["main"], "Change order to the first issue")

	text := textOf(s.Regions["main"])
	assert.Contains(t, text, "The safe date (90 %) ", "dates are checked against the safe one")
	s = seller.do(Act{Do: "paper", ID: "order"})
	text = textOf(s.Regions["main"])
	_, changed, known := strings.Cut(text, "Work changed since the first issue")
	require.True(t, known, "the plant sees what it builds otherwise")
	changed, _, _ = strings.Cut(changed, "Long lead")
	assert.Contains(t, changed, "hvac-roof")
	assert.NotContains(t, changed, "rs-flip", "what is built as before is not listed")
	seller.do(Act{Do: "paper", ID: "quote"})

	s = seller.do(Act{Do: "sign", Value: keyPhrase, File: key})
	second := signedDraft(t, s)
	require.NotEmpty(t, second.Issued)

	buyer := open(t)
	b := buyer.do(Act{Do: "start"}, Act{Do: "open-link", Value: second.Issued})
	assert.Contains(t, b.Regions["main"], "is not at hand")
	b = buyer.do(Act{Do: "set", ID: "earlier", Value: "https://other.example/#" + second.Issued})
	assert.Contains(t, b.Regions["main"], "not the quote that this revision names")
	b = buyer.do(Act{Do: "set", ID: "earlier", Value: "https://quotes.example/#" + first})
	assert.Contains(t, b.Regions["main"], "The change order comes to")
	assert.Equal(t, second.Issued, signedDraft(t, b).Issued, "seeing the difference does not touch the signature")

	// Who has the first one open, or at hand, sees the difference at once.
	other := open(t)
	b = other.do(Act{Do: "start"}, Act{Do: "open-link", Value: second.Issued, File: "q=AAAA " + first})
	assert.Contains(t, b.Regions["main"], "The change order comes to")
}

// The link of a revision brings the quote before it along, unless the seller
// says otherwise; one that is not the quote named counts for nothing.
func TestRevisionBringsTheQuoteBeforeItAlong(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	key := demoKey(t, seller, "demo-key.json")
	first := signedDraft(t, seller.signed(t, key)).Issued
	seller.do(set("terms.discount_percent", "1.5"))
	s := seller.do(Act{Do: "sign", Value: keyPhrase, File: key})
	second := signedDraft(t, s).Issued
	both := sentLink(t, s)
	assert.True(t, strings.HasPrefix(both, second+"&cover="))
	assert.True(t, strings.HasSuffix(both, "&was="+strings.TrimPrefix(first, "q=")))
	written := "&amp;was="
	s = seller.do(Act{Do: "set", ID: "along"})
	assert.NotContains(t, s.Regions["main"], written)
	assert.Contains(t, s.Regions["main"], second)

	buyer := open(t)
	b := buyer.do(Act{Do: "start"}, Act{Do: "open-link", Value: "https://quotes.example/#" + both})
	require.Empty(t, b.Fault)
	assert.Contains(t, b.Regions["main"], "The change order comes to")
	assert.Equal(t, first, signedDraft(t, b).Earlier)
	assert.Equal(t, second, signedDraft(t, b).Issued)

	stranger := open(t)
	b = stranger.do(Act{Do: "start"}, Act{Do: "open-link", Value: second + "&was=" + strings.TrimPrefix(second, "q=")})
	assert.Contains(t, b.Regions["main"], "is not at hand")
	b = stranger.do(Act{Do: "set", ID: "pin-link", Value: both})
	assert.Equal(t, []string{second}, b.Pins, "what is set aside is the quote alone")
}

// A signed quote that is changed clouds in its drawing set what changed, and nothing else;
// the revision table names both.
func TestDrawingsCloudWhatARevisionChanges(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	first := seller.signed(t, demoKey(t, seller, "demo-key.json"))
	s := seller.do(Act{Do: "go", ID: "quote"}, Act{Do: "paper", ID: "drawings"})
	require.Contains(t, s.Regions["main"], "plate-drawing")
	assert.NotContains(t, s.Regions["main"], `class="cloud"`)
	assert.Contains(t, s.Regions["main"], "First drawing")
	was := signedDraft(t, first)
	step := "rs-fixed"
	if was.Unit.Has(step) {
		step = "rs-low"
	}
	seller.do(Act{Do: "pick", ID: step, Value: "1", On: true})
	s = seller.do(Act{Do: "go", ID: "quote"}, Act{Do: "paper", ID: "drawings"})
	main := s.Regions["main"]
	assert.Contains(t, main, "What changed is clouded")
	sheets := strings.Split(main, `class="drawn-sheet"`)[1:]
	require.GreaterOrEqual(t, len(sheets), 13)
	clouds := 0
	for _, sheet := range sheets {
		clouds += strings.Count(sheet, `class="cloud"`)
		if strings.Contains(sheet, "Sheet 8, Inside") || strings.Contains(sheet, "Sheet 9, Inside") {
			assert.NotContains(t, sheet, `class="cloud"`, "the inside is as it was")
		}
	}
	assert.Positive(t, clouds)
	assert.Contains(t, main, " changed</b>", "the list of numbers says so too")
	assert.Regexp(t, `<td>0</td><td>[^<]+</td><td>Quote before</td></tr><tr><td>1</td>`, main)
	assert.Contains(t, sheets[0], "Left out since the quote before: ", "the step that it had")
	for _, kind := range []string{"dxf", "svg"} {
		s = seller.do(Act{Do: "save-set", ID: kind})
		saved := stepOf(s, "save")
		require.NotNil(t, saved)
		assert.True(t, strings.HasSuffix(saved.Name, "-set."+kind), saved.Name)
		for _, said := range []string{"What changed is clouded", "Left out since the quote before", "Approved as noted",
			"Signature"} {
			assert.True(t, strings.Contains(saved.Text, said), said)
		}
	}
}

// A signature that somebody writes into a kept draft by hand counts for nothing.
func TestForgedSignatureIsTakenOff(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	s := seller.signed(t, demoKey(t, seller, "demo-key.json"))
	good := signedDraft(t, s)
	for reason, change := range seeds.InOrder(map[string]func(*quote.Draft){
		"another price under the same signature": func(d *quote.Draft) { d.Buyer.Name = "Somebody else" },
		"no link at all":                         func(d *quote.Draft) { d.Issued = "q=AAAA" },
		"a link that is not signed":              func(d *quote.Draft) { d.Issued = unsignedLink(t) },
	}) {
		d := good.Clone()
		change(d)
		data, err := d.Bytes()
		require.NoError(t, err)
		p := open(t)
		p.req["draft"], p.req["view"] = json.RawMessage(data), s.View
		r := p.do(Act{Do: "start"})
		require.Empty(t, signedDraft(t, r).Issued, reason)
		require.NotContains(t, r.Regions["main"], "unchanged since it was signed", reason)
	}
}

func unsignedLink(t *testing.T) string {
	p := open(t)
	s := p.do(Act{Do: "start"}, Act{Do: "pin"})
	return s.Pins[0]
}

func TestUnknownEditionShowsTheFrozenFigures(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	link := signedDraft(t, seller.signed(t, demoKey(t, seller, "demo-key.json"))).Issued
	other := strings.Replace(string(catalogue.Demo), `"edition": "2026-11"`, `"edition": "2027-03"`, 1)
	buyer := open(t)
	s := buyer.do(Act{Do: "start"}, Act{Do: "load-catalogue", ID: "other.json", Value: other},
		Act{Do: "open-link", Value: link})
	assert.Contains(t, s.Regions["main"], "NOT recomputed")
	assert.Contains(t, s.Regions["main"], "demo 2026-11")
	assert.Contains(t, s.Regions["main"], "Dana Whitfield", "the signature is checked without the edition")
	s = buyer.do(Act{Do: "demo-catalogue"})
	assert.Contains(t, s.Regions["main"], "Open it and recompute")
	s = buyer.do(Act{Do: "foreign-open"})
	assert.Equal(t, link, signedDraft(t, s).Issued)
	assert.NotContains(t, s.Regions["main"], "NOT recomputed")
}

// A quote of an edition that is not at hand is read as any other: its seller and number
// above, what it comes to for each, and what next at the foot. It is compared as it was
// sent, and nothing of the quote in work stands beside it.
func TestForeignQuoteIsReadAsAnyOther(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, set("title", "Sent rescue"),
		set("terms.units", "2"))
	sent := signedDraft(t, seller.signed(t, demoKey(t, seller, "demo-key.json")))
	q, err := quote.Compute(seller.app.memory.Edition, sent)
	require.NoError(t, err)
	other := strings.Replace(string(catalogue.Demo), `"edition": "2026-11"`, `"edition": "2027-03"`, 1)
	buyer := open(t)
	buyer.do(Act{Do: "start"}, Act{Do: "load-catalogue", ID: "other.json", Value: other})
	worked := buyer.do(Act{Do: "go", ID: "quote"}, set("title", "My own work"))
	s := buyer.do(Act{Do: "open-link", Value: sent.Issued})
	require.Empty(t, s.Fault)
	alone := func(s shown) {
		t.Helper()
		assert.Contains(t, textOf(s.Regions["masthead"]), sent.Seller.Name)
		assert.Empty(t, s.Regions["areas"])
		assert.Empty(t, s.Regions["standing"])
		for _, text := range []string{s.Regions["masthead"], s.Regions["main"], s.Title, s.Say} {
			assert.NotContains(t, text, "My own work")
		}
		assert.NotContains(t, s.Regions["masthead"], "own-copy", "nothing can be made of it here")
	}
	alone(s)
	assert.Contains(t, textOf(s.Regions["masthead"]), sent.Number)
	assert.Contains(t, s.Title, sent.Number)
	assert.Contains(t, textOf(s.Regions["main"]), q.Price.EachWords()+".")
	assert.Contains(t, s.Regions["main"], `id="reading-included"`)
	assert.Contains(t, s.Regions["main"], `id="fold-included"`)
	assert.NotNil(t, stepOf(buyer.do(Act{Do: "included"}), "unfold"))

	s = buyer.do(Act{Do: "go", ID: "compare"})
	alone(s)
	assert.Contains(t, s.Regions["masthead"], "Back to the quote")
	assert.Contains(t, pagetest.RowOf(t, s.Regions["main"], "Price"), q.Total())
	assert.Contains(t, s.Regions["main"], "being read")
	s = buyer.do(set("pin-link", unsignedLink(t)))
	assert.Contains(t, s.Say, "Added to compare.", "and it is heard")
	assert.Contains(t, s.Regions["main"], `id="why-0"`)

	s = buyer.do(Act{Do: "go", ID: "catalogue"})
	assert.NotEmpty(t, s.Regions["areas"], "its edition can be loaded")
	s = buyer.do(Act{Do: "go", ID: "quote"})
	alone(s)
	s = buyer.do(Act{Do: "foreign-drop"})
	assert.Contains(t, s.Regions["masthead"], "My own work")
	assert.JSONEq(t, string(worked.Draft), string(s.Draft))
}

func TestStoppedQuoteIsNotSigned(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"})
	key := demoKey(t, p, "demo-key.json")
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	d := signedDraft(t, p.do(Act{Do: "go", ID: "quote"}))
	d.Unit.PayloadLb = 9000
	d.Buyer.Name, d.Seller.Name, d.Number = "a", "b", "c"
	data, _ := d.Bytes()
	p.req["draft"] = json.RawMessage(data)
	s := p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	if strings.Contains(s.Regions["main"], "cannot be issued") {
		assert.Contains(t, s.Fault, "cannot be signed")
		assert.Empty(t, signedDraft(t, s).Issued)
	}
}

func TestKeyNeedsItsPassphrase(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"})
	key := demoKey(t, p, "demo-key.json")
	p.do(parties...)
	s := p.do(Act{Do: "sign", Value: "another passphrase", File: key})
	assert.Contains(t, s.Fault, "passphrase is wrong")
	assert.Empty(t, signedDraft(t, s).Issued)
	s = p.do(Act{Do: "key-new", Value: "short", Random: keyRandom})
	assert.Contains(t, s.Fault, "too easily guessed")
	assert.Empty(t, s.Do)
}

// The link that is copied says on its cover what is in it. One whose cover says
// something else is not opened, whether its edition is at hand or not.
func TestCoverMustAgree(t *testing.T) {
	seller := open(t)
	seller.do(Act{Do: "start"})
	s := seller.signed(t, demoKey(t, seller, "demo-key.json"))
	signed := sentLink(t, s)
	unsigned := sentLink(t, seller.do(set("title", "Rescue 4")))
	later := strings.Replace(string(catalogue.Demo), `"edition": "2026-11"`, `"edition": "2027-03"`, 1)
	for name, sent := range seeds.InOrder(map[string]string{"signed": signed, "unsigned": unsigned}) {
		for _, edition := range []string{"its edition", "another edition"} {
			t.Run(name+", "+edition, func(t *testing.T) {
				own, cover, _ := link.Split(sent)
				lines := strings.Split(cover, "\n")
				require.Len(t, lines, 3)
				require.NotEqual(t, own, sent, "a copied link has a cover")
				buyer := open(t)
				buyer.do(Act{Do: "start"})
				if edition != "its edition" {
					buyer.do(Act{Do: "load-catalogue", ID: "later.json", Value: later})
				}
				before := buyer.do(Act{Do: "go", ID: "quote"})
				lines[1] = "USD 1.00"
				b := buyer.do(Act{Do: "open-link", Value: link.WithCover(own, strings.Join(lines, "\n"))})
				require.Contains(t, b.Fault, `The cover of the link says "USD 1.00" as its price`)
				require.JSONEq(t, string(before.Draft), string(b.Draft), "the quote before stays")
				require.False(t, strings.Contains(b.Regions["main"], `id="foreign"`))
				b = buyer.do(Act{Do: "set", ID: "pin-link", Value: link.WithCover(own, strings.Join(lines, "\n"))})
				require.Empty(t, b.Pins)
				b = buyer.do(Act{Do: "open-link", Value: sent})
				require.Empty(t, b.Fault)
				if edition == "its edition" {
					require.Equal(t, sent, sentLink(t, b), "the reader can send it on as it came")
				} else {
					require.True(t, strings.Contains(b.Regions["main"], "NOT recomputed"))
				}
			})
		}
	}
}

// An unsigned link that carries other figures than what it holds comes to is refused,
// with both of them.
func TestUnsignedLinkWithOtherFiguresIsRefused(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	d := signedDraft(t, p.do(Act{Do: "go", ID: "quote"}))
	q, err := quote.Compute(p.app.memory.Edition, d)
	require.NoError(t, err)
	honest, err := link.Encode(q)
	require.NoError(t, err)
	price := *q.Price
	price.Currency = "CAD"
	q.Price = &price
	other, err := link.Encode(q)
	require.NoError(t, err)
	s := open(t).do(Act{Do: "open-link", Value: honest})
	require.Empty(t, s.Fault)
	s = open(t).do(Act{Do: "open-link", Value: other})
	assert.Contains(t, s.Fault, "This quote was not opened.")
	assert.Contains(t, s.Fault, "it says CAD ")
	assert.Contains(t, s.Fault, "comes to USD ")
	assert.Empty(t, s.Do)
	s = open(t).do(Act{Do: "go", ID: "compare"}, set("pin-link", other))
	assert.NotContains(t, s.Regions["main"], "as it was sent")
	assert.Contains(t, s.Regions["main"], "This quote was not opened.", "nor is it compared")
	assert.Empty(t, s.Pins)
}

// Nobody signs a quote with a declaration that its unit does not keep, however well the
// number is known, and the paper says so before it counts the clauses.
func TestADeclarationThatIsNotKeptIsNotSigned(t *testing.T) {
	p := open(t)
	key := demoKey(t, p, "demo-key.json")
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-164-72"})
	s := p.do(append(slices.Clone(parties), Act{Do: "go", ID: "quote"})...)
	assert.Contains(t, s.Regions["main"], "The quote cannot be signed as it stands: the unit misses the standard")
	assert.Contains(t, s.Regions["main"], "The unit is declared to KKK-A-1822F")
	assert.Contains(t, s.Regions["main"], "Not to be signed: The unit is declared")
	s = p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	assert.Contains(t, s.Fault, "does not meet: Overall height")
	assert.Empty(t, signedDraft(t, s).Issued)

	s = p.do(set("own.space.height-all", "120"))
	assert.NotContains(t, s.Regions["main"], "Not to be signed")
	s = p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	assert.Empty(t, s.Fault)
}
