package needs

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/session"
	"boxwright/web/told"
)

// ---- needs and proposals ----

func needField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		before := s.Draft.Needs
		n := &s.Draft.Needs
		texts := map[string]*string{"duty": &n.Duty, "roads": &n.Roads, "climate": &n.Climate, "type": &n.Type,
			"fuel": &n.Fuel, "drive": &n.Drive}
		if to := texts[name]; to != nil {
			*to = a.Value
			n.SetFirm(name, false) // what another word asks for is a must only when the customer says so
		} else if size := quote.SizeByID(name); size != nil {
			v, err := readSize(s, a.Value, size)
			if err != nil {
				return err
			}
			size.Ask(n, v)
		} else {
			return fmt.Errorf("there is no field %q", name)
		}
		if ps := s.Draft.Check(); len(ps) > 0 {
			s.Draft.Needs = before
			return ps
		}
		return nil
	}
}

// readSize reads the number of a need; empty is 0.
func readSize(s *session.Session, typed string, size *quote.Size) (float64, error) {
	if size.Unit != quantity.Count {
		return s.Between(typed, size.Unit, size.From, size.To)
	}
	n, err := session.CountOf(typed, int(size.From), int(size.To))
	return float64(n), err
}

// strengthField makes a need a must or a want: an option one that the unit must have or
// that the customer would like.
func strengthField(id string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		want := a.Value == "want"
		if s.Memory.Edition.Cat.OptionByID(id) != nil {
			wish(s, session.Act{ID: id, Value: page.Either(want, "like", "must")})
			return nil
		}
		if !slices.Contains(quote.AskIDs, id) {
			return fmt.Errorf("there is no need %q", id)
		}
		if n := &s.Draft.Needs; n.OnlySuited(s.Memory.Edition.Cat, id) {
			n.SetFirm(id, !want)
		} else {
			n.SetWant(id, want)
		}
		return nil
	}
}

// wish makes an option one the unit must have, would have, or neither.
func wish(s *session.Session, a session.Act) {
	if s.Memory.Edition.Cat.OptionByID(a.ID) == nil {
		s.Fault("There is no option %q in this edition.", a.ID)
		return
	}
	n := &s.Draft.Needs
	is := func(id string) bool { return id == a.ID }
	n.Must, n.Like = slices.DeleteFunc(slices.Clone(n.Must), is), slices.DeleteFunc(slices.Clone(n.Like), is)
	switch a.Value {
	case "must":
		n.Must = append(n.Must, a.ID)
	case "like":
		n.Like = append(n.Like, a.ID)
	}
	if ps := s.Draft.Check(); len(ps) > 0 {
		s.Fault("%s", session.Sentence(ps))
		n.Must, n.Like = slices.DeleteFunc(n.Must, is), slices.DeleteFunc(n.Like, is)
	}
}

// needsKey names what proposals depend on.
func needsKey(s *session.Session) string {
	return session.Hashed(propose.Basis(s.Draft, s.Memory.Edition.Cat).Bytes())
}

// answerNeeds answers the needs as they are.
func answerNeeds(s *session.Session) *propose.Search {
	answer := propose.Propose(s.Memory.Edition, s.Draft)
	return &answer
}

func findProposals(s *session.Session, _ session.Act) {
	s.View.Proposed = needsKey(s)
	s.View.Find = "" // what was looked for is asked for by now
	s.Step(session.Step{Do: "reveal", ID: "answer"})
}

func takeProposal(s *session.Session, a session.Act) {
	answer := s.Memory.Proposals.Now(needsKey(s), func() *propose.Search { return answerNeeds(s) })
	list := answer.Offered()
	if answer.Aside != nil {
		list = append(slices.Clone(list), *answer.Aside)
	}
	for _, p := range list {
		if string(p.Goal) == a.ID {
			cat := s.Memory.Edition.Cat
			was, is := cat.DutyOf(&s.Draft.Unit), cat.DutyOf(&p.Unit)
			takeUnit(s, &p.Unit, a.ID)
			s.Notice = letters.Isolate(p.Title) + " is showing now." + s.Notice
			if len(p.Unit.Carried) > 0 && was != nil && is != nil && was.ID != is.ID {
				s.Notice += " It carries the usual equipment for " + strings.ToLower(is.Label) + "; stow it in Equipment."
			}
			return
		}
	}
	s.Fault("That proposal is no longer there: ask again.")
}

