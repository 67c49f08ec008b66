// Package quote is the Quote area: the documents, the link, the signature and the quotes kept in this browser.
package quote

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/areas"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "quote",
	Name:     "Quote",
	Section:  areas.Offer,
	Gist:     gist,
	Words:    words,
	Load:     load,
	Acts:     acts,
	Fields:   fields,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View    *session.View
	Link    string // fragment that reproduces the draft
	Covered string // the same with its cover, as it is copied
	Base    string // address of this page
	Saved   []session.Saved
	Copies  session.Copies   // outside the browser
	Kept    bool             // the browser saves what is done
	Unkept  string           // why it does not
	Trail   []session.Moment // states of this quote
	Trust   *Trust           // how far the quote can be relied on
	Foreign *Foreign         // a quote whose edition is not at hand
	Reading *Reading         // the quote as it was sent, while it is read; nil while it is worked on

	List     []bid.Answer // the purchaser's list, where its answers are shown; nil while they are worked out
	ListRead int          // lines of it read so far

	Plates Part // the drawing set; nil while it is drawn

	notes   *notes            // of the paper being drawn
	said    map[string]string // what it says in full, and of which unit
	work    *quote.Quote      // the quote by its unit in work, where the paper begins with another
	unit    string            // name of the unit that a paper of single units is drawn for
	at      int               // where that unit stands in the order
	printed bool              // its readings are only printed
}

func gist(p *page.Page) string {
	switch {
	case p.Q.Stopped():
		return "cannot go out yet"
	case p.Q.Misdeclared() != "":
		return "standard not met"
	case p.Q.Draft.Issued != "":
		return "signed"
	}
	if missing, _ := lacking(readiness(p.Q, p.Q.Edition.Cat, sign.Standing{}, p.Today)); len(missing) == 1 {
		return "no " + strings.ToLower(missing[0])
	} else if len(missing) > 1 {
		return page.Count(len(missing), "thing", "things") + " missing"
	}
	return "ready to print"
}

// draw is the quote as it is printed, with the tools to send it above. While it is
// read as it was sent, its reader comes first and there are no such tools.
func draw(p *Page) Part {
	if p.Foreign != nil && !p.Foreign.Known {
		return foreign(p)
	}
	if p.Reading != nil {
		return Many(foreign(p), p.Reading.draw(p), p.Reading.documents(p))
	}
	screen := func(parts ...Part) Part { return El("div", Class("screen"), Many(parts...)) }
	print := page.Action("print", "", "", "Print or save as PDF", Class("main"), At("id", "print-quote"))
	stopped := If(p.Q.Stopped(),
		El("p", page.Mark(config.Stop),
			Text(" The quote cannot be issued as it stands; what stops it is printed on it.")))
	if p.Q.Misdeclared() != "" && !p.Q.Stopped() {
		stopped = El("p", page.Mark(config.Stop),
			Text(" The quote cannot be signed as it stands: the unit misses the standard it is declared to. "+
				"Declaration, below, says where."))
	}
	files := Many(page.Action("save-draft", "", "", "Save as a file"),
		page.Action("save-table", "", "", "Everything as a table (CSV)", At("id", "save-table")))
	return Many(
		screen(El("div", Class("area-head"), El("h1", Text("Quote")),
			El("a", Class("way"), At("href", "#documents"), At("id", "to-documents"), Text("Documents and print"))),
			El("p", Class("lead"), Text("Who it goes to, whether it is ready, and the link and paper to send.")),
			stopped),
		parties(p),
		screen(foreign(p), trust(p), linkBox(p), drafts(p),
			El("section", Class("block"), At("id", "documents"), At("tabindex", "-1"), At("aria-label", "Documents"),
				El("h2", Text("Documents")), papersChoice(p),
				El("div", Class("row-tools"), print, files, largePrint(p)), beforeSending(p))),
		El("details", At("id", "fold-document"), Class("screen begun"), El("summary", El("b", Text("Show all of it here")))),
		paper(p),
	)
}

// largePrint has the papers printed in large type.
func largePrint(p *Page) Part { return page.Check(p.Page, "large", "Large print", p.View.Large) }

