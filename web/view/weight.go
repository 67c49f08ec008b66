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
		block("Against the limits", figures(p, "Weight figures at full load", s.Figures)),
		conditions(p),
		masses(p),
		takeOff(p),
		cautions("Computed weights do not replace a certified scale. The final-stage manufacturer certifies the finished vehicle."),
	)
}

func conditions(p *Page) Part {
	lb := func(m quantity.Mass) Part { return Text(p.show(float64(m), quantity.Pound)) }
	t := table{caption: "Three conditions", heads: []string{"", ">Total", ">Front axle", ">Rear axle", ">Street side", ">Curb side", ">Center behind front axle", ">Height"}}
	w := table{caption: "Wheel ends at full load", heads: []string{"Wheel", ">Load", ">Tires", ">On each tire", ">Tires here may carry"}}
	for _, c := range []weight.Condition{p.Q.Weight.Curb, p.Q.Weight.Crewed, p.Q.Weight.Gross} {
		t.rows = append(t.rows, []Part{Text(c.Label), lb(c.TotalLb), lb(c.FrontLb), lb(c.RearLb), lb(c.LeftLb), lb(c.RightLb), Text(p.show(float64(c.XIn), quantity.Inch)), Text(p.show(float64(c.ZIn), quantity.Inch))})
	}
	names := map[string]string{"LF": "Left front (street side)", "RF": "Right front (curb side)", "LR": "Left rear (street side)", "RR": "Right rear (curb side)"}
	for _, x := range p.Q.Weight.Gross.Wheels {
		w.rows = append(w.rows, []Part{Text(names[x.Pos]), lb(x.Lb), Text(quantity.Group(float64(x.Tires), 0)), lb(x.PerTireLb), lb(x.RatedLb)})
	}
	return block("Loads", t.draw(), w.draw())
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
	t := table{caption: "Everything aboard at full load", heads: []string{"Item", ">Mass", ">±", ">On front axle", ">On rear axle", ">Behind front axle", ">Right of centre", ">Above ground"}}
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
	t := table{caption: "Module take-off", heads: []string{"Part", "Stock", ">Pieces", ">Length", ">Mass"}}
	for _, x := range s.Parts {
		pieces, length := "", ""
		if x.Count > 0 {
			pieces = quantity.Group(float64(x.Count), 0)
			length = p.show(float64(x.LengthIn), quantity.Inch)
			if x.WidthIn > 0 {
				length += " × " + p.show(float64(x.WidthIn), quantity.Inch)
			}
		} else {
			length = quantity.Group(x.Amount, 1) + " " + x.Per
		}
		t.rows = append(t.rows, []Part{Text(x.Label), Text(x.Stock), Text(pieces), Text(length), Text(p.show(float64(x.Lb), quantity.Pound))})
	}
	t.sums = append(t.sums, []Part{Text("Bare module"), Text(""), Text(""), Text(""), Text(p.show(float64(s.Lb), quantity.Pound))})
	return fold("take-off", "How the bare module's mass is made up", t.draw())
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
