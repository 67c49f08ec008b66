// Package guide is the guided quote, which walks a newcomer through the page
// itself. It is a number in the view: the step that comes next, counted from one.
// A step is over when the draft and the view show that what it asks for was done,
// whoever did it.
package guide

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Page is what the guide is drawn from.
type Page struct {
	*page.Page
	View *session.View
	Undo int  // steps that can be undone
	Kept bool // the browser keeps the draft
}

// step is one thing to do. In do and because, {it} is what the catalogue
// calls the option or the chassis, {chapter} where it stands; {front},
// {miss}, {even} and {nine} are figures of the unit.
type step struct {
	area    string // where it is done
	chassis string // to begin on
	option  string // to choose, or only to ask for
	try     bool   // asking is enough: it cannot be had
	open    string // an area to go to
	paid    bool   // a deposit or a budget is to be set
	act     string // what the page is to do, when that leaves no trace
	target  string // id of the control, where it does not follow from the rest
	see     string // id of what to look at first
	do      string
	because string
}

// steps, told of the demonstration catalogue. With one that lacks any of
// their ids there is no guided quote.
var steps = []step{
	{area: "needs", chassis: "cut-14500-158-gas",
		do: "Under Start, press “Begin on this” at “{it}”.", because: "Its ratings limit all that is built on it."},
	{area: "unit", option: "rest-four",
		do: "In Unit, under {chapter}, choose “{it}”.", because: "The county's own list is in already; the rest is " +
			"standard."},
	{area: "unit", option: "cot-power",
		do: "Under {chapter}, choose “{it}”.", because: "Weight, current, price and date move at once."},
	{area: "unit", option: "fb-winch", try: true,
		do: "Try “{it}”, under {chapter}.", because: "It hangs ahead of the front axle: only {front} to spare."},
	{area: "unit", option: "fb-winch", target: "mend-fb-winch-0",
		do:      "It cannot be had. Press a way out under “What would help”.",
		because: "The sum is shown; each way out was checked."},
	{open: "weight",
		do: "The winch is in. Open Weight.", because: "Every load stands against its rating."},
	{open: "delivery", see: "ask-weight.front-axle",
		do: "Look at Front axle: {front} to spare{miss}. Then open Delivery.", because: "▲: it fits on paper only. " +
			"Weigh it before you promise it."},
	{area: "price", paid: true, target: "f-terms.deposit_percent",
		do:      "Promise {nine}, nine in ten. In Price, type 15 for the deposit and press Enter.",
		because: "Even odds, {even}, is a coin toss."},
	{area: "quote", act: "copy-link", target: "copy-link",
		do: "In Quote, press “Copy the link”.", because: "It carries the whole quote, never cost or margin."},
	{area: "quote", act: "print", target: "print-quote",
		do: "Read the quote; press “Print or save as PDF”.", because: "That paper is what the county files."},
}

// The unit a guided quote begins with, and what the county always has: it comes
// with the chassis, and leaves the front axle little to spare.
const (
	From  = "van-9500-148-gas"
	Title = "Demonstration: county ambulance"
)

// Brings is what the county always has.
var Brings = []string{"front-tall", "street-full", "build-ply", "bench-72", "whl-steel"}

// Has reports whether the catalogue has everything the guided quote speaks of.
func Has(cat *config.Catalogue) bool {
	ids := Brings
	for _, x := range steps {
		if x.option != "" {
			ids = append(ids, x.option)
		}
		if x.chassis != "" && cat.ChassisByID(x.chassis) == nil {
			return false
		}
	}
	for _, id := range ids {
		if cat.OptionByID(id) == nil {
			return false
		}
	}
	return cat.ChassisByID(From) != nil
}

// next is the step that is to be shown: the place among steps, their number when all
// are done, below zero when there is no guide.
func next(s *session.View, cat *config.Catalogue) int {
	if s.Guide < 1 || s.GuideOff || !Has(cat) {
		return -1
	}
	return min(s.Guide-1, len(steps))
}

