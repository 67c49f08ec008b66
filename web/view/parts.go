package view

import (
	"strconv"
	"strings"

	"boxwright/config"
	. "boxwright/web/view/markup" // the whole package is written in its words
)

// heading of an area with one sentence that says what it answers, and what its
// words mean.
func heading(title, lead string) Part {
	return Many(
		El("div", Class("area-head"), El("h1", Text(title))),
		El("p", Class("lead"), Text(lead)),
		wordsOf(strings.ToLower(title)),
	)
}

// block is a framed part of an area.
func block(title string, parts ...Part) Part {
	return El("section", Class("block"), El("h2", Text(title)), Many(parts...))
}

// action is a button that asks the core to do something.
func action(do, id, value, label string, parts ...Part) Part {
	return El("button", At("type", "button"), At("data-act", do), At("data-id", id), At("data-value", value), Many(parts...), Text(label))
}

// field is a labelled text input. What was typed and could not be taken stays
// in it, with the reason beneath.
func field(p *Page, id, label, value, hint string, parts ...Part) Part {
	if typed, kept := p.State.Typed[id]; kept {
		value = typed
	}
	return fieldFrame(p, id, label, hint,
		El("input", At("type", "text"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), At("value", value), At("autocomplete", "off"), describe(p, id, hint), Many(parts...)))
}

// number is a field for a number in a unit.
func number(p *Page, id, label, value, unit, hint string) Part {
	if typed, kept := p.State.Typed[id]; kept {
		value = typed
	}
	return fieldFrame(p, id, label, hint, El("div", Class("with-unit"),
		El("input", At("type", "text"), At("inputmode", "decimal"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), At("value", value), At("autocomplete", "off"), describe(p, id, hint)),
		If(unit != "", El("span", Text(unit)))))
}

// day is a field for a date.
func day(p *Page, id, label string, value config.Date, hint string) Part {
	return fieldFrame(p, id, label, hint,
		El("input", At("type", "date"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), At("value", value.String()), describe(p, id, hint)))
}

// choice is one value and its words.
type choice struct{ value, label string }

// choose is a labelled list to choose from.
func choose(p *Page, id, label, value, hint string, choices []choice) Part {
	return fieldFrame(p, id, label, hint, El("select", At("id", "f-"+id), At("data-act", "set"), At("data-id", id), describe(p, id, hint), options(value, choices)))
}

func options(value string, choices []choice) Part {
	return Each(choices, func(_ int, c choice) Part {
		return El("option", At("value", c.value), Flag("selected", c.value == value), Text(c.label))
	})
}

// text is a field of several lines.
func textField(p *Page, id, label, value, hint string) Part {
	if typed, kept := p.State.Typed[id]; kept {
		value = typed
	}
	return fieldFrame(p, id, label, hint, El("textarea", At("id", "f-"+id), At("rows", "3"), At("data-act", "set"), At("data-id", id), describe(p, id, hint), Text(value)))
}

func fieldFrame(p *Page, id, label, hint string, control Part) Part {
	wrong := p.State.Wrong[id]
	return El("div", Class("field"),
		El("label", At("for", "f-"+id), Text(label)), help(id),
		control,
		If(wrong != "", El("p", Class("wrong"), At("id", "w-"+id), Text(wrong))),
		If(hint != "", El("p", Class("hint"), At("id", "h-"+id), Text(hint))),
	)
}

// describe ties hint and fault to the control for those who listen.
func describe(p *Page, id, hint string) Part {
	wrong := p.State.Wrong[id] != ""
	ids := ""
	if wrong {
		ids = "w-" + id
	}
	if hint != "" {
		if ids != "" {
			ids += " "
		}
		ids += "h-" + id
	}
	return Many(If(ids != "", At("aria-describedby", ids)), If(wrong, At("aria-invalid", "true")))
}

// table of rows under heads; a head that begins with ">" is a column of numbers.
// With the class "cards" its rows stand one beneath the other on a narrow screen.
type table struct {
	caption string
	class   string
	heads   []string
	rows    [][]Part
	sums    [][]Part // rows set apart beneath
}

func (t table) draw() Part {
	right, cards := make([]bool, len(t.heads)), strings.Contains(t.class, "cards")
	names := make([]string, len(t.heads))
	heads := make([]Part, 0, len(t.heads))
	for i, h := range t.heads {
		if len(h) > 0 && h[0] == '>' {
			right[i], h = true, h[1:]
		}
		names[i] = h
		if h == "" { // a column of buttons has no name
			heads = append(heads, El("td"))
			continue
		}
		heads = append(heads, El("th", At("scope", "col"), If(right[i], Class("num")), Text(h)))
	}
	row := func(cells []Part, class string) Part {
		tr := []Part{Class(class)}
		for i, c := range cells {
			if i == 0 {
				tr = append(tr, El("th", At("scope", "row"), c))
			} else {
				tr = append(tr, El("td", If(i < len(right) && right[i], Class("num")), If(cards && c != nil && names[i] != "", At("data-head", names[min(i, len(names)-1)])), c))
			}
		}
		return El("tr", tr...)
	}
	return El("div", Class("scroll"), At("tabindex", "0"), At("role", "region"), At("aria-label", t.caption),
		El("table", Class("data", t.class),
			If(t.caption != "", El("caption", Text(t.caption))),
			El("thead", El("tr", heads...)),
			El("tbody",
				Each(t.rows, func(_ int, r []Part) Part { return row(r, "") }),
				Each(t.sums, func(_ int, r []Part) Part { return row(r, "sum") })),
		))
}