// sendable is the address where buyers find the page, and the whole link: that of a
// revision brings the quote before it along, unless the seller says otherwise.
func sendable(p *Page) (base, whole string) {
	base, text := p.View.Address, p.Covered
	if base == "" && !strings.HasPrefix(p.Base, "file:") {
		base = p.Base
	}
	if t := p.Trust; t != nil && t.Before != nil && t.Before.Along != "" && !p.View.Alone {
		text = t.Before.Along
	}
	if base != "" {
		return base, base + "#" + text
	}
	return base, text
}

func linkBox(p *Page) Part {
	base, whole := sendable(p)
	along := Many()
	if t := p.Trust; t != nil && t.Before != nil && t.Before.Along != "" {
		along = page.Check(p.Page, "along", "Bring the quote before it along, so that the reader sees what changed",
			!p.View.Alone)
	}
	hint := "The link holds the whole quote and needs no server. It never holds cost or margin."
	if base == "" {
		hint += " This copy of the page was opened from disk: give the address where your buyers find the page, or " +
			"send the text below; they paste it in Compare."
	}
	return page.Block("Link", El("div", Class("link-box"),
		El("div", Class("field"),
			El("label", At("for", "link-text"), Text("The link, "+page.Count(len(whole), "character", "characters"))),
			El("textarea", At("id", "link-text"), Flag("readonly", true), Text(whole)), El("p", Class("hint"),
				Text(hint))),
		along,
		El("div", Class("row-tools"), page.Action("copy-link", "", whole, "Copy the link", At("id", "copy-link")),
			El("details", At("id", "fold-address"), Flag("open", base == "" || p.View.Address != "" || p.Wrong["address"] != ""),
				El("summary", Text("Send buyers to another address")),
				page.Field(p.Page, "address", "Address where buyers find the page", p.View.Address,
					"Blank = the address this page was opened from")),
		),
	))
}

// paper is the document chosen. A table carries the running head and foot, since
// every browser repeats those on each page.
func paper(p *Page) Part {
	work := p.Q
	p = p.with(leading(p.Q))
	p.work = work
	p.notes, p.said = new(notes), map[string]string{}
	d := p.Q.Draft
	cat := p.Q.Edition.Cat
	number := " " + letters.Isolate(d.Number)
	if d.Number == "" {
		number = ", not numbered"
	}
	shown := paperIn(offered(p), p.View.Paper)
	if shown.bare {
		return El("article", Class("paper bare"), At("aria-label", shown.label+" document"), At("data-scroll", ""),
			shown.draw(p))
	}
	foot := El("div", Class("running foot"), El("span", Text(cat.Title+", edition "+cat.Edition)),
		El("span", Text("Content "+cat.Hash()[:16]+" · document "+d.Fingerprint())))
	size := page.Either(p.View.Large, "large", "")
	return El("article", Class("paper", size), At("aria-label", shown.label+" document"),
		Each(shown.sheets(p), func(i int, s sheet) Part {
			head := El("div", Class("running"), El("span", Text(shown.label+number+" · "+d.Date.Long()+revised(d)+s.of)),
				El("span", Text(d.Buyer.Name)))
			return El("table", Class("sheet", page.Either(i > 0, "new-page", "")), At("role", "presentation"),
				El("thead", El("tr", El("td", head))),
				El("tfoot", El("tr", El("td", foot))),
				El("tbody", El("tr", El("td", s.body))),
			)
		}))
}

func revised(d *quote.Draft) string {
	if d.Rev == 0 {
		return ""
	}
	return " · revision " + page.Whole(d.Rev)
}

// paperKind is a document that the quote can be printed as.
type paperKind struct {
	id, label string
	draw      func(*Page) Part
	bare      bool // it has sheets of its own, with their own frame
	each      bool // it is drawn for each kind of unit of the quote
	counts    bool // each sheet says how many units are built
}

// papers in the order they are wanted; the first is the quote.
var papers []paperKind

