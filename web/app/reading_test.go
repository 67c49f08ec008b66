package app

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

// textOf is what a reader sees of markup.
func textOf(html string) string {
	return strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(html, " ")), " ")
}

// received is a page on which the link of a signed quote was opened.
func received(t *testing.T) (buyer *browser, s shown, link string) {
	t.Helper()
	seller := open(t)
	link = signedDraft(t, seller.signed(t, demoKey(t, seller, "demo-key.json"))).Issued
	buyer = open(t)
	buyer.do(Act{Do: "start"})
	s = buyer.do(Act{Do: "open-link", Value: link})
	require.Empty(t, s.Fault)
	return buyer, s, link
}

// A quote that came by link is read: whatever is asked for, nothing edits it.
func TestReadingEditsNothing(t *testing.T) {
	buyer, s, _ := received(t)
	draft := string(s.Draft)
	for name, a := range seeds.InOrder(map[string]Act{
		"an option":          {Do: "pick", ID: "hvac-roof", On: true},
		"a title":            set("title", "Mine"),
		"a discount":         set("terms.discount_percent", "10"),
		"the seller":         set("seller.name", "Somebody else"),
		"the chassis":        {Do: "chassis", ID: "cab-16500-169-diesel"},
		"the module":         {Do: "body", ID: "mod-132-68"},
		"completing it":      {Do: "complete", ID: "cheapest"},
		"another unit":       {Do: "new", ID: "van-9500-148-gas"},
		"a unit more":        {Do: "add", ID: "item"},
		"a scale ticket":     {Do: "add-ticket"},
		"a file":             {Do: "open-draft", ID: "x.json", Value: draft},
		"a requirement list": {Do: "paste-list", Value: "Winch\n"},
		"signing it anew":    {Do: "sign", Value: keyPhrase},
		"revising it":        {Do: "revise"},
	}) {
		r := buyer.do(a)
		require.JSONEq(t, draft, string(r.Draft), name)
		require.Nil(t, stepOf(r, "new-quote"), name)
		require.Contains(t, textOf(r.Regions["main"]), "Genuine. ", name)
	}
	r := buyer.do(set("title", "Mine"))
	assert.Contains(t, r.Fault, "Press Make my own copy")
}

// The tools of the seller, and the areas in which a unit is built, are not on the page
// of a reader.
func TestReaderSeesNoToolsOfTheSeller(t *testing.T) {
	_, s, _ := received(t)
	all := s.Regions["masthead"] + s.Regions["areas"] + s.Regions["main"] + s.Regions["standing"]
	for _, tool := range []string{`id="key-pass"`, `id="f-address"`, `id="f-open-link"`, `data-act="undo"`,
		`data-act="redo"`,
		`data-act="sign"`, `id="area-unit"`, `data-act="pick"`, `id="kept-copy"`, `data-act="save-draft"`} {
		assert.NotContains(t, all, tool)
	}
	assert.Empty(t, s.Regions["areas"])
	assert.Empty(t, s.Regions["standing"])
	assert.Contains(t, s.Regions["masthead"], "Lakeland Fleet (invented)")
	assert.Contains(t, s.Regions["masthead"], "2026-114")
	assert.NotContains(t, s.Regions["masthead"], "Revise")
}

// What a buyer asks first comes first: genuine, what, for whom, price, both dates.
func TestReaderIsAnsweredInOrder(t *testing.T) {
	_, s, _ := received(t)
	d := signedDraft(t, s)
	text, at := textOf(s.Regions["main"]), 0
	for _, next := range []string{"Genuine. ", "For Alder County Rescue", "from Lakeland Fleet (invented)", "USD ",
		"Price good through ", "Likely date (50 %)", "Safe date (90 %)", "Remaining payload", "Still to decide: 1 item",
		"Unit number", "What is in it, with prices", "Structural warranty: 15 years",
		"Weight, power and rules", "Payments", "Terms", "All documents: quote, drawings, order sheet"} {
		i := strings.Index(text[at:], next)
		require.GreaterOrEqual(t, i, 0, "%q comes after what is before it", next)
		at += i
	}
	assert.NotEmpty(t, d.Issued)
}

