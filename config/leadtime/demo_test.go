package leadtime_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
	demofile "boxwright/web/assets/catalogue"
)

// demo is the built-in catalogue and a unit of its standard choices.
func demo(t testing.TB) (*config.Catalogue, *config.Unit) {
	c, err := config.Read(demofile.Demo)
	require.NoError(t, err)
	u := &config.Unit{Chassis: c.Chassis[0].ID, Body: c.Bodies[0].ID, OrderOn: day("2026-11-25")}
	for _, o := range c.Options {
		if o.Standard {
			u.Set(config.Pick{Option: o.ID, Qty: 1})
		}
	}
	return c, u
}

// The cabinet shop does not start before its slat doors or panels have come, and
// a suspension holds up the mount, not the cabinets.
func TestDemoPartsHoldUpWhatNeedsThem(t *testing.T) {
	c, u := demo(t)
	u.Chassis, u.Body = "cut-14500-158-gas", "mod-146-72"
	for option, step := range map[string]string{"doors-rolling": "cabinets", "build-foam": "cabinets",
		"sus-air": "mount", "cdoor-rollup": "doors", "lm-multiplex": "electrical"} {
		t.Run(option, func(t *testing.T) {
			with := u.Clone()
			with.Set(config.Pick{Option: option, Qty: 1})
			p, err := leadtime.ScheduleWith(c, &with, few)
			require.NoError(t, err)
			for i := range p.Steps {
				s := &p.Steps[i]
				assert.Equal(t, s.ID == step, slices.Contains(s.After, "parts:"+option), "%s and %s", option, s.ID)
			}
			assert.GreaterOrEqual(t, p.Step(step).ES, p.Step("parts:"+option).EF)
		})
	}
}

// A norm of 90 to 180 calendar days is published: firehouse.com 21266475,
// ems1.com ("3-6 months", "90-120 days"), with 14 to 24 months and more in
// 2022-23. The demonstration plant is invented but must look like the trade.
func TestDemoPlantDeliversWithinTheNorm(t *testing.T) {
	c, u := demo(t)
	for i := range c.Chassis {
		for k := range c.Bodies {
			u.Chassis, u.Body = c.Chassis[i].ID, c.Bodies[k].ID
			if (c.Chassis[i].Cab == "van") != (c.Bodies[k].Kind == "van") {
				continue
			}
			p, err := leadtime.ScheduleWith(c, u, few)
			require.NoError(t, err)
			days := u.OrderOn.DaysUntil(p.EvenOdds)
			assert.True(t, days >= 90 && days <= 270, "%s with %s: %d days", u.Chassis, u.Body, days)
			for _, f := range p.Findings {
				assert.Equal(t, config.Note, f.Severity, "%s with %s: %s %s", u.Chassis, u.Body, f.Code, f.Text)
			}
		}
	}
}