// takeUnit works on another unit, with the one before set aside; not the one a quote
// begins with, in which nobody has chosen anything.
func takeUnit(s *session.Session, u *config.Unit, which string) {
	begun := s.Draft.Unit.Chassis == s.Memory.Edition.Cat.Start &&
		!slices.ContainsFunc(s.Draft.Unit.Picks, func(p config.Pick) bool { return !p.Filled })
	aside := !begun && s.PinDraft()
	said := s.Draft.Unit.Details
	s.Draft.Unit = u.Clone()
	s.Draft.Unit.Details = said
	s.Pressed = told.UnitPress(which)
	s.Step(session.Step{Do: "focus", ID: "told"})
	if s.Notice = ""; aside {
		s.Notice = " The unit worked on before is kept in Compare."
	}
}

// giveUp asks for a little less, and takes the unit that has the rest.
func giveUp(s *session.Session, a session.Act) {
	list := giveUpsOf(s, needsKey(s))
	i, err := strconv.Atoi(a.ID)
	if err != nil || i < 0 || i >= len(list) {
		s.Fault("That is no longer offered: propose again.")
		return
	}
	g := &list[i]
	takeUnit(s, &g.Unit, a.ID)
	s.Draft.Needs = g.Needs
	s.Draft.Terms.Budget, s.Draft.Unit.NeededBy = g.Budget, g.NeededBy
	s.View.Proposed = "" // they were answered
	s.Notice = "The needs say so now, and this is the unit that meets them. " + g.Given(quantity.System(s.View.Metric)) +
		s.Notice
}

// loadProposals shows those that answer the needs as they are now.
func loadProposals(s *session.Session, p *Page) {
	if s.View.Proposed == "" || s.View.Proposed != needsKey(s) {
		return
	}
	var there bool
	key := needsKey(s)
	p.Search, there = s.Memory.Proposals.For(s, key, func() *propose.Search { return answerNeeds(s) })
	if p.Proposing = !there; !there || !p.Search.Short {
		return
	}
	p.Giving, _ = s.Memory.GiveUps.Next(s, giveUpsAbout(key), func() *propose.Giving { return lookForGiveUps(s, key) })
}

// giveUpsAbout names what would have to go for needs of a key.
func giveUpsAbout(key string) string { return "give up " + key }

// giveUpsOf are what would have to go for the needs as they are.
func giveUpsOf(s *session.Session, key string) []propose.GiveUp {
	return s.Memory.GiveUps.Now(giveUpsAbout(key), func() *propose.Giving { return lookForGiveUps(s, key) }).List
}

func lookForGiveUps(s *session.Session, key string) *propose.Giving {
	g := propose.GiveUps(s.Memory.Proposals.Now(key, func() *propose.Search { return answerNeeds(s) }))
	return &g
}

// orderDate sets the day of the order, which the quote's own date cannot follow.
func orderDate(s *session.Session, a session.Act) error {
	day, err := config.ReadDate(a.Value)
	if err == nil {
		err = s.Draft.Ordered(day)
	}
	if err != nil {
		return err
	}
	return session.Date(func(d *quote.Draft) *config.Date { return &d.Unit.OrderOn }, true)(s, a)
}

// orderNow counts the delivery from today on, where the day of the order has passed.
func orderNow(s *session.Session, _ session.Act) {
	s.Draft.Unit.OrderOn = s.Draft.FirstOrder(s.Req.Today)
	s.Right("unit.order_on")
}

// loosen takes the budget or the day to what the unit in work comes to.
func loosen(s *session.Session, a session.Act) {
	q, err := s.Compute()
	if err != nil {
		return
	}
	switch a.ID {
	case quote.AskBudget:
		s.Draft.Terms.Budget = pricing.BudgetFor(q.Price.Total)
	case quote.AskDate:
		s.Draft.Unit.NeededBy = q.LastSafe()
	default:
		s.Fault("There is no need %q that can be moved.", a.ID)
	}
}
