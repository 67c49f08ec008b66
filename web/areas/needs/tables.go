package needs

import (
	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"find":            func(s *session.Session, a session.Act) { s.View.Find = session.Clip(a.Value, 80) },
	"wish":            wish,
	"begun-off":       func(s *session.Session, _ session.Act) { s.Draft.Needs.Begun = "" },
	"propose":         findProposals,
	"take-proposal":   takeProposal,
	"give-up":         giveUp,
	"loosen":          loosen,
	"order-now":       orderNow,
	"paste-list":      readList,
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
	"title":          session.Line(400, func(d *quote.Draft) *string { return &d.Title }),
	"unit.order_on":  orderDate,
	"unit.needed_by": session.Date(func(d *quote.Draft) *config.Date { return &d.Unit.NeededBy }, false),
	"list":           pasteList,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"needs":    needField,
	"req":      requirementField,
	"stand":    standingField,
	"strength": strengthField,
}
