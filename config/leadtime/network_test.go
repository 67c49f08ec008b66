package leadtime_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"
	"gonum.org/v1/gonum/graph/topo"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/leadtime"
)

func id(i int) string { return fmt.Sprintf("n%02d", i) }

// randomNetwork has links between any two activities, so it may hold circles
// unless forward is asked for.
func randomNetwork(t *rapid.T, forward bool) *leadtime.Network {
	n := &leadtime.Network{}
	size := rapid.IntRange(1, 14).Draw(t, "size")
	for i := range size {
		low := float64(rapid.IntRange(0, 40).Draw(t, "low")) / 4
		likely := low + float64(rapid.IntRange(0, 20).Draw(t, "likely"))/4
		a := leadtime.Activity{ID: id(i),
			Days: span(low, likely, likely+float64(rapid.IntRange(0, 40).Draw(t, "high"))/4)}
		for j := range size {
			if (!forward || j < i) && i != j && rapid.IntRange(0, 9).Draw(t, "link") < 2 {
				a.After = append(a.After, id(j))
			}
		}
		n.Activities = append(n.Activities, a)
	}
	return n
}

// The solver against gonum v0.17.0: an order exists exactly when gonum's
// topological sort finds one, and the expected duration and the earliest start
// of each activity are the longest paths that gonum's Bellman-Ford finds as
// shortest paths over negated durations.
func TestNetworkAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := randomNetwork(t, rapid.Bool().Draw(t, "forward"))
		size := len(n.Activities)
		start, end := int64(size), int64(size+1)
		g := simple.NewWeightedDirectedGraph(0, math.Inf(1))
		at := map[string]int64{}
		for i := range n.Activities {
			at[id(i)] = int64(i)
		}
		for i, a := range n.Activities {
			g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(start), simple.Node(i), 0))
			g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(i), simple.Node(end), -leadtime.Expected(a.Days)))
			for _, before := range a.After {
				j := at[before]
				g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(j), simple.Node(i),
					-leadtime.Expected(n.Activities[j].Days)))
			}
		}
		_, unorderable := topo.Sort(g)
		s, err := n.Solve()
		require.Equal(t, unorderable != nil, err != nil, "circle: gonum %v, solver %v", unorderable, err)
		if err != nil {
			return
		}
		longest, ok := path.BellmanFordFrom(simple.Node(start), g)
		require.True(t, ok)
		assert.InDelta(t, -longest.WeightTo(end), s.Days, 1e-9, "duration of the whole")
		for i := range n.Activities {
			toEnd, ok := path.BellmanFordFrom(simple.Node(i), g)
			require.True(t, ok)
			es, tail := -longest.WeightTo(int64(i)), -toEnd.WeightTo(end)
			assert.InDelta(t, es, s.Timings[i].ES, 1e-9, "earliest start of %s", id(i))
			assert.InDelta(t, s.Days-tail, s.Timings[i].LS, 1e-9, "latest start of %s", id(i))
			assert.GreaterOrEqual(t, s.Timings[i].Float, 0.0)
		}
		along := 0.0
		for _, step := range s.Path {
			assert.True(t, s.Timings[at[step]].Critical)
			along += s.Timings[at[step]].Expected
		}
		assert.InDelta(t, s.Days, along, 1e-9, "the critical path is as long as the whole")
	})
}

