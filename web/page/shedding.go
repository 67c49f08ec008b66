package page

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	. "boxwright/web/page/markup"
)

// SheddingTable is the order in which the unit sheds its loads, and what is left on the
// batteries at each step.
func SheddingTable(p *Page) Part {
	s := p.Q.Power
	amps := func(a quantity.Current) string { return p.Show(float64(a), quantity.Amp) }
	minutes := func(v float64) string {
		if v <= 0 {
			return "not known"
		}
		return p.Show(v, quantity.Minute)
	}
	t := Table{Caption: "Scene load with the engine off, at battery voltage, shedding in this order", Class: "tight",
		Heads: []string{"Step", ">Load left", ">Lasts"}}
	t.Rows = append(t.Rows, Texts("Everything on", amps(s.Battery.LoadA), minutes(s.Battery.Minutes)))
	for _, x := range s.Shed {
		var names []string
		for _, it := range x.Items {
			names = append(names, it.Name())
		}
		t.Rows = append(t.Rows, Texts(strconv.Itoa(x.Order)+". Shed "+strings.Join(names, "; "), amps(x.LeftA),
			minutes(x.Minutes)))
	}
	return Many(t.Draw(), inverterShed(s.Shed))
}

// inverterShed names what loses its 125 V power, and when.
func inverterShed(steps []power.ShedStep) Part {
	var out []Part
	for _, x := range steps {
		var names []string
		for _, it := range x.Items {
			if it.Watts > 0 {
				names = append(names, it.Label)
			}
		}
		if names != nil {
			out = append(out, El("p", Mark(config.Warn), Text(" Step "+strconv.Itoa(x.Order)+" cuts the 125 V power of: "+
				strings.Join(names, "; ")+". A device plugged in there stops unless its own battery carries it: check "+
				"each one that must not stop.")))
		}
	}
	return Many(out...)
}
