// Package space answers whether everything and everybody has room: the
// vehicle's overall sizes, headroom and walkway, storage, what rides in which
// compartment, seats, and how long the oxygen lasts.
package space

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

// Sheet is the space take-off of one unit.
type Sheet struct {
	config.Report
	Compartments []Use            // in the catalogue's order
	Unstowed     []config.Carried // carried, but not assigned to a compartment of this unit
	StorageFt3   quantity.Volume  // enclosed, inside
	Seats        []config.Seat    // designated seats, cab first
	Cots         []config.Seat    // places for patients
	Oxygen       Oxygen
	AirCylinders []Cylinder  // of medical air
	AirHours     []HoursAt   // of medical air, by flow; none without
	Model        *body.Model // of the unit; nil when its chassis or body is not known
}

// Measure computes the sheet. Lengths in inches, volumes in cubic feet; it
// never fails: what cannot be computed is a finding, and a number that is
// negative or not a number counts as zero and is named.
func Measure(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) *Sheet {
	s := Figures(cat, u, assume)
	if s.Model != nil {
		for _, c := range s.Model.Collisions() {
			s.add(c.Finding())
		}
	}
	return s
}

// Figures computes the sheet without what stands in the way of what, for trying many options.
func Figures(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) *Sheet {
	s := new(Sheet)
	b := gather(cat, u, assume, &s.Report)
	if b == nil {
		return s
	}
	s.Model = b.model
	s.overall(b)
	s.road(b)
	s.inside(b)
	s.people(b)
	s.stow(b)
	s.oxygen(b)
	s.air(b)
	s.water(b)
	s.litters(b)
	return s
}

// overall gives the vehicle's outside sizes, bare and with everything on.
func (s *Sheet) overall(b *vehicle) {
	m := b.model
	bare, all := m.Bare(), m.Overall()
	record(s, b, "space.length", "Overall length, less bumper and step options", bare.LengthIn, quantity.Inch)
	width := "Overall width, less mirrors, lamps and trim"
	if m.RearWheel.Outer > max(m.Half, m.CabHalf) {
		width = "Overall width over the rear tires, less mirrors, lamps and trim"
	}
	record(s, b, "space.width", width, bare.WidthIn, quantity.Inch)
	record(s, b, "space.height", "Overall height, less roof equipment", bare.HeightIn, quantity.Inch)
	record(s, b, "space.length-all", "Overall length, with bumpers and steps", all.LengthIn, quantity.Inch,
		all.AssumedLength)
	record(s, b, "space.width-all", "Overall width, with lamps and rails, less mirrors", all.WidthIn, quantity.Inch,
		all.AssumedWidth)
	record(s, b, "space.height-all", "Overall height, with lamps and roof equipment, less antennas", all.HeightIn,
		quantity.Inch, all.AssumedHeight)
	record(s, b, "space.loading-height", "Loading height at the rear, loaded", all.LoadingIn, quantity.Inch)
	bay := m.Bay()
	record(s, b, "space.bay-length", "Length taken in the bay, rear doors open", bay.LengthIn, quantity.Inch,
		bay.AssumedLength)
	record(s, b, "space.bay-width", "Width taken in the bay, side door open", bay.WidthIn, quantity.Inch,
		bay.AssumedWidth)
}

// road gives what decides where the unit can go.
func (s *Sheet) road(b *vehicle) {
	m := b.model
	if ft := body.TurningFt(b.Chassis); ft > 0 {
		record(s, b, "space.turning-circle", "Turning circle between curbs", ft, quantity.Foot)
		wall, assumed := m.WallFt()
		record(s, b, "space.turning-wall", "Turning circle between walls", wall, quantity.Foot, assumed)
	}
	approach, departure, breakover := m.Angles()
	for _, x := range []struct {
		code, label string
		body.Angle
	}{{"space.approach", "Approach angle, loaded", approach}, {"space.departure", "Departure angle, loaded", departure},
		{"space.breakover", "Breakover angle, loaded", breakover}} {
		if x.Deg < 90 { // nothing stands out there, or the catalogue says too little
			record(s, b, x.code, x.label, x.Deg, quantity.Degree, x.Assumed)
		}
	}
	allowed(s, b, "space.rear-overhang", "Rear overhang of the wheelbase, less steps", m.RearOverhang(),
		quantity.Percent, b.Chassis.OverhangMostPct, "")
	all := m.Overall()
	allowed(s, b, "space.frontal", "Frontal area, with lamps and roof equipment", m.FrontalFt2(), quantity.SquareFoot,
		b.Chassis.FrontalMostFt2, cmp.Or(all.AssumedHeight, all.AssumedWidth))
}

