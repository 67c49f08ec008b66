package leadtime

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/seeds"
)

// The first word from seed 0 is published with the reference implementation,
// prng.di.unimi.it/splitmix64.c, and appears in many generators' seed tests.
func TestMixIsSplitMix64(t *testing.T) {
	assert.Equal(t, uint64(0xe220a8397b1dcdaf), mix(golden))
}

// Playing a network in blocks, with what cannot decide left out, gives draw for
// draw what walking every activity does.
func TestPlayAgainstWalkingEveryDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := Network{}
		for i := range rapid.IntRange(1, 12).Draw(t, "size") {
			low := float64(rapid.IntRange(0, 80).Draw(t, "low")) / 4
			a := Activity{ID: fmt.Sprint(i), Days: config.Span{Low: low, Likely: low + 1, High: low + 1 +
				float64(rapid.IntRange(0, 9).Draw(t, "high"))}}
			a.Added = float64(rapid.IntRange(-20, 20).Draw(t, "added")) / 4
			if rapid.IntRange(0, 4).Draw(t, "date") == 0 {
				a.NotBefore = float64(rapid.IntRange(0, 60).Draw(t, "not before"))
			}
			if rapid.IntRange(0, 4).Draw(t, "gate") == 0 {
				a.Gate = &Gate{Starts: []float64{3, 11, 26}, Free: 40}
			}
			for j := range i {
				if rapid.IntRange(0, 3).Draw(t, "link") == 0 {
					a.After = append(a.After, fmt.Sprint(j))
				}
			}
			n.Activities = append(n.Activities, a)
		}
		c, err := n.compile()
		require.NoError(t, err)
		sim := Simulation{Draws: rapid.SampledFrom([]int{1, 5, 6, 7, block - 1, block, block + 1, 2*block + 4}).Draw(t,
			"draws"), Seed: 11}
		want := make([]int32, sim.Draws)
		rows := make([][]int32, len(n.Activities))
		for i := range n.Activities {
			a := &n.Activities[i]
			rows[i] = draws(a, sim)
			for k := range want {
				start := toMilli(a.NotBefore)
				for _, p := range c.pred[i] {
					start = max(start, rows[p][k])
				}
				if a.Gate != nil {
					start = newGate(a.Gate).open(start)
				}
				rows[i][k] += start
				want[k] = max(want[k], rows[i][k])
			}
		}
		assert.Equal(t, want, c.play(sim, nil))
	})
}

func TestDaysAreSorted(t *testing.T) {
	r := rand.New(rand.NewSource(seeds.First()))
	for _, spread := range []int32{1, 3, 5000, 1 << 21, 1<<22 - 1, 1 << 22, math.MaxInt32} { // wider ones are compared
		days := make([]int32, 1000)
		for i := range days {
			days[i] = r.Int31n(spread)
		}
		days[0], days[1] = spread, 0
		want := slices.Sorted(slices.Values(days))
		sortDays(days)
		require.Equal(t, want, days, "spread %d", spread)
	}
}
