package weight

import (
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// TakeOff is the mass and center of a module from its geometry and
// construction, part by part. Stations count from the module: x behind its
// front wall, y right of the centerline, z above the top of its floor.
//
// In it are doors with their hinges and seals, compartments with their doors,
// sills, mounts, wheel boxes, skirts and the harness. Not in it: latches, windows,
// ceiling, floor covering, undercoat and paint, which options bring, trim,
// fasteners and sealant (the body's own mass says), and welding distortion. Where the plant's drawings differ
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
	Section  string          `json:"section"` // one of those below
	Label    string          `json:"label"`
	Stock    string          `json:"stock,omitempty"` // what it is cut from; empty for bulk
	LengthIn quantity.Length `json:"length_in,omitempty"`
	WidthIn  quantity.Length `json:"width_in,omitempty"`
	Count    int             `json:"count,omitempty"`
	Amount   float64         `json:"amount,omitempty"` // of a bulk
	Per      string          `json:"per,omitempty"`    // its unit, such as "ft2", "ft3" or "in of weld"
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
	SectionMounting     = "sills, mounts and wheel boxes"
	SectionHarness      = "harness"
	SectionWelds        = "welds"
)

// Usual values of the trade where the catalogue is silent: common practice, no
// source, unless another is named.
const (
	doorWallIn     = 2      // thickness of a door
	doorPanIn      = 0.090  // inner pan of a door
	doorHingesLb   = 6.0    // hinges, stop and seal of one leaf; latch and window are options
	hatchFitsLb    = 5.5    // hinge, latch, seal and stay of a compartment door
	rollCurtainLb  = 2.0    // a square foot of a roll-up door's slats
	rollTracksLb   = 9.0    // its tracks, barrel, spring and catch
	sillHighIn     = 4.0    // lengthwise sills under the floor, on the frame
	sillWideIn     = 2.0    //
	mountLb        = 9.0    // a body mount: bracket, isolator, bolts
	shortBodyIn    = 146    // to here 4 mounts a side, above 5: KKK-A-1822E 3.10.7
	wheelBoxLongIn = 34.0   // a wheel box of sheet: along, across, above and below the floor
	wheelBoxWideIn = 22.0   //
	wheelBoxHighIn = 9.0    //
	wheelAlong     = 0.65   // where the wheel boxes are, of the length
	skirtIn        = 10.0   // of the sides below the floor's underside
	harnessLb      = 60.0   // 12 V and 125 V panels, loom and grounds, and for each inch of length
	harnessLbIn    = 0.35   //
	boxSheetIn     = 0.125  // walls of an exterior compartment
	cabinetLbFt3   = 4.5    // inside cabinet with its doors, by volume
	cornerLegIn    = 3.0    // leg of the corner extrusion
	boardIn        = 0.75   // sub-floor board
	weldLegIn      = 0.125  // fillet
	stitchShare    = 1 / 4. // 1 in of weld in every 4 in
)

// takeOffOf takes the module's mass off its geometry and the construction s. It lists the
// parts, or finds only their sum, which is much faster. Sizes that are not sensible give nil.
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
	m.mounting()
	m.harness()
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
	set(&s.SideDoorIn, c.SideDoorIn)
	set(&s.RearDoorHIn, c.RearDoorHIn)
	if c.CompDoors != "" {
		s.CompDoors = c.CompDoors
	}
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
	shell, b := *l.body.Shell, l.built
	for _, p := range l.u.Picks {
		if o := l.cat.OptionByID(p.Option); o != nil {
			shell = changed(shell, o.Shell)
			b = l.withCompartments(b, o)
		}
	}
	return takeOffOf(b, shell, true)
}

// withCompartments is the body with the outside compartments that an option adds, and
// without those that it takes the place of.
func (l *loader) withCompartments(b *config.Body, o *config.Option) *config.Body {
	outside := func(c config.Compartment) bool { return c.Side != "inside" && c.Holds == nil }
	if len(o.Displaces) == 0 && !slices.ContainsFunc(o.Compartments, outside) {
		return b
	}
	m := *b
	m.Compartments = slices.DeleteFunc(slices.Clone(b.Compartments), o.Takes)
	for _, c := range o.Compartments {
		if outside(c) {
			m.Compartments = append(m.Compartments, l.planes.Compartment(c))
		}
	}
	return &m
}

// baseShell is the take-off of the body as it comes; nil for a van.
func (l *loader) baseShell() *TakeOff {
	if l.body.Shell == nil || l.shellLb != nil {
		return l.shellLb
	}
	l.shellLb = takeOffOf(l.built, *l.body.Shell, false)
	return l.shellLb
}