// allowed is a figure that the maker of the chassis may limit.
func allowed(s *Sheet, b *vehicle, code, label string, v float64, unit string, most float64, assumed string) {
	f := config.Figure{Code: code, Label: label, Value: v, Low: v, High: v, Unit: unit, Assumed: assumed}
	if most > 0 && most <= 1e4 {
		f.Limit, f.Sense, f.Source, f.Basis = most, config.AtMost, "the maker of the chassis", config.Rating
	}
	s.bind(b, f)
}

// inside gives what a person meets in the patient compartment.
func (s *Sheet) inside(b *vehicle) {
	box := b.Body
	wall := quantity.Length(config.Clean(b.model.Wall))
	if b.model.Van {
		wall = 0 // its sizes are inside ones
	}
	length := max(config.Clean(box.LengthIn)-2*wall, 0)
	width := max(config.Clean(box.WidthIn)-2*wall, 0)
	record(s, b, "space.module-length", map[bool]string{false: "Length of the module, outside",
		true: "Length of the conversion"}[box.Kind == "van"], config.Clean(box.LengthIn), quantity.Inch)
	headroom, assumed := b.model.Headroom()
	record(s, b, "space.headroom", "Headroom over the floor", headroom, quantity.Inch, assumed)
	record(s, b, "space.aisle", "Clear walkway beside the cot", b.aisle(), quantity.Inch)
	record(s, b, "space.inside-length", "Inside length of the patient compartment", length, quantity.Inch)
	record(s, b, "space.interior", "Inside volume of the patient compartment, before cabinets",
		volume(length, width, quantity.Length(body.HeadroomIn(b.Body))), quantity.CubicFoot)
	rear := body.DoorsOf(b.Body)
	record(s, b, "space.rear-door", "Rear doorway, smaller of width and height",
		min(rear.RearWidthIn, rear.RearHeightIn), quantity.Inch)
	ends := b.ends()
	if ends.seatKnown {
		record(s, b, "space.seat-cot", "Clear length from attendant seat to cot, the seat foremost", ends.seat,
			quantity.Inch, ends.assumed)
	}
	if ends.doorKnown {
		record(s, b, "space.cot-door", "Clear length from cot to rear doors", ends.door, quantity.Inch,
			ends.assumed)
	}
	if v, assumed, known := b.floods(); known {
		record(s, b, "space.flood-height", "Lowest flood light above the ground, loaded", v, quantity.Inch, assumed)
	}
	if v, known := b.frontRoom(); known {
		record(s, b, "space.front-compartment", "Right front compartment, of 30 × 18 × 40 in", v, quantity.Percent)
	}
	if l, w, assumed, known := b.bench(); known {
		record(s, b, "space.bench", "Squad bench, length", l, quantity.Inch, assumed)
		record(s, b, "space.bench-width", "Squad bench, width", w, quantity.Inch, assumed)
	}
	s.StorageFt3 = max(b.storage(), 0)
	record(s, b, "space.storage", "Enclosed inside storage", s.StorageFt3, quantity.CubicFoot)
}

// people counts places.
func (s *Sheet) people(b *vehicle) {
	for _, seat := range slices.Concat(b.model.CabSeats, b.model.Seats) {
		if seat.Kind == "cot" {
			s.Cots = append(s.Cots, seat)
		} else {
			s.Seats = append(s.Seats, seat)
		}
	}
	record(s, b, "space.seats", "Designated seats", len(s.Seats), quantity.Count)
	record(s, b, "space.patients", "Patients on cots", len(s.Cots), quantity.Count)
}

// number is anything a figure can hold.
type number interface{ ~int | ~float64 }

// record puts an exactly known value under its code, or one that rests on a part of an
// assumed size.
func record[T number](s *Sheet, b *vehicle, code, label string, v T, unit string, assumed ...string) {
	s.bind(b, config.Figure{Code: code, Label: label, Value: float64(v), Low: float64(v), High: float64(v), Unit: unit,
		Assumed: strings.Join(assumed, "")})
}

// bind takes the limit in force and reports when it is not kept.
func (s *Sheet) bind(b *vehicle, f config.Figure) {
	b.Assume.Bind(&f)
	s.Figures = append(s.Figures, f)
	if f.Met() {
		return
	}
	text := fmt.Sprintf("%s is %s; %s asks for %s %s.", f.Label, show(f.Value, f.Unit), f.Source, f.Sense,
		show(f.Limit, f.Unit))
	if f.Assumed != "" {
		text += " Assumed size, not stated: " + f.Assumed + "."
	}
	remedy := "Choose another body or other options, or enter the purchaser's own limit."
	if f.Basis == config.FromMemory {
		remedy = "The number is from memory: check the standard, or enter the purchaser's own limit in Standards."
	}
	s.add(config.Finding{Code: f.Code, Severity: f.Basis.Severity(), Figure: &f, Basis: f.Basis,
		Text: text, Remedy: remedy})
}

func (s *Sheet) add(f config.Finding) {
	f.Where = "Space"
	s.Findings = append(s.Findings, f)
}

func show(v float64, unit string) string { return quantity.US.Show(v, unit) }
