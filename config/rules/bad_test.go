package rules

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

func TestBadCataloguesAreRefusedWithThePlace(t *testing.T) {
	deep := pick("spot")
	for range 100 {
		inner := deep
		deep = config.Cond{Not: &inner}
	}
	for _, c := range []struct {
		reason string
		spoil  func(*config.Catalogue)
		where  string
	}{
		{"an id used twice", func(c *config.Catalogue) { c.Options[3].ID = "spot" }, "options[3]"},
		{"an option of an unknown group", func(c *config.Catalogue) { c.Options[1].Group = "ghost" },
			`options[1] "wide-step"`},
		{"nesting beyond all reason", func(c *config.Catalogue) { c.Rules = []config.Rule{rule("deep", nil, deep)} },
			`rules[0] "deep"`},
		{"a count that takes too many terms", func(c *config.Catalogue) {
			n := config.Count{N: 300}
			for range 600 {
				n.Of = append(n.Of, pick("spot"))
			}
			c.Rules = []config.Rule{rule("wide", nil, config.Cond{AtLeast: &n})}
		}, `rules[0] "wide"`},
		{"rules that take too many terms together", func(c *config.Catalogue) {
			n := config.Count{N: 50}
			for range 100 {
				n.Of = append(n.Of, pick("spot"))
			}
			c.Rules = nil
			for i := range 60 {
				c.Rules = append(c.Rules, rule(fmt.Sprintf("wide-%d", i), nil, config.Cond{AtMost: &n}))
			}
		}, `rules[46] "wide-46"`},
		{"an unknown attribute", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", nil, config.Cond{Body: &config.Test{Attr: "color", Op: "="}})}
		}, `rules[0] "a"`},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat := plain()
			c.spoil(cat)
			_, err := Compile(cat)
			require.Error(t, err)
			require.Equal(t, c.where, err.(config.Problems)[0].Where)
		})
	}
	_, err := Compile(nil)
	require.Error(t, err)
}

func TestBadUnitsAndLimitsNeverPanic(t *testing.T) {
	bad := []config.Linear{
		{Code: "nan", Base: math.NaN(), Limit: 1},
		{Code: "inf", Limit: math.Inf(1)},
		{Code: "per", Limit: 1, Per: map[string]float64{"spot": math.Inf(-1), "flood": 1}},
		{Code: "huge", Limit: 1, Per: map[string]float64{"spot": 1e300}},
		{Code: "ghost", Limit: 1, Per: map[string]float64{"ghost": 5}},
		{},
	}
	units := []config.Unit{
		{},
		{Chassis: "ghost", Body: "ghost", Picks: []config.Pick{{Option: "ghost", Qty: -1}}},
		{Chassis: "short", Body: "box", Picks: []config.Pick{{Option: "spot", Qty: 1 << 40}, {Option: "wide-step", Qty: 0}}},
		{Chassis: "short", Body: "box", Picks: []config.Pick{{Option: "plain-step", Qty: 1}, {Option: "wide-step", Qty: 1}}},
	}
	broken := &Limits{For: func(string, string) []config.Linear { return bad }}
	for _, u := range units {
		for _, l := range []*Limits{nil, {}, broken} {
			e, err := Compile(plain())
			require.NoError(t, err)
			a := e.Answer(&u, l)
			require.Len(t, a.States, len(e.IDs()))
			if l != nil && l.For != nil {
				require.Len(t, a.Problems, 4)
				assert.Contains(t, a.Problems[2].Text, `"spot" is -Inf`)
			}
			for _, id := range append(e.IDs(), "", "ghost") {
				e.Why(&u, l, id)
				e.Mend(&u, l, id, nil)
			}
			e.Conflict(&u, l)
			e.Fill(&u, l)
			e.Start(&u, l)
			e.Complete(&u, l, func(string) int64 { return 1 }, 100)
		}
	}
}

// Picks that exclude each other: the table still speaks, the unit keeps both,
// and nothing is filled in beside them.
func TestPicksThatCannotStand(t *testing.T) {
	e, err := Compile(plain())
	require.NoError(t, err)
	u := config.Unit{Chassis: "short", Body: "box",
		Picks: []config.Pick{{Option: "plain-step", Qty: 1}, {Option: "wide-step", Qty: 1}}}
	a := e.Answer(&u, nil)
	assert.False(t, a.Satisfiable)
	assert.Equal(t, []string{"wide-step"}, a.SetAside)
	assert.Equal(t, Open, a.State("spot"))
	filled, changes, ok := e.Fill(&u, nil)
	assert.False(t, ok)
	assert.Empty(t, changes)
	assert.Equal(t, u.Picks, filled.Picks)
	reasons := e.Conflict(&u, nil)
	require.Len(t, reasons, 1)
	assert.Equal(t, []string{"plain-step", "wide-step"}, reasons[0].Picks)
	assert.Equal(t, []string{"step"}, reasons[0].Groups)
}

// A starved engine may leave questions open, but what it says is true, and
// settling says the rest.
func TestASmallBudgetLeavesCheckingButNeverGuesses(t *testing.T) {
	checking := 0
	for seed := range seeds.Each(3) {
		g := generate(150, seed)
		l := g.limits(0.9)
		c := clicker{r: rand.New(rand.NewSource(seed)), u: config.Unit{Chassis: "c0", Body: "b0"}}
		for range 12 {
			starved, _ := Compile(g.cat)
			starved.Budget = 1
			fed, _ := Compile(g.cat)
			c.e = fed
			a, b := starved.Answer(&c.u, l), fed.AnswerWithin(&c.u, l, 0)
			require.Empty(t, b.Undecided)
			for v, id := range fed.IDs() {
				switch a.States[v] {
				case Checking:
					checking++
					require.Contains(t, a.Undecided, id)
				case RuledOut, Forced:
					require.Equal(t, b.States[v], a.States[v], "seed %d: %s", seed, id)
				case Open:
					require.NotEqual(t, RuledOut, b.States[v], "seed %d: %s", seed, id)
				}
			}
			require.Equal(t, b.States, starved.AnswerWithin(&c.u, l, 0).States, "seed %d: settled", seed)
			c.click(&b)
		}
	}
	require.Positive(t, checking, "the budget was never too small; the test tests nothing")
}
