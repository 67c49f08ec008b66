package weight

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Every reading of a ticket is held against that part of the vehicle, and what
// it teaches moves that part.
func TestEachReadingCorrectsWhatWasWeighed(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	u.Set(config.Pick{Option: "winch", Qty: 1})
	cat.OptionByID("winch").Mass.YIn = 20
	cat.OptionByID("step").Mass.YIn = -40
	wheel := func(i int) func(*Condition) quantity.Mass {
		return func(c *Condition) quantity.Mass { return c.Wheels[i].Lb }
	}
	readings := []struct {
		name string
		set  func(*Ticket, quantity.Mass)
		of   func(*Condition) quantity.Mass
	}{
		{"total", func(k *Ticket, v quantity.Mass) { k.TotalLb = v },
			func(c *Condition) quantity.Mass { return c.TotalLb }},
		{"front axle", func(k *Ticket, v quantity.Mass) { k.FrontLb = v },
			func(c *Condition) quantity.Mass { return c.FrontLb }},
		{"rear axle", func(k *Ticket, v quantity.Mass) { k.RearLb = v },
			func(c *Condition) quantity.Mass { return c.RearLb }},
		{"left side", func(k *Ticket, v quantity.Mass) { k.LeftLb = v },
			func(c *Condition) quantity.Mass { return c.LeftLb }},
		{"right side", func(k *Ticket, v quantity.Mass) { k.RightLb = v },
			func(c *Condition) quantity.Mass { return c.RightLb }},
		{"left front wheel", func(k *Ticket, v quantity.Mass) { k.WheelsLb[0] = v }, wheel(0)},
		{"right front wheel", func(k *Ticket, v quantity.Mass) { k.WheelsLb[1] = v }, wheel(1)},
		{"left rear wheel", func(k *Ticket, v quantity.Mass) { k.WheelsLb[2] = v }, wheel(2)},
		{"right rear wheel", func(k *Ticket, v quantity.Mass) { k.WheelsLb[3] = v }, wheel(3)},
	}
	conditions := map[string]func(*Sheet) *Condition{
		"curb":   func(s *Sheet) *Condition { return &s.Curb },
		"crewed": func(s *Sheet) *Condition { return &s.Crewed },
		"gross":  func(s *Sheet) *Condition { return &s.Gross },
	}
	before := Weigh(cat, u, as)
	for called, condition := range conditions {
		for i, a := range readings {
			for _, b := range readings[:i] {
				apart := math.Abs(float64(a.of(condition(before)) - b.of(condition(before))))
				require.Greater(t, apart, 20., "%s: %s and %s cannot be told apart", called, a.name, b.name)
			}
		}
		for _, r := range readings {
			t.Run(called+", "+r.name, func(t *testing.T) {
				computed := r.of(condition(before))
				k := Ticket{What: TicketUnit, Condition: called, TolLb: 1e-6}
				r.set(&k, computed+80)
				after := Weigh(cat, u, as, k)
				require.Len(t, after.Correction.Readings, 1)
				is := after.Correction.Readings[0]
				assert.Equal(t, "Ticket 1, "+r.name, is.Label)
				assert.InDelta(t, float64(computed), float64(is.BeforeLb), 1e-4,
					"the reading is held against what was computed there")
				assert.InDelta(t, 80, float64(r.of(condition(after))-computed), 1e-3,
					"the sheet follows a scale that does not err")
			})
		}
	}
}