// Editing begins with a copy of one's own: unsigned and without a number, in a record of its
// own. The unit keeps its name, which is printed for the buyer.
func TestOwnCopyIsPlainlyUnsigned(t *testing.T) {
	buyer, s, _ := received(t)
	was := signedDraft(t, s)
	s = buyer.do(Act{Do: "own-copy"})
	d := signedDraft(t, s)
	assert.NotNil(t, stepOf(s, "new-quote"), "the quote that was sent stays kept")
	assert.Empty(t, d.Issued)
	assert.Zero(t, d.Rev, "it revises nothing")
	assert.Equal(t, was.Issued, d.Earlier, "what it changes can be shown")
	assert.Empty(t, d.Number)
	assert.Empty(t, d.Seller)
	assert.Equal(t, was.Title, d.Title)
	assert.Equal(t, was.Unit, d.Unit)
	assert.NotEmpty(t, s.Regions["areas"])
	assert.Contains(t, s.Regions["main"], "Still to be named", "it begins where the unit is changed")
	s = buyer.do(set("title", "Mine"))
	require.Empty(t, s.Fault)
	assert.Equal(t, "Mine", signedDraft(t, s).Title)
}

// What a buyer asks for in a copy of a quote, signed or not, its seller sees: what changed, what
// that costs and when it comes. The seller answers with the next revision of the quote.
func TestSellerSeesWhatABuyerAsksFor(t *testing.T) {
	for _, signed := range []bool{false, true} {
		t.Run(fmt.Sprint("signed ", signed), func(t *testing.T) {
			seller := open(t)
			key := demoKey(t, seller, "demo-key.json")
			seller.do(append(parties, set("number", "Q-2041"), Act{Do: "go", ID: "quote"})...)
			s := seller.do(Act{Do: "go", ID: "quote"})
			if signed {
				s = seller.do(Act{Do: "sign", Value: keyPhrase, File: key})
				require.Empty(t, s.Fault)
			}
			sent := sentLink(t, s)

			buyer := open(t)
			buyer.do(Act{Do: "open-link", Value: sent})
			s = buyer.do(Act{Do: "own-copy"}, Act{Do: "pick", ID: "cot-power", On: true}, set("terms.discount_percent", "3"),
				Act{Do: "go", ID: "quote"})
			text := textOf(s.Regions["main"])
			assert.Contains(t, text, "What changed since quote Q-2041, the first issue of ")
			assert.NotContains(t, text, "Missing: ", "a buyer has no number and sells nothing")
			assert.NotContains(t, text, "Signing it needs a key")
			assert.Contains(t, text, "You work for the seller? Name the distributor under “From”",
				"whoever answers for the seller learns how")
			s = buyer.do(Act{Do: "sign", Value: keyPhrase, File: demoKey(t, buyer, "demo-key.json")})
			assert.Contains(t, s.Fault+textOf(s.Regions["main"]), "only asks for changes")

			s = seller.do(Act{Do: "open-link", Value: sentLink(t, buyer.do(Act{Do: "go", ID: "quote"}))})
			require.Empty(t, s.Fault)
			text = textOf(s.Regions["main"])
			assert.Contains(t, text, "who asks for changes")
			assert.Contains(t, text, "2 things changed: Cot; Discount, percent; the document begins")
			assert.Contains(t, text, "Changes asked for. This is no quote to order from")
			assert.NotContains(t, text, "Ask the seller for a signed quote")
			_, changes, known := strings.Cut(text, "Each change and what it costs")
			require.True(t, known)
			for _, next := range []string{"Cot", "Powered cot, 130 lb", "Discount, percent", "The change order comes to USD",
				"The likely date (50 %) ", "The safe date (90 %) ",
				"Remaining payload goes from "} {
				assert.Contains(t, changes, next)
			}
			assert.NotContains(t, changes[:strings.Index(changes, "What it costs")], "Seller",
				"nor a number: a buyer has neither")

			d := signedDraft(t, seller.do(Act{Do: "revise"}))
			assert.Equal(t, 1, d.Rev)
			assert.Equal(t, "Q-2041", d.Number)
			assert.NotEmpty(t, d.Seller.Name)
			assert.True(t, d.Unit.Has("cot-power"))

			s = seller.do(Act{Do: "sign", Value: keyPhrase, File: key})
			require.Empty(t, s.Fault)
			s = buyer.do(Act{Do: "open-link", Value: sentLink(t, s)})
			text = textOf(s.Regions["main"])
			assert.Contains(t, text, "What changed since quote Q-2041, the first issue of ")
			assert.Equal(t, signed, strings.Contains(text, "The earlier one was signed with the same key as this one."))
		})
	}
}

