package leadtime_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"boxwright/config"
	"boxwright/config/leadtime"
)

func together(t require.TestingT, n *leadtime.Network, draws int, share float64) *leadtime.Odds {
	o, err := n.Simulate(leadtime.Simulation{Draws: draws, Seed: 1, Together: share})
	require.NoError(t, err)
	return o
}

// chain is steps one after the other, then two at once.
func chain() *leadtime.Network {
	n := &leadtime.Network{}
	last := ""
	for _, s := range []struct {
		id   string
		days config.Span
	}{{"release", span(5, 8, 16)}, {"chassis", span(30, 45, 90)}, {"frame", span(2, 3, 6)}, {"paint", span(4, 6, 12)},
		{"interior", span(6, 8, 16)}, {"test", span(2, 3, 7)}} {
		a := leadtime.Activity{ID: s.id, Days: s.days}
		if last != "" {
			a.After = []string{last}
		}
		last = s.id
		n.Activities = append(n.Activities, a)
	}
	n.Activities = append(n.Activities, leadtime.Activity{ID: "parts", After: []string{"release"}, Days: span(30, 48, 95)})
	n.Activities[5].After = append(n.Activities[5].After, "parts")
	return n
}

// However delays go together, each duration by itself keeps its distribution: exact
// quantiles of the beta distributions with alpha = 1, beta = 5 and alpha = beta = 3.
func TestEachDurationStaysItsOwn(t *testing.T) {
	for _, share := range []float64{0, 0.1, 0.4, 0.5, 0.9, 1} {
		one := func(days config.Span) *leadtime.Network {
			return &leadtime.Network{Activities: []leadtime.Activity{{ID: "only", Days: days}}}
		}
		o := together(t, one(span(0, 0, 10)), 200_000, share)
		for _, p := range []float64{.1, .5, .9} {
			assert.InDelta(t, 10*(1-math.Pow(1-p, .2)), o.At(p), .06, "at %v, together %v", p, share)
		}
		o = together(t, one(span(0, 5, 10)), 200_000, share)
		assert.InDelta(t, 5, o.At(.5), .03)
		assert.InDelta(t, 5, o.Mean, .02)
	}
}

// The variance of a sum grows with what the parts share: of two alike, by hand,
// 2 (1 + r) times that of one.
func TestDelaysThatComeTogetherAddUp(t *testing.T) {
	n := &leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Days: span(0, 5, 10)},
		{ID: "b", After: []string{"a"}, Days: span(0, 5, 10)}}}
	variance := func(o *leadtime.Odds) float64 {
		sum := 0.0
		for k := range 4000 {
			d := o.At((float64(k)+.5)/4000) - o.Mean
			sum += d * d
		}
		return sum / 4000
	}
	one := 100. / 28 // beta with alpha = beta = 3 on 0 to 10: variance 100/28
	for _, r := range []float64{0, 0.25, 0.4, 0.6, 1} {
		assert.InDelta(t, 2*(1+r), variance(together(t, n, 200_000, r))/one, .06, "together %v", r)
	}
}

// A plant whose delays come together as assumed, played by other means: exact quantiles
// of the beta distribution, luck by a normal copula of the same correlation. Of 6,000
// units nine in ten are there by the 90 % date and half by the 50 % one; the tolerances
// are 4 standard errors of those counts and what two copulas differ by. Taken as
// independent the 90 % date holds clearly fewer.
func TestDatesHoldAsManyUnitsAsTheySay(t *testing.T) {
	n, share := chain(), 0.4
	right, naive := together(t, n, 20_000, share), together(t, n, 20_000, 0)
	r := rand.New(rand.NewPCG(5, 17))
	const units = 6000
	nine, even, hoped := 0, 0, 0
	for range units {
		common := r.NormFloat64()
		end := map[string]float64{}
		last := 0.0
		for _, a := range n.Activities[:5] {
			last += duration(a.Days, common, share, r)
			end[a.ID] = last
		}
		parts := end["release"] + duration(n.Activities[6].Days, common, share, r)
		days := max(last, parts) + duration(n.Activities[5].Days, common, share, r)
		if days <= right.At(.9) {
			nine++
		}
		if days <= right.At(.5) {
			even++
		}
		if days <= naive.At(.9) {
			hoped++
		}
	}
	assert.InDelta(t, 90, 100*float64(nine)/units, 2)
	assert.InDelta(t, 50, 100*float64(even)/units, 3)
	assert.Less(t, 100*float64(hoped)/units, 88., "independent delays are too hopeful")
}

