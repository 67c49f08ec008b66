package catalogue

import (
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Elsewhere is a quote of another edition, which is kept as it is. What the page
// shows is what it would be with the edition in use.
type Elsewhere struct {
	Edition string // as a reader knows it, or the beginning of its hash
	Frozen  *link.Frozen
}

// LoadElsewhere is the draft that came with the request, when it was made with
// another edition than the one in use; nil otherwise.
func LoadElsewhere(s *session.Session) *Elsewhere {
	d := s.Other
	if d == nil {
		return nil
	}
	e := &Elsewhere{Edition: fmt.Sprintf("content %.16s", d.Unit.Edition)}
	for _, h := range []*quote.Edition{s.Memory.Keep.BuiltIn.Ed, s.Memory.Keep.From.Ed, s.Memory.Keep.To.Ed} {
		if h != nil && h.Cat.Hash() == d.Unit.Edition {
			e.Edition = h.Cat.Edition
		}
	}
	if d.Issued != "" {
		if f := link.FrozenIn(s.Memory.Edition.Cat, d.Issued); f != nil {
			e.Frozen, e.Edition = f, f.Edition
		}
	}
	return e
}

// OtherEdition stops a quote of another edition from being issued.
var OtherEdition = config.Finding{
	Code: "unit.edition", Severity: config.Stop, Where: "Edition of the catalogue",
	Text:   "The quote was made with another edition. What is shown is what it would be with the one in use.",
	Remedy: "Move it to the edition in use, at the top of the page.",
}

// Draw is the strip that stands above every area while such a quote is open.
func (e *Elsewhere) Draw() Part {
	if e == nil {
		return nil
	}
	said := "It stays as it is until you move it. What is shown here is what it would be with the edition in use; " +
		"nothing can be changed until then."
	label := "Move it to the edition in use"
	if e.Frozen != nil {
		said = "It is signed and stands as it was signed: total " + e.Frozen.Total + ", " +
			e.Frozen.Dates() + ", price good through " + e.Frozen.Until.Long() +
			". What is shown here is what a revision would come to with the edition in use."
		label = "Make a revision with the edition in use"
	}
	return El("section", Class("notice warn"), At("id", "elsewhere"), At("tabindex", "-1"),
		El("h2", Text("Made with another edition of the catalogue: "+e.Edition)),
		para(said), pressed(press("move-here", "", label, "main", "move-here")))
}

// Standing stands beside every area, and at the foot of a narrow screen, in the place of
// figures of the edition in use: what was signed, as it was signed.
func (e *Elsewhere) Standing(p *page.Page) Part {
	f := e.Frozen
	payload := p.Show(f.Payload, quantity.Pound)
	cell := func(label, value string) Part { return El("span", El("small", Text(label)), El("b", Text(value))) }
	return Many(
		El("div", Class("line"), At("aria-hidden", "true"), cell("Payload", payload), cell("Delivery", f.Even.Short()),
			cell("Price, as signed", f.Total)),
		El("div", Class("inner"), At("data-scroll", "Figures as signed"),
			El("h2", Text("As it was signed")),
			El("dl", El("dt", Text("Remaining payload")), El("dd", Text(payload)),
				El("dt", Text("Likely date (50 %)")), El("dd", Text(f.Even.Long())),
				If(!f.Safe.IsZero(), Many(El("dt", Text("Safe date (90 %)")), El("dd", Text(f.Safe.Long())))),
				El("dt", Text("Price good through")), El("dd", Text(f.Until.Long()))),
			El("h3", Text("Price")), El("p", Class("big"), Text(f.Total)),
			El("p", Class("how"), Text("With catalogue edition "+e.Edition+". What it would be with the edition in use "+
				"is shown in each area."))))
}

// Said is what is read out of such a quote in the place of figures of today.
func (e *Elsewhere) Said(notice string) string {
	return strings.TrimSpace(notice + " As it was signed: delivery " + e.Frozen.Even.Long() + ", price " + e.Frozen.Total +
		".")
}
