package quote

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/weight"
)

// MaxTickets is how many scale tickets a draft may hold.
const MaxTickets = 12

// Wiring is how the seller has the circuit schedule sized. The zero value is
// the usual way.
type Wiring struct {
	Areas string `json:"areas,omitempty"` // "sae" or "awg"; empty: sae
	// The drops that quotes stated here before they were assumed factors of a unit; see moveDrops.
	DropPct     float64 `json:"drop_pct,omitempty"`
	CriticalPct float64 `json:"critical_pct,omitempty"`
}

// moveDrops makes assumed factors of the voltage drops that an older quote states.
func (d *Draft) moveDrops() {
	units := []*config.Unit{&d.Unit}
	for i := range d.More {
		units = append(units, &d.More[i].Unit)
	}
	for _, x := range []struct {
		code string
		pct  *float64
	}{{config.WireDrop, &d.Wiring.DropPct}, {config.CriticalDrop, &d.Wiring.CriticalPct}} {
		for _, u := range units {
			if *x.pct != 0 {
				v := *x.pct
				u.SetFactor(x.code, &v)
			}
		}
		*x.pct = 0
	}
}

// rewire makes the schedule anew where the seller has another table of conductors.
func (q *Quote) rewire() {
	if q.Draft.Wiring.Areas == "awg" {
		w := power.WiringOf(&q.Assume)
		w.Areas = power.AWG
		q.Power.Rewire(q.Edition.Cat, &q.Draft.Unit, w)
	}
}

// checkEngineering bounds what scale tickets and wiring bring from outside.
func (d *Draft) checkEngineering() config.Problems {
	var ps config.Problems
	wrong := func(where, text string) {
		ps = append(ps, config.Problem{Code: "draft.range", Where: where, Text: text})
	}
	if !slices.Contains([]string{"", "sae", "awg"}, d.Wiring.Areas) {
		wrong("wiring", `areas are "sae" or "awg"`)
	}
	if n := len(d.Tickets); n > MaxTickets {
		wrong("tickets", fmt.Sprintf("are %d; the most is %d", n, MaxTickets))
	}
	for i := range d.Tickets {
		if text := TicketFault(&d.Tickets[i]); text != "" {
			wrong(fmt.Sprintf("tickets[%d]", i), text)
		}
	}
	return ps
}

// TicketFault says what is wrong with a scale ticket as entered; empty when
// nothing is.
func TicketFault(t *weight.Ticket) string {
	readings := append([]float64{float64(t.TotalLb), float64(t.FrontLb), float64(t.RearLb), float64(t.LeftLb),
		float64(t.RightLb)}, wheels(t)...)
	given := 0
	for _, v := range readings {
		if !(v >= 0 && v <= 200000) {
			return "a reading is 0 to 200,000 lb"
		}
		if v > 0 {
			given++
		}
	}
	switch {
	case given == 0:
		return "it holds no reading: enter the total, the axles or the wheels"
	case t.What != weight.TicketChassis && t.What != weight.TicketUnit:
		return "it weighed the chassis or the finished unit"
	case !slices.Contains([]string{"", "curb", "crewed", "gross"}, t.Condition):
		return "the condition is curb, crewed or gross"
	case !(t.FuelPart >= 0 && t.FuelPart <= 1):
		return "the fuel is a part of a full tank, 0 to 1"
	case !(t.TolLb >= 0 && t.TolLb < 1000):
		return "the tolerance is 0 to 1,000 lb"
	case len(t.Number) > 60:
		return "its number has at most 60 characters"
	}
	return sums(t)
}

func wheels(t *weight.Ticket) []float64 {
	out := make([]float64, len(t.WheelsLb))
	for i, w := range t.WheelsLb {
		out[i] = float64(w)
	}
	return out
}

// sums catches a slip of the pen: what was read twice must agree within the
// scale's tolerance at every reading.
func sums(t *weight.Ticket) string {
	tol := float64(t.TolLb)
	if tol == 0 {
		tol = 10
	}
	w := wheels(t)
	for _, s := range []struct {
		whole float64
		parts []float64
		words string
	}{
		{float64(t.TotalLb), []float64{float64(t.FrontLb), float64(t.RearLb)}, "the axles do not add up to the total"},
		{float64(t.TotalLb), w, "the wheels do not add up to the total"},
		{float64(t.FrontLb), w[:2], "the front wheels do not add up to the front axle"},
		{float64(t.RearLb), w[2:], "the rear wheels do not add up to the rear axle"},
	} {
		sum := 0.0
		for _, v := range s.parts {
			sum += v
		}
		off := s.whole - sum
		if s.whole > 0 && !slices.Contains(s.parts, 0) && max(off, -off) > tol*float64(1+len(s.parts)) {
			return s.words
		}
	}
	return ""
}

func cloneTickets(list []weight.Ticket) []weight.Ticket {
	out := slices.Clone(list)
	for i := range out {
		if u := out[i].Unit; u != nil {
			c := u.Clone()
			out[i].Unit = &c
		}
	}
	return out
}

// Weighed gives each ticket of the unit in hand that unit as its own, so that
// the unit can change or another take its place. A chassis ticket is left while
// the chassis stays.
func Weighed(list []weight.Ticket, was, after *config.Unit) []weight.Ticket {
	out := slices.Clone(list)
	for i := range out {
		t := &out[i]
		if t.Unit != nil || t.What == weight.TicketChassis && was.Chassis == after.Chassis ||
			SameLoad(was, after, t.Condition == "gross") {
			continue
		}
		*t = weighedAs(*t, was)
	}
	return out
}

// weighedAs is a ticket with the unit that stood on the scale, as far as its
// weight goes.
func weighedAs(t weight.Ticket, unit *config.Unit) weight.Ticket {
	u := unit.Clone()
	u.Proposed, u.LeftOut, u.Details, u.Own = nil, nil, nil, nil
	u.NeededBy, u.PayloadLb = config.Date{}, 0
	for k := range u.Picks {
		u.Picks[k].Filled = false
	}
	if t.Condition != "gross" {
		u.Carried = nil
	}
	t.Unit = &u
	return t
}

// Lessons are the scale tickets of the draft as other quotes can learn from
// them: each with the unit it weighed. Those of an existing module are left out,
// since no other unit has it.
func (d *Draft) Lessons() []weight.Ticket {
	var out []weight.Ticket
	for _, it := range d.Items() {
		for _, t := range it.Tickets {
			if t.Unit == nil {
				t = weighedAs(t, &it.Unit)
			}
			if t.Unit.Existing == nil {
				out = append(out, t)
			}
		}
	}
	return cloneTickets(out)
}

// SameLoad reports whether two units have the same chassis, body and picks; with
// loose, also the same equipment aboard.
func SameLoad(a, b *config.Unit, loose bool) bool {
	return a.Chassis == b.Chassis && a.Body == b.Body && (!loose || slices.Equal(a.Carried, b.Carried)) &&
		slices.EqualFunc(a.Picks, b.Picks, func(p, q config.Pick) bool {
			return p.Option == q.Option && p.Qty == q.Qty
		})
}

// ticketsOn are the tickets as they bear on another chassis or body.
func ticketsOn(d *Draft, other *config.Unit) []weight.Ticket {
	if other.Chassis == d.Unit.Chassis && other.Body == d.Unit.Body {
		return d.Tickets
	}
	return Weighed(d.Tickets, &d.Unit, other)
}
