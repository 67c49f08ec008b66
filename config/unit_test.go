package config_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
)

func ExampleUnit_Set() {
	var u config.Unit
	u.Set(config.Pick{Option: "step", Qty: 1})
	u.Set(config.Pick{Option: "flood", Qty: 1})
	u.Set(config.Pick{Option: "flood", Qty: 2})
	fmt.Println(u.Picks, u.Has("step"), u.Qty("flood"))
	u.Drop("step")
	fmt.Println(u.Picks, u.Has("step"), u.Qty("step"))
	// Output:
	// [{flood 2 false} {step 1 false}] true 2
	// [{flood 2 false}] false 0
}

func ExampleUnit_Tell() {
	var u config.Unit
	u.Tell("paint", "signal red")
	u.Tell("number", "Medic 7")
	fmt.Println(len(u.Details), u.Detail("paint"), u.Detail("number"))
	u.Tell("paint", "")
	u.Tell("number", "Medic 8")
	fmt.Printf("%s %q\n", u.Detail("number"), u.Detail("paint"))
	u.Tell("number", "")
	fmt.Println(u.Details == nil)
	// Output:
	// 2 signal red Medic 7
	// Medic 8 ""
	// true
}

// A map is the simplest thing that picks can be held against.
func TestPicksBehaveLikeAMapAndStaySorted(t *testing.T) {
	ids := []string{"a", "aa", "a-1", "b", "flood", "step", "z", "0"}
	rapid.Check(t, func(t *rapid.T) {
		var u config.Unit
		model := map[string]config.Pick{}
		t.Repeat(map[string]func(*rapid.T){
			"set": func(t *rapid.T) {
				p := config.Pick{Option: rapid.SampledFrom(ids).Draw(t, "id"), Qty: rapid.IntRange(1, 9).Draw(t, "qty"),
					Filled: rapid.Bool().Draw(t, "filled")}
				u.Set(p)
				model[p.Option] = p
			},
			"drop": func(t *rapid.T) {
				id := rapid.SampledFrom(ids).Draw(t, "id")
				u.Drop(id)
				delete(model, id)
			},
			"": func(t *rapid.T) {
				require.Len(t, u.Picks, len(model))
				require.True(t, slices.IsSortedFunc(u.Picks, func(a, b config.Pick) int {
					return strings.Compare(a.Option, b.Option)
				}))
				for _, id := range ids {
					want, has := model[id]
					require.Equal(t, has, u.Has(id))
					require.Equal(t, want.Qty, u.Qty(id))
					if got := u.Find(id); has {
						require.Equal(t, want, *got)
					} else {
						require.Nil(t, got)
					}
				}
			},
		})
	})
}

func TestOrderOfPicksChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		picks := rapid.SliceOfNDistinct(rapid.StringMatching(`[a-z0-9][a-z0-9-]{0,3}`), 0, 12, rapid.ID[string]).Draw(t,
			"ids")
		var u, v config.Unit
		for i, id := range picks {
			u.Set(config.Pick{Option: id, Qty: i + 1})
		}
		for _, i := range rapid.Permutation(indices(len(picks))).Draw(t, "order") {
			v.Set(config.Pick{Option: picks[i], Qty: i + 1})
		}
		require.Equal(t, u, v)
	})
}

func indices(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

func TestClonesShareNothing(t *testing.T) {
	u := config.Unit{
		Picks:   []config.Pick{{Option: "flood", Qty: 1}},
		Carried: []config.Carried{{Equipment: "bag", Qty: 1}},
		Own:     []config.OwnLimit{{Figure: "space.headroom", Value: 72}},
	}
	c := u.Clone()
	require.Equal(t, u, c)
	c.Picks[0].Qty, c.Carried[0].Qty, c.Own[0].Value = 9, 9, 9
	c.Set(config.Pick{Option: "step", Qty: 1})
	assert.Equal(t, 1, u.Picks[0].Qty)
	assert.Equal(t, 1, u.Carried[0].Qty)
	assert.Equal(t, 72.0, u.Own[0].Value)
	assert.False(t, u.Has("step"))
}

func TestWhatAUnitHolds(t *testing.T) {
	c := readSmall(t)
	c.Options[1].Seats = []config.Seat{{ID: "bench", Kind: "bench"}}
	c.Options[1].Compartments = []config.Compartment{{ID: "under-step"}}
	u := config.Unit{Chassis: "cut", Body: "mod", Picks: []config.Pick{{Option: "step", Qty: 2}}}
	cab, module := c.SeatsOf(&u)
	assert.Len(t, cab, 1)
	assert.Len(t, module, 2, "two of an option bring its seats twice")
	assert.Len(t, c.CompartmentsOf(&u), 2)
	assert.Len(t, c.Bodies[0].Compartments, 1, "the body's own list is not added to")
	none := config.Unit{Chassis: "ghost", Body: "ghost", Picks: []config.Pick{{Option: "ghost", Qty: 1}}}
	cab, module = c.SeatsOf(&none)
	assert.Empty(t, cab)
	assert.Empty(t, module)
	assert.Empty(t, c.CompartmentsOf(&none))
}