func init() { // their functions look the list up
	papers = []paperKind{
		{id: "quote", label: "Quote", draw: quotePaper},
		{id: changeID, label: "Change order", draw: changePaper},
		{id: drawingsID, label: "Drawing set", draw: drawings, bare: true},
		{id: "response", label: "Response form", draw: responseForm},
		{id: "exceptions", label: "Exceptions", draw: exceptions},
		{id: "bidspec", label: "Specification to bid", draw: purchaserSpecification, each: true},
		{id: "order", label: "Order sheet", draw: orderSheet, each: true, counts: true},
		{id: "test", label: "Test sheet", draw: testSheet, each: true},
		{id: "labels", label: "Label data", draw: labelData, each: true},
		{id: "upkeep", label: "Maintenance schedule", draw: upkeep, each: true},
	}
}

// changeID is the document that only a revision has.
const changeID = "change"

// offered are the documents that this quote has.
func offered(p *Page) []paperKind {
	if p.before() != nil {
		return papers
	}
	return slices.DeleteFunc(slices.Clone(papers), func(x paperKind) bool { return x.id == changeID })
}

// PaperOf is the id itself where there is such a paper, and the quote's where
// there is none.
func PaperOf(id string) string { return paperIn(papers, id).id }

// paperIn is the one of some papers with an id, and the first where there is none.
func paperIn(list []paperKind, id string) paperKind {
	return list[max(0, slices.IndexFunc(list, func(x paperKind) bool { return x.id == id }))]
}

// papersChoice says which document is shown and printed.
func papersChoice(p *Page) Part {
	list := offered(p)
	here := paperIn(list, p.View.Paper).id
	return El("div", Class("chapters"), At("role", "toolbar"), At("aria-label", "Which document"),
		Each(list, func(_ int, x paperKind) Part {
			return page.Action("paper", x.id, "", x.label, At("id", "paper-"+x.id),
				page.InRow(x.id == here), At("aria-pressed", strconv.FormatBool(x.id == here)))
		}))
}

// fullLoad says what stands beside the curb weight at full load: nobody reads a payload that
// remains without knowing what was taken off it.
func fullLoad(p *Page) Part {
	pounds, count := map[weight.Kind]quantity.Mass{}, map[weight.Kind]int{}
	gear := "loose equipment as listed"
	for _, x := range p.Q.Weight.Items {
		pounds[x.Kind] += x.Lb
		count[x.Kind] += x.Qty
		if x.ID == weight.AllowanceItem {
			gear = page.Small(x.Label)
		}
	}
	list := []string{page.Count(count[weight.KindPerson], "person", "people") + ", " +
		p.Show(float64(pounds[weight.KindPerson]), quantity.Pound)}
	if n := count[weight.KindPatient]; n > 0 {
		list = append(list, page.Count(n, "patient", "patients")+", "+
			p.Show(float64(pounds[weight.KindPatient]), quantity.Pound))
	}
	if lb := pounds[weight.KindEquipment]; lb > 0 {
		list = append(list, gear+", "+p.Show(float64(lb), quantity.Pound))
	}
	return El("p", Class("how"), Text("Full load is the curb weight with "+strings.Join(list, "; ")+"."))
}

// quotePaper is the quote as a purchaser reads it: what it is, costs and comes when; what is
// in it and what is not; what it weighs and complies with; the terms, and where to sign. How
// it was worked out is in annexes. A revision begins with what it changes.
func quotePaper(p *Page) Part {
	q := p.Q
	foot := func(s quote.Section) Part { return p.notes.foot(s.Heading()) }
	return Many(
		cover(p),
		revisionPaper(p),
		section(quote.PriceSection, ""), priceSummary(p),
		specification(p), leftOut(p),
		section(quote.WeightsSection, ""), drawing.Side(p.Page), page.Learned(p.Page), tight(p,
			"At full load, each figure rounded by itself", weights(q)),
		El("p", Class("how"), Text("● within its limit, ○ noted and no fault, ▲ to be checked, ■ must be fixed.")),
		fullLoad(p), page.Arrangements(p.Page), unweighed(p), foot(quote.WeightsSection),
		section(quote.ElectricalSection, ""), tight(p, "12 V and 125 V", page.FiguresOf(&q.Power.Report, "power.")),
		foot(quote.ElectricalSection),
		section(quote.SpaceSection, ""), drawing.Plan(p.Page), tight(p, "Inside and outside",
			page.FiguresOf(&q.Space.Report, "space.")), page.Loads(p.Page), foot(quote.SpaceSection),
		section(quote.ComplianceSection, ": "+q.Assume.Label), compliancePaper(p), foot(quote.ComplianceSection),
		section(quote.DeliverySection, ""), If(p.Q.Draft.Count() == 1, page.Dates(p.Page, false)),
		page.DeliveriesTable(p.Page, page.EveryKind),
		El("section", Class("whole"), El("h3", Text("The work, day by day"+firstOf(p.Q.Draft.Count()))),
			page.ScheduleChart(p.Page)),
		otherUnits(p),
		section(quote.ServiceSection, ""), service(p), El("p", Class("how"),
			Text("The maintenance schedule by months and miles is a document of its own.")),
		El("section", Class("whole"), section(quote.PaymentsSection, ""), page.PaymentTable(p.Page),
			If(q.Price.Lease != nil, El("p", Text("A lease-purchase is worked out in an annex; it is no offer of credit.")))),
		printedCautions(p),
		El("section", Class("whole accept"), acceptance(p), signatures(p)),
		El("h2", Text("Annex: the price line by line")), page.PriceTable(p.Page),
		financePaper(p),
	)
}

