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

// specification says what the buyer gets, in sentences, chapter by chapter.
func specification(p *Page) Part {
	cat := p.Q.Edition.Cat
	out := []Part{Class("two-up"), specified(p.Q.Chassis.Label, p.Q.Chassis.Spec),
		specified(p.Q.Body.Label, p.Q.Body.Spec), remountWords(p), photos(p)}
	for _, ch := range cat.Chapters {
		if items := sentences(p, ch.ID); items != nil {
			out = append(out, numbered("h3", p.Q.ChapterHeading(ch), ""), Each(items, spoken))
		}
	}
	if carried := carriedWords(p); carried != nil {
		out = append(out, El("h3", Text("Loose equipment counted in the weights")), Each(carried, spoken))
	}
	return Many(numbered("h2", quote.SpecificationSection.Heading(), ""),
		If(len(p.Q.Draft.More) > 0, El("p", Class("how lead-in"), Text("From here to the work day by day, all is said of "+
			p.Q.NameOf(0)+"; what the others have otherwise follows."))),
		El("div", out...))
}

// specifiedApart is the specification of another unit of the quote: what it has otherwise than
// the first one.
func specifiedApart(p *Page, first *Page) Part {
	cat := p.Q.Edition.Cat
	heading := El("h3", Text(string(quote.SpecificationSection)))
	out := []Part{Class("two-up")}
	if p.Q.Chassis.ID != first.Q.Chassis.ID {
		out = append(out, specified(p.Q.Chassis.Label, p.Q.Chassis.Spec))
	}
	if p.Q.Body.ID != first.Q.Body.ID || p.Q.Remount() {
		out = append(out, specified(p.Q.Body.Label, p.Q.Body.Spec), remountWords(p), photos(p))
	}
	var without []string
	apart := func(head string, own, other []sentence) {
		var more []sentence
		for _, x := range own {
			if !slices.Contains(other, x) {
				more = append(more, x)
			}
		}
		for _, x := range other {
			if !slices.ContainsFunc(own, func(o sentence) bool { return o.name == x.name }) {
				without = append(without, x.name)
			}
		}
		if more != nil {
			out = append(out, El("h4", Text(head)), Each(more, spoken))
		}
	}
	for _, ch := range cat.Chapters {
		apart(ch.Label, sentences(p, ch.ID), sentences(first, ch.ID))
	}
	apart("Loose equipment counted in the weights", carriedWords(p), carriedWords(first))
	if len(out) == 1 && without == nil {
		return Many(heading, El("p", Text("As "+first.Q.NameOf(0)+".")))
	}
	return Many(heading, El("p", Class("lead-in"), Text("As "+first.Q.NameOf(0)+", but for:")), El("div", out...),
		If(without != nil, El("p", Class("small"), El("b", Text("Without: ")), Text(strings.Join(without, "; ")+"."))))
}

// sentence is a thing of a specification, and what the customer said to it.
type sentence struct{ name, text, told string }

func spoken(_ int, s sentence) Part { return El("p", once(s.name, s.text), told(s.told)) }

func specified(name, text string) Part { return El("p", El("b", Text(name+". ")), Text(text)) }

// sentences of a chapter.
func sentences(p *Page, chapter string) (out []sentence) {
	cat := p.Q.Edition.Cat
	for _, x := range cat.Chosen(&p.Q.Draft.Unit, chapter) {
		o := x.Option
		if !quote.Specified(o) {
			continue
		}
		name := o.Label
		if x.Qty > 1 {
			name += " × " + quantity.Group(float64(x.Qty), 0)
		}
		out = append(out, sentence{name, cat.Sentences(o), p.Q.Told(o)})
	}
	return out
}

func carriedWords(p *Page) (out []sentence) {
	for _, l := range quote.LoadsOf(p.Q.Edition.Cat, &p.Q.Draft.Unit) {
		name := quantity.Group(float64(l.Qty), 0) + " × " + l.Label
		out = append(out, sentence{name: name, text: strings.TrimSuffix(name+", "+l.Where, ", ")})
	}
	return out
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

// told prints the customer's detail text, after the sentence of the option.
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
	return El("p", El("b", Text("The existing module. ")), Text(strings.Join(said, "; ")+"."))
}

// photos are those that the plant wants before it takes an old module on.
func photos(p *Page) Part {
	list := p.Q.Body.Photos
	return If(list != nil, El("p", El("b", Text("Photographs wanted for the appraisal. ")),
		Text(strings.Join(list, "; ")+".")))
}
