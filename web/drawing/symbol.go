package drawing

import (
	"math"

	"boxwright/config/body"
)

// symbol draws a part in the rectangle that it takes. Seen square to the face it is
// fixed to it shows what it is; from elsewhere its outline.
func symbol(p *body.Part, f frame2, square bool) []Shape {
	var s sheet
	if draw, ok := symbols[p.Kind]; ok && square {
		draw(&s, f)
		return s.shapes
	}
	s.rect(plain(p.Kind), f)
	return s.shapes
}

// plain is the layer of a part's outline.
func plain(kind string) string {
	switch kind {
	case "lamp", "bar", "strip":
		return layerLamp
	case "window":
		return layerGlass
	case "seat", "bench", "litter":
		return layerSeat
	case "cot":
		return layerCot
	case "cabinet", "counter", "compartment", "console":
		return layerStore
	case "rail", "trim", "antenna", "camera", "duct", "speaker":
		return layerThin
	case body.KindFuel, body.KindFrame, body.KindWheelBox, "tank", "battery":
		return layerHidden
	}
	return layerEdge
}

var symbols = map[string]func(*sheet, frame2){
	"lamp": func(s *sheet, f frame2) {
		s.rounded(layerLamp, f, 1)
		s.rounded(layerThin, f.in(math.Min(1, f.high()/5)), 0.6)
	},
	"bar": func(s *sheet, f frame2) {
		s.rounded(layerLamp, f, 1.5)
		n := math.Max(2, math.Round(f.wide()/9))
		for i := 1.0; i < n; i++ {
			s.upright(layerThin, f, i/n)
		}
	},
	"strip": func(s *sheet, f frame2) { s.rect(layerLamp, f); s.across(layerThin, f, 0.5) },
	"window": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 2)
		s.rounded(layerGlass, f.in(1), 1.5)
	},
	"door": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 2)
		s.rounded(layerThin, f.in(1.5), 1.5)
		s.line(layerDoor, f.at(0.12, 0.46), f.at(0.3, 0.46))
		hinges(s, f, 1)
	},
	"hatch":       func(s *sheet, f frame2) { s.rounded(layerEdge, f, 2); s.rounded(layerThin, f.in(2), 1) },
	"compartment": outsideDoor,
	"cabinet":     cabinet,
	"counter":     func(s *sheet, f frame2) { s.rect(layerStore, f); s.across(layerThin, f, 0.92) },
	"console":     func(s *sheet, f frame2) { s.rounded(layerStore, f, 1); s.rounded(layerThin, f.in(1.5), 1) },
	"step": func(s *sheet, f frame2) {
		s.rect(layerEdge, f)
		n := math.Max(2, math.Round(f.wide()/4))
		for i := 1.0; i < n; i++ {
			s.upright(layerThin, f, i/n)
		}
	},
	"vent": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 1)
		for i := 1.0; i < 5; i++ {
			s.across(layerThin, f, i/5)
		}
	},
	"unit": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 2)
		s.circle(layerThin, f.at(0.5, 0.5), math.Min(f.wide(), f.high())*0.38)
	},
	"camera": func(s *sheet, f frame2) {
		s.rect(layerEdge, f)
		s.circle(layerThin, f.at(0.5, 0.5), math.Min(f.wide(), f.high())/4)
	},
	"seat": func(s *sheet, f frame2) {
		s.rounded(layerSeat, f, 3)
		s.rounded(layerSeat, frame2{f.u0, f.u1, f.v0, f.v0 + f.high()*0.35}, 2)
	},
	"bench": func(s *sheet, f frame2) {
		s.rounded(layerSeat, f, 2)
		for _, u := range []float64{1.0 / 3, 2.0 / 3} {
			s.upright(layerThin, f, u)
		}
	},
}

// hinges of a leaf at its left or right edge: u is 0 or 1.
func hinges(s *sheet, f frame2, u float64) {
	for _, v := range []float64{0.12, 0.5, 0.88} {
		p := f.at(u, v)
		s.line(layerDoor, Point{p.U, p.V - 1.5}, Point{p.U, p.V + 1.5})
	}
}

// outsideDoor is that of an outside compartment: a frame, a leaf or two, and latches.
func outsideDoor(s *sheet, f frame2) {
	s.rounded(layerEdge, f, 1.5)
	s.rounded(layerThin, f.in(1.2), 1)
	latch := func(u float64) {
		c := f.at(u, 0.5)
		s.rounded(layerDoor, frame2{c.U - 2, c.U + 2, c.V - 1.5, c.V + 1.5}, 0.8)
	}
	if f.wide() > 34 { // two leaves
		s.upright(layerThin, f.in(1.2), 0.5)
		latch(0.5)
		hinges(s, f, 0)
		hinges(s, f, 1)
		return
	}
	latch(0.16)
	hinges(s, f, 1)
}

// cabinet is one inside: leaves as wide as a hand finds them, with their knobs.
func cabinet(s *sheet, f frame2) {
	s.rect(layerStore, f)
	n := math.Max(1, math.Round(f.wide()/20))
	for i := range int(n) {
		leaf := frame2{f.u0 + f.wide()*float64(i)/n, f.u0 + f.wide()*float64(i+1)/n, f.v0, f.v1}.in(1)
		s.rect(layerThin, leaf)
		s.circle(layerDoor, leaf.at(0.12, 0.5), 0.7)
	}
}

// cotTop is a cot from above.
func cotTop(f frame2) []Shape {
	var s sheet
	s.rounded(layerCot, f, 4)
	s.rounded(layerThin, frame2{f.u0 + 3, f.u0 + 17, f.v0 + 3, f.v1 - 3}, 3)
	return s.shapes
}

// seatTop is a seat from above, its back behind.
func seatTop(f frame2) []Shape {
	var s sheet
	s.rounded(layerSeat, f, 3)
	s.upright(layerThin, f, 0.85)
	return s.shapes
}
