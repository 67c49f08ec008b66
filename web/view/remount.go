package view

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

const remountTitle = "Remount an existing module"

// remount begins the remount of an existing module, or takes down what was
// measured of it and looks at it on every chassis.
func remount(p *Page) Part {
	if !p.Q.Remount() {
		if !slices.ContainsFunc(p.Q.Edition.Cat.Bodies, func(b config.Body) bool { return b.Existing }) {
			return nil
		}
		return block(remountTitle,
			El("p", Class("lead"), Text("A module that is there already, your own or another maker's, is measured, refurbished and mounted on a new chassis. It is a unit of its own: weighed, checked, dated and priced.")),
			El("p", Class("row-tools"), action("remount", "", "", "Begin a remount", At("id", "begin-remount"))))
	}
	var said []config.Finding
	for _, f := range p.Q.Findings {
		if strings.HasPrefix(f.Code, "weight.existing.") || f.Code == "standards.remount" {
			said = append(said, f)
		}
	}
	return block(remountTitle, measuredFields(p), findings(p, said, ""),
		El("p", Class("row-tools"),
			action("mountings", "", "", map[bool]string{false: "Look at it on every chassis", true: "Close the look at every chassis"}[p.State.Mountings], At("id", "mountings"), At("aria-expanded", strconv.FormatBool(p.State.Mountings))),
			action("remount-years", "", "", "Cost per year beside a new unit", At("id", "remount-years"))),
		When(p.State.Mountings, func() Part { return mountings(p) }))
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
			typed = p.plain(v, unit)
		} else if counted != 0 {
			hint += " Not measured: " + p.show(counted, unit) + " is counted."
		}
		return number(p, "existing."+name, label, typed, p.unitName(unit), strings.TrimSpace(hint))
	}
	inch := func(name, label string, v, counted quantity.Length, hint string) Part {
		return measured(name, label, float64(v), float64(counted), quantity.Inch, hint)
	}
	whole := func(name, label string, v int, unit, hint string) Part {
		typed := ""
		if v != 0 {
			typed = strconv.Itoa(v)
		}
		return number(p, "existing."+name, label, typed, unit, hint)
	}
	x, _, z := config.Place(&config.Chassis{}, b, b.Mass.Zone, b.Mass.XIn, 0, b.Mass.ZIn)
	return El("div", Class("fields"),
		field(p, "existing.maker", "Whose it is and what it is called", e.Maker, "In the owner's words"),
		whole("built", "Year built", e.Built, "", ""),
		inch("length_in", "Length outside", e.LengthIn, b.LengthIn, "The rules of fit judge by it."),
		inch("width_in", "Width outside", e.WidthIn, b.WidthIn, ""),
		inch("height_in", "Height outside", e.HeightIn, b.HeightIn, "Floor underside to roof."),
		inch("headroom_in", "Headroom", e.HeadroomIn, b.HeadroomIn, ""),
		inch("aisle_in", "Aisle beside the cot", e.AisleIn, b.AisleIn, ""),
		measured("mass_lb", "Weighed mass", float64(e.MassLb), float64(b.Mass.Lb), quantity.Pound, "As it will be mounted: with what stays in it, without what is taken out."),
		measured("tol_lb", "Give or take", float64(e.TolLb), 0, quantity.Pound, "Empty takes 5 %."),
		field(p, "existing.weighed", "How it was weighed", e.Weighed, "Such as: certified scale, lifted off; two supports"),
		inch("x_in", "Center behind the front wall", e.XIn, x, ""),
		inch("y_in", "Center right of the centerline", e.YIn, 0, "Negative to the street side; empty is none."),
		inch("z_in", "Center above the floor", e.ZIn, z, ""),
		check(p, "existing.estimated", "The center is estimated, not found by weighing", e.Estimated),
		whole("warranty_years", "Structural warranty left", e.WarrantyYears, "years", ""),
		El("div", Class("field wide"), textField(p, "existing.notes", "Notes on its condition", e.Notes, "")),
	)
}

