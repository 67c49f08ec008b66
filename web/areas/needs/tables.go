package needs

import (
	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"carry":           carry,
	"carry-usual":     carryUsual,
	"own-add":         addOwn,
	"own-drop":        dropOwn,
	"new":             startNew,
	"remount":         startRemount,
	"remount-years":   remountYears,
	"mountings":       func(s *session.Session, _ session.Act) { s.View.Mountings = !s.View.Mountings },
	"find":            func(s *session.Session, a session.Act) { s.View.Find = session.Clip(a.Value, 80) },
	"wish":            wish,
	"propose":         findProposals,
	"take-proposal":   takeProposal,
	"give-up":         giveUp,
	"loosen":          loosen,
	"order-now":       orderNow,
	"paste-list":      func(s *session.Session, a session.Act) { a.ID = "list"; s.Set(a, pasteList) },
	"clear-list":      func(s *session.Session, _ session.Act) { s.Draft.Requirements = nil },
	"show-list":       showList,
	"turn-list":       turnList,
	"preview-answers": func(s *session.Session, _ session.Act) { s.View.List.Taking = !s.View.List.Taking },
	"take-answer":     takeAnswers,
	"standing":        standAnswer,
	"standing-list":   standingAnswers,
	"save-answers":    saveAnswers,
	"fill-sheet":      fillSheet,
}

// fields are set by the id of their input.
var fields = map[string]session.Setter{
	"title":            session.Text(400, func(d *quote.Draft) *string { return &d.Title }),
	"number":           session.Text(60, func(d *quote.Draft) *string { return &d.Number }),
	"notes":            session.Text(4000, func(d *quote.Draft) *string { return &d.Notes }),
	"buyer.name":       session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Name }),
	"buyer.person":     session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Person }),
	"buyer.address":    session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Address }),
	"buyer.reach":      session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Reach }),
	"seller.name":      session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Name }),
	"seller.person":    session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Person }),
	"seller.address":   session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Address }),
	"seller.reach":     session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Reach }),
	"date":             session.Date(func(d *quote.Draft) *config.Date { return &d.Date }, true),
	"unit.order_on":    orderDate,
	"unit.needed_by":   session.Date(func(d *quote.Draft) *config.Date { return &d.Unit.NeededBy }, false),
	"unit.occupant_lb": session.Mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.OccupantLb }),
	"unit.patient_lb":  session.Mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.PatientLb }),
	"unit.payload_lb":  session.Mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.PayloadLb }),
	"list":             pasteList,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"existing": existingField,
	"own-item": ownItemField,
	"needs":    needField,
	"req":      requirementField,
	"stand":    standingField,
	"rule":     ruleField,
	"strength": strengthField,
}
