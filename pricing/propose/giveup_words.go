package propose

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// causeOf names what stands against meeting everything: what each way gives up.
func causeOf(list []GiveUp, none bool) string {
	if len(list) == 0 {
		return ""
	}
	names := map[string]string{quote.AskBudget: "the budget", quote.AskDate: "the date", "crew": "the number of seats",
		"patients": "the number of patients", "type": "the type", "fuel": "the fuel", "drive": "the drive"}
	var parts []string
	options := 0
	for _, id := range list[0].IDs {
		name := names[id]
		if s := quote.SizeByID(id); name == "" && s != nil {
			name = "the " + strings.ToLower(s.Label)
		}
		if name == "" {
			options++
			continue
		}
		parts = append(parts, name)
	}
	switch {
	case options == 1:
		parts = append(parts, "an option that must be in")
	case options > 1:
		parts = append(parts, strconv.Itoa(options)+" options that must be in")
	}
	said := "Everything asked for can be had"
	if none {
		said = "The musts cannot stand together"
	} else if len(parts) > 0 {
		said = "Every must can be kept"
	}
	if len(parts) == 0 {
		return said + ", less some of what is standard."
	}
	return said + "; nearest comes a unit that misses " + listed(parts) + "."
}

// listed joins words: "a, b and c".
func listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// Given is what is given up, in sentences with their figures.
func (g *GiveUp) Given(in quantity.System) string {
	var sentences, without []string
	if g.late > 0 {
		earliest := "The earliest is "
		if n := g.asked.LastOf(); n > 1 {
			earliest = fmt.Sprintf("The earliest for the last of %d is ", n)
		}
		sentences = append(sentences, earliest+g.NeededBy.Long()+", "+quote.Days(g.late)+" after your date.")
	}
	if g.over.Sign() > 0 {
		sentences = append(sentences, "It comes to "+g.in+g.Price.Show()+" ("+g.basis+"), "+g.over.Show()+
			" over your budget.")
	}
	ch := g.cat.ChassisByID(g.Unit.Chassis)
	for _, m := range g.missed {
		said := ""
		switch s := quote.SizeByID(m.ID); {
		case m.ID == "crew":
			said = fmt.Sprintf("With %.0f seats instead of %.0f", m.Has, m.Asked)
			if seated := quote.Seated(g.cat, &g.Unit); seated != "" {
				said += " (" + seated + ")"
			}
			said += "."
		case m.ID == "patients":
			said = fmt.Sprintf("For %s instead of %.0f.", patients(m.Has), m.Asked)
		case s != nil:
			said = s.Label + " of " + in.Show(m.Has, s.Unit) + " instead of " + in.Show(m.Asked, s.Unit) + "."
		case m.ID == "type":
			wanted := "Type " + g.asked.Needs.Type
			if g.asked.Needs.Type == quote.MediumDuty {
				wanted = "medium-duty"
			}
			said = "Type " + ch.Type + " instead of " + wanted + "."
		case m.ID == "fuel":
			said = "With " + ch.Fuel + " instead of " + g.asked.Needs.Fuel + "."
		case m.ID == "drive":
			said = "With " + ch.Drive + " drive."
		case g.kindOfUnit(m.ID) != "":
			said = "Another kind of unit instead of: " + g.kindOfUnit(m.ID) + "."
		default:
			without = append(without, g.cat.LabelOf(m.ID))
			continue
		}
		sentences = append(sentences, said)
	}
	if without != nil {
		sentences = append(sentences, "Without: "+strings.Join(without, "; ")+".")
	}
	return strings.Join(sentences, " ")
}

// kindOfUnit is what a unit is called that an option makes of its kind, such as "Rescue"; empty
// where it makes none.
func (g *GiveUp) kindOfUnit(option string) string {
	if i := slices.IndexFunc(g.cat.Duties, func(d config.Duty) bool { return d.Option == option }); i >= 0 {
		return g.cat.Duties[i].Label
	}
	return ""
}

// Said is what is given up as a customer is told, and how it differs from one before it
// that says the same.
func (g *GiveUp) Said(in quantity.System) string {
	said := g.said(in)
	if by := g.than.Sub(g.Price); by.Sign() > 0 && !g.than.IsZero() {
		said += " It costs " + by.Show() + " less"
		if g.Thin != nil {
			said += ", with less to spare"
		}
		said += "."
	}
	return said
}

func (g *GiveUp) said(in quantity.System) string {
	said := g.Given(in)
	fewer := g.fewer()
	others := slices.ContainsFunc(g.IDs, func(id string) bool { return id != quote.AskBudget && id != quote.AskDate })
	switch {
	case len(g.IDs) == 0:
		return "Everything asked for, with " + fewer + "."
	case others && fewer != "":
		return said + " With " + fewer + "."
	case others:
		return said
	case fewer != "":
		return "Everything else asked for fits, with " + fewer + ". " + said
	}
	return "Everything else fits. " + said
}

// fewer counts what of the standard the unit goes without, and what it has exchanged.
func (g *GiveUp) fewer() string {
	count := func(n int, what string) string {
		if n == 1 {
			return "one standard item " + what
		}
		return strconv.Itoa(n) + " standard items " + what
	}
	missing, other := len(g.Missing), len(g.Other)
	switch {
	case missing > 0 && other > 0:
		return count(missing, "fewer") + " and " + strconv.Itoa(other) + " exchanged"
	case missing > 0:
		return count(missing, "fewer")
	case other > 0:
		return count(other, "exchanged")
	}
	return ""
}

// Press is what the button says that accepts it.
func (g *GiveUp) Press(in quantity.System) string {
	var parts, without []string
	ch := g.cat.ChassisByID(g.Unit.Chassis)
	if g.over.Sign() > 0 {
		parts = append(parts, "raise the budget to "+g.in+g.Budget.Show())
	}
	if g.late > 0 {
		parts = append(parts, "move the date to "+g.NeededBy.Long())
	}
	for _, m := range g.missed {
		switch s := quote.SizeByID(m.ID); {
		case m.ID == "crew":
			parts = append(parts, fmt.Sprintf("take %.0f seats instead of %.0f", m.Has, m.Asked))
		case m.ID == "patients":
			parts = append(parts, fmt.Sprintf("take room for %s instead of %.0f", patients(m.Has), m.Asked))
		case s != nil:
			parts = append(parts, "take "+in.Show(m.Has, s.Unit)+" of "+strings.ToLower(s.Label)+" instead of "+
				in.Show(m.Asked, s.Unit))
		case m.ID == "type":
			parts = append(parts, "take Type "+ch.Type)
		case m.ID == "fuel":
			parts = append(parts, "take "+ch.Fuel)
		case m.ID == "drive":
			parts = append(parts, "take "+ch.Drive+" drive")
		case g.kindOfUnit(m.ID) != "":
			parts = append(parts, "take another kind of unit instead of: "+g.kindOfUnit(m.ID))
		default:
			without = append(without, g.cat.LabelOf(m.ID))
		}
	}
	if without != nil {
		parts = append(parts, "do without: "+strings.Join(without, "; "))
	}
	if len(parts) == 0 {
		parts = []string{"take this unit"}
	}
	return capital(strings.Join(parts, ", "))
}

// capital begins a text with a capital letter.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

// patients counts them in words.
func patients(n float64) string {
	switch n {
	case 0:
		return "no patients"
	case 1:
		return "1 patient"
	}
	return fmt.Sprintf("%.0f patients", n)
}
