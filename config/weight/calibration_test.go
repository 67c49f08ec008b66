package weight

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// fate is what one plant and one unit of it turned out to be: the true errors behind a
// weigh-up, drawn from the assumed factors without the estimate's help.
type fate struct {
	r      *rand.Rand
	factor func(string) float64
	things map[string][4]float64 // mass, along, across, above: of the plant's every unit
	// build and aft are the plant's own; unit and chassis those of one specimen.
	build, aft, unit, chassis float64
}

func newPlant(r *rand.Rand, a *config.Assumptions) *fate {
	return &fate{r: r, factor: a.Factor, things: map[string][4]float64{}, build: r.NormFloat64(), aft: r.NormFloat64()}
}

// next builds another unit in the same plant.
func (f *fate) next() *fate {
	f.unit, f.chassis = f.r.NormFloat64(), f.r.NormFloat64()
	return f
}

// truth is what the scales would say: gross, front axle, rear axle, right less left as a
// share of gross, height of the center of gravity.
func (f *fate) truth(l *loader, items []Item, in func(Kind) bool) map[string]float64 {
	const sd = 1.959963984540054
	share := func(code string) float64 { return f.factor(code) / 100 / sd }
	inch := func(code string) float64 { return f.factor(code) / sd }
	wb, tf, tr := float64(l.ch.WheelbaseIn), float64(l.ch.TrackFrontIn), float64(l.ch.TrackRearIn)
	var gross, front, side, high, rightFront, rightRear float64
	for _, it := range items {
		if !in(it.Kind) {
			continue
		}
		name := string(it.Kind) + "/" + it.ID
		e, known := f.things[name]
		if !known {
			e = [4]float64{f.r.NormFloat64(), f.r.NormFloat64(), f.r.NormFloat64(), f.r.NormFloat64()}
			f.things[name] = e
		}
		lb, x, y, z := float64(it.Lb), float64(it.XIn), float64(it.YIn), float64(it.ZIn)
		m := lb + e[0]*float64(it.TolLb)/sd
		switch it.Kind {
		case KindChassis:
			m += lb * f.chassis * share(config.ChassisUnit)
			x += e[1] * wb * share(config.ChassisSplit)
			y += e[2] * inch(config.ChassisSide)
			z += e[3] * inch(config.ChassisHeight)
		case KindModule, KindOption:
			m += lb * (f.build*share(config.MassBuild) + f.unit*share(config.MassUnit))
			x += f.aft * inch(config.StationBuild)
			fallthrough
		case KindEquipment:
			x += e[1] * inch(config.StationThing)
			y += e[2] * inch(config.SideThing)
			z += e[3] * inch(config.HeightThing)
		}
		ff, fr := 1-x/wb, x/wb
		gross += m
		front += m * ff
		side += m * 2 * y * (ff/tf + fr/tr)
		rightFront += m * ff * (.5 + y/tf)
		rightRear += m * fr * (.5 + y/tr)
		high += m * z
	}
	return map[string]float64{"weight.gross": gross, "weight.curb": gross, "weight.front-axle": front,
		"weight.rear-axle": gross - front, "weight.cg-height": high / gross, "signed side": 100 * side / gross,
		"left front": front - rightFront, "right front": rightFront, "left rear": gross - front - rightRear,
		"right rear": rightRear}
}

const plants = 4000

// fromPlants weighs a unit, and has as many plants build it: truths are what each of theirs weighs.
func fromPlants(t *testing.T, seed, stream uint64, in func(Kind) bool) (s *Sheet, truths []map[string]float64) {
	cat, u, as := prepared(t), typical(), people(175)
	as.Factors = nil
	s = Weigh(cat, u, as)
	l := newLoader(cat, u, as)
	require.True(t, l.usable())
	r := rand.New(rand.NewPCG(seed, stream))
	for range plants {
		truths = append(truths, newPlant(r, as).next().truth(l, s.Items, in))
	}
	return s, truths
}

// Of 4,000 plants, each building one unit, the truth lies within the 95 % range of a
// figure 95 times in 100. The tolerance of 1.2 is 3.5 standard errors of that count.
func TestRangesHoldAsManyUnitsAsTheySay(t *testing.T) {
	s, truths := fromPlants(t, 7, 13, inGross)
	held, above := map[string]int{}, 0
	gross := figure(t, s, "weight.gross")
	limit := gross.Value + (gross.High-gross.Value)/2 // a rating that is missed 16.4 times in 100
	for _, truth := range truths {
		for code, v := range truth {
			if f, ok := s.Figure(code); ok && code != "weight.curb" && v >= f.Low && v <= f.High {
				held[code]++
			}
		}
		if truth["weight.gross"] > limit {
			above++
		}
	}
	for _, code := range []string{"weight.gross", "weight.front-axle", "weight.rear-axle", "weight.cg-height"} {
		assert.InDelta(t, 95, 100*float64(held[code])/plants, 1.2, code)
	}
	sd := (gross.High - gross.Value) / likely
	assert.InDelta(t, chanceAbove(gross.Value, sd, limit), float64(above)/plants, 0.02,
		"the chance of missing a rating")
}

