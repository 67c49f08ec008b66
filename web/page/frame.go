package page

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/pricing/quote"
	. "boxwright/web/page/markup"
)

// Frame is what stands around the area: the masthead, the tabs and the figures
// that every area shows.
type Frame struct {
	*Page
	Tabs  []Tab
	Theme string // "", "light", "dark" or "contrast"
	Undo  int    // steps that can be undone
	Redo  int
	Kept  bool // the browser keeps the draft
	// Unkept is why it does not: "refused", "full", "newer" or "off".
	Unkept string
	// Elsewhere says that another window has the quote: what is done here waits.
	Elsewhere bool
}

// Tab leads to an area.
type Tab struct {
	ID, Name string
	Section  string // what it stands under
	Gist     string
	Codes    []string // beginnings of the codes of findings that mark it; nil for none
	Clear    Part     // its mark while no finding is; nil for "OK"
}

// mostNamed letters name a quote or a party in the head of the page.
const mostNamed = 80

// Masthead names the quote and holds what concerns the whole page.
func (f *Frame) Masthead() Part {
	d := f.Q.Draft
	who := letters.Isolate(shortened(d.Buyer.Name, mostNamed))
	if who == "" {
		who = "No buyer named yet"
	}
	saving := "saved on this device"
	switch {
	case !f.Kept:
		saving = "NOT saved on this device"
	case f.Elsewhere:
		saving = "NOT saved from this window"
	}
	return Many(
		El("p", Class("brand"), Text("Boxwright")),
		El("p", Class("subject"),
			El("span", El("b", Text(shortened(Subject(f.Page), mostNamed))), Text(" · "+who+" · quote "+NumberOf(d))),
			El("span", Class("small"), Text(" · "+saving))),
		El("div", Class("tools"),
			Action("undo", "", "", "Undo", At("aria-disabled", strconv.FormatBool(f.Undo == 0)), At("title", "Ctrl Z")),
			Action("redo", "", "", "Redo", At("aria-disabled", strconv.FormatBool(f.Redo == 0)), At("title", "Ctrl Y")),
			El("details", Class("menu"), At("id", "head-menu"), El("summary", Text("Menu")), El("div",
				Action("units", "", "", Either(f.Metric, "Units: metric", "Units: US"),
					At("title", "Press for the other system")),
				f.appearance(),
				Action("quotes", "", "", "Saved quotes", At("id", "go-quotes")),
				Action("print", "", "", "Print"))),
		),
	)
}

// ReadingBar is the masthead while a quote is read as it was sent. Whoever may revise
// it is offered that.
func (f *Frame) ReadingBar(d *quote.Draft, revises bool) Part {
	return f.readersBar(d,
		Action("own-copy", "", "", "Make my own copy", At("id", "own-copy")),
		If(revises, Action("revise", "", "", "Revise it as the seller", At("id", "revise"))),
		f.readersChoices(),
		Action("quotes", "", "", "Saved quotes", At("id", "go-quotes")))
}

// ForeignBar is that while the quote is of an edition that is not at hand, so that no copy
// can be made of it. Whoever works on one of their own can get the edition.
func (f *Frame) ForeignBar(d *quote.Draft, works bool) Part {
	return f.readersBar(d,
		If(works, Action("go", "catalogue", "", "Load its catalogue edition", At("id", "foreign-catalogue"))),
		f.readersChoices(),
		Action("foreign-drop", "", "", "Close it", At("id", "reading-away")))
}

// readersBar says whose quote it is and which, with a menu; away from the quote it leads back.
func (f *Frame) readersBar(d *quote.Draft, menu ...Part) Part {
	return Many(
		El("p", Class("brand"), El("bdi", Text(cmp.Or(d.Seller.Name, "Boxwright")))),
		If(f.Area == "quote", El("p", Class("number"), If(d.Number == "", Text("Quote ")), El("bdi", Text(Numbered(d))))),
		If(f.Area != "quote", Action("go", "quote", "", "Back to the quote", Class("back"), At("id", "reading-back"))),
		El("details", Class("menu"), At("id", "reading-menu"), El("summary", Text("Menu")), El("div", menu...)),
	)
}

// readersChoices are how a reader likes to read.
func (f *Frame) readersChoices() Part {
	return Many(
		Action("print", "", "", "Print"),
		Action("units", "", "", Either(f.Metric, "Show US units", "Show metric units")),
		f.appearance())
}