// Advance goes on past each step that is done, given what the page was asked
// for last. It reports whether it went on, and whether the unit was just begun,
// so that what the county always has is to be put in.
func Advance(s *session.View, d *quote.Draft, cat *config.Catalogue, asked func(act string) bool) (moved, began bool) {
	for i := next(s, cat); i >= 0 && i < len(steps) && steps[i].done(s, d, asked); i = next(s, cat) {
		s.Guide++
		if moved = true; steps[i].chassis != "" {
			return moved, true
		}
	}
	return moved, false
}

func (x *step) done(s *session.View, d *quote.Draft, asked func(act string) bool) bool {
	pick := d.Unit.Find(x.option)
	switch {
	case x.open != "":
		return s.Area == x.open
	case x.act != "":
		return asked(x.act)
	case x.paid:
		return d.Terms.DepositPercent.Sign() > 0 || d.Terms.DepositAmount.Sign() > 0 || d.Terms.Budget.Sign() > 0
	case x.chassis != "":
		return d.Unit.Chassis == x.chassis
	case x.try && s.Asked == x.option:
		return true
	}
	return pick != nil && !pick.Filled
}

// GoThere takes the reader to where the next step is done, and gives the id of
// the control, or of what to look at first when look is set; empty where the
// area itself is what was asked for.
func GoThere(s *session.View, cat *config.Catalogue, look bool) string {
	i := next(s, cat)
	if i < 0 || i == len(steps) {
		return ""
	}
	x := &steps[i]
	if look {
		return x.see
	}
	if s.Area = x.area; x.open != "" {
		s.Area = x.open
	}
	if o := cat.OptionByID(x.option); o != nil {
		s.Chapter, s.Search = cat.GroupByID(o.Group).Chapter, ""
		if !x.try && x.target != "" {
			s.Asked = o.ID
		}
	}
	return x.control()
}

// control of the step once the reader is where it stands.
func (x *step) control() string {
	switch {
	case x.open != "":
		return ""
	case x.target != "":
		return x.target
	case x.chassis != "":
		return "begin-" + x.chassis
	}
	return "o-" + x.option
}

// Point is the id of what the reader presses next: the control itself or, from
// elsewhere, what leads to it.
func (p *Page) Point() string {
	cat := p.Q.Edition.Cat
	i := next(p.View, cat)
	if i < 0 || i == len(steps) {
		return ""
	}
	x := &steps[i]
	here := p.Area
	if x.open != "" || here != x.area {
		return "area-" + x.open + x.area
	}
	if o := cat.OptionByID(x.option); o != nil {
		if chapter := cat.GroupByID(o.Group).Chapter; p.View.ChapterIn(cat) != chapter {
			return "chapter-" + chapter
		}
		if p.View.Asked != o.ID { // whose ways out are not shown
			return "o-" + o.ID
		}
	}
	return x.control()
}

// Pointed marks the control of the next step, for the eye and in words.
func Pointed(html, id string) string {
	if id == "" {
		return html
	}
	id = ` id="` + id + `"`
	return strings.Replace(html, id, id+` data-next aria-description="Next step of the guided quote"`, 1)
}

// fill puts names and figures into the text of a step.
func (p *Page) fill(x *step, text string) string {
	cat, chapter, front, miss := p.Q.Edition.Cat, "", "", ""
	if o := cat.OptionByID(x.option); o != nil {
		for _, c := range cat.Chapters {
			if c.ID == cat.GroupByID(o.Group).Chapter {
				chapter = c.Label
			}
		}
	}
	if f, ok := p.Q.Figure("weight.front-axle"); ok {
		front = p.Show(f.Margin(), f.Unit)
		if miss = page.Chance(f); miss != "" {
			miss = ", " + miss
		}
	}
	return strings.NewReplacer("{it}", cat.LabelOf(x.chassis+x.option), "{chapter}", chapter, "{front}", front,
		"{miss}", miss,
		"{even}", p.Q.Plan.EvenOdds.Long(), "{nine}", p.Q.Plan.NineInTen.Long()).Replace(text)
}

