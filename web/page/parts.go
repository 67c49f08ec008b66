package page

import (
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	. "boxwright/web/page/markup"
)

// Bold is a text in bold.
func Bold(text string) Part { return El("b", Text(text)) }

// FileButton is a button that takes files for an act.
func FileButton(id, do, label, accept string, parts ...Part) Part {
	return Many(El("label", Class("button"), At("for", id), Text(label)),
		El("input", Class("hidden-text"), At("type", "file"), At("id", id), At("accept", accept), At("data-act", do),
			Many(parts...)))
}

// EditionLine names an edition of the catalogue and what it holds.
func EditionLine(ed *quote.Edition) Part {
	c := ed.Cat
	return Many(
		El("p", Bold(c.Title), Text(", edition "+c.Edition+", valid from "+c.ValidFrom.Long()+".")),
		El("p", Class("how"), Text("Content "+c.Hash()[:16]+" · "+Count(len(c.Options), "option", "options")+" · "+
			Count(len(c.Rules), "rule", "rules")+" · "+Count(len(c.Signers), "signer", "signers"))))
}

// Bare is an input in a table, named for those who do not see the heads.
func Bare(p *Page, id, kind, value, name string) Part {
	if typed, wrong := p.Typed[id]; wrong {
		value = typed
	}
	mode, class := kind, ""
	if kind == "count" {
		mode, class = "text", "qty"
	}
	return Many(El("input", Class(class), At("type", mode), At("id", "f-"+id), At("data-act", "set"), At("data-id", id),
		At("value", value), At("aria-label", name), At("autocomplete", "off"), If(kind == "count",
			At("inputmode", "numeric")), Describe(p, id, "")),
		If(p.Wrong[id] != "", El("p", Class("wrong"), At("id", "w-"+id), Text(p.Wrong[id]))))
}

// Heading is an area's name with one sentence that says what it answers.
func Heading(title, lead string) Part {
	return Many(
		El("div", Class("area-head"), El("h1", Text(title))),
		El("p", Class("lead"), Text(lead)),
	)
}

// Block is a framed part of an area.
func Block(title string, parts ...Part) Part {
	return El("section", Class("block"), El("h2", Text(title)), Many(parts...))
}

// Action is a button that asks the core to do something.
func Action(do, id, value, label string, parts ...Part) Part {
	return El("button", At("type", "button"), At("data-act", do), At("data-id", id), At("data-value", value),
		Many(parts...), Text(label))
}

// Named are the words on a button, and what they are about for those who do not see where
// it stands.
func Named(words, of string) Part {
	return Many(Text(words), El("span", Class("hidden-text"), Text(" "+of)))
}

// InRow makes one button of a row the stop of the Tab key; arrows lead to the others.
func InRow(stop bool) Part { return If(!stop, At("tabindex", "-1")) }

// Field is a labeled text input. What was typed and could not be taken stays
// in it, with the reason beneath.
func Field(p *Page, id, label, value, hint string, parts ...Part) Part {
	if typed, wrong := p.Typed[id]; wrong {
		value = typed
	}
	return fieldFrame(p, id, label, hint,
		El("input", At("type", "text"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), At("value", value),
			At("autocomplete", "off"), Describe(p, id, hint), Many(parts...)))
}

// Number is a field for a number in a unit.
func Number(p *Page, id, label, value, unit, hint string) Part {
	if typed, wrong := p.Typed[id]; wrong {
		value = typed
	}
	return fieldFrame(p, id, label, hint, El("div", Class("with-unit"),
		El("input", At("type", "text"), At("inputmode", "decimal"), At("id", "f-"+id), At("data-act", "set"),
			At("data-id", id), At("value", value), At("autocomplete", "off"), describe(p, id, unit, hint)),
		If(unit != "", El("span", At("id", "u-"+id), Text(unit)))))
}

// Day is a field for a date.
func Day(p *Page, id, label string, value config.Date, hint string) Part {
	text := value.String()
	if typed, wrong := p.Typed[id]; wrong {
		text = typed
	}
	return fieldFrame(p, id, label, hint,
		El("input", At("type", "date"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id),
			At("value", text), At("max", "9999-12-31"), // else years of six digits can be typed
			Describe(p, id, hint)))
}

