package leadtime

import (
	"math"

	"boxwright/config"
)

// Standard is a simulation with draws enough for a plan by itself.
var Standard = Simulation{Draws: 10_000, Seed: 1}

// Solve is a network by itself, worked through at expected durations.
func (n *Network) Solve() (*Solution, error) {
	c, err := n.compile()
	if err != nil {
		return nil, err
	}
	return c.solve(), nil
}

// Simulate is a network by itself, played through. The errors are those of Solve.
func (n *Network) Simulate(s Simulation) (*Odds, error) {
	c, err := n.compile()
	if err != nil {
		return nil, err
	}
	return c.simulate(s), nil
}

// Within is the chance that the whole is done in so many days, by the same reckoning as At.
func (s *Solution) Within(days float64) float64 {
	if s.Variance <= 0 {
		if days >= s.Days-tiny {
			return 1
		}
		return 0
	}
	return NormalWithin((days - s.Days) / math.Sqrt(s.Variance))
}

// Working reports whether the plant works on that day.
func (c *Calendar) Working(d config.Date) bool {
	w := walker{c: c}
	return w.working(serial(d))
}

// Closed says why the plant does not work on that day: "weekend" for a day of the week that
// is not worked, the name of a holiday, or "shutdown"; empty for a working day.
func (c *Calendar) Closed(d config.Date) string {
	day := serial(d)
	if c.off[weekday(day)] {
		return "weekend"
	}
	for _, h := range c.Holidays(d.Year) {
		if h.Date == d {
			return h.Name
		}
	}
	for _, s := range c.shut {
		if day >= s.first && day <= s.last {
			return "shutdown"
		}
	}
	return ""
}
