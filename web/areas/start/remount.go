package start

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

const remountTitle = "Remount an existing module"

// remount begins the remount of an existing module, or takes down what was
// measured of it and looks at it on every chassis.
func remount(p *Page) Part {
	if !p.Q.Remount() {
		if !slices.ContainsFunc(p.Q.Edition.Cat.Bodies, func(b config.Body) bool { return b.Existing }) {
			return nil
		}
		return page.Block(remountTitle,
			El("p", Class("lead"),
				Text("Put a used module, yours or another maker's, on a new chassis. It is measured, refurbished, weighed, "+
					"checked and priced like a new unit.")),
			El("p", Class("row-tools"), page.Action("remount", "", "", "Begin a remount", At("id", "begin-remount"))))
	}
	var said []config.Finding
	for _, f := range p.Q.Findings {
		if strings.HasPrefix(f.Code, "weight.existing.") || f.Code == "standards.remount" {
			said = append(said, f)
		}
	}
	return page.Block(remountTitle, measuredFields(p), page.Findings(p.Page, said, ""),
		When(len(p.Q.Body.Photos) > 0, func() Part {
			return El("details", El("summary", Text("Photographs wanted for the appraisal")),
				El("ul", Each(p.Q.Body.Photos, func(_ int, t string) Part { return El("li", Text(t)) })))
		}),
		El("p", Class("row-tools"),
			page.Action("mountings", "", "",
				page.Either(p.View.Mountings, "Close the look at every chassis", "Look at it on every chassis"),
				At("id", "mountings"),
				At("aria-expanded", strconv.FormatBool(p.View.Mountings))),
			page.Action("remount-years", "", "", "Cost per year beside a new unit", At("id", "remount-years"))),
		When(p.View.Mountings, func() Part { return mountings(p) }))
}

func measuredFields(p *Page) Part {
	var e config.Existing
	if x := p.Q.Draft.Unit.Existing; x != nil {
		e = *x
	}
	b := p.Q.Body
	measured := func(name, label string, v, counted float64, unit, hint string) Part {
		typed := ""
		if v != 0 {
			typed = p.Plain(v, unit)
		} else if counted != 0 {
			hint += " Not measured: " + p.Show(counted, unit) + " is counted."
		}
		return page.Number(p.Page, "existing."+name, label, typed, p.UnitName(unit), strings.TrimSpace(hint))
	}
	inch := func(name, label string, v, counted quantity.Length, hint string) Part {
		return measured(name, label, float64(v), float64(counted), quantity.Inch, hint)
	}
	whole := func(name, label string, v *int, unit, hint string) Part {
		typed := ""
		if v != nil {
			typed = strconv.Itoa(*v)
		}
		return page.Number(p.Page, "existing."+name, label, typed, unit, hint)
	}
	var built *int
	if e.Built != 0 {
		built = &e.Built
	}
	x, _, z := config.StationAt(&config.Chassis{}, b, b.Mass.Zone, b.Mass.XIn, 0, b.Mass.ZIn)
	return El("div", Class("fields"),
		page.Field(p.Page, "existing.maker", "Whose it is and what it is called", e.Maker, "In the owner's words"),
		whole("built", "Year built", built, "", ""),
		inch("length_in", "Length outside", e.LengthIn, b.LengthIn, "The rules of fit judge by it."),
		inch("width_in", "Width outside", e.WidthIn, b.WidthIn, ""),
		inch("height_in", "Height outside", e.HeightIn, b.HeightIn, "Floor underside to roof."),
		inch("headroom_in", "Headroom", e.HeadroomIn, b.HeadroomIn, ""),
		inch("aisle_in", "Aisle beside the cot", e.AisleIn, b.AisleIn, ""),
		measured("mass_lb", "Weight on the scale", float64(e.MassLb), float64(b.Mass.Lb), quantity.Pound,
			"As it will be mounted: with what stays in it, without what is taken out."),
		measured("tol_lb", "Give or take", float64(e.TolLb), 0, quantity.Pound, "Blank = 5 %."),
		page.Field(p.Page, "existing.weighed", "How it was weighed", e.Weighed,
			"Such as: certified scale, lifted off; two supports"),
		inch("x_in", "Center behind the front wall", e.XIn, x, ""),
		inch("y_in", "Center right of the centerline", e.YIn, 0, "Negative to the street side; blank = 0"),
		inch("z_in", "Center above the floor", e.ZIn, z, ""),
		page.Check(p.Page, "existing.estimated", "The center is estimated, not found by weighing", e.Estimated),
		whole("warranty_years", "Structural warranty left", e.WarrantyYears, "years", "0 where it has ended."),
		El("div", Class("field wide"), page.TextField(p.Page, "existing.notes", "Notes on its condition", e.Notes, "")),
	)
}

// mountings sets the module on every chassis side by side, and says of those
// that cannot carry it why.
func mountings(p *Page) Part {
	if !p.MountingsKnown {
		return page.Working()
	}
	t := page.Table{Caption: "The module on every chassis", Class: "cards",
		Heads: []string{"Chassis", ">Front axle", ">Rear axle", ">GVWR", ">Payload", ">Price and date"}}
	var not []Part
	for i := range p.Mountings {
		m := &p.Mountings[i]
		if len(m.Figures) > 0 {
			t.Rows = append(t.Rows, mountingRow(p, m))
		}
		if len(m.Stops) > 0 {
			not = append(not, El("li", page.Mark(config.Stop), El("b", Text(" "+m.Chassis.Label+": ")),
				Text(strings.Join(m.Stops, " "))))
		}
	}
	return Many(t.Draw(),
		El("p", Class("how"),
			Text("Margins at full load and the likely date (50 %), with your picks and whatever else a unit on that "+
				"chassis needs. A computed weight does not replace a certified scale.")),
		If(not != nil, Many(El("h3", Text("Why not")), El("ul", Class("picks"), Many(not...)))))
}

func mountingRow(p *Page, m *quote.Mounting) []Part {
	margin := func(code string) Part {
		f, ok := m.Figures[code]
		switch {
		case !ok:
			return Text("–")
		case f.Sense == "":
			return Text(p.Show(f.Value, f.Unit)) // no minimum is named
		}
		return Many(page.Mark(page.SeverityOf(f)), Text(" "+p.Signed(f.Margin(), f.Unit)))
	}
	last := page.Action("chassis", m.Chassis.ID, "", "Mount it on this", At("id", "mount-on-"+m.Chassis.ID),
		At("aria-label", "Mount it on this: "+m.Chassis.Label))
	if len(m.Stops) > 0 {
		last = El("span", Class("tag out"), Text("cannot carry it"))
	}
	if m.Chassis.ID == p.Q.Draft.Unit.Chassis {
		last = El("span", Class("tag mine"), Text("showing now"))
	}
	return []Part{
		Many(Text(m.Chassis.Label), El("div", last)), margin("weight.front-axle"), margin("weight.rear-axle"),
		margin("weight.gross"), margin("weight.payload"),
		Many(Text(m.Total.Show()), El("span", Class("how"), Text(m.Even.Long()))),
	}
}
