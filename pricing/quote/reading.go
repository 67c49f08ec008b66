package quote

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
)

// MaxReadings is the most readings of a test sheet.
const (
	MaxReadings = 400
	maxReading  = 1e6
)

// Reading is what was weighed, measured or found on the finished unit.
type Reading struct {
	Check string  `json:"check"` // id of the check
	Value float64 `json:"value"` // in the check's unit; 1 in order or 0 a fault where there is none
}

// Check is one line of the test sheet: what this very unit should show.
type Check struct {
	ID, Section, What string
	Want, Low, High   float64 // expected, and what is accepted; infinite where nothing bounds it
	Unit              string
	Works             bool // to be found in order rather than read
	How               string
	Expect, Tolerance string // of what is found in order, in words
	Basis             string
	Reading           *float64
}

// Good reports whether the reading is accepted; false without one.
func (c *Check) Good() bool { return c.Reading != nil && *c.Reading >= c.Low && *c.Reading <= c.High }

// Sections of the test sheet.
const (
	toWeigh   = "Weigh: full fluids, nobody and nothing loose aboard"
	toMeasure = "Measure"
	toLoad    = "Run: currents and times"
	toDrop    = "Run: voltage drop of critical circuits at their full current"
	toWork    = "Find in order"
)

// How well a finished unit can be held to its drawing, and to a scale.
const (
	sizeTolIn   = 0.5
	outerTolIn  = 1.0
	scaleTolLb  = 20.0
	loadTolPart = 0.1
	// nearlyAll widens a range that holds 95 in 100 of a normal distribution to one that
	// holds 99: 2.576 / 1.960.
	nearlyAll = 1.3143
)

// common is what tolerances that no text gives rest on.
const common = string(config.CommonPractice)

// Checks is the test sheet of the unit, with the readings taken so far.
func (q *Quote) Checks() []Check {
	var out []Check
	add := func(c Check) {
		if i, found := slices.BinarySearchFunc(q.Draft.Readings, c.ID, func(r Reading, id string) int {
			return cmp.Compare(r.Check, id)
		}); found {
			c.Reading = &q.Draft.Readings[i].Value
		}
		out = append(out, c)
	}
	for _, w := range q.curb() {
		add(w)
	}
	figure := func(section, code string, tol float64, basis string, open bool) {
		f, ok := q.Figure(code)
		if !ok || f.Value == 0 {
			return
		}
		what := f.Label
		if code == power.SteadyShore {
			what = power.ShoreLoad // a reading is held against the range alone
		}
		c := Check{ID: code, Section: section, What: what, Want: f.Value, Low: f.Value - tol, High: f.Value + tol,
			Unit: f.Unit, Basis: basis}
		switch {
		case open: // as little as its likely range allows, and no upper end
			c.Low, c.High = f.Low, math.Inf(1)
		case tol == 0:
			tol = max((f.High-f.Low)/2, loadTolPart*f.Value)
			c.Low, c.High = f.Value-tol, f.Value+tol
		}
		switch {
		case f.Sense == config.AtLeast && f.Limit > c.Low && f.Met():
			c.Low, c.Basis = f.Limit, f.Basis.Known(f.Source)
		case f.Sense == config.AtMost && f.Limit < c.High && f.Met():
			c.High, c.Basis = f.Limit, f.Basis.Known(f.Source)
		}
		add(c)
	}
	for _, code := range []string{"space.length", "space.width", "space.height", "space.length-all", "space.width-all",
		"space.height-all", "space.loading-height", "space.flood-height"} {
		figure(toMeasure, code, outerTolIn, common, false)
	}
	for _, code := range []string{"space.headroom", "space.aisle", "space.inside-length", "space.rear-door",
		"space.seat-cot", "space.cot-door", "space.bench", "space.bench-width"} {
		figure(toMeasure, code, sizeTolIn, common, false)
	}
	for _, code := range []string{"power.parked", "power.driving", "power.responding", "power.scene", power.SteadyShore} {
		figure(toLoad, code, 0, "likely range of this unit's loads, at least 10 %", false)
	}
	figure(toLoad, "power.battery-minutes", 0, "low end of the likely range of load and batteries", true)
	for _, c := range q.Power.Circuits {
		if c.Critical {
			add(Check{ID: "drop." + c.Number, Section: toDrop, What: c.Number + " " + c.Function + ", at " +
				strconv.FormatFloat(float64(c.Amps), 'f', -1, 64) + " A", Want: c.DropV, High: c.LimitPct / 100 * 12,
				Unit: quantity.Volt, Basis: "the circuit schedule's limit"})
		}
	}
	works := func(id string, t config.Trial) {
		if d := q.OfDuty; d != nil {
			t.What, t.How, t.Expect = d.Say(t.What), d.Say(t.How), d.Say(t.Expect)
		}
		add(Check{ID: id, Section: toWork, What: t.What, Want: 1, Low: 1, High: 1, Works: true, How: t.How,
			Expect: t.Expect, Tolerance: t.Tolerance})
	}
	works("works.belts", config.Trial{What: "Belts and anchors of " + allSeats(len(q.Space.Seats)),
		How: "Pull out, latch, jerk, release", Expect: "Latches, locks at a jerk, releases with one hand",
		Tolerance: "every seat"})
	if len(q.Space.Cots) > 0 {
		works("works.cots", config.Trial{What: "Cot fastening", How: "Cot locked in each position, pushed and pulled " +
			"by hand in every direction", Expect: "No release; the lock shows itself closed",
			Tolerance: "every position"})
	}
	if q.Space.Oxygen.Liters > 0 {
		works("works.oxygen", config.Trial{What: "Oxygen piping and outlets", How: "Pressurized with medical oxygen " +
			"and closed off, by those licensed to", Expect: "No fall of pressure; no bubbles at any joint",
			Tolerance: "by their own procedure"})
	}
	works("works.doors", config.Trial{What: "Every door", How: "Opened and shut by hand, then with the lamp test",
		Expect: "Latches, seals all round, warns when open", Tolerance: "every door"})
	works("works.water", config.Trial{What: "Water spray", How: "Sprayed from all sides and from above for 15 min, " +
		"doors and vents shut (common practice, no source)", Expect: "No water inside, in compartments or in lamps; " +
		"drains run", Tolerance: "not a drop"})
	works("works.road", config.Trial{What: "Road test", How: "Driven 10 mi at full load on mixed roads, with stops from " +
		"30 mph and full turns (common practice, no source)", Expect: "Stops straight; nothing rubs, rattles, leaks or " +
		"comes loose", Tolerance: "no fault left"})
	for _, p := range q.Draft.Unit.Picks {
		o := q.Edition.Cat.OptionByID(p.Option)
		if o == nil {
			continue
		}
		for i, t := range o.Tests {
			works("test."+o.ID+"."+strconv.Itoa(i+1), t)
		}
		if o.Load != nil && o.Tests == nil {
			works("works."+o.ID, switched(o, q.Edition.Cat.GroupByID(o.Group).Test, p.Qty))
		}
	}
	return out
}

