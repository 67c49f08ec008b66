// Package page is what every area is drawn with: fields, tables, figures and the
// frame around the area, as HTML and SVG for the screen and for paper. It decides
// nothing: every number and every word of judgment comes from the packages below.
package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	. "boxwright/web/page/markup"
)

// Page is what every area is drawn with: the quote, how the reader likes to read,
// and what was typed.
type Page struct {
	Q        *quote.Quote
	Today    config.Date       // as the browser has it; zero when it is not known
	Area     string            // id of the one shown
	Answer   string            // what the area has just found out, to be read out; set when it is drawn
	Metric   bool              // otherwise US units
	Reading  bool              // the quote is read as it was sent: nothing that edits it is drawn
	Typed    map[string]string // text in a field that could not be taken
	Wrong    map[string]string // and why, by field
	Glossary []*Term           // of all areas
	Rows     *Rows             // rows drawn before, when some are kept
	Span     float64           // least width of a side view, in, so that several have one scale
}

// Subject is what the page is about.
func Subject(p *Page) string {
	t := cmp.Or(letters.Isolate(p.Q.Draft.Title), p.Q.Edition.Cat.LabelOf(p.Q.Draft.Unit.Chassis))
	if p.Q.Remount() {
		return "Remount: " + t
	}
	return t
}

// FirstOrder is the first day that an order may be advised for: today, or the day the
// quote is dated where that is later.
func (p *Page) FirstOrder() config.Date { return p.Q.Draft.FirstOrder(p.Today) }

// System is how the reader wants numbers shown.
func (p *Page) System() quantity.System { return quantity.System(p.Metric) }

// Show formats a number held in unit.
func (p *Page) Show(v float64, unit string) string { return p.System().Show(v, unit) }

// Plain is show without the unit's name, for a field that names it beside.
func (p *Page) Plain(v float64, unit string) string {
	text := p.Show(v, unit)
	return strings.TrimSuffix(text, " "+p.UnitName(unit))
}

// UnitName is how the reader's system calls the unit.
func (p *Page) UnitName(unit string) string {
	_, name, _ := strings.Cut(p.Show(1, unit), " ")
	return name
}

// Signed is show with a plus in front of what is not negative.
func (p *Page) Signed(v float64, unit string) string {
	if v >= 0 {
		return "+" + p.Show(v, unit)
	}
	return p.Show(v, unit)
}

// worst severity among findings whose code begins with one of the prefixes.
func worst(findings []config.Finding, prefixes []string) config.Severity {
	var top config.Severity
	for _, f := range findings {
		for _, prefix := range prefixes {
			if len(f.Code) > len(prefix) && f.Code[:len(prefix)] == prefix && f.Severity.Rank() > top.Rank() {
				top = f.Severity
			}
		}
	}
	return top
}

// Mark shows a severity as a shape with a word for those who do not see it.
func Mark(s config.Severity) Part {
	shape, class, word := "●", "ok", "OK"
	switch s {
	case config.Stop:
		shape, class, word = "■", "stop", "must fix"
	case config.Warn:
		shape, class, word = "▲", "warn", "check"
	case config.Note:
		shape, class, word = "○", "note", "for your information"
	}
	return El("span", Class("mark", class),
		El("span", At("aria-hidden", "true"), Text(shape)),
		El("span", Class("hidden-text"), Text(word)))
}

// Unmarked stands where a mark would, of what nothing was asked of.
func Unmarked() Part { return El("span", Class("mark")) }

// MarkIf is "OK" where something was asked.
func MarkIf(asked bool) Part {
	if asked {
		return Mark("")
	}
	return Unmarked()
}

// Count writes a number with its noun.
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return quantity.Group(float64(n), 0) + " " + many
}

// Working stands where something is shown a moment later.
func Working() Part { return El("p", Class("soft"), Text("Working it out …")) }

// Reading says how far a list of so many lines is read.
func Reading(read, all int) Part {
	if read == 0 || read == all {
		return El("p", Class("soft"), Text("Answering "+Count(all, "line", "lines")+" …"))
	}
	return El("p", Class("soft"), El("progress", At("value", strconv.Itoa(read)), At("max", strconv.Itoa(all)),
		At("aria-label", "Lines read")), Text(" Read "+Whole(read)+" of "+Count(all, "line", "lines")+" …"))
}

// remountOnly marks options that make sense only on a module that exists.
const remountOnly = "remount"

// Shown leaves out what this kind of unit can never be asked about; what is in
// the unit is always shown.
func (p *Page) Shown(o *config.Option) bool {
	if p.Q.Draft.Unit.Has(o.ID) {
		return !slices.Contains(o.Tags, config.NoneByDuty) || len(p.Q.Edition.Cat.Duties) == 0
	}
	return (p.Q.Body.Existing || !slices.Contains(o.Tags, remountOnly)) &&
		!slices.Contains(o.Tags, config.NoneByDuty) &&
		p.Q.Edition.Cat.Offers(p.Q.OfDuty, o.Group)
}
