package drawing

import (
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Side is the unit from the street side with axle loads, dimensions, the
// center of gravity and what rides in each compartment.
func Side(p *page.Page) Part {
	q := p.Q
	c, o, g := q.Chassis, outlineOf(q), q.Weight.Gross
	base := o.top + 18 // y of the ground
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
	if !o.van { // frame rails, where they show
		d.add(page.Rect("thin", 20, y(float64(c.FrameHeightIn)), o.wheelbase+float64(c.FrameEndIn)-20, 8))
	}
	o.cabSide(d, y)
	if !o.van {
		o.moduleSide(d, y)
	}
	o.piecesSide(d, y)
	for i, u := range q.Space.Compartments {
		if u.Side != "street" || o.van {
			continue
		}
		w, h := float64(u.WidthIn), float64(u.HeightIn)
		x, top := o.start+float64(u.XIn)-w/2, y(o.floor+float64(u.ZIn)+h/2)
		d.add(page.Rect("door", x, top, w, h, At("rx", "1.5")), page.Trace("thin", "MH", x+w/2-2.5, top+h-3, x+w/2+2.5))
		if u.MassLb > 0 {
			d.label("small", x+w/2, top+13, Letter(i)+" "+p.Plain(float64(u.MassLb), quantity.Pound))
			said += " Compartment " + Letter(i) + ", " + u.Label + ": " + lb(u.MassLb) + " of equipment."
		} else {
			d.label("small", x+w/2, top+13, Letter(i))
		}
	}
	for _, axle := range []struct{ x, radius float64 }{{0, o.radius}, {o.wheelbase, o.model.RearWheel.Radius}} {
		x := axle.x
		for _, r := range []struct {
			class string
			share float64
		}{{"tire", 1}, {"hub", 0.62}, {"thin", 0.5}, {"tire", 0.14}} {
			d.add(El("circle", Class(r.class), At("cx", page.Coord(x)), At("cy", page.Coord(y(axle.radius))),
				At("r", page.Coord(axle.radius*r.share))))
		}
	}

	d.add(page.Trace("chain", "MHMV", left-3, y(z), x, x, y(z), base+18))
	d.up(left, base, y(z), in(z))
	d.gravity(x, y(z), float64(g.XTolIn), float64(g.ZTolIn))
	d.across(0, x, base+16, in(x))
	for _, axle := range []struct{ x, load, limit float64 }{{0, float64(g.FrontLb), float64(c.GAWRFrontLb)},
		{o.wheelbase, float64(g.RearLb), float64(c.GAWRRearLb)}} {
		d.add(page.Trace("load", "MV", axle.x, base+3, base+11), arrow(axle.x, base+19, 0, -8))
		d.label("strong", axle.x, base+32, p.Show(axle.load, quantity.Pound))
		d.label("small", axle.x, base+43, "of "+p.Show(axle.limit, quantity.Pound))
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

	return d.frame(said, left-12, 0, max(o.behind+36-left+12, p.Span), base+82,
		Text("Arrows: load on each axle at full load, and its rating. Lettered doors: compartments, with what they "+
			"carry in "+p.UnitName(quantity.Pound)+". "+gravityWords(p)+rangeNote))
}

// piecesSide draws what options bring as it is seen from the street side: bumpers, steps
// and boards, lamps and rails of that side, and what stands on the roof.
func (o *outline) piecesSide(d *picture, y func(float64) float64) {
	classes := map[string]string{"lamp": "lamp", "bar": "lamp", "strip": "lamp", "window": "glass", "rail": "thin",
		"trim": "thin", "bumper": "edge", "step": "edge", "board": "edge", "mirror": "edge", "unit": "edge",
		"vent": "edge", "mast": "edge", "antenna": "thin", "camera": "thin"}
	for i := range o.model.Parts {
		p := &o.model.Parts[i]
		class, drawn := classes[p.Kind]
		switch p.Face {
		case config.FaceStreet, config.FaceFront, config.FaceRear, config.FaceRoof:
		default:
			drawn = false
		}
		if p.Option != "" && drawn {
			d.add(page.Rect(class, p.X0, y(p.Z1), p.X1-p.X0, p.Z1-p.Z0, At("rx", "1")))
		}
	}
}

// arch cuts a wheel arch out of an edge at height z, drawn from behind the wheel
// to ahead of it: half the chord and the radius.
func (o *outline) arch(z, clear float64) (half, r float64) {
	r = o.radius + clear
	return math.Sqrt(max(r*r-(z-o.radius)*(z-o.radius), 1)), r
}

// cabSide is the chassis' own sheet metal: hood and cab, or the whole van.
func (o *outline) cabSide(d *picture, y func(float64) float64) {
	f, nose := o.form, o.front+3
	back := o.start - 1
	sill := y(f.sill)
	half, r := o.arch(f.sill, 3.5)
	top := y(o.cab)
	body, at := "MVQQL", []float64{nose, sill, y(f.nose), nose, y(f.hood - 3), nose + 9, y(f.hood), f.cowlX - 14,
		y(f.hood + 2), f.cowlX, y(f.cowlZ), f.headX, y(o.cab - 5)}
	if o.van && o.roof > o.cab { // a raised roof goes on from the windshield
		top = y(o.roof)
		body, at = body+"L", append(at, f.headX+24, top+7)
		f.headX += 25
	}
	body, at = body+"Q", append(at, f.headX+6, top, f.headX+16, top)
	f.headX = o.form.headX
	if o.van {
		back = o.end
		rear, _ := o.arch(f.sill, 3.5)
		body, at = body+"HQLQVHA", append(at, back-14, back-3, top, back-2, top+9, back, y(f.cowlZ), back, y(f.cowlZ-6),
			back, y(f.nose), sill, o.wheelbase+rear, r, 0, o.wheelbase-rear, sill)
	} else {
		body, at = body+"HV", append(at, back, sill)
	}
	d.add(page.Trace("edge", body+"HAHZ", append(at, half, r, 0, -half, sill, nose)...))
	end := min(back-3, f.door+44)
	head, foot := y(o.cab-9), y(f.cowlZ+1)
	d.add(
		// window
		page.Trace("glass", "MLHVZ", f.cowlX+8, foot, f.headX+5, head, end-3, foot),
		// door
		page.Trace("thin", "MLLHV", f.door, y(f.sill+4), f.door, foot+3, f.headX+3, head-3, end, y(f.sill+4)),
		// its sill
		page.Trace("thin", "MH", f.door, y(f.sill+4), end),
		// handle
		page.Trace("door", "MH", end-10, y(f.cowlZ-5), end-4),
		// lamp, bumper
		page.Rect("lamp", nose, y(f.nose+7), 8, 6, At("rx", "2")), page.Rect("edge", o.front, y(f.sill+6), 10, 8,
			At("rx", "2")),
		page.Rect("edge", f.cowlX+7, foot-11, 4, 11, At("rx", "1.5")), // mirror
	)
	if o.van {
		d.add(page.Rect("glass", o.wheelbase-52, head, 34, y(f.cowlZ+1)-head, At("rx", "3")),
			page.Trace("thin", "MHMV", end, y(f.cowlZ-3), back, back-20, y(f.cowlZ-3), top+8), page.Rect("lamp", back-5,
				y(f.cowlZ+4), 4, 14))
	}
}

// moduleSide is the box: roof radius, corner posts, rub rail, skirt with its
// wheel arch, and lamps.
func (o *outline) moduleSide(d *picture, y func(float64) float64) {
	const corner = 4.0
	skirt := o.skirt
	half, r := o.arch(skirt, 4.5)
	roof, foot := y(o.roof), y(skirt)
	d.add(
		page.Trace("edge", "MHAVHAHVAZ", o.start+corner, roof, o.end-corner, corner, 1, o.end, roof+corner, foot,
			o.wheelbase+half, r, 0, o.wheelbase-half, foot, o.start, roof+corner, corner, 1, o.start+corner, roof),
		page.Trace("thin", "MVMVMHMH", o.start+3, roof+3, foot, o.end-3, roof+3, foot, o.start, roof+4.5, o.end,
			o.start, foot-5, o.wheelbase-half),
		page.Trace("thin", "MH", o.wheelbase+half, foot-5, o.end),
	)
}
