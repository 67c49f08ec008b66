package weight

import (
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// TakeOff is the mass and center of a module from its geometry and
// construction, part by part. Stations count from the module: x behind its
// front wall, y right of the centerline, z above the top of its floor.
//
// Not in it: what options bring (their own masses say), floor covering,
// undercoat beyond a plain coat, paint, trim and sealant (the body's own mass
// says), and welding distortion or rework. Where the plant's drawings differ
// from the usual values, the drawings decide.
type TakeOff struct {
	Lb    quantity.Mass   `json:"lb"`
	XIn   quantity.Length `json:"x_in"`
	YIn   quantity.Length `json:"y_in"`
	ZIn   quantity.Length `json:"z_in"`
	Parts []Part          `json:"parts"`
}

// Part is a line of the take-off: Count pieces alike. LengthIn and WidthIn are
// those of one piece; a tube has no width, a bulk (board, batt, coat, weld)
// gives its amount in Amount and Per instead of pieces.
type Part struct {
	Section  string          `json:"section"` // frame, skins, doors, floor, insulation, lining, compartments, welds
	Label    string          `json:"label"`
	Stock    string          `json:"stock,omitempty"` // what it is cut from; empty for bulk
	LengthIn quantity.Length `json:"length_in,omitempty"`
	WidthIn  quantity.Length `json:"width_in,omitempty"`
	Count    int             `json:"count,omitempty"`
	Amount   float64         `json:"amount,omitempty"` // of a bulk
	Per      string          `json:"per,omitempty"`    // its unit: "ft2", "ft3" or "in of weld"
	Lb       quantity.Mass   `json:"lb"`               // of all pieces together
	// of sheet, before openings for doors and compartments are cut out
	BlankLb quantity.Mass   `json:"blank_lb,omitempty"`
	XIn     quantity.Length `json:"x_in"` // center of them all
	YIn     quantity.Length `json:"y_in"`
	ZIn     quantity.Length `json:"z_in"`
}

// Sections of a take-off, in the order of the work.
const (
	SectionFrame        = "frame"
	SectionSkins        = "skins"
	SectionDoors        = "doors"
	SectionFloor        = "floor"
	SectionInsulation   = "insulation"
	SectionLining       = "lining"
	SectionCompartments = "compartments and cabinets"
	SectionWelds        = "welds"
)

// Usual values of the trade where the catalogue is silent: common practice, no
// source, unless another is named.
const (
	doorWallIn     = 2      // thickness of a door
	sideDoorWIn    = 30.0   // entry door of 30 x 63 in: KKK-A-1822, from memory
	sideDoorHIn    = 63.0   //
	rearLeafWIn    = 24.0   // a leaf of the rear doors
	rearLeafHIn    = 60.0   //
	doorPanIn      = 0.090  // inner pan of a door
	doorFittingsLb = 14.0   // hinges, latch and window of one leaf
	boxSheetIn     = 0.125  // walls of an exterior compartment
	cabinetLbFt3   = 4.5    // inside cabinet with its doors, by volume
	undercoatLbFt2 = 0.125  // one coat of 20 mil at a specific gravity of 1.2
	cornerLegIn    = 3.0    // leg of the corner extrusion
	boardIn        = 0.75   // sub-floor board
	weldLegIn      = 0.125  // fillet
	stitchShare    = 1 / 4. // 1 in of weld in every 4 in
)

// TakeOffOf takes the module's mass off its geometry. change may be nil; it
// overrides parts of the construction. A body without shell, or one whose
// sizes are not sensible, gives nil.
func TakeOffOf(b *config.Body, change *config.ShellChange) *TakeOff {
	if b == nil || b.Shell == nil {
		return nil
	}
	return takeOffOf(b, changed(*b.Shell, change), true)
}

// takeOffOf lists the parts, or finds only their sum, which is much faster.
func takeOffOf(b *config.Body, s config.Shell, listed bool) *TakeOff {
	m, ok := newModule(b, s)
	if !ok {
		return nil
	}
	if m.listed = listed; listed {
		m.parts = make([]Part, 0, 64)
	}
	m.frame()
	m.skins()
	m.doors()
	m.floor()
	m.insulation()
	m.lining()
	m.compartments()
	m.welds()
	if !finite(m.lb, m.mx, m.my, m.mz) || !(m.lb > 0) {
		return nil
	}
	return &TakeOff{
		Lb: quantity.Mass(m.lb), Parts: m.parts,
		XIn: quantity.Length(m.mx / m.lb), YIn: quantity.Length(m.my / m.lb), ZIn: quantity.Length(m.mz / m.lb),
	}
}

// changed is the shell with an option's changes; nothing else touches it.
func changed(s config.Shell, c *config.ShellChange) config.Shell {
	if c == nil {
		return s
	}
	if c.Weld != "" {
		s.Weld = c.Weld
	}
	set := func(field *quantity.Length, v quantity.Length) {
		if v != 0 {
			*field = v
		}
	}
	set(&s.CornerPostIn, c.CornerPostIn)
	set(&s.SideSkinIn, c.SideSkinIn)
	set(&s.InsulationIn, c.InsulationIn)
	set(&s.FrameSpacingIn, c.FrameSpacingIn)
	if c.InsulationLbFt3 != 0 {
		s.InsulationLbFt3 = c.InsulationLbFt3
	}
	return s
}

// minus is the mass that has to be added to base to give t, and where; it may
// be negative. False when there is no difference. A difference that moves mass
// without adding any cannot be placed and is left out.
func (t *TakeOff) minus(base *TakeOff) (TakeOff, bool) {
	if t == nil || base == nil {
		return TakeOff{}, false
	}
	d := TakeOff{Lb: t.Lb - base.Lb}
	if math.Abs(float64(d.Lb)) < 1e-9 {
		return TakeOff{}, false
	}
	at := func(a, b quantity.Length) quantity.Length {
		return (quantity.Length(t.Lb)*a - quantity.Length(base.Lb)*b) / quantity.Length(d.Lb)
	}
	d.XIn, d.YIn, d.ZIn = at(t.XIn, base.XIn), at(t.YIn, base.YIn), at(t.ZIn, base.ZIn)
	return d, true
}

// Section is the mass of one section of the take-off.
func (t *TakeOff) Section(name string) quantity.Mass {
	var sum quantity.Mass
	for _, p := range t.Parts {
		if p.Section == name {
			sum += p.Lb
		}
	}
	return sum
}

// takeOff is the module with every construction option of the unit in.
func (l *loader) takeOff() *TakeOff {
	shell := *l.body.Shell
	for _, p := range l.u.Picks {
		if o := l.cat.OptionByID(p.Option); o != nil {
			shell = changed(shell, o.Shell)
		}
	}
	return takeOffOf(l.body, shell, true)
}

// baseShell is the take-off of the body as it comes; nil for a van.
func (l *loader) baseShell() *TakeOff {
	if l.body.Shell == nil || l.shellLb != nil {
		return l.shellLb
	}
	l.shellLb = takeOffOf(l.body, *l.body.Shell, false)
	return l.shellLb
}
