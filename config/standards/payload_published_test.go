package standards

// What the payload minima, type bands and tire rules were checked against:
//
//	R-5  boundary of the KKK-A-1822F minima: "Type II - 1500 lbs Type I or III -
//	     1750 lbs Type I or III AD - 2250 lbs" (slideplayer.com/slide/1463288)
//	     and of ASTM F2020: "Type II - 1700 lbs Type I or III - 1750 lbs SRW
//	     Modular - 1500 lbs" (same)
//	R-6  boundary of the bands: "GVWR 10,001 to 14,000", "Type 1 - AD 14,001 GVWR
//	     or more" (paperzz.com/doc/8327792)
//	R-1  nhtsa.gov node/118686 (aiam0583): four tires at 3,550 lb on an axle of
//	     17,500 lb: 14,200 lb, fails
//	R-4  49 CFR 571.120 S5.1.2 (node/71386): two P-metric tires of 2,028 lb:
//	     3,687.3 lb

import (
	"testing"

	"boxwright/config"

	"github.com/stretchr/testify/assert"
)

func TestR5PayloadBoundary(t *testing.T) {
	cat := fixture(t)
	for _, tt := range []struct {
		set, chassis string
		payload      float64
		want         Outcome
	}{
		{KKK, "t3", 1749, NotMet}, {KKK, "t3", 1750, Met}, {KKK, "t3ad", 2249, NotMet}, {KKK, "t3ad", 2250, Met},
		{KKK, "t1", 1749, NotMet}, {KKK, "t1", 1750, Met}, {KKK, "t1ad", 2249, NotMet}, {KKK, "t1ad", 2250, Met},
		{KKK, "t2", 1499, NotMet}, {KKK, "t2", 1500, Met}, {KKK, "t3srw", 1749, NotMet},
		{ASTM, "t2", 1699, NotMet}, {ASTM, "t2", 1700, Met}, {ASTM, "t3", 1749, NotMet}, {ASTM, "t3", 1750, Met}, {ASTM, "t3srw", 1499, NotMet}, {ASTM, "t3srw", 1500, Met},
		{ASTM, "t3ad", 2250, DoesNotApply},
	} {
		t.Run(tt.set, func(t *testing.T) {
			clause := "kkk-payload"
			if tt.set == ASTM {
				clause = "f2020-payload"
			}
			v := verdict(t, Judge(tt.set, on(tt.chassis), cat, figure("weight.payload", tt.payload)), clause)
			assert.Equal(t, tt.want, v.Outcome, "%s, %s, %v lb", tt.set, tt.chassis, tt.payload)
		})
	}
}

func TestR6GVWRBoundary(t *testing.T) {
	for _, tt := range []struct {
		chassis string
		gvwr    float64
		least   Outcome
		most    Outcome
	}{
		{"t1", 10000, NotMet, Met}, {"t1", 10001, Met, Met}, {"t1", 14000, Met, Met}, {"t1", 14001, Met, NotMet},
		{"t1ad", 14000, NotMet, DoesNotApply}, {"t1ad", 14001, Met, DoesNotApply},
	} {
		t.Run(tt.chassis, func(t *testing.T) {
			cat := fixture(t)
			cat.ChassisByID(tt.chassis).GVWRLb = mass(tt.gvwr)
			vs := Judge(KKK, on(tt.chassis), cat)
			assert.Equal(t, tt.least, verdict(t, vs, "kkk-gvwr-least").Outcome, "%s at %v lb", tt.chassis, tt.gvwr)
			assert.Equal(t, tt.most, verdict(t, vs, "kkk-gvwr-most").Outcome, "%s at %v lb", tt.chassis, tt.gvwr)
		})
	}
}

func TestR1TiresBelowAxle(t *testing.T) {
	cat := fixture(t)
	ch := cat.ChassisByID("t1ad")
	ch.RearTires, ch.GAWRRearLb = config.Tires{Count: 4, LoadLb: 3550}, 17500
	v := verdict(t, Judge(KKK, on("t1ad"), cat), "cfr-571.120-rear")
	assert.Equal(t, NotMet, v.Outcome)
	assert.Equal(t, 14200.0, v.Figure.Value)
	assert.Equal(t, -3300.0, v.Figure.Margin())
}

func TestR4PassengerTires(t *testing.T) {
	assert.InDelta(t, 3687.3, float64(tireCapacity(config.Tires{Count: 2, LoadLb: 2028, Passenger: true})), 0.05)
	assert.Equal(t, mass(4056), tireCapacity(config.Tires{Count: 2, LoadLb: 2028}),
		"the divisor is for passenger-car tires only")
}
