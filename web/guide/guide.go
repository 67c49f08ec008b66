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

// Has reports whether the catalogue has a guided quote.
func Has(cat *config.Catalogue) bool { return cat.Guide != nil }

// next is the step that is to be shown: the place among steps, their number when all
// are done, below zero when there is no guide.
func next(s *session.View, cat *config.Catalogue) int {
	if s.Guide < 1 || s.GuideOff || !Has(cat) {
		return -1
	}
	return min(s.Guide-1, len(cat.Guide.Steps))
}

// Advance goes on past each step that is done, given what the page was asked
// for last. It reports whether it went on, and whether the unit was just begun,
// so that what the buyer always has is to be put in.
func Advance(s *session.View, d *quote.Draft, cat *config.Catalogue, asked func(act string) bool) (moved, began bool) {
	for i := next(s, cat); i >= 0 && i < len(cat.Guide.Steps) &&
		done(&cat.Guide.Steps[i], s, d, asked); i = next(s, cat) {
		s.Guide++
		if moved = true; cat.Guide.Steps[i].Begin != "" {
			return moved, true
		}
	}
	return moved, false
}

// done reports whether the quote shows that a step was done.
func done(x *config.GuideStep, s *session.View, d *quote.Draft, asked func(act string) bool) bool {
	chosen := func(id string) bool {
		pick := d.Unit.Find(id)
		return pick != nil && !pick.Filled
	}
	switch {
	case x.Open != "":
		return s.Area == x.Open
	case x.Press != "":
		return asked(x.Press)
	case x.Deposit:
		return d.Terms.DepositPercent.Sign() > 0 || d.Terms.DepositAmount.Sign() > 0
	case x.Ask != "":
		return s.Asked == x.Ask || chosen(x.Ask)
	case x.Pick != "":
		return chosen(x.Pick)
	}
	return d.Unit.Chassis == x.Begin+x.Chassis
}

// areaOf is where a step is done.
func areaOf(x *config.GuideStep) string {
	switch {
	case x.Open != "":
		return x.Open
	case x.Begin != "":
		return "start"
	case x.Deposit:
		return "price"
	case x.Press != "":
		return "quote"
	}
	return "unit"
}

// chapterOf is where in the Unit area a step is done; empty elsewhere.
func chapterOf(x *config.GuideStep, cat *config.Catalogue) string {
	if o := cat.OptionByID(x.Pick + x.Ask); o != nil {
		return cat.GroupByID(o.Group).Chapter
	}
	if x.Chassis != "" {
		return "chassis"
	}
	return ""
}

// control of a step once the reader is where it stands; empty where the area itself
// is what is asked for.
func control(x *config.GuideStep) string {
	switch {
	case x.Open != "":
		return ""
	case x.Deposit:
		return "f-terms.deposit_percent"
	case x.Press == "print":
		return "print-quote"
	case x.Press != "":
		return x.Press
	case x.Begin != "":
		return "begin-" + x.Begin
	}
	return "o-" + x.Pick + x.Ask + x.Chassis
}

// GoThere takes the reader to where the next step is done, and gives the id of
// the control, or of what to look at first when look is set; empty where the
// area itself is what was asked for.
func GoThere(s *session.View, cat *config.Catalogue, look bool) string {
	i := next(s, cat)
	if i < 0 || i == len(cat.Guide.Steps) {
		return ""
	}
	x := &cat.Guide.Steps[i]
	if look {
		return lookAt(x)
	}
	s.Area = areaOf(x)
	if chapter := chapterOf(x, cat); chapter != "" {
		s.Chapter, s.Search = chapter, ""
	}
	return control(x)
}

// lookAt is the id of what a step asks to look at first; empty when nothing.
func lookAt(x *config.GuideStep) string {
	if x.Look == "" {
		return ""
	}
	return "ask-" + x.Look
}

