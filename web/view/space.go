package view

import (
	"boxwright/config/quantity"
	"boxwright/config/space"
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
		stowage(p),
		block("Against the limits", figures(p, "Space figures", s.Figures)),
		oxygen(p),
		compliance(p),
		ownLimits(p),
	)
}

func oxygen(p *Page) Part {
	o := p.Q.Space.Oxygen
	if len(o.Cylinders) == 0 {
		return nil
	}
	t := table{caption: "Cylinders", class: "cards", heads: []string{"Cylinder", ">How many", ">Full", ">Contents", ">Usable"}}
	for _, c := range o.Cylinders {
		t.rows = append(t.rows, texts(c.Label, quantity.Group(float64(c.Count), 0), quantity.Group(c.FullPSI, 0)+" psi", p.show(c.Litres, quantity.Litre), p.show(c.Usable, quantity.Litre)))
	}
	h := table{caption: "How long it lasts, from full down to " + quantity.Group(space.ReservePSI, 0) + " psi", heads: []string{"Flow", ">Lasts"}}
	for _, x := range o.Hours {
		h.rows = append(h.rows, texts(quantity.Group(x.LPM, 0)+" L/min", p.show(x.Hours, quantity.Hour)))
	}
	return block("Oxygen: "+p.show(o.Litres, quantity.Litre), El("div", Class("columns"), t.draw(), h.draw()), cautions(o.Caution))
}
