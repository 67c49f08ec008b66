package unit

import (
	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

func chassisChoice(p *Page) Part {
	cat := p.Q.Edition.Cat
	return El("fieldset", Class("group"), At("id", "group-chassis"),
		El("legend", El("h3", Text("Chassis")), El("span", Class("soft"), Text("choose one"))),
		El("div", Each(cat.Chassis, func(_ int, c config.Chassis) Part {
			gist := "Type " + c.Type + " · GVWR " + p.Show(float64(c.GVWRLb), quantity.Pound) + " · axles " +
				p.Plain(float64(c.GAWRFrontLb), quantity.Pound) + " and " +
				p.Show(float64(c.GAWRRearLb), quantity.Pound) + " · " + c.Drive + " " + c.Fuel
			return thing(p, "chassis", c.ID, c.Label, c.Spec, gist, c.ID == p.Q.Draft.Unit.Chassis)
		})))
}

func moduleChoice(p *Page) Part {
	cat := p.Q.Edition.Cat
	return El("fieldset", Class("group"), At("id", "group-module"),
		El("legend", El("h3", Text("Module")), El("span", Class("soft"), Text("choose one"))),
		El("div", Each(cat.Bodies, func(_ int, b config.Body) Part {
			gist := "Headroom " + p.Show(float64(b.HeadroomIn), quantity.Inch)
			if b.Kind == "module" {
				gist = "Length " + p.Show(float64(b.LengthIn), quantity.Inch) + " · width " +
					p.Show(float64(b.WidthIn), quantity.Inch) + " · " + page.Small(gist)
			}
			return thing(p, "body", b.ID, b.Label, b.Spec, gist, b.ID == p.Q.Draft.Unit.Body)
		})))
}

// thing is a row of the chassis or module list.
func thing(p *Page, do, id, label, spec, gist string, in bool) Part {
	state := p.Q.State(id)
	out := state == rules.RuledOut && !in
	class := "option plain"
	if out {
		class += " out"
	} else if in {
		class += " in"
	}
	asked := p.View.Asked == id
	return El("div", Class(class), At("id", "row-"+id),
		El("input", At("type", "radio"), At("id", "o-"+id), At("name", do), At("data-act", do), At("data-id", id),
			Flag("checked", in), describedBy(id)),
		El("div", El("label", At("for", "o-"+id), Text(label)),
			If(in && p.Q.Draft.Unit.Filled(id), El("span", Class("tags"), filledIn(id, label, false))), El("p", Class("small"),
				At("id", "m-"+id), Text(gist)), El("p", Class("spec"), At("id", "d-"+id), Text(spec))),
		El("span", Class("price"), At("id", "p-"+id), Text(priceText(p, id))),
		When(out, func() Part { return refusal(p, id, label) }),
		When(p.toldAt(id), func() Part { return p.Told.Draw() }),
		When(asked, func() Part { return why(p, id) }),
	)
}
