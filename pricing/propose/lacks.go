package propose

import (
	"boxwright/config"
	"boxwright/pricing/quote"
)

// Exchange is something standard with what stands in its place.
type Exchange struct{ Standard, Instead string }

// Lacks lists what the plant fits on the unit's chassis with its body, as standard or as
// usual for its duty, and the unit goes without, and what has something else in its place
// that nobody asked for.
func Lacks(ed *quote.Edition, u *config.Unit) (missing []string, other []Exchange) {
	ed = ed.For(u)
	cat := ed.Cat
	for _, o := range usual(ed, u) {
		if u.Has(o.ID) {
			continue
		}
		g := cat.GroupByID(o.Group)
		if g.Choose == config.ChooseAny {
			missing = append(missing, o.ID)
			continue
		}
		var instead *config.Option
		asked := false
		for _, m := range cat.Members(g.ID) {
			if at := u.Find(cat.Options[m].ID); at != nil {
				instead, asked = &cat.Options[m], !at.Filled
			}
		}
		switch {
		case asked:
		case instead == nil || instead.LeavesOut():
			missing = append(missing, o.ID)
		default:
			other = append(other, Exchange{o.ID, instead.ID})
		}
	}
	return missing, other
}

// usualKey is what is usual is kept under.
type usualKey struct{}

// usual lists what is standard, or usual for the duty of a unit, in the one that the plant
// builds on its chassis with its body when nobody asks for anything but the duty.
func usual(ed *quote.Edition, u *config.Unit) []*config.Option {
	type known map[[3]string][]*config.Option
	all := ed.Once(usualKey{}, func() any { return known{} }).(known)
	key, duty := [3]string{u.Chassis, u.Body}, ed.Cat.DutyOf(u)
	bare := config.Unit{Catalogue: u.Catalogue, Edition: u.Edition, Chassis: u.Chassis, Body: u.Body,
		Existing: u.Existing}
	if duty != nil {
		key[2] = duty.ID
		bare.Set(config.Pick{Option: duty.Option, Qty: 1})
		ed.Cat.FitUsual(&bare)
	}
	if list, ok := all[key]; ok {
		return list
	}
	full, _ := ed.Rules.Start(&bare, nil)
	list := []*config.Option{}
	for _, p := range full.Picks {
		if o := ed.Cat.OptionByID(p.Option); o.Standard || duty.Usually(o.ID) {
			list = append(list, o)
		}
	}
	all[key] = list
	return list
}
