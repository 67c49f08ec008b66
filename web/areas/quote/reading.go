package quote

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/link"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Reading is a quote as it was sent, for whoever reads it. Nothing on it edits.
type Reading struct {
	Draft    *quote.Draft
	Frozen   link.Frozen    // the figures it was issued with
	Same     bool           // the page computes the same figures, so that the whole can be shown
	Edition  string         // that it was made with, where another is in use; otherwise empty
	Included []string       // what is in it, where only the names are known
	Renamed  bool           // by another edition than its own, which is not at hand
	Newer    *session.Saved // a later revision that is kept here; nil when there is none
}

// loadReading is the quote as it was sent; nil while it is worked on.
func loadReading(s *session.Session, p *Page) *Reading {
	if !s.View.Reading {
		return nil
	}
	d, now := s.Subject(), link.Freeze(p.Q)
	r := &Reading{Draft: d, Frozen: *now}
	if s.View.Frozen != nil {
		r.Frozen = *s.View.Frozen
	}
	r.Same = s.Other == nil && r.Frozen.Agrees(now)
	if s.Other != nil {
		r.Edition = cmp.Or(r.Frozen.Edition, "another one")
	}
	if !r.Same {
		cat := madeWith(s, d)
		r.Renamed = cat == nil
		r.Included = names(cmp.Or(cat, s.Memory.Edition.Cat), &d.Unit)
	}
	// What was worked on when a link came has a place of its own from now on.
	opened := slices.ContainsFunc(s.Steps, func(st session.Step) bool { return st.Do == "new-quote" })
	for i := range s.Req.Saved {
		x := &s.Req.Saved[i]
		if (!x.Here || opened) && d.Number != "" && x.Number == d.Number && x.Rev > d.Rev {
			r.Newer = x
		}
	}
	return r
}

// madeWith is the catalogue that a quote was made with; nil where it is not at hand, since
// another edition may call other things by the same ids.
func madeWith(s *session.Session, d *quote.Draft) *config.Catalogue {
	k := &s.Memory.Keep
	for _, ed := range []*quote.Edition{s.Memory.Edition, k.BuiltIn.Ed, k.From.Ed, k.To.Ed} {
		if ed != nil && ed.Cat.Hash() == d.Unit.Edition {
			return ed.Cat
		}
	}
	return nil
}

// names lists what a unit holds by name, as the catalogue calls it.
func names(cat *config.Catalogue, u *config.Unit) []string {
	var out []string
	for _, p := range u.Picks {
		name := cat.LabelOf(p.Option)
		if p.Qty > 1 {
			name += " × " + page.Whole(p.Qty)
		}
		out = append(out, name)
	}
	return out
}

// draw is the quote for its reader: what it is, what it costs, when it comes and
// whether it can be relied on first, everything else folded beneath.
func (r *Reading) draw(p *Page) Part {
	return El("div", Class("reading", page.Either(r.Same, "screen", "")), At("id", "reading"),
		banner("trust", p.Trust, r.Frozen.Until),
		r.newer(),
		r.head(p),
		When(r.Same, func() Part { return Many(r.changed(p), included(p), figuresInWords(p), payments(p), terms(p)) }),
		When(!r.Same, func() Part { return r.asIssued(p) }),
		readersFoot(r.Same),
	)
}

// readersFoot is what a reader wants next, at the foot of the screen; documents where they can be shown.
func readersFoot(documents bool) Part {
	return El("nav", Class("foot screen"), At("aria-label", "What next"),
		page.Action("included", "", "", "What is in it", Class("main"), At("id", "reading-included")),
		page.Action("go", "compare", "", "Compare", At("id", "reading-compare")),
		If(documents, page.Action("documents", "", "", "Documents", At("id", "reading-documents"))))
}

// documents are the papers and what else a reader may do, at the end.
func (r *Reading) documents(p *Page) Part {
	return Many(
		When(r.Same, func() Part {
			return Many(El("details", Class("block screen"), At("id", "fold-document"),
				page.Summary("h2", "All documents: quote, drawings, order sheet"),
				El("div", Class("row-tools"), page.Action("print", "", "", "Print or save as PDF", Class("main"),
					At("id", "print-quote")), largePrint(p)), papersChoice(p)),
				paper(p))
		}),
		El("div", Class("screen"), sendOn(p), drafts(p)))
}

