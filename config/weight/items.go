package weight

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

const (
	// missingTol is assumed of a mass whose tolerance is not stated.
	missingTol = 0.05
	// A mass or station beyond these is a slip of the keyboard, not a thing.
	mostLb = 1e6
	mostIn = 1e4
	// Fuel changes no full-tank figure, since the chassis' curb weights include it,
	// only weighings with a part-full tank. Densities are from memory.
	dieselLbGal, gasolineLbGal = 7.1, 6.1
	// Loose equipment that has no compartment yet rides in the middle of the
	// module, this high above its floor.
	unstowedZIn = 24
)

// loader turns a unit's parts into masses at stations.
type loader struct {
	cat    *config.Catalogue
	u      *config.Unit
	assume *config.Assumptions
	ch     *config.Chassis
	body   *config.Body
	planes body.Planes
	built  *config.Body // the body with every compartment in its place

	tracks     bool    // both tracks are usable
	occupantLb float64 // what one person counts
	patientLb  float64
	findings   []config.Finding
	shellLb    *TakeOff // of the body as it comes, computed once
}

func newLoader(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) *loader {
	if cat == nil || u == nil {
		return nil
	}
	l := &loader{cat: cat, u: u, assume: assume, ch: cat.ChassisByID(u.Chassis), body: cat.BodyOf(u)}
	if l.ch == nil || l.body == nil {
		return l
	}
	l.planes = body.PlanesOf(l.ch, l.body)
	built := *l.body
	built.Compartments = make([]config.Compartment, 0, len(l.body.Compartments))
	for _, c := range l.body.Compartments {
		built.Compartments = append(built.Compartments, l.planes.Compartment(c))
	}
	l.built = &built
	if assume == nil {
		l.assume = &config.Assumptions{}
		l.note(config.Warn, "weight.assumptions.missing", "people", "No rule set is in force, so people count 150 lb "+
			"and nothing but the vehicle's ratings is judged.", "Choose a rule set.")
	}
	ok := func(v float64) bool { return v > 0 && v < 1000 }
	l.occupantLb, l.patientLb = float64(l.assume.OccupantLb.Value), float64(l.assume.PatientLb.Value)
	if !ok(l.occupantLb) {
		if assume != nil {
			l.note(config.Warn, "weight.assumptions.occupant", "people",
				fmt.Sprintf("A person of %v lb is not sensible; 150 lb is counted.", l.occupantLb),
				"Enter the weight of one person, such as 150 (49 CFR 567.4(g)(3)).")
		}
		l.occupantLb = 150
	}
	if !ok(l.patientLb) {
		l.patientLb = l.occupantLb
	}
	return l
}

func (l *loader) note(sev config.Severity, code, where, text, remedy string) {
	l.findings = append(l.findings, config.Finding{Code: code, Severity: sev, Where: where, Text: text, Remedy: remedy,
		Basis: config.Computed})
}

// usable reports whether axle loads can be computed at all, and notes every
// number of the chassis that is wrong.
func (l *loader) usable() bool {
	if l.ch == nil || l.body == nil {
		return false
	}
	ok := true
	need := func(name string, v float64, fatal bool) bool {
		if v > 0 && v < mostLb {
			return true
		}
		sev, says := config.Warn, "figures that need it are left out"
		if fatal {
			ok, sev, says = false, config.Stop, "no weight can be computed"
		}
		l.note(sev, "weight.chassis.bad", "chassis "+l.ch.Label,
			fmt.Sprintf("Its %s of %v is not above zero, so %s.", name, v, says), "Correct the catalogue.")
		return false
	}
	c := l.ch
	need("wheelbase", float64(c.WheelbaseIn), true)
	need("curb weight on the front axle", float64(c.CurbFrontLb), true)
	need("curb weight on the rear axle", float64(c.CurbRearLb), true)
	need("height of the center of gravity", float64(c.CGHeightIn), true)
	need("GVWR", float64(c.GVWRLb), false)
	need("front GAWR", float64(c.GAWRFrontLb), false)
	need("rear GAWR", float64(c.GAWRRearLb), false)
	front := need("front track", float64(c.TrackFrontIn), false)
	rear := need("rear track", float64(c.TrackRearIn), false)
	l.tracks = front && rear
	return ok
}

