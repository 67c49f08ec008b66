package leadtime

import (
	"cmp"
	"slices"

	"boxwright/config"
)

// Delay is by how many working days a pick puts the delivery off: the plan
// with it against the same plan without it, under the same luck. Delays do not
// add up, since of two late parts the later hides the other.
type Delay struct {
	Option string  `json:"option"`
	Label  string  `json:"label"`
	Days   float64 `json:"days"`    // on average
	AtNine float64 `json:"at_nine"` // at nine in ten
}

// quick is how many draws are enough to tell two plans of one unit apart.
const quick = 4_000

// Delays lists the picks that put the delivery off, the worst first.
func (p *Plan) Delays() []Delay {
	sim := p.sim.few(quick)
	base := p.job.odds(sim)
	var out []Delay
	for _, k := range p.job.unit.Picks {
		o := p.job.cat.OptionByID(k.Option)
		if o == nil || o.Parts == nil && len(o.Work) == 0 {
			continue
		}
		u := p.job.unit.Clone()
		u.Drop(k.Option)
		without, err := p.job.with(&u)
		if err != nil {
			continue // with less in it no unit fails that planned before
		}
		odds := without.odds(sim)
		d := Delay{k.Option, o.Label, round(base.Mean - odds.Mean), round(base.At(.9) - odds.At(.9))}
		if d.Days >= .01 || d.AtNine >= .01 {
			out = append(out, d)
		}
	}
	slices.SortStableFunc(out, func(a, b Delay) int {
		return cmp.Compare(b.Days, a.Days)
	})
	return out
}

// odds plays the job's network through. A network that does not compile has
// no draws; Schedule has reported why.
func (j *job) odds(sim Simulation) *Odds {
	c, err := j.net.compile()
	if err != nil {
		return &Odds{finish: []int32{0}}
	}
	return c.odds(sim, nil)
}

// TooLate says for every option not in the unit that puts the delivery off
// past the day at nine in ten, by how many working days: the plan with one of
// it taken, in place of another choice where its group allows only one. An
// option that is not named either keeps the day or costs no time of its own.
// Each option near the limit is a plan of its own, so this is for the moment
// after the answer to a click, not before it.
func (p *Plan) TooLate(by config.Date) map[string]float64 {
	j := p.job
	limit := j.line.until(by)
	few := p.sim.few(1000)
	base := j.odds(few)
	var upstream []string // stations whose work could miss a slot
	if j.gated >= 0 && len(j.slotted) > 0 {
		for _, a := range j.before().Activities {
			if k := slices.IndexFunc(j.steps, func(s Step) bool { return s.ID == a.ID }); k != j.gated {
				upstream = append(upstream, j.steps[k].Station)
			}
		}
	}
	// keeps reports what needs no playing through: hours put the delivery off
	// by no more than the days they take, unless they make it miss a slot.
	keeps := func(o *config.Option) bool {
		days := 0.0
		for _, w := range o.Work {
			if slices.Contains(upstream, w.Station) {
				return false
			}
			days += max(0, float64(w.Hours)/j.hoursPerDay(w.Station))
		}
		return o.Parts == nil && days <= maxDays && whole(p.odds.At(.9)+days) <= limit
	}
	out := map[string]float64{}
	for i := range j.cat.Options {
		o := &j.cat.Options[i]
		if j.unit.Has(o.ID) || o.Parts == nil && len(o.Work) == 0 || keeps(o) {
			continue
		}
		u := j.unit.Clone()
		if g := j.cat.GroupByID(o.Group); g != nil && g.Choose != config.ChooseAny {
			for _, m := range j.cat.Members(g.ID) {
				u.Drop(j.cat.Options[m].ID)
			}
		}
		u.Set(config.Pick{Option: o.ID, Qty: 1})
		with, err := j.with(&u)
		if err != nil {
			continue // the option's own station or part is at fault, which taking it reports
		}
		odds := with.odds(few)
		if odds.Mean <= base.Mean {
			continue
		}
		days := whole(odds.At(.9))
		// Near the limit the few draws do not settle it.
		if near := days - limit; near >= -2 && near <= 3 && p.sim.Draws > few.Draws {
			days = whole(with.odds(p.sim).At(.9))
		}
		if days > limit {
			out[o.ID] = float64(days - limit)
		}
	}
	return out
}