// Once a seller's name stands on a copy it is a quote of its own, and whoever it is sent to
// learns nothing of the one it was copied from.
func TestACopyThatIsSoldForgetsWhatItWasCopiedFrom(t *testing.T) {
	reader, _, _ := received(t)
	require.NotEmpty(t, signedDraft(t, reader.do(Act{Do: "own-copy"})).Earlier)
	d := signedDraft(t, reader.do(set("seller.name", "Harbor Fleet (invented)")))
	assert.Empty(t, d.Earlier+d.Prev)
}

// Whoever holds a signing key revises what they read: at once, and in words.
func TestRevisingIsForWhoMaySign(t *testing.T) {
	buyer, _, link := received(t)
	s := buyer.do(Act{Do: "revise"})
	assert.Contains(t, s.Fault, "made by the seller")
	demoKey(t, buyer, "demo-key.json")
	s = buyer.do(Act{Do: "go", ID: "quote"})
	assert.Contains(t, s.Regions["masthead"], "Revise it as the seller")
	s = buyer.do(Act{Do: "revise"})
	require.Empty(t, s.Fault)
	d := signedDraft(t, s)
	assert.Equal(t, 1, d.Rev)
	assert.Empty(t, d.Issued)
	assert.Equal(t, link, d.Earlier)
	assert.NotNil(t, stepOf(s, "new-quote"))
}

// A manager's copy of a draft that nobody signed has a number of its own, and so has one that is
// made of a revision; either tells what it changes from the last issue that was signed.
func TestAManagersCopyIsToldFromTheOriginal(t *testing.T) {
	seller := open(t)
	seller.do(parties...)
	key := demoKey(t, seller, "demo-key.json")
	draft := signedDraft(t, seller.do(Act{Do: "go", ID: "quote"}))
	manager := open(t)
	demoKey(t, manager, "demo-key.json")
	revised := func(text string) (*quote.Draft, shown) {
		s := manager.do(Act{Do: "open-link", Value: text})
		require.Empty(t, s.Fault)
		s = manager.do(Act{Do: "revise"})
		return signedDraft(t, s), s
	}
	d, s := revised(sentLink(t, seller.do(Act{Do: "go", ID: "quote"})))
	assert.Equal(t, draft.Number, d.Number)
	assert.Equal(t, draft.Rev+1, d.Rev, "another paper than the salesman's")
	assert.Empty(t, d.Prev+d.Earlier, "nothing was signed that it changes")
	assert.True(t, strings.Contains(s.Regions["main"], " · revision 1<"), "its paper says so")

	s = seller.do(Act{Do: "sign", Value: keyPhrase, File: key})
	require.Empty(t, s.Fault)
	first := signedDraft(t, s).Issued
	s = seller.do(set("title", "Medic 14"), Act{Do: "go", ID: "quote"})
	require.Equal(t, 1, signedDraft(t, s).Rev)
	d, _ = revised(sentLink(t, s))
	assert.Equal(t, 2, d.Rev, "and than the salesman's revision")
	assert.Equal(t, link.Name(first), d.Prev)
}

