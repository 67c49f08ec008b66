package quote

import (
	"cmp"

	"boxwright/config"
	"boxwright/config/standards"
)

// New is a draft on a chassis and a body of the edition, with nothing else
// chosen. Empty or unknown ids take what the catalogue begins with, and the
// body usual on the chassis.
func New(ed *Edition, chassis, body string, today config.Date) *Draft {
	cat := ed.Cat
	if cat.ChassisByID(chassis) == nil {
		chassis = cmp.Or(cat.Start, cat.Chassis[0].ID)
	}
	if cat.BodyByID(body) == nil {
		body = cmp.Or(cat.ChassisByID(chassis).UsualBody, cat.Bodies[0].ID)
	}
	return &Draft{
		Format: DraftFormat,
		Date:   today,
		Unit: config.Unit{
			Catalogue: cat.ID, Edition: cat.Hash(), Chassis: chassis, Body: body,
			Picks: []config.Pick{}, OrderOn: today,
		},
	}
}

// Begin is a new draft with the default rule set and everything that is
// standard: a unit as the plant builds it when nobody says otherwise.
func Begin(ed *Edition, chassis, body string, today config.Date) *Draft {
	return BeginFor(ed, chassis, body, today, new(Needs))
}

// BeginFor is Begin for a customer's needs: the unit is of the duty asked for, on a body of
// that duty, and keeps those musts that chassis and body leave.
func BeginFor(ed *Edition, chassis, body string, today config.Date, needs *Needs) *Draft {
	d := New(ed, chassis, body, today)
	d.Needs = needs.clone()
	d.Unit.RuleSet = standards.Default()
	if u, ok := beginKind(ed, d, body); ok {
		d.Unit = u
		return d
	}
	ed = ed.For(&d.Unit)
	d.Unit, _ = ed.Rules.Start(&d.Unit, Limits(ed, d))
	return d
}

// beginKind is the unit of the duty that is a must, as the plant builds it on the chassis
// with a body, or with the first that will do; false where there is none.
func beginKind(ed *Edition, d *Draft, body string) (config.Unit, bool) {
	duty := ed.Cat.DutyByID(d.Needs.Duty)
	if duty == nil || !d.Needs.IsMust(ed.Cat, duty.Option) {
		return config.Unit{}, false
	}
	bodies := []string{body}
	if ed.Cat.BodyByID(body) == nil {
		bodies = ed.Cat.BodiesFor(ed.Cat.ChassisByID(d.Unit.Chassis), duty, "")
	}
	must, _ := d.Needs.Wishes(ed.Cat)
	for _, body := range bodies {
		on := d.Clone()
		u := &on.Unit
		u.Body = body
		for _, id := range must {
			u.Set(config.Pick{Option: id, Qty: 1})
		}
		u.RuleSet = standards.Suit(u.RuleSet, duty)
		of := ed.For(u)
		of.Cat.FitUsual(u)
		if full, ok := of.Rules.StartWhole(u, Limits(of, on)); ok {
			return full, true
		}
	}
	return config.Unit{}, false
}
