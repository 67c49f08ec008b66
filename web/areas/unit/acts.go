package unit

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/web/session"
)

// pick takes an option into the unit or out of it. In a group of which only
// one can be had it takes the place of the other.
func pick(s *session.Session, a session.Act) {
	cat := s.Memory.Edition.Cat
	o := cat.OptionByID(a.ID)
	if o == nil {
		s.Fault("There is no option %q in this edition.", a.ID)
		return
	}
	u := &s.Draft.Unit
	s.Right("qty-" + o.ID)
	if !a.On {
		takeOut(s, o.ID)
		return
	}
	if !u.Has(o.ID) && judge(s, o.ID) == rules.RuledOut {
		s.View.Asked = o.ID
		s.Notice = letters.Isolate(o.Label) + " is not available with this build."
		return
	}
	full, changes, _ := propose.Take(s.Memory.Edition, s.Draft, o.ID)
	if len(changes) > propose.FewChanges {
		s.View.Asked = o.ID
		s.Spoken = letters.Isolate(o.Label) + " fits, but much that was filled in would change. See what is offered."
		s.Step(session.Step{Do: "focus", ID: "why-" + o.ID})
		return
	}
	s.View.Asked = ""
	s.Draft.Unit = full
	s.Spoken = named(s, o.ID) + " is in."
	s.Tell(changes)
}

// takeOut takes an option out. What is standard then stays out, and one that
// something holds in shows what does.
func takeOut(s *session.Session, id string) {
	cat := s.Memory.Edition.For(&s.Draft.Unit).Cat
	o, u := cat.OptionByID(id), &s.Draft.Unit
	u.Drop(id)
	u.LeaveOut(id, o.Standard)
	if !o.Standard && cat.GroupByID(o.Group).Choose != config.ChooseAny {
		for _, m := range cat.Members(o.Group) {
			u.LeaveOut(cat.Options[m].ID, false) // what it stood in the place of may come back
		}
	}
	s.Refill()
	if s.View.Asked = ""; s.Draft.Unit.Has(id) {
		mustStay(s, o)
		return
	}
	s.Spoken = named(s, id) + " is out."
}

// mustStay says that an option could not be taken out.
func mustStay(s *session.Session, o *config.Option) {
	s.Draft.Unit.LeaveOut(o.ID, false)
	s.View.Asked = o.ID
	s.Notice = letters.Isolate(o.Label) + " has to stay in. See why beside it."
}

// none leaves out all of a group of which none may be; what has to stay says so.
func none(s *session.Session, a session.Act) {
	cat := s.Memory.Edition.For(&s.Draft.Unit).Cat
	for _, m := range cat.Members(a.ID) {
		o := &cat.Options[m]
		s.Draft.Unit.Drop(o.ID)
		s.Draft.Unit.LeaveOut(o.ID, o.Standard)
	}
	s.Refill()
	s.View.Asked = ""
	if g := cat.GroupByID(a.ID); g != nil {
		s.Spoken = g.Label + ": none."
	}
	for _, m := range cat.Members(a.ID) {
		if o := &cat.Options[m]; s.Draft.Unit.Has(o.ID) {
			mustStay(s, o)
		}
	}
}

// takeOffer takes an option in one of the ways offered, worked out again from
// the same unit.
func takeOffer(s *session.Session, a session.Act) {
	offers := waysTo(s, a.ID).Offers
	i, err := strconv.Atoi(a.Value)
	if err != nil || i < 0 || i >= len(offers) {
		s.Fault("That is no longer offered; ask again.")
		return
	}
	s.Draft.Unit = offers[i].Unit.Clone()
	s.View.Asked = ""
	s.Step(session.Step{Do: "focus", ID: "o-" + a.ID}) // the button pressed is gone
	s.Notice = named(s, a.ID) + " is in."
	s.Tell(offers[i].Changes)
}

