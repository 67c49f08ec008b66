package compare

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

func pin(s *session.Session, _ session.Act) {
	if s.PinDraft() {
		s.Notice = "Added to compare. Now change the unit, and compare."
	}
}

// pinLink sets a quote aside from its link.
func pinLink(s *session.Session, a session.Act) error {
	text := link.Trim(a.Value)
	d, frozen, err := link.Decode(s.Memory.Edition.Cat, text)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		d, err = e.Draft, nil // the figures it carries are compared
	} else if err == nil {
		err = s.AsSent(d, frozen)
	}
	if err != nil {
		return err
	}
	s.Brought(d)
	if len(s.Pins) >= session.MaxPins {
		return errors.New("three quotes are there already: take one out first")
	}
	own, _, _ := link.Split(text)
	s.Pins = append(s.Pins, own)
	s.Notice = "Added to compare."
	return nil
}

func unpin(s *session.Session, a session.Act) {
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(s.Pins) {
		s.Pins = slices.Delete(slices.Clone(s.Pins), i, i+1)
		s.Notice = "Taken out of Compare."
	}
	if len(s.Pins) == 0 {
		s.Step(session.Step{Do: "focus", ID: "pin"})
	}
}

// swap works on a pinned quote and sets the present one aside in its place.
func swap(s *session.Session, a session.Act) {
	i, err := strconv.Atoi(a.ID)
	if err != nil || i < 0 || i >= len(s.Pins) {
		return
	}
	d, _, err := link.Decode(s.Memory.Edition.Cat, s.Pins[i])
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	name := s.View.Names[link.Name(s.Pins[i])]
	s.Pins = slices.Delete(slices.Clone(s.Pins), i, i+1)
	s.PinDraft()
	s.NameCompared("", name)
	s.Draft = d
	s.Notice = letters.Isolate(cmp.Or(d.Title, s.Memory.Edition.Cat.LabelOf(d.Unit.Chassis))) +
		" is showing now. The quote worked on before is kept here."
}

// columnField names a column of the comparison.
func columnField(at string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		pin := ""
		if at != ownColumn {
			i, err := strconv.Atoi(at)
			if err != nil || i < 0 || i >= len(s.Pins) {
				return errors.New("there is no such quote")
			}
			pin = s.Pins[i]
		}
		s.NameCompared(pin, session.Clip(strings.TrimSpace(a.Value), mostNamed))
		return nil
	}
}

// ---- rival bids ----

func addRival(s *session.Session, _ session.Act) {
	if len(s.View.Rivals) < MaxRivals {
		name := "Another bid"
		has := func(r quote.Rival) bool { return r.Name == name }
		for n := 2; slices.ContainsFunc(s.View.Rivals, has); n++ {
			name = "Another bid " + strconv.Itoa(n)
		}
		s.View.Rivals = append(slices.Clone(s.View.Rivals), quote.Rival{Name: name})
		s.Notice = name + " stands in the comparison. Enter its figures here."
		s.Step(session.Step{Do: "focus", ID: "f-rival." + strconv.Itoa(len(s.View.Rivals)-1) + ".name"})
	}
}

func dropRival(s *session.Session, a session.Act) {
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(s.View.Rivals) {
		s.View.Rivals = slices.Delete(slices.Clone(s.View.Rivals), i, i+1)
	}
}

func rivalField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		at, what, _ := strings.Cut(name, ".")
		i, err := strconv.Atoi(at)
		if err != nil || i < 0 || i >= len(s.View.Rivals) {
			return errors.New("there is no such bid")
		}
		r := s.View.Rivals[i]
		typed := session.Clip(strings.TrimSpace(a.Value), 400)
		switch what {
		case "name":
			r.Name = typed
		case "warranty":
			r.Warranty = typed
		case "notes":
			r.Notes = typed
		case "price":
			r.Price, err = session.ReadAmount(typed)
		case "date":
			r.Date, err = config.ReadDate(typed)
		case "payload":
			var v float64
			v, err = s.Between(typed, quantity.Pound, 0, 100000)
			r.PayloadLb = quantity.Mass(v)
		}
		if err == nil {
			s.View.Rivals[i] = r
		}
		return err
	}
}
