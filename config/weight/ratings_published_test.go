package weight

// Tire, occupant and payload rows against what the rules and their published
// interpretations print.
//
// NHTSA letter aiam0583 (node/118686). R-3: a vehicle owner manual's three
// loading examples (carmanualsonline.info). R-4: 49 CFR 571.120 S5.1.2 (NHTSA
// letter nht76-1.47) with a tire of tirereview.com. R-5: payload minima of
// KKK-A-1822F as compared on slideplayer.com/slide/1463288. Tire table: a coach
// owner's manual page 13, LT235/85R16 load range E at 80 psi.

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// bare is a vehicle of the given GVWR and curb weight with n cab seats and
// nothing else, its load halfway between the axles.
func bare(t *testing.T, gvwr, curb float64, seats int) (*config.Catalogue, *config.Unit) {
	cat := fixture()
	ch, van := &cat.Chassis[0], &cat.Bodies[1]
	van.Mass = config.Mass{}
	ch.GVWRLb, ch.CurbFrontLb, ch.CurbRearLb, ch.CurbTolLb = lbs(gvwr), lbs(curb/2), lbs(curb/2), 0.001
	ch.CabSeats = nil
	for range seats {
		ch.CabSeats = append(ch.CabSeats, config.Seat{ID: "seat", Label: "Seat", Kind: "cab", XIn: 79, ZIn: 50})
	}
	require.Empty(t, cat.Prepare())
	return cat, &config.Unit{Chassis: "cutaway", Body: "van"}
}

func TestPublishedTireSums(t *testing.T) {
	cat, u := bare(t, 30000, 6000, 0)
	ch := &cat.Chassis[0]
	ch.RearTires = config.Tires{Size: "8.25-20 10-ply", Count: 4, LoadLb: 3550, PressurePSI: 75}
	ch.GAWRRearLb = 17500
	assert.Equal(t, 14200., TireCapacity(ch.RearTires), "R-1")
	f := finding(Weigh(cat, u, people(150)), "weight.gawr-tires-rear.short")
	require.NotNil(t, f, "R-1: the letter finds these tires too small")
	assert.Equal(t, config.Stop, f.Severity, "R-1: the rule was read")
	assert.Equal(t, -3300., f.Figure.Margin(), "R-1")

	ch.GAWRRearLb = 14200
	assert.Nil(t, finding(Weigh(cat, u, people(150)), "weight.gawr-tires-rear.short"),
		"a sum equal to the rating passes")

	passenger := config.Tires{Size: "P235/75R15", Count: 2, LoadLb: 2028, Passenger: true}
	assert.InDelta(t, 3687.3, TireCapacity(passenger), 0.05, "R-4")
	passenger.Passenger = false
	assert.Equal(t, 4056., TireCapacity(passenger), "only passenger-car tires are divided by 1.10")

	assert.Equal(t, 6084., TireCapacity(config.Tires{Count: 2, LoadLb: 3042}), "tire table, two single")
	assert.Equal(t, 11112., TireCapacity(config.Tires{Count: 4, LoadLb: 5556. / 2}),
		"tire table, two pairs of 5,556 lb")
}

func TestPublishedCapacityLeft(t *testing.T) {
	for _, c := range []struct {
		people int
		each   float64
		left   float64
	}{{2, 150, 700}, {5, 150, 250}, {5, 200, 0}} {
		t.Run(fmt.Sprint(c.people), func(t *testing.T) {
			cat, u := bare(t, 6000, 5000, c.people)
			s := Weigh(cat, u, people(c.each))
			assert.Equal(t, c.left, figure(t, s, "weight.payload-left").Value, "R-3, %d people of %v lb", c.people,
				c.each)
			assert.Nil(t, finding(s, "weight.gross.over"), "R-3: a full load is not an overload")
		})
	}
}

func TestPublishedPayloadMinima(t *testing.T) {
	for _, c := range []struct {
		payload, minimum float64
		pass             bool
	}{{1749, 1750, false}, {1750, 1750, true}, {2249, 2250, false}, {2250, 2250, true}} {
		t.Run(fmt.Sprint(c.payload), func(t *testing.T) {
			cat, u := bare(t, 14500, 14500-c.payload, 2)
			as := people(175)
			as.Limits["weight.payload"] = config.Limit{Value: c.minimum, Sense: config.AtLeast, Source: "KKK-A-1822F",
				Basis: config.ReadInText}
			s := Weigh(cat, u, as)
			f := figure(t, s, "weight.payload")
			assert.Equal(t, c.pass, f.Met(), "R-5, %v lb against %v lb", c.payload, c.minimum)
			assert.Equal(t, !c.pass, finding(s, "weight.payload.short") != nil, "R-5")
			for _, l := range Limits(cat, u, as) {
				if l.Code == "weight.payload" {
					assert.Equal(t, c.pass, l.Base <= l.Limit, "R-5 as the rules engine sees it")
				}
			}
		})
	}
}

// MIL-T-14382W 3.2.5-6 (mil-spec.tpub.com MIL-T-14382W00007): gross is curb
// plus 2 x 175 lb plus payload, at least 1,600 lb of it and 10,000 lb in all.
func TestPublishedMilitaryGross(t *testing.T) {
	cat, u := bare(t, 11000, 8050, 2)
	cat.Equipment[1].MassLb = 1600
	u.Carried = []config.Carried{{Equipment: "tools", Qty: 1}}
	assert.EqualValues(t, 10000, Weigh(cat, u, people(175)).Gross.TotalLb)
}

// 49 CFR 567.4(g)(3) counts 150 lb for each designated seat (NHTSA letter
// aiam2229): the default, and the least that goes unremarked.
func TestPublishedOccupant(t *testing.T) {
	cat, u := bare(t, 11000, 8000, 4)
	assert.EqualValues(t, 8600+700, Weigh(cat, u, nil).Gross.TotalLb,
		"without a rule set the federal weight counts; 700 lb stand in the place of equipment not listed")
	assert.Nil(t, finding(Weigh(cat, u, people(150)), "weight.occupant.light"))
	assert.NotNil(t, finding(Weigh(cat, u, people(149)), "weight.occupant.light"))
}

// A GVWR may be less than the axle ratings together but not more (aiam0613).
func TestPublishedRatings(t *testing.T) {
	cat, u := bare(t, 14880, 8000, 2) // 5,000 + 9,880
	assert.Nil(t, finding(Weigh(cat, u, people(150)), "weight.ratings.gvwr"))
	cat, u = bare(t, 14881, 8000, 2)
	assert.NotNil(t, finding(Weigh(cat, u, people(150)), "weight.ratings.gvwr"))
}