// firstOf says that what is shown of so many units is the first one's.
func firstOf(units int) string { return ifText(units > 1, ", of the first unit") }

// weights are the figures of a unit's weight for paper, less the counts that Space has too.
func weights(q *quote.Quote) []config.Figure {
	return slices.DeleteFunc(page.FiguresOf(&q.Weight.Report, "weight."), func(f config.Figure) bool {
		return f.Unit == quantity.Count && f.Sense == ""
	})
}

// unweighed says on paper what the purchaser still has to weigh, and what is beyond the usual
// though it is no fault, with its remedy.
func unweighed(p *Page) Part {
	return Each(p.Q.Weight.Findings, func(_ int, f config.Finding) Part {
		switch {
		case f.Code == "weight.unweighed":
			return El("p", page.Mark(f.Severity), El("b", Text(" "+page.Held(f.Text))))
		case f.Figure != nil && f.Figure.Noted:
			return El("p", Class("how"), page.Mark(f.Severity), Text(" "+page.Held(f.Text+" "+f.Remedy)))
		}
		return nil
	})
}

// section heads a numbered part of the quote: a requirement list that goes back says by
// these numbers where the quote has a figure.
func section(s quote.Section, more string) Part { return numbered("h2", s.Heading(), more) }

// numbered is a heading that other papers lead to by its number, "4 Weights".
func numbered(level, heading, more string) Part {
	no, _, _ := strings.Cut(heading, " ")
	return El(level, At("id", sectionID(no)), At("tabindex", "-1"), Text(heading+more))
}

func sectionID(no string) string { return "section-" + no }

// places are where the quote has something, each leading there on the screen; one is
// "Section 4, Weights".
func places(id, where string) Part {
	if where == "" {
		return nil
	}
	return Each(strings.Split(where, "; "), func(i int, at string) Part {
		no, _, _ := strings.Cut(strings.TrimPrefix(at, "Section "), ",")
		return Many(If(i > 0, Text("; ")), page.Action("section", no, "", at, Class("place"),
			At("id", id+"-"+strconv.Itoa(i))))
	})
}

// bound is a figure's limit with its sign.
func bound(p *Page, f config.Figure) string {
	sign := map[config.Sense]string{config.AtMost: "≤ ", config.AtLeast: "≥ "}[f.Sense]
	return sign + page.Held(p.Show(f.Limit, f.Unit))
}

// tight is a table of figures for paper, without bars.
func tight(p *Page, caption string, list []config.Figure) Part {
	t := page.Table{Caption: caption, Class: "tight long",
		Heads: []string{"Figure", ">Value", ">Likely range", ">Limit", ">Margin", "From"}}
	for _, f := range list {
		row := page.Texts("", page.Held(p.Show(f.Value, f.Unit)), "", "–", "–", "")
		row[0] = Many(Text(page.Held(f.Label)), page.AssumedSize(&f))
		if f.High > f.Low {
			row[2] = Text(page.Held(page.Between(p.Page, f.Low, f.High, f.Unit)))
		}
		if f.Sense != "" {
			row[3], row[5] = Text(bound(p, f)), p.notes.mark(f.Source, f.Basis)
			row[4] = Many(Text(page.Held(p.Signed(f.Margin(), f.Unit))+" "), page.Mark(page.SeverityOf(f)))
		}
		t.Rows = append(t.Rows, row)
	}
	if !slices.ContainsFunc(list, func(f config.Figure) bool { return f.High > f.Low }) { // nor a column of them
		t.Heads = slices.Delete(t.Heads, 2, 3)
		for i := range t.Rows {
			t.Rows[i] = slices.Delete(t.Rows[i], 2, 3)
		}
	}
	return t.Draw()
}

