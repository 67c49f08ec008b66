package equipment

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// stowage says what rides in which compartment, and lets it be moved.
func stowage(p *Page) Part {
	cat, s := p.Q.Edition.Cat, p.Q.Space
	places := []page.Choice{{"", "not stowed yet"}}
	c := page.Table{Caption: "Compartments", Class: "cards",
		Heads: []string{"Compartment, inside width × depth × height", ">Volume used", ">Load", "State"}}
	for i, u := range s.Compartments {
		places = append(places, page.Choice{u.ID, drawing.Letter(i) + " " + u.Label})
		load := p.Show(float64(u.MassLb), quantity.Pound)
		if u.LimitLb > 0 {
			load += " of " + p.Show(float64(u.LimitLb), quantity.Pound)
		}
		size := p.Plain(float64(u.WidthIn), quantity.Inch) + " × " + p.Plain(float64(u.DepthIn), quantity.Inch) +
			" × " + p.Show(float64(u.HeightIn), quantity.Inch)
		used := p.Show(float64(u.UsedFt3), quantity.CubicFoot) + " of " + p.Show(float64(u.Ft3), quantity.CubicFoot)
		switch gear := strings.Join(u.Gear, ", "); {
		case gear != "" && u.Ft3 == 0:
			size, used = "filled by "+gear, "no room left"
		case gear != "":
			size += " beside " + gear
		}
		if u.Holds != nil {
			size, used = "made for "+madeFor(p, u.Holds), "a mount"
		}
		c.Rows = append(c.Rows,
			[]Part{Many(El("b", Text(drawing.Letter(i))), Text(" "+u.Label), El("span", Class("how"), Text(size))),
				Text(used), Text(load), state(&u)})
	}
	e := page.Table{Caption: "Loose equipment", Class: "cards stowed", Heads: []string{"Item", ">Weight", "Rides in"}}
	loose := 0
	homeless := space.Unstowed(cat, &p.Q.Draft.Unit, p.System())
	for _, x := range p.Q.Draft.Unit.Carried {
		item := cat.EquipmentOf(&p.Q.Draft.Unit, x.Equipment)
		id := x.Equipment + "/" + x.Compartment
		if x.Compartment == "" {
			loose += x.Qty
		}
		count := ""
		if x.Qty > 1 {
			count = strconv.Itoa(x.Qty) + " × "
		}
		name := Many(Text(count+item.Label), practice(p, x, homeless[x.Equipment]))
		rides := El("select", At("id", "f-stow-"+id), At("data-act", "stow"), At("data-id", id),
			At("aria-label", "Rides in: "+item.Label), page.Options(x.Compartment, places))
		oneOut := If(x.Qty > 1 && x.Compartment != "", page.Action("take-out", id, "", "Take one out",
			Class("quiet nowrap screen"), At("id", "out-"+id), At("aria-label", "Take one out: "+item.Label)))
		e.Rows = append(e.Rows, []Part{name, Text(p.Show(float64(item.MassLb)*float64(x.Qty), quantity.Pound)),
			Many(rides, oneOut)})
	}
	if len(e.Rows) == 0 {
		return page.Block("What rides where",
			El("p", Class("soft"), Text("No gear is listed yet; list it above. "+page.Counted(p.Page))),
			compartments(c))
	}
	return page.Block("What rides where",
		El("div", Class("row-tools screen"),
			page.Action("suggest", "", "", "Suggest where everything rides", Class("main"), At("id", "suggest"),
				At("aria-disabled", strconv.FormatBool(loose == 0))),
			page.Action("take-out", "", "", "Take everything out", At("id", "empty-all")),
			El("span", Class("soft"), Text(page.Count(loose, "item", "items")+" left to stow"))),
		El("p", Class("how"),
			Text("The suggestion follows the catalogue's rules of what belongs inside or outside, low or within reach, "+
				"clean or dirty, puts what is heavy low, and balances axles and sides. What you stowed stays. It "+
				"is good, not proven the best.")),
		balance(p), e.Draw(), compartments(c),
		page.Inner("fronts", "As seen through the doors, to one scale", El("p", Class("how"),
			Text("What is not seen stands behind.")), drawing.Fronts(p.Page)),
		El("p", Class("how"), Text(space.StowCaution)))
}

// compartments is their table, folded.
func compartments(t page.Table) Part {
	return page.Inner("compartments", page.Count(len(t.Rows), "compartment", "compartments")+" and what is in them",
		t.Draw())
}

// madeFor lists what a mount holds.
func madeFor(p *Page, list []config.Aboard) string {
	var out []string
	for _, h := range list {
		out = append(out, strconv.Itoa(h.Qty)+" × "+p.Q.Edition.Cat.LabelOf(h.Equipment))
	}
	return strings.Join(out, ", ")
}

// practice says why a thing rides where it does, marked where that is against the
// catalogue's rules; of one that is not stowed it says none, why nothing takes it.
func practice(p *Page, line config.Carried, none string) Part {
	if line.Compartment == "" {
		return If(none != "", El("span", Class("how"), page.Mark(config.Warn), Text(" "+none)))
	}
	why := space.PracticeOf(p.Q.Edition.Cat, &p.Q.Draft.Unit, line)
	if why.Text == "" {
		return nil
	}
	return El("span", Class("how"), If(!why.Met, Many(page.Mark(config.Warn), Text(" "))), Text(why.Text))
}

// balance says how the unit stands on its axles and sides, with what rides in it.
func balance(p *Page) Part {
	var said []string
	for _, x := range []struct{ code, label string }{{"weight.front-axle", "front axle"},
		{"weight.rear-axle", "rear axle"},
		{"weight.side", "left and right differ by"}} {
		f, ok := p.Q.Figure(x.code)
		if !ok {
			continue
		}
		text := x.label + " " + p.Show(f.Value, f.Unit)
		if f.Sense != "" && f.Code != "weight.side" {
			text += ", " + p.Signed(f.Margin(), f.Unit) + " to its rating"
		}
		said = append(said, text)
	}
	if said == nil {
		return nil
	}
	return El("p", El("b", Text("As it stands now: ")), Text(strings.Join(said, "; ")+"."))
}

// state of a compartment in words, with the reason when it is not good.
func state(u *space.Use) Part {
	var m Part
	switch u.State {
	case space.Fits:
		m = page.Mark("")
	case space.Unproven:
		m = page.Mark(config.Warn)
	case space.Overloaded, space.TooBig:
		m = page.Mark(config.Stop)
	}
	words := string(u.State)
	if u.State == space.Empty && u.Gear != nil && u.Ft3 == 0 {
		words = "filled"
	}
	return Many(m, Text(" "+words), If(u.Why != "", El("span", Class("how"), Text(u.Why))))
}
