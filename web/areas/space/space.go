// Package space is the Space area: seats, compartments and oxygen.
package space

import (
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/web/areas"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "space",
	Name:     "Space",
	Section:  areas.Check,
	Codes:    []string{"space"},
	Gist:     gist,
	Words:    words,
	Load:     load,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
}

func gist(p *page.Page) string {
	seats := page.Count(len(p.Q.Space.Seats), "seat", "seats") + ", "
	if f, has := p.Q.Figure("space.compartments"); has && p.Q.Space.StorageFt3 == 0 {
		return seats + p.Show(f.Value, f.Unit) + " outside"
	}
	return seats + p.Show(float64(p.Q.Space.StorageFt3), quantity.CubicFoot)
}

func draw(p *Page) Part {
	s := p.Q.Space
	return Many(
		page.Heading("Space", "Who sits where, and whether everything has room."),
		page.Found(p.Page, s.Findings, "Everything and everybody has room."),
		page.Block("Plan, to scale", drawing.Plan(p.Page)),
		page.Block("Against the limits", page.Figures(p.Page, "space", "Space figures", s.Figures)),
		oxygen(p),
		page.Factors(p.Page, "space", "What is assumed where nothing is stated."),
	)
}

func oxygen(p *Page) Part {
	o := p.Q.Space.Oxygen
	if len(o.Cylinders) == 0 {
		return nil
	}
	cylinders := func(caption string, list []space.Cylinder) page.Table {
		t := page.Table{Caption: caption, Class: "cards", Heads: []string{"Cylinder", ">How many", ">Full", ">Contents",
			">Usable"}}
		for _, c := range list {
			t.Rows = append(t.Rows, page.Texts(c.Label, quantity.Group(float64(c.Count), 0), quantity.Group(c.FullPSI, 0)+
				" psi", p.Show(c.Liters, quantity.Liter), p.Show(c.Usable, quantity.Liter)))
		}
		return t
	}
	own := p.Q.Space.AirCylinders
	h := page.Table{Caption: "How long it lasts, from full down to " + quantity.Group(space.ReservePSI, 0) + " psi",
		Heads: []string{"Flow", ">Lasts"}}
	for _, x := range o.Hours {
		h.Rows = append(h.Rows, page.Texts(quantity.Group(x.LPM, 0)+" L/min", p.Show(x.Hours, quantity.Hour)))
	}
	air := page.Table{Caption: "Medical air, down to the same", Heads: []string{"Flow", ">Lasts"}}
	for _, x := range p.Q.Space.AirHours {
		air.Rows = append(air.Rows, page.Texts(quantity.Group(x.LPM, 0)+" L/min", p.Show(x.Hours, quantity.Hour)))
	}
	return page.Fold("oxygen", "Oxygen: "+p.Show(o.Liters, quantity.Liter), El("div", Class("columns"),
		cylinders("Cylinders", o.Cylinders).Draw(), h.Draw(),
		If(own != nil, Many(cylinders("Cylinders of medical air", own).Draw(), air.Draw()))), page.Cautions(o.Caution))
}