func duration(s config.Span, common, share float64, r *rand.Rand) float64 {
	// Normal quantities of correlation rho have a rank correlation of 6/pi asin(rho/2).
	rho := 2 * math.Sin(math.Pi/6*share)
	z := math.Sqrt(rho)*common + math.Sqrt(1-rho)*r.NormFloat64()
	b := distuv.Beta{Alpha: 1 + 4*(s.Likely-s.Low)/(s.High-s.Low), Beta: 1 + 4*(s.High-s.Likely)/(s.High-s.Low)}
	return s.Low + (s.High-s.Low)*b.Quantile(distuv.UnitNormal.CDF(z))
}

// By hand: on a path of four steps with the variance 1 each, 40 % in common makes a variance of
// 0.6 x 4 + 0.4 x 16 = 8.8 in place of 4, and a 90 % date 1.2816 (2.966 - 2) = 1.24 days later.
func TestDelaysTogetherOnTheCriticalPath(t *testing.T) {
	c := catalogue()
	u := unit()
	none := 0.
	u.SetFactor(config.DelaysTogether, &none)
	apart := schedule(t, c, u)
	assert.Zero(t, apart.TogetherAtNine)
	usual := schedule(t, c, unit())
	var variance, spread float64
	for _, id := range usual.Critical {
		v := usual.Step(id).Variance
		variance, spread = variance+v, spread+math.Sqrt(v)
	}
	later := 1.2815515655 * (math.Sqrt(0.6*variance+0.4*spread*spread) - math.Sqrt(variance))
	assert.Greater(t, later, 0.5)
	assert.InDelta(t, later, usual.TogetherAtNine, 1e-3)
	assert.Equal(t, apart.Analytic, usual.Analytic, "there each delay is taken by itself")
}

// What the trade quotes now: with 250 working days of work ahead and chassis that take
// four times as long the same plant delivers after more than a year.
func TestBacklogAndChassisWaiting(t *testing.T) {
	c := catalogue()
	c.Plant.Activities = append([]config.Activity{{ID: "queue", Label: "Work ahead", Source: config.SourceBacklog}},
		c.Plant.Activities...)
	for i := range c.Plant.Activities {
		if a := &c.Plant.Activities[i]; a.ID != "queue" && len(a.After) == 0 && a.Source != config.SourceChassis {
			a.After = []string{"queue"}
		}
	}
	require.Empty(t, c.Prepare())
	before := schedule(t, c, unit())
	assert.Nil(t, before.Step("queue"), "nothing ahead, no step")
	u := unit()
	days := 250.
	u.SetFactor(config.PlantBacklog, &days)
	after := schedule(t, c, u)
	require.NotNil(t, after.Step("queue"))
	assert.InDelta(t, 250*(0.75+4+1.5)/6, after.Step("queue").Expected, 1e-6)
	assert.Greater(t, after.Simulated.EvenOddsDays, before.Simulated.EvenOddsDays+200)
	times := 400.
	u.SetFactor(config.ChassisWaitingPct, &times)
	both := schedule(t, c, u)
	var chassis, was *leadtime.Step
	for i := range both.Steps {
		if both.Steps[i].Source == config.SourceChassis {
			chassis, was = &both.Steps[i], before.Step(both.Steps[i].ID)
		}
	}
	require.NotNil(t, chassis)
	assert.InDelta(t, 4*was.Expected, chassis.Expected, 1e-6)

	none := catalogue()
	none.Plant.Activities = none.Plant.Activities[:len(none.Plant.Activities):len(none.Plant.Activities)]
	assert.Contains(t, codes(schedule(t, none, u)), "time.backlog-unplaced", "no step waits for it")
}
