package leadtime_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/leadtime"
)

func simulate(t require.TestingT, n *leadtime.Network, draws int) *leadtime.Odds {
	o, err := n.Simulate(leadtime.Simulation{Draws: draws, Seed: 1})
	require.NoError(t, err)
	return o
}

// One activity alone is its own distribution: the beta distribution with
// alpha = 1 + 4 (m-a)/(b-a), beta = 1 + 4 (b-m)/(b-a), whose mean is PERT's
// and whose variance is (mean-a)(b-mean)/7 (moments of the beta distribution,
// DLMF 5.12; alpha + beta = 6).
func TestDrawsFollowTheBetaDistribution(t *testing.T) {
	for _, s := range []config.Span{span(0, 0, 10), span(0, 1, 10), span(4, 8, 13), span(0, 5, 10), span(2, 8.3, 10),
		span(0, 10, 10)} {
		n := &leadtime.Network{Activities: []leadtime.Activity{{ID: "only", Days: s}}}
		o := simulate(t, n, 200_000)
		mean := leadtime.Expected(s)
		sd := math.Sqrt((mean - s.Low) * (s.High - mean) / 7)
		assert.InDelta(t, mean, o.Mean, 5*sd/math.Sqrt(200_000), "mean of %v", s)
		var sum float64
		for k := range 2000 {
			d := o.At((float64(k)+.5)/2000) - mean
			sum += d * d
		}
		assert.InDelta(t, sd, math.Sqrt(sum/2000), .01*sd, "standard deviation of %v", s)
		assert.GreaterOrEqual(t, o.At(0), s.Low)
		assert.LessOrEqual(t, o.At(1), s.High)
	}
	// Exact quantiles. Symmetric, alpha = beta = 3: the median is the middle.
	// Likeliest at the low end, alpha = 1, beta = 5: F(x) = 1 - (1-x)^5.
	o := simulate(t, &leadtime.Network{Activities: []leadtime.Activity{{ID: "only", Days: span(0, 5, 10)}}}, 200_000)
	assert.InDelta(t, 5, o.At(.5), .03)
	o = simulate(t, &leadtime.Network{Activities: []leadtime.Activity{{ID: "only", Days: span(0, 0, 10)}}}, 200_000)
	for _, p := range []float64{.1, .5, .9, .99} {
		assert.InDelta(t, 10*(1-math.Pow(1-p, .2)), o.At(p), .05, "at %v", p)
	}
}

// These numbers are what the simulation gave when it was written, natively and
// in wasm; a change of generator, table or rounding shows here.
func TestSameSeedSameDates(t *testing.T) {
	o := simulate(t, networkP2(), 10_000)
	assert.Equal(t, []float64{47.581, 51.61, 55.819}, []float64{o.At(.1), o.At(.5), o.At(.9)})
	again := simulate(t, networkP2(), 10_000)
	assert.Equal(t, o, again)
	other, err := networkP2().Simulate(leadtime.Simulation{Draws: 10_000, Seed: 2})
	require.NoError(t, err)
	assert.NotEqual(t, o.Mean, other.Mean)
	assert.InDelta(t, o.Mean, other.Mean, .2, "another seed, nearly the same answer")
}

// P-2 played by other means: gonum's beta variates (v0.17.0, stat/distuv), no
// tables, no thousandths, and the whole network in every draw.
func TestSimulationAgainstGonum(t *testing.T) {
	n := networkP2()
	const draws = 50_000
	source := rand.NewPCG(7, 7)
	at := map[string]int{}
	dist := make([]distuv.Beta, len(n.Activities))
	for i, a := range n.Activities {
		at[a.ID] = i
		if w := a.Days.High - a.Days.Low; w > 0 {
			dist[i] = distuv.Beta{Alpha: 1 + 4*(a.Days.Likely-a.Days.Low)/w, Beta: 1 + 4*(a.Days.High-a.Days.Likely)/w,
				Src: source}
		}
	}
	ends := make([]float64, draws)
	for k := range ends {
		finish := make([]float64, len(n.Activities))
		for i, a := range n.Activities {
			for _, before := range a.After {
				finish[i] = max(finish[i], finish[at[before]])
			}
			finish[i] += a.Days.Low
			if w := a.Days.High - a.Days.Low; w > 0 {
				finish[i] += w * dist[i].Rand()
			}
			ends[k] = max(ends[k], finish[i])
		}
	}
	slices.Sort(ends)
	o := simulate(t, n, draws)
	for _, p := range []float64{.05, .25, .5, .75, .9, .95} {
		assert.InDelta(t, ends[int(p*draws)], o.At(p), .12, "at %v", p)
	}
	assert.InDelta(t, stat.Mean(ends, nil), o.Mean, .06)
}

