package quote

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// openLink replaces the draft by the one a link holds; the earlier one is set
// aside in Compare, so that nothing is lost.
func openLink(s *session.Session, a session.Act) {
	own, _, earlier := link.Split(a.Value)
	d, frozen, err := link.Decode(s.Memory.Edition.Cat, a.Value)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		s.View.Foreign, s.View.Area = link.With(own, earlier), "quote"
		s.Notice = "The link was made with a catalogue edition this page does not hold. It is shown as it was " +
			"issued; the quote worked on stays."
		return
	}
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	before := s.Draft.Issued
	if s.KeepAside() {
		s.Notice = "The quote was opened from its link. The one worked on before is set aside in Compare."
	} else {
		s.Notice = "The quote was opened from its link."
	}
	s.Draft = d
	s.Brought(d)
	s.Recall(append(append(strings.Fields(a.File), earlier, before), s.Pins...)...)
	s.View.Area, s.View.Asked, s.View.Foreign, s.View.Paper, s.View.Guide = "quote", "", "", "", 0
	s.View.Received = s.Mark()
	s.Step(session.Step{Do: "new-quote"})
	tellNewFigures(s, frozen)
}

// tellNewFigures says where this copy of the page computes another price or date
// than an unsigned link came with. Of a signed one the check list says so.
func tellNewFigures(s *session.Session, was *link.Frozen) {
	q, err := s.Compute()
	if err != nil || s.Draft.Issued != "" || q.Total() == was.Total && q.Plan.EvenOdds == was.Even {
		return
	}
	s.Notice += " It was made with a total of " + was.Total + " and delivery on " + was.Even.Long() +
		"; this copy of the page computes " +
		q.Total() + " and " + q.Plan.EvenOdds.Long() + "."
}

func saveDraft(s *session.Session, _ session.Act) {
	data, err := s.Draft.Bytes()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	name := s.Draft.Number
	if name == "" {
		name = "quote"
	}
	s.Step(session.Step{Do: "save", Name: session.FileName(name) + ".json", Type: "application/json",
		Text: string(data) + "\n"})
}

func openDraft(s *session.Session, a session.Act) {
	d, err := quote.ReadDraft([]byte(a.Value))
	if err == nil {
		err = s.Memory.Suits(d)
	}
	if err != nil {
		s.Fault("%s was not opened; the present quote stays. %s", a.ID, session.Sentence(err))
		return
	}
	s.KeepAside()
	s.Draft = d
	s.Brought(d)
	s.Notice = "The quote was opened from " + a.ID + "."
}

func saveTable(s *session.Session, _ session.Act) {
	q, err := s.Compute()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	s.Save("everything", q.Everything())
}

// ---- which document is shown ----

func setPaper(s *session.Session, a session.Act) {
	s.View.Paper = PaperOf(a.Value + a.ID)
	s.View.Area = "quote"
}

// reading is a value typed into the test sheet.
func reading(check string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		q, err := s.Compute()
		if err != nil {
			return err
		}
		list := q.Checks()
		i := slices.IndexFunc(list, func(c quote.Check) bool { return c.ID == check })
		if i < 0 {
			return errors.New("the unit has no such check")
		}
		if strings.TrimSpace(a.Value) == "" {
			s.Draft.Read(check, nil)
			return nil
		}
		v, err := s.Between(a.Value, list[i].Unit, -1e6, 1e6)
		if err == nil {
			s.Draft.Read(check, &v)
		}
		return err
	}
}

func setAddress(s *session.Session, a session.Act) error {
	v := strings.TrimSpace(a.Value)
	if v != "" && !strings.HasPrefix(v, "https://") && !strings.HasPrefix(v, "http://") {
		return fmt.Errorf("an address begins with https://")
	}
	if len(v) > 300 || strings.ContainsAny(v, "#\"<> ") {
		return fmt.Errorf("an address has at most 300 characters and no #, quotes or spaces")
	}
	s.View.Address = v
	return nil
}
