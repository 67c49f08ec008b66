package page

import (
	"strconv"

	"boxwright/config/weight"
	. "boxwright/web/page/markup"
)

// TicketName is what the i-th ticket of a list is called.
func TicketName(k *weight.Ticket, i int) string {
	if k.Number == "" {
		return strconv.Itoa(i + 1)
	}
	return k.Number
}

// OfEarlier says which earlier unit a ticket weighed; empty when it weighed the
// unit in hand.
func (p *Page) OfEarlier(k *weight.Ticket) string {
	u, cat := k.Unit, p.Q.Edition.Cat
	switch unit := &p.Q.Draft.Unit; {
	case u == nil:
		return ""
	case u.Chassis == unit.Chassis && u.Body == unit.Body:
		return "an earlier unit on the same chassis with the same module"
	case u.Chassis == unit.Chassis:
		return "an earlier unit on the same chassis with " + cat.LabelOf(u.Body)
	}
	return "an earlier unit on " + cat.LabelOf(u.Chassis)
}

// Learned lists the scale tickets that corrected the weights, on the quote and beside every area.
func Learned(p *Page) Part {
	list := p.Q.Draft.Tickets
	if len(list) == 0 {
		return nil
	}
	said := "Weights corrected by scale ticket "
	for i := range list {
		if i > 0 {
			said += "; "
		}
		said += TicketName(&list[i], i)
		if earlier := p.OfEarlier(&list[i]); earlier != "" {
			said += ", of " + earlier
		}
	}
	return El("p", Class("how"), Text(said+"."))
}