// release unlocks a pick: other choices may replace it.
func release(s *session.Session, a session.Act) {
	if p := s.Draft.Unit.Find(a.ID); p != nil {
		p.Filled = true
		s.Refill()
		s.Notice = named(s, a.ID) + " is unlocked: other choices may replace it."
	}
}

// keep makes what was filled in the customer's own choice.
func keep(s *session.Session, a session.Act) {
	if s.Draft.Unit.Filled(a.ID) {
		s.Draft.Unit.Keep(a.ID)
		s.Refill()
		s.Spoken = named(s, a.ID) + " is locked in."
	}
}

// complete fills every group: with what is standard, or for a goal. What a goal
// leaves out of the standard stays out until it is asked for as standard again.
func complete(s *session.Session, a session.Act) {
	u := &s.Draft.Unit
	if a.ID == "" {
		u.LeftOut = nil
		u.Picks = slices.DeleteFunc(u.Picks, func(p config.Pick) bool { return p.Filled })
		if full, ok := s.Rules().Start(u, s.Limits()); ok {
			*u = full
		} else {
			s.Refill()
		}
		return
	}
	full, said, ok := propose.Complete(s.Memory.Edition, s.Draft, propose.Goal(a.ID))
	if !ok {
		s.Notice = "No full unit keeps your choices and every limit; the reasons are listed."
		return
	}
	for _, id := range propose.Absent(s.Memory.Edition, &full) {
		full.LeaveOut(id, true)
	}
	s.Draft.Unit = full
	s.Notice = said
}

func setQty(s *session.Session, a session.Act) {
	o := s.Memory.Edition.Cat.OptionByID(a.ID)
	if o == nil {
		return
	}
	most := max(o.MaxQty, 1)
	n, err := session.CountOf(a.Value, 0, most)
	if err != nil {
		s.Wrong("qty-"+a.ID, a.Value, err.Error())
		return
	}
	s.Right("qty-" + a.ID)
	if n == 0 {
		takeOut(s, o.ID)
		return
	}
	s.Draft.Unit.Set(config.Pick{Option: o.ID, Qty: n})
	s.Refill()
}

func setChassis(s *session.Session, a session.Act) {
	if s.Memory.Edition.Cat.ChassisByID(a.ID) == nil {
		s.Fault("There is no chassis %q in this edition.", a.ID)
		return
	}
	move(s, &s.Draft.Unit.Chassis, a.ID)
	if n := &s.Draft.Needs; n.Begun != "" {
		n.Begun = s.Draft.Unit.Chassis
	}
}

func setBody(s *session.Session, a session.Act) {
	if s.Memory.Edition.Cat.BodyByID(a.ID) == nil {
		s.Fault("There is no module %q in this edition.", a.ID)
		return
	}
	move(s, &s.Draft.Unit.Body, a.ID)
}

// move puts the unit on another chassis or body and completes it there. When
// the picks cannot stand on it the unit stays as it is and the reason is shown.
func move(s *session.Session, place *string, wanted string) {
	if judge(s, wanted) == rules.RuledOut {
		s.View.Asked = wanted
		s.Notice = named(s, wanted) + " does not go with the present choices."
		return
	}
	s.View.Asked = ""
	before := s.Draft.Unit.Clone()
	*place = wanted
	s.Draft.Unit.Keep(wanted)
	restart(s, &before)
	s.Refill()
	s.Spoken = named(s, wanted) + " is in."
}

// showChassis and pickAny are what this area rehearses: every chassis is judged, and the
// first option that is open is taken.
func showChassis(s *session.Session) { s.View.Chapter = session.ChapterChassis }

func pickAny(s *session.Session) {
	cat := s.Memory.Edition.Cat
	for i := range cat.Options {
		o := &cat.Options[i]
		if !s.Draft.Unit.Has(o.ID) && judge(s, o.ID) == rules.Open {
			s.View.Chapter = cat.GroupByID(o.Group).Chapter
			pick(s, session.Act{ID: o.ID, On: true})
			return
		}
	}
}

