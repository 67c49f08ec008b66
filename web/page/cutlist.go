package page

import (
	"strings"

	"boxwright/config/quantity"
	"boxwright/config/weight"
	. "boxwright/web/page/markup"
)

// CutList is what the module is cut from, by stock; nil for a van.
func CutList(p *Page) Part {
	s := p.Q.Weight.TakeOff
	if s == nil {
		return nil
	}
	in, lb, size := Sizes(p)
	c := Table{Caption: "Cut list by stock", Class: "tight",
		Heads: []string{"Stock and use", ">Pieces", ">Size", ">Weight as fitted", ">As cut"}}
	for _, x := range s.CutList() {
		need := quantity.Group(x.LengthFt, 1) + " ft"
		if x.AreaFt2 > 0 {
			need = quantity.Group(x.AreaFt2, 1) + " ft² of blanks"
		}
		if x.Bars > 0 {
			need += ", " + Count(x.Bars, "bar", "bars") + " of " + in(weight.BarIn)
		}
		if x.Sheets > 0 {
			need += ", " + Count(x.Sheets, "sheet", "sheets") + " of " + size(weight.SheetIn, weight.SheetWideIn)
		}
		c.Rows = append(c.Rows, []Part{Many(El("b", Text(x.Stock)), El("span", Class("how"), Text(need))), nil, nil,
			El("b", Text(lb(x.Lb))), El("b", Text(lb(x.BlankLb)))})
		for _, k := range x.Cuts {
			c.Rows = append(c.Rows, Texts(usesOf(k.For), quantity.Group(float64(k.Count), 0),
				size(k.LengthIn, k.WidthIn), lb(k.Lb), lb(k.BlankLb)))
		}
	}
	return Many(c.Draw(),
		El("p", Class("how"), Text("Bars of "+in(weight.BarIn)+", sheets of "+
			size(weight.SheetIn, weight.SheetWideIn)+" cut in strips, "+in(weight.KerfIn)+
			" lost at each cut: common practice, no source. Where the plant's drawings differ, the drawings decide.")))
}

// usesOf says what pieces are for, each place once: "Street side, rear: back, door; Wheel box: top".
func usesOf(labels []string) string {
	var out []string
	before := ""
	for _, label := range labels {
		at := strings.LastIndex(label, ", ")
		if at < 0 {
			out, before = append(out, label), ""
			continue
		}
		place, piece := label[:at], label[at+2:]
		if place == before {
			out[len(out)-1] += ", " + piece
		} else {
			out, before = append(out, place+": "+piece), place
		}
	}
	return strings.Join(out, "; ")
}

// Sizes shows lengths, weights and the size of a piece.
func Sizes(
	p *Page,
) (in func(quantity.Length) string, lb func(quantity.Mass) string, size func(length, width quantity.Length) string) {
	in = func(v quantity.Length) string { return p.Show(float64(v), quantity.Inch) }
	lb = func(m quantity.Mass) string { return p.Show(float64(m), quantity.Pound) }
	size = func(length, width quantity.Length) string {
		if width > 0 {
			return in(length) + " × " + in(width)
		}
		return in(length)
	}
	return in, lb, size
}
