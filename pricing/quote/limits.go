package quote

import (
	"encoding/json"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/power"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
)

// Limits are the sums that picks add up to on any chassis with any body: weights,
// amps, the inside room that a text which was read asks for, and the musts of the
// needs. Every pick, fill, completion and way out keeps them. What is only wanted
// is not among them, see Wanted.
func Limits(ed *Edition, d *Draft) *rules.Limits { return limits(ed, d, false) }

// Wanted are the Limits with the wants among them: the budget, the day it is needed,
// on the unit's own chassis and body, and the needs that the buyer would give way on.
// Proposals look within them first.
func Wanted(ed *Edition, d *Draft) *rules.Limits { return limits(ed, d, true) }

func limits(ed *Edition, d *Draft, wants bool) *rules.Limits {
	cat, u := ed.Cat, d.Unit
	others := u
	others.Chassis, others.Body, others.Picks, others.Details, others.Proposed = "", "", nil, nil, nil
	others.LeftOut = nil
	n := d.Needs.clone()
	n.Begun = "" // it limits nothing
	if wants {
		n.Wants = nil
	} else {
		others.NeededBy = config.Date{}
	}
	on := []any{others, n}
	if len(d.Tickets) > 0 {
		on = append(on, d.Tickets, u)
	}
	budget := wants && !d.Terms.Budget.IsZero()
	if budget {
		// Credits and minimums stand as the picks earn them now.
		on = append(on, u.Picks, d.Terms, d.Date)
	}
	key, err := json.Marshal(on)
	if err != nil {
		key = nil // which promises nothing
	}
	return &rules.Limits{
		For: func(chassis, body string) []config.Linear {
			on := u.Clone()
			on.Chassis, on.Body = chassis, body
			own := chassis == u.Chassis && body == u.Body
			musts, only := n.mustLimits(cat, &on, !own)
			if only {
				return musts
			}
			as := standards.Assume(u.RuleSet, cat, &on)
			list := slices.Concat(weight.Limits(cat, &on, &as, ticketsOn(d, &on)...), power.Limits(cat, &on, &as),
				space.Limits(cat, &on, &as), musts)
			if budget {
				list = append(list, pricing.Limits(ed.bookOn(d.Date), cat, &on, &d.Terms)...)
			}
			if wants && own {
				list = append(list, ed.days(&on)...)
			}
			return list
		},
		Key: string(key),
	}
}

// maxDayLimits bounds what an edition remembers of them.
const maxDayLimits = 8

// days are the limits that the needed day puts on the picks. They do not hang
// on the picks and take some time to work out, so the edition remembers them.
func (ed *Edition) days(u *config.Unit) []config.Linear {
	if u.NeededBy.IsZero() {
		return nil
	}
	key := strings.Join([]string{u.Chassis, u.Body, u.OrderOn.String(), u.NeededBy.String()}, " ")
	if list, known := ed.dayLimits[key]; known {
		return list
	}
	var list []config.Linear
	if plan, err := leadtime.Schedule(ed.Cat, u, Luck(1)); err == nil {
		list = plan.Limits(u.NeededBy)
	}
	if ed.dayLimits == nil || len(ed.dayLimits) >= maxDayLimits {
		ed.dayLimits = map[string][]config.Linear{}
	}
	ed.dayLimits[key] = list
	return list
}