// A quote that was received keeps its figures when the page is renewed with another
// edition, everywhere it is shown; what it would come to today stands apart.
func TestReceivedQuoteKeepsItsFigures(t *testing.T) {
	for name, signed := range seeds.InOrder(map[string]bool{"signed": true, "unsigned": false}) {
		t.Run(name, func(t *testing.T) {
			seller := rubber(t)
			s := seller.do(append(parties, Act{Do: "go", ID: "quote"})...)
			total := quoteOf(t, s)
			q, err := quote.Compute(seller.app.memory.Edition, draftOf(t, s))
			require.NoError(t, err)
			if signed {
				s = seller.do(Act{Do: "sign", Value: keyPhrase, File: demoKey(t, seller, "demo-key.json")})
			}
			buyer := open(t)
			s = buyer.do(Act{Do: "open-link", Value: sentLink(t, s)})
			require.Empty(t, s.Fault)
			draft := string(s.Draft)
			buyer.app = New()
			s = buyer.do(Act{Do: "kept-catalogue", Value: dearer(t)}, Act{Do: "start"})
			require.JSONEq(t, draft, string(s.Draft))
			head, today, _ := strings.Cut(s.Regions["main"], `id="fold-today"`)
			require.Contains(t, head, total)
			require.NotContains(t, today[strings.Index(today, "</table>"):], `class="paper"`)
			require.Contains(t, textOf(head), "Likely date (50 %) "+q.Plan.EvenOdds.Long())
			require.Contains(t, textOf(head), "Safe date (90 %) "+q.Plan.NineInTen.Long())
			assert.Contains(t, s.Gist.Line, total)
			assert.Empty(t, s.Regions["standing"])
			now := regexp.MustCompile(`USD [\d,.]+`).FindAllString(textOf(today), -1)
			require.NotEmpty(t, now)
			for _, other := range now {
				if other != total {
					assert.NotContains(t, head, other, "figures of today stand apart")
					assert.NotContains(t, s.Say, other)
				}
			}
			assert.Contains(t, head, "Rub", "what is in it is listed")
		})
	}
}

// What is in a quote is called as its own edition calls it; where that is not at hand, the
// list says so.
func TestWhatIsInAQuoteIsCalledAsItsOwnEditionCallsIt(t *testing.T) {
	seller := rubber(t)
	s := seller.do(append(parties, Act{Do: "go", ID: "quote"})...)
	buyer := open(t)
	require.Empty(t, buyer.do(Act{Do: "open-link", Value: sentLink(t, s)}).Fault)
	label := buyer.app.memory.Edition.Cat.OptionByID("rail-rubber").Label
	renamed := strings.Replace(dearer(t), `"label": "`+label+`"`, `"label": "Gold-plated rub rail"`, 1)
	require.NotEqual(t, dearer(t), renamed)
	buyer.app = New()
	s = buyer.do(Act{Do: "kept-catalogue", Value: renamed}, Act{Do: "start"})
	assert.Contains(t, s.Regions["main"], label)
	assert.NotContains(t, s.Regions["main"], "Gold-plated")
	assert.NotContains(t, s.Regions["main"], "Named as the edition in use")

	buyer.app = New() // a page built with the other edition
	s = buyer.do(Act{Do: "built-in", Value: renamed}, Act{Do: "start"})
	assert.Contains(t, s.Regions["main"], "Gold-plated")
	assert.Contains(t, s.Regions["main"], "Named as the edition in use")
}

// An older revision says that a newer one is kept here.
func TestOlderRevisionSaysThatANewerIsKept(t *testing.T) {
	buyer, s, _ := received(t)
	assert.NotContains(t, s.Regions["main"], `id="newer"`)
	number := signedDraft(t, s).Number
	for name, x := range seeds.InOrder(map[string]struct {
		saved session.Saved
		newer bool
	}{
		"a later revision":  {session.Saved{ID: "a", Number: number, Rev: 2}, true},
		"the same revision": {session.Saved{ID: "a", Number: number}, false},
		"another quote":     {session.Saved{ID: "a", Number: "other", Rev: 2}, false},
		"this one":          {session.Saved{ID: "a", Number: number, Rev: 2, Here: true}, false},
	}) {
		buyer.req["saved"] = []session.Saved{x.saved}
		s = buyer.do(Act{Do: "restore"})
		assert.Equal(t, x.newer, strings.Contains(s.Regions["main"], "This is an older revision. "), name)
	}
	// Its link is opened while the later one is on the page.
	buyer.req["saved"] = []session.Saved{{ID: "a", Number: number, Rev: 2, Here: true}}
	s = buyer.do(Act{Do: "open-link", Value: signedDraft(t, s).Issued})
	assert.Contains(t, s.Regions["main"], "This is an older revision. ")
}

