package rules

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
)

// What must hold between answers, whatever the right ones are. The worlds are
// too large to try every unit of.

func drawWorld(t *rapid.T) (*generated, config.Unit) {
	g := generate(rapid.IntRange(20, 80).Draw(t, "options"), rapid.Int64Range(0, 1<<40).Draw(t, "seed"))
	u := config.Unit{Chassis: "c0", Body: "b0"}
	for range rapid.IntRange(0, 6).Draw(t, "picks") {
		o := g.cat.Options[rapid.IntRange(0, len(g.cat.Options)-1).Draw(t, "pick")]
		u.Set(config.Pick{Option: o.ID, Qty: 1})
	}
	return g, u
}

func answer(t *rapid.T, cat *config.Catalogue, u config.Unit, l *Limits) (*Engine, Answer) {
	e, err := Compile(cat)
	require.NoError(t, err)
	return e, e.AnswerWithin(&u, l, 0)
}

func TestOrderOfRulesAndOptionsChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, u := drawWorld(t)
		l := g.limits(1.05)
		e, a := answer(t, g.cat, u, l)
		other := *g.cat
		other.Rules, other.Options = slices.Clone(g.cat.Rules), slices.Clone(g.cat.Options)
		r := rand.New(rand.NewSource(rapid.Int64Range(0, 1000).Draw(t, "shuffle")))
		r.Shuffle(len(other.Rules), func(i, j int) { other.Rules[i], other.Rules[j] = other.Rules[j], other.Rules[i] })
		r.Shuffle(len(other.Options), func(i, j int) {
			other.Options[i], other.Options[j] = other.Options[j], other.Options[i]
		})
		_, b := answer(t, &other, u, l)
		require.Equal(t, a.Satisfiable, b.Satisfiable)
		if a.Satisfiable {
			for _, id := range e.IDs() {
				require.Equal(t, a.State(id), b.State(id), id)
			}
		}
	})
}

func TestOrderOfClicksChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, u := drawWorld(t)
		l := g.limits(1.05)
		_, want := answer(t, g.cat, u, l)
		e, err := Compile(g.cat)
		require.NoError(t, err)
		// Picks one by one in any order, with a detour, on one engine.
		n := config.Unit{Chassis: u.Chassis, Body: u.Body}
		var got Answer
		for _, p := range rapid.Permutation(u.Picks).Draw(t, "order") {
			n.Set(config.Pick{Option: g.cat.Options[0].ID, Qty: 1})
			e.AnswerWithin(&n, l, 0)
			n.Drop(g.cat.Options[0].ID)
			n.Set(p)
			got = e.AnswerWithin(&n, l, 0)
		}
		if len(u.Picks) > 0 && n.Has(g.cat.Options[0].ID) == u.Has(g.cat.Options[0].ID) {
			require.Equal(t, want.Satisfiable, got.Satisfiable)
			if want.Satisfiable {
				require.Equal(t, want.States, got.States)
			}
		}
	})
}

func TestRemovingARuleOrALimitNeverShrinksWhatIsOpen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, u := drawWorld(t)
		l := g.limits(1.02)
		e, a := answer(t, g.cat, u, l)
		if !a.Satisfiable {
			return
		}
		less := *g.cat
		i := rapid.IntRange(0, len(g.cat.Rules)-1).Draw(t, "rule")
		less.Rules = slices.Delete(slices.Clone(g.cat.Rules), i, i+1)
		loose := &Limits{For: func(c, b string) []config.Linear { return l.For(c, b)[1:] }}
		for _, other := range []struct {
			cat    *config.Catalogue
			limits *Limits
		}{{&less, l}, {g.cat, loose}} {
			_, b := answer(t, other.cat, u, other.limits)
			require.True(t, b.Satisfiable)
			for _, id := range e.IDs() {
				if a.State(id) != RuledOut {
					require.NotEqual(t, RuledOut, b.State(id), id)
				}
			}
		}
	})
}

func TestMendsOfferedAreUnitsThatStand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, u := drawWorld(t)
		l := g.limits(1.02)
		e, a := answer(t, g.cat, u, l)
		ids := slices.DeleteFunc(slices.Clone(e.IDs()), func(id string) bool { return a.State(id) != RuledOut })
		if len(ids) == 0 {
			return
		}
		id := rapid.SampledFrom(ids).Draw(t, "wanted")
		for _, m := range e.Mend(&u, l, id, nil) {
			f := asFull(&m.Unit)
			require.True(t, f.has(id))
			require.True(t, groupsHold(g.cat, f))
			for i := range g.cat.Rules {
				require.True(t, ruleHolds(g.cat, f, &g.cat.Rules[i]), g.cat.Rules[i].ID)
			}
			for _, lin := range l.For(m.Unit.Chassis, m.Unit.Body) {
				require.LessOrEqual(t, total(lin, f, &m.Unit), lin.Limit+1e-6, lin.Code)
			}
		}
	})
}

func TestAUnitStartsWholeWhereNothingIsSetAside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, u := drawWorld(t)
		l := g.limits(rapid.Float64Range(0.7, 1.2).Draw(t, "scale"))
		e, err := Compile(g.cat)
		require.NoError(t, err)
		started, stands := e.Start(&u, l)
		e, err = Compile(g.cat)
		require.NoError(t, err)
		whole, is := e.StartWhole(&u, l)
		require.Equal(t, stands, is)
		if stands {
			require.Equal(t, started, whole)
		}
	})
}
