package page

import (
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/config/weight"
	. "boxwright/web/page/markup"
)

// Loads lists what rides in each compartment, tray and mount against its rated load, a tray
// also while it is empty; nil where there is neither.
func Loads(p *Page) Part {
	t := Table{Caption: "Loads by compartment, tray and mount", Class: "tight long",
		Heads: []string{"Place", "What rides there", ">Load", ">Rated", ">Left"}}
	for _, u := range p.Q.Space.Compartments {
		if u.MassLb == 0 && !u.Tray {
			continue
		}
		var items []string
		if u.Items == nil {
			items = append(items, string(space.Empty))
		}
		for _, c := range u.Items {
			items = append(items, quantity.Group(float64(c.Qty), 0)+" × "+
				p.Q.Edition.Cat.CarriedLabel(&p.Q.Draft.Unit, c.Equipment))
		}
		gear := ""
		if u.Gear != nil {
			gear = "With " + strings.Join(u.Gear, ", ")
		}
		rated, left := "–", Text("–")
		if u.LimitLb > 0 {
			m := float64(u.LimitLb - u.MassLb)
			state := config.Severity("")
			if m < 0 {
				state = config.Stop
			}
			rated, left = p.Show(float64(u.LimitLb), quantity.Pound), Many(Text(p.Signed(m, quantity.Pound)+" "), Mark(state))
		}
		t.Rows = append(t.Rows, []Part{Many(Text(u.Label), If(gear != "", El("span", Class("how"), Text(gear)))),
			Text(strings.Join(items, ", ")), Text(p.Show(float64(u.MassLb), quantity.Pound)), Text(rated), left})
	}
	if t.Rows == nil {
		return nil
	}
	return t.Draw()
}

// Unassigned says in which of the compartments, named in their order, no gear rides, and which
// gear counts at full load without a place in one; empty where all of it has its place.
func Unassigned(p *Page, names []string) string {
	var none []string
	for i, u := range p.Q.Space.Compartments {
		if u.MassLb == 0 && u.Gear == nil {
			none = append(none, names[i])
		}
	}
	said := Counted(p)
	if none != nil {
		said = strings.TrimSpace("No gear assigned yet: " + strings.Join(none, ", ") + ". " + said)
	}
	return said
}

// Counted says which gear counts at full load without a place in a compartment; empty where
// none does.
func Counted(p *Page) string {
	q := p.Q
	counted, what := 0.0, "gear without a compartment"
	for _, c := range q.Draft.Unit.Carried {
		if e := q.Edition.Cat.EquipmentOf(&q.Draft.Unit, c.Equipment); c.Compartment == "" && e != nil {
			counted += float64(c.Qty) * float64(e.MassLb)
		}
	}
	for _, x := range q.Weight.Items {
		if x.ID == weight.AllowanceItem {
			counted, what = float64(x.Lb), Small(x.Label)
		}
	}
	if counted == 0 {
		return ""
	}
	return Held("Counted at full load, in the middle of the module: " + what + ", " +
		p.Show(counted, quantity.Pound) + ".")
}

// Arrangements lists the ways in which people ride in a unit of several patients, and how
// each stands to the ratings; nil for any other unit.
func Arrangements(p *Page) Part {
	t := Table{Caption: "Places for patients: each arrangement at full load", Class: "tight long",
		Heads: []string{"Arrangement", ">Seats", ">Patients", ">Gross weight", ">Margin", ">Front axle", ">Rear axle"}}
	for _, a := range p.Q.Arrangements {
		name := a.Label
		if a.Chosen {
			name += ", chosen"
		}
		if a.Worst {
			name += ", the worst"
		}
		row := []Part{Text(name), Text(Whole(a.Seats)), Text(Whole(a.Patients)), Text(p.Show(a.Gross.Value, a.Gross.Unit))}
		for _, f := range []config.Figure{a.Gross, a.Front, a.Rear} {
			row = append(row, Many(Text(p.Signed(f.Margin(), f.Unit)+" "), Mark(SeverityOf(f))))
		}
		t.Rows = append(t.Rows, row)
	}
	if t.Rows == nil {
		return nil
	}
	return Many(t.Draw(), El("p", Class("how"), Text("Margins are to the rating of the whole and of each axle. The worst "+
		"is the heaviest; it counts as much as the one chosen.")))
}

// Certifies says who certifies the finished vehicle, after another sentence.
func Certifies(van bool) string {
	if van {
		return " A van comes certified by its maker; who alters it certifies it as altered."
	}
	return " The final-stage manufacturer certifies the finished vehicle."
}
