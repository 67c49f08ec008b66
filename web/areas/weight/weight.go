// Package weight is the Weight area: what the unit weighs on which wheels, and the scale tickets that correct it.
package weight

import (
	"slices"
	"strings"

	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/web/areas"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "weight",
	Name:     "Weight",
	Section:  areas.Check,
	Codes:    []string{"weight"},
	Gist:     gist,
	Words:    words,
	Load:     load,
	Acts:     acts,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View    *session.View
	Lessons []session.Lesson // tickets of earlier units that could count
}

func gist(p *page.Page) string {
	f, ok := p.Q.Figure("weight.payload-left")
	if !ok {
		return "not known"
	}
	return p.Show(f.Value, f.Unit) + " remaining"
}

func draw(p *Page) Part {
	s := p.Q.Weight
	return Many(
		page.Heading("Weight", "What the finished unit weighs, on which wheels, and what is left."),
		page.Found(p.Page, s.Findings, "Every rating is kept, with its likely range."),
		page.Block("Side view, to scale", drawing.Side(p.Page)),
		page.Block("Against the limits", page.Figures(p.Page, "weight", "Weight figures at full load", s.Figures),
			El("p", Class("how"),
				Text("The likely range holds the value 95 times in 100, by what each weight, its place and the factors below "+
					"may differ."))),
		arrangements(p),
		frame(p),
		conditions(p),
		tickets(p),
		masses(p),
		takeOff(p),
		page.Factors(p.Page, "weight", "How far the finished unit may differ from what is computed, each as the half "+
			"width of the range that holds it 95 times in 100. The plant's values replace the usual ones; what "+
			"is set here holds for this unit and travels with the quote. Scale tickets of earlier units teach about "+
			"all of them but how one unit differs from the next."),
		page.Cautions("Computed weights do not replace a certified scale."+
			page.Certifies(p.Q.Edition.Cat.IsVan(p.Q.Body.ID))),
	)
}

// arrangements are the ways in which people ride in a unit of several patients.
func arrangements(p *Page) Part {
	list := page.Arrangements(p.Page)
	if list == nil {
		return nil
	}
	return page.Block("Places for patients", list)
}

// frame is what the maker of the chassis allows beside the figures.
func frame(p *Page) Part {
	text := p.Q.Chassis.FrameRules
	return When(text != "", func() Part {
		return El("p", Class("notice"), El("b", Text("Changes to the frame: ")), Text(text+" "), El("span", Class("how"),
			Text("From the catalogue. The chassis maker's own book decides.")))
	})
}

func conditions(p *Page) Part {
	lb := func(m quantity.Mass) string { return p.Show(float64(m), quantity.Pound) }
	in := func(v, tol quantity.Length) Part {
		return Many(Text(p.Show(float64(v), quantity.Inch)),
			El("span", Class("how"), Text("± "+p.Show(float64(tol), quantity.Inch))))
	}
	t := page.Table{Caption: "Three conditions", Class: "cards", Heads: []string{"", ">Total", ">Front axle",
		">Rear axle", ">Street side", ">Curb side", ">Center behind front axle", ">Its height"}}
	w := page.Table{Caption: "Wheel ends at full load", Class: "cards",
		Heads: []string{"Wheel", ">Load", ">Tires", ">On each tire", ">Tires here may carry", ">To spare"}}
	for _, c := range []weight.Condition{p.Q.Weight.Curb, p.Q.Weight.Crewed, p.Q.Weight.Gross} {
		t.Rows = append(t.Rows,
			append(page.Texts(c.Label, lb(c.TotalLb), lb(c.FrontLb), lb(c.RearLb), lb(c.LeftLb), lb(c.RightLb)),
				in(c.XIn, c.XTolIn), in(c.ZIn, c.ZTolIn)))
	}
	doubt := p.Q.Weight.WheelDoubt()
	for i, x := range p.Q.Weight.Gross.Wheels {
		row := page.Texts(wheelNames[i%4], "", quantity.Group(float64(x.Tires), 0), lb(x.PerTireLb), lb(x.RatedLb),
			p.Signed(float64(x.RatedLb-x.Lb), quantity.Pound))
		row[1] = Many(Text(lb(x.Lb)), El("span", Class("how"), Text("± "+lb(doubt[i%4]))))
		w.Rows = append(w.Rows, row)
	}
	return page.Fold("loads", "Loads by condition and wheel", t.Draw(), w.Draw())
}

// wheelNames in the order of weight.Condition.Wheels.
var wheelNames = [4]string{"Left front (street side)", "Right front (curb side)", "Left rear (street side)",
	"Right rear (curb side)"}

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
	t := page.Table{Caption: "Everything aboard at full load", Heads: []string{"Item", ">Weight", ">±", ">On front axle",
		">On rear axle", ">Behind front axle", ">Right of center", ">Above ground"}}
	for _, it := range items {
		name := it.Label
		if it.Qty > 1 {
			name += " × " + quantity.Group(float64(it.Qty), 0)
		}
		t.Rows = append(t.Rows, []Part{
			Text(name), Text(p.Show(float64(it.Lb), quantity.Pound)), Text(p.Show(float64(it.TolLb), quantity.Pound)),
			Text(p.Show(float64(it.FrontLb), quantity.Pound)), Text(p.Show(float64(it.RearLb), quantity.Pound)),
			Text(p.Show(float64(it.XIn), quantity.Inch)), Text(p.Show(float64(it.YIn), quantity.Inch)),
			Text(p.Show(float64(it.ZIn), quantity.Inch)),
		})
	}
	return page.Fold("every-mass", "Every weight and its station ("+page.Count(len(items), "item", "items")+")", t.Draw())
}

func takeOff(p *Page) Part {
	s := p.Q.Weight.TakeOff
	if s == nil {
		return nil
	}
	in, lb, size := page.Sizes(p.Page)
	t := page.Table{Caption: "By section, part by part", Heads: []string{"Part", "Stock", ">Pieces", ">Size or amount",
		">Weight", ">Center behind front wall", ">Above floor"}}
	section := ""
	for i, x := range s.Parts {
		if x.Section != section {
			section = x.Section
			t.Rows = append(t.Rows, []Part{El("b", Text(page.Capital(section))), nil, nil, nil,
				El("b", Text(lb(s.Section(section)))), nil, nil})
		}
		pieces, length := "", quantity.Group(x.Amount, 1)+" "+x.Per
		if x.Count > 0 {
			pieces, length = quantity.Group(float64(x.Count), 0), size(x.LengthIn, x.WidthIn)
		}
		t.Rows = append(t.Rows, page.Texts(s.Parts[i].Label, x.Stock, pieces, length, lb(x.Lb), in(x.XIn), in(x.ZIn)))
	}
	t.Sums = append(t.Sums, page.Texts("Bare module", "", "", "", lb(s.Lb), in(s.XIn), in(s.ZIn)))
	return Many(
		page.Fold("take-off", "How the bare module's weight is made up ("+lb(s.Lb)+")", t.Draw()),
		page.Fold("cut-list", "Cut list", page.CutList(p.Page)),
	)
}
