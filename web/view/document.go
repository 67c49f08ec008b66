package view

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

func gistQuote(p *Page) string {
	if p.Q.Stopped() {
		return "cannot be issued yet"
	}
	return "ready to print"
}

// document is the quote as it is printed, with the tools to send it above. For
// somebody who opened its link it comes first, beneath how far it can be relied
// on, and the tools after it.
func document(p *Page) Part {
	screen := func(parts ...Part) Part { return El("div", Class("screen"), Many(parts...)) }
	print := action("print", "", "", "Print or save as PDF", Class("main"), At("id", "print-quote"))
	stopped := If(p.Q.Stopped(), El("p", mark(config.Stop), Text(" The quote cannot be issued as it stands; what stops it is printed on it.")))
	files := Many(action("save-draft", "", "", "Save as a file"), action("save-table", "", "", "Everything as a table (CSV)", At("id", "save-table")))
	form := El("p", Class("how"), Text("The file is the unit as JSON. "), action("save-schema", "", "", "Save the schema of its form", Class("quiet"), At("id", "save-schema")))
	if p.Reader {
		sign := If(p.Trust != nil && p.Trust.Signature == nil, block("Sign this quote", signing(p)))
		return Many(
			screen(heading("Quote", "As its link brought it; every figure is recomputed on this computer."), stopped, foreign(p), trust(p),
				El("p", Class("row-tools"), print, action("pin", "", "", "Set aside to compare", At("id", "pin-quote")), El("a", At("href", "#tools"), Text("Other papers; send, sign, keep")))),
			paper(p),
			screen(El("section", At("id", "tools"), El("h2", Text("Other papers; send, sign, keep")), papersChoice(p), El("div", Class("row-tools"), files), form, linkBox(p), sign, drafts(p))),
		)
	}
	return Many(
		screen(heading("Quote", "The document as it prints, and the link that carries it."), papersChoice(p), stopped,
			El("div", Class("row-tools"), print, files), form, linkBox(p), foreign(p), trust(p), drafts(p)),
		paper(p),
	)
}

func linkBox(p *Page) Part {
	base, text := p.State.Address, p.Covered
	if base == "" && !strings.HasPrefix(p.Base, "file:") {
		base = p.Base
	}
	along := Many()
	if t := p.Trust; t != nil && t.Before != nil && t.Before.Along != "" {
		along = check(p, "along", "Bring the quote before it along, so that the reader sees what changed", !p.State.Alone)
		if !p.State.Alone {
			text = t.Before.Along
		}
	}
	whole := text
	if base != "" {
		whole = base + "#" + text
	}
	hint := "The link holds the whole quote and needs no server. It never holds cost or margin."
	if base == "" {
		hint += " This copy of the page was opened from disk: give the address where your buyers find the page, or send the text below; they paste it in Compare."
	}
	return block("Link", El("div", Class("link-box"),
		field(p, "address", "Address where buyers find the page", p.State.Address, "Empty takes the address this page was opened from"),
		El("div", Class("field"), El("label", At("for", "link-text"), Text("The link, "+count(len(whole), "character", "characters"))),
			El("textarea", At("id", "link-text"), Flag("readonly", true), Text(whole)), El("p", Class("hint"), Text(hint))),
		along,
		El("div", Class("row-tools"), action("copy-link", "", whole, "Copy the link", At("id", "copy-link"))),
		El("div", Class("field"), field(p, "open-link", "Open a link", "", "Paste a link; the quote worked on now is set aside in Compare")),
	))
}

// paper is the document chosen. A table carries the running head and foot, since
// every browser repeats those on each page.
func paper(p *Page) Part {
	of := *leading(p)
	p = &of
	p.sources = new(sources)
	d := p.Q.Draft
	cat := p.Q.Edition.Cat
	number := " " + d.Number
	if d.Number == "" {
		number = ", not numbered"
	}
	shown := papers[0]
	for _, x := range papers {
		if x.id == p.State.Paper {
			shown = x
		}
	}
	head := El("div", Class("running"), El("span", Text(shown.label+number+" · "+d.Date.Long()+revised(d))), El("span", Text(d.Buyer.Name)))
	foot := El("div", Class("running foot"), El("span", Text("Catalogue "+cat.Title+", edition "+cat.Edition)), El("span", Text("Content "+cat.Hash()[:16]+" · of this document "+d.Fingerprint())))
	return El("article", Class("paper"), At("aria-label", shown.label+" document"), El("table", Class("sheet"), At("role", "presentation"),
		El("thead", El("tr", El("td", head))),
		El("tfoot", El("tr", El("td", foot))),
		El("tbody", El("tr", El("td", shown.draw(p)))),
	))
}

