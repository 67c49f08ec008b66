package quote

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
)

// mostMeasured is how many remounted modules the rules are kept compiled for.
const mostMeasured = 4

// For is the edition as it stands for a unit: itself, or for a remount one
// whose rules judge the measured module. What the rules have learnt is kept
// while the measured sizes stay.
func (ed *Edition) For(u *config.Unit) *Edition {
	if ed.of != nil {
		ed = ed.of
	}
	cat := ed.Cat.As(u)
	if cat == ed.Cat {
		return ed
	}
	b := cat.BodyByID(u.Body)
	key := fmt.Sprint(b.ID, b.LengthIn, b.WidthIn, b.HeadroomIn)
	if i := slices.IndexFunc(ed.measured, func(m *Edition) bool { return m.key == key }); i >= 0 {
		m := ed.measured[i]
		m.Cat = cat // other figures of the module may have changed
		return m
	}
	engine, err := rules.Compile(cat)
	if err != nil {
		return ed
	}
	m := &Edition{Cat: cat, Book: ed.Book, Rules: engine, of: ed, key: key}
	if len(ed.measured) == mostMeasured {
		ed.measured = slices.Delete(ed.measured, 0, 1)
	}
	ed.measured = append(ed.measured, m)
	return m
}

// Remount reports whether the quoted unit is one.
func (q *Quote) Remount() bool { return q.Body.Existing }

// Mounting is an existing module looked at on one chassis.
type Mounting struct {
	Chassis *config.Chassis
	Unit    config.Unit // completed, as it would be quoted
	Figures map[string]config.Figure
	Stops   []string // why it cannot be quoted so
	Even    config.Date
	Total   pricing.Amount
}

// Mountings looks at the draft's module on every chassis of the catalogue, with
// the deliberate picks kept and everything else fitted to the chassis.
func Mountings(ed *Edition, d *Draft, in quantity.System) []Mounting {
	ed = ed.For(&d.Unit)
	var out []Mounting
	for i := range ed.Cat.Chassis {
		out = append(out, mounting(ed, d, &ed.Cat.Chassis[i], in))
	}
	return out
}

func mounting(ed *Edition, d *Draft, ch *config.Chassis, in quantity.System) Mounting {
	m := Mounting{Chassis: ch, Unit: d.Unit.Clone(), Figures: map[string]config.Figure{}}
	m.Unit.Chassis = ch.ID
	fits := true
	if m.Unit.Chassis != d.Unit.Chassis {
		m.Unit, _, fits = ed.Rules.Fill(&m.Unit, nil)
	}
	if !fits {
		for _, r := range ed.Rules.Conflict(&m.Unit, nil) {
			m.Stops = append(m.Stops, (&Quote{Edition: ed}).Words(r, in))
		}
		slices.Sort(m.Stops) // what the rules have learnt must not show
		return m
	}
	u := &m.Unit
	as := standards.Assume(u.RuleSet, ed.Cat, u)
	for _, r := range []*config.Report{&weight.WeighWith(ed.Cat, u, &as, ticketsOn(d, u)).Report, &power.Budget(ed.Cat, u, &as).Report, &space.Measure(ed.Cat, u, &as).Report} {
		for _, f := range r.Figures {
			m.Figures[f.Code] = f
		}
		for _, f := range r.Findings {
			if f.Severity == config.Stop {
				m.Stops = append(m.Stops, f.Text)
			}
		}
	}
	if plan, err := leadtime.Schedule(ed.Cat, u); err == nil {
		m.Even = plan.EvenOdds
	}
	if s, err := pricing.Build(ed.Book, ed.Cat, u, &d.Terms, d.Date); err == nil {
		m.Total = s.Total
	}
	return m
}
