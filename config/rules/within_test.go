package rules

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

// A conflict of a larger catalogue takes longer, and fewer of them are sought.
func TestABudgetShrinksWithTheCatalogue(t *testing.T) {
	for _, c := range []struct {
		ids          int
		budget, want int64
		reason       string
	}{
		{usualSize, 1000, 1000, "all of it"}, {2 * usualSize, 1000, 250, "by the square of its size"},
		{2 * usualSize, 0, 0, "without bound it stays"}, {100 * usualSize, 1000, 1, "one is always left"},
	} {
		assert.Equal(t, c.want, (&Engine{n: c.ids}).scaled(c.budget), c.reason)
	}
}

// However little work is allowed, an answer says nothing that more work takes
// back: what is not known is still checking.
func TestLittleWorkLeavesThingsOpenButNeverWrong(t *testing.T) {
	checking, judged := 0, 0
	// The last one was found by fresh seeds: a chassis that turned out to be
	// the only one left was not told as open to question.
	for _, seed := range append(slices.Collect(seeds.Each(12)), 655887169597) {
		g := generate(60, seed)
		l := g.limits([]float64{1.05, 0.8, 0.7}[seed%3])
		whole, err := Compile(g.cat)
		require.NoError(t, err)
		c := clicker{r: rand.New(rand.NewSource(seed)), e: whole, u: config.Unit{Chassis: "c0", Body: "b0"}}
		for range 10 {
			want := whole.AnswerWithin(&c.u, l, 0)
			if !want.Satisfiable {
				break
			}
			hasty, err := Compile(g.cat)
			require.NoError(t, err)
			for _, budget := range []int64{1, 4} {
				got := hasty.AnswerWithin(&c.u, l, budget)
				if !got.Satisfiable {
					require.Empty(t, got.SetAside, "seed %d: not known yet is not impossible", seed)
				}
				for i, id := range whole.IDs() {
					judged++
					switch got.States[i] {
					case Checking:
						checking++
						require.Contains(t, got.Undecided, id, "seed %d budget %d", seed, budget)
					case Open:
						if want.States[i] != Open {
							require.Equal(t, Forced, want.States[i], "seed %d budget %d: %s", seed, budget, id)
							require.Contains(t, got.Undecided, id, "seed %d budget %d", seed, budget)
						}
					default:
						require.Equal(t, want.States[i], got.States[i], "seed %d budget %d: %s", seed, budget, id)
					}
				}
			}
			c.click(&want)
		}
	}
	require.Greater(t, checking, 100)
	require.Greater(t, judged, 2*checking)
}

// Ways out found in steps are those found at once; a list only gets longer.
func TestWaysOutInSteps(t *testing.T) {
	offered, steps := 0, 0
	for seed := range seeds.Each(300) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		u := w.drawUnit(r)
		stepwise, err := Compile(w.cat)
		require.NoError(t, err)
		for _, id := range stepwise.IDs() {
			atOnce, err := Compile(w.cat)
			require.NoError(t, err)
			want := atOnce.Mend(&u, w.handLimits("known"), id, nil)
			var got []Mend
			more := true
			for range 60 {
				var longer []Mend
				longer, more = stepwise.MendWithin(&u, w.handLimits("known"), id, nil, 1)
				require.GreaterOrEqual(t, len(longer), len(got))
				for i := range got {
					require.Equal(t, got[i], longer[i], "seed %d: %s", seed, id)
				}
				if got = slices.Clone(longer); !more {
					break
				}
				steps++
			}
			require.False(t, more, "seed %d: %s", seed, id)
			require.Equal(t, len(want), len(got), "seed %d: %s", seed, id)
			for i := range got {
				offered++
				require.Equal(t, want[i].Weight, got[i].Weight, "seed %d: %s", seed, id)
				require.True(t, w.stands(&got[i].Unit), "seed %d: %s", seed, id)
			}
		}
	}
	require.Greater(t, offered, 1000)
	require.Greater(t, steps, 100)
}

// The last question is remembered only as long as the unit is the same.
func TestWaysOutFollowTheUnit(t *testing.T) {
	changed := 0
	for seed := range seeds.Each(600) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		u := w.drawUnit(r)
		e, err := Compile(w.cat)
		require.NoError(t, err)
		id := w.anyID(r)
		before := e.Mend(&u, w.handLimits("known"), id, nil)
		w.click(r, &u)
		after := e.Mend(&u, w.handLimits("known"), id, nil)
		fresh, err := Compile(w.cat)
		require.NoError(t, err)
		want := fresh.Mend(&u, w.handLimits("known"), id, nil)
		require.Equal(t, len(want), len(after), "seed %d: %s", seed, id)
		for i := range after {
			require.Equal(t, want[i].Weight, after[i].Weight, "seed %d: %s", seed, id)
		}
		if len(before) != len(after) {
			changed++
		}
	}
	require.Greater(t, changed, 5)
}

// Reasons of the demonstration catalogue come at once or with more work.
func TestReasonsInSteps(t *testing.T) {
	cat := demo(t)
	first, known := 0, 0
	for seed := range seeds.Each(2) {
		e, err := Compile(cat)
		require.NoError(t, err)
		c := clicker{r: rand.New(rand.NewSource(seed)), e: e,
			u: config.Unit{Chassis: cat.Chassis[seed%int64(len(cat.Chassis))].ID, Body: cat.Bodies[0].ID}}
		var a Answer
		for range 15 {
			a = e.AnswerWithin(&c.u, demoLimits(cat, &c.u, 1), 5000)
			c.click(&a)
		}
		l := demoLimits(cat, &c.u, 1)
		a = e.AnswerWithin(&c.u, l, 5000)
		for v, id := range e.IDs() {
			if a.States[v] != RuledOut || c.r.Intn(8) > 0 {
				continue
			}
			budget := int64(1)
			reasons, more := e.WhyWithin(&c.u, l, id, budget)
			if len(reasons) > 0 {
				first++
			}
			for more {
				budget *= 4
				reasons, more = e.WhyWithin(&c.u, l, id, budget)
			}
			known++
			require.NotEmpty(t, reasons, "seed %d: %s", seed, id)
		}
	}
	require.Greater(t, known, 15)
	require.Greater(t, first, known/8, "some reasons need little work")
}
