package propose

import (
	"boxwright/config"
	"boxwright/pricing/quote"
)

// Exchange is something standard with what stands in its place.
type Exchange struct{ Standard, Instead string }

// Lacks lists what the plant fits as standard on the unit's chassis with its body and
// the unit goes without, and what has something else in its place that nobody asked
// for.
func Lacks(ed *quote.Edition, u *config.Unit) (missing []string, other []Exchange) {
	ed = ed.For(u)
	cat := ed.Cat
	for _, p := range usual(ed, u).Picks {
		o := cat.OptionByID(p.Option)
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

// usualKey is what the units that the plant builds are kept under.
type usualKey struct{}

// usual is the unit that the plant builds on the chassis of a unit with its body when
// nobody asks for anything.
func usual(ed *quote.Edition, u *config.Unit) *config.Unit {
	known := ed.Once(usualKey{}, func() any { return map[[2]string]*config.Unit{} }).(map[[2]string]*config.Unit)
	key := [2]string{u.Chassis, u.Body}
	if known[key] == nil {
		bare := config.Unit{Catalogue: u.Catalogue, Edition: u.Edition, Chassis: u.Chassis, Body: u.Body,
			Existing: u.Existing}
		full, _ := ed.Rules.Start(&bare, nil)
		known[key] = &full
	}
	return known[key]
}
