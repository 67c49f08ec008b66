package equipment

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/web/session"
)

// ownItemField is a field of the item that is being described.
func ownItemField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		x := &s.View.OwnItem
		field, known := map[string]*string{"name": &x.Name, "mass": &x.Mass, "length": &x.Length, "width": &x.Width,
			"height": &x.Height, "place": &x.Place}[name]
		if !known {
			return fmt.Errorf("an item has no %q", name)
		}
		*field = session.Clip(a.Value, config.MaxOwnLabel)
		if size, is := ownSizes[name]; is {
			_, err := s.Between(*field, size.unit, 0, size.most)
			return err
		}
		return nil
	}
}

// ownSizes are the numbers that describe an item of one's own.
var ownSizes = map[string]struct {
	unit string
	most float64
}{
	"mass":   {quantity.Pound, config.MostOwnLb},
	"length": {quantity.Inch, config.MostOwnIn},
	"width":  {quantity.Inch, config.MostOwnIn},
	"height": {quantity.Inch, config.MostOwnIn},
}

// addOwn puts the item described on the list, and one of it aboard.
func addOwn(s *session.Session, _ session.Act) {
	const id = "own-add"
	x, u := &s.View.OwnItem, &s.Draft.Unit
	e := config.Equipment{Label: strings.TrimSpace(x.Name), Basis: "the purchaser's own"}
	if x.Place != "" {
		e.Stow = &config.Stowage{Place: x.Place}
	}
	read := func(typed, name string) float64 {
		v, err := s.Between(typed, ownSizes[name].unit, 0, ownSizes[name].most)
		if err != nil {
			s.Wrong(id, "", err.Error())
		}
		return v
	}
	s.Right(id)
	e.MassLb = quantity.Mass(read(x.Mass, "mass"))
	e.LengthIn = quantity.Length(read(x.Length, "length"))
	e.WidthIn = quantity.Length(read(x.Width, "width"))
	e.HeightIn = quantity.Length(read(x.Height, "height"))
	fault := cmp.Or(s.View.Wrong[id], config.OwnFault(&e))
	if len(u.OwnItems) >= config.MaxOwnItems {
		fault = fmt.Sprintf("the list has %d items of your own already", config.MaxOwnItems)
	}
	if fault != "" {
		s.Wrong(id, "", fault)
		return
	}
	own := u.AddOwn(e)
	s.View.OwnItem = session.OwnItem{}
	s.Stowed(append(slices.Clone(u.Carried), config.Carried{Equipment: own, Qty: 1}))
	s.Notice = e.Label + " is on the list, one aboard. Where it can ride is set below."
}

// dropOwn takes an item of the purchaser's own off the list.
func dropOwn(s *session.Session, a session.Act) { s.Draft.Unit.DropOwn(a.ID) }
