package weight

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/quantity"
)

// twoMasses is a chassis of 6,000 give or take 100 lb and a body of 1,500 give
// or take 50 lb, halfway between the axles and over the rear axle.
func twoMasses(t *testing.T) (*config.Catalogue, *config.Unit) {
	cat, u := bare(t, 14500, 6000, 0)
	cat.Chassis[0].CurbTolLb = 100
	cat.Chassis[0].FuelGal = 0
	cat.Bodies[1].Mass = config.Mass{Lb: 1500, TolLb: 50, Zone: config.ZoneRearAxle}
	require.Empty(t, cat.Prepare())
	return cat, u
}

func itemLb(s *Sheet, id string) float64 {
	for _, it := range s.Items {
		if it.ID == id {
			return float64(it.Lb)
		}
	}
	return math.NaN()
}

// By hand: one total 125 lb too high, tolerances 100 and 50, a scale that errs
// by nothing. The variances are as 4 to 1, so the chassis takes 100 lb of it.
func TestTicketByHand(t *testing.T) {
	cat, u := twoMasses(t)
	s := Weigh(cat, u, people(150), Ticket{What: TicketUnit, TotalLb: 7625, TolLb: 1e-6})
	assert.InDelta(t, 6100, itemLb(s, "cutaway"), 1e-6)
	assert.InDelta(t, 1525, itemLb(s, "van"), 1e-6)
	assert.InDelta(t, 7625, float64(s.Gross.TotalLb), 1e-6)
	f := figure(t, s, "weight.gross")
	assert.InDelta(t, 0, f.High-f.Low, 1e-4, "the sum is as sure as the scale")
	// The parts are not: each keeps 100 x 50 / hypot(100, 50) = 44.72 lb.
	assert.InDelta(t, 44.72, float64(s.Items[0].TolLb), 0.005)
	assert.InDelta(t, 44.72, float64(s.Items[1].TolLb), 0.005)

	// Two axles settle two masses: 3,050 and 4,600 can only be 6,100 and 1,550.
	s = Weigh(cat, u, people(150), Ticket{What: TicketUnit, FrontLb: 3050, RearLb: 4600, TolLb: 1e-6})
	assert.InDelta(t, 6100, itemLb(s, "cutaway"), 1e-6)
	assert.InDelta(t, 1550, itemLb(s, "van"), 1e-6)

	// A scale that errs as much as the masses together is believed half.
	s = Weigh(cat, u, people(150),
		Ticket{What: TicketUnit, TotalLb: 7625, TolLb: quantity.Mass(math.Hypot(100, 50))})
	assert.InDelta(t, 7500+62.5, float64(s.Gross.TotalLb), 1e-6)
	assert.InDelta(t, 62.5, float64(s.Correction.Readings[0].ResidualLb()), 1e-6)
}

// The walk of the scale ticket: 212 lb more than computed, margins move.
func TestFinishedUnitHeavierThanComputed(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	before := Weigh(cat, u, as)
	b := before.Curb
	ticket := Ticket{Number: "4711", Date: config.Date{Year: 2027, Month: 3, Day: 3}, What: TicketUnit,
		FrontLb: b.FrontLb + 40, RearLb: b.RearLb + 172}
	after := Weigh(cat, u, as, ticket)

	gain := float64(after.Curb.TotalLb - b.TotalLb)
	assert.InDelta(t, 212, gain, 4, "all but what the scale itself may err")
	left := func(s *Sheet) float64 { return figure(t, s, "weight.payload-left").Value }
	assert.InDelta(t, -gain, left(after)-left(before), 1e-5)
	wide := func(s *Sheet) float64 { f := figure(t, s, "weight.front-axle"); return f.High - f.Low }
	assert.Less(t, wide(after), wide(before)/2, "and the likely range narrows")

	require.Len(t, after.Correction.Readings, 2)
	r := after.Correction.Readings[0]
	assert.Equal(t, "Ticket 4711 of Wed, Mar 3, 2027, front axle", r.Label)
	assert.InDelta(t, 40, float64(r.MeasuredLb-r.BeforeLb), 1e-5)
	assert.Less(t, math.Abs(float64(r.ResidualLb())), 5.)
	assert.Equal(t, "module-168-shell", after.Correction.Moves[0].ID, "the least known mass gives way most")
}