// newer says that a later revision of the quote is kept here.
func (r *Reading) newer() Part {
	if r.Newer == nil {
		return nil
	}
	return El("p", Class("block", "warn"), At("id", "newer"), page.Mark(config.Warn), Text(" This is an older revision. "+
		"Revision "+strconv.Itoa(r.Newer.Rev)+" of it is saved on this device. "),
		page.Action("open-kept", r.Newer.ID, "", "Open revision "+strconv.Itoa(r.Newer.Rev), At("id", "open-newer")))
}

// head answers the reader's first questions.
func (r *Reading) head(p *Page) Part {
	d, f := r.Draft, &r.Frozen
	fact := func(label, value string, _ ...string) Part {
		return El("div", El("span", Text(label)), El("b", Text(value)))
	}
	units := 1
	for _, it := range d.Items() {
		units += it.Count() - 1
	}
	what := cmp.Or(d.Title, f.Chassis)
	kinds := len(d.Items())
	of := "" // which of several units the dates that a link carries are of
	if d.Count() > 1 {
		of = ", its first unit"
	}
	facts := []Part{fact("Likely date (50 %)"+of, f.Even.Long()), fact("Safe date (90 %)"+of, r.safe(p))}
	price := forUnits(f.Total, max(d.Terms.Units, units), kinds == 1)
	open, from := Many(), Many(Text(", from "), El("bdi", El("b", Text(cmp.Or(d.Seller.Name, "a seller not named")))))
	if d.AsksBack() {
		from = Text(", who asks for changes")
	}
	if r.Same {
		price = p.Q.PriceWords()
		open = r.openItems(p)
		if p.Q.Draft.Count() > 1 {
			facts = []Part{fleetDates(p, fact)}
		}
		if kinds > 1 {
			what = fleetTitle(p)
		}
	}
	whole := r.Same && kinds > 1 // each kind stands in a table of its own
	if !whole {
		facts = append(facts, fact("Remaining payload", p.Show(f.Payload, "lb")))
	}
	return Many(
		El("h1", El("bdi", Text(what))),
		If(!whole, El("p", Class("soft"), Text(f.Chassis+" · "+f.Body))),
		El("p", Text("For "), El("bdi", El("b", Text(cmp.Or(d.Buyer.Name, "a buyer not named")))), from,
			Text(", "+d.Date.Long())),
		When(r.Same, func() Part {
			return El("div", Class("swipe screen"), At("data-scroll", "Pictures"),
				portrait(p), drawing.Plan(p.Page))
		}),
		El("p", Class("big"), Text(f.Total)),
		El("p", Class("how"), Text(price+" "), Text(goodThrough(f.Until, p.Today)+".")),
		El("div", Class("facts"), Many(facts...)),
		When(whole, func() Part { return El("div", Class("screen"), fleetPaper(p)) }),
		open,
	)
}

// forUnits says beneath a total, of which the parts are not known here, for how many units
// it is and what each comes to: where they are not alike, on average.
func forUnits(total string, units int, alike bool) string {
	words := page.Count(units, "unit", "units")
	_, sum, _ := strings.Cut(total, " ")
	all, err := money.ParseAmount(strings.ReplaceAll(sum, ",", ""))
	if units < 2 || err != nil {
		return "for " + words + "."
	}
	each := all.Each(units, money.HalfUp)
	about := page.Either(!each.Times(units).Equal(all), "about ", "")
	return words + " at " + about + each.Show() + page.Either(alike, " each.", " each on average.")
}

// safe is the 90 % date. Of a link that was made before links carried it the page gives its own,
// where it computes the same quote.
func (r *Reading) safe(p *Page) string {
	switch {
	case !r.Frozen.Safe.IsZero():
		return r.Frozen.Safe.Long()
	case r.Same:
		return p.Q.Plan.NineInTen.Long()
	}
	return "ask the seller"
}

// goodThrough says until when the price is good.
func goodThrough(until, today config.Date) string {
	text := "Price good through " + until.Long()
	if !today.IsZero() && until.Before(today) {
		text += " (expired)"
	}
	return text
}

// openItems is what is still to be decided or named, folded.
func (r *Reading) openItems(p *Page) Part {
	var open []config.Finding
	for _, f := range p.Q.Findings {
		if f.Code == quote.StillToBeNamed {
			f.Severity = config.Warn // whoever reads it is who can name it
		}
		if f.Severity != config.Note {
			f.Remedy = ""
			open = append(open, f)
		}
	}
	if len(open) == 0 {
		return El("p", At("id", "open-items"), page.Mark(""), Text(" No open items."))
	}
	return El("details", At("id", "open-items"), El("summary", page.Mark(open[0].Severity),
		El("b", Text(" Still to decide: "+page.Count(len(open), "item", "items")))), page.Findings(p.Page, open, ""))
}