// What keeps a quote from being signed is said before, and stops the signature.
func TestWhatIsMissingStopsASignature(t *testing.T) {
	for name, x := range seeds.InOrder(map[string]struct {
		act  Act
		says string
	}{
		"no buyer":            {set("buyer.name", " "), "Buyer: not named."},
		"no seller":           {set("seller.name", ""), "Seller: not named."},
		"no number":           {set("number", ""), "Number: none."},
		"a price of no worth": {set("date", "2026-06-01"), "which has passed"},
	}) {
		t.Run(name, func(t *testing.T) {
			p := open(t)
			p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
			key := demoKey(t, p, "demo-key.json")
			p.do(parties...)
			s := p.do(x.act, Act{Do: "go", ID: "quote"})
			require.Contains(t, textOf(s.Regions["main"]), x.says, "it is said on the draft")
			s = p.do(Act{Do: "sign", Value: keyPhrase, File: key})
			require.Contains(t, s.Fault, x.says)
			require.Empty(t, signedDraft(t, s).Issued)
		})
	}
}

func TestRevokedKeyCannotSign(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	p.do(parties...)
	key := demoKey(t, p, "demo-key-revoked.json")
	s := p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	assert.Contains(t, s.Fault, "was revoked on")
	assert.Empty(t, signedDraft(t, s).Issued)
	s = p.do(Act{Do: "go", ID: "quote"})
	assert.Contains(t, textOf(s.Regions["main"]), "Approval: The key of Ruben Castellano (invented)")
}

