package quote

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// specification says what the buyer gets, in sentences, chapter by chapter; lead, where
// other papers lead to its headings.
func specification(p *Page, lead bool) Part {
	cat := p.Q.Edition.Cat
	spec := func(name, text string) Part { return El("p", El("b", Text(name+". ")), Text(text)) }
	heading := func(level, text string) Part { return El(level, Text(text)) }
	if lead {
		heading = func(level, text string) Part { return numbered(level, text, "") }
	}
	out := []Part{Class("two-up"), spec(p.Q.Chassis.Label, p.Q.Chassis.Spec), spec(p.Q.Body.Label, p.Q.Body.Spec),
		remountWords(p)}
	for _, ch := range cat.Chapters {
		var items []Part
		for _, x := range cat.Chosen(&p.Q.Draft.Unit, ch.ID) {
			o := x.Option
			if !quote.Specified(o) {
				continue
			}
			name := o.Label
			if x.Qty > 1 {
				name += " × " + quantity.Group(float64(x.Qty), 0)
			}
			items = append(items, El("p", once(name, o.Spec), told(p.Q.Told(o))))
		}
		if items != nil {
			out = append(out, heading("h3", p.Q.ChapterHeading(ch)), Many(items...))
		}
	}
	var carried []Part
	for _, l := range quote.LoadsOf(cat, &p.Q.Draft.Unit) {
		carried = append(carried, El("p", Text(quantity.Group(float64(l.Qty), 0)+" × "+l.Label+", "+l.Where)))
	}
	if carried != nil {
		out = append(out, El("h3", Text("Loose equipment counted in the weights")), Many(carried...))
	}
	return Many(heading("h2", quote.SpecificationSection.Heading()), El("div", out...))
}

// once is a name with its sentence, less what the sentence only says again: "No rub rail.
// Lower body without rub rail." is "No rub rail."
func once(name, text string) Part {
	said := wordsOf(name)
	news := slices.DeleteFunc(wordsOf(text), func(w string) bool {
		return slices.Contains(said, w) || slices.Contains(fillers, w)
	})
	if len(news) == 0 {
		return El("b", Text(name+"."))
	}
	if rest, again := strings.CutPrefix(text, name); again {
		return Many(El("b", Text(name)), Text(rest))
	}
	return Many(El("b", Text(name+". ")), Text(text))
}

// fillers are words that say nothing of their own beside a name.
var fillers = []string{"lower", "body", "witho", "the", "and", "with", "has", "stays", "carri", "modul", "is", "no",
	"of", "a"}

// wordsOf a text, the first five letters of each, so that one word in two forms is one.
func wordsOf(text string) []string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	for i, w := range words {
		if len(w) > 5 {
			words[i] = w[:5]
		}
	}
	return words
}

// leftOut names what the plant fits as standard and the unit goes without.
func leftOut(p *Page) Part {
	list := p.Q.LeftOut()
	if list == nil {
		return nil
	}
	return Many(El("h3", Text("Standard, and not in this unit")), El("div", Class("two-up"),
		Each(list, func(_ int, x quote.Missing) Part {
			return El("p", El("b", Text(x.Label+".")), If(x.Instead != "", Text(" In its place: "+x.Instead+".")))
		})))
}

// told prints what was said to an option behind its sentence.
func told(text string) Part { return If(text != "", El("b", Text(" "+text+"."))) }

// remountWords describes the existing module in the specification.
func remountWords(p *Page) Part {
	e := p.Q.Draft.Unit.Existing
	if !p.Q.Remount() || e == nil {
		return nil
	}
	b := p.Q.Body
	var said []string
	add := func(text string) { said = append(said, text) }
	if e.Maker != "" {
		add(e.Maker)
	}
	if e.Built != 0 {
		add("built " + strconv.Itoa(e.Built))
	}
	inch := func(v quantity.Length) string { return p.Show(float64(v), quantity.Inch) }
	add(inch(b.LengthIn) + " long, " + inch(b.WidthIn) + " wide, " + inch(b.HeightIn) + " high, headroom " +
		inch(b.HeadroomIn))
	weighed := p.Show(float64(b.Mass.Lb), quantity.Pound)
	switch {
	case e.MassLb == 0:
		weighed += " estimated, not yet weighed"
	case e.Weighed != "":
		weighed += " weighed (" + e.Weighed + ")"
	default:
		weighed += " weighed"
	}
	add(weighed)
	if years, bought := p.Q.Structure(); bought {
		add("its structure warranted for " + page.Count(years, "year", "years") + " from delivery")
	} else if e.WarrantyYears != nil {
		add(page.Count(years, "year", "years") + " of structural warranty left")
	}
	if e.Notes != "" {
		add(e.Notes)
	}
	photos := p.Q.Body.Photos
	return Many(El("p", El("b", Text("The existing module. ")), Text(strings.Join(said, "; ")+".")),
		If(photos != nil, El("p", El("b", Text("Photographs wanted for the appraisal. ")),
			Text(strings.Join(photos, "; ")+"."))))
}
