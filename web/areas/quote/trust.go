package quote

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Trust is how far a reader can rely on the quote.
type Trust struct {
	Today     config.Date
	AsksBack  bool              // what a reader asks for, which the seller answers
	OwnKey    string            // public half of the key kept in this browser; empty when there is none
	Own       sign.Standing     // of that key
	Roster    *config.Catalogue // with the list of signers in use
	Signature *Signature        // nil when the quote is not signed
	Before    *Before           // nil when the quote revises no other
}

// Signature that holds: not a byte of the quote was changed since.
type Signature struct {
	Key      []byte
	Standing sign.Standing
	Frozen   link.Frozen
	Over     string    // says that the discount is beyond what the signer may grant; empty when it is not
	Figures  assurance // whether this page computes the figures that were signed
	Binds    string    // says what of the edition the signature binds, where that is not all of it
}

// Foreign is a quote that cannot be recomputed here.
type Foreign struct {
	Trust    *Trust
	Frozen   link.Frozen
	Draft    *quote.Draft // without what the edition alone knows
	Included []string     // what is in it, by name; nil where its edition is nowhere at hand
	Known    bool         // its edition has been loaded since
}

// Before is the quote that this one revises. Q is nil when it is not at hand or
// cannot be recomputed; Frozen is nil when it is not at hand.
type Before struct {
	Number string
	Rev    int
	Date   config.Date
	Key    []byte // it was signed with; nil when it was not
	Signer string // of that key, in words
	Frozen *link.Frozen
	Q      *quote.Quote
	Along  string // the link in work with that of the earlier quote
}

// assurance is one line of what a reader is told: in order, to be decided, or not.
type assurance struct {
	state config.Severity
	about string
	says  string
}

func assurances(list []assurance) Part {
	return El("ul", Class("checks"), Each(list, func(_ int, c assurance) Part {
		return El("li", page.Mark(c.state), El("b", Text(" "+c.about+": ")), Text(c.says))
	}))
}

// standingCheck says who signed. A key on no list that is kept in this browser is the reader's own.
func (t *Trust) standingCheck() assurance {
	key, s, state := t.Signature.Key, t.Signature.Standing, config.Warn
	if t.signedHere() {
		return assurance{state, "Signer", "you, with the key of this device. " + ownUnlisted + " Key " + sign.Short(key) + "."}
	}
	switch s.Code {
	case sign.Known:
		state = ""
	case sign.Revoked, sign.Unknown:
		state = config.Stop
	}
	return assurance{state, "Signer", s.Words() + " Key " + sign.Short(key) + "."}
}

// ownUnlisted says what a key on no list means to whoever signed with it.
const ownUnlisted = "It is on no list of signers of this catalogue: buyers are told that its owner is unknown, until " +
	"whoever keeps the catalogue lists it."

// signedHere reports whether a quote was signed with the key kept in this browser, which is on no list.
func (t *Trust) signedHere() bool {
	g := t.Signature
	return g.Standing.Code == sign.Unknown && bytes.Equal(g.Key, sign.PublicKey(t.OwnKey))
}

// validity says until when the quote stands, seen from today.
func validity(until, today config.Date) assurance {
	left := today.DaysUntil(until)
	switch {
	case left < 0:
		return assurance{config.Warn, "Price good through", until.Long() + ". It expired " +
			page.Count(-left, "day", "days") + " ago: ask the seller for a new one before ordering."}
	case left == 0:
		return assurance{"", "Price good through", until.Long() + ", which is today."}
	}
	return assurance{"", "Price good through", until.Long() + ", " + page.Count(left, "day", "days") + " from today."}
}

