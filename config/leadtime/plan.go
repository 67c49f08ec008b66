// Package leadtime answers when a unit can be delivered: the plant's network
// of steps with the work this unit's picks add, laid on the plant's working
// calendar, with the chance of each date.
//
// What is modeled: every step's three-point duration; option hours at the
// station's crew, shifts and hours; the chassis' own arrival; each long-lead
// part; the work ahead of the order and the framing line's published slots; the
// plant's workdays, holidays and shutdowns; and that delays come together. Bays
// limit how many units a station holds at once and so matter between units of one
// quote, see Fleet. How long an order waits for its place in the plant, and how
// long the chassis maker takes now, are assumed factors of the unit or the plant.
package leadtime

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Step is one step of a unit's plan. Times are working days from the order,
// at expected durations; the dates are those times on the calendar.
type Step struct {
	ID      string      `json:"id"`
	Label   string      `json:"label"`
	Station string      `json:"station,omitempty"`
	Source  string      `json:"source,omitempty"` // one of config's Source constants
	Option  string      `json:"option,omitempty"` // the pick whose long-lead part this waits for
	After   []string    `json:"after,omitempty"`
	Days    config.Span `json:"days"` // with the picks' work in it

	Expected float64 `json:"expected"`
	Variance float64 `json:"variance"`
	ES       float64 `json:"es"` // earliest start and finish
	EF       float64 `json:"ef"`
	LS       float64 `json:"ls"` // latest start and finish that keep the delivery
	LF       float64 `json:"lf"`
	Float    float64 `json:"float"`
	Wait     float64 `json:"wait,omitempty"` // ready, but waiting for a slot or a bay
	Critical bool    `json:"critical"`       // at expected durations the delivery waits for its end
	Share    float64 `json:"share"`          // of the draws in which the delivery waited for this step

	Start        config.Date `json:"start"`
	Finish       config.Date `json:"finish"`
	LatestFinish config.Date `json:"latest_finish"`

	Added []Added `json:"added,omitempty"`
}

// Reckoning is an answer at even odds and at nine in ten, in working days from
// the order and as dates.
type Reckoning struct {
	EvenOddsDays  float64     `json:"even_odds_days"`
	NineInTenDays float64     `json:"nine_in_ten_days"`
	EvenOdds      config.Date `json:"even_odds"`
	NineInTen     config.Date `json:"nine_in_ten"`
}

// Whole are the working days from the order to its two dates, a day begun counted whole.
func (r *Reckoning) Whole() (evenOdds, nineInTen int) {
	return whole(r.EvenOddsDays), whole(r.NineInTenDays)
}

// Chance is how likely delivery is on or before a day.
type Chance struct {
	Days   int         `json:"days"`
	On     config.Date `json:"on"`
	Chance float64     `json:"chance"`
}

// Plan is a unit's delivery.
type Plan struct {
	config.Report
	Order    config.Date `json:"order"`
	Steps    []Step      `json:"steps"`
	Critical []string    `json:"critical"` // ids of the steps on the critical path

	EvenOdds  config.Date `json:"even_odds"`   // as simulated
	NineInTen config.Date `json:"nine_in_ten"` // as simulated

	// Analytic looks along the critical path alone; Simulated lets the later
	// of merging paths decide in every draw. The first is too hopeful by so
	// many working days at even odds and at nine in ten; below zero where one
	// long path decides alone and its skew outweighs the merging.
	Analytic         Reckoning `json:"analytic"`
	Simulated        Reckoning `json:"simulated"`
	TooHopefulAtEven float64   `json:"too_hopeful_at_even"`
	TooHopefulAtNine float64   `json:"too_hopeful_at_nine"`
	// TogetherAtNine is by how many working days the critical path alone is later at nine in
	// ten because delays on it come together; Analytic takes each by itself.
	TogetherAtNine float64 `json:"together_at_nine"`

	Spread []Chance    `json:"spread"`        // each working day from 1 to 99 in a hundred
	Slot   config.Date `json:"slot,omitzero"` // framing start, when it is held to slots
	// LatestOrder is the last day to order for delivery by the needed date at
	// nine in ten; zero without a needed date or when no day would do.
	LatestOrder config.Date `json:"latest_order,omitzero"`

	job  *job
	odds *Odds
	sim  Simulation
}

