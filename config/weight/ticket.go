package weight

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Ticket is a certified scale's reading of a chassis as it arrived or of a
// finished unit. Readings that were not taken are zero; any mix will do.
type Ticket struct {
	Date   config.Date `json:"date,omitzero"`
	Number string      `json:"number,omitempty"` // as printed on the ticket
	What   string      `json:"what"`             // TicketChassis or TicketUnit
	// Condition of a finished unit on the scale: "curb" (or empty), "crewed"
	// or "gross", as the three of the sheet.
	Condition string `json:"condition,omitempty"`
	// FuelPart is how full the tank was, 0 to 1; zero means full.
	FuelPart float64 `json:"fuel_part,omitempty"`

	TotalLb  quantity.Mass    `json:"total_lb,omitempty"`
	FrontLb  quantity.Mass    `json:"front_lb,omitempty"`
	RearLb   quantity.Mass    `json:"rear_lb,omitempty"`
	LeftLb   quantity.Mass    `json:"left_lb,omitempty"`
	RightLb  quantity.Mass    `json:"right_lb,omitempty"`
	WheelsLb [4]quantity.Mass `json:"wheels_lb,omitzero"` // left front, right front, left rear, right rear
	// TolLb is the half width of a reading's likely range; zero means 10 lb,
	// half of a 20 lb division (common practice, no source).
	TolLb quantity.Mass `json:"tol_lb,omitempty"`

	// Unit that was weighed, when it is not the one being quoted: an earlier unit
	// teaches about the chassis, module and options both have.
	Unit *config.Unit `json:"unit,omitempty"`
}

// What a ticket weighed.
const (
	TicketChassis = "chassis"
	TicketUnit    = "unit"
)

const (
	scaleTolLb = 10
	maxTickets = 100
)

// Correction says what scale tickets changed in the model: of all changes of
// the masses that agree with the readings within the scale's precision, the
// one that is smallest when each change is measured in units of its mass's own
// tolerance. Well-known masses are left nearly alone, doubtful ones give way.
type Correction struct {
	Readings []Reading `json:"readings"`
	Moves    []Move    `json:"moves"` // largest first
}

// Reading compares a ticket with the model before and after the correction.
type Reading struct {
	Ticket     int           `json:"ticket"` // position in the list given
	Label      string        `json:"label"`
	MeasuredLb quantity.Mass `json:"measured_lb"`
	BeforeLb   quantity.Mass `json:"before_lb"`
	AfterLb    quantity.Mass `json:"after_lb"`
	// Deviation is measured less before, in standard deviations of what the
	// tolerances lead one to expect.
	Deviation float64 `json:"deviation"`
}

// ResidualLb is what the correction leaves unexplained.
func (r Reading) ResidualLb() quantity.Mass { return r.MeasuredLb - r.AfterLb }

// Move is one mass corrected.
type Move struct {
	ID     string        `json:"id"`
	Label  string        `json:"label"`
	FromLb quantity.Mass `json:"from_lb"`
	ToLb   quantity.Mass `json:"to_lb"`
}

// row is one reading as a linear equation in the things' errors.
type row struct {
	Reading
	items []Item
	perLb func(*Item) float64
	// specimen is the unit that stood on the scale, by its name among the errors.
	specimen string
	noise    float64 // standard deviation of the reading
	gap      float64 // measured less computed
}