// NumberOf is the number of a quote, or that it has none.
func NumberOf(d *quote.Draft) string { return cmp.Or(letters.Isolate(d.Number), "not numbered") }

// Numbered is the number of a quote with its revision.
func Numbered(d *quote.Draft) string {
	number := NumberOf(d)
	if d.Rev > 0 {
		number += ", revision " + Whole(d.Rev)
	}
	return number
}

func (f *Frame) appearance() Part {
	return El("select", At("id", "f-theme"), At("data-act", "theme"), At("aria-label", "Appearance"),
		Options(f.Theme, []Choice{{"", "Device colors"}, {"light", "Light"}, {"dark", "Dark"},
			{"contrast", "High contrast"}}))
}

// unkept says why nothing is kept, and what to do.
var unkept = map[string]string{
	"refused": "This browser refuses to save anything, as in a private window.",
	"full": "This browser has no room left. Delete quotes you no longer need under Saved quotes, or make room on this " +
		"device; until then save this quote as a file, or keep its link.",
	"newer": "A newer version of this page saved the quotes here. Reload the page to get it.",
	"off":   "You chose to keep nothing on this device.",
}

// NotKept is the strip above every area while what is entered is not saved; nil
// while it is.
func (f *Frame) NotKept() Part {
	if f.Kept {
		return nil
	}
	why, known := unkept[f.Unkept]
	if !known {
		why = unkept["refused"]
	}
	what := "What you enter is not saved: it is gone when this window closes. "
	if f.Reading {
		what = "This quote is not saved on this device: keep the link you were sent. "
	}
	return El("section", At("id", "not-kept"), Class("notice warn screen"), At("aria-label", "Not saved"),
		El("p", El("b", Text(what)), Text(why+" "),
			Action("save-draft", "", "", "Save this quote as a file", At("id", "not-kept-save"))))
}

// Areas are the tabs, each with how it stands and what it comes to. They are one stop of the
// Tab key; arrows lead from one to the next.
func (f *Frame) Areas() Part {
	section := ""
	return El("ol", Each(f.Tabs, func(_ int, t Tab) Part {
		head := If(t.Section != section, El("li", Class("section"), At("id", "section-"+strings.ToLower(t.Section)),
			El("h2", Text(t.Section))))
		section = t.Section
		state := Unmarked()
		if t.Codes != nil {
			state = Mark(worst(f.Q.Findings, t.Codes))
			if t.Clear != nil && worst(f.Q.Findings, t.Codes) == "" {
				state = t.Clear
			}
		}
		return Many(head, El("li",
			Action("go", t.ID, "", "", At("id", "area-"+t.ID), InRow(t.ID == f.Area),
				If(t.ID == f.Area, At("aria-current", "page")), state,
				El("span", Class("name"), Text(t.Name)), El("span", Class("gist"), Text(t.Gist)))))
	}))
}

// Gauges are the figures that stand beside every area, in this order, each with the figure
// whose limit is its rating, and what that is called.
var Gauges = []struct{ Code, Label, Of, Rating string }{
	{"weight.payload-left", "Remaining payload", "weight.gross", "GVWR"},
	{"weight.front-axle", "Front axle", "weight.front-axle", "GAWR"},
	{"weight.rear-axle", "Rear axle", "weight.rear-axle", "GAWR"},
	{ampsLeft, "Amps left, hot", "power.scene", "alternator"},
}

const ampsLeft = "power.remaining"

// AmpsLeft is what the hot alternator has left on scene, of which there must be some
// whether or not a standard or the purchaser asks for more.
func AmpsLeft(q *quote.Quote) config.Figure {
	f, _ := q.Figure(ampsLeft)
	if f.Sense == "" {
		f.Sense, f.Basis = config.AtLeast, config.Rating
	}
	return f
}

