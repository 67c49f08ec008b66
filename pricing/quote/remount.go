package quote

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

// mostMeasured is how many remounted modules the rules are kept compiled for.
const mostMeasured = 4

// For returns the edition that a unit is judged by: ed itself, or for a remount one
// whose rules judge the measured module. It is kept while the measured sizes stay. For a
// unit of a duty that has words of its own it is one with the same rules in these words.
func (ed *Edition) For(u *config.Unit) *Edition {
	if ed.base != nil {
		ed = ed.base
	}
	cat := ed.Cat.For(u)
	if cat == ed.Cat {
		return ed.inWordsOf(ed.Cat.DutyOf(u))
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
	engine.PauseWith(ed.Rules.Pauses())
	m := &Edition{Cat: cat, Book: ed.Book, Rules: engine, base: ed, key: key}
	if len(ed.measured) == mostMeasured {
		ed.measured = slices.Delete(ed.measured, 0, 1)
	}
	ed.measured = append(ed.measured, m)
	return m
}

// inWordsOf is the edition in the words of a duty; ed itself without one that has any.
func (ed *Edition) inWordsOf(d *config.Duty) *Edition {
	if d == nil || len(d.Says) == 0 {
		return ed
	}
	said := ed.saying[d.ID]
	if said == nil {
		said = &Edition{Cat: ed.Cat.Saying(d), Book: ed.Book, Rules: ed.Rules, base: ed}
		if ed.saying == nil {
			ed.saying = map[string]*Edition{}
		}
		ed.saying[d.ID] = said
	}
	return said
}

// BeginRemount is a new draft that remounts an existing module on a chassis,
// with what was measured, and kept of the draft before: what the customer asked for,
// and rules other than a federal specification that covers no remount. Without a
// chassis it takes one that was asked for. False when the edition has no body for an
// existing module.
func BeginRemount(ed *Edition, chassis string, before *Draft, today config.Date) (*Draft, bool) {
	i := slices.IndexFunc(ed.Cat.Bodies, func(b config.Body) bool { return b.Existing })
	if i < 0 {
		return nil, false
	}
	body := ed.Cat.Bodies[i].ID
	if chassis == "" {
		chassis = ed.suitable(body, before)
	}
	d := New(ed, chassis, body, today)
	d.Needs, d.At, d.More = before.Needs.clone(), before.At, cloneItems(before.More)
	u := before.Unit.Clone()
	ids := []string{standards.Own}
	chosen, _ := standards.Split(u.RuleSet)
	for _, s := range chosen {
		if s.AddOn {
			ids = append(ids, s.ID)
		}
	}
	d.Unit.RuleSet, d.Unit.Existing, d.Unit.NeededBy = standards.Join(ids...), u.Existing, u.NeededBy
	d.Unit.OccupantLb, d.Unit.PatientLb, d.Unit.PayloadLb, d.Unit.Own = u.OccupantLb, u.PatientLb, u.PayloadLb, u.Own
	if d.Unit.Existing == nil {
		d.Unit.Existing = &config.Existing{}
	}
	d.Unit, _ = ed.For(&d.Unit).Rules.Start(&d.Unit, Limits(ed, d))
	return d, true
}

// suitable is the chassis for a body that breaks no must by itself: the draft's own,
// that of the catalogue's start, or the first; empty where each breaks one.
func (ed *Edition) suitable(body string, d *Draft) string {
	list := []string{d.Unit.Chassis, ed.Cat.Start}
	for i := range ed.Cat.Chassis {
		list = append(list, ed.Cat.Chassis[i].ID)
	}
	for _, id := range list {
		on := config.Unit{Chassis: id, Body: body, Existing: d.Unit.Existing}
		if ed.Cat.ChassisByID(id) == nil || !ed.For(&on).Rules.Allows(&on) {
			continue
		}
		never := func(m Miss) bool { return m.Never && !m.Want }
		if !slices.ContainsFunc(d.Needs.Missed(ed.For(&on).Cat, &on), never) {
			return id
		}
	}
	return ""
}

// AgainstNew is a comparison by years of service of the draft's remount with a
// new unit: the usual module on the same chassis, at the same terms. Years,
// upkeep and worth at the end are the purchaser's to say.
func AgainstNew(ed *Edition, d *Draft) (*pricing.Service, error) {
	fresh := Begin(ed, d.Unit.Chassis, "", d.Date)
	terms := d.Terms.Clone()
	terms.Service = nil
	s, err := pricing.Build(ed.Book, ed.Cat, &fresh.Unit, &terms, d.Date)
	if err != nil {
		return nil, err
	}
	inflation, _ := money.ParsePercent("2.5")
	discount, _ := money.ParsePercent("4")
	left, _ := structureOf(ed.Cat, &d.Unit)
	anew, _ := structureOf(ed.Cat, &fresh.Unit)
	return &pricing.Service{
		Rates: finance.Rates{Inflation: inflation, Discount: discount},
		This:  finance.Choice{ID: "remount", Label: "This remount", Years: 8, Warranty: left},
		Others: []finance.Choice{{ID: "new", Label: "A new unit, same chassis", Price: s.Shares[0].Amount, Years: 10,
			Warranty: anew}},
	}, nil
}

// structureOf is for how many years the structure of a unit is warranted, and whether by
// an option of the unit; else it is what is left of an existing module's.
func structureOf(cat *config.Catalogue, u *config.Unit) (years int, bought bool) {
	for _, p := range u.Picks {
		if o := cat.OptionByID(p.Option); o != nil && o.StructureYears > 0 {
			return o.StructureYears, true
		}
	}
	if remount, e := cat.Measured(u); remount && e != nil && e.WarrantyYears != nil {
		return *e.WarrantyYears, false
	}
	return 0, false
}

// Structure is for how many years the structure of the quoted unit is warranted, and
// whether by an option that was chosen.
func (q *Quote) Structure() (years int, bought bool) {
	return structureOf(q.Edition.Cat, &q.Draft.Unit)
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
	on := *d
	if m.Unit.Chassis != d.Unit.Chassis {
		on.Unit = m.Unit
		full, _, whole := ed.Rules.Restore(&m.Unit, Limits(ed, &on)) // as a press mounts it
		if !whole {
			full, _, fits = ed.Rules.Fill(&m.Unit, nil) // what it would be short of is shown
		}
		m.Unit = full
	}
	if !fits {
		for _, r := range ed.Rules.Conflict(&m.Unit, nil) {
			m.Stops = append(m.Stops, (&Quote{Edition: ed}).Words(r, in))
		}
		slices.Sort(m.Stops) // what the rules have learnt must not show
		return m
	}
	u := &m.Unit
	assume := standards.Assume(u.RuleSet, ed.Cat, u)
	for _, r := range []*config.Report{&weight.Weigh(ed.Cat, u, &assume, ticketsOn(d, u)...).Report,
		&power.Budget(ed.Cat, u, &assume).Report, &space.Measure(ed.Cat, u, &assume).Report} {
		for _, f := range r.Figures {
			m.Figures[f.Code] = f
		}
		for _, f := range r.Findings {
			if f.Severity == config.Stop {
				m.Stops = append(m.Stops, f.Text)
			}
		}
	}
	on.Unit = *u
	if plan, err := NextPlan(ed, &on); err == nil {
		m.Even = plan.EvenOdds
	}
	if s, err := PriceAll(ed, &on); err == nil {
		m.Total = s.Total
	}
	return m
}