// mountings sets the module on every chassis side by side, and says of those
// that cannot carry it why.
func mountings(p *Page) Part {
	if p.Mountings == nil && p.Soon {
		return working()
	}
	t := table{caption: "The module on every chassis", class: "cards", heads: []string{"Chassis", ">Front axle", ">Rear axle", ">GVWR", ">Payload", ">Price and date"}}
	var not []Part
	for i := range p.Mountings {
		m := &p.Mountings[i]
		if len(m.Figures) > 0 {
			t.rows = append(t.rows, mountingRow(p, m))
		}
		if len(m.Stops) > 0 {
			not = append(not, El("li", mark(config.Stop), El("b", Text(" "+m.Chassis.Label+": ")), Text(strings.Join(m.Stops, " "))))
		}
	}
	return Many(t.draw(),
		El("p", Class("how"), Text("Margins at full load and the date at even odds, with your picks and whatever else a unit on that chassis needs. A computed weight does not replace a certified scale.")),
		If(not != nil, Many(El("h3", Text("What stands in the way")), El("ul", Class("picks"), Many(not...)))))
}

func mountingRow(p *Page, m *quote.Mounting) []Part {
	margin := func(code string) Part {
		f, ok := m.Figures[code]
		switch {
		case !ok:
			return Text("–")
		case f.Sense == "":
			return Text(p.show(f.Value, f.Unit)) // no minimum is named
		}
		return Many(mark(severityOf(f)), Text(" "+p.signed(f.Margin(), f.Unit)))
	}
	last := action("chassis", m.Chassis.ID, "", "Mount it on this", At("id", "mount-on-"+m.Chassis.ID), At("aria-label", "Mount the module on "+m.Chassis.Label))
	if len(m.Stops) > 0 {
		last = El("span", Class("tag out"), Text("cannot carry it"))
	}
	if m.Chassis.ID == p.Q.Draft.Unit.Chassis {
		last = El("span", Class("tag mine"), Text("in work"))
	}
	return []Part{
		Many(Text(m.Chassis.Label), El("div", last)), margin("weight.front-axle"), margin("weight.rear-axle"), margin("weight.gross"), margin("weight.payload"),
		Many(Text(m.Total.Show()), El("span", Class("how"), Text(m.Even.Long()))),
	}
}

// remountWords describes the existing module in the specification.
func remountWords(p *Page) Part {
	e := p.Q.Draft.Unit.Existing
	if !p.Q.Remount() || e == nil {
		return nil
	}
	b := p.Q.Body
	var said []string
	add := func(text string) { said = append(said, text) }
	if e.Maker != "" {
		add(e.Maker)
	}
	if e.Built != 0 {
		add("built " + strconv.Itoa(e.Built))
	}
	inch := func(v quantity.Length) string { return p.show(float64(v), quantity.Inch) }
	add(inch(b.LengthIn) + " long, " + inch(b.WidthIn) + " wide, " + inch(b.HeightIn) + " high, headroom " + inch(b.HeadroomIn))
	weighed := p.show(float64(b.Mass.Lb), quantity.Pound)
	switch {
	case e.MassLb == 0:
		weighed += " estimated, not yet weighed"
	case e.Weighed != "":
		weighed += " weighed (" + e.Weighed + ")"
	default:
		weighed += " weighed"
	}
	add(weighed)
	if e.WarrantyYears != 0 {
		add(count(e.WarrantyYears, "year", "years") + " of structural warranty left")
	}
	if e.Notes != "" {
		add(e.Notes)
	}
	return El("p", El("b", Text("The existing module. ")), Text(strings.Join(said, "; ")+"."))
}

// remountNote says above a compliance sheet that the rule set does not cover
// the unit.
func remountNote(p *Page) Part {
	text := standards.OutsideRemount(p.Q.Draft.Unit.RuleSet)
	return If(p.Q.Remount() && text != "", El("p", Class("how"), mark(config.Warn), Text(" "+text)))
}