// asIssued stands where the page cannot show the whole as it was issued: what is in
// it by name, and what it would come to today apart from it.
func (r *Reading) asIssued(p *Page) Part {
	issued := p.Trust.issued()
	why := "The figures above are those it was " + issued + " with. This copy of the page computes others, so what " +
		"depends on them is not shown as part of the quote."
	if r.Edition != "" {
		why = "The figures above are those it was " + issued + " with, by catalogue edition " + r.Edition + ". This copy " +
			"of the page uses another edition, so what depends on figures is not shown as part of the quote."
	}
	now := link.Freeze(p.Q)
	row := func(label, then, today string) []Part { return page.Texts(label, then, today) }
	t := page.Table{Caption: "As " + issued + ", and with this page today", Heads: []string{"", ">As " + issued, ">Today"},
		Rows: [][]Part{row("Price", r.Frozen.Total, now.Total),
			row("Likely date (50 %)", r.Frozen.Even.Long(), now.Even.Long()),
			row("Safe date (90 %)", r.safe(p), now.Safe.Long()),
			row("Remaining payload", p.Show(r.Frozen.Payload, "lb"), p.Show(now.Payload, "lb"))}}
	return Many(
		El("p", Class("block"), At("id", "as-issued"), page.Mark(config.Warn), Text(" "+why)),
		byName("included", r.Included, page.Either(r.Renamed, "Named as the edition in use calls these things. Its own "+
			"edition, which is not in use here, may have called them otherwise.", "")),
		El("div", Class("screen"), page.Fold("today", "What it would come to today", El("p",
			Text("Worked out now, for comparison. Nobody has offered it.")), t.Draw())),
	)
}

// issued is how a quote left its seller: only a signed one was issued.
func (t *Trust) issued() string {
	if t.Signature == nil {
		return "sent"
	}
	return "issued"
}

// byName lists what is in a quote of which only the names are known, folded, with a remark
// on them.
func byName(id string, names []string, remark string) Part {
	return page.Fold(id, "What is in it", If(remark != "", El("p", page.Mark(config.Warn), Text(" "+remark))),
		El("ul", Each(names, func(_ int, name string) Part {
			return El("li", Text(name))
		})))
}

// changed is what a revision changes, folded.
func (r *Reading) changed(p *Page) Part {
	if p.Trust == nil || p.Trust.Before == nil {
		return nil
	}
	return El("div", At("id", "changed"), revision(p), When(p.Trust.Before.Q != nil, func() Part {
		return page.Fold("changed", "Each change and what it costs", changeOrder(p, p.Trust.Before))
	}))
}

// included is what the buyer gets by chapter, with prices.
func included(p *Page) Part {
	cat := p.Q.Edition.Cat
	type chapter struct {
		label string
		rows  [][]Part
		sum   pricing.Amount
	}
	var list []*chapter
	at := func(label string) *chapter {
		for _, c := range list {
			if c.label == label {
				return c
			}
		}
		list = append(list, &chapter{label: label})
		return list[len(list)-1]
	}
	for _, l := range p.Q.Price.Lines {
		label := "Delivery, fees, discounts and taxes"
		o := cat.OptionByID(l.ID)
		switch {
		case l.Code == pricing.LineChassis || l.Code == pricing.LineBody:
			label = "Chassis and module"
		case l.Code == pricing.LineOption && o != nil:
			label = chapterOf(cat, o)
		}
		shown := l.Amount.Show()
		if l.Amount.IsZero() {
			if l.Code != pricing.LineOption || o == nil || !quote.Specified(o) {
				continue
			}
			shown = "included"
		}
		name := quote.Titled(cat, l.ID, l.Label)
		if l.Item > 0 && len(p.Q.Draft.More) > 0 {
			name = p.Q.NameOf(l.Item-1) + ": " + name
		}
		c := at(label)
		c.rows, c.sum = append(c.rows, page.Texts(name, shown)), c.sum.Add(l.Amount)
	}
	head := p.Q.Price.Currency
	if n := p.Q.Price.Units; n > 1 {
		head += ", all " + strconv.Itoa(n) + " units"
	}
	return page.Fold("included", "What is in it, with prices", Each(list, func(_ int, c *chapter) Part {
		t := page.Table{Caption: c.label, Class: "tight", Heads: []string{"", ">" + head}, Rows: c.rows}
		t.Sums = append(t.Sums, page.Texts("Total", c.sum.Show()))
		return t.Draw()
	}), El("p", El("b", Text("Total "+p.Q.Total()+". ")), Text(p.Q.PriceWords())))
}