// Where paths merge the analytic answer is too hopeful, the more the more of
// them merge.
func TestMergingPathsAreLaterThanTheAnalyticAnswer(t *testing.T) {
	s, err := networkP2().Solve()
	require.NoError(t, err)
	o := simulate(t, networkP2(), 100_000)
	assert.Greater(t, o.Mean, s.Days+.5, "P-2: D and F often outlast C and E")
	assert.Less(t, o.Within(55), s.Within(55)-.03, "P-2: .8935 promises too much")

	worst := 0.0
	for k := 1; k <= 5; k++ {
		n := &leadtime.Network{}
		for i := range k {
			n.Activities = append(n.Activities, leadtime.Activity{ID: id(i), Days: span(10, 20, 30)})
		}
		s, err := n.Solve()
		require.NoError(t, err)
		require.InDelta(t, 20, s.Days, 1e-12, "the analytic answer never sees the other paths")
		short := simulate(t, n, 20_000).Mean - s.Days
		if k == 1 {
			assert.InDelta(t, 0, short, .1, "one path: no difference")
		} else {
			assert.Greater(t, short, worst+.3, "%d paths", k)
		}
		worst = short
	}
	// Of two like and independent paths the later one has the chance p*p.
	one := simulate(t, &leadtime.Network{Activities: []leadtime.Activity{{ID: id(0), Days: span(10, 20, 30)}}}, 100_000)
	two := simulate(t,
		&leadtime.Network{Activities: []leadtime.Activity{{ID: id(0), Days: span(10, 20, 30)},
			{ID: id(1), Days: span(10, 20, 30)}}}, 100_000)
	for _, by := range []float64{16, 20, 24} {
		assert.InDelta(t, math.Pow(one.Within(by), 2), two.Within(by), .01, "by day %v", by)
	}
}

func TestWithinAndAtAgree(t *testing.T) {
	o := simulate(t, networkP2(), 5000)
	for k := 1; k < 100; k++ {
		p := float64(k) / 100
		assert.GreaterOrEqual(t, o.Within(o.At(p)), p)
		assert.Less(t, o.Within(o.At(p)-.001), p+1e-9)
	}
	assert.Equal(t, 0.0, o.Within(-1e300))
	assert.Equal(t, 1.0, o.Within(1e300))
	assert.Equal(t, o.At(0), o.At(-3))
	assert.Equal(t, o.At(1), o.At(7))
	assert.Equal(t, o.At(0), o.At(math.NaN()))
	assert.Equal(t, o.At(1), o.At(math.Inf(1)))
	for _, none := range []float64{math.NaN(), math.Inf(-1)} {
		assert.Equal(t, 0.0, o.Within(none))
	}
	for _, draws := range []int{-5, 0, 1, 7, 1021} {
		assert.NotPanics(t, func() { simulate(t, networkP2(), draws) }, "%d draws", draws)
	}
}

func TestSimulationLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := randomNetwork(t, true)
		base := simulate(t, n, 300)
		s, err := n.Solve()
		require.NoError(t, err)
		high, low := 0.0, 0.0
		for i := range n.Activities {
			high += n.Activities[i].Days.High
			low = max(low, n.Activities[i].Days.Low)
		}
		assert.GreaterOrEqual(t, base.At(0), low)
		assert.LessOrEqual(t, base.At(1), high+1e-9)
		assert.GreaterOrEqual(t, base.Mean, s.Days-6*math.Sqrt(high*high/300)-1e-9)

		k := rapid.IntRange(0, len(n.Activities)-1).Draw(t, "activity")
		more := leadtime.Network{Activities: append([]leadtime.Activity(nil), n.Activities...)}
		more.Activities[k].Added = float64(rapid.IntRange(0, 100).Draw(t, "added")) / 8
		longer := simulate(t, &more, 300)
		for _, p := range []float64{0, .1, .5, .9, 1} {
			assert.GreaterOrEqual(t, longer.At(p), base.At(p), "added work is never earlier, at any chance")
		}
		// What cannot decide must not change a single draw.
		idle := leadtime.Network{Activities: append([]leadtime.Activity{{ID: "idle", Days: span(0, 0, low)}},
			n.Activities...)}
		still := simulate(t, &idle, 300)
		assert.Equal(t, base.Mean, still.Mean)
		assert.Equal(t, base.At(.9), still.At(.9))
		total := 0.0
		for _, share := range base.Critical {
			assert.True(t, share >= 0 && share <= 1)
			total += share
		}
		assert.GreaterOrEqual(t, total, 1-1e-9, "in every draw the end waits for something")
	})
}