// Of all corrections the estimate is the best: no other makes the sum of
// squared changes and residuals, each in its own standard deviations, smaller.
func TestCorrectionIsLeastSquares(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	base := Weigh(cat, u, as)
	rapid.Check(t, func(t *rapid.T) {
		off := func(name string) quantity.Mass { return lbs(rapid.Float64Range(-300, 300).Draw(t, name)) }
		tickets := []Ticket{{What: TicketUnit, FrontLb: base.Curb.FrontLb + off("f"), RearLb: base.Curb.RearLb +
			off("r"), TotalLb: base.Curb.TotalLb + off("t"), TolLb: 20}, {What: TicketChassis, TotalLb: 5900 +
			off("c")}}
		l := newLoader(cat, u, as)
		items := l.unit()
		est := newEstimate(as, items)
		est.correct(l, items, tickets)

		plain := newLoader(cat, u, as)
		prior := plain.unit()
		var rows []row
		for i := range tickets {
			rows = append(rows, plain.rows(i, &tickets[i], prior)...)
		}
		e := newEstimate(as, prior)
		cost := func(errs []float64) float64 {
			sum := dot(errs, errs)
			for _, r := range rows {
				d := (r.gap - dot(e.spread(prior, r.perLb, e.keys[r.specimen]), errs)) / r.noise
				sum += d * d
			}
			return sum
		}
		best := cost(est.errs)
		other := make([]float64, len(est.errs))
		for i := range other {
			other[i] = est.errs[i] + rapid.Float64Range(-1, 1).Draw(t, "step")
		}
		assert.GreaterOrEqual(t, cost(other), best-1e-9*best)
	})
}

// Weighing teaches; it never makes anything less well known, and the order of
// tickets does not matter.
func TestTicketsOnlyTeach(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	base := Weigh(cat, u, as)
	rapid.Check(t, func(t *rapid.T) {
		near := func(v quantity.Mass, name string) quantity.Mass {
			if !rapid.Bool().Draw(t, "weighed "+name) {
				return 0
			}
			return v * lbs(rapid.Float64Range(0.97, 1.03).Draw(t, name))
		}
		draw := func() Ticket {
			k := Ticket{What: TicketUnit, FrontLb: near(base.Curb.FrontLb, "front"),
				RearLb: near(base.Curb.RearLb, "rear"), LeftLb: near(base.Curb.LeftLb, "left"),
				RightLb: near(base.Curb.RightLb, "right"), TotalLb: near(base.Curb.TotalLb, "total")}
			for i := range k.WheelsLb {
				k.WheelsLb[i] = near(base.Curb.Wheels[i].Lb, k.What)
			}
			return k
		}
		a, b := draw(), draw()
		one := Weigh(cat, u, as, a, b)
		two := Weigh(cat, u, as, b, a)
		for i, f := range one.Figures {
			assert.LessOrEqual(t, f.High-f.Low, (base.Figures[i].High-base.Figures[i].Low)*1.05+1e-5, f.Code)
			assert.InDelta(t, two.Figures[i].Value, f.Value, 1e-4, f.Code)
		}
		for i, it := range one.Items {
			assert.LessOrEqual(t, float64(it.TolLb), float64(base.Items[i].TolLb)+1e-9, it.ID)
		}
		w := one.Gross
		assert.InDelta(t, float64(w.TotalLb), float64(w.FrontLb+w.RearLb), 0.001, "the balance still closes")
	})
}

// An earlier unit's ticket teaches the next quote about what both have, and
// less than the unit's own would.
func TestAnEarlierUnitTeachesTheNext(t *testing.T) {
	cat, as := prepared(t), people(175)
	earlier := typical()
	next := earlier.Clone()
	next.Drop("curb-box")
	next.Set(config.Pick{Option: "winch", Qty: 1})
	heavy := Weigh(cat, earlier, as).Curb.TotalLb + 212
	ticket := Ticket{What: TicketUnit, TotalLb: heavy}
	own := Weigh(cat, earlier, as, ticket).Curb.TotalLb - (heavy - 212)
	ticket.Unit = earlier
	learnt := Weigh(cat, &next, as, ticket).Curb.TotalLb - Weigh(cat, &next, as).Curb.TotalLb
	assert.Greater(t, float64(learnt), 100.)
	assert.Less(t, float64(learnt), float64(own))

	van := &config.Unit{Chassis: "cutaway", Body: "van"}
	about := Weigh(cat, van, as, ticket).Curb.TotalLb - Weigh(cat, van, as).Curb.TotalLb
	assert.Greater(t, float64(about), 0., "they share the chassis")
	assert.Less(t, float64(about), float64(learnt), "but not the module")
}