// What a finished unit is held to on the scale: of 4,000 plants' units each reading is
// within its doubt 95 times in 100, and no more than that.
func TestCurbDoubtHoldsAsManyUnitsAsItSays(t *testing.T) {
	s, truths := fromPlants(t, 17, 23, inCurb)
	d := s.CurbDoubt()
	held := map[string]int{}
	for _, w := range truths {
		right := w["weight.curb"] * (0.5 + w["signed side"]/200)
		for name, off := range map[string]float64{
			"total": (w["weight.curb"] - float64(s.Curb.TotalLb)) / float64(d.TotalLb),
			"front": (w["weight.front-axle"] - float64(s.Curb.FrontLb)) / float64(d.FrontLb),
			"rear":  (w["weight.rear-axle"] - float64(s.Curb.RearLb)) / float64(d.RearLb),
			"right": (right - float64(s.Curb.RightLb)) / float64(d.SideLb),
		} {
			if math.Abs(off) <= 1 {
				held[name]++
			}
		}
	}
	for _, name := range []string{"total", "front", "rear", "right"} {
		assert.InDelta(t, 95, 100*float64(held[name])/plants, 1.2, name)
	}
	assert.Zero(t, new(Sheet).CurbDoubt(), "nothing was weighed")
}

// The load of each wheel end is within its doubt for 95 of 100 units.
func TestWheelDoubtHoldsAsManyUnitsAsItSays(t *testing.T) {
	s, truths := fromPlants(t, 19, 29, inGross)
	doubt := s.WheelDoubt()
	held := map[string]int{}
	names := []string{"left front", "right front", "left rear", "right rear"}
	for _, truth := range truths {
		for i, name := range names {
			if math.Abs(truth[name]-float64(s.Gross.Wheels[i].Lb)) <= float64(doubt[i]) {
				held[name]++
			}
		}
	}
	for _, name := range names {
		assert.InDelta(t, 95, 100*float64(held[name])/plants, 1.2, name)
	}
	assert.Zero(t, new(Sheet).WheelDoubt(), "nothing was weighed")
}

// A plant that weighs its units learns about itself: after four tickets of earlier units
// the range of the next one is narrower, and still holds 95 in 100.
func TestRangesHoldAfterTickets(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	as.Factors = nil
	plain := Weigh(cat, u, as)
	l := newLoader(cat, u, as)
	require.True(t, l.usable())
	r := rand.New(rand.NewPCG(3, 31))
	const plants = 1500
	held, narrower := map[string]int{}, 0
	codes := []string{"weight.curb", "weight.front-axle"}
	for range plants {
		plant := newPlant(r, as)
		scale := 1 + r.NormFloat64()*as.Factor(config.ScaleError)/100/likely
		var tickets []Ticket
		for range 4 {
			w := plant.next().truth(l, plain.Items, inCurb)
			read := func(v float64) quantity.Mass { return quantity.Mass(v*scale + r.NormFloat64()*scaleTolLb/likely) }
			tickets = append(tickets, Ticket{What: TicketUnit, Unit: u, FrontLb: read(w["weight.front-axle"]),
				RearLb: read(w["weight.rear-axle"])})
		}
		s := Weigh(cat, u, as, tickets...)
		plant.next()
		for _, code := range codes {
			in := inGross
			if code == "weight.curb" {
				in = inCurb
			}
			f, v := figure(t, s, code), plant.truth(l, plain.Items, in)[code]
			if v >= f.Low && v <= f.High {
				held[code]++
			}
		}
		if f, b := figure(t, s, "weight.curb"), figure(t, plain, "weight.curb"); f.High-f.Low < b.High-b.Low {
			narrower++
		}
	}
	assert.Equal(t, plants, narrower)
	for _, code := range codes {
		assert.InDelta(t, 95, 100*float64(held[code])/plants, 2, code)
	}
}

// One unit differs from the next, which no number of tickets of others takes away: by
// hand, 1 % of what the plant builds and 0.75 % of the chassis.
func TestScatterThatNoTicketRemoves(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	as.Factors = nil
	base := Weigh(cat, u, as)
	built, chassis := 0.0, 0.0
	for _, it := range base.Items {
		switch {
		case it.Kind == KindChassis:
			chassis += float64(it.Lb)
		case it.built:
			built += float64(it.Lb)
		}
	}
	least := math.Hypot(0.01*built, 0.0075*chassis)
	var tickets []Ticket
	for range 50 {
		tickets = append(tickets, Ticket{What: TicketUnit, Unit: u, FrontLb: base.Curb.FrontLb,
			RearLb: base.Curb.RearLb})
	}
	f := figure(t, Weigh(cat, u, as, tickets...), "weight.curb")
	half := f.High - f.Value
	assert.GreaterOrEqual(t, half, least)
	assert.Less(t, half, 1.15*least, "all else is learnt")
	before := figure(t, base, "weight.curb")
	assert.Less(t, half, 0.6*(before.High-before.Value))
	own := figure(t, Weigh(cat, u, as, Ticket{What: TicketUnit, FrontLb: base.Curb.FrontLb,
		RearLb: base.Curb.RearLb}), "weight.curb")
	assert.Less(t, own.High-own.Value, 20., "the unit itself on the scale is another thing")
}
