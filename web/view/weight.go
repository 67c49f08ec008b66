package view

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	. "boxwright/web/view/markup"
)

func gistWeight(p *Page) string {
	f, ok := p.Q.Figure("weight.payload-left")
	if !ok {
		return "not known"
	}
	return p.show(f.Value, f.Unit) + " payload left"
}

func weightArea(p *Page) Part {
	s := p.Q.Weight
	return Many(
		heading("Weight", "What the finished unit weighs, on which wheels, and how far that is from every rating. Ranges come from the tolerance of each mass."),
		findings(p, s.Findings, "Every rating is kept, with its likely range."),
		block("Side view, to scale", sideView(p)),
		block("Against the limits", figures(p, "Weight figures at full load", s.Figures),
			El("p", Class("how"), Text("The likely range holds the value 95 times in 100, by the tolerance of every mass. Chances are said where a limit is close."))),
		conditions(p),
		tickets(p),
		masses(p),
		takeOff(p),
		cautions("Computed weights do not replace a certified scale. The final-stage manufacturer certifies the finished vehicle."),
	)
}

func conditions(p *Page) Part {
	lb := func(m quantity.Mass) string { return p.show(float64(m), quantity.Pound) }
	in := func(v, tol quantity.Length) Part {
		return Many(Text(p.show(float64(v), quantity.Inch)), El("span", Class("how"), Text("± "+p.show(float64(tol), quantity.Inch))))
	}
	t := table{caption: "Three conditions", class: "cards", heads: []string{"", ">Total", ">Front axle", ">Rear axle", ">Street side", ">Curb side", ">Center behind front axle", ">Its height"}}
	w := table{caption: "Wheel ends at full load", class: "cards", heads: []string{"Wheel", ">Load", ">Tires", ">On each tire", ">Tires here may carry", ">To spare"}}
	for _, c := range []weight.Condition{p.Q.Weight.Curb, p.Q.Weight.Crewed, p.Q.Weight.Gross} {
		t.rows = append(t.rows, append(texts(c.Label, lb(c.TotalLb), lb(c.FrontLb), lb(c.RearLb), lb(c.LeftLb), lb(c.RightLb)), in(c.XIn, c.XTolIn), in(c.ZIn, c.ZTolIn)))
	}
	for i, x := range p.Q.Weight.Gross.Wheels {
		w.rows = append(w.rows, texts(wheelNames[i%4], lb(x.Lb), quantity.Group(float64(x.Tires), 0), lb(x.PerTireLb), lb(x.RatedLb), p.signed(float64(x.RatedLb-x.Lb), quantity.Pound)))
	}
	return block("Loads", t.draw(), w.draw())
}

// wheelNames in the order of weight.Condition.Wheels.
var wheelNames = [4]string{"Left front (street side)", "Right front (curb side)", "Left rear (street side)", "Right rear (curb side)"}

// chance that a figure misses its limit, as people say it; empty where it
// cannot be told or is next to nothing.
func chance(f config.Figure) string {
	c := f.Chance
	switch {
	case f.Sense == "" || !(c >= 0.0005):
		return ""
	case c >= 0.995:
		return "almost certainly missed"
	case c < 0.01:
		return quantity.Group(max(c*1000, 1), 0) + " in 1,000 that it is missed"
	}
	return quantity.Group(c*100, 0) + " in 100 that it is missed"
}

// masses lists everything aboard, heaviest first, with where it sits.
func masses(p *Page) Part {
	items := slices.Clone(p.Q.Weight.Items)
	slices.SortStableFunc(items, func(a, b weight.Item) int {
		switch {
		case a.Lb > b.Lb:
			return -1
		case a.Lb < b.Lb:
			return 1
		}
		return strings.Compare(a.ID, b.ID)
	})
	t := table{caption: "Everything aboard at full load", heads: []string{"Item", ">Mass", ">±", ">On front axle", ">On rear axle", ">Behind front axle", ">Right of center", ">Above ground"}}
	for _, it := range items {
		name := it.Label
		if it.Qty > 1 {
			name += " × " + quantity.Group(float64(it.Qty), 0)
		}
		t.rows = append(t.rows, []Part{
			Text(name), Text(p.show(float64(it.Lb), quantity.Pound)), Text(p.show(float64(it.TolLb), quantity.Pound)),
			Text(p.show(float64(it.FrontLb), quantity.Pound)), Text(p.show(float64(it.RearLb), quantity.Pound)),
			Text(p.show(float64(it.XIn), quantity.Inch)), Text(p.show(float64(it.YIn), quantity.Inch)), Text(p.show(float64(it.ZIn), quantity.Inch)),
		})
	}
	return fold("every-mass", "Every mass and its station ("+count(len(items), "item", "items")+")", t.draw())
}

