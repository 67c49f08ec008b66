// Package space answers whether everything and everybody has room: the
// vehicle's overall sizes, headroom and walkway, storage, what rides in which
// compartment, seats, and how long the oxygen lasts.
package space

import (
	"fmt"
	"slices"

	"boxwright/config"
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
}

// Usual build-up of a module's wall and floor where the catalogue is silent.
// Common practice, no source.
const (
	tubeIn  = 2.0
	skinIn  = 0.125
	linerIn = 0.25
	boardIn = 0.75
)

// Measure computes the sheet. Lengths in inches, volumes in cubic feet; it
// never fails: what cannot be computed is a finding, and a number that is
// negative or not a number counts as zero and is named.
func Measure(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) *Sheet {
	s := new(Sheet)
	b := gather(cat, u, assume, &s.Report)
	if b == nil {
		return s
	}
	s.overall(b)
	s.inside(b)
	s.people(b)
	s.stow(b)
	s.oxygen(b)
	return s
}

// overall gives the vehicle's outside sizes, less what options stand out with:
// mirrors, lamps, steps and roof equipment are in no catalogue field.
func (s *Sheet) overall(b *vehicle) {
	ch, body := b.Chassis, b.Body
	record(s, b, "space.length", "Overall length, less bumper and step options", bareLength(ch, body), quantity.Inch)
	record(s, b, "space.width", "Overall width, less mirrors, lamps and trim",
		max(config.Clean(ch.WidthIn), config.Clean(body.WidthIn)), quantity.Inch)

	// The module stands between the top of frame and the floor; its underside
	// is a floor build-up below the floor.
	floor := config.Clean(ch.FloorHeightIn)
	f := config.Figure{Code: "space.height", Label: "Overall height, less roof equipment", Unit: quantity.Inch}
	roof := func(underside quantity.Length) float64 {
		return float64(max(config.Clean(ch.CabHeightIn), underside+config.Clean(body.HeightIn)))
	}
	frame := min(config.Clean(ch.FrameHeightIn), floor)
	f.Low, f.High = roof(frame), roof(floor)
	f.Value = roof(max(frame, floor-b.floorThickness()))
	s.bind(b, f)
	record(s, b, "space.length-all", "Overall length, with bumpers and steps", float64(b.length()), quantity.Inch)
	record(s, b, "space.height-all", "Overall height, with roof equipment", float64(b.height()), quantity.Inch)
	record(s, b, "space.loading-height", "Loading height at the rear, loaded", float64(b.loading()), quantity.Inch)
	if config.Clean(ch.TurningFt) > 0 {
		record(s, b, "space.turning-circle", "Turning circle between curbs", float64(ch.TurningFt), quantity.Foot)
	}
}

// inside gives what a person meets in the patient compartment.
func (s *Sheet) inside(b *vehicle) {
	body := b.Body
	wall := b.wallThickness()
	length := max(config.Clean(body.LengthIn)-2*wall, 0)
	width := max(config.Clean(body.WidthIn)-2*wall, 0)
	record(s, b, "space.module-length", "Length of the module, outside", config.Clean(body.LengthIn), quantity.Inch)
	record(s, b, "space.headroom", "Headroom over the floor", b.headroom(), quantity.Inch)
	record(s, b, "space.aisle", "Clear walkway beside the cot", b.aisle(), quantity.Inch)
	record(s, b, "space.inside-length", "Inside length of the patient compartment", length, quantity.Inch)
	record(s, b, "space.interior", "Inside volume of the patient compartment, before cabinets",
		volume(length, width, config.Clean(body.HeadroomIn)), quantity.CubicFoot)
	if l, w, known := b.bench(); known {
		record(s, b, "space.bench", "Squad bench, length", l, quantity.Inch)
		record(s, b, "space.bench-width", "Squad bench, width", w, quantity.Inch)
	}
	s.StorageFt3 = b.storage()
	record(s, b, "space.storage", "Enclosed inside storage", s.StorageFt3, quantity.CubicFoot)
}

// people counts places.
func (s *Sheet) people(b *vehicle) {
	cab, module := b.Cat.SeatsOf(b.Unit)
	for _, seat := range slices.Concat(cab, module) {
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

// record puts an exactly known value under its code.
func record[T number](s *Sheet, b *vehicle, code, label string, v T, unit string) {
	s.bind(b, config.Figure{Code: code, Label: label, Value: float64(v), Low: float64(v), High: float64(v), Unit: unit})
}

// bind takes the limit in force and reports when it is not kept.
func (s *Sheet) bind(b *vehicle, f config.Figure) {
	b.Assume.Bind(&f)
	s.Figures = append(s.Figures, f)
	if f.Met() {
		return
	}
	s.add(config.Finding{Code: f.Code, Severity: severity(f.Basis), Figure: &f, Basis: f.Basis,
		Text: fmt.Sprintf("%s is %s; %s asks for %s %s.", f.Label, show(f.Value, f.Unit), f.Source, f.Sense,
			show(f.Limit, f.Unit)),
		Remedy: "Choose another body or other options, or enter the purchaser's own limit."})
}

func (s *Sheet) add(f config.Finding) {
	f.Where = "Space"
	s.Findings = append(s.Findings, f)
}

func show(v float64, unit string) string { return quantity.US.Show(v, unit) }

// severity of a limit that is not kept: a rating or a text that was read
// stops, anything softer asks for a decision.
func severity(b config.Basis) config.Severity {
	if b == config.Rating || b == config.ReadInText {
		return config.Stop
	}
	return config.Warn
}
