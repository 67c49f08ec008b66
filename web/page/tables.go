package page

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	. "boxwright/web/page/markup"
)

// Table of rows under heads; a head that begins with ">" is a column of numbers.
// With the class "cards", or "tight" and more than three columns, its rows stand one beneath
// the other on a narrow screen.
type Table struct {
	Caption string
	Class   string
	Heads   []string
	Rows    [][]Part
	Sums    [][]Part // rows set apart beneath
}

func (t Table) Draw() Part {
	right, class := make([]bool, len(t.Heads)), t.Class
	if len(t.Heads) > 3 && strings.Contains(class, "tight") {
		class += " cards"
	}
	cards := strings.Contains(class, "cards")
	names := make([]string, len(t.Heads))
	heads := make([]Part, 0, len(t.Heads))
	for i, h := range t.Heads {
		if len(h) > 0 && h[0] == '>' {
			right[i], h = true, h[1:]
		}
		names[i] = h
		if h == "" { // a column of buttons has no name
			heads = append(heads, El("td"))
			continue
		}
		heads = append(heads, El("th", At("scope", "col"), If(right[i], Class("num")), Text(Held(h))))
	}
	row := func(cells []Part, class string) Part {
		tr := []Part{Class(class)}
		for i, c := range cells {
			if i == 0 {
				tr = append(tr, El("th", At("scope", "row"), c))
			} else {
				tr = append(tr, El("td", If(i < len(right) && right[i], Class("num")),
					If(cards && c != nil && names[i] != "", At("data-head", names[min(i, len(names)-1)])), c))
			}
		}
		return El("tr", tr...)
	}
	return El("div", Class("scroll"), At("data-scroll", t.Caption),
		El("table", Class("data", class),
			If(t.Caption != "", El("caption", Text(t.Caption))),
			El("thead", El("tr", heads...)),
			El("tbody",
				Each(t.Rows, func(_ int, r []Part) Part { return row(r, "") }),
				Each(t.Sums, func(_ int, r []Part) Part { return row(r, "sum") })),
		))
}

// Texts makes cells of strings.
func Texts(cells ...string) []Part {
	out := make([]Part, len(cells))
	for i, c := range cells {
		out[i] = Text(c)
	}
	return out
}

// SeverityOf a figure: how its bar is colored. The likely range crossing the
// limit needs a decision even where the value keeps it. A limit from memory is a note, and
// so is one of which missing it is no fault.
func SeverityOf(f config.Figure) config.Severity {
	switch {
	case f.Sense == "", f.Noted && f.Met():
		return ""
	case f.Noted:
		return config.Note
	case !f.Met() && (f.Basis == config.Rating || f.Basis == config.ReadInText || f.Basis == config.Computed):
		return config.Stop
	case !f.Met() && f.Basis == config.FromMemory:
		return config.Note
	case !f.Met():
		return config.Warn
	case f.Basis == config.FromMemory:
		return ""
	case f.Sense == config.AtMost && f.High > f.Limit, f.Sense == config.AtLeast && f.Low < f.Limit:
		return config.Warn
	}
	return ""
}

// SeverityIn is the severity of a figure of a quote. The payload left is what the gross
// weight leaves of its rating, so the one is never in order where the other is not.
func SeverityIn(q *quote.Quote, f config.Figure) config.Severity {
	s := SeverityOf(f)
	if gross, ok := q.Figure("weight.gross"); ok && f.Code == "weight.payload-left" &&
		s.Rank() < SeverityOf(gross).Rank() {
		return SeverityOf(gross)
	}
	return s
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
	if s := SeverityOf(f); s != "" {
		class += " " + string(s)
	}
	return El("svg", At("class", class), At("viewBox", "0 0 200 12"), At("preserveAspectRatio", "none"),
		At("aria-hidden", "true"),
		El("rect", Class("track"), At("x", "0"), At("y", "1"), At("width", "200"), At("height", "10")),
		El("rect", Class("fill"), At("x", "0"), At("y", "2.500"), At("width", at(f.Value)), At("height", "7")),
		If(f.High > f.Low,
			El("path", Class("range"), At("d", "M"+at(f.Low)+" 6H"+at(f.High)+"M"+at(f.Low)+" 3.500V8.500M"+at(f.High)+
				" 3.500V8.500"))),
		El("path", Class("limit"), At("d", "M"+at(f.Limit)+" 0V12")),
	)
}

