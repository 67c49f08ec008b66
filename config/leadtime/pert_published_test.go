package leadtime_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
)

// Published activity networks. Where the source prints a rounded figure the
// test holds the code to the printed digits; "derived" marks rows recomputed
// at full precision from the published inputs.

// P-1: flylib.com/books/en/3.287.1.117, a network of seven activities.
// Published: critical path 1-3-5-7, expected 24, P(x <= 28) = .9633.
func networkP1() *leadtime.Network {
	return &leadtime.Network{Activities: []leadtime.Activity{
		{ID: "1", Days: config.Span{Low: 5, Likely: 8, High: 17}},
		{ID: "2", Days: config.Span{Low: 7, Likely: 10, High: 13}},
		{ID: "3", After: []string{"1"}, Days: config.Span{Low: 3, Likely: 5, High: 7}},
		{ID: "4", After: []string{"2"}, Days: config.Span{Low: 1, Likely: 3, High: 5}},
		{ID: "5", After: []string{"3", "4"}, Days: config.Span{Low: 4, Likely: 6, High: 8}},
		{ID: "6", After: []string{"3", "4"}, Days: config.Span{Low: 3, Likely: 3, High: 3}},
		{ID: "7", After: []string{"5"}, Days: config.Span{Low: 3, Likely: 4, High: 5}},
	}}
}

func TestPublishedP1(t *testing.T) {
	s, err := networkP1().Solve()
	require.NoError(t, err)
	for i, te := range []float64{9, 10, 5, 3, 6, 3, 4} {
		assert.InDelta(t, te, s.Timings[i].Expected, 1e-12, "te of activity %d", i+1)
	}
	assert.Equal(t, []string{"1", "3", "5", "7"}, s.Path)
	assert.InDelta(t, 24, s.Days, 1e-12)
	assert.InDelta(t, 5, s.Variance, 1e-12, "4 + 4/9 + 4/9 + 1/9")
	z := (28 - s.Days) / math.Sqrt(s.Variance)
	assert.InDelta(t, 1.7889, z, 5e-5)
	assert.InDelta(t, .96318, s.Within(28), 5e-6, "exact (derived)")
	assert.InDelta(t, .9633, leadtime.NormalWithin(math.Round(z*100)/100), 5e-5,
		"as published, from a table entered with z = 1.79")
}

// P-2: wizedu.com/questions/717873; inputs, te and the slack of A to F as
// published, the other rows derived.
func networkP2() *leadtime.Network {
	act := func(id string, low, likely, high float64, after ...string) leadtime.Activity {
		return leadtime.Activity{ID: id, After: after, Days: config.Span{Low: low, Likely: likely, High: high}}
	}
	return &leadtime.Network{Activities: []leadtime.Activity{
		act("A", 5, 5, 7), act("B", 1, 2, 5), act("C", 5, 5, 5, "A"), act("D", 4, 8, 13, "A"),
		act("E", 1, 10, 17, "B", "C"), act("F", 1, 5, 7, "D"), act("G", 2, 6, 9, "D"), act("H", 4, 4, 6, "E", "F"),
		act("I", 2, 7, 10, "G", "H"), act("J", 2, 4, 7, "I"), act("K", 6, 10, 13, "I"), act("L", 2, 6, 6, "J"),
		act("M", 2, 2, 3, "K"), act("N", 7, 7, 12, "L", "M"),
	}}
}

func TestPublishedP2(t *testing.T) {
	rows := []struct {
		id                              string
		te, es, ef, ls, lf, slack, vari float64
	}{
		{"A", 5.33, 0, 5.33, 0, 5.33, 0, .111},
		{"B", 2.33, 0, 2.33, 8.00, 10.33, 8.00, .444},
		{"C", 5.00, 5.33, 10.33, 5.33, 10.33, 0, 0},
		{"D", 8.17, 5.33, 13.50, 7.17, 15.33, 1.83, 2.250},
		{"E", 9.67, 10.33, 20.00, 10.33, 20.00, 0, 7.111},
		{"F", 4.67, 13.50, 18.17, 15.33, 20.00, 1.83, 1.000},
		{"G", 5.83, 13.50, 19.33, 18.50, 24.33, 5.00, 1.361},
		{"H", 4.33, 20.00, 24.33, 20.00, 24.33, 0, .111},
		{"I", 6.67, 24.33, 31.00, 24.33, 31.00, 0, 1.778},
		{"J", 4.17, 31.00, 35.17, 33.50, 37.67, 2.50, .694},
		{"K", 9.83, 31.00, 40.83, 31.00, 40.83, 0, 1.361},
		{"L", 5.33, 35.17, 40.50, 37.67, 43.00, 2.50, .444},
		{"M", 2.17, 40.83, 43.00, 40.83, 43.00, 0, .028},
		{"N", 7.83, 43.00, 50.83, 43.00, 50.83, 0, .694},
	}
	n := networkP2()
	s, err := n.Solve()
	require.NoError(t, err)
	for i, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			got := s.Timings[i]
			require.Equal(t, r.id, n.Activities[i].ID)
			for name, pair := range map[string][2]float64{
				"te": {r.te, got.Expected}, "ES": {r.es, got.ES}, "EF": {r.ef, got.EF}, "LS": {r.ls, got.LS}, "LF": {r.lf, got.LF}, "slack": {r.slack, got.Float},
			} {
				assert.InDelta(t, pair[0], pair[1], .005+1e-9, "%s of %s", name, r.id)
			}
			assert.InDelta(t, r.vari, got.Variance, .0005, "variance of %s", r.id)
			assert.Equal(t, r.slack == 0, got.Critical, "critical %s", r.id)
		})
	}
	assert.Equal(t, []string{"A", "C", "E", "H", "I", "K", "M", "N"}, s.Path)
	assert.InDelta(t, 50.833, s.Days, .0005)
	assert.InDelta(t, 11.1944, s.Variance, .00005)
	assert.InDelta(t, 1.2453, (55-s.Days)/math.Sqrt(s.Variance), .00005)
	assert.InDelta(t, .8935, s.Within(55), .00005)
	assert.InDelta(t, .7414, s.Within(53), .00005, "derived")
}