// refusals explains a unit that cannot be weighed at all.
func refusals(cat *config.Catalogue, u *config.Unit, l *loader) []config.Finding {
	if l != nil && len(l.findings) > 0 {
		return l.findings
	}
	bad := &loader{}
	switch {
	case cat == nil:
		bad.note(config.Stop, "weight.catalogue.missing", "catalogue",
			"There is no catalogue, so nothing can be weighed.", "Load a catalogue.")
	case u == nil:
		bad.note(config.Stop, "weight.unit.missing", "unit", "There is no unit to weigh.",
			"Choose a chassis and a module.")
	default:
		if l.ch == nil {
			bad.note(config.Stop, "weight.chassis.unknown", "chassis",
				fmt.Sprintf("The chassis %q is not in this edition, so nothing can be weighed.", u.Chassis),
				"Choose a chassis.")
		}
		if l.body == nil {
			bad.note(config.Stop, "weight.body.unknown", "module",
				fmt.Sprintf("The module %q is not in this edition, so nothing can be weighed.", u.Body),
				"Choose a module.")
		}
	}
	return bad.findings
}

// unit lists every mass of the unit.
func (l *loader) unit() []Item {
	l.existing()
	items := l.base()
	for _, p := range l.u.Picks {
		o := l.cat.OptionByID(p.Option)
		switch {
		case o == nil:
			l.note(config.Stop, "weight.option.unknown", "option "+p.Option,
				fmt.Sprintf("The option %q is not in this edition and is not weighed.", p.Option),
				"Take it out or load the edition that has it.")
			continue
		case p.Qty < 1 || p.Qty > 999:
			l.note(config.Stop, "weight.option.quantity", o.Label,
				fmt.Sprintf("A quantity of %d is not weighed.", p.Qty), "Enter a quantity from 1 up.")
			continue
		}
		l.unweighed(o)
		for _, it := range l.option(o) {
			items = append(items, l.times(it, p.Qty))
		}
	}
	items = append(items, l.carried(l.stowage(false))...)
	slices.SortStableFunc(items, func(a, b Item) int { return rank(a.Kind) - rank(b.Kind) })
	return items
}

func rank(k Kind) int {
	return slices.Index([]Kind{KindChassis, KindFluid, KindModule, KindOption, KindPerson, KindPatient, KindEquipment},
		k)
}

// base lists what no option brings and what is not loose: chassis, fuel, the
// module as it comes, and the people in the cab.
func (l *loader) base() []Item {
	var items []Item
	add := func(it Item) {
		if l.sound(&it) {
			items = append(items, it)
		}
	}
	for _, it := range l.chassis() {
		add(it)
	}
	if t := l.baseShell(); t == nil && l.body.Shell != nil {
		l.note(config.Stop, "weight.shell.bad", "module "+l.body.Label, "Its sizes or construction are outside what "+
			"can be built, so the weight of its shell is missing here.", "Correct length, width, height, doors and "+
			"shell in the catalogue.")
	} else if t != nil {
		add(l.shellItem(l.body.ID+"-shell", "Module shell, from its take-off", "", KindModule, t.Lb, t.XIn, t.YIn,
			t.ZIn))
	}
	if m := &l.body.Mass; m.Lb != 0 && !m.Derived {
		label := l.body.Label + ", fittings"
		if l.body.Existing {
			label = l.body.Label
		}
		add(l.placed(l.body.ID, label, "", KindModule, m))
	}
	for _, s := range l.ch.CabSeats {
		add(l.person(s, "", s.XIn, s.YIn, s.ZIn))
	}
	return items
}

// chassis is the bare truck and its full tank; together they weigh exactly
// what the chassis' curb weights say.
func (l *loader) chassis() []Item {
	c := l.ch
	total := float64(c.CurbFrontLb + c.CurbRearLb)
	truck := Item{
		ID: c.ID, Label: c.Label, Kind: KindChassis, Qty: 1, Lb: quantity.Mass(total), TolLb: c.CurbTolLb,
		XIn: quantity.Length(float64(c.CurbRearLb) / total * float64(c.WheelbaseIn)), YIn: c.CGYIn, ZIn: c.CGHeightIn,
	}
	if !(c.CurbTolLb > 0) {
		truck.TolLb = missingTol * truck.Lb
	}
	density := dieselLbGal
	if c.Fuel == "gasoline" {
		density = gasolineLbGal
	}
	x, y, z, ok := l.planes.Fuel(c)
	fuel := Item{
		ID: "fuel", Label: fmt.Sprintf("Fuel, %v gal full tank", c.FuelGal), Kind: KindFluid, Qty: 1,
		Lb: quantity.Mass(c.FuelGal * density), XIn: quantity.Length(x), YIn: quantity.Length(y),
		ZIn: quantity.Length(z),
	}
	if !ok || !(fuel.Lb > 0) || fuel.Lb > truck.Lb/4 || !finite(x, y, z) {
		return []Item{truck}
	}
	dry := truck
	dry.Label += ", without fuel"
	dry.Lb -= fuel.Lb
	dry.XIn = quantity.Length((total*float64(truck.XIn) - float64(fuel.Lb)*float64(fuel.XIn)) / float64(dry.Lb))
	dry.YIn = quantity.Length((total*float64(truck.YIn) - float64(fuel.Lb)*float64(fuel.YIn)) / float64(dry.Lb))
	dry.ZIn = quantity.Length((total*float64(truck.ZIn) - float64(fuel.Lb)*float64(fuel.ZIn)) / float64(dry.Lb))
	return []Item{dry, fuel}
}

