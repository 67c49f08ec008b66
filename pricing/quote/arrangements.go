package quote

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
)

// Arrangement is one way in which patients and people ride in a unit whose places for
// patients exclude each other.
type Arrangement struct {
	Label           string
	Seats, Patients int
	Chosen, Worst   bool
	Gross           config.Figure // at full load, and on each axle
	Front, Rear     config.Figure
}

// arranged are the ways in which people can ride in the unit as it is fitted: the
// places chosen, those that the same fittings allow, litters that are not needed folded
// away, and with everybody seated where patients would lie. The worst is the heaviest.
// None for a unit without such places.
func (q *Quote) arranged() []Arrangement {
	cat := q.Edition.Cat
	chosen := placesChosen(cat, &q.Draft.Unit)
	if chosen == nil {
		return nil
	}
	folded, litters := litterless(cat, &q.Draft.Unit)
	out := []Arrangement{arrangement(cat, chosen.Label, &q.Draft.Unit, q.Weight)}
	out[0].Chosen = true
	other := func(cat *config.Catalogue, label string, u *config.Unit) {
		w := weight.Weigh(cat, u, &q.Assume, q.Draft.Tickets...)
		out = append(out, arrangement(cat, label, u, w))
	}
	for _, m := range cat.Members(chosen.Group) {
		o := &cat.Options[m]
		if o.ID == chosen.ID {
			continue
		}
		u := q.Draft.Unit.Clone()
		u.Drop(chosen.ID)
		u.Set(config.Pick{Option: o.ID, Qty: 1})
		for i := range u.Picks { // as it is fitted
			u.Picks[i].Filled = false
		}
		if q.Edition.Rules.Allows(&u) {
			other(cat, o.Label, &u)
			continue
		}
		without := u.Clone()
		for _, id := range litters {
			without.Drop(id)
		}
		if litters != nil && q.Edition.Rules.Allows(&without) {
			other(folded, o.Label+", the litter folded away", &u)
		}
	}
	if len(chosen.TakesSeats) > 0 {
		u := q.Draft.Unit.Clone()
		u.Drop(chosen.ID)
		other(folded, "Everybody seated", &u)
	}
	worst := 0
	for i := range out {
		if out[i].Gross.Value > out[worst].Gross.Value {
			worst = i
		}
	}
	out[worst].Worst = true
	return out
}

// litterless is the catalogue with added litters on which nobody lies, and those that a
// unit has.
func litterless(cat *config.Catalogue, u *config.Unit) (folded *config.Catalogue, litters []string) {
	c := *cat
	c.Options = slices.Clone(cat.Options)
	for i := range c.Options {
		o := &c.Options[i]
		if cat.GroupByID(o.Group).Choose != config.ChooseAny || o.Cots() == 0 {
			continue
		}
		o.Seats = nil
		if u.Has(o.ID) {
			litters = append(litters, o.ID)
		}
	}
	return &c, litters
}

// Seated tells how many sit in a unit, and how many lie in it then, where everybody sits who
// can: "7 with 1 patient". It is empty where the places chosen for patients take no seat.
func Seated(cat *config.Catalogue, u *config.Unit) string {
	chosen := placesChosen(cat, u)
	if chosen == nil || len(chosen.TakesSeats) == 0 {
		return ""
	}
	folded, _ := litterless(cat, u)
	all := u.Clone()
	all.Drop(chosen.ID)
	seats, patients := riders(folded, &all)
	return fmt.Sprintf("%d with %d %s", seats, patients, plural(patients, "patient", "patients"))
}

// placesChosen is the option that says who lies where; nil without one.
func placesChosen(cat *config.Catalogue, u *config.Unit) *config.Option {
	for i := range cat.Groups {
		g := &cat.Groups[i]
		if g.Choose == config.ChooseAny {
			continue
		}
		takes := false
		for _, m := range cat.Members(g.ID) {
			takes = takes || len(cat.Options[m].TakesSeats) > 0
		}
		for _, m := range cat.Members(g.ID) {
			if o := &cat.Options[m]; takes && u.Has(o.ID) {
				return o
			}
		}
	}
	return nil
}

func arrangement(cat *config.Catalogue, label string, u *config.Unit, w *weight.Sheet) Arrangement {
	a := Arrangement{Label: label}
	a.Seats, a.Patients = riders(cat, u)
	a.Gross, _ = w.Figure("weight.gross")
	a.Front, _ = w.Figure("weight.front-axle")
	a.Rear, _ = w.Figure("weight.rear-axle")
	return a
}

// riders counts who sits in a unit and who lies in it.
func riders(cat *config.Catalogue, u *config.Unit) (seats, patients int) {
	cab, module := cat.SeatsOf(u)
	seats = len(cab)
	for _, s := range module {
		if s.Kind == "cot" {
			patients++
		} else {
			seats++
		}
	}
	return seats, patients
}

// crowded stops a unit that may not carry people in every way in which they can ride.
func (q *Quote) crowded() []config.Finding {
	var out []config.Finding
	for _, a := range q.Arrangements {
		if a.Chosen {
			continue // judged by its weights
		}
		for _, f := range []config.Figure{a.Gross, a.Front, a.Rear} {
			if f.Met() {
				continue
			}
			out = append(out, config.Finding{Code: "weight.arrangement", Severity: config.Stop,
				Where:  "Places for patients",
				Figure: &f, Basis: f.Basis, Text: fmt.Sprintf("With %s, %s is %s, more than %s.", a.Label, f.Label,
					quantity.US.Show(f.Value, f.Unit), quantity.US.Show(f.Limit, f.Unit)),
				Remedy: "Take a heavier chassis, or carry less.",
			})
		}
	}
	return out
}