func TestNetworkRefuses(t *testing.T) {
	tests := []struct {
		code   string
		n      leadtime.Network
		reason string
	}{
		{"time.empty", leadtime.Network{}, "nothing to plan"},
		{"time.id", leadtime.Network{Activities: []leadtime.Activity{{ID: "a"}, {ID: "a"}}}, "the same name twice"},
		{"time.unknown-id", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", After: []string{"b"}}}}, "a predecessor that is not there"},
		{"time.circle", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", After: []string{"a"}}}}, "waits for itself"},
		{"time.circle", leadtime.Network{Activities: []leadtime.Activity{{ID: "z"}, {ID: "a", After: []string{"c", "z"}}, {ID: "b", After: []string{"a"}}, {ID: "c", After: []string{"b"}}}}, "a circle of three"},
		{"time.span", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Days: span(3, 2, 4)}}}, "likely below low"},
		{"time.span", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Days: span(-1, 2, 4)}}}, "a negative duration"},
		{"time.span", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Days: span(1, math.NaN(), 4)}}}, "no number"},
		{"time.span", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Days: span(1, 2, math.Inf(1))}}}, "endless"},
		{"time.span", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Added: math.NaN()}}}, "no number of added days"},
		{"time.span", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", NotBefore: -1}}}, "a start before the order"},
		{"time.gate", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Gate: &leadtime.Gate{Starts: []float64{5, 2}, Free: 9}}}}, "starts out of order"},
		{"time.gate", leadtime.Network{Activities: []leadtime.Activity{{ID: "a", Gate: &leadtime.Gate{Starts: []float64{5}, Free: math.NaN()}}}}, "no free time"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			_, err := test.n.Solve()
			var ps config.Problems
			require.True(t, errors.As(err, &ps), "%s", test.reason)
			assert.Equal(t, test.code, ps[0].Code, "%s: %v", test.reason, err)
			_, err = test.n.Simulate(leadtime.Standard)
			assert.Error(t, err, test.reason)
		})
	}
	long := leadtime.Network{}
	for i := range 20 {
		long.Activities = append(long.Activities, leadtime.Activity{ID: id(i), Days: span(2000, 2000, 2000)})
	}
	_, err := long.Solve()
	assert.ErrorContains(t, err, "40000 days", "sums must stay exact")
}

func TestCircleIsNamed(t *testing.T) {
	n := leadtime.Network{Activities: []leadtime.Activity{{ID: "skin", After: []string{"weld"}},
		{ID: "weld", After: []string{"grind"}}, {ID: "grind", After: []string{"skin"}}}}
	_, err := n.Solve()
	assert.ErrorContains(t, err, "skin after weld after grind after skin")
}

func TestGate(t *testing.T) {
	n := leadtime.Network{Activities: []leadtime.Activity{
		{ID: "before", Days: span(4, 4, 4)},
		{ID: "gated", After: []string{"before"}, Days: span(2, 2, 2), Gate: &leadtime.Gate{Starts: []float64{1, 6, 11}, Free: 15}},
		{ID: "beside", Days: span(1, 1, 1)},
	}}
	tests := []struct {
		added, start float64
		reason       string
	}{
		{0, 6, "ready at 4, the next start is 6"},
		{2, 6, "ready exactly in time"},
		{2.5, 11, "just missed"},
		{8, 15, "after the last start it waits until the line is free"},
		{13, 17, "and is then free to start at once"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			n.Activities[0].Added = test.added
			s, err := n.Solve()
			require.NoError(t, err)
			assert.Equal(t, test.start, s.Timings[1].ES, test.reason)
			assert.Equal(t, test.start-4-test.added, s.Timings[1].Wait, test.reason)
			assert.Equal(t, s.Timings[1].Wait, s.Timings[0].Float, "what comes before may be late by as much: %s",
				test.reason)
			o, err := n.Simulate(leadtime.Simulation{Draws: 7, Seed: 3})
			require.NoError(t, err)
			assert.Equal(t, test.start+2, o.At(.5), "nothing is uncertain here: %s", test.reason)
		})
	}
}

// A gate can forbid a later start although the end of the activity has time to
// spare; then it is not what the end waits for.
func TestGateWithoutFloatIsNotCritical(t *testing.T) {
	n := leadtime.Network{Activities: []leadtime.Activity{
		{ID: "gated", Days: span(2, 2, 2), Gate: &leadtime.Gate{Starts: []float64{1, 9}, Free: 15}},
		{ID: "long", Days: span(8, 8, 8)},
		{ID: "end", After: []string{"gated", "long"}, Days: span(1, 1, 1)},
	}}
	s, err := n.Solve()
	require.NoError(t, err)
	assert.Zero(t, s.Timings[0].Float, "the next start, 9, would be too late")
	assert.False(t, s.Timings[0].Critical)
	assert.Equal(t, []string{"long", "end"}, s.Path)
}