func takeOff(p *Page) Part {
	s := p.Q.Weight.TakeOff
	if s == nil {
		return nil
	}
	in, lb, size := sizes(p)
	t := table{caption: "By section, part by part", heads: []string{"Part", "Stock", ">Pieces", ">Size or amount", ">Mass", ">Center behind front wall", ">Above floor"}}
	section := ""
	for i, x := range s.Parts {
		if x.Section != section {
			section = x.Section
			t.rows = append(t.rows, []Part{El("b", Text(strings.ToUpper(section[:1])+section[1:])), nil, nil, nil, El("b", Text(lb(s.Section(section)))), nil, nil})
		}
		pieces, length := "", quantity.Group(x.Amount, 1)+" "+x.Per
		if x.Count > 0 {
			pieces, length = quantity.Group(float64(x.Count), 0), size(x.LengthIn, x.WidthIn)
		}
		t.rows = append(t.rows, texts(s.Parts[i].Label, x.Stock, pieces, length, lb(x.Lb), in(x.XIn), in(x.ZIn)))
	}
	t.sums = append(t.sums, texts("Bare module", "", "", "", lb(s.Lb), in(s.XIn), in(s.ZIn)))
	return Many(
		fold("take-off", "How the bare module's mass is made up ("+lb(s.Lb)+")", t.draw()),
		fold("cut-list", "Cut list", cutList(p)),
	)
}

// cutList is what the module is cut from, by stock; nil for a van.
func cutList(p *Page) Part {
	s := p.Q.Weight.TakeOff
	if s == nil {
		return nil
	}
	in, lb, size := sizes(p)
	c := table{caption: "Cut list by stock", heads: []string{"Stock and use", ">Pieces", ">Size", ">Mass as fitted", ">As cut"}}
	for _, x := range s.CutList() {
		need := quantity.Group(x.LengthFt, 1) + " ft"
		if x.AreaFt2 > 0 {
			need = quantity.Group(x.AreaFt2, 1) + " ft² of blanks"
		}
		if x.Bars > 0 {
			need += ", " + count(x.Bars, "bar", "bars") + " of " + in(weight.BarIn)
		}
		c.rows = append(c.rows, []Part{Many(El("b", Text(x.Stock)), El("span", Class("how"), Text(need))), nil, nil, El("b", Text(lb(x.Lb))), El("b", Text(lb(x.BlankLb)))})
		for _, k := range x.Cuts {
			c.rows = append(c.rows, texts(strings.Join(k.For, ", "), quantity.Group(float64(k.Count), 0), size(k.LengthIn, k.WidthIn), lb(k.Lb), lb(k.BlankLb)))
		}
	}
	return Many(c.draw(), El("p", Class("how"), Text("Bars of "+in(weight.BarIn)+", "+in(weight.KerfIn)+" lost at each cut: common practice, no source. Where the plant's drawings differ, the drawings decide.")))
}

// sizes shows lengths, masses and the size of a piece.
func sizes(p *Page) (in func(quantity.Length) string, lb func(quantity.Mass) string, size func(length, width quantity.Length) string) {
	in = func(v quantity.Length) string { return p.show(float64(v), quantity.Inch) }
	lb = func(m quantity.Mass) string { return p.show(float64(m), quantity.Pound) }
	size = func(length, width quantity.Length) string {
		if width > 0 {
			return in(length) + " × " + in(width)
		}
		return in(length)
	}
	return in, lb, size
}

// fold is a part of an area that opens at a press.
func fold(id, title string, parts ...Part) Part {
	return El("details", Class("block"), At("id", "fold-"+id), El("summary", El("b", Text(title))), Many(parts...))
}

func cautions(list ...string) Part {
	return El("ul", Class("caution"), Each(list, func(_ int, c string) Part { return El("li", Text(c)) }))
}

// figuresOf picks figures of a report by the beginning of their code.
func figuresOf(r *config.Report, prefix string) []config.Figure {
	var out []config.Figure
	for _, f := range r.Figures {
		if strings.HasPrefix(f.Code, prefix) {
			out = append(out, f)
		}
	}
	return out
}