// Schedule plans the unit from its order date. The error is a config.Problems:
// an unknown chassis or body, no plant network or one that goes in a circle,
// no order date.
func Schedule(cat *config.Catalogue, u *config.Unit, sim Simulation) (*Plan, error) {
	if cat == nil {
		return nil, config.Problems{{Code: "time.nothing", Where: "the plan", Text: "needs a catalogue"}}
	}
	j, err := newJob(cat, u, cat.Plant.Slots)
	if err != nil {
		return nil, err
	}
	return j.plan(sim)
}

func (j *job) plan(sim Simulation) (*Plan, error) {
	c, err := j.net.compile()
	if err != nil {
		return nil, err
	}
	sim = sim.with(j.assume.Factor(config.DelaysTogether) / 100)
	solved, odds := c.solve(), c.simulate(sim)
	p := &Plan{Order: j.unit.OrderOn, Steps: j.steps, Critical: solved.Path, job: j, odds: odds, sim: sim}
	for i := range p.Steps {
		p.Steps[i].date(&j.net.Activities[i], &solved.Timings[i], odds.Critical[i], j.line)
	}
	reckon := func(even, nine float64) Reckoning {
		return Reckoning{round(even), round(nine), j.line.finishes(even), j.line.finishes(nine)}
	}
	p.Analytic = reckon(solved.Days, solved.At(.9))
	p.Simulated = reckon(odds.At(.5), odds.At(.9))
	p.EvenOdds, p.NineInTen = p.Simulated.EvenOdds, p.Simulated.NineInTen
	p.TooHopefulAtEven = round(p.Simulated.EvenOddsDays - p.Analytic.EvenOddsDays)
	p.TooHopefulAtNine = round(p.Simulated.NineInTenDays - p.Analytic.NineInTenDays)
	p.TogetherAtNine = round(solved.together(&j.net, sim.Together).At(.9) - solved.At(.9))
	for n := whole(odds.At(.01)); n <= whole(odds.At(.99)); n++ {
		p.Spread = append(p.Spread, Chance{n, j.line.at(n), odds.Within(float64(n))})
	}
	if j.gated >= 0 && j.net.Activities[j.gated].Gate != nil {
		p.Slot = p.Steps[j.gated].Start
	}
	if !j.unit.NeededBy.IsZero() {
		p.LatestOrder = p.LatestOrderFor(j.unit.NeededBy, .9)
	}
	p.report()
	return p, nil
}

func (s *Step) date(a *Activity, t *Timing, share float64, l *line) {
	span := a.Span()
	s.Days = config.Span{Low: round(span.Low), Likely: round(span.Likely), High: round(span.High)}
	s.Expected, s.Variance = round(t.Expected), round(t.Variance)
	s.ES, s.EF, s.LS, s.LF = round(t.ES), round(t.EF), round(t.LS), round(t.LF)
	s.Float, s.Wait, s.Critical, s.Share = round(t.Float), round(t.Wait), t.Critical, share
	s.Start, s.Finish, s.LatestFinish = l.starts(t.ES), l.finishes(t.EF), l.finishes(t.LF)
	if s.Finish.Before(s.Start) { // takes no time
		s.Start = s.Finish
	}
}

// At is the date by which the unit is delivered with the given chance, from 0
// to 1.
func (p *Plan) At(chance float64) config.Date { return p.job.line.finishes(p.odds.At(chance)) }

// Chance is how likely, from 0 to 1, the unit is delivered on or before the day.
func (p *Plan) Chance(by config.Date) float64 {
	return p.odds.Within(float64(p.job.line.until(by)))
}

// Step finds a step by id, or nil.
func (p *Plan) Step(id string) *Step {
	for i := range p.Steps {
		if p.Steps[i].ID == id {
			return &p.Steps[i]
		}
	}
	return nil
}

// report writes the figures and what there is to say about them.
func (p *Plan) report() {
	j, o := p.job, p.odds
	days := func(chance float64) float64 { return float64(whole(o.At(chance))) }
	even := config.Figure{Code: "time.even-odds", Label: "Likely date (50 %)", Unit: quantity.Day, Value: days(.5),
		Low: days(.1), High: days(.9)}
	nine := config.Figure{Code: "time.nine-in-ten", Label: "Safe date (90 %)", Unit: quantity.Day,
		Value: days(.9), Low: days(.5), High: days(.99)}
	needed := j.unit.NeededBy
	if !needed.IsZero() {
		for _, f := range []*config.Figure{&even, &nine} {
			f.Limit, f.Sense, f.Basis = float64(j.line.until(needed)), config.AtMost, config.Purchaser
			f.Source = "needed by " + needed.Long()
			f.Chance = 1 - p.Chance(needed)
		}
	}
	p.Figures = []config.Figure{even, nine}
	p.Findings = append(p.Findings, j.notes...)
	if !nine.Met() {
		p.missed(nine)
	}
	p.waits()
	if last := j.line.at(whole(o.At(.99))); j.line.until(last) < whole(o.At(.99)) {
		p.say("time.calendar-end", config.Warn, "calendar", "The plant's calendar has too few working days left "+
			"before 2200 for this plan.", "Check the plant's shutdowns.", nil)
	}
}

