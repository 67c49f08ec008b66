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

// BeginFor is Begin for a customer's needs: the unit keeps those musts that chassis
// and body leave.
func BeginFor(ed *Edition, chassis, body string, today config.Date, needs *Needs) *Draft {
	d := New(ed, chassis, body, today)
	d.Needs = needs.clone()
	d.Unit.RuleSet = standards.Default()
	ed = ed.For(&d.Unit)
	d.Unit, _ = ed.Rules.Start(&d.Unit, Limits(ed, d))
	return d
}
