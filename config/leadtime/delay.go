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
	sim := Simulation{min(p.sim.Draws, quick), p.sim.Seed}
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
	return c.simulate(sim)
}

// TooLate says for every option not in the unit that puts the delivery off
// past the day at nine in ten, by how many working days: the plan with one of
// it taken, in place of another choice where its group allows only one. An
// option that is not named either keeps the day or costs no time of its own.
func (p *Plan) TooLate(by config.Date) map[string]float64 {
	limit := p.job.line.until(by)
	few := Simulation{min(p.sim.Draws, quick), p.sim.Seed}
	base := p.job.odds(few).Mean
	out := map[string]float64{}
	for i := range p.job.cat.Options {
		o := &p.job.cat.Options[i]
		if p.job.unit.Has(o.ID) || o.Parts == nil && len(o.Work) == 0 {
			continue
		}
		u := p.job.unit.Clone()
		if g := p.job.cat.GroupByID(o.Group); g != nil && g.Choose != config.ChooseAny {
			for _, m := range p.job.cat.Members(g.ID) {
				u.Drop(p.job.cat.Options[m].ID)
			}
		}
		u.Set(config.Pick{Option: o.ID, Qty: 1})
		with, err := p.job.with(&u)
		if err != nil {
			continue
		}
		odds := with.odds(few)
		if odds.Mean <= base {
			continue
		}
		days := whole(odds.At(.9))
		// Near the limit the few draws do not settle it.
		if near := days - limit; near >= -1 && near <= 2 && p.sim.Draws > quick {
			days = whole(with.odds(p.sim).At(.9))
		}
		if days > limit {
			out[o.ID] = float64(days - limit)
		}
	}
	return out
}
