package rules

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

// withoutCauses leaves out what changes follow from, see Change.By.
func withoutCauses(mends []Mend) []Mend {
	for i := range mends {
		for k := range mends[i].Changes {
			mends[i].Changes[k].By = nil
		}
	}
	return mends
}

// What an engine was asked before changes none of its answers: which reasons it
// finds, which ways out, and what it sets aside where the picks contradict each
// other.
func TestFreshAndUsedEngineAnswerAlike(t *testing.T) {
	cat := demo(t)
	used, err := Compile(cat)
	require.NoError(t, err)
	conflicts, asked := 0, 0
	for seed := range seeds.Each(3) {
		r := rand.New(rand.NewSource(seed))
		on := cat.Chassis[seed%int64(len(cat.Chassis))].ID
		c := &clicker{r: r, e: used, u: config.Unit{Chassis: on, Body: cat.Bodies[0].ID}}
		for range 12 {
			l := demoLimits(cat, &c.u, 1)
			a := used.AnswerWithin(&c.u, l, 0)
			out := slices.DeleteFunc(slices.Clone(used.IDs()[used.firstOption():]), func(id string) bool {
				return a.State(id) != RuledOut
			})
			id := out[r.Intn(len(out))]
			with := c.u.Clone()
			with.Set(config.Pick{Option: id, Qty: 1})
			got := used.AnswerWithin(&with, l, 0)
			why, mends := used.Why(&c.u, l, id), used.Mend(&c.u, l, id, nil)

			fresh, err := Compile(cat)
			require.NoError(t, err)
			require.Equal(t, fresh.Why(&c.u, l, id), why, "seed %d: why not %s", seed, id)
			require.Equal(t, withoutCauses(fresh.Mend(&c.u, l, id, nil)), withoutCauses(mends),
				"seed %d: how nevertheless %s", seed, id)
			want := fresh.AnswerWithin(&with, l, 0)
			require.Equal(t, want.SetAside, got.SetAside, "seed %d: with %s", seed, id)
			require.Equal(t, want.States, got.States, "seed %d: with %s", seed, id)
			asked++
			if len(got.SetAside) > 0 {
				conflicts++
			}
			c.click(&a)
		}
	}
	require.Greater(t, conflicts, asked/2, "an option that is ruled out contradicts what was picked")
}