// Standing is what stands beside every area: the figures people decide by and what is open.
func Standing(p *Page) Part {
	q := p.Q
	return Many(summaryLine(p), El("div", Class("inner"), At("data-scroll", "Figures and open items"),
		El("h2", Text("Where it stands")),
		El("div", Class("gauges"), Each(Gauges, func(_ int, g struct{ Code, Label, Of, Rating string }) Part {
			f, ok := q.Figure(g.Code)
			if !ok {
				return nil
			}
			if g.Code == ampsLeft {
				f = AmpsLeft(q)
			}
			f.Label = g.Label
			of, _ := q.Figure(g.Of)
			return gauge(p, f, SeverityIn(q, f), of, g.Rating)
		})),
		Learned(p),
		El("h3", Text("Delivery")),
		El("dl",
			El("dt", Text("Likely (50 %)")), El("dd", Text(q.Plan.EvenOdds.Long())),
			El("dt", Text("Safe (90 %)")), El("dd", Text(q.Plan.NineInTen.Long())),
		),
		If(q.Draft.Terms.Count() > 1, El("p", Class("how"), Text("The first of "+Whole(q.Draft.Terms.Count())+
			"; Delivery has the date of each."))),
		El("h3", Text("Price")),
		El("p", Class("big"), Text(q.Total())),
		El("p", Class("how"), Text(q.PriceWords()),
			If(q.Draft.Terms.Buyer == "" && !q.Price.SalesTax.Amount.IsZero(),
				Text(" Say in Quote who buys: a public body is taken as exempt."))),
		standingFindings(p),
		WordsOf("standing", "These figures explained", StandingWords),
	))
}

// summaryLine stays in sight at the foot of a narrow screen.
func summaryLine(p *Page) Part {
	cell := func(label, value string, s config.Severity) Part {
		return El("span", El("small", Mark(s), Text(" "+label)), El("b", Text(value)))
	}
	out := []Part{Class("line"), At("aria-hidden", "true")} // the same is read out from below
	for _, g := range Gauges[:2] {
		if f, ok := p.Q.Figure(g.Code); ok {
			v := f.Value
			if f.Sense != "" {
				v = f.Margin()
			}
			out = append(out, cell([]string{"Payload", "Front axle"}[min(len(out)-2, 1)], p.Show(v, f.Unit),
				SeverityIn(p.Q, f)))
		}
	}
	price := "Price"
	if n := p.Q.Price.Units; n > 1 {
		price = Whole(n) + " units"
	}
	out = append(out, cell("Delivery", p.Q.Plan.EvenOdds.Short(), worst(p.Q.Findings, []string{"time"})),
		cell(price, p.Q.Price.Total.Show(), worst(p.Q.Findings, []string{"price"})))
	return El("div", out...)
}

// gauge shows what a figure has to spare; beneath, the load and the rating that it is of.
func gauge(p *Page, f config.Figure, s config.Severity, of config.Figure, rating string) Part {
	drawn := bar(f)
	likely := If(drawn != nil && f.High > f.Low, // the whisker
		El("span", Class("hidden-text"), Text("likely "+Between(p, f.Low, f.High, f.Unit))))
	under := If(of.Limit > 0, El("div", Class("under"), El("span", Text(p.Show(of.Value, of.Unit))),
		El("span", El("span", Class("hidden-text"), Text("of ")), Text(rating+" "+p.Show(of.Limit, of.Unit)))))
	value := p.Show(f.Value, f.Unit)
	if f.Sense != "" {
		word := "to spare"
		if !f.Met() {
			word = "over"
			if f.Sense == config.AtLeast {
				word = "short"
			}
		}
		value = p.Show(math.Abs(f.Margin()), f.Unit) + " " + word
	}
	return El("div", Class("gauge"),
		El("div", Class("line"), El("span", Text(f.Label)),
			El("span", Class("value"), Mark(s), Text(" "+value))),
		likely, drawn, under)
}

// standingFindings shows what stops the unit, then what needs a decision.
func standingFindings(p *Page) Part {
	var urgent []config.Finding
	for _, f := range p.Q.Findings {
		if f.Severity != config.Note {
			f.Remedy, f.Basis, f.Clause = "", "", "" // those stand in its area
			urgent = append(urgent, f)
		}
	}
	const shown = 6
	rest := len(urgent) - shown
	if rest > 0 {
		urgent = slices.Clone(urgent[:shown])
	}
	return Many(
		El("h2", Text("Open items")),
		Findings(p, urgent, "No open items."),
		If(rest > 0, El("p", Class("small soft"),
			Text("and "+Count(rest, "more, in its area", "more, in their areas")))),
	)
}
