package quote

import (
	"cmp"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing"
)

// Station is one station of the plant with the work this unit brings it.
type Station struct {
	ID, Label     string
	Start, Finish config.Date // of its steps, at expected durations; zero when it has none
	Hours         float64     // of its lines; what the plan saves where something stays is no work
	Lines         []StationLine
}

// StationLine is one thing to be done at a station. No is its number in the catalogue.
type StationLine struct {
	No, Label, Spec, Told string
	Qty                   int
	Hours                 float64 // of all Qty
}

// Told is what an option asks for and what was said to it: "Color name or code:
// signal red". It is empty where the option asks nothing.
func (q *Quote) Told(o *config.Option) string {
	if o.Asks == "" {
		return ""
	}
	return o.Asks + ": " + cmp.Or(letters.Isolate(q.Draft.Unit.Detail(o.ID)), "to be named")
}

// Stations lists the plant's stations that have work on the unit, in the order in which
// they begin, and last what is fitted without hours of its own, under an empty station.
func (q *Quote) Stations() []Station {
	cat := q.Edition.Cat
	var out []Station
	var rest Station
	for _, st := range cat.Plant.Stations {
		s := Station{ID: st.ID, Label: st.Label}
		add := func(l StationLine, work []config.Work) {
			for _, w := range work {
				if w.Station == st.ID && w.Hours > 0 {
					l.Hours += float64(w.Hours) * float64(l.Qty)
				}
			}
			if l.Hours > 0 {
				s.Hours += l.Hours
				s.Lines = append(s.Lines, l)
			}
		}
		add(StationLine{No: q.Chassis.ID, Label: q.Chassis.Label, Qty: 1}, q.Chassis.Work)
		add(StationLine{No: q.Body.ID, Label: q.Body.Label, Qty: 1}, q.Body.Work)
		for _, p := range q.Draft.Unit.Picks {
			if o := cat.OptionByID(p.Option); o != nil {
				add(StationLine{No: o.ID, Label: o.Label, Spec: cat.Sentences(o), Told: q.Told(o), Qty: p.Qty}, o.Work)
			}
		}
		for _, step := range q.Plan.Steps {
			if step.Station != st.ID {
				continue
			}
			if s.Start.IsZero() || step.Start.Before(s.Start) {
				s.Start = step.Start
			}
			if s.Finish.Before(step.Finish) {
				s.Finish = step.Finish
			}
		}
		if s.Lines != nil {
			out = append(out, s)
		}
	}
	for _, p := range q.Draft.Unit.Picks {
		o := cat.OptionByID(p.Option)
		if o != nil && !o.IsNone() && !slices.ContainsFunc(o.Work, func(w config.Work) bool { return w.Hours > 0 }) {
			rest.Lines = append(rest.Lines, StationLine{No: o.ID, Label: o.Label, Spec: cat.Sentences(o), Told: q.Told(o),
				Qty: p.Qty})
		}
	}
	slices.SortStableFunc(out, func(a, b Station) int { return a.Start.Time().Compare(b.Start.Time()) })
	return append(out, rest)
}

// LongLead lists the steps of the plan that wait for a part of one option, and
// for the chassis; first what takes longest to come. Each is called by what it waits for.
func (q *Quote) LongLead() []leadtime.Step {
	var out []leadtime.Step
	for _, s := range q.Plan.Steps {
		if s.Option != "" || s.Source == config.SourceChassis {
			if o := q.Edition.Cat.OptionByID(s.Option); o != nil {
				s.Label = o.Label
			}
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b leadtime.Step) int { return cmp.Compare(b.Days.Likely, a.Days.Likely) })
	return out
}

// DaysEarly is how many days before the likely delivery a chassis is paid that is paid
// early: as typed, or as the schedule has it.
func (q *Quote) DaysEarly(p *pricing.Prepay) int {
	if days := q.Draft.Terms.PrepayDays; days > 0 {
		return days
	}
	paid := q.Plan.Order
	if p.At == pricing.AtArrival {
		for _, s := range q.Plan.Steps {
			if s.Source == config.SourceChassis {
				paid = s.Finish
			}
		}
	}
	return paid.DaysUntil(q.Plan.EvenOdds)
}

// WorkChange is a line of a station, or a circuit, that a revision orders otherwise.
// Before is empty for what is new, Now for what is no longer built.
type WorkChange struct{ Station, No, Label, Before, Now string }

// WorkChanges lists what the plant builds otherwise than the quote before said, by station.
func WorkChanges(from, to *Quote) []WorkChange {
	var out []WorkChange
	seen := map[[2]string]int{}
	var stations []string // as the plant goes through them now, and what is gone or is no station behind
	for _, s := range to.Stations() {
		stations = append(stations, s.Label)
	}
	for i, q := range []*Quote{from, to} {
		put := func(station, no, label, says string) {
			key := [2]string{station, no}
			at, known := seen[key]
			if !known {
				at, seen[key] = len(out), len(out)
				out = append(out, WorkChange{Station: station, No: no, Label: label})
			}
			if i == 0 {
				out[at].Before = says
			} else {
				out[at].Now = says
			}
			if !slices.Contains(stations, station) {
				stations = append(stations, station)
			}
		}
		for _, s := range q.Stations() {
			for _, l := range s.Lines {
				says := strconv.Itoa(l.Qty)
				if l.Hours > 0 {
					says += ", " + quantity.Group(l.Hours, 1) + " h"
				}
				if l.Told != "" {
					says += ", " + l.Told
				}
				put(cmp.Or(s.Label, "Without hours of its own"), l.No, l.Label, says)
			}
		}
		for _, c := range q.Power.Circuits {
			put("Circuits", c.Number, c.Function, c.Wire()+" wire, "+c.Fuse()+" A fuse")
		}
	}
	out = slices.DeleteFunc(out, func(w WorkChange) bool { return w.Before == w.Now })
	slices.SortStableFunc(out, func(a, b WorkChange) int {
		return cmp.Compare(slices.Index(stations, a.Station), slices.Index(stations, b.Station))
	})
	return out
}
