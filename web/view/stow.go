package view

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/space"
	. "boxwright/web/view/markup"
)

// stowage says what rides in which compartment, and lets it be moved.
func stowage(p *Page) Part {
	cat, s := p.Q.Edition.Cat, p.Q.Space
	places := []choice{{"", "not stowed yet"}}
	c := table{caption: "Compartments", class: "cards", heads: []string{"Compartment, inside width × depth × height", ">Volume used", ">Load", "State"}}
	for i, u := range s.Compartments {
		places = append(places, choice{u.ID, letter(i) + " " + u.Label})
		load := p.show(float64(u.MassLb), quantity.Pound)
		if u.LimitLb > 0 {
			load += " of " + p.show(float64(u.LimitLb), quantity.Pound)
		}
		size := p.plain(float64(u.WidthIn), quantity.Inch) + " × " + p.plain(float64(u.DepthIn), quantity.Inch) + " × " + p.show(float64(u.HeightIn), quantity.Inch)
		c.rows = append(c.rows, []Part{Many(El("b", Text(letter(i))), Text(" "+u.Label), El("span", Class("how"), Text(size))),
			Text(p.show(float64(u.UsedFt3), quantity.CubicFoot) + " of " + p.show(float64(u.Ft3), quantity.CubicFoot)), Text(load), state(&u)})
	}
	e := table{caption: "Loose equipment", class: "cards", heads: []string{"Item", ">How many", ">Mass", "Rides in", ""}}
	loose := 0
	for _, x := range p.Q.Draft.Unit.Carried {
		item := cat.EquipmentByID(x.Equipment)
		id := x.Equipment + "/" + x.Compartment
		tools := El("span")
		if x.Compartment == "" {
			loose += x.Qty
		} else {
			tools = action("take-out", id, "", "Take one out", Class("quiet nowrap screen"), At("id", "out-"+id), At("aria-label", "Take one out: "+item.Label))
		}
		e.rows = append(e.rows, []Part{Text(item.Label), Text(strconv.Itoa(x.Qty)), Text(p.show(float64(item.MassLb)*float64(x.Qty), quantity.Pound)),
			El("select", At("id", "f-stow-"+id), At("data-act", "stow"), At("data-id", id), At("aria-label", "Rides in: "+item.Label), options(x.Compartment, places)), tools})
	}
	if len(e.rows) == 0 {
		return block("What rides where", El("p", Class("soft"), Text("Nothing loose is carried yet; add it in Needs.")), c.draw())
	}
	return block("What rides where",
		El("div", Class("row-tools screen"),
			action("suggest", "", "", "Suggest where everything rides", Class("main"), At("id", "suggest"), At("aria-disabled", strconv.FormatBool(loose == 0))),
			action("take-out", "", "", "Take everything out", At("id", "empty-all")),
			El("span", Class("soft"), Text(count(loose, "thing waits", "things wait")+" to be stowed"))),
		El("p", Class("how"), Text("The suggestion places the largest first and then moves and exchanges while axles and sides come closer to balance. What you stowed stays. It is a good one, not proven the best.")),
		e.draw(), c.draw(), El("p", El("b", Text("As they are seen through the doors, to one scale; what is not seen stands behind"))), fronts(p),
		El("p", Class("how"), Text(space.StowCaution)))
}

// state of a compartment in words, with the reason when it is not good.
func state(u *space.Use) Part {
	var m Part
	switch u.State {
	case space.Fits:
		m = mark("")
	case space.Unproven:
		m = mark(config.Warn)
	case space.Overloaded, space.TooBig:
		m = mark(config.Stop)
	}
	return Many(m, Text(" "+string(u.State)), If(u.Why != "", El("span", Class("how"), Text(u.Why))))
}

// fronts draws each loaded compartment as seen through its door, to one scale,
// in the arrangement that was found.
func fronts(p *Page) Part {
	const scale = 3
	return El("div", Class("fronts"), Each(p.Q.Space.Compartments, func(i int, u space.Use) Part {
		if len(u.Placed) == 0 {
			return nil
		}
		w, h := float64(u.WidthIn), float64(u.HeightIn)
		parts := []Part{rect("store", 0, 0, w, h)}
		numbers := map[string]int{}
		var names []string
		things := slices.Clone(u.Placed)
		// The farthest is drawn first, so that what stands before it covers it.
		slices.SortStableFunc(things, func(a, b space.Placed) int { return cmp.Compare(b.At[1], a.At[1]) })
		for _, x := range things {
			if numbers[x.Equipment] == 0 {
				numbers[x.Equipment] = len(names) + 1
				names = append(names, strconv.Itoa(len(names)+1)+" "+p.Q.Edition.Cat.LabelOf(x.Equipment))
			}
			left, top := x.At[0], h-x.At[2]-x.Size[2]
			parts = append(parts, rect("item", left, top, x.Size[0], x.Size[2]), words("mid", left+x.Size[0]/2, top+x.Size[2]/2+1.5, strconv.Itoa(numbers[x.Equipment])))
		}
		legend := letter(i) + " " + u.Label + ", " + p.show(float64(u.MassLb), quantity.Pound) + ": " + strings.Join(names, "; ")
		return El("figure", El("svg", Class("drawing front"), At("role", "img"), At("aria-label", "Through the door of compartment "+legend), At("width", n(scale*w+6)), At("height", n(scale*h+6)), At("viewBox", n(-1)+" "+n(-1)+" "+n(w+2)+" "+n(h+2)), Many(parts...)),
			El("figcaption", Class("legend"), Text(legend)))
	}))
}