// priceSummary is the price by chapter, of several units one after the other; every line
// stands in the annex.
func priceSummary(p *Page) Part {
	s, cat := p.Q.Price, p.Q.Edition.Cat
	t := page.Table{Caption: "In " + s.Currency + ", at the price book in force on " + s.On.Long() +
		"; every line stands in the annex", Class: "tight", Heads: []string{"", ">Amount"}}
	type entry struct {
		item  int
		label string
	}
	var list []entry
	sums, credits, of := map[entry]pricing.Amount{}, map[entry][]string{}, map[int]pricing.Amount{}
	for _, l := range s.Lines {
		e := entry{0, l.Label}
		if o := cat.OptionByID(l.ID); o != nil && l.Code == pricing.LineOption {
			e.label = "Options: " + chapterOf(cat, o)
		}
		if len(p.Q.Draft.More) > 0 && l.Item > 0 {
			e.item = l.Item
			of[l.Item] = of[l.Item].Add(l.Amount)
		}
		if _, has := sums[e]; !has {
			list = append(list, e)
		}
		sums[e] = sums[e].Add(l.Amount)
		if l.Amount.Sign() < 0 && l.Label != e.label {
			credits[e] = append(credits[e], l.Label)
		}
	}
	place := func(e entry) int { // what is of the whole order stands last
		return cmp.Or(e.item, len(of)+1)
	}
	slices.SortStableFunc(list, func(a, b entry) int { return cmp.Compare(place(a), place(b)) })
	item := 0
	for _, e := range list {
		if sums[e].IsZero() {
			continue
		}
		if e.item != item {
			if item = e.item; item > 0 {
				name := p.Q.NameOf(item - 1)
				if n := p.Q.Draft.Items()[item-1].Count(); n > 1 {
					name += ", " + strconv.Itoa(n) + " units"
				}
				t.Rows = append(t.Rows, []Part{page.Bold(name), page.Bold(of[item].Show())})
			}
		}
		row := page.Texts(e.label, sums[e].Show())
		if sums[e].Sign() < 0 && credits[e] != nil {
			row[0] = Many(Text(e.label), El("span", Class("how"), Text(" taken off for "+strings.Join(credits[e], "; "))))
		}
		if e.item > 0 {
			row[0] = El("span", Class("under"), row[0])
		}
		t.Rows = append(t.Rows, row)
	}
	t.Sums = append(t.Sums, page.Texts("Total", p.Q.Total()))
	return t.Draw()
}

// misdeclared says on paper that what is declared is not kept, before the clauses are counted.
func misdeclared(p *Page) Part {
	text := p.Q.Misdeclared()
	return If(text != "", El("p", page.Mark(config.Stop), Text(" Not to be signed: "+text)))
}