// reliance is the check list of a quote.
func reliance(t *Trust, until config.Date) []assurance {
	list := []assurance{{config.Warn, "Signature", "none. This is a draft: nobody has signed it."}}
	if t.AsksBack {
		list[0] = assurance{"", "Signature", "none is needed: the seller answers with a quote of their own, and signs that."}
	}
	if g := t.Signature; g != nil {
		list = []assurance{{"", "Signature", "genuine: unchanged since it was signed." + g.Binds},
			t.standingCheck()}
		if g.Over != "" {
			list = append(list, assurance{config.Warn, "Discount", g.Over})
		}
		if g.Figures.says != "" {
			list = append(list, g.Figures)
		}
	}
	return append(list, validity(until, t.Today))
}

// agreement says whether the page computes the figures that were signed.
func agreement(q *quote.Quote, signed *link.Frozen) assurance {
	now := link.Freeze(q)
	safe := signed.Safe.IsZero() || signed.Safe == now.Safe
	if now.Total == signed.Total && now.Even == signed.Even && safe {
		return assurance{"", "Figures", "recomputed here; price and dates agree with those signed."}
	}
	return assurance{config.Warn, "Figures", "signed with a total of " + signed.Total + " and " + signed.Dates() +
		"; this copy of the page computes " + now.Total + " and " + now.Dates() + ". What was signed stands."}
}

// trust is the part of the Quote area that says how far the quote can be relied
// on, and signs it.
func trust(p *Page) Part {
	t := p.Trust
	if t == nil {
		return nil
	}
	d := p.Q.Draft
	title := "Not signed"
	if t.Signature != nil {
		title = "Signed"
	}
	if d.Rev > 0 {
		title = "Revision " + strconv.Itoa(d.Rev) + ": " + title
	}
	list := reliance(t, p.Q.Price.ValidUntil)
	if t.Signature == nil { // the list of what goes out has the last day of the price
		list = list[:len(list)-1]
	}
	return Many(
		El("section", Class("block screen"), At("id", "trust"), El("h2", Text(title)), assurances(list), signing(p)),
		El("div", Class("screen"), revision(p)),
	)
}

// signing is what a seller needs to put their name under the quote.
func signing(p *Page) Part {
	t := p.Trust
	if t == nil || t.Signature != nil {
		return nil
	}
	before := Many(El("h3", Text("Before it goes out")), assurances(readiness(p.Q, t.Roster, t.Own, t.Today)),
		toName(p))
	if t.AsksBack {
		return Many(before, El("p", At("id", "answer-it"), Text("You work for the seller? Name the distributor under "+
			"“From”: it becomes a quote of your own, to sign with your own key.")))
	}
	if t.OwnKey == "" {
		return Many(before, El("p", Text("Signing it needs a key of your own. "),
			page.Action("go", "seller", "", "Make or open one in Costs and keys", Class("quiet"), At("id", "go-keys"))))
	}
	return El("div", Class("signing"), before,
		page.Passphrase("key-pass", "Passphrase of your signing key",
			"It opens the key for this one signature; it is kept nowhere."),
		El("div", Class("row-tools"), El("button", At("type", "button"), At("id", "sign"), At("data-act", "sign"),
			At("data-secret", "key-pass"), Class("main"), Text("Sign this quote"))))
}

// toName leads to the first option that asks for a word of the customer.
func toName(p *Page) Part {
	i := slices.IndexFunc(p.Q.Findings, func(f config.Finding) bool { return f.Code == quote.StillToBeNamed })
	if i < 0 {
		return nil
	}
	return El("p", Class("row-tools"), page.Action("name", p.Q.Findings[i].Picks[0], "", "Name what is still to be named",
		Class("quiet"), At("id", "name-first")))
}