func revised(d *quote.Draft) string {
	if d.Rev == 0 {
		return ""
	}
	return " · revision " + quantityOf(d.Rev)
}

// paperKind is a document that the quote can be printed as.
type paperKind struct {
	id, label string
	draw      func(*Page) Part
}

// papers in the order they are wanted; the first is the quote.
var papers []paperKind

func init() { // their functions look the list up
	papers = []paperKind{
		{"quote", "Quote", quotePaper}, {"exceptions", "Schedule of exceptions", exceptions}, {"order", "Order sheet", orderSheet}, {"test", "Test sheet", testSheet}, {"upkeep", "Maintenance schedule", upkeep},
	}
}

// PaperOf is the id itself where there is such a paper, and the quote's where
// there is none.
func PaperOf(id string) string {
	for _, x := range papers {
		if x.id == id {
			return id
		}
	}
	return papers[0].id
}

// papersChoice says which document is shown and printed.
func papersChoice(p *Page) Part {
	here := PaperOf(p.State.Paper)
	return El("div", Class("chapters"), At("role", "group"), At("aria-label", "Which document"), Each(papers, func(_ int, x paperKind) Part {
		return action("paper", x.id, "", x.label, At("id", "paper-"+x.id), At("aria-pressed", strconv.FormatBool(x.id == here)))
	}))
}

// quotePaper is the quote: what decides first, every line of the price last. A
// revision begins with what it changes.
func quotePaper(p *Page) Part {
	q := p.Q
	return Many(
		cover(p),
		fleetPaper(p),
		revisionPaper(p),
		El("h2", Text("Price")), priceSummary(p),
		El("section", Class("whole"), El("h2", Text("Payments")), paymentTable(p)), financePaper(p),
		specification(p),
		El("h2", Text("Weights")), sideView(p), learned(p), tight(p, "At full load", figuresOf(&q.Weight.Report, "weight.")),
		El("h2", Text("Electrical")), tight(p, "12 V and 125 V", figuresOf(&q.Power.Report, "power.")),
		El("h2", Text("Space")), planView(p), tight(p, "Inside and outside", figuresOf(&q.Space.Report, "space.")),
		El("h2", Text("Compliance: "+q.Assume.Label)), compliancePaper(p),
		El("h2", Text("Delivery")), dates(p), scheduleChart(p), deliveriesTable(p),
		otherUnits(p),
		El("h2", Text("Warranty and maintenance")), service(p), El("p", Class("how"), Text("The maintenance schedule by months and miles is a document of its own.")),
		printedCautions(),
		acceptance(p),
		signatures(p),
		El("h2", Class("annex"), Text("Annex: the price line by line")), priceTable(p),
		p.sources.draw(),
	)
}

// tight is a table of figures for paper, without bars.
func tight(p *Page, caption string, list []config.Figure) Part {
	t := table{caption: caption, class: "tight long", heads: []string{"Figure", ">Value", ">Likely range", ">Limit", ">Margin", "From"}}
	for _, f := range list {
		row := texts(f.Label, p.show(f.Value, f.Unit), "", "–", "–", "")
		if f.High > f.Low {
			row[2] = Text(p.show(f.Low, f.Unit) + " to " + p.show(f.High, f.Unit))
		}
		if f.Sense != "" {
			row[3], row[5] = Text(map[config.Sense]string{config.AtMost: "≤ ", config.AtLeast: "≥ "}[f.Sense]+p.show(f.Limit, f.Unit)), p.sources.mark(basisText(f), f.Basis)
			row[4] = Many(Text(p.signed(f.Margin(), f.Unit)+" "), mark(severityOf(f)))
		}
		t.rows = append(t.rows, row)
	}
	return t.draw()
}

// sources of the limits: in the tables each is a word and a number, and at the
// end of the document it stands in full, once.
type sources []string

