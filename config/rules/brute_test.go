package rules

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

func TestAnswerAgreesWithTryingEveryUnit(t *testing.T) {
	stood := 0
	for seed := range seeds.Each(1500) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		e, err := Compile(w.cat)
		require.NoError(t, err, "seed %d", seed)
		u := w.drawUnit(r)
		key := 0
		for step := range 8 { // one engine answers a whole session
			if r.Intn(5) == 0 {
				w.redrawLimits(r)
				key++
			}
			limits := w.handLimits(fmt.Sprint(key))
			if r.Intn(4) == 0 {
				limits = w.handLimits("") // promises nothing
			}
			a := e.AnswerWithin(&u, limits, 0)
			want := w.possible(&u, deliberate(&u), nil)
			require.Equal(t, want, a.Satisfiable, "seed %d step %d", seed, step)
			if want {
				stood++
				for i, id := range e.IDs() {
					require.Equal(t, w.state(&u, id), a.States[i], "seed %d step %d: %s beside %v", seed, step, id,
						deliberate(&u))
				}
			} else if len(w.valid) > 0 {
				require.NotEmpty(t, a.SetAside, "seed %d step %d", seed, step)
			}
			w.click(r, &u)
		}
	}
	require.Greater(t, stood, 3000, "too few sessions had picks that can stand together")
}

func TestAnswerWithoutLimits(t *testing.T) {
	for seed := range seeds.Each(300) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		w.limits = map[[2]string][]config.Linear{}
		e, err := Compile(w.cat)
		require.NoError(t, err)
		u := w.drawUnit(r)
		a := e.Answer(&u, nil)
		require.Equal(t, w.possible(&u, deliberate(&u), nil), a.Satisfiable)
		for i, id := range e.IDs() {
			if a.Satisfiable {
				require.Equal(t, w.state(&u, id), a.States[i], "seed %d: %s", seed, id)
			}
		}
	}
}
