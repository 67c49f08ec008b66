package power

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/quantity"
)

// generator holds the 125 V loads against a generator aboard.
func (s *Sheet) generator(b *vehicle) {
	rated := 0.0
	for _, p := range b.Picks {
		if p.Supply != nil {
			rated += float64(config.Clean(p.Supply.GeneratorW)) * float64(p.Qty)
		}
	}
	if rated == 0 {
		return
	}
	w := float64(s.Shore.LoadW)
	s.rated(config.Figure{Code: "power.generator", Label: "125 V load on the generator, all at once", Value: w,
		Unit: quantity.Watt, Limit: rated, Source: "continuous rating of the generator"},
		fmt.Sprintf("The 125 V loads add up to %.0f W; the generator gives %.0f W, so not all can run at once.",
			w, rated), "Choose a larger generator or fewer 125 V loads.")
}

// keptOn gives what feeds 125 V that must run on: on the road its own inverter, or the one
// that feeds all else too; on the shore line the inlet.
func (s *Sheet) keptOn(inverterW, ownW, shoreA float64) {
	w := float64(s.keptWatts)
	if w == 0 {
		return
	}
	of := "the inverter"
	if ownW > 0 {
		inverterW, of = ownW, "its own inverter"
	}
	for _, f := range []config.Figure{
		{Code: "power.kept-road", Label: s.keptName + ", on the road, against " + of, Value: w,
			Unit: quantity.Watt, Limit: inverterW, Source: "continuous rating of " + of},
		{Code: "power.kept-shore", Label: s.keptName + ", on the shore line, against 80 % of the inlet",
			Value: w / MainsVolts, Unit: quantity.Amp, Limit: ContinuousShare * shoreA,
			Source: "rating of the shore line inlet and the 80 % rule"},
	} {
		s.rated(f, f.Label+": more than there is.", "Choose a larger inverter or inlet.")
	}
}