// figureRow is one figure of a table: value, range, limit, margin, source.
func figureRow(p *Page, f config.Figure) []Part {
	rangeText := ""
	if f.High > f.Low {
		rangeText = Between(p, f.Low, f.High, f.Unit)
	}
	limit, margin := None(), None()
	if f.Sense != "" {
		limit = Many(Text(string(f.Sense)+" "+p.Show(f.Limit, f.Unit)), El("span", Class("how"), Text(BasisText(f))))
		margin = Many(El("b", Text(p.Signed(f.Margin(), f.Unit))), Text(" "), Mark(SeverityOf(f)),
			If(Chance(f) != "", El("span", Class("how"), Text(Chance(f)))))
	}
	asked, name := help(p, f.Code), f.Label
	if f.Assumed != "" {
		name += ", " + assumedSize(&f)
	}
	return []Part{
		// What a word means is no part of the head that is read out with each cell of its row.
		Many(If(asked != nil, At("aria-label", name)), Text(Held(f.Label)), asked, AssumedSize(&f), bar(f)),
		El("b", Text(p.Show(f.Value, f.Unit))),
		Text(rangeText), limit, margin,
	}
}

// AssumedSize says on whose assumed size a figure rests; nil when all that decides it is stated.
func AssumedSize(f *config.Figure) Part {
	return If(f.Assumed != "", El("span", Class("how"), Text(assumedSize(f))))
}

func assumedSize(f *config.Figure) string { return "assumed, not stated: the size of " + f.Assumed }

// None stands in a cell that holds nothing, where there is a cell.
func None() Part { return El("span", Class("none"), Text("–")) }

// BasisText says where a limit comes from and how well it is known.
func BasisText(f config.Figure) string { return f.Basis.Known(f.Source) }

// mostFigures are shown that ask for no decision before the rest of them is folded.
const mostFigures = 3

// Figures is a table of figures. Those without a limit, and those that keep one which is
// only noted, are folded beneath where they are many.
func Figures(p *Page, id, caption string, list []config.Figure) Part {
	t := Table{Caption: caption, Class: "figures cards", Heads: []string{"Figure", ">Value", ">Likely range", "Limit",
		">Margin"}}
	ranged := slices.ContainsFunc(list, func(f config.Figure) bool { return f.High > f.Low })
	if !ranged { // nor a column of them
		t.Heads = slices.Delete(t.Heads, 2, 3)
	}
	more := t
	more.Caption = "More figures"
	for _, f := range list {
		row := figureRow(p, f)
		if !ranged {
			row = slices.Delete(row, 2, 3)
		}
		if f.Sense == "" || f.Noted && f.Met() {
			more.Rows = append(more.Rows, row)
		} else {
			t.Rows = append(t.Rows, row)
		}
	}
	if len(more.Rows) <= mostFigures {
		t.Rows = append(t.Rows, more.Rows...)
		return t.Draw()
	}
	return Many(t.Draw(), El("details", At("id", "figures-"+id),
		El("summary", Text(Count(len(more.Rows), "more figure", "more figures"))), more.Draw()))
}

// Chance that a figure misses its limit, as people say it; empty where it
// cannot be told or is next to nothing.
func Chance(f config.Figure) string {
	c := f.Chance
	switch {
	case f.Sense == "" || !(c >= 0.0005):
		return ""
	case c >= 0.995:
		return "almost certainly missed"
	case c < 0.01:
		return quantity.Group(max(c*1000, 1), 0) + " in 1,000 that it is missed"
	}
	return Whole(quantity.Hundredths(c)) + " in 100 that it is missed"
}

// FiguresOf picks figures of a report by the beginning of their code.
func FiguresOf(r *config.Report, prefix string) []config.Figure {
	var out []config.Figure
	for _, f := range r.Figures {
		if strings.HasPrefix(f.Code, prefix) {
			out = append(out, f)
		}
	}
	return out
}