// judge says what an id is beside the picks of the unit. What the table is still
// checking is given more work, since the user asks for it now.
func judge(s *session.Session, id string) rules.State {
	w, err := s.Work()
	if err != nil {
		return rules.Checking
	}
	return w.Quote.Decide(id)
}

// ask opens or closes the answer to "why not?".
func ask(s *session.Session, a session.Act) {
	if s.View.Asked == a.ID {
		s.View.Asked = ""
		return
	}
	s.View.Asked = a.ID
	s.Step(session.Step{Do: "focus", ID: "why-" + a.ID})
}

// mend applies an offered way out: ID is the thing wanted, Value the position
// in the list of ways, worked out again from the same unit.
func mend(s *session.Session, a session.Act) {
	list := waysTo(s, a.ID).Mends
	i, err := strconv.Atoi(a.Value)
	if err != nil || i < 0 || i >= len(list) {
		s.Fault("That way out is no longer open; ask again.")
		return
	}
	s.Draft.Unit = list[i].Unit.Clone()
	s.View.Asked = ""
	s.Step(session.Step{Do: "focus", ID: "o-" + a.ID}) // the button pressed is gone
	s.Notice = "Done: " + named(s, a.ID) + " is in."
	s.Tell(list[i].Changes)
}

// giveWay makes wants of the musts that stand against a thing, and takes it: ID is the
// thing wanted, Value the position in the list of what was offered.
func giveWay(s *session.Session, a session.Act) {
	list := waysTo(s, a.ID).Yields
	i, err := strconv.Atoi(a.Value)
	if err != nil || i < 0 || i >= len(list) {
		s.Fault("That is no longer offered; ask again.")
		return
	}
	y := &list[i]
	for _, need := range y.Needs {
		s.Draft.Needs.GiveWay(s.Memory.Edition.Cat, need)
	}
	s.Draft.Unit = y.Unit.Clone()
	s.View.Asked = ""
	s.Step(session.Step{Do: "focus", ID: "o-" + a.ID}) // the button pressed is gone
	s.Notice = named(s, a.ID) + " is in. Needs has as wants now: " +
		strings.Join(y.Labels, "; ") + "."
	s.Tell(y.Changes)
}

// ---- what options ask ----

// detailField takes what is said to an option that asks. Who says something to
// an option means to have it.
func detailField(option string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		u := &s.Draft.Unit
		if len(a.Value) > config.MaxDetail {
			return errors.New(letters.TooLong(a.Value, config.MaxDetail))
		}
		if !u.Has(option) {
			return fmt.Errorf("the unit does not have %q", option)
		}
		u.Tell(option, strings.TrimSpace(a.Value))
		if u.Detail(option) != "" {
			keep(s, session.Act{ID: option})
		}
		return nil
	}
}

// weighedField takes what the purchaser weighed of an option.
func weighedField(option string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		u := &s.Draft.Unit
		if o := s.Memory.Edition.Cat.OptionByID(option); o == nil || o.AsksLb == "" || !u.Has(option) {
			return fmt.Errorf("the unit does not have %q", option)
		}
		v, err := s.Between(a.Value, quantity.Pound, 1, config.MostOwnLb)
		if err != nil {
			return err
		}
		u.TellLb(option, quantity.Mass(v))
		if v > 0 {
			keep(s, session.Act{ID: option})
		}
		return nil
	}
}

// restart fits what is standard when a unit turns from a new module to an
// existing one or back; deliberate picks stay.
func restart(s *session.Session, before *config.Unit) {
	u := &s.Draft.Unit
	was, _ := s.Memory.Edition.Cat.Measured(before)
	if now, _ := s.Memory.Edition.Cat.Measured(u); now != was {
		u.Picks = slices.DeleteFunc(u.Picks, func(p config.Pick) bool { return p.Filled })
		*u, _ = s.Rules().Start(u, s.Limits())
	}
}

// named is what a thing of the catalogue is called, for a notice.
func named(s *session.Session, id string) string {
	return letters.Isolate(s.Memory.Edition.Cat.LabelOf(id))
}