// Point is the id of what the reader presses next: the control itself or, from
// elsewhere, what leads to it.
func (p *Page) Point() string {
	cat := p.Q.Edition.Cat
	i := next(p.View, cat)
	if i < 0 || i == len(cat.Guide.Steps) {
		return ""
	}
	x := &cat.Guide.Steps[i]
	if x.Open != "" || p.Area != areaOf(x) {
		return "area-" + areaOf(x)
	}
	if chapter := chapterOf(x, cat); chapter != "" && p.View.ChapterIn(cat) != chapter {
		return "chapter-" + chapter
	}
	return control(x)
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
func (p *Page) fill(x *config.GuideStep, text string) string {
	cat := p.Q.Edition.Cat
	chapter := ""
	for _, c := range cat.Chapters {
		if c.ID == chapterOf(x, cat) {
			chapter = c.Label
		}
	}
	if x.Chassis != "" {
		chapter = "Chassis"
	}
	spare := func(code string) string {
		f, ok := p.Q.Figure(code)
		if !ok {
			return ""
		}
		said := p.Show(f.Margin(), f.Unit)
		if miss := page.Chance(f); miss != "" {
			said += " (" + miss + ")"
		}
		return said
	}
	return strings.NewReplacer("{it}", cat.LabelOf(x.Begin+x.Chassis+x.Pick+x.Ask), "{chapter}", chapter,
		"{front}", spare("weight.front-axle"), "{rear}", spare("weight.rear-axle"),
		"{even}", p.Q.Plan.EvenOdds.Long(), "{nine}", p.Q.Plan.NineInTen.Long()).Replace(text)
}

// Instruction is what to do next.
func (p *Page) Instruction() string {
	steps := p.Q.Edition.Cat.Guide.Steps
	i := next(p.View, p.Q.Edition.Cat)
	if i == len(steps) {
		return "That is a quote, from chassis to paper."
	}
	return strconv.Itoa(i+1) + " of " + strconv.Itoa(len(steps)) + ": " + p.fill(&steps[i], steps[i].Do)
}

// Strip is the strip that says what to do next, above whatever area is open.
func Strip(p *Page) Part {
	i := next(p.View, p.Q.Edition.Cat)
	if i < 0 {
		return nil
	}
	steps := p.Q.Edition.Cat.Guide.Steps
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
		stays := page.Either(p.Kept, "It stays on this device. ", "")
		return strip(p.Instruction(), stays+"A “?” beside a figure tells what it means.",
			page.Action("fresh-kept", "", "", "Begin a quote of your own", At("id", "guide-own"), Class("main")),
			press("end", "Close", ""))
	}
	x := &steps[i]
	label := "Take me there"
	if x.Open != "" {
		label = "Open " + page.Capital(x.Open)
	}
	told := p.View.Told
	return strip(p.Instruction(), p.fill(x, x.Because),
		When(told != nil && told.Area == p.View.Area && len(told.Changes) > 0, func() Part {
			return press("told", "See what else changed ("+strconv.Itoa(len(told.Changes))+")", "")
		}),
		If(x.Look != "" && i > 0 && p.View.Area == steps[i-1].Open, press("see", "Show it", "")), press("go", label,
			"main"),
		press("skip", "Skip", "quiet"), press("end", "End", "quiet"))
}

// Offer asks a newcomer who has done nothing yet; Again offers the same later, where it is
// in nobody's way.
func Offer(p *Page) Part {
	if p.View.Guide > 0 || p.View.GuideOff || !p.Untouched() || !Has(p.Q.Edition.Cat) {
		return nil
	}
	return El("section", Class("guide screen"), At("id", "guide-offer"), At("aria-label", "For a newcomer"),
		El("p", El("b", Text("New here? ")),
			Text("Build one real quote on this page, in "+strconv.Itoa(len(p.Q.Edition.Cat.Guide.Steps))+
				" steps. It stays apart from yours.")),
		El("div", Class("row-tools"), page.Action("guide", "start", "", "Show me: "+p.Q.Edition.Cat.Guide.Offer,
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
		If(s.Guide > 0 && s.Guide <= len(p.Q.Edition.Cat.Guide.Steps),
			page.Action("guide", "on", "", "Go on with the guided quote",
				At("id", "guide-on"))),
		page.Action("guide", "start", "", "Step by step: "+p.Q.Edition.Cat.Guide.Offer, At("id", "guide-again"),
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
