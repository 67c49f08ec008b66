package leadtime_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
)

var few = leadtime.Simulation{Draws: 1000, Seed: 1}

func TestFleetOfOneIsAPlan(t *testing.T) {
	c, u := catalogue(withSlots), unit("cot", "drawer")
	plans, err := leadtime.Fleet(c, []*config.Unit{u}, few)
	require.NoError(t, err)
	alone, err := leadtime.Schedule(c, u, few)
	require.NoError(t, err)
	assert.Equal(t, alone.Steps, plans[0].Steps)
	assert.Equal(t, alone.Report, plans[0].Report)
}

func TestFleetTakesSlotsInTurn(t *testing.T) {
	c := catalogue(withSlots, func(c *config.Catalogue) { c.Plant.Stations[1].Bays = 3 })
	plans, err := leadtime.Fleet(c, []*config.Unit{unit(), unit(), unit()}, few)
	require.NoError(t, err)
	var got []string
	for _, p := range plans {
		got = append(got, p.Slot.String())
	}
	assert.Equal(t, []string{"2027-01-11", "2027-01-19", "2027-01-25"}, got,
		"one unit to a slot; the 18th is a holiday and opens on the 19th")
	assert.Equal(t, 1, c.Plant.Slots[1].Open, "the catalogue is left as it was")

	plans, err = leadtime.Fleet(catalogue(withSlots), []*config.Unit{unit(), unit(), unit()}, few)
	require.NoError(t, err)
	assert.Equal(t, "2027-02-08", plans[2].Slot.String(), "with two framing bays the third unit finds both held on "+
		"the 25th")
}

func TestFleetSharesBays(t *testing.T) {
	c := catalogue(func(c *config.Catalogue) { c.Chassis[0].Arrive = span(1, 1, 1) })
	units := make([]*config.Unit, 8)
	for i := range units {
		units[i] = unit("camera")
	}
	plans, err := leadtime.Fleet(c, units, few)
	require.NoError(t, err)
	bays := map[string]int{}
	for _, s := range c.Plant.Stations {
		bays[s.ID] = s.Bays
	}
	type hold struct{ from, to float64 }
	held := map[string][]hold{}
	for _, p := range plans {
		for _, s := range p.Steps {
			if s.Station != "" {
				held[s.Station] = append(held[s.Station], hold{s.ES, s.EF})
			}
		}
	}
	for station, holds := range held {
		for _, at := range holds {
			n := 0
			for _, h := range holds {
				if h.from <= at.from+1e-5 && h.to > at.from+1e-5 {
					n++
				}
			}
			assert.LessOrEqual(t, n, bays[station], "%s on day %v", station, at.from)
		}
	}
	for i := 1; i < len(plans); i++ {
		assert.False(t, plans[i].EvenOdds.Before(plans[i-1].EvenOdds),
			"like units are delivered in the order of the quote")
	}
	assert.Greater(t, plans[7].Simulated.EvenOddsDays, plans[0].Simulated.EvenOddsDays+10,
		"one paint booth serves them all")
	assert.Contains(t, codes(plans[7]), "time.bay-wait")
}

func TestFleetStaggered(t *testing.T) {
	c := catalogue(withSlots)
	second := unit()
	second.OrderOn = day("2027-01-08")
	plans, err := leadtime.Fleet(c, []*config.Unit{unit(), second}, few)
	require.NoError(t, err)
	assert.Equal(t, "2027-01-25", plans[1].Slot.String(), "not before its own drawings")
	assert.Equal(t, second.OrderOn, plans[1].Order)
}

func TestFleetRefuses(t *testing.T) {
	_, err := leadtime.Fleet(catalogue(), nil, few)
	assert.Error(t, err)
	bad := unit()
	bad.Chassis = "?"
	_, err = leadtime.Fleet(catalogue(), []*config.Unit{unit(), bad}, few)
	assert.ErrorContains(t, err, "units[1] chassis", "the unit is named")
}