// A discount beyond what the signer may grant is not signed; a quote that was signed
// with one nevertheless says whose approval it needs.
func TestDiscountBeyondTheSignersLimit(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	key := demoKey(t, p, "demo-key.json")
	p.do(parties...)
	s := p.do(set("terms.discount_percent", "5"), Act{Do: "go", ID: "quote"})
	require.NotContains(t, s.Regions["main"], "may sign up to")
	s = p.do(set("terms.discount_percent", "5.5"))
	require.Contains(t, s.Regions["main"], "may sign up to 5 %", "it is said before")
	s = p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	require.Contains(t, s.Fault, "It needs the approval of somebody who may grant as much")
	require.Empty(t, signedDraft(t, s).Issued)

	generous := strings.Replace(dearer(t), `"max_discount_percent": 5`, `"max_discount_percent": 20`, 1)
	seller := open(t)
	seller.do(Act{Do: "load-catalogue", ID: "x.json", Value: generous}, Act{Do: "use-beside"},
		Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	seller.do(append(parties, set("terms.discount_percent", "5.5"))...)
	s = seller.do(Act{Do: "sign", Value: keyPhrase, File: key}, Act{Do: "go", ID: "quote"})
	require.Empty(t, s.Fault)
	buyer := open(t)
	s = buyer.do(Act{Do: "load-catalogue", ID: "x.json", Value: dearer(t)},
		Act{Do: "open-link", Value: signedDraft(t, s).Issued})
	require.Empty(t, s.Fault)
	head, paper, _ := strings.Cut(s.Regions["main"], `class="paper"`)
	assert.Contains(t, head, "It needs the approval")
	assert.Contains(t, paper, "It needs the approval", "and so says the record that is printed")
}

// Taking a key out asks first, and says whether a copy was saved.
func TestTakingAKeyOutAsksFirst(t *testing.T) {
	p := open(t)
	key := demoKey(t, p, "demo-key.json")
	s := p.do(Act{Do: "go", ID: "seller"})
	require.Contains(t, s.Regions["main"], "No copy was saved from this page so far")
	before, _, _ := strings.Cut(s.Regions["main"], `id="key-forget"`)
	require.Greater(t, strings.LastIndex(before, `id="fold-forget"`), strings.LastIndex(before, "</details>"),
		"the press stands inside what has to be opened first")
	s = p.do(Act{Do: "key-export", File: key})
	require.Contains(t, s.Regions["main"], "Its sealed file was saved from this page")
}

// revoking is the demonstration with the manager's key revoked and nothing else changed.
func revoking(t *testing.T) string {
	t.Helper()
	const line = `"until": "2028-12-31"`
	require.Contains(t, string(catalogue.Demo), line)
	return strings.Replace(strings.Replace(string(catalogue.Demo), line, line+`, "revoked": "2026-12-01"`, 1),
		`"signers_on": "2026-11-01"`, `"signers_on": "2026-12-01"`, 1)
}

// A catalogue that differs in who may sign alone is taken: what changes is shown first,
// and then the stolen key is good no longer.
func TestRevocationReachesTheReader(t *testing.T) {
	for name, act := range seeds.InOrder(map[string]string{"loaded": "load-catalogue", "set beside": "set-beside"}) {
		t.Run(name, func(t *testing.T) {
			buyer, s, _ := received(t)
			require.Contains(t, textOf(s.Regions["main"]), "Genuine. ")
			draft := string(s.Draft)
			keeper := buyer
			keeper.req["view"] = nil // the page of whoever keeps the catalogue
			s = keeper.do(Act{Do: "go", ID: "catalogue"}, Act{Do: act, ID: "x.json", Value: revoking(t)})
			require.Empty(t, s.Fault)
			text := textOf(s.Regions["main"])
			require.Contains(t, text, "Who may sign: what changes")
			require.Contains(t, text, "Dana Whitfield (invented) sales manager")
			require.Contains(t, text, "revoked")
			require.Nil(t, stepOf(s, "keep-catalogue"), "nothing is used before it was shown")
			s = keeper.do(Act{Do: "use-beside"})
			require.NotNil(t, stepOf(s, "keep-catalogue"))
			require.JSONEq(t, draft, string(s.Draft), "a quote stays as it is")
			s = keeper.do(Act{Do: "open-link", Value: signedDraft(t, s).Issued})
			require.Contains(t, textOf(s.Regions["main"]), "Do not rely on this quote. ")
		})
	}
}

// Another edition brings signers in only when they were shown.
func TestSignersNeverComeInSilently(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"})
	stranger := strings.Replace(dearer(t), `"name": "Dana Whitfield (invented)", "role": "sales manager", "key": "8`,
		`"name": "Dana Whitfield (invented)", "role": "sales manager", "key": "9`, 1)
	require.NotEqual(t, dearer(t), stranger)
	s := p.do(Act{Do: "load-catalogue", ID: "x.json", Value: stranger})
	require.Empty(t, s.Fault)
	text := textOf(s.Regions["main"])
	assert.Contains(t, text, "added")
	assert.Contains(t, text, "removed")
	assert.Nil(t, stepOf(s, "keep-catalogue"))
	assert.Equal(t, p.app.memory.Keep.BuiltIn.Ed, p.app.memory.Edition, "the edition in use stays")
	for name, file := range seeds.InOrder(map[string]string{
		"the same signers": dearer(t),
		"one revoked": strings.Replace(strings.Replace(dearer(t), `"until": "2028-12-31"`,
			`"until": "2028-12-31", "revoked": "2026-12-01"`, 1), `"edition": "2026-11"`, `"edition": "2027-05"`, 1),
	}) {
		q := open(t)
		s = q.do(Act{Do: "start"}, Act{Do: "load-catalogue", ID: "x.json", Value: file})
		assert.NotNil(t, stepOf(s, "keep-catalogue"), "%s: taken at once", name)
	}
}

// A key that the page knows as revoked stays revoked, whatever an older catalogue says.
func TestOlderListDoesNotUndoARevocation(t *testing.T) {
	seller := open(t)
	link := signedDraft(t, seller.signed(t, demoKey(t, seller, "demo-key.json"))).Issued
	p := open(t)
	p.do(Act{Do: "built-in", Value: revoking(t)}, Act{Do: "start"})
	s := p.do(Act{Do: "kept-catalogue", Value: string(catalogue.Demo)}, Act{Do: "open-link", Value: link})
	require.Empty(t, s.Fault)
	assert.Contains(t, textOf(s.Regions["main"]), "Do not rely on this quote. ")
}

// A quote that is set aside stands beside the one shown only while it says something
// else, with the reasons above the table.
func TestNoQuoteIsComparedWithItself(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	s := p.do(Act{Do: "pin"}, Act{Do: "go", ID: "compare"})
	assert.NotContains(t, s.Regions["main"], `id="unpin-0"`, "it would stand there twice")
	assert.NotContains(t, s.Regions["main"], `id="why-0"`)
	p.do(Act{Do: "pick", ID: "hvac-roof", On: true})
	s = p.do(Act{Do: "go", ID: "compare"})
	assert.Contains(t, s.Regions["main"], `id="unpin-0"`)
	why := strings.Index(s.Regions["main"], `id="why-0"`)
	require.Positive(t, why)
	assert.Less(t, why, strings.Index(s.Regions["main"], `class="compare"`))
}

// The list of areas calls a quote ready only when nothing that a signature waits for is
// missing.
func TestListOfAreasSaysWhatTheQuoteLacks(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	assert.Contains(t, textOf(s.Regions["areas"]), "3 things missing")
	s = p.do(parties...)
	assert.Contains(t, textOf(s.Regions["areas"]), "ready to print")
	key := demoKey(t, p, "demo-key.json")
	p.do(Act{Do: "go", ID: "quote"})
	s = p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	require.Empty(t, s.Fault)
	assert.NotContains(t, textOf(s.Regions["areas"]), "ready to print")
	assert.Contains(t, textOf(s.Regions["areas"]), "signed")
	s = p.do(set("buyer.name", ""))
	assert.Contains(t, textOf(s.Regions["areas"]), "no buyer")
}

// A quote that the page would compute otherwise stands in a comparison as it was sent,
// whether it is read or added by its link.
func TestComparedAsItWasSent(t *testing.T) {
	seller := rubber(t)
	s := seller.do(append(parties, Act{Do: "go", ID: "quote"})...)
	unsigned, total := sentLink(t, s), quoteOf(t, s)
	q, err := quote.Compute(seller.app.memory.Edition, draftOf(t, s))
	require.NoError(t, err)
	s = seller.do(Act{Do: "sign", Value: keyPhrase, File: demoKey(t, seller, "demo-key.json")})
	signed := signedDraft(t, s).Issued
	holds := func(t *testing.T, s shown) {
		t.Helper()
		require.Empty(t, s.Fault)
		main := s.Regions["main"]
		for _, row := range [][2]string{{"Price", total}, {"Likely date (50 %)", q.Plan.EvenOdds.Long()},
			{"Safe date (90 %)", q.Plan.NineInTen.Long()}} {
			assert.Contains(t, pagetest.RowOf(t, main, row[0]), row[1])
		}
		assert.Contains(t, main, "as it was sent, with catalogue edition demo 2026-11; not recomputed")
	}
	for name, link := range seeds.InOrder(map[string]string{"signed": signed, "unsigned": unsigned}) {
		t.Run(name+" and read", func(t *testing.T) {
			buyer := open(t)
			require.Empty(t, buyer.do(Act{Do: "open-link", Value: link}).Fault)
			buyer.app = New()
			s := buyer.do(Act{Do: "kept-catalogue", Value: dearer(t)}, Act{Do: "start"}, Act{Do: "go", ID: "compare"})
			holds(t, s)
			assert.Len(t, regexp.MustCompile(`USD [\d,.]+`).FindAllString(textOf(s.Regions["main"]), -1), 1,
				"no figure of today")
		})
		t.Run(name+" and added", func(t *testing.T) {
			buyer := open(t)
			buyer.do(Act{Do: "kept-catalogue", Value: dearer(t)}, Act{Do: "start"})
			s := buyer.do(Act{Do: "go", ID: "compare"}, set("pin-link", link))
			holds(t, s)
			assert.Contains(t, s.Regions["main"], "It was offered at ")
		})
	}
}
