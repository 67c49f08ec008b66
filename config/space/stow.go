package space

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Use is what rides in one compartment.
type Use struct {
	config.Compartment
	Items   []config.Carried
	Ft3     quantity.Volume // inside volume
	UsedFt3 quantity.Volume // of what rides in it
	MassLb  quantity.Mass
	Gear    []string // fitted in it, such as a tray or a generator
	Tray    bool     // one of them is a tray or a drawer, which carries what rides there
	State   State
	Why     string   // when it is not good
	Placed  []Placed // the arrangement found
}

// stow puts the carried equipment into its compartments and checks each.
func (s *Sheet) stow(b *vehicle) {
	at := map[string]int{}
	var outside, all, used quantity.Volume
	for i, c := range b.Cat.Left(b.Unit, slices.Clone(b.model.Compartments)) {
		if _, twice := at[c.ID]; twice {
			s.add(config.Finding{Code: "space.same-compartment", Severity: config.Warn,
				Text:   fmt.Sprintf("Two compartments are called %q; only the first is used.", c.ID),
				Remedy: "Give each its own id in the catalogue."})
			continue
		}
		at[c.ID] = len(s.Compartments)
		use := Use{Compartment: c, Ft3: Inside(&c)}
		s.Compartments = append(s.Compartments, use)
		if c.Holds != nil {
			continue // a mount is no room to fill
		}
		all += use.Ft3
		if c.Side != "inside" {
			outside += Inside(&b.model.Compartments[i]) // as built, with what is fitted in it
		}
	}
	b.Cat.Pieces(b.Unit, b.model.Compartments, func(i int, o *config.Option) {
		if i < 0 {
			s.add(config.Finding{Code: "space.no-compartment", Severity: config.Warn, Basis: config.Computed,
				Text: o.Label + ": this unit has no compartment left that it is made for.", Picks: []string{o.ID},
				Remedy: "Take fewer of it, or another layout."})
			return
		}
		use := &s.Compartments[at[b.model.Compartments[i].ID]]
		if !slices.Contains(use.Gear, o.Label) { // two of it stand side by side
			use.Gear = append(use.Gear, o.Label)
		}
		use.Tray = use.Tray || o.Fitted.RatedLb > 0
	})
	for _, c := range b.Unit.Carried {
		e := b.Cat.EquipmentOf(b.Unit, c.Equipment)
		if e == nil || c.Qty < 1 || c.Qty > 999 {
			s.add(config.Finding{Code: "space.unknown-equipment", Severity: config.Warn,
				Text: fmt.Sprintf("Equipment %q (%d) is not counted.", c.Equipment, c.Qty), Remedy: "Take it out, or " +
					"choose from this edition's list, 1 to 999 of it."})
			continue
		}
		i, ok := at[c.Compartment]
		if !ok {
			s.Unstowed = append(s.Unstowed, c)
			continue
		}
		use := &s.Compartments[i]
		use.Items = append(use.Items, c)
		use.UsedFt3 += bulk(e) * quantity.Volume(c.Qty)
		use.MassLb += config.Clean(e.MassLb) * quantity.Mass(c.Qty)
	}
	for i := range s.Compartments {
		s.Compartments[i].judge(func(id string) *config.Equipment { return b.Cat.EquipmentOf(b.Unit, id) })
		s.tell(&s.Compartments[i])
		s.judgePractice(b, &s.Compartments[i])
		if s.Compartments[i].Holds == nil {
			used += s.Compartments[i].UsedFt3
		}
	}
	if n := len(s.Unstowed); n > 0 {
		s.add(config.Finding{Code: "space.unstowed", Severity: config.Note,
			Text:   fmt.Sprintf("Kinds of equipment not stowed yet: %d.", n),
			Remedy: "Stow them by hand, or take the suggestion."})
	}
	record(s, b, "space.compartments", "Exterior compartments, inside volume", outside, quantity.CubicFoot)
	if all > 0 && len(b.Unit.Carried) > 0 {
		record(s, b, "space.stowed", "Compartment volume in use", 100*float64(used/all), quantity.Percent)
	}
}

// tell reports a compartment that is not in order.
func (s *Sheet) tell(u *Use) {
	f := config.Finding{Text: fmt.Sprintf("%s: %s.", u.Label, u.Why)}
	switch u.State {
	case TooBig:
		f.Code, f.Severity, f.Basis, f.Remedy = "space.too-big", config.Stop, config.Computed, "Stow it elsewhere, "+
			"or choose a larger compartment."
	case Overloaded:
		f.Code, f.Severity, f.Basis, f.Remedy = "space.overloaded", config.Stop, config.Rating,
			"Stow something elsewhere."
		f.Figure = &config.Figure{Code: "space.compartment-load", Label: u.Label, Value: float64(u.MassLb),
			Low: float64(u.MassLb), High: float64(u.MassLb), Unit: quantity.Pound,
			Limit: float64(u.LimitLb), Sense: config.AtMost, Source: "rated load of the compartment",
			Basis: config.Rating}
	case Unproven:
		f.Code, f.Severity, f.Basis, f.Remedy = "space.unproven", config.Warn, config.Computed, "Lay it out with the "+
			"purchaser, or stow something elsewhere."
	default:
		return
	}
	s.add(f)
}

func bulk(e *config.Equipment) quantity.Volume {
	return volume(config.Clean(e.LengthIn), config.Clean(e.WidthIn), config.Clean(e.HeightIn))
}
