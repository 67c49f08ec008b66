package view

import (
	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/config/standards"
	. "boxwright/web/view/markup"
)

func gistSpace(p *Page) string {
	return count(len(p.Q.Space.Seats), "seat", "seats") + ", " + p.show(float64(p.Q.Space.StorageFt3), quantity.CubicFoot) + " inside"
}

func spaceArea(p *Page) Part {
	s := p.Q.Space
	return Many(
		heading("Space", "Who sits where, what rides where, whether it has room, and what the rules in force say about it."),
		findings(p, s.Findings, "Everything and everybody has room."),
		block("Plan, to scale", planView(p)),
		block("Against the limits", figures(p, "Space figures", s.Figures)),
		stowage(p),
		oxygen(p),
		compliance(p),
	)
}

// stowage says what rides in which compartment, and lets it be moved.
func stowage(p *Page) Part {
	s := p.Q.Space
	places := []choice{{"", "not stowed yet"}}
	c := table{caption: "Compartments", heads: []string{"Compartment", "Side", ">Inside", ">Volume", ">Used", ">Load", ">Rated"}}
	for _, u := range s.Compartments {
		places = append(places, choice{u.ID, u.Label})
		rated := "not stated"
		if u.LimitLb > 0 {
			rated = p.show(float64(u.LimitLb), quantity.Pound)
		}
		size := p.plain(float64(u.WidthIn), quantity.Inch) + " × " + p.plain(float64(u.DepthIn), quantity.Inch) + " × " + p.show(float64(u.HeightIn), quantity.Inch)
		c.rows = append(c.rows, []Part{Text(u.Label), Text(u.Side), Text(size), Text(p.show(float64(u.Ft3), quantity.CubicFoot)), Text(p.show(float64(u.UsedFt3), quantity.CubicFoot)), Text(p.show(float64(u.MassLb), quantity.Pound)), Text(rated)})
	}
	e := table{caption: "Loose equipment", heads: []string{"Item", ">How many", ">Mass", "Rides in"}}
	for _, x := range p.Q.Draft.Unit.Carried {
		item := p.Q.Edition.Cat.EquipmentByID(x.Equipment)
		e.rows = append(e.rows, []Part{Text(item.Label), Text(quantity.Group(float64(x.Qty), 0)), Text(p.show(float64(item.MassLb)*float64(x.Qty), quantity.Pound)),
			El("select", At("id", "f-stow-"+x.Equipment), At("data-act", "stow"), At("data-id", x.Equipment), At("aria-label", "Rides in: "+item.Label), options(x.Compartment, places))})
	}
	none := El("p", Class("soft"), Text("Nothing loose is carried yet; add it in Needs."))
	if len(e.rows) > 0 {
		none = e.draw()
	}
	return block("What rides where", none, c.draw(),
		El("p", Class("how"), Text("A compartment is checked by volume, longest side and mass. That does not prove that every item goes in beside the others.")))
}

func oxygen(p *Page) Part {
	o := p.Q.Space.Oxygen
	if len(o.Cylinders) == 0 {
		return nil
	}
	t := table{caption: "Cylinders", heads: []string{"Cylinder", ">How many", ">Full", ">Contents"}}
	for _, c := range o.Cylinders {
		t.rows = append(t.rows, []Part{Text(c.Label), Text(quantity.Group(float64(c.Count), 0)), Text(quantity.Group(c.FullPSI, 0) + " psi"), Text(p.show(c.Litres, quantity.Litre))})
	}
	h := table{caption: "How long it lasts, down to " + quantity.Group(space.ReservePSI, 0) + " psi", heads: []string{"Flow", ">Hours"}}
	for _, x := range o.Hours {
		h.rows = append(h.rows, []Part{Text(quantity.Group(x.LPM, 0) + " L/min"), Text(p.show(x.Hours, quantity.Hour))})
	}
	return block("Oxygen: "+p.show(o.Litres, quantity.Litre), El("div", Class("columns"), t.draw(), h.draw()), cautions(o.Caution))
}

// compliance is the unit held against the rule sets, clause by clause.
func compliance(p *Page) Part { return block("Rules in force: "+p.Q.Assume.Label, complianceTable(p)) }

func complianceTable(p *Page) Part {
	t := table{caption: "Clause by clause", class: "clauses", heads: []string{"Clause", "Verdict", ">Figure", ">Margin", "Source"}}
	for _, v := range p.Q.Verdicts {
		figure, margin := Text("–"), Text("–")
		if v.Figure != nil {
			figure = Text(p.show(v.Figure.Value, v.Figure.Unit))
			if v.Figure.Sense != "" {
				figure = Many(Text(p.show(v.Figure.Value, v.Figure.Unit)), El("span", Class("how"), Text(string(v.Figure.Sense)+" "+p.show(v.Figure.Limit, v.Figure.Unit))))
				margin = Text(p.signed(v.Figure.Margin(), v.Figure.Unit))
			}
		}
		t.rows = append(t.rows, []Part{
			Many(El("b", Text(v.Title)), El("span", Class("how"), Text(v.Text)), If(v.Note != "", El("span", Class("how"), Text(v.Note)))),
			Many(verdictMark(v), Text(" "+string(v.Outcome))), figure, margin,
			Many(El("span", Class("small"), Text(v.Source)), El("span", Class("how"), Text(string(v.Basis)))),
		})
	}
	return t.draw()
}

func verdictMark(v standards.Verdict) Part {
	switch v.Outcome {
	case standards.NotMet:
		if v.Basis == config.ReadInText {
			return mark(config.Stop)
		}
		return mark(config.Warn)
	case standards.Met, standards.Declared:
		return mark("")
	}
	return nil
}
