package power

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

func TestAnInverterOfItsOwn(t *testing.T) {
	for _, c := range []struct {
		reason          string
		own             bool
		rated, load     float64 // of what feeds all else
		keptBy          float64
		keptName        string
		keptMet, allMet bool
	}{
		{"two inverters that feed all alike", false, 2000, 1550, 2000,
			"Option heater, on the road, against the inverter", true, true},
		{"neither helps the other", true, 1000, 300, 1000,
			"Option heater, on the road, against its own inverter", false, true},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat := fixture(t)
			cat.OptionByID("heater").Load.Kept = true
			second := cat.OptionByID("charger")
			second.Load, second.Tags = nil, nil
			second.Supply = &config.Supply{InverterW: 1000, InverterKept: c.own}
			s := Budget(cat, unit("charger", "heater", "inverter", "receptacle"), nil)
			all, _ := s.Figure("power.inverter")
			kept, _ := s.Figure("power.kept-road")
			assert.Equal(t, []float64{c.rated, c.load, c.keptBy}, []float64{all.Limit, all.Value, kept.Limit})
			assert.Equal(t, []any{c.keptName, c.keptMet, c.allMet}, []any{kept.Label, kept.Met(), all.Met()})
		})
	}
}
