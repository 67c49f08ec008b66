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
	text := link.Trim(a.Value)
	own, _, earlier := link.Split(text)
	d, frozen, err := link.Decode(s.Memory.Edition.Cat, text)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		s.View.Foreign, s.View.Area = link.With(own, earlier), "quote"
		s.Notice = "The link was made with another catalogue edition than the one in use. It is shown as it was " +
			"issued; the quote worked on stays."
		return
	}
	if err == nil {
		err = s.AsSent(d, frozen)
	}
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	before := s.Draft.Issued
	if s.KeepAside() {
		s.Notice = "The earlier quote is kept in Compare."
	}
	s.Draft = d
	s.Brought(d)
	s.Recall(append(append(strings.Fields(a.File), earlier, before), s.Pins...)...)
	s.View.Area, s.View.Asked, s.View.Foreign, s.View.Paper, s.View.Guide = "quote", "", "", "", 0
	s.View.Reading, s.View.Frozen = true, frozen
	s.Step(session.Step{Do: "new-quote"})
	s.Step(session.Step{Do: "top"})
}

// ownCopy begins a quote of one's own from the one that is read: nobody's offer and without a
// number. The unit keeps its name, which is printed. It keeps the quote along, so that who is
// sent the copy sees what it asks for.
func ownCopy(s *session.Session, _ session.Act) {
	sent := asSent(s)
	d := taken(s)
	anew(d)
	d.Seller = quote.Party{}
	if sent != "" {
		d.Prev, d.Earlier = link.Name(sent), sent
	}
	s.Notice = "This is your own copy, not signed. To ask for a change, make it here and send its link from Quote: it " +
		"shows what you changed. The quote you were sent is under Saved quotes."
	begin(s, d)
	s.View.Area = "unit" // what a copy is made for
}

// asSent is the link of the quote that is read; empty where it is not signed and of another
// edition.
func asSent(s *session.Session) string {
	if d := s.Subject(); d.Issued != "" || s.Other != nil {
		return d.Issued
	}
	q, err := s.Compute()
	if err != nil {
		return ""
	}
	text, err := link.Encode(q)
	if err != nil {
		return ""
	}
	return text
}

// anew makes a quote of its own of a copy: a number, a revision and a signature are one quote's.
func anew(d *quote.Draft) {
	d.Number, d.Rev, d.Prev, d.Earlier, d.Issued = "", 0, "", "", ""
}

// copyQuote goes on with a copy, for which the page has begun a record of its own.
func copyQuote(s *session.Session, _ session.Act) {
	if s.View.Reading {
		return // a reader's copy stays as it was sent
	}
	s.Draft = s.Draft.Clone()
	anew(s.Draft)
	s.Notice = "You work on a copy now. It is not signed, and has no quote number yet: give it one in Quote, " +
		"under “About”."
}

// revise begins a revision of the quote that is read, for somebody who may sign. It has the
// next number even where that quote is not signed, so that two copies of it are told apart;
// what it changes is told from the last issue that was signed.
func revise(s *session.Session, _ session.Act) {
	if s.Req.Key == "" {
		s.Fault("A revision is made by the seller: it needs a signing key on this device.")
		return
	}
	issued := s.Subject().Issued
	d := taken(s)
	if d.AsksBack() {
		s.Notice = "You work on the quote now. It is not signed."
		answer(s, d)
		begin(s, d)
		return
	}
	if issued != "" {
		d.Prev, d.Earlier, d.Issued = link.Name(issued), issued, ""
	}
	d.Rev = min(d.Rev+1, 999)
	s.Notice = fmt.Sprintf("You work on revision %d of the quote now. It is not signed until you sign it; the one you "+
		"read stands as it was sent.", d.Rev)
	begin(s, d)
}

// answer makes the next revision of the seller's own quote of what a reader asks for.
func answer(s *session.Session, d *quote.Draft) {
	if was, _, err := link.Decode(s.Memory.Edition.Cat, d.Earlier); err == nil {
		d.Number, d.Seller, d.Rev = was.Number, was.Seller, min(was.Rev+1, 999)
		s.Notice = fmt.Sprintf("You work on revision %d of your quote now, with what was asked for. It is not signed.", d.Rev)
	}
}

// taken is the quote that is read, as the edition in use has it.
func taken(s *session.Session) *quote.Draft {
	if s.Other == nil {
		return s.Draft.Clone()
	}
	d, lost, changes := quote.Move(s.Memory.Edition, s.Other)
	if len(lost) > 0 {
		s.Fault("The edition in use does not have: %s. These were left out.", strings.Join(lost, ", "))
	}
	s.Tell(changes)
	return d
}

// begin takes up a draft in a record of its own, to be worked on.
func begin(s *session.Session, d *quote.Draft) {
	s.Draft = d
	s.View.Reading, s.View.Frozen, s.View.Area = false, nil, "quote"
	s.Step(session.Step{Do: "new-quote"})
	s.Step(session.Step{Do: "top"})
}

func saveDraft(s *session.Session, _ session.Act) {
	data, err := s.Draft.Bytes()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	s.Step(session.Step{Do: "save", Name: s.NameFile("", ".json"), Type: "application/json", Text: string(data) + "\n"})
}

func openDraft(s *session.Session, a session.Act) {
	d, err := quote.ReadDraft([]byte(a.Value))
	if err == nil {
		err = s.Memory.Suits(d)
	}
	if err != nil {
		s.Fault("The present quote stays. %s was not opened: %s", a.ID, session.Sentence(err))
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

// showSection shows a numbered part of the quote.
func showSection(s *session.Session, a session.Act) {
	setPaper(s, session.Act{ID: papers[0].id})
	s.Step(session.Step{Do: "reveal", ID: sectionID(a.ID)})
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