func (p *Plan) say(code string, severity config.Severity, where, text, remedy string, picks []string) {
	p.Findings = append(p.Findings, config.Finding{Code: code, Severity: severity, Where: where, Text: text,
		Remedy: remedy, Picks: picks})
}

// missed says that the needed date is not kept at nine in ten.
func (p *Plan) missed(nine config.Figure) {
	needed := p.job.unit.NeededBy
	text := fmt.Sprintf("Needed by %s; delivery is likely by %s (50 %%) and safe by %s (90 %%). The chance of "+
		"keeping the needed date is %s.",
		needed.Long(), p.EvenOdds.Long(), p.NineInTen.Long(), quantity.Chance(1-nine.Chance))
	remedy, picks := "Move the needed date to "+p.NineInTen.Long(), p.criticalPicks()
	if len(picks) > 0 {
		remedy += ", or take out what delays it"
	}
	remedy += "."
	p.Findings = append(p.Findings, config.Finding{Code: "time.needed-by.missed", Severity: config.Warn,
		Where: "delivery", Text: text, Figure: &nine, Basis: config.Purchaser, Remedy: remedy,
		Picks: picks})
}

// criticalPicks are the picks whose work or parts lie on the critical path.
func (p *Plan) criticalPicks() []string {
	var out []string
	for _, k := range p.job.unit.Picks {
		for i := range p.Steps {
			s := &p.Steps[i]
			waits := s.Option == k.Option
			for _, a := range s.Added {
				waits = waits || a.ID == k.Option && a.Days > 0
			}
			if waits && s.Critical {
				out = append(out, k.Option)
				break
			}
		}
	}
	return out
}

// waits says what the delivery waits for that is not work on the unit: parts,
// the chassis, a slot.
func (p *Plan) waits() {
	for i := range p.Steps {
		s := &p.Steps[i]
		switch {
		case s.Option != "" && s.Share >= .05:
			p.say("time.parts-critical", config.Note, "parts",
				fmt.Sprintf("%s takes %.0f to %.0f working days to arrive; delivery waits for it in %s of cases.",
					p.job.cat.LabelOf(s.Option), s.Days.Low, s.Days.High, quantity.Chance(s.Share)), "A part in stock, or "+
					"another choice, would bring the date forward.", []string{s.Option})
		case s.Source == config.SourceChassis && s.Share >= .5:
			p.say("time.chassis-critical", config.Note, "chassis",
				fmt.Sprintf("The chassis takes %.0f to %.0f working days to arrive; delivery waits for it in %s of "+
					"cases.", s.Days.Low, s.Days.High, quantity.Chance(s.Share)), "A chassis in stock, or another chassis, "+
					"would bring the date forward.", nil)
		}
	}
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Wait >= 1 && s.Critical && i != p.job.gated {
			p.say("time.bay-wait", config.Note, "bays",
				fmt.Sprintf("%s waits %.0f working days for a bay, until %s, because other units of this quote "+
					"hold them.", s.Label, s.Wait, s.Start.Long()), "Order this unit ahead of the others, or stagger "+
					"the orders.", nil)
		}
	}
	if p.Slot.IsZero() {
		return
	}
	s := &p.Steps[p.job.gated]
	gate := p.job.net.Activities[p.job.gated].Gate
	switch {
	case s.ES >= gate.Free-dust:
		p.say("time.slot-beyond", config.Warn, "slots", "Framing starts after the last published slot, when the line "+
			"is assumed free.", "Ask the plant for a later slot.", nil)
	case s.Wait >= 1 && s.Critical:
		p.say("time.slot-wait", config.Note, "slots",
			fmt.Sprintf("The unit is ready for framing %.0f working days before its slot on %s.", s.Wait,
				s.Start.Long()), "It is the first slot still open: ask the plant whether an earlier one comes free.", nil)
	}
}