// wordOf is what a limit rests on, as short as a column allows.
var wordOf = map[config.Basis]string{config.Rating: "rating", config.ReadInText: "text", config.FromMemory: "memory", config.CommonPractice: "practice", config.Purchaser: "purchaser", config.Computed: "computed"}

func (s *sources) mark(source string, basis config.Basis) Part {
	i := slices.Index(*s, source)
	if i < 0 {
		i = len(*s)
		*s = append(*s, source)
	}
	return Many(Text(wordOf[basis]+" "), El("span", Class("soft"), Text("["+quantityOf(i+1)+"]")))
}

func (s *sources) draw() Part {
	if len(*s) == 0 {
		return nil
	}
	return El("section", El("h2", Text("Sources of the limits")),
		El("p", Class("how"), Text("By the numbers in brackets in the tables. Memory: nobody here read the text, and the number is a default to be replaced. Practice: common practice, no source.")),
		El("ol", Class("sources two-up"), Each(*s, func(_ int, t string) Part { return El("li", Text(t+".")) })))
}

// priceSummary is the price by chapter; every line stands in the annex.
func priceSummary(p *Page) Part {
	s, cat := p.Q.Price, p.Q.Edition.Cat
	t := table{caption: "In " + s.Currency + ", at the price book in force on " + s.On.Long() + "; every line stands in the annex", class: "tight", heads: []string{"", ">Amount"}}
	var labels []string
	sums := map[string]pricing.Amount{}
	for _, l := range s.Lines {
		label := l.Label
		if o := cat.OptionByID(l.ID); o != nil && l.Code == pricing.LineOption {
			chapter := cat.GroupByID(o.Group).Chapter
			for _, ch := range cat.Chapters {
				if ch.ID == chapter {
					label = "Options: " + ch.Label
				}
			}
		}
		if len(p.Q.Draft.More) > 0 && l.Item > 0 {
			label = p.Q.NameOf(l.Item-1) + ": " + label
		}
		if _, has := sums[label]; !has {
			labels = append(labels, label)
		}
		sums[label] = sums[label].Add(l.Amount)
	}
	for _, label := range labels {
		if !sums[label].IsZero() {
			t.rows = append(t.rows, texts(label, sums[label].Show()))
		}
	}
	t.sums = append(t.sums, texts("Total", p.Q.Total()))
	return Many(t.draw(), If(!s.ValidUntil.IsZero(), El("p", Class("how"), Text("Stands until "+s.ValidUntil.Long()+". "+s.Rounding))))
}

// compliancePaper lists each set's clauses with a figure in a row, and the rest
// by what they come to.
func compliancePaper(p *Page) Part {
	out := []Part{remountNote(p), El("p", El("b", Text("All together: "+tally(p.Q.Verdicts)+".")))}
	for list := p.Q.Verdicts; len(list) > 0; {
		end := 1
		for end < len(list) && list[end].Set == list[0].Set {
			end++
		}
		t := table{caption: setName(list[0].Set) + ": " + tally(list[:end]), class: "tight long", heads: []string{"Clause", "Verdict", ">Figure", ">Limit", "From"}}
		rest := map[standards.Outcome]string{}
		for _, v := range list[:end] {
			if v.Figure == nil && v.Outcome != standards.NotMet {
				if rest[v.Outcome] != "" {
					rest[v.Outcome] += "; "
				}
				rest[v.Outcome] += v.Title
				continue
			}
			row := []Part{Text(v.Title), Many(verdictMark(v), Text(" "+string(v.Outcome))), nil, nil, p.sources.mark(v.Source+"; "+string(v.Basis), v.Basis)}
			if f := v.Figure; f != nil {
				row[2] = Text(p.show(f.Value, f.Unit))
				if f.Sense != "" {
					row[3] = Text(map[config.Sense]string{config.AtMost: "≤ ", config.AtLeast: "≥ "}[f.Sense] + p.show(f.Limit, f.Unit))
				}
			}
			t.rows = append(t.rows, row)
		}
		if t.rows != nil {
			out = append(out, t.draw())
		} else {
			out = append(out, El("h3", Text(t.caption)))
		}
		for _, o := range []standards.Outcome{standards.Met, standards.Declared, standards.NotJudged} {
			if rest[o] != "" {
				word := string(o)
				out = append(out, El("p", Class("small"), El("b", Text(strings.ToUpper(word[:1])+word[1:]+": ")), Text(rest[o]+".")))
			}
		}
		list = list[end:]
	}
	return Many(out...)
}

