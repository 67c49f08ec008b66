package drawing

import (
	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// latchIn is how far a latch reaches up and down from the middle of its door.
const latchIn = 2.0

// Side is the unit from the street side with axle loads, dimensions, the center of
// gravity and the weight of what rides in each compartment of that side.
func Side(p *page.Page) Part {
	q := p.Q
	c, o, g := q.Chassis, outlineOf(q), q.Weight.Gross
	street := ViewOf(o.model, "street")
	_, _, _, high := street.Bounds()
	base := max(o.top+18, high+2) // y of the ground; an antenna stands above the top
	y := func(z float64) float64 { return base - z }
	lb := func(v quantity.Mass) string { return p.Show(float64(v), quantity.Pound) }
	in := func(v float64) string { return p.Show(v, quantity.Inch) }
	d := new(picture)
	said := "Side view from the street side, front to the left. Front axle " + lb(g.FrontLb) + " of " +
		lb(c.GAWRFrontLb) + "; rear axle " + lb(g.RearLb) + " of " + lb(c.GAWRRearLb) + "; gross " + lb(g.TotalLb) +
		" of " + lb(c.GVWRLb) +
		". Wheelbase " + in(o.wheelbase) + ", overall length " + in(o.behind-o.ahead) + ", height " + in(o.top) + ". " +
		gravityWords(p)

	x, z, left := float64(g.XIn), float64(g.ZIn), o.ahead-14
	d.clear(x, y(z), float64(g.XTolIn), float64(g.ZTolIn))
	d.add(page.Trace("ground", "MH", o.ahead-8, base, o.behind+6))
	shapes := street.shapes()
	for i := range o.model.Parts { // the letters of compartments keep off what is marked and mounted on their doors
		p := &o.model.Parts[i]
		if p.Face != config.FaceStreet {
			continue
		}
		at := [4]float64{p.X0, y(p.Z1), p.X1, y(p.Z0)}
		if p.Kind == "compartment" || p.Kind == "door" { // and off the latch
			mid := (at[1] + at[3]) / 2
			at[1], at[3] = mid-latchIn, mid+latchIn
		}
		d.taken = append(d.taken, at)
	}
	d.add(onGround(shapes, base))
	for i, u := range q.Space.Compartments {
		if u.Side != "street" || o.van {
			continue
		}
		w, h := float64(u.WidthIn), float64(u.HeightIn)
		x, top := o.start+float64(u.XIn)-w/2, y(o.floor+float64(u.ZIn)+h/2)
		text := Letter(i)
		if u.MassLb > 0 {
			text += " " + p.Plain(float64(u.MassLb), quantity.Pound)
			said += " Compartment " + Letter(i) + ", " + u.Label + ": " + lb(u.MassLb) + " of equipment."
		}
		d.labelIn("small", [4]float64{x, top, x + w, top + h}, text)
	}
	d.add(page.Trace("chain", "MHMV", left-3, y(z), x, x, y(z), base+18))
	d.up(left, base, y(z), in(z))
	d.gravity(x, y(z), float64(g.XTolIn), float64(g.ZTolIn))
	d.across(0, x, base+16, in(x))
	for _, axle := range []struct{ x, load, limit float64 }{{0, float64(g.FrontLb), float64(c.GAWRFrontLb)},
		{o.wheelbase, float64(g.RearLb), float64(c.GAWRRearLb)}} {
		d.add(page.Trace("load", "MV", axle.x, base+3, base+11), arrow(axle.x, base+19, 0, -8))
		d.label("strong", axle.x, base+31, p.Show(axle.load, quantity.Pound))
		d.label("small", axle.x, base+44, "of "+p.Show(axle.limit, quantity.Pound))
	}
	d.across(o.ahead, 0, base+60, in(-o.ahead))
	d.across(0, o.wheelbase, base+60, "wheelbase "+in(o.wheelbase))
	d.across(o.wheelbase, o.behind, base+60, in(o.behind-o.wheelbase))
	d.across(o.ahead, o.behind, base+76, "overall "+in(o.behind-o.ahead))
	if !o.van {
		d.across(o.start, o.end, y(o.roof)-6, "module "+in(o.end-o.start))
	}
	d.up(o.behind+14, base, y(o.floor), in(o.floor))
	d.up(o.behind+30, base, y(o.top), in(o.top))

	return d.frame("side", said, left-12, 0, max(o.behind+36-left+12, p.Span), base+82,
		Text("Arrows: load on each axle at full load, and its rating. Lettered doors: compartments, with what they "+
			"carry in "+p.UnitName(quantity.Pound)+". "+gravityWords(p)+rangeNote))
}
