package quote

import (
	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"open-link": openLink,
	"copy-link": func(s *session.Session, a session.Act) {
		s.Step(session.Step{Do: "copy", Text: a.Value})
		s.Notice = "Link copied."
	},
	"save-draft": saveDraft,
	"open-draft": openDraft,
	"sign":       signQuote,
	"foreign-open": func(s *session.Session, a session.Act) {
		openLink(s, session.Act{Value: s.View.Foreign, File: a.File})
	},
	"import":      importKept,
	"seal-kept":   sealKept,
	"open-sealed": openSealed,
	"quotes": func(s *session.Session, _ session.Act) {
		s.View.Area = "quote"
		s.Step(session.Step{Do: "focus", ID: "kept-quotes"})
	},
	"foreign-drop": func(s *session.Session, _ session.Act) { s.View.Foreign = "" },
	"own-copy":     ownCopy,
	"copy-quote":   copyQuote,
	"revise":       revise,
	"included":     unfold("fold-included"),
	"documents":    unfold("fold-document"),
	"save-table":   saveTable,
	"save-set":     saveSet,
	"paper":        setPaper,
	"section":      showSection,
}

// unfold opens a part of the quote that is read.
func unfold(id string) session.Do {
	return func(s *session.Session, _ session.Act) {
		s.View.Area = "quote"
		s.Step(session.Step{Do: "unfold", ID: id})
	}
}

// fields are set by the id of their input.
var fields = map[string]session.Setter{
	"number":         session.Text(60, func(d *quote.Draft) *string { return &d.Number }),
	"notes":          session.Text(4000, func(d *quote.Draft) *string { return &d.Notes }),
	"buyer.name":     session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Name }),
	"buyer.person":   session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Person }),
	"buyer.address":  session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Address }),
	"buyer.reach":    session.Text(400, func(d *quote.Draft) *string { return &d.Buyer.Reach }),
	"seller.name":    session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Name }),
	"seller.person":  session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Person }),
	"seller.address": session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Address }),
	"seller.reach":   session.Text(400, func(d *quote.Draft) *string { return &d.Seller.Reach }),
	"date":           session.Date(func(d *quote.Draft) *config.Date { return &d.Date }, true),
	"address":        setAddress,
	"large":          func(s *session.Session, a session.Act) error { s.View.Large = a.On; return nil },
	"along":          func(s *session.Session, a session.Act) error { s.View.Alone = !a.On; return nil },
	"earlier":        setEarlier,
	"open-link":      func(s *session.Session, a session.Act) error { openLink(s, a); return nil },
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"reading": reading,
}