// Instruction is what to do next.
func (p *Page) Instruction() string {
	i := next(p.View, p.Q.Edition.Cat)
	if i == len(steps) {
		return "That is a quote, from chassis to paper."
	}
	x := &steps[i]
	return strconv.Itoa(i+1) + " of " + strconv.Itoa(len(steps)) + ": " + p.fill(x, x.do)
}

// Strip is the strip that says what to do next, above whatever area is open.
func Strip(p *Page) Part {
	i := next(p.View, p.Q.Edition.Cat)
	if i < 0 {
		return nil
	}
	strip := func(do, because string, tools ...Part) Part {
		return El("section", Class("guide screen"), At("id", "guide"), At("tabindex", "-1"),
			At("aria-label", "Guided quote"),
			El("p", El("b", Text(do))), El("p", Class("small"), Text(because)), El("div", Class("row-tools"),
				Many(tools...)))
	}
	press := func(id, label, class string) Part {
		said := map[string]string{"skip": "Skip this step", "end": "End the guide"}[id]
		return page.Action("guide", id, "", label, At("id", "guide-"+id), Class(class),
			If(said != "" && i < len(steps), At("aria-label", said)))
	}
	if i == len(steps) {
		stays := map[bool]string{true: "It stays in this browser. "}[p.Kept]
		return strip(p.Instruction(), stays+"A “?” beside a figure tells what it means.",
			page.Action("fresh-kept", "", "", "Begin a quote of your own", At("id", "guide-own"), Class("main")),
			press("end", "Close", ""))
	}
	x := &steps[i]
	label := "Take me there"
	if x.open != "" {
		label = "Open " + strings.ToUpper(x.open[:1]) + x.open[1:]
	}
	return strip(p.Instruction(), p.fill(x, x.because),
		If(x.see != "" && p.View.Area == steps[i-1].open, press("see", "Show it", "")), press("go", label, "main"),
		press("skip", "Skip", "quiet"), press("end", "End", "quiet"))
}

// Offer asks a newcomer who has done nothing yet; guideAgain offers the
// same later, where it is in nobody's way.
func Offer(p *Page) Part {
	if p.View.Guide > 0 || p.View.GuideOff || !p.Untouched() || !Has(p.Q.Edition.Cat) {
		return nil
	}
	return El("section", Class("guide screen"), At("id", "guide-offer"), At("aria-label", "For a newcomer"),
		El("p", El("b", Text("New here? ")), Text("Build one real quote on this page, in "+strconv.Itoa(len(steps))+
			" steps. It stays apart from yours.")),
		El("div", Class("row-tools"), page.Action("guide", "start", "", "Show me: a county ambulance in two minutes",
			At("id", "guide-start"), Class("main")),
			page.Action("guide", "end", "", "No, thank you", At("id", "guide-no"), Class("quiet"))))
}

// Again offers the guided quote to whoever declined or ended it.
func Again(p *Page) Part {
	s := p.View
	if !Has(p.Q.Edition.Cat) || s.Guide > 0 && !s.GuideOff {
		return nil
	}
	return El("p", Class("row-tools screen"),
		If(s.Guide > 0 && s.Guide <= len(steps), page.Action("guide", "on", "", "Go on with the guided quote",
			At("id", "guide-on"))),
		page.Action("guide", "start", "", "A county ambulance in two minutes, step by step", At("id", "guide-again"),
			Class("quiet")))
}

// Untouched reports whether nothing of the reader's own is in the quote yet.
func (p *Page) Untouched() bool { return p.Undo == 0 && Untouched(p.Q.Draft) }

// Untouched reports whether a draft is as it was begun.
func Untouched(d *quote.Draft) bool {
	for _, x := range d.Unit.Picks {
		if !x.Filled {
			return false
		}
	}
	return d.Title+d.Number+d.Notes+d.Buyer.Name+d.Issued == "" && len(d.Unit.Carried)+len(d.Tickets)+
		len(d.Requirements)+len(d.More) == 0
}