// correct learns from the tickets: it fills the estimate's errors and what is
// known better now, and moves the items' masses and places. What a ticket of an earlier
// unit tells of that one alone stays with it; and every scale errs alike at all its
// readings.
//
// Source: weighted linear least squares with prior (Gauss-Markov estimate):
// u = A'(AA' + R)^-1 r, with u the errors in units of their standard
// deviations and R the variances of the readings. As R goes to zero this is
// the minimum-norm solution weighted by the tolerances.
func (e *estimate) correct(l *loader, items []Item, tickets []Ticket) *Correction {
	var rows []row
	for i := range tickets {
		if i == maxTickets {
			l.note(config.Warn, "weight.ticket.many", "scale tickets",
				fmt.Sprintf("Only the first %d tickets are used.", maxTickets), "Leave out the oldest.")
			break
		}
		rows = append(rows, l.rows(i, &tickets[i], items)...)
	}
	c := &Correction{Readings: []Reading{}, Moves: []Move{}}
	if len(rows) == 0 {
		return c
	}
	for _, r := range rows {
		e.know(r.items)
		e.key(r.specimen, specimenErrs)
	}
	// Rows of A, and S = AA' + R in its lower triangle.
	a, gaps := make([][]float64, len(rows)), make([]float64, len(rows))
	s := make([][]float64, len(rows))
	for i, r := range rows {
		a[i], gaps[i], s[i] = e.spread(r.items, r.perLb, e.keys[r.specimen]), r.gap, make([]float64, i+1)
		a[i][errScale] += float64(r.BeforeLb) * e.scale
		for j := range i + 1 {
			s[i][j] = dot(a[i], a[j])
		}
		s[i][i] += r.noise * r.noise
		rows[i].Deviation = r.gap / math.Sqrt(s[i][i])
	}
	if !cholesky(s) {
		l.note(config.Warn, "weight.ticket.unusable", "scale tickets", "The readings contradict each other beyond "+
			"what can be reconciled, so none is used.", "Check the tickets for slips of the pen.")
		return c
	}
	forward(s, gaps)
	for i := range a {
		for j := range i {
			axpy(-s[i][j], a[j], a[i])
		}
		scale(1/s[i][i], a[i])
	}
	e.errs = make([]float64, e.dims)
	for i := range a {
		axpy(gaps[i], a[i], e.errs)
	}
	e.taken = a

	before := slices.Clone(items)
	e.apply(items)
	for i := range items {
		// The tolerance shown is what the tickets leave of it.
		it := &items[i]
		one := []Item{*it}
		it.TolLb = quantity.Mass(likely * e.sigma(one, func(*Item) float64 { return 1 }))
		if from := before[i].Lb; math.Abs(float64(it.Lb-from)) >= 0.05 {
			c.Moves = append(c.Moves, Move{it.ID, it.Label, from, it.Lb})
		}
	}
	slices.SortStableFunc(c.Moves, func(a, b Move) int {
		by := func(m Move) float64 { return math.Abs(float64(m.ToLb - m.FromLb)) }
		return cmp.Or(cmp.Compare(by(b), by(a)), strings.Compare(a.ID, b.ID))
	})
	for _, r := range rows {
		after := float64(r.BeforeLb) + dot(e.spread(r.items, r.perLb, e.keys[r.specimen]), e.errs)
		r.AfterLb = quantity.Mass(round6(after))
		c.Readings = append(c.Readings, r.Reading)
		if math.Abs(r.Deviation) > 3 {
			l.note(config.Warn, "weight.ticket.far", r.Label,
				fmt.Sprintf("It reads %s where %s was computed, %.1f times what the tolerances lead one to expect.",
					lb(float64(r.MeasuredLb)), lb(float64(r.BeforeLb)), math.Abs(r.Deviation)), "Check the ticket, "+
					"its condition and fuel, and that every option on the vehicle is in the unit; then correct the "+
					"catalogue.")
		}
	}
	return c
}

// apply moves masses and places by the errors found.
func (e *estimate) apply(items []Item) {
	if len(e.errs) == 0 {
		return
	}
	at := func(k int) float64 {
		if k < len(e.errs) {
			return e.errs[k]
		}
		return 0
	}
	this := e.keys[thisUnit]
	for i := range items {
		it := &items[i]
		x := e.of(it)
		lb := x.build*at(errBuild) + x.unit*at(this+errUnit) + x.chassisUnit*at(this+errChassisUnit)
		along := x.buildStation * at(errBuildStation)
		if k, ok := e.keys[thing(it)]; ok {
			lb += x.mass * at(k+errMass)
			along += x.along * at(k+errAlong)
			it.YIn += quantity.Length(x.across * at(k+errAcross))
			it.ZIn += quantity.Length(x.above * at(k+errAbove))
		}
		it.Lb += quantity.Mass(lb)
		it.XIn += quantity.Length(along)
	}
}

