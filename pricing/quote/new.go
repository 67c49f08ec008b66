package quote

import "boxwright/config"

// New is a draft on a chassis and a body of the edition, with nothing else
// chosen. Empty or unknown ids take the first of the catalogue.
func New(ed *Edition, chassis, body string, today config.Date) *Draft {
	cat := ed.Cat
	if cat.ChassisByID(chassis) == nil {
		chassis = cat.Chassis[0].ID
	}
	if cat.BodyByID(body) == nil {
		body = cat.Bodies[0].ID
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
