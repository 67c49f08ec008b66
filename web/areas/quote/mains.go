package quote

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// mains lists the 125 V sources and loads of the order sheet: what is fitted at which station,
// what it gives or draws, and what feeds it; nil where the unit has none.
func mains(p *Page) Part {
	s := p.Q.Power
	from := page.Table{Caption: "125 V: inlet, inverter, charger and generator", Class: "tight",
		Heads: []string{"What", "Catalogue no.", ">How many", "Rated", "12 V circuit", "Stations"}}
	to := page.Table{Caption: "125 V loads", Class: "tight", Heads: []string{"What", "Catalogue no.", ">How many",
		">Watts", ">Amps", "Fed from", "Stations"}}
	_, generator := p.Q.Figure("power.generator")
	for _, pick := range p.Q.Draft.Unit.Picks {
		o := p.Q.Edition.Cat.OptionByID(pick.Option)
		if o == nil {
			continue
		}
		qty, where := page.Whole(pick.Qty), page.OrDash(p.stations(o))
		if o.Supply != nil && gives(o.Supply) != "" {
			from.Rows = append(from.Rows, page.Texts(o.Label, o.ID, qty, gives(o.Supply), page.OrDash(p.circuit(o.ID)),
				where))
		}
		i := slices.IndexFunc(s.Shore.Items, func(x power.MainsItem) bool { return x.ID == o.ID })
		if i < 0 {
			continue
		}
		feeds := "shore line"
		if generator {
			feeds += ", generator"
		}
		switch {
		case slices.ContainsFunc(s.Inverter.Items, func(x power.MainsItem) bool { return x.ID == o.ID }):
			if s.Inverter.RatedW > 0 {
				feeds += ", inverter"
			}
		case !slices.Contains(o.Tags, power.TagShoreOnly):
			feeds += ", its own inverter"
		}
		w := float64(s.Shore.Items[i].Watts)
		to.Rows = append(to.Rows, page.Texts(o.Label, o.ID, qty, quantity.Group(w, 0),
			quantity.Group(w/power.MainsVolts, 1), feeds, where))
	}
	if from.Rows == nil && to.Rows == nil {
		return nil
	}
	to.Sums = append(to.Sums, page.Texts("All at once", "", "", quantity.Group(float64(s.Shore.LoadW), 0),
		quantity.Group(float64(s.Shore.LoadA), 1), "", ""))
	inlet := ""
	if a := float64(s.Shore.RatedA); a > 0 {
		inlet = "Of the " + quantity.Group(a, 0) + " A of the inlet " + quantity.Group(power.ContinuousShare*a, 0) +
			" A may be drawn for hours (80 % rule, common practice). "
	}
	return Many(If(from.Rows != nil, from.Draw()), If(to.Rows != nil, to.Draw()), El("p", Class("how"),
		Text(page.Held(inlet+"Amps are at 125 V. The catalogue states no rating of a branch breaker, no 125 V wire and no "+
			"run: the licensed designer of record sets them."))))
}

// gives is what an option of the 125 V side supplies; empty for any other.
func gives(s *config.Supply) string {
	var out []string
	for _, x := range []struct {
		v    float64
		what string
	}{{float64(s.ShoreA), " A"}, {float64(s.InverterW), " W continuous"}, {float64(s.GeneratorW), " W continuous"},
		{float64(s.ChargeA), " A of charge at 12 V"}} {
		if x.v > 0 {
			out = append(out, quantity.Group(x.v, 0)+x.what)
		}
	}
	return strings.Join(out, ", ")
}

// circuit is the number of the 12 V circuit that belongs to an option.
func (p *Page) circuit(id string) string {
	for _, c := range p.Q.Power.Circuits {
		if c.Option == id {
			return c.Number + " " + c.Function
		}
	}
	return ""
}

// stations are those of the plant that work on an option.
func (p *Page) stations(o *config.Option) string {
	var out []string
	for _, st := range p.Q.Edition.Cat.Plant.Stations {
		if slices.ContainsFunc(o.Work, func(w config.Work) bool { return w.Station == st.ID && w.Hours > 0 }) {
			out = append(out, st.Label)
		}
	}
	return strings.Join(out, ", ")
}