// compliancePaper lists each set's clauses with a figure in a row, and the rest
// by what they come to.
func compliancePaper(p *Page) Part {
	out := []Part{page.RemountNote(p.Page), misdeclared(p),
		El("p", Class("lead-in"), El("b", Text("All together: "+page.VerdictTally(p.Q.Verdicts)+".")))}
	for list := p.Q.Verdicts; len(list) > 0; {
		end := 1
		for end < len(list) && list[end].Set == list[0].Set {
			end++
		}
		t := page.Table{Caption: page.SetName(list[0].Set) + ": " + page.VerdictTally(list[:end]), Class: "tight long",
			Heads: []string{"Clause", "Verdict", ">Figure", ">Limit", "From"}}
		rest := map[standards.Outcome]string{}
		for _, v := range list[:end] {
			if v.Figure == nil && v.Outcome != standards.NotMet {
				if rest[v.Outcome] != "" {
					rest[v.Outcome] += "; "
				}
				rest[v.Outcome] += v.Title
				if v.Outcome == standards.NotJudged && v.Settles != "" {
					rest[v.Outcome] += " (" + v.Settles + ")"
				}
				continue
			}
			row := []Part{Text(v.Title), Many(page.VerdictMark(v), Text(" "+string(v.Outcome))), nil, nil,
				p.notes.mark(v.Source, v.Basis)}
			if f := v.Figure; f != nil {
				row[2] = Text(p.Show(f.Value, f.Unit))
				switch {
				case f.Sense == config.AtMost && f.Limit == 0: // what is compared is a difference
					side := page.Either(f.Value > 0, " above", " below")
					row[2], row[3] = Text(p.Show(math.Abs(f.Value), f.Unit)+side), Text("not above")
				case f.Sense != "":
					row[3] = Text(bound(p, *f))
				case v.Outcome == standards.NotJudged:
					row[3] = Text("none set")
				}
			}
			t.Rows = append(t.Rows, row)
		}
		if t.Rows != nil {
			out = append(out, t.Draw())
		} else {
			out = append(out, El("h3", Text(t.Caption)))
		}
		for _, o := range standards.Outcomes {
			if rest[o] != "" {
				word := string(o)
				if o == standards.NotJudged {
					word += ", since nothing in the unit declares it, with what settles it"
				}
				out = append(out, El("p", Class("small"), El("b", Text(page.Capital(word)+": ")),
					Text(p.once(rest[o])+".")))
			}
		}
		list = list[end:]
	}
	return Many(out...)
}

// once is a text that a paper says in full of its first unit, and of others by its name.
func (p *Page) once(text string) string {
	if before, said := p.said[text]; said {
		return "as of " + before
	}
	p.said[text] = p.Q.NameOf(p.Q.Draft.At)
	return text
}

func cover(p *Page) Part {
	q, d := p.Q, p.Q.Draft
	box := func(label, value string, under ...string) Part {
		return El("div", El("span", Text(label)), El("b", Text(page.Held(value))),
			Each(under, func(_ int, t string) Part { return El("small", Text(page.Held(t))) }))
	}
	figure := func(label, code string) Part {
		f, ok := q.Figure(code)
		switch {
		case !ok:
			return box(label, "not known")
		case f.Sense != "" && f.Code != "weight.payload":
			return box(label, p.Signed(f.Margin(), f.Unit))
		}
		var under []string
		for _, a := range q.Arrangements {
			if code == "weight.payload-left" && a.Worst && !a.Chosen {
				under = append(under, p.Show(a.Gross.Margin(), a.Gross.Unit)+" at the heaviest: "+a.Label)
			}
		}
		return box(label, p.Show(f.Value, f.Unit), under...)
	}
	lines := func(x quote.Party) Part {
		var out []Part
		for _, t := range []string{x.Name, x.Person, x.Address, x.Reach} {
			if t != "" {
				out = append(out, El("p", Text(t)))
			}
		}
		if out == nil {
			out = append(out, El("p", Class("soft"), Text("not named")))
		}
		return Many(out...)
	}
	var stops []config.Finding
	for _, f := range q.Findings {
		if f.Severity == config.Stop {
			stops = append(stops, f)
		}
	}
	short := incomplete(toSend(p))
	return Many(
		El("h1", Text(fleetTitle(p))),
		If(short != "", El("p", El("b", Text("Draft, not signed and not complete. ")), Text(short))),
		If(len(d.More) == 0, El("p", Text(q.Chassis.Label+" · "+q.Body.Label))),
		El("div", Class("two parties"), El("div", El("h2", Class("plain"), Text("For")), lines(d.Buyer)),
			El("div", El("h2", Class("plain"), Text("From")), lines(d.Seller)), portrait(p)),
		El("div", Class("cover"), box("Price", q.Total(), q.PriceWords()),
			If(d.Count() == 1, Many(box("Likely date (50 %)", q.Plan.EvenOdds.Long()),
				box("Safe date (90 %)", q.Plan.NineInTen.Long()))),
			fleetDates(p, box), box("Price good through", q.Price.ValidUntil.Long()),
			If(len(d.More) == 0,
				Many(figure("Payload", "weight.payload"), figure("Remaining payload", "weight.payload-left"),
					figure("Front axle margin", "weight.front-axle"), figure("Rear axle margin", "weight.rear-axle")))),
		fleetPaper(p),
		If(len(stops) > 0, Many(El("h3", Text("This quote cannot be issued yet")), page.Findings(p.Page, stops, ""))),
		If(d.Notes != "", El("p", Text(d.Notes))),
		El("p", Class("how"), Text(q.Edition.Cat.Notice)),
	)
}

