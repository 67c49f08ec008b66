package drawing

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// outer are the pieces that stand out of the plan's outline.
var outer = map[string]bool{"bumper": true, "step": true, "board": true, "mirror": true}

// furniture are the pieces that stand inside and are neither seats nor compartments.
func furniture(p *body.Part) bool {
	switch p.Kind {
	case "bench", "counter", "console":
		return true
	case "unit", "trim", "opening":
		return p.Face == config.FaceFree
	}
	return false
}

// Plan is the unit from above with seats, cots, compartments and what is in
// them, the load on each wheel end, and the center of gravity.
func Plan(p *page.Page) Part {
	q := p.Q
	o, g := outlineOf(q), q.Weight.Gross
	mid := o.width/2 + 24
	y := func(right float64) float64 { return mid - right } // curb side above
	lb := func(v quantity.Mass) string { return p.Show(float64(v), quantity.Pound) }
	d := new(picture)
	inside := lining(o.model)
	if o.van {
		inside.u0 = o.start // it has no front wall
	}
	shell := sheet{shapes: shellTop(o.model)}
	shell.rect(layerThin, inside)
	d.add(onGround(shell.shapes, mid))
	d.add(page.Trace("door", "MHMHMH", o.end-4, y(0), o.end+1, o.end-2.5, y(24), o.end+1, o.end-2.5, y(-24), o.end+1))
	d.clear(float64(g.XIn), y(float64(g.YIn)), float64(g.XTolIn), float64(g.YTolIn))
	for i := range o.model.Parts {
		part := &o.model.Parts[i]
		switch {
		case part.Kind == body.KindWheel:
			d.add(page.Rect("hidden", part.X0, y(part.Y1), part.X1-part.X0, part.Y1-part.Y0, At("rx", "3")))
		case part.Option != "" && outer[part.Kind]:
			d.add(page.Rect("edge", part.X0, y(part.Y1), part.X1-part.X0, part.Y1-part.Y0, At("rx", "1.5")))
		}
	}
	said := []string{}
	// Wheel ends: left front, right front, left rear, right rear.
	for i, w := range g.Wheels {
		x, foot := 0.0, y(o.width/2)-8
		if i > 1 {
			x = o.wheelbase
		}
		if i%2 == 0 {
			foot = y(-o.width/2) + 16
		}
		d.label("strong", x, foot, lb(w.Lb))
		said = append(said, w.Pos+" wheel end "+lb(w.Lb)+" of "+lb(w.RatedLb))
	}
	d.label("small", o.wheelbase/2, y(o.width/2)-8, "curb side")
	d.label("small", o.wheelbase/2, y(-o.width/2)+16, "street side")

	d.across(o.ahead, o.behind, y(-o.width/2)+34, "overall "+p.Show(o.behind-o.ahead, quantity.Inch))
	d.up(o.behind+14, y(-o.width/2), y(o.width/2), p.Show(o.width, quantity.Inch)+" wide")

	var fixed []string
	for i := range o.model.Parts {
		if part := &o.model.Parts[i]; furniture(part) {
			class := page.Either(part.Kind == "opening", "store", "thin")
			d.add(page.Rect(class, part.X0, y(part.Y1), part.X1-part.X0, part.Y1-part.Y0))
			if !slices.Contains(fixed, part.Label) {
				fixed = append(fixed, part.Label)
			}
		}
	}

	// What hangs overhead is dashed, as draughtsmen have it.
	for _, u := range q.Space.Compartments {
		class := "store"
		if u.ZIn-u.HeightIn/2 > 40 {
			class = "store hidden"
		}
		x, top := o.start+float64(u.XIn-u.WidthIn/2), y(float64(u.YIn+u.DepthIn/2))
		d.add(page.Rect(class, x, top, float64(u.WidthIn), float64(u.DepthIn)))
		for _, it := range u.Placed {
			d.add(page.Rect("item", x+it.At[0], top+it.At[1], it.Size[0], it.Size[1]))
		}
	}
	var people, letters, stores []string
	for i, s := range seatsOf(q) {
		x, yy := float64(s.XIn), y(float64(s.YIn))
		number := strconv.Itoa(i + 1)
		if s.Kind == "cot" {
			d.add(page.Rect("cot", x-38, yy-11.5, 76, 23, At("rx", "4")),
				page.Rect("thin", x-35, yy-8, 14, 16, At("rx", "3")))
		} else {
			d.add(page.Rect("seat", x-11, yy-8.5, 16, 17, At("rx", "3")))
			switch backOf(i < len(q.Space.Model.CabSeats), float64(s.YIn)) {
			case rearward:
				d.add(page.Trace("seat", "MV", x+2.5, yy-6.5, yy+6.5))
			case forward:
				d.add(page.Trace("seat", "MV", x-8.5, yy-6.5, yy+6.5))
			case curbward:
				d.add(page.Trace("seat", "MH", x-9, yy-6, x+3))
			case streetward:
				d.add(page.Trace("seat", "MH", x-9, yy+6, x+3))
			}
		}
		d.label("", x-3, yy+3.5, number)
		people = append(people, number+" "+s.Label)
	}
	for i, u := range q.Space.Compartments {
		name := Letter(i)
		x, yy := o.start+float64(u.XIn), y(float64(u.YIn))
		carries := ""
		if u.MassLb > 0 {
			carries = " (" + lb(u.MassLb) + ")"
			d.label("", x, yy+3.5, name+" "+p.Plain(float64(u.MassLb), quantity.Pound))
		} else {
			d.label("small", x, yy+3.5, name)
			if u.Gear != nil {
				carries = " (fitted gear)"
			}
		}
		letters, stores = append(letters, name), append(stores, name+" "+u.Label+carries)
	}
	d.gravity(float64(g.XIn), y(float64(g.YIn)), float64(g.XTolIn), float64(g.YTolIn))
	seats, places := strings.Join(people, "; ")+".", strings.Join(stores, "; ")+"."
	if none := page.Unassigned(p, letters); none != "" {
		places += " " + none
	}
	built := strings.Join(fixed, "; ") + "."
	over := "" // a sheet of the drawing set measures the body
	if m := o.model; m.RearWheel.Outer > max(m.Half, m.CabHalf) {
		over = "The width is over the rear tires; the body is " + p.Show(2*m.Half, quantity.Inch) + " wide. "
	}
	return d.frame("plan", "Plan, front to the left, curb side above, "+p.Show(o.behind-o.ahead, quantity.Inch)+
		" overall, "+
		p.Show(o.width, quantity.Inch)+" wide. "+over+strings.Join(said, "; ")+". Places: "+seats+" Compartments: "+places+
		" Built in: "+built+" "+gravityWords(p),
		min(o.ahead, -32)-6, 0, o.behind+20-min(o.ahead, -32)+6, y(-o.width/2)+40,
		El("p", El("b", Text("Places: ")), Text(seats)), El("p", El("b", Text("Compartments: ")), Text(places)),
		If(fixed != nil, El("p", El("b", Text("Built in: ")), Text(built))),
		El("p", Text(over+"Loads stand beside the wheel ends, at full load. "+gravityWords(p)+rangeNote)))
}