func cover(p *Page) Part {
	q, d := p.Q, p.Q.Draft
	box := func(label, value string) Part { return El("div", El("span", Text(label)), El("b", Text(value))) }
	figure := func(label, code string) Part {
		f, ok := q.Figure(code)
		switch {
		case !ok:
			return box(label, "not known")
		case f.Sense != "" && f.Code != "weight.payload":
			return box(label, p.signed(f.Margin(), f.Unit))
		}
		return box(label, p.show(f.Value, f.Unit))
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
	return Many(
		El("h1", Text(subject(p))),
		El("p", Text(q.Chassis.Label+" · "+q.Body.Label)),
		El("div", Class("two"), El("div", El("h2", Class("plain"), Text("For")), lines(d.Buyer)), El("div", El("h2", Class("plain"), Text("From")), lines(d.Seller))),
		El("div", Class("cover"), box("Price", q.Total()), box("Delivery, even odds", q.Plan.EvenOdds.Long()), box("Delivery, nine in ten", q.Plan.NineInTen.Long()), box("Stands until", q.Price.ValidUntil.Long()),
			figure("Payload", "weight.payload"), figure("Payload left, loaded", "weight.payload-left"), figure("Front axle margin", "weight.front-axle"), figure("Rear axle margin", "weight.rear-axle")),
		If(len(stops) > 0, Many(El("h3", Text("This quote cannot be issued yet")), findings(p, stops, ""))),
		If(d.Notes != "", El("p", Text(d.Notes))),
		El("p", Class("how"), Text(q.Edition.Cat.Notice)),
	)
}

// specification says what the buyer gets, in sentences, chapter by chapter.
func specification(p *Page) Part {
	cat := p.Q.Edition.Cat
	spec := func(name, text string) Part { return El("p", El("b", Text(name+". ")), Text(text)) }
	out := []Part{Class("two-up"), spec(p.Q.Chassis.Label, p.Q.Chassis.Spec), spec(p.Q.Body.Label, p.Q.Body.Spec), remountWords(p)}
	for _, ch := range cat.Chapters {
		var items []Part
		for i := range cat.Groups {
			g := &cat.Groups[i]
			if g.Chapter != ch.ID {
				continue
			}
			for _, m := range cat.Members(g.ID) {
				o := &cat.Options[m]
				n := p.Q.Draft.Unit.Qty(o.ID)
				if n == 0 || slices.Contains(o.Tags, quote.ServiceTag) { // promises stand with the warranty
					continue
				}
				name := o.Label
				if n > 1 {
					name += " × " + quantity.Group(float64(n), 0)
				}
				items = append(items, El("p", El("b", Text(name+". ")), Text(o.Spec), told(p.Q.Told(o))))
			}
		}
		if items != nil {
			out = append(out, El("h3", Text(ch.Label)), Many(items...))
		}
	}
	var carried []Part
	for _, c := range p.Q.Draft.Unit.Carried {
		carried = append(carried, El("p", Text(quantity.Group(float64(c.Qty), 0)+" × "+cat.LabelOf(c.Equipment))))
	}
	if carried != nil {
		out = append(out, El("h3", Text("Loose equipment counted in the weights")), Many(carried...))
	}
	return Many(El("h2", Text("Specification")), El("div", out...))
}

// told prints what was said to an option behind its sentence.
func told(text string) Part { return If(text != "", El("b", Text(" "+text+"."))) }

func printedCautions() Part {
	return Many(El("h2", Text("Cautions")), cautions(
		"Computed weights do not replace a certified scale. The final-stage manufacturer certifies the finished vehicle.",
		power.Caution,
		"Figures marked as from memory or common practice were not read in a standard's text. The purchaser's authority having jurisdiction decides which rules apply.",
		"Dates are estimates until the plant confirms slot and chassis in writing.",
	))
}

func acceptance(p *Page) Part {
	line := func(t string) Part { return El("div", Text(t)) }
	return El("section", Class("whole"),
		El("h2", Text("Acceptance")),
		El("p", Text("The buyer accepts "+p.named()+" at "+p.Q.Total()+", with the specification and terms above.")),
		El("div", Class("sign"), line("For the buyer: name and title"), line("For the seller: name and title"), line("Signature and date"), line("Signature and date")),
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