// OrderDay takes the day the order is placed, and asks about one that has passed.
func OrderDay(p *Page, hint string) Part {
	on := p.Q.Draft.Unit.OrderOn
	return El("div", Day(p, "unit.order_on", "Order placed on", on, hint),
		When(on.Before(p.FirstOrder()), func() Part {
			return El("div", At("id", "order-passed"),
				El("p", Mark(config.Warn), Text(" "+on.Long()+" has passed. Was the order placed then?")),
				Action("order-now", "", "", "Count from "+p.FirstOrder().Short(), Class("quiet"),
					At("id", "order-now")))
		}))
}

// Choice is one value and its words.
type Choice [2]string

// Choose is a labeled list to choose from.
func Choose(p *Page, id, label, value, hint string, choices []Choice) Part {
	return fieldFrame(p, id, label, hint, El("select", At("id", "f-"+id), At("data-act", "set"), At("data-id", id),
		Describe(p, id, hint), Options(value, choices)))
}

// Options are the choices of a list, the chosen one selected.
func Options(value string, choices []Choice) Part {
	return Each(choices, func(_ int, c Choice) Part {
		return El("option", At("value", c[0]), Flag("selected", c[0] == value), Text(c[1]))
	})
}

// TextField is a field of several lines.
func TextField(p *Page, id, label, value, hint string) Part {
	return textField(p, id, label, value, hint, "3")
}

// LongField is a field of one line that is wrapped where it is long; events.js takes Enter there.
func LongField(p *Page, id, label, value, hint string) Part {
	return textField(p, id, label, value, hint, "1")
}

func textField(p *Page, id, label, value, hint, rows string) Part {
	if typed, wrong := p.Typed[id]; wrong {
		value = typed
	}
	return fieldFrame(p, id, label, hint, El("textarea", At("id", "f-"+id), At("rows", rows), At("data-act", "set"),
		At("data-id", id), Describe(p, id, hint), Text(value)))
}

func fieldFrame(p *Page, id, label, hint string, control Part) Part {
	wrong := p.Wrong[id]
	return El("div", Class("field"),
		El("label", At("for", "f-"+id), Text(label)), help(p, id),
		control,
		If(wrong != "", El("p", Class("wrong"), At("id", "w-"+id), Text(wrong))),
		If(hint != "", El("p", Class("hint"), At("id", "h-"+id), Text(hint))),
	)
}

// Describe ties hint and fault to the control for those who listen.
func Describe(p *Page, id, hint string) Part { return describe(p, id, "", hint) }

// describe does so with the unit that stands behind a number.
func describe(p *Page, id, unit, hint string) Part {
	wrong := p.Wrong[id]
	var ids []string
	for _, x := range [][2]string{{"w-", wrong}, {"u-", unit}, {"h-", hint}} {
		if x[1] != "" {
			ids = append(ids, x[0]+id)
		}
	}
	return Many(If(ids != nil, At("aria-describedby", strings.Join(ids, " "))), If(wrong != "", At("aria-invalid", "true")))
}

// Group is a group of fields by its name for those who listen: several groups have a field of the
// same label.
func Group(name string) Part { return Many(At("role", "group"), At("aria-label", name)) }

// Passphrase is a field for one, which is never kept.
func Passphrase(id, label, hint string) Part {
	return El("div", Class("fields"), El("div", Class("field"), El("label", At("for", id), Text(label)),
		El("input", At("type", "password"), At("id", id), At("autocomplete", "off"), At("aria-describedby", id+"-hint")),
		El("p", Class("hint"), At("id", id+"-hint"), Text(hint))))
}

// Check is a box to tick with its label.
func Check(p *Page, id, label string, checked bool) Part {
	return El("div", Class("field"), El("label", At("for", "f-"+id),
		El("input", At("type", "checkbox"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id),
			Flag("checked", checked)), Text(" "+label)), help(p, id))
}

// Fold is a part of an area that opens at a press.
func Fold(id, title string, parts ...Part) Part {
	return El("details", Class("block"), At("id", "fold-"+id), Summary("h2", title), Many(parts...))
}

// Inner is a fold in a part of an area.
func Inner(id, title string, parts ...Part) Part {
	return El("details", At("id", "fold-"+id), Summary("h3", title), Many(parts...))
}

// Summary names a fold by a heading, for who moves by those: "h2" in an area, "h3" in a part of one.
func Summary(level, title string, more ...Part) Part {
	return El("summary", El(level, Text(title)), Many(more...))
}

// Cautions lists sentences to be read before relying on an area.
func Cautions(list ...string) Part {
	return El("ul", Class("caution"), Each(list, func(_ int, c string) Part { return El("li", Text(c)) }))
}

// Either is the first of two texts where something holds, and the other where it does not.
func Either(first bool, text, other string) string {
	if first {
		return text
	}
	return other
}