// portrait is the unit on the cover, from the curb side; of several units the first.
func portrait(p *Page) Part {
	m := p.Q.Space.Model
	if m == nil {
		return nil
	}
	v := drawing.ViewOf(m, "curb")
	for i := range v.Groups {
		v.Groups[i].Option = "" // nothing of it is pressed
	}
	name := "The unit"
	if len(p.Q.Draft.More) > 0 {
		name = p.Q.NameOf(0)
	}
	o := m.Overall()
	size := func(v quantity.Length) string { return p.Show(float64(v), quantity.Inch) }
	said := name + " with everything on: " + size(o.LengthIn) + " long, " + size(o.WidthIn) + " wide, " +
		size(o.HeightIn) + " high. Colors are no paint sample."
	return El("figure", Class("portrait"), drawing.Picture(v, said, "", nil), El("figcaption", Text(said)))
}

// printedCautions are those of every unit of the quote: what is said of one kind among
// several says of which.
func printedCautions(p *Page) Part {
	cat := p.Q.Edition.Cat
	var vans, modules bool
	var kinds []*config.Duty
	own := map[*config.Duty][]string{} // names of the units of a kind
	for i, it := range p.Q.Draft.Items() {
		van := cat.IsVan(it.Unit.Body)
		vans, modules = vans || van, modules || !van
		if d := cat.DutyOf(&it.Unit); d != nil {
			if own[d] == nil {
				kinds = append(kinds, d)
			}
			own[d] = append(own[d], p.Q.NameOf(i))
		}
	}
	list := []string{
		"Computed weights do not replace a certified scale." +
			ifText(modules, page.Certifies(false)) + ifText(vans, page.Certifies(true)),
		power.Caution,
		"Figures marked as from memory or common practice were not read in a standard's text. The purchaser's " +
			"authority having jurisdiction decides which rules apply.",
		"Dates are estimates until the plant confirms slot and chassis in writing.",
	}
	for _, d := range kinds {
		for _, c := range d.Cautions {
			if len(p.Q.Draft.More) > 0 {
				c = strings.Join(own[d], ", ") + ": " + c
			}
			list = append(list, c)
		}
	}
	return El("section", Class("whole"), El("h2", Text("Cautions")), page.Cautions(list...))
}

func ifText(holds bool, text string) string {
	if holds {
		return text
	}
	return ""
}

func acceptance(p *Page) Part {
	line := func(t string) Part { return El("div", Text(t)) }
	return Many(
		El("h2", Text("Acceptance")),
		El("p", Text("The buyer accepts "+p.named()+" at "+p.Q.Total()+
			" for "+page.Count(p.Q.Price.Units, "unit", "units")+", with the specification and terms above.")),
		El("div", Class("sign"), line("For the buyer: name and title"), line("For the seller: name and title"),
			line("Signature and date"), line("Signature and date")),
	)
}

// named is how the document calls itself: by its number, or by its fingerprint
// while it has none.
func (p *Page) named() string {
	if n := p.Q.Draft.Number; n != "" {
		return "this quote, number " + n + ","
	}
	print := p.Q.Draft.Fingerprint()
	return "this quote (document " + print[:min(12, len(print))] + ")"
}

// financePaper prints the payment plan of a lease and what a year of service
// costs, where the terms ask for them.
func financePaper(p *Page) Part {
	return Many(
		When(p.Q.Price.Lease != nil, func() Part {
			return Many(El("h2", Text("Annex: lease-purchase, as worked out for the buyer; no offer of credit")),
				page.LeaseSummary(p.Page), page.LeaseSchedule(p.Page))
		}),
		When(p.Q.Price.Service != nil, func() Part {
			return Many(El("h2", Text("Annex: years of service")), page.ServicePicture(p.Page))
		}))
}