// revision says what a revision changed and what that costs.
func revision(p *Page) Part {
	b := p.Trust.Before
	if b == nil {
		return nil
	}
	name := "the earlier quote"
	if b.Frozen != nil {
		name = "quote " + b.Number + ", " + issueOf(b.Rev, b.Date)
	}
	inside := Many()
	switch {
	case b.Frozen == nil:
		inside = Many(El("p",
			Text("This quote revises an earlier one that is not at hand. Paste its link to see exactly what changed.")),
			page.Field(p.Page, "earlier", "Link of the earlier quote", "",
				"It is compared with the name this revision gives it; no other quote can take its place"))
	case b.Q == nil:
		inside = El("p",
			Text("It was made with catalogue edition "+b.Frozen.Edition+", which is not at hand, and is not "+
				"recomputed. As it was issued: total "+b.Frozen.Total+", "+b.Frozen.Dates()+". Now: total "+p.Q.Total()+
				", "+link.Freeze(p.Q).Dates()+"."))
	default:
		d := quote.Difference(b.Q, p.Q)
		inside = El("p", El("b", Text("The change order comes to "+p.Q.Price.Currency+" "+d.Total.Show()+". ")),
			Text(changed(quote.Changes(b.Q, p.Q))+"; the document begins with each and what it costs."))
	}
	signer := "The earlier one was signed. " + b.Signer
	if g := p.Trust.Signature; g != nil && bytes.Equal(g.Key, b.Key) {
		signer = "The earlier one was signed with the same key as this one."
	}
	return El("section", Class("block"), At("id", "revision"), El("h2", Text("What changed since "+name)), inside,
		If(b.Key != nil, El("p", Class("how"), Text(signer))))
}

// mostNamed is how many changes are named where they are counted.
const mostNamed = 4

// changed counts what is otherwise than before, and names it where that is little.
func changed(list []quote.Change) string {
	said := page.Count(len(list), "thing", "things") + " changed"
	if len(list) == 0 || len(list) > mostNamed {
		return said
	}
	names := make([]string, len(list))
	for i, c := range list {
		names[i] = page.Capital(c.Where)
	}
	return said + ": " + strings.Join(names, "; ")
}

// foreign shows a quote of an edition that is not at hand as it was issued.
func foreign(p *Page) Part {
	f := p.Foreign
	if f == nil {
		return nil
	}
	tools := El("div", Class("row-tools"), page.Action("foreign-drop", "", "", "Close it", Class("quiet"),
		At("id", "foreign-drop")))
	if f.Known {
		return El("section", Class("block screen"), At("id", "foreign"),
			El("h2", Text("The catalogue edition of the other quote is loaded now")),
			El("div", Class("row-tools"), El("button", At("type", "button"), Class("main"), At("id", "foreign-open"),
				At("data-act", "foreign-open"), At("data-links", "1"), Text("Open it and recompute"))), tools)
	}
	r := &Reading{Draft: f.Draft, Frozen: f.Frozen, Edition: f.Frozen.Edition}
	included := El("p",
		Text("What is in it can be listed only with that edition. Ask the seller for the document as a "+
			"PDF, or for a link of the present edition."))
	if f.Included != nil {
		included = El("ul", Each(f.Included, func(_ int, name string) Part { return El("li", Text(name)) }))
	}
	return El("section", Class("reading"), At("id", "foreign"), banner("foreign-trust", f.Trust, f.Frozen.Until),
		r.head(p),
		El("p", page.Mark(config.Warn),
			Text(" The figures are as "+f.Trust.issued()+", NOT recomputed: this page does not hold "+
				"catalogue edition "+f.Frozen.Edition+".")),
		page.Fold("included", "What is in it", included), tools, readersFoot(false))
}

// signatures is what paper says of the signature, with the code of the link.
func signatures(p *Page) Part {
	t := p.Trust
	if t == nil {
		return nil
	}
	buyers := *t
	buyers.OwnKey = "" // paper is read by others
	drawn, says := qrCode(p), "The code holds the whole quote. Scan it, or open the link it was sent with, and the page "
	if drawn == nil {
		says = "Open the link or the file it was sent with (it is too long for a printed code), and the page "
	}
	return El("div", Class("signature"), drawn, El("div", El("h3", Text("This quote on a screen")),
		El("p", Text(says+"recomputes every figure and says whether anything was changed.")),
		assurances(reliance(&buyers, p.Q.Price.ValidUntil))))
}