// texts makes cells of strings.
func texts(cells ...string) []Part {
	out := make([]Part, len(cells))
	for i, c := range cells {
		out[i] = Text(c)
	}
	return out
}

// findings lists what the checks have to say; ok is said when there is nothing.
func findings(p *Page, list []config.Finding, ok string) Part {
	if len(list) == 0 {
		if ok == "" {
			return nil
		}
		return El("p", mark(""), Text(" "+ok))
	}
	return El("ul", Class("findings"), Each(list, func(_ int, f config.Finding) Part { return finding(p, f) }))
}

func finding(p *Page, f config.Finding) Part {
	words := map[config.Severity]string{config.Stop: "■ Stop", config.Warn: "▲ Decide", config.Note: "Note"}
	basis := ""
	if f.Clause != "" {
		basis = f.Clause
	}
	if f.Basis != "" {
		if basis != "" {
			basis += ", "
		}
		basis += string(f.Basis)
	}
	return El("li", Class(string(f.Severity)),
		El("span", Class("word"), Text(words[f.Severity])),
		If(f.Where != "" && !strings.HasPrefix(f.Text, f.Where), El("b", Text(f.Where+": "))),
		Text(f.Text),
		If(f.Remedy != "", El("span", Class("remedy"), Text(f.Remedy))),
		If(basis != "", El("span", Class("basis"), Text(" "+basis))),
	)
}

// severityOf a figure: how its bar is coloured. The likely range crossing the
// limit needs a decision even where the value keeps it.
func severityOf(f config.Figure) config.Severity {
	switch {
	case f.Sense == "":
		return ""
	case !f.Met() && (f.Basis == config.Rating || f.Basis == config.ReadInText || f.Basis == config.Computed):
		return config.Stop
	case !f.Met():
		return config.Warn
	case f.Sense == config.AtMost && f.High > f.Limit, f.Sense == config.AtLeast && f.Low < f.Limit:
		return config.Warn
	}
	return ""
}

// bar draws a figure against its limit: a filled track, the likely range as a
// whisker, and the limit as a line. The same numbers stand beside it in words.
func bar(f config.Figure) Part {
	if f.Sense == "" || f.Limit <= 0 {
		return nil
	}
	top := max(f.Limit*1.12, f.High*1.02, f.Value*1.02)
	if f.Sense == config.AtLeast {
		top = max(f.Limit*1.6, f.High*1.05)
	}
	at := func(v float64) string {
		return strconv.FormatFloat(200*min(max(v/top, 0), 1), 'f', 1, 64)
	}
	class := "bar"
	if s := severityOf(f); s != "" {
		class += " " + string(s)
	}
	return El("svg", At("class", class), At("viewBox", "0 0 200 12"), At("preserveAspectRatio", "none"), At("aria-hidden", "true"),
		El("rect", Class("track"), At("x", "0"), At("y", "1"), At("width", "200"), At("height", "10")),
		El("rect", Class("fill"), At("x", "0"), At("y", "2.500"), At("width", at(f.Value)), At("height", "7")),
		If(f.High > f.Low, El("path", Class("range"), At("d", "M"+at(f.Low)+" 6H"+at(f.High)+"M"+at(f.Low)+" 3.500V8.500M"+at(f.High)+" 3.500V8.500"))),
		El("path", Class("limit"), At("d", "M"+at(f.Limit)+" 0V12")),
	)
}

// figureRow is one figure of a table: value, range, limit, margin, source.
func figureRow(p *Page, f config.Figure) []Part {
	rangeText := ""
	if f.High > f.Low {
		rangeText = p.show(f.Low, f.Unit) + " to " + p.show(f.High, f.Unit)
	}
	limit, margin := none(), none()
	if f.Sense != "" {
		limit = Many(Text(string(f.Sense)+" "+p.show(f.Limit, f.Unit)), El("span", Class("how"), Text(basisText(f))))
		margin = Many(El("b", Text(p.signed(f.Margin(), f.Unit))), Text(" "), mark(severityOf(f)), If(chance(f) != "", El("span", Class("how"), Text(chance(f)))))
	}
	return []Part{
		Many(Text(f.Label), help(f.Code), bar(f)),
		El("b", Text(p.show(f.Value, f.Unit))),
		Text(rangeText), limit, margin,
	}
}

// none stands in a cell that holds nothing, where there is a cell.
func none() Part { return El("span", Class("none"), Text("–")) }

func basisText(f config.Figure) string {
	switch {
	case f.Source != "" && f.Basis != "":
		return f.Source + "; " + string(f.Basis)
	case f.Source != "":
		return f.Source
	}
	return string(f.Basis)
}

// figures is a table of figures.
func figures(p *Page, caption string, list []config.Figure) Part {
	t := table{caption: caption, class: "figures cards", heads: []string{"Figure", ">Value", ">Likely range", "Limit", ">Margin"}}
	for _, f := range list {
		t.rows = append(t.rows, figureRow(p, f))
	}
	return t.draw()
}
