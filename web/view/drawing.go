package view

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	. "boxwright/web/view/markup"
)

// Drawings are to scale, one drawing unit an inch, front to the left: the side
// view shows the street side, the plan has the curb side above. Sizes that the
// catalogue does not give (tires, hood) are drawn as is usual and carry no
// number.

// n writes a coordinate, to a tenth of an inch.
func n(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

func rect(class string, x, y, w, h float64, parts ...Part) Part {
	return El("rect", Class(class), At("x", n(x)), At("y", n(y)), At("width", n(w)), At("height", n(h)), Many(parts...))
}

func path(class, d string) Part { return El("path", Class(class), At("d", d)) }

func words(class string, x, y float64, text string) Part {
	return El("text", Class(class), At("x", n(x)), At("y", n(y)), Text(text))
}

// outline is what both views need of the vehicle, in inches.
type outline struct {
	front, rear       float64 // bumper face and rearmost point, behind the front axle
	start, end        float64 // module's walls
	floor, roof       float64
	top               float64 // highest point
	wheelbase, radius float64
	width             float64
	van               bool
}

func outlineOf(c *config.Chassis, b *config.Body) outline {
	o := outline{
		front: -float64(c.FrontOverhangIn), start: float64(c.BodyStartIn), wheelbase: float64(c.WheelbaseIn),
		floor: float64(c.FloorHeightIn), van: b.Kind == "van", width: float64(b.WidthIn), radius: 15.5,
	}
	if c.GVWRLb > 16000 {
		o.radius = 18.5
	}
	o.end = o.start + float64(b.LengthIn)
	o.roof = o.floor + float64(b.HeightIn)
	o.top = max(o.roof, float64(c.CabHeightIn))
	if o.van {
		o.end = o.wheelbase + float64(c.FrameEndIn)
		o.roof = float64(c.CabHeightIn)
		o.top = o.roof
	}
	if o.width == 0 {
		o.width = float64(c.WidthIn)
	}
	o.rear = max(o.end, o.wheelbase+o.radius)
	return o
}

func sideView(p *Page) Part {
	q := p.Q
	c, o := q.Chassis, outlineOf(q.Chassis, q.Body)
	g := q.Weight.Gross
	base := o.top + 14 // y of the ground
	y := func(z float64) float64 { return base - z }
	lb := func(v quantity.Mass) string { return p.show(float64(v), quantity.Pound) }
	in := func(v float64) string { return p.show(v, quantity.Inch) }

	var parts []Part
	add := func(x ...Part) { parts = append(parts, x...) }
	add(path("ground", "M"+n(o.front-20)+" "+n(base)+"H"+n(o.rear+20)))
	add(cab(c, o, y))
	if !o.van {
		// The skirt hangs below the floor and is cut away over the wheel.
		skirt := o.floor - 13
		arch := o.radius + 4
		add(path("edge", "M"+n(o.start)+" "+n(y(o.roof))+"H"+n(o.end)+"V"+n(y(skirt))+"H"+n(o.wheelbase+arch)+"A"+n(arch)+" "+n(arch)+" 0 0 0 "+n(o.wheelbase-arch)+" "+n(y(skirt))+"H"+n(o.start)+"Z"))
		add(path("thin", "M"+n(o.start)+" "+n(y(o.floor))+"H"+n(o.end)))
	}
	for _, u := range q.Space.Compartments {
		if u.Side != "street" {
			continue
		}
		x, z := o.start+float64(u.XIn-u.WidthIn/2), o.floor+float64(u.ZIn+u.HeightIn/2)
		add(rect("door", x, y(z), float64(u.WidthIn), float64(u.HeightIn)))
		if u.MassLb > 0 {
			add(words("small mid", x+float64(u.WidthIn)/2, y(z)+float64(u.HeightIn)/2, lb(u.MassLb)))
		}
	}
	for _, x := range []float64{0, o.wheelbase} {
		add(El("circle", Class("tyre"), At("cx", n(x)), At("cy", n(y(o.radius))), At("r", n(o.radius))), El("circle", Class("hub"), At("cx", n(x)), At("cy", n(y(o.radius))), At("r", n(o.radius*0.5))))
	}
	// Center of gravity with its likely range.
	x, z := float64(g.XIn), float64(g.ZIn)
	add(path("cg-range", "M"+n(x-float64(g.XTolIn))+" "+n(y(z))+"H"+n(x+float64(g.XTolIn))+"M"+n(x)+" "+n(y(z-float64(g.ZTolIn)))+"V"+n(y(z+float64(g.ZTolIn)))))
	add(El("circle", Class("cg"), At("cx", n(x)), At("cy", n(y(z))), At("r", "3")))
	add(words("strong", x+6, y(z)-5, "Center "+in(x)+" behind front axle, "+in(z)+" high"))
	// Axle loads.
	load := func(x float64, m quantity.Mass, limit quantity.Mass) {
		add(path("load", "M"+n(x)+" "+n(base+2)+"V"+n(base+14)+"M"+n(x-3.5)+" "+n(base+9)+"L"+n(x)+" "+n(base+15)+"L"+n(x+3.5)+" "+n(base+9)))
		add(words("strong mid", x, base+25, lb(m)), words("small mid", x, base+34, "of "+lb(limit)))
	}
	load(0, g.FrontLb, c.GAWRFrontLb)
	load(o.wheelbase, g.RearLb, c.GAWRRearLb)
	// Dimensions.
	add(dimension(o.front, 0, base+46, in(-o.front)), dimension(0, o.wheelbase, base+46, "wheelbase "+in(o.wheelbase)), dimension(o.wheelbase, o.rear, base+46, in(o.rear-o.wheelbase)))
	add(dimension(o.front, o.rear, base+60, "overall "+in(o.rear-o.front)))
	if !o.van {
		add(dimension(o.start, o.end, y(o.roof)-5, "module "+in(o.end-o.start)))
	}
	add(path("dim", "M"+n(o.rear+12)+" "+n(base)+"V"+n(y(o.top))+"M"+n(o.rear+9)+" "+n(base)+"H"+n(o.rear+15)+"M"+n(o.rear+9)+" "+n(y(o.top))+"H"+n(o.rear+15)))
	add(words("small", o.rear+15, y(o.top/2), in(o.top)))

	said := "Side view from the street side, front to the left. Front axle " + lb(g.FrontLb) + " of " + lb(c.GAWRFrontLb) + "; rear axle " + lb(g.RearLb) + " of " + lb(c.GAWRRearLb) + "; gross " + lb(g.TotalLb) + " of " + lb(c.GVWRLb) +
		". Wheelbase " + in(o.wheelbase) + ", overall length " + in(o.rear-o.front) + ", height " + in(o.top) + ". Center of gravity " + in(x) + " behind the front axle, likely within " + in(float64(g.XTolIn)) + ", and " + in(z) + " above the ground, likely within " + in(float64(g.ZTolIn)) + "."
	return drawing("side", said, o.front-24, 0, o.rear-o.front+72, base+68, parts)
}

// cab is the chassis' own sheet metal: a hood and cab, or the whole van.
func cab(c *config.Chassis, o outline, y func(float64) float64) Part {
	sill, hood, cowl, top := 17.0, 44.0, 8.0, float64(c.CabHeightIn)
	if c.Cab == "medium" {
		sill, hood, cowl = 22, 58, 20
	} else if c.Cab == "cab-chassis" {
		hood, cowl = 50, 22
	}
	back := o.start - 2
	if o.van {
		back = o.end
	}
	roof := cowl + 24
	body := "M" + n(o.front) + " " + n(y(sill)) + "V" + n(y(hood-8)) + "Q" + n(o.front) + " " + n(y(hood)) + " " + n(o.front+10) + " " + n(y(hood)) +
		"L" + n(cowl) + " " + n(y(hood+8)) + "L" + n(roof) + " " + n(y(top)) + "H" + n(back) + "V" + n(y(sill)) + "Z"
	glass := "M" + n(cowl+5) + " " + n(y(hood+9)) + "L" + n(roof+2) + " " + n(y(top-5)) + "H" + n(min(back-4, roof+34)) + "V" + n(y(hood+9)) + "Z"
	return Many(path("edge", body), path("glass", glass))
}

// dimension is a measured line with its text above.
func dimension(from, to, y float64, text string) Part {
	return Many(
		path("dim", "M"+n(from)+" "+n(y)+"H"+n(to)+"M"+n(from)+" "+n(y-3)+"V"+n(y+3)+"M"+n(to)+" "+n(y-3)+"V"+n(y+3)),
		words("small mid", (from+to)/2, y-2, text),
	)
}

// drawing frames a picture with the same numbers in words.
func drawing(id, said string, x, y, w, h float64, parts []Part) Part {
	return El("figure", El("svg", Class("drawing"), At("role", "img"), At("aria-label", said), At("viewBox", n(x)+" "+n(y)+" "+n(w)+" "+n(h)), Many(parts...)),
		El("figcaption", Class("hidden-text"), At("id", "said-"+id), Text(said)))
}

func planView(p *Page) Part {
	q := p.Q
	c, o := q.Chassis, outlineOf(q.Chassis, q.Body)
	mid := o.width/2 + 14
	y := func(right float64) float64 { return mid - right } // curb side above
	var parts []Part
	add := func(x ...Part) { parts = append(parts, x...) }
	half := float64(c.WidthIn) / 2
	add(path("edge", "M"+n(o.start-2)+" "+n(y(half))+"H"+n(o.front+14)+"Q"+n(o.front)+" "+n(y(half))+" "+n(o.front)+" "+n(y(half-14))+"V"+n(y(-half+14))+"Q"+n(o.front)+" "+n(y(-half))+" "+n(o.front+14)+" "+n(y(-half))+"H"+n(o.start-2)+"Z"))
	add(rect("edge", o.start, y(o.width/2), o.end-o.start, o.width))
	for _, axle := range []float64{0, o.wheelbase} {
		track, wide := float64(c.TrackFrontIn), 8.0
		if axle > 0 {
			track = float64(c.TrackRearIn)
			if c.RearTires.Count == 4 {
				wide = 18
			}
		}
		for _, side := range []float64{track / 2, -track / 2} {
			add(rect("thin", axle-o.radius, y(side)-wide/2, 2*o.radius, wide))
		}
	}
	var said []string
	for _, u := range q.Space.Compartments {
		x, top := o.start+float64(u.XIn-u.WidthIn/2), y(float64(u.YIn+u.DepthIn/2))
		add(rect("store", x, top, float64(u.WidthIn), float64(u.DepthIn)))
		if u.MassLb > 0 {
			add(words("small mid", x+float64(u.WidthIn)/2, top+float64(u.DepthIn)/2+2.5, p.show(float64(u.MassLb), quantity.Pound)))
			said = append(said, u.Label+" "+p.show(float64(u.MassLb), quantity.Pound)+" of equipment")
		}
	}
	// Places for people: cots as long as a cot is, seats as squares.
	cabSeats, inside := q.Edition.Cat.SeatsOf(&q.Draft.Unit)
	place := func(s config.Seat, dx float64) {
		x, yy := dx+float64(s.XIn), y(float64(s.YIn))
		if s.Kind == "cot" {
			add(rect("cot", x-38, yy-11.5, 76, 23, At("rx", "4")), words("small mid", x, yy+2.5, s.Label))
		} else {
			add(rect("seat", x-8.5, yy-8.5, 17, 17, At("rx", "3")))
		}
		said = append(said, s.Label)
	}
	for _, s := range cabSeats {
		place(s, 0)
	}
	for _, s := range inside {
		place(s, o.start)
	}
	add(words("small mid", (o.start+o.end)/2, 9, "curb side"), words("small mid", (o.start+o.end)/2, 2*mid-3, "street side"))
	add(dimension(o.start, o.end, 2*mid+12, p.show(o.end-o.start, quantity.Inch)+" × "+p.show(o.width, quantity.Inch)+" wide"))
	return drawing("plan", "Plan, front to the left, curb side above. "+strings.Join(said, "; ")+".", o.front-10, 0, o.rear-o.front+30, 2*mid+20, parts)
}