// option lists what one of the option brings: its own mass, what it changes in
// the module's construction, and the people on its seats.
func (l *loader) option(o *config.Option) []Item {
	var items []Item
	add := func(it Item) {
		if l.sound(&it) {
			items = append(items, it)
		}
	}
	if m := l.massOf(o); m != nil && m.Lb != 0 && !m.Derived {
		add(l.placed(o.ID, o.Label, o.ID, KindOption, m))
	}
	built := l.withCompartments(l.built, o)
	if base := l.baseShell(); base != nil && (o.Shell != nil || built != l.built) {
		t := takeOffOf(built, changed(*l.body.Shell, o.Shell), false)
		if t == nil {
			l.note(config.Stop, "weight.shell.bad", o.Label, "What it changes in the module's construction is "+
				"outside what can be built, so the change is not weighed.",
				"Correct its shell change in the catalogue.")
		}
		if d, ok := t.minus(base); ok {
			add(l.shellItem(o.ID+"-shell", o.Label+", change of the module shell", o.ID, KindOption, d.Lb, d.XIn, d.YIn,
				d.ZIn))
		}
	}
	for _, s := range o.Seats {
		s = l.planes.Seat(s)
		x, y, z := config.StationAt(l.ch, l.body, config.ZoneModule, s.XIn, s.YIn, s.ZIn)
		add(l.person(s, o.ID, x, y, z))
	}
	for _, id := range o.TakesSeats { // who would sit there is not aboard
		if s := l.cat.SeatByID(id); s != nil {
			seat := l.planes.Seat(*s)
			x, y, z := config.StationAt(l.ch, l.body, config.ZoneModule, seat.XIn, seat.YIn, seat.ZIn)
			it := l.person(seat, o.ID, x, y, z)
			it.ID, it.Label, it.Qty, it.Lb = o.ID+"-"+id, it.Label+", not sat on", -1, -it.Lb
			add(it)
		}
	}
	return items
}

// massOf an option; of one that the purchaser weighs, as that was said.
func (l *loader) massOf(o *config.Option) *config.Mass {
	if o.AsksLb == "" || o.Mass == nil {
		return o.Mass
	}
	m := *o.Mass
	m.Lb = l.u.DetailLb(o.ID)
	return &m
}

// unweighed notes what the purchaser still has to weigh.
func (l *loader) unweighed(o *config.Option) {
	if o.AsksLb != "" && l.u.DetailLb(o.ID) == 0 {
		l.findings = append(l.findings, config.Finding{Code: "weight.unweighed", Severity: config.Warn, Where: o.Label,
			Basis: config.Computed, Text: o.AsksLb + " is not known yet, so the unit does not count as weighed.",
			Remedy: "Enter it beside the option, in Unit.", Picks: []string{o.ID}})
	}
}

func (l *loader) placed(id, label, option string, kind Kind, m *config.Mass) Item {
	it := Item{ID: id, Label: label, Kind: kind, Option: option, Qty: 1, Lb: m.Lb, TolLb: m.TolLb}
	if it.TolLb == 0 {
		it.TolLb = quantity.Mass(math.Abs(float64(m.Lb)) * missingTol)
	}
	var o *config.Option
	if m.Zone == config.ZonePlaces {
		o = l.cat.OptionByID(option)
	}
	it.XIn, it.YIn, it.ZIn = l.planes.Station(l.ch, l.body, o, m)
	return it
}

func (l *loader) shellItem(id, label, option string, kind Kind, lb quantity.Mass, x, y, z quantity.Length) Item {
	it := l.placed(id, label, option, kind, &config.Mass{Lb: lb, Zone: config.ZoneModule, XIn: x, YIn: y, ZIn: z})
	it.shell = true
	return it
}