// switched is the test of what only has to run, as its group has it: each mode's current is
// one for the whole unit, so this is the current of the one thing alone.
func switched(o *config.Option, of *config.Trial, qty int) config.Trial {
	what, draws, within := o.Label, "", "10 %, at least 0.5 A"
	if qty > 1 {
		what += " × " + quantity.Group(float64(qty), 0)
	}
	amps := max(o.Load.SceneA, o.Load.RespondingA, o.Load.DrivingA, o.Load.ParkedA)
	switch {
	case amps > 0:
		draws = quantity.US.Show(float64(amps)*float64(qty), quantity.Amp)
	case o.Load.ACW > 0:
		draws, within = quantity.US.Show(float64(o.Load.ACW)*float64(qty), quantity.Watt), "10 %"
	}
	switch {
	case of != nil && draws != "":
		return config.Trial{What: of.What + ": " + what, How: of.How, Expect: of.Expect + "; draws " + draws,
			Tolerance: of.Tolerance + "; current " + within}
	case of != nil:
		return config.Trial{What: of.What + ": " + what, How: of.How, Expect: of.Expect, Tolerance: of.Tolerance}
	case amps > 0:
		return config.Trial{What: what, How: "Switched on alone; clamp meter at its breaker",
			Expect: "Runs, and draws " + draws, Tolerance: within}
	case draws != "":
		return config.Trial{What: what, How: "Run from shore line and, where it has one, from the inverter; plug-in " +
			"meter", Expect: "Runs, and draws " + draws, Tolerance: within}
	}
	return config.Trial{What: what, How: "Worked by its own switch", Expect: "Does what its label says",
		Tolerance: "as found"}
}

// curb are the weighings of the empty unit. Each is accepted where 99 units in 100 come
// to lie: a unit that is built as computed is seldom refused, and one that lacks a thing
// or has one too many is.
func (q *Quote) curb() []Check {
	c, ch, doubt := q.Weight.Curb, q.Chassis, q.Weight.CurbDoubt()
	payload := config.Limit{Value: float64(ch.GVWRLb), Source: "GVWR"}
	if f, ok := q.Figure("weight.payload"); ok && f.Sense == config.AtLeast && f.Met() {
		payload = config.Limit{Value: float64(ch.GVWRLb) - f.Limit, Source: "GVWR less the payload asked for"}
	}
	rating := func(lb quantity.Mass) config.Limit { return config.Limit{Value: float64(lb), Source: "rating"} }
	var out []Check
	for _, w := range []struct {
		id, what string
		lb, tol  quantity.Mass
		most     config.Limit
	}{
		{"weigh.total", "Whole unit", c.TotalLb, doubt.TotalLb, payload},
		{"weigh.front", "Front axle", c.FrontLb, doubt.FrontLb, rating(ch.GAWRFrontLb)},
		{"weigh.rear", "Rear axle", c.RearLb, doubt.RearLb, rating(ch.GAWRRearLb)},
		{"weigh.left", "Street side", c.LeftLb, doubt.SideLb, config.Limit{}},
		{"weigh.right", "Curb side", c.RightLb, doubt.SideLb, config.Limit{}},
	} {
		if w.lb == 0 && w.tol == 0 {
			continue // the tracks are not known
		}
		tol := math.Hypot(nearlyAll*float64(w.tol), scaleTolLb)
		k := Check{ID: w.id, Section: toWeigh, What: w.what, Want: float64(w.lb), Low: float64(w.lb) - tol,
			High: float64(w.lb) + tol, Unit: quantity.Pound, Basis: "range of 99 units in 100, by the weight " +
				"assumptions, plus 20 lb for the scale"}
		if w.most.Value >= k.Want && w.most.Value < k.High {
			k.High, k.Basis = w.most.Value, w.most.Source
		}
		out = append(out, k)
	}
	return out
}

// Read enters a reading, or takes it out with nil.
func (d *Draft) Read(check string, value *float64) {
	d.Readings = slices.DeleteFunc(slices.Clone(d.Readings), func(r Reading) bool { return r.Check == check })
	if value != nil && len(d.Readings) < MaxReadings {
		d.Readings = append(d.Readings, Reading{check, *value})
		slices.SortFunc(d.Readings, func(a, b Reading) int { return cmp.Compare(a.Check, b.Check) })
	}
}