func TestPartOfATank(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	fuel := 55 * gasolineLbGal
	k := Ticket{What: TicketChassis, TotalLb: lbs(5900 - fuel/2), FuelPart: 0.5}
	s := Weigh(cat, u, as, k)
	assert.Empty(t, s.Correction.Moves, "half a tank less is no surprise")
	assert.InDelta(t, 0, s.Correction.Readings[0].Deviation, 1e-9)
}

func TestLimitsFollowTickets(t *testing.T) {
	cat, u, as := prepared(t), typical(), everyLimit()
	base := Weigh(cat, u, as)
	tickets := []Ticket{
		{What: TicketUnit, FrontLb: base.Curb.FrontLb + 90, RearLb: base.Curb.RearLb - 60},
		{What: TicketUnit, Unit: &config.Unit{Chassis: "cutaway", Body: "module-168", Picks: picks("winch")}, TotalLb: 9400},
	}
	s := Weigh(cat, u, as, tickets...)
	for _, l := range Limits(cat, u, as, tickets...) {
		if f := figure(t, s, l.Code); l.Unit == quantity.Pound {
			assert.InDelta(t, -f.Margin(), total(l, u)-l.Limit, 1e-5, l.Code)
		}
	}
}

func TestTicketsThatCannotBeUsed(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	nan := lbs(math.NaN())
	for name, k := range map[string]Ticket{
		"kilograms":          {What: TicketUnit, TotalLb: 4300},
		"another vehicle":    {What: TicketUnit, TotalLb: 40000},
		"not a number":       {What: TicketUnit, FrontLb: nan},
		"infinite":           {What: TicketUnit, RearLb: lbs(math.Inf(1))},
		"negative":           {What: TicketUnit, LeftLb: -4000},
		"weighed what":       {What: "trailer", TotalLb: 9500},
		"condition":          {What: TicketUnit, Condition: "wet", TotalLb: 9500},
		"fuel above full":    {What: TicketUnit, FuelPart: 1.2, TotalLb: 9500},
		"negative tolerance": {What: TicketUnit, TolLb: -1, TotalLb: 9500},
		"unknown unit":       {What: TicketUnit, Unit: &config.Unit{Chassis: "gone"}, TotalLb: 9500},
	} {
		t.Run(name, func(t *testing.T) {
			s := Weigh(cat, u, as, k)
			assert.NotNil(t, finding(s, "weight.ticket.unusable"), name)
			assert.Empty(t, s.Correction.Moves, name)
			assert.Equal(t, Weigh(cat, u, as).Gross, s.Gross, name)
		})
	}
	far := Weigh(cat, u, as, Ticket{What: TicketUnit, TotalLb: Weigh(cat, u, as).Curb.TotalLb + 900})
	assert.NotNil(t, finding(far, "weight.ticket.far"), "believed, but remarked upon")
	// Readings that repeat each other, or contradict, still give finite answers.
	same := Ticket{What: TicketUnit, TotalLb: 9500, FrontLb: 3800, RearLb: 5700, LeftLb: 4750, RightLb: 4900,
		TolLb: 1e-9}
	assertFinite(t, Weigh(cat, u, as, same, same, Ticket{What: TicketUnit, TotalLb: 9700, TolLb: 1e-9}))
	assertFinite(t, Weigh(cat, u, as, make([]Ticket, 500)...))
}

// A finished unit came off the scale heavier than the model.
func ExampleWeigh_tickets() {
	cat := fixture()
	cat.Prepare()
	u := &config.Unit{Chassis: "cutaway", Body: "module-168"}
	as := &config.Assumptions{OccupantLb: config.Limit{Value: 175}}
	curb := Weigh(cat, u, as).Curb
	s := Weigh(cat, u, as, Ticket{What: TicketUnit, FrontLb: curb.FrontLb + 40, RearLb: curb.RearLb + 172})
	for _, r := range s.Correction.Readings {
		fmt.Printf("%s: %+.0f lb, %.1f lb left unexplained\n", r.Label, r.MeasuredLb-r.BeforeLb, r.ResidualLb())
	}
	for _, m := range s.Correction.Moves {
		fmt.Printf("%s: %+.0f lb\n", m.ID, m.ToLb-m.FromLb)
	}
	// Output:
	// Ticket 1, front axle: +40 lb, 0.8 lb left unexplained
	// Ticket 1, rear axle: +172 lb, -2.2 lb left unexplained
	// module-168-shell: +145 lb
	// cutaway: +51 lb
	// module-168: +15 lb
}