// person on a seat. The rule in force stipulates the weight, so it carries no
// tolerance.
func (l *loader) person(s config.Seat, option string, x, y, z quantity.Length) Item {
	it := Item{ID: s.ID, Label: s.Label, Kind: KindPerson, Option: option, Qty: 1, Lb: quantity.Mass(l.occupantLb),
		XIn: x, YIn: y, ZIn: z}
	if s.Kind == "cot" {
		it.Kind, it.Lb = KindPatient, quantity.Mass(l.patientLb)
	}
	return it
}

// times makes n of an item.
func (l *loader) times(it Item, n int) Item {
	it.Qty *= n
	it.Lb *= quantity.Mass(n)
	it.TolLb *= quantity.Mass(n)
	it.err *= float64(n)
	l.share(&it)
	return it
}

// share puts the item's load on the axles.
func (l *loader) share(it *Item) {
	f, r := Reactions(float64(it.Lb), float64(it.XIn), float64(l.ch.WheelbaseIn))
	it.FrontLb, it.RearLb = quantity.Mass(f), quantity.Mass(r)
}

// sound drops a mass that would spoil every sum and says so, notes one that
// sits where nothing can sit, and shares it between the axles.
func (l *loader) sound(it *Item) bool {
	lb, tol := float64(it.Lb), float64(it.TolLb)
	negative := lb < 0 && it.Kind != KindOption && !(it.Kind == KindPerson && it.Qty < 0)
	if !(math.Abs(lb) < mostLb) || negative || !(tol >= 0 && tol < mostLb) {
		l.note(config.Stop, "weight.item.bad", it.Label,
			fmt.Sprintf("A weight of %v lb, give or take %v lb, is not sensible and is not counted.", lb, tol),
			"Correct its weight in the catalogue.")
		return false
	}
	x, y, z := float64(it.XIn), float64(it.YIn), float64(it.ZIn)
	if !(math.Abs(x) < mostIn && math.Abs(y) < mostIn && math.Abs(z) < mostIn) {
		l.note(config.Stop, "weight.item.bad", it.Label,
			fmt.Sprintf("Its station of %v, %v, %v in is not sensible, so it is not counted.", x, y, z),
			"Correct its station in the catalogue.")
		return false
	}
	if !l.inside(x, y, z) {
		l.note(config.Warn, "weight.item.place", it.Label,
			fmt.Sprintf("It is placed %.0f in behind the front axle, %.0f in right of the centerline and %.0f in "+
				"above the ground, outside the vehicle.", x, y, z), "Check its station and zone in the catalogue.")
	}
	it.err = tol / likely
	it.built = it.Kind == KindOption || it.Kind == KindModule && !l.body.Existing
	if it.Kind == KindChassis {
		it.wheelbase = float64(l.ch.WheelbaseIn)
	}
	l.share(it)
	return true
}

// inside is generous: bumpers, ladders and light bars stick out.
func (l *loader) inside(x, y, z float64) bool {
	c, b := l.ch, l.body
	end := math.Max(float64(c.BodyStartIn+b.LengthIn), float64(c.WheelbaseIn+c.FrameEndIn)) + 60
	wide := math.Max(math.Max(float64(c.WidthIn), float64(b.WidthIn)), 80)/2 + 18
	high := math.Max(float64(c.FloorHeightIn+b.HeightIn), float64(c.CabHeightIn)) + 36
	return x >= -float64(c.FrontOverhangIn)-48 && x <= end && math.Abs(y) <= wide && z >= 0 && z <= high
}

// place of a compartment and the option that brings it.
type stow struct {
	config.Compartment
	option string
}

// stowage finds the unit's compartments by id; the first of an id stands. With
// displaced ones it lists those of the body that an option takes the place of, too.
func (l *loader) stowage(displaced bool) map[string]stow {
	places := map[string]stow{}
	add := func(list []config.Compartment, option string) {
		for _, c := range list {
			if _, taken := places[c.ID]; taken {
				l.note(config.Note, "weight.compartment.twice", "compartment "+c.Label,
					fmt.Sprintf("Two compartments of this unit share the id %q; equipment is weighed in the first.",
						c.ID), "Give each compartment its own id in the catalogue.")
				continue
			}
			places[c.ID] = stow{l.planes.CompartmentOf(l.cat.OptionByID(option), c), option}
		}
	}
	add(l.body.Compartments, "")
	for _, p := range l.u.Picks {
		o := l.cat.OptionByID(p.Option)
		if displaced || o == nil || len(o.Displaces) == 0 {
			continue
		}
		for _, c := range l.body.Compartments {
			if o.Takes(c) {
				delete(places, c.ID)
			}
		}
	}
	for _, p := range l.u.Picks {
		if o := l.cat.OptionByID(p.Option); o != nil {
			add(o.Compartments, o.ID)
		}
	}
	return places
}

