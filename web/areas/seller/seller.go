// Package seller is the Costs and keys area: the seller's cost sheet with its margins, and
// their signing key.
package seller

import (
	"boxwright/pricing/sign"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:      "seller",
	Name:    "Costs and keys",
	Section: areas.Office,
	Gist:    func(*page.Page) string { return "yours alone" },
	Words:   words,
	Load:    load,
	Acts:    acts,
}

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"open-costs":   openCosts,
	"lock-costs":   lockCosts,
	"forget-costs": forgetCosts,
	"key-new":      newKey,
	"key-import":   importKey,
	"key-export":   exportKey,
	"key-forget":   forgetKey,
}

// words of the area, in the order they are met.
var words = []*page.Term{
	{
		Name:   "Cost sheet",
		Text:   "What the seller pays for what the price book lists, with who may grant which discount.",
		Source: "The seller's own file",
	},
	page.Signature,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	Costs     *Costs        // while the sheet is open
	CostsKept bool          // a sealed cost sheet is kept in the browser
	Key       string        // public half of the key kept in the browser; empty without
	Standing  sign.Standing // of that key
	KeySaved  bool          // its file was saved from this page
}

func load(s *session.Session, p *page.Page, _ *session.Worked) func() Part {
	v := &Page{Page: p, Key: s.Req.Key, KeySaved: s.View.KeySaved}
	if own := sign.PublicKey(s.Req.Key); own != nil {
		v.Standing = sign.Judge(s.Memory.Edition.Cat, own, s.Draft.Date, s.Req.Today)
	}
	loadCosts(s, v)
	s.Private = v.Costs != nil
	return func() Part { return draw(v) }
}

func draw(p *Page) Part {
	return Many(
		page.Heading("Costs and keys", "Yours alone, on this device: no quote, print or link has any of it."),
		El("p", Class("on-paper"), Text("Costs and keys are shown on the screen alone; they are not printed.")),
		costsBlock(p),
		keyBlock(p),
	)
}

// sealedFile is a button that takes a file which the passphrase of a field opens.
func sealedFile(id, act, secret, label, hint string) Part {
	return Many(El("label", Class("button"), At("for", id), Text(label)),
		El("input", Class("hidden-text"), At("type", "file"), At("id", id), At("data-act", act), At("data-secret", secret),
			At("aria-describedby", "h-"+id)),
		El("span", Class("small soft"), At("id", "h-"+id), Text(hint)))
}

// keyBlock makes the seller's signing key, or says which one is kept.
func keyBlock(p *Page) Part {
	block := func(parts ...Part) Part {
		return El("section", Class("block screen private"), At("id", "keys"), El("h2", Text("Signing key")), Many(parts...))
	}
	if p.Key == "" {
		return block(
			El("p", Class("lead"), Text("A signature shows the buyer who stands behind a quote and that nothing in it was "+
				"changed. It needs a key of your own, saved here and sealed with a passphrase.")),
			page.Passphrase("key-pass", "Passphrase of the key",
				"Four plain words that do not belong together are good. Nobody can recover it."),
			El("div", Class("row-tools"),
				El("button", At("type", "button"), At("id", "key-new"), Class("main"), At("data-act", "key-new"),
					At("data-secret", "key-pass"), Text("Make a signing key")),
				sealedFile("f-key", "key-import", "key-pass", "Open a key file…", "Type the passphrase first.")))
	}
	own := "It is on no list of signers of this catalogue yet: buyers are told that its owner is unknown. Give the " +
		"public key to whoever keeps the catalogue."
	if p.Standing.Signer != nil {
		own = p.Standing.Words()
	}
	copied := "No copy was saved from this page so far: save the sealed key as a file first."
	if p.KeySaved {
		copied = "Its sealed file was saved from this page; see that you still have it."
	}
	return block(
		El("p", Text("Your key: "), El("code", Text(p.Key)), Text(". "+own)),
		El("div", Class("row-tools"),
			El("button", At("type", "button"), At("id", "key-export"), At("data-act", "key-export"), At("data-sealed", "key"),
				Text("Save the sealed key as a file")),
			page.Action("go", "quote", "", "Sign in Quote", Class("quiet"), At("id", "key-quote"))),
		El("details", At("id", "fold-forget"), El("summary", Text("Remove the key from this device…")),
			El("p", Text("Without a copy nobody can sign with it again. "+copied)),
			page.Action("key-forget", "", "", "Remove the key for good", Class("quiet"), At("id", "key-forget"))))
}