// chapterOf is the label of the chapter that an option stands in.
func chapterOf(cat *config.Catalogue, o *config.Option) string {
	id := cat.GroupByID(o.Group).Chapter
	for _, ch := range cat.Chapters {
		if ch.ID == id {
			return ch.Label
		}
	}
	return id
}

// figuresInWords says how weight, power and room stand to their limits, and what the
// rules say.
func figuresInWords(p *Page) Part {
	var lines []Part
	for _, r := range []*config.Report{&p.Q.Weight.Report, &p.Q.Power.Report, &p.Q.Space.Report} {
		for _, f := range r.Figures {
			if f.Sense == "" {
				continue
			}
			word := " to spare"
			if !f.Met() {
				word = map[config.Sense]string{config.AtMost: " over", config.AtLeast: " short"}[f.Sense]
			}
			lines = append(lines, El("li", page.Mark(page.SeverityOf(f)), El("b", Text(" "+f.Label+": ")),
				Text(p.Show(math.Abs(f.Margin()), f.Unit)+word+" ("+p.Show(f.Value, f.Unit)+", "+string(f.Sense)+" "+
					p.Show(f.Limit, f.Unit)+")")))
		}
	}
	return page.Fold("figures", "Weight, power and rules", drawing.Side(p.Page), El("ul", Class("checks"), Many(lines...)),
		El("p", El("b", Text(p.Q.Assume.Label+": ")), Text(page.VerdictTally(p.Q.Verdicts)+".")))
}

func payments(p *Page) Part {
	return page.Fold("payments", "Payments", page.PaymentTable(p.Page), financePaper(p))
}

func terms(p *Page) Part {
	return page.Fold("terms", "Terms", If(p.Q.Draft.Notes != "", El("p", Text(p.Q.Draft.Notes))), printedCautions(p))
}

// sendOn is the link of a quote that is read, for handing it on as it came.
func sendOn(p *Page) Part {
	_, whole := sendable(p)
	return page.Fold("send", "Send it on", El("div", Class("field"),
		El("label", At("for", "link-text"), Text("The link, as it came")),
		El("textarea", At("id", "link-text"), Flag("readonly", true), Text(whole))),
		El("div", Class("row-tools"), page.Action("copy-link", "", whole, "Copy the link", At("id", "copy-link"))))
}

// banner says in one line whether a quote can be relied on, and why when it is
// opened.
func banner(id string, t *Trust, until config.Date) Part {
	s := trustOf(t, until)
	return El("details", Class("banner", string(cmp.Or(s.state, "ok"))), At("id", id),
		El("summary", page.Mark(s.state), El("b", Text(" "+s.about+". ")), El("span", Text(s.says))),
		assurances(reliance(t, until)))
}

// trustOf is how far a quote can be relied on, in one sentence: the worst there is
// to say.
func trustOf(t *Trust, until config.Date) assurance {
	g := t.Signature
	if t.AsksBack {
		return assurance{config.Warn, "Changes asked for", "This is no quote to order from: the seller answers it with one."}
	}
	if g == nil {
		seller := "make your own copy (Menu) and sign that."
		if t.OwnKey != "" {
			seller = "revise it (Menu) and sign that."
		}
		return assurance{config.Warn, "Draft, not signed", "Nothing proves who sent it. Buyer: ask the sender for a " +
			"signed quote before you order. Seller: " + seller}
	}
	c := t.standingCheck()
	switch {
	case g.Standing.Code == sign.Revoked:
		return assurance{config.Stop, "Do not rely on this quote", g.Standing.Words()}
	case t.signedHere():
		return assurance{config.Warn, "Signed with your own key", ownUnlisted}
	case g.Standing.Code == sign.Unknown:
		return assurance{config.Stop, "Signed by somebody unknown", g.Standing.Words()}
	case c.state != "":
		return assurance{c.state, "Ask the seller first", g.Standing.Words()}
	case g.Over != "":
		return assurance{config.Warn, "Ask the seller first", g.Over}
	case !t.Today.IsZero() && until.Before(t.Today):
		return assurance{config.Warn, "Genuine, but expired", "Signed by " + g.Standing.Who() + ", and unchanged since. It " +
			"was good through " + until.Long() + "."}
	}
	return assurance{"", "Genuine", "Signed by " + g.Standing.Who() + ". Unchanged since it was signed."}
}
