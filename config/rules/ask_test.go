package rules

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

// Whoever asks for some options at a time is told the same as who asks for all, with
// picks that go together and with those that do not.
func TestAskingInPartsTellsTheSame(t *testing.T) {
	cat := demo(t)
	parts, err := Compile(cat)
	require.NoError(t, err)
	whole, err := Compile(cat)
	require.NoError(t, err)
	apart := 0
	for seed := range seeds.Each(3) {
		r := rand.New(rand.NewSource(seed))
		c := &clicker{r: r, e: whole, u: config.Unit{Chassis: cat.Chassis[0].ID, Body: cat.Bodies[0].ID}}
		for range 8 {
			u := c.u.Clone()
			if r.Intn(3) == 0 { // perhaps against the others
				u.Set(config.Pick{Option: cat.Options[r.Intn(len(cat.Options))].ID, Qty: 1})
			}
			l := demoLimits(cat, &u, 1)
			want := whole.AnswerWithin(&u, l, 0)
			got := parts.Stand(&u, l, 0)
			require.Equal(t, want.Satisfiable, got.Satisfiable, "seed %d", seed)
			require.Equal(t, want.SetAside, got.SetAside, "seed %d", seed)
			for range 4 {
				var some []string
				for range 20 {
					some = append(some, parts.ids[r.Intn(parts.n)])
				}
				parts.Ask(&got, &u, l, 0, some)
				for _, id := range some {
					if parts.vars[id] >= parts.firstOption() {
						require.Equal(t, want.State(id), got.State(id), "seed %d: %s", seed, id)
					}
				}
			}
			if seed%2 == 0 { // in either order
				parts.AskElsewhere(&got, &u, l, 0)
			}
			parts.AskAll(&got, &u, l, 0)
			parts.AskElsewhere(&got, &u, l, 0)
			require.Equal(t, want.States, got.States, "seed %d", seed)
			if !got.Satisfiable {
				apart++
			}
			a := whole.AnswerWithin(&c.u, l, 0)
			c.click(&a)
		}
	}
	require.Positive(t, apart, "some picks must contradict each other")
}
