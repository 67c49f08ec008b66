package config

import (
	"fmt"
	"slices"

	"boxwright/config/quantity"
)

// Existing is a module that is there already, the plant's own or another
// maker's, as it was measured before it is mounted on a new chassis. A figure
// of 0 has not been measured: the usual one of the catalogue's existing body
// stands for it.
type Existing struct {
	Maker string `json:"maker,omitempty"` // whose it is and what it is called, in the owner's words
	Built int    `json:"built,omitempty"` // year

	LengthIn   quantity.Length `json:"length_in,omitempty"`
	WidthIn    quantity.Length `json:"width_in,omitempty"`
	HeightIn   quantity.Length `json:"height_in,omitempty"` // outside, floor underside to roof
	HeadroomIn quantity.Length `json:"headroom_in,omitempty"`
	AisleIn    quantity.Length `json:"aisle_in,omitempty"`

	// MassLb is the weight of the module as it will be mounted: with everything that stays
	// in it, without what is taken out. Its center counts from the front wall,
	// the centerline (positive to the curb side) and the floor.
	MassLb    quantity.Mass   `json:"mass_lb,omitempty"`
	TolLb     quantity.Mass   `json:"tol_lb,omitempty"` // half width of the likely range; 0 means 5 % is assumed
	Weighed   string          `json:"weighed,omitempty"`
	XIn       quantity.Length `json:"x_in,omitempty"`
	YIn       quantity.Length `json:"y_in,omitempty"`
	ZIn       quantity.Length `json:"z_in,omitempty"`
	Estimated bool            `json:"estimated,omitempty"` // the center was judged, not found by weighing

	WarrantyYears *int   `json:"warranty_years,omitempty"` // left on the structure, 0 where it ended; nil: not known
	Notes         string `json:"notes,omitempty"`
}

// Most bytes of the texts of an existing module.
const (
	MaxExistingText  = 160
	MaxExistingNotes = 1000
)

// ExistingRange is what a measured figure may be, by its JSON name; 0 always
// stands for "not measured". A figure outside the range is taken for a typing error.
// Common practice, no source.
func ExistingRange(name string) (least, most float64) {
	switch name {
	case "built":
		return 1950, 2200
	case "length_in":
		return 60, 300
	case "width_in":
		return 60, 110
	case "height_in":
		return 40, 130
	case "headroom_in":
		return 40, 100
	case "aisle_in":
		return 6, 60
	case "mass_lb":
		return 500, 20000
	case "tol_lb":
		return 1, 2000
	case "x_in":
		return 12, 290
	case "y_in":
		return -30, 30
	case "z_in":
		return 4, 90
	}
	return 0, 50 // years of warranty
}

func (e *Existing) check() (ps Problems) {
	add := func(code, name, text string) { ps = append(ps, Problem{"unit." + code, "existing " + name, text}) }
	for _, f := range []struct {
		name string
		v    float64
	}{
		{"built", float64(e.Built)}, {"length_in", float64(e.LengthIn)}, {"width_in", float64(e.WidthIn)}, {"height_in", float64(e.HeightIn)},
		{"headroom_in", float64(e.HeadroomIn)}, {"aisle_in", float64(e.AisleIn)}, {"mass_lb", float64(e.MassLb)}, {"tol_lb", float64(e.TolLb)},
		{"x_in", float64(e.XIn)}, {"y_in", float64(e.YIn)}, {"z_in", float64(e.ZIn)},
	} {
		if least, most := ExistingRange(f.name); f.v != 0 && !(f.v >= least && f.v <= most) {
			add("range", f.name, fmt.Sprintf("%v is outside %v to %v; 0 means not measured", f.v, least, most))
		}
	}
	if y := e.WarrantyYears; y != nil {
		if least, most := ExistingRange("warranty_years"); float64(*y) < least || float64(*y) > most {
			add("range", "warranty_years", fmt.Sprintf("%d is outside %v to %v", *y, least, most))
		}
	}
	if e.LengthIn > 0 && e.XIn >= e.LengthIn {
		add("range", "x_in", fmt.Sprintf("a center %v in behind the front wall is outside a module %v in long", e.XIn,
			e.LengthIn))
	}
	for _, t := range []struct {
		name, text string
		most       int
	}{{"maker", e.Maker, MaxExistingText}, {"weighed", e.Weighed, MaxExistingText}, {"notes", e.Notes,
		MaxExistingNotes}} {
		if len(t.text) > t.most {
			add("too-long", t.name, fmt.Sprintf("has %d bytes; the most is %d", len(t.text), t.most))
		}
	}
	return ps
}

// Measured reports whether the unit remounts an existing module, and what is
// known of that; the second is nil when nothing has been measured.
func (c *Catalogue) Measured(u *Unit) (remount bool, e *Existing) {
	if u == nil {
		return false, nil
	}
	if b := c.BodyByID(u.Body); b == nil || !b.Existing {
		return false, nil
	}
	return true, u.Existing
}

// BodyOf is the body of a unit, or nil: the catalogue's, and for an existing
// module that one with what was measured in place of its usual figures. The
// compartments are spread over the measured length.
func (c *Catalogue) BodyOf(u *Unit) *Body {
	b := c.BodyByID(u.Body)
	if b == nil || !b.Existing || u.Existing == nil {
		return b
	}
	e, m := u.Existing, *b
	set := func(to *quantity.Length, v quantity.Length) {
		if v != 0 {
			*to = v
		}
	}
	set(&m.LengthIn, e.LengthIn)
	set(&m.WidthIn, e.WidthIn)
	set(&m.HeightIn, e.HeightIn)
	set(&m.HeadroomIn, e.HeadroomIn)
	set(&m.AisleIn, e.AisleIn)
	if e.MassLb != 0 { // a tolerance not stated is then 5 %, not the usual one
		m.Mass.Lb, m.Mass.TolLb = e.MassLb, e.TolLb
	}
	if e.XIn != 0 {
		m.Mass.Zone, m.Mass.XIn = ZoneModule, e.XIn
	}
	set(&m.Mass.YIn, e.YIn)
	set(&m.Mass.ZIn, e.ZIn)
	if m.LengthIn != b.LengthIn && b.LengthIn > 0 {
		m.Compartments = slices.Clone(b.Compartments)
		for i := range m.Compartments {
			if m.Compartments[i].Along == "" {
				m.Compartments[i].XIn *= m.LengthIn / b.LengthIn
			}
		}
	}
	return &m
}

// For returns the catalogue that a unit is judged by: c itself, or for a remount a
// copy in which the existing body has its measured sizes and the remount options
// are standard. The copy has the same content hash and shares everything else.
func (c *Catalogue) For(u *Unit) *Catalogue {
	remount, _ := c.Measured(u)
	if !remount {
		return c
	}
	m := *c
	m.Bodies, m.Options = slices.Clone(c.Bodies), slices.Clone(c.Options)
	m.Bodies[c.index.bodies[u.Body]] = *c.BodyOf(u)
	for g := range c.index.members {
		usual := func(i int) bool { return c.Options[i].Remount }
		if slices.ContainsFunc(c.Members(g), usual) {
			for _, i := range c.Members(g) {
				m.Options[i].Standard = usual(i)
			}
		}
	}
	return &m
}
