package quote

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Load is one kind of loose equipment, wherever it rides.
type Load struct {
	Equipment, Label string
	Qty              int
	Where            string // such as "1 in the rope locker; 2 not stowed"; the place alone where all ride there
}

// LoadsOf lists what a unit carries, each kind of thing once, in the order of the unit.
func LoadsOf(cat *config.Catalogue, u *config.Unit) (list []Load) {
	label := map[string]string{}
	for _, p := range cat.CompartmentsOf(u) {
		label[p.ID] = p.Label
	}
	places := map[string][]string{}
	for _, c := range u.Carried {
		k := slices.IndexFunc(list, func(l Load) bool { return l.Equipment == c.Equipment })
		if k < 0 {
			k = len(list)
			list = append(list, Load{Equipment: c.Equipment, Label: cat.CarriedLabel(u, c.Equipment)})
		}
		list[k].Qty += c.Qty
		at := "not stowed" // or in a place that the unit no longer has
		if place, has := label[c.Compartment]; has {
			at = "in " + place
		}
		places[c.Equipment] = append(places[c.Equipment], quantity.Group(float64(c.Qty), 0)+" "+at)
	}
	for i := range list {
		l := &list[i]
		l.Where = strings.Join(places[l.Equipment], "; ")
		if len(places[l.Equipment]) == 1 {
			_, l.Where, _ = strings.Cut(l.Where, " ")
		}
	}
	return list
}

// foreign asks about equipment that only other kinds of unit carry, such as what stayed
// aboard when a unit was given another duty.
func (q *Quote) foreign() []config.Finding {
	if q.OfDuty == nil {
		return nil
	}
	_, list := q.Edition.Cat.UnusualLoads(q.OfDuty, &q.Draft.Unit)
	if list == nil {
		return nil
	}
	kind := strings.ToLower(q.OfDuty.Label)
	return []config.Finding{{Code: "aboard.duty", Severity: config.Warn, Where: "loose equipment",
		Text:   "Aboard, but of other kinds of unit than " + kind + ": " + strings.Join(list, ", ") + ".",
		Remedy: "Take it off the list in Equipment, or count the usual equipment for " + kind + " there in its place.",
		Basis:  config.CommonPractice}}
}