// rows turns a ticket into equations; a reading that cannot be right is left
// out with a finding.
func (l *loader) rows(n int, t *Ticket, items []Item) []row {
	name := fmt.Sprintf("Ticket %d", n+1)
	if t.Number != "" {
		name = "Ticket " + t.Number
	}
	if !t.Date.IsZero() {
		name += " of " + t.Date.Long()
	}
	refuse := func(text, remedy string) []row {
		l.note(config.Warn, "weight.ticket.unusable", name, text, remedy)
		return nil
	}
	at := l
	if t.Unit != nil {
		at = newLoader(l.cat, t.Unit, l.assume)
		if at == nil || !at.usable() {
			return refuse("The unit it weighed is not in this edition, so it is not used.",
				"Enter the ticket with the unit it belongs to.")
		}
		items = at.unit()
	}
	if t.What != TicketChassis && t.What != TicketUnit {
		return refuse(fmt.Sprintf("It weighed %q; only a chassis or a unit can be corrected.", t.What),
			"Say whether it weighed the chassis or the finished unit.")
	}
	in := map[string]func(Kind) bool{"": inCurb, "curb": inCurb, "crewed": inCrewed, "gross": inGross}[t.Condition]
	if in == nil {
		return refuse(fmt.Sprintf("Its condition %q is not known.", t.Condition), `Enter "curb", "crewed" or "gross".`)
	}
	if t.What == TicketChassis {
		in = func(k Kind) bool { return k == KindChassis || k == KindFluid }
	}
	if !(t.FuelPart >= 0 && t.FuelPart <= 1) || !(t.TolLb >= 0 && t.TolLb < 1000) {
		return refuse("Its fuel or its tolerance is not sensible, so it is not used.",
			"Enter the fuel as a part of a full tank, 0 to 1, and the tolerance in pounds.")
	}
	tol := float64(t.TolLb)
	if tol == 0 {
		tol = scaleTolLb
	}
	var out []row
	add := func(label string, measured quantity.Mass, share func(*Item) float64) {
		if measured == 0 {
			return
		}
		perLb := func(it *Item) float64 {
			switch {
			case !in(it.Kind):
				return 0
			case it.Kind == KindFluid && t.FuelPart > 0:
				return t.FuelPart * share(it)
			}
			return share(it)
		}
		computed := 0.0
		for i := range items {
			computed += perLb(&items[i]) * float64(items[i].Lb)
		}
		// Half or double is another vehicle, or kilograms.
		if v := float64(measured); !(v > computed/2 && v < computed*2) {
			refuse(fmt.Sprintf("Its reading of %v lb, %s, is nothing like the computed %s, so it is not used.", v,
				label, lb(computed)), "Check that it belongs to this vehicle and is in pounds.")
			return
		}
		r := row{items: items, perLb: perLb, noise: tol / likely, gap: float64(measured) - computed, specimen: thisUnit}
		if t.Unit != nil {
			r.specimen = fmt.Sprintf("unit of ticket %d", n)
		}
		r.Reading = Reading{Ticket: n, Label: name + ", " + label, MeasuredLb: measured,
			BeforeLb: quantity.Mass(round6(computed))}
		out = append(out, r)
	}
	wb := float64(at.ch.WheelbaseIn)
	rear := func(it *Item) float64 { return float64(it.XIn) / wb }
	front := func(it *Item) float64 { return 1 - rear(it) }
	add("total", t.TotalLb, func(*Item) float64 { return 1 })
	add("front axle", t.FrontLb, front)
	add("rear axle", t.RearLb, rear)
	if t.LeftLb == 0 && t.RightLb == 0 && t.WheelsLb == [4]quantity.Mass{} {
		return out
	}
	if !at.tracks {
		return append(out, refuse("Its left and right readings need the tracks of the chassis, which are missing.",
			"Correct the catalogue.")...)
	}
	// A wheel end carries half of what each mass puts on the axle, and more or
	// less by how far the mass sits to its side.
	wheel := func(axle func(*Item) float64, track quantity.Length, side float64) func(*Item) float64 {
		return func(it *Item) float64 { return axle(it) * (0.5 + side*float64(it.YIn/track)) }
	}
	ends := [4]func(*Item) float64{
		wheel(front, at.ch.TrackFrontIn, -1), wheel(front, at.ch.TrackFrontIn, 1),
		wheel(rear, at.ch.TrackRearIn, -1), wheel(rear, at.ch.TrackRearIn, 1),
	}
	both := func(a, b func(*Item) float64) func(*Item) float64 {
		return func(it *Item) float64 { return a(it) + b(it) }
	}
	add("left side", t.LeftLb, both(ends[0], ends[2]))
	add("right side", t.RightLb, both(ends[1], ends[3]))
	for i, pos := range []string{"left front wheel", "right front wheel", "left rear wheel", "right rear wheel"} {
		add(pos, t.WheelsLb[i], ends[i])
	}
	return out
}

// cholesky replaces the lower triangle of a symmetric matrix by its factor;
// false when it is not positive definite.
func cholesky(s [][]float64) bool {
	for i := range s {
		for j := range i + 1 {
			v := s[i][j] - dot(s[i][:j], s[j][:j])
			if i == j {
				if !(v > 0) {
					return false
				}
				s[i][i] = math.Sqrt(v)
				continue
			}
			s[i][j] = v / s[j][j]
		}
	}
	return true
}

// forward solves L x = b in place.
func forward(l [][]float64, b []float64) {
	for i := range b {
		b[i] = (b[i] - dot(l[i][:i], b[:i])) / l[i][i]
	}
}

// axpy adds k times x to y, as far as x reaches.
func axpy(k float64, x, y []float64) {
	for i := range min(len(x), len(y)) {
		y[i] += k * x[i]
	}
}

func scale(k float64, x []float64) {
	for i := range x {
		x[i] *= k
	}
}
