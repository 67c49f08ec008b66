package session

import (
	"reflect"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Told is what the last press changed of the unit beyond what was pressed. It
// stands where the press was, and nowhere else, until anything of the quote changes again.
type Told struct {
	At      string       `json:"at"`   // what was pressed: an id, or a word such as "cheapest"
	Area    string       `json:"area"` // where that was
	Changes []ToldChange `json:"changes"`
	Asked   []ToldNeed   `json:"asked,omitempty"` // what is asked for otherwise now
	// Loose equipment of which there is more or less now, by its id.
	Aboard []ToldLoad `json:"aboard,omitempty"`
	// The unit before: what it came to, what payload it had left, and when it was
	// due at nine in ten.
	Total   pricing.Amount `json:"total"`
	Payload float64        `json:"payload_lb"`
	Safe    config.Date    `json:"safe"`
	// Its lines of price that are no part of the unit, such as credits and taxes, by label.
	Terms map[string]pricing.Amount `json:"terms,omitempty"`
}

// TermsOf adds up the lines of a price that are no part of a unit, by label.
func TermsOf(p *pricing.Sheet) map[string]pricing.Amount {
	terms := map[string]pricing.Amount{}
	for _, l := range p.Lines {
		if !slices.Contains([]string{pricing.LineChassis, pricing.LineBody, pricing.LineOption}, l.Code) {
			terms[l.Label] = terms[l.Label].Add(l.Amount)
		}
	}
	return terms
}

// ToldChange is one option, chassis or body that came in or went.
type ToldChange struct {
	ID      string          `json:"id"`
	Added   bool            `json:"added,omitempty"`
	Instead string          `json:"instead,omitempty"` // what went of the same group
	Cause   rules.FillCause `json:"cause,omitempty"`
	Own     bool            `json:"own,omitempty"`  // it was the customer's own choice before
	Line    string          `json:"line,omitempty"` // of the purchaser's list that asks for it
}

// ToldNeed is a need that the press changed, in words; Is is empty where nothing is
// asked for any more.
type ToldNeed struct {
	Label string `json:"label"`
	Was   string `json:"was,omitempty"`
	Is    string `json:"is,omitempty"`
}

// ToldLoad is loose equipment that the press took aboard, or off where By is below 0.
type ToldLoad struct {
	ID string `json:"id"`
	By int    `json:"by"`
}

// mostTold bounds what the view carries.
const mostTold = 80

// TellFrom notes what the press changed beyond its own id, against the draft before.
// What was told before stays while nothing of the quote changes: the one press that takes
// it back undoes the last step.
func (s *Session) TellFrom(was *quote.Draft, at string) {
	if quote.SameLoad(&was.Unit, &s.Draft.Unit, false) {
		if s.View.Told != nil && Canonical(was) != Canonical(s.Draft) {
			s.View.Told, s.Telling = nil, false
		}
		return
	}
	s.View.Told, s.View.Fresh = nil, s.broughtSince(&was.Unit)
	list, asked := s.changesFrom(&was.Unit, at), s.askedFrom(was)
	if len(list)+len(asked) == 0 {
		return
	}
	t := &Told{At: at, Area: s.View.Area, Changes: list[:min(len(list), mostTold)], Asked: asked,
		Aboard: s.loadsFrom(&was.Unit)}
	now := s.Draft
	s.Draft = was
	if w, err := s.Work(); err == nil {
		t.Total, t.Safe = w.Quote.Price.Total, w.Quote.Plan.NineInTen
		t.Terms = TermsOf(w.Quote.Price)
		f, _ := w.Quote.Figure("weight.payload-left")
		t.Payload = f.Value
	}
	s.Draft = now
	s.View.Told, s.Telling = t, true
}

// loadsFrom lists the loose equipment that rides in another number than in an earlier unit.
func (s *Session) loadsFrom(was *config.Unit) (list []ToldLoad) {
	count := func(u *config.Unit, id string) (n int) {
		for _, c := range u.Carried {
			if c.Equipment == id {
				n += c.Qty
			}
		}
		return n
	}
	for _, c := range slices.Concat(s.Draft.Unit.Carried, was.Carried) {
		by := count(&s.Draft.Unit, c.Equipment) - count(was, c.Equipment)
		known := slices.ContainsFunc(list, func(l ToldLoad) bool { return l.ID == c.Equipment })
		if by != 0 && !known && len(list) < mostTold {
			list = append(list, ToldLoad{c.Equipment, by})
		}
	}
	return list
}

// mostFresh bounds how many options the view carries as brought in by the last press.
const mostFresh = 40

// broughtSince lists the options of which there are more or fewer than in an earlier unit.
func (s *Session) broughtSince(was *config.Unit) (list []string) {
	for _, p := range s.Draft.Unit.Picks {
		if was.Qty(p.Option) != p.Qty && len(list) < mostFresh {
			list = append(list, p.Option)
		}
	}
	return list
}

// askedFrom lists the needs that are others than those of an earlier draft. Both are read
// beside the unit as it is now, whose kind brings needs of its own.
func (s *Session) askedFrom(was *quote.Draft) []ToldNeed {
	is := s.Draft
	if reflect.DeepEqual(was.Needs, is.Needs) && was.Unit.NeededBy == is.Unit.NeededBy &&
		was.Terms.Budget.Equal(is.Terms.Budget) {
		return nil
	}
	asked := is.Clone()
	asked.Needs, asked.Terms.Budget, asked.Unit.NeededBy = was.Needs, was.Terms.Budget, was.Unit.NeededBy
	asks := func(d *quote.Draft) []quote.Ask {
		s.Draft = d
		w, err := s.Work()
		if s.Draft = is; err != nil {
			return nil
		}
		return w.Quote.Asks(quantity.System(s.View.Metric))
	}
	words := func(a *quote.Ask) string {
		if a.Must || !a.Said {
			return a.Wanted
		}
		return a.Wanted + ", a want"
	}
	var out []ToldNeed
	before, after := asks(asked), asks(is)
	for i := range before {
		a := &before[i]
		n := ToldNeed{Label: a.Label, Was: words(a)}
		if k := slices.IndexFunc(after, func(b quote.Ask) bool { return b.ID == a.ID }); k >= 0 {
			n.Is = words(&after[k])
		}
		if n.Is != n.Was {
			out = append(out, n)
		}
	}
	return out[:min(len(out), mostTold)]
}

// changesFrom lists what differs from an earlier unit but the thing pressed, with
// the causes that the program had.
func (s *Session) changesFrom(was *config.Unit, at string) []ToldChange {
	cat, is := s.Memory.Edition.Cat, &s.Draft.Unit
	causes := map[string]rules.Change{}
	for _, c := range s.Changes {
		causes[c.Option] = c
	}
	change := func(id string, added bool) ToldChange {
		c := causes[id]
		out := ToldChange{ID: id, Added: added, Cause: c.Cause}
		if added {
			out.Line = s.For[id]
		}
		return out
	}
	var out []ToldChange
	gone := map[string]string{} // by the group of which only one can be had
	for _, p := range was.Picks {
		if o := cat.OptionByID(p.Option); o != nil && !is.Has(o.ID) &&
			cat.GroupByID(o.Group).Choose != config.ChooseAny {
			gone[o.Group] = o.ID
		}
	}
	for _, x := range []struct{ had, has string }{{was.Chassis, is.Chassis}, {was.Body, is.Body}} {
		if x.had != x.has && x.has != at {
			c := change(x.has, true)
			c.Instead = x.had
			out = append(out, c)
		}
	}
	pressed := cat.OptionByID(at)
	for _, p := range is.Picks {
		if was.Qty(p.Option) == p.Qty || p.Option == at {
			continue
		}
		c := change(p.Option, true)
		if o := cat.OptionByID(p.Option); o != nil && gone[o.Group] != "" {
			if c.Instead = gone[o.Group]; c.Cause == "" {
				c.Cause = causes[c.Instead].Cause
			}
			delete(gone, o.Group)
			if c.Instead == at {
				c.Instead = ""
			}
			c.Own = c.Instead != "" && !was.Filled(c.Instead)
		}
		out = append(out, c)
	}
	for _, p := range was.Picks {
		o := cat.OptionByID(p.Option)
		switch {
		case is.Has(p.Option) || p.Option == at || o == nil:
		case slices.ContainsFunc(out, func(c ToldChange) bool { return c.Instead == p.Option }):
		case pressed != nil && is.Has(at) && o.Group == pressed.Group && gone[o.Group] == p.Option:
			// it is what the thing pressed replaces
		default:
			c := change(p.Option, false)
			c.Own = !p.Filled
			out = append(out, c)
		}
	}
	// What the customer chose and lost is read first.
	slices.SortStableFunc(out, func(a, b ToldChange) int { return rank(a) - rank(b) })
	return out
}

// rank puts what was the customer's own before the rest.
func rank(c ToldChange) int {
	if c.Own {
		return 0
	}
	return 1
}