// carried lists the loose equipment, each at its compartment's center.
func (l *loader) carried(places map[string]stow) []Item {
	if len(l.u.Carried) == 0 {
		return l.allowance()
	}
	var items []Item
	loose := 0.0
	var displaced []string // what rode in a compartment that the unit does not have
	for _, c := range l.u.Carried {
		e := l.cat.EquipmentOf(l.u, c.Equipment)
		switch {
		case e == nil:
			l.note(config.Stop, "weight.equipment.unknown", "equipment "+c.Equipment,
				fmt.Sprintf("The equipment %q is not in this edition and is not weighed.", c.Equipment),
				"Take it out or load the edition that has it.")
			continue
		case c.Qty < 1 || c.Qty > 999:
			l.note(config.Stop, "weight.equipment.quantity", e.Label,
				fmt.Sprintf("A quantity of %d is not weighed.", c.Qty), "Enter a quantity from 1 to 999.")
			continue
		}
		at, stowed := places[c.Compartment]
		if c.Compartment != "" && !stowed {
			displaced = append(displaced, e.Label)
		}
		it := l.equipment(e, c.Qty, at, stowed)
		if l.sound(&it) {
			items = append(items, it)
			if !stowed {
				loose += float64(it.Lb)
			}
		}
	}
	if displaced != nil {
		l.note(config.Warn, "weight.equipment.no-place", "loose equipment",
			"The compartments these rode in are not in this unit, so they are weighed in the middle of the module: "+
				strings.Join(displaced, "; ")+".", "Stow them in compartments the unit has, in Equipment.")
	}
	if loose > 0 {
		l.note(config.Note, "weight.equipment.unstowed", "loose equipment",
			fmt.Sprintf("%s of loose equipment has no compartment yet and is weighed in the middle of the module.",
				lb(loose)), "Stow it, by hand or by the suggestion, so that the axles are right.")
	}
	return items
}

// allowanceTol is how far the loose equipment of a working unit differs from the
// allowance, of it: 600 to 1,000 lb, from memory.
const allowanceTol = 0.3

// AllowanceItem is the id of what stands there.
const AllowanceItem = "equipment-allowance"

// allowance stands in the place of loose equipment until some is listed, so that a full
// load is full: what a unit of the duty usually carries, else the assumed mass.
func (l *loader) allowance() []Item {
	it := Item{ID: AllowanceItem, Label: "Loose equipment, allowance until it is listed", Kind: KindEquipment,
		Qty: 1, Lb: quantity.Mass(l.assume.Factor(config.EquipmentAllowance))}
	from := "from memory; see Assumed factors"
	if d := l.cat.DutyOf(l.u); d != nil && len(d.Aboard) > 0 && !l.assume.Stated(config.EquipmentAllowance) {
		it.Label, it.Lb = "Loose equipment, the usual list for "+strings.ToLower(d.Label), l.cat.AboardLb(d)
		from = "the plant's usual list for " + strings.ToLower(d.Label)
	}
	it.TolLb = allowanceTol * it.Lb
	it.XIn, it.YIn, it.ZIn = config.StationAt(l.ch, l.body, config.ZoneModuleMid, 0, 0, unstowedZIn)
	if it.Lb == 0 || !l.sound(&it) {
		return nil
	}
	l.note(config.Note, "weight.equipment.allowance", "loose equipment",
		fmt.Sprintf("No loose equipment is listed yet, so %s stands in its place at full load, in the middle of the "+
			"module (%s).", lb(float64(it.Lb)), from),
		"List what the unit carries in Equipment; the usual list is there with one press.")
	return []Item{it}
}

// equipment of one kind in one place.
func (l *loader) equipment(e *config.Equipment, qty int, at stow, stowed bool) Item {
	it := Item{ID: e.ID, Label: e.Label, Kind: KindEquipment, Qty: qty, Lb: e.MassLb * quantity.Mass(qty)}
	it.TolLb = missingTol * it.Lb
	if stowed {
		it.Label += ", in " + at.Label
		it.XIn, it.YIn, it.ZIn = config.StationAt(l.ch, l.body, config.ZoneModule, at.XIn, at.YIn, at.ZIn)
	} else {
		it.XIn, it.YIn, it.ZIn = config.StationAt(l.ch, l.body, config.ZoneModuleMid, 0, 0, unstowedZIn)
	}
	return it
}

// lb writes pounds for a sentence.
func lb(v float64) string { return quantity.US.Show(v, quantity.Pound) }
